package web

import (
	"errors"
	"fmt"
	"net/http"
	"net/url"
	"slices"
	"strconv"
	"strings"

	"plait.example/internal/app"
	"plait.example/internal/practical"
)

// perPage is how many steps of a dish stand on one page; real dishes have under thirty.
const perPage = 80

// DishPage is one dish: its steps in a table, one of them open to be corrected
// in full, and the recipe's text beside them.
type DishPage struct {
	Base
	Chip
	Action, Menu   string
	Name           Field
	About          []Field // portions, how it is served, allergens
	Steps          []StepRow
	Doubts         []Doubt // the steps to look at, the most doubtful first
	PutRight       int     // steps that the teacher has put right, here or in an earlier recipe
	Text           []Piece
	Beside         bool   // the text stands beside the open step
	Pasted         string // the text as it stands, to be read again
	Ingredients    []Line // of the list, checked off
	NotUsed        int    // of them
	Unlisted       []NotListed
	Mirror         string
	Notes          []string
	From, To, All  int // steps on this page
	Earlier, Later string
}

// Doubt points to a step whose figures are more of a guess than read.
type Doubt struct{ ID, Link, Text, Why string }

// StepRow is one step of the table.
type StepRow struct {
	ID, Text          string
	Index             int
	Hands, Wait       []Field
	After             string // in words
	Tags              []Tag
	Why               []string // where its figures come from
	Doubtful          bool
	First, Last, Open bool
	Focus             string // which of its buttons was pressed last
	Link              string
	Wrong             int
	Editor            *Editor
}

// Tag is a short word about a step.
type Tag struct{ Class, Text string }

// Editor is the open step's full form.
type Editor struct {
	Text   Field
	Groups []Group
	Why    []string
	Doubt  string
	Next   string
	Cuts   []Option // where it can be split
}

func (s *Server) dish(w http.ResponseWriter, r *http.Request) error {
	rec, err := s.app.Open(r.Context(), r.PathValue("id"))
	if err != nil {
		return err
	}
	if dishIndex(rec.Practical, r.PathValue("letter")) < 0 {
		return noDish(r.PathValue("letter"))
	}
	return s.render(w, http.StatusOK, "dish", s.dishPage(r, edited{rec: rec, focus: r.URL.Query().Get("focus")}, r.URL.Query()))
}

func noDish(letter string) error {
	return practical.Fault{Code: practical.NotFound, Message: fmt.Sprintf("this practical has no dish %q", letter), Hint: "choose one from its dishes"}
}

// saveDish saves the whole page's form; the pressed button may also add, split,
// join, move or remove a step, or read the recipe again.
func (s *Server) saveDish(w http.ResponseWriter, r *http.Request) error {
	id, letter := r.PathValue("id"), r.PathValue("letter")
	rec, err := s.app.Open(r.Context(), id)
	if err != nil {
		return err
	}
	i := dishIndex(rec.Practical, letter)
	if i < 0 {
		return noDish(letter)
	}
	if r.PostFormValue("do") == "read" {
		return s.readAgain(w, r, letter)
	}
	look := r.PostFormValue("step")
	where, err := strconv.Atoi(r.PostFormValue("cut"))
	if err != nil {
		where = -1
	}
	e, ok, err := s.edit(w, r, []string{fmt.Sprintf("dishes[%d]", i)}, func(p *practical.Practical, do string) (string, string, error) {
		said, at, err := stepEdit(p, letter, do, where)
		if said != "" {
			look = at
		}
		return said, "", err
	})
	if !ok {
		return err
	}
	query := url.Values{}
	verb, step, _ := strings.Cut(r.PostFormValue("do"), ":")
	switch verb {
	case "look":
		look, e.fragment = step, "#open"
	case "shut":
		look, e.focus = "", "look-"+r.PostFormValue("step")
	case "up", "down":
		e.focus = verb + "-" + look
		look = ""
	case "sure":
		look, e.focus = "", "look-"+step
	case "remove":
		e.focus = "look-" + look
		look = ""
	case "add", "split", "join":
		e.fragment = "#open"
		if k := stepIndex(e.rec.Practical.Dishes[i], look); k >= 0 {
			e.focus = identifier(fmt.Sprintf("dishes[%d].steps[%d].text", i, k))
		}
	}
	if look != "" {
		query.Set("step", look)
	}
	if from := r.PostFormValue("from"); from != "" {
		query.Set("from", from)
	}
	if e.refused != nil {
		query.Add("note", sentence(e.refused.Message)+" "+sentence(e.refused.Hint))
	}
	if len(e.unread) > 0 || e.refused != nil {
		return s.render(w, http.StatusUnprocessableEntity, "dish", s.dishPage(r, e, query))
	}
	e.home(w, r, r.URL.Path, query)
	return nil
}

func stepIndex(d practical.Dish, id string) int {
	return slices.IndexFunc(d.Steps, func(s practical.Step) bool { return s.ID == id })
}

// readAgain reads the dish from its changed text.
func (s *Server) readAgain(w http.ResponseWriter, r *http.Request, letter string) error {
	text := strings.ReplaceAll(r.PostFormValue("again"), "\r\n", "\n")
	rec, faults, err := s.app.ReadDish(r.Context(), r.PathValue("id"), version(r), letter, text)
	if err != nil {
		return s.settle(w, r, rec, err)
	}
	query := url.Values{}
	for _, f := range faults {
		query.Add("note", leftOut(f.Message, text))
	}
	edited{rec: rec}.home(w, r, r.URL.Path, query)
	return nil
}

// stepEdit does what a step's button says: the label of the change and the step to look at after it.
func stepEdit(p *practical.Practical, letter, do string, cut int) (label, look string, err error) {
	verb, step, _ := strings.Cut(do, ":")
	switch verb {
	case "add":
		return "add a step to dish " + letter, app.AddStep(p, letter, step), nil
	case "remove":
		return "remove step " + step, app.RemoveStep(p, letter, step), nil
	case "split":
		return "split step " + step, app.SplitStep(p, letter, step, cut), nil
	case "join":
		look, err = app.JoinStep(p, letter, step)
		return "join step " + step + " with the next", look, err
	case "up":
		return "move step " + step + " up", app.MoveStep(p, letter, step, -1), nil
	case "down":
		return "move step " + step + " down", app.MoveStep(p, letter, step, 1), nil
	case "sure":
		return "step " + step + " is right", app.SureOfStep(p, letter, step), nil
	}
	return "", "", nil
}

func (s *Server) dishPage(r *http.Request, e edited, query url.Values) DishPage {
	letter := r.PathValue("letter")
	p := e.rec.Practical
	i := dishIndex(p, letter)
	d := p.Dishes[i]
	f := newForm(p, r.PostForm, e.unread, e.focus)
	at := fmt.Sprintf("dishes[%d].", i)
	page := DishPage{
		Chip: chip(i, d.Letter, named(d)), Action: "/practical/" + e.rec.ID + "/dishes/" + url.PathEscape(letter),
		Menu: "/practical/" + e.rec.ID + "/dishes", Name: f.field(at + "name"),
		About:  f.fields(at, "portions", "serve.heat", "serve.minutes", "serve.within", "serve.how", "allergens"),
		Pasted: d.Text, Notes: query["note"], All: len(d.Steps),
	}
	open := query.Get("step")
	page.From, page.To = span(query.Get("from"), len(d.Steps))
	for k := page.From; k < page.To; k++ {
		page.Steps = append(page.Steps, s.stepRow(f, page.Action, i, k, open))
	}
	page.checkOff(d)
	page.Earlier, page.Later = turn(page.Action, page.From, len(d.Steps))
	page.Doubts = doubts(page.Action, d)
	page.PutRight = putRight(d)
	page.Text = marked(page.Action, d.Text, d.Steps, open)
	page.Beside = page.Text != nil && slices.ContainsFunc(page.Steps, func(row StepRow) bool { return row.Open })
	page.Mirror = page.mirror()
	page.Base = s.base(r, e.rec, "Dishes", f)
	page.Bar.Troubles = dishTroubles(f, page.Action, i)
	page.Bar.TroubleTitle = things(len(page.Bar.Troubles))
	if e.refused != nil {
		page.Said = sentence(e.refused.Message)
	}
	return page
}

// dishTroubles are the faults of one dish. The way to a field that is not on the
// page goes by opening its step.
func dishTroubles(f *form, action string, i int) []Trouble {
	list := f.troubles(fmt.Sprintf("dishes[%d]", i))
	k := 0
	for _, fault := range f.faults {
		if !within(fault.Field, fmt.Sprintf("dishes[%d]", i)) {
			continue
		}
		names, err := parts(fault.Field)
		steps := f.practical.Dishes[i].Steps
		if err == nil && len(names) > 1 && names[1].name == "steps" && names[1].index >= 0 && names[1].index < len(steps) && !f.used[anchored(fault.Field)] {
			list[k].Link = action + "?step=" + url.QueryEscape(steps[names[1].index].ID) + "#" + identifier(anchored(fault.Field))
		}
		k++
	}
	return list
}

// span is which steps a page shows.
func span(from string, all int) (int, int) {
	n, err := strconv.Atoi(from)
	if err != nil || n < 0 || n >= all {
		n = 0
	}
	return n, min(all, n+perPage)
}

func turn(action string, from, all int) (earlier, later string) {
	if from > 0 {
		earlier = fmt.Sprintf("%s?from=%d", action, max(0, from-perPage))
	}
	if from+perPage < all {
		later = fmt.Sprintf("%s?from=%d", action, from+perPage)
	}
	return earlier, later
}

func (p DishPage) mirror() string {
	groups := []Group{{Fields: append([]Field{p.Name}, p.About...)}}
	for _, row := range p.Steps {
		groups = append(groups, Group{Fields: row.Hands}, Group{Fields: row.Wait})
		if row.Editor != nil {
			groups = append(groups, Group{Fields: []Field{row.Editor.Text}})
			groups = append(groups, row.Editor.Groups...)
		}
	}
	ids := mirror(groups) + ",#doubts,#ingredients"
	for _, row := range p.Steps {
		ids += fmt.Sprintf(",#check-%d,#why-%d", row.Index, row.Index)
		if row.Editor != nil {
			ids += ",#why"
		}
	}
	return ids
}

// scaleDish writes the list of a dish anew for another number of portions.
func (s *Server) scaleDish(w http.ResponseWriter, r *http.Request) error {
	id, letter := r.PathValue("id"), r.PathValue("letter")
	portions, err := strconv.Atoi(strings.TrimSpace(r.PostFormValue("portions")))
	if err != nil {
		portions = 0 // told as a number that is none
	}
	back := strings.TrimSuffix(r.URL.Path, "/portions")
	rec, _, err := s.app.ScaleDish(r.Context(), id, version(r), letter, portions)
	if fault, is := errors.AsType[practical.Fault](err); is && fault.Code != practical.Conflict && fault.Code != practical.NotFound {
		http.Redirect(w, r, back+"?note="+url.QueryEscape(sentence(fault.Message)+" "+sentence(fault.Hint)), http.StatusSeeOther)
		return nil
	}
	if err != nil {
		return s.settle(w, r, rec, err)
	}
	http.Redirect(w, r, back+"?saved=1", http.StatusSeeOther)
	return nil
}
