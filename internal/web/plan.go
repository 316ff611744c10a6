package web

import (
	"context"
	"errors"
	"fmt"
	"html/template"
	"net/http"
	"net/url"
	"slices"
	"strings"
	"time"

	"plait.example/internal/app"
	"plait.example/internal/picture"
	"plait.example/internal/practical"
	"plait.example/internal/timeplan"
)

// patience is how long a page waits for a plan before it shows how far it is.
const patience = 450 * time.Millisecond

// plaitWidth is how wide the plait stands beside the rows, in CSS pixels.
const plaitWidth = 340

// sheetGround is the colour of the sheet that the plait is drawn on; it is
// --paper in plait.css.
const sheetGround = "#fffaf0"

// besideRows is the plait as it stands beside the rows, as high as they are
// (nil: as high as it likes).
func besideRows(heights []float64) picture.Options {
	return picture.Options{Width: plaitWidth, Bare: true, ID: "plait", Ground: sheetGround, Heights: heights}
}

// PlanPage is the plan: how it stands, its rows, the plait, and the ways on.
type PlanPage struct {
	Base
	Action   string
	Empty    bool // no dish has a step: nothing to plan
	Running  bool
	After    string // where to go when the search is over
	Sofar    string
	Failed   string // why the last search gave no plan
	FailHint string
	Plan     *timeplan.Plan
	Stale    bool // the practical has changed since the plan was made
	Status   string
	Aims     []string // how good it is, and what of that is proved
	Conflict []Clash
	Dishes   []Chip
	Rows     []PlanRow
	Pair     bool
	Pinned   int
	Plait    template.HTML
	Words    []string
	Files    []File
	Names    []string // candidates to print it for
}

// PlanRow is a row of the plan as the page shows it.
type PlanRow struct {
	timeplan.Row
	Chip        *Chip
	Time, Till  string
	Anchor      string // id
	Kind        string // what kind of row, for eyes and ears
	Before      bool   // before the clock
	First, Last bool
	Moves       bool   // it can be moved and held
	Focus       string // which of its buttons was pressed last
	Name        string
}

// Clash is a demand of those that cannot hold together, with the way to its step.
type Clash struct{ Text, Step, Link string }

// File is a way to take the plan away.
type File struct{ Link, Words string }

func (s *Server) plan(w http.ResponseWriter, r *http.Request) error {
	running := s.runs.of(r.PathValue("id")) // before the record: a search that ends in between has its plan in neither
	rec, err := s.app.Open(r.Context(), r.PathValue("id"))
	if err != nil {
		return err
	}
	page := s.planPage(r, rec, running)
	if page.Names, err = s.names(r.Context()); err != nil {
		return err
	}
	if failed := s.runs.ended(rec.ID); failed != nil && page.Plan == nil {
		page.fail(failed)
	}
	return s.render(w, http.StatusOK, "plan", page)
}

// makePlan does what a button of the plan page says: dovetail, move, pin, let go.
func (s *Server) makePlan(w http.ResponseWriter, r *http.Request) error {
	id := r.PathValue("id")
	work, err := s.planWork(r)
	if err != nil {
		return err
	}
	u := s.runs.start(id, work)
	patient := time.NewTimer(patience)
	defer patient.Stop()
	select {
	case <-u.done:
		if u.err != nil {
			return s.planFailed(w, r, u)
		}
	case <-patient.C:
	case <-r.Context().Done():
		return r.Context().Err()
	}
	to := "/practical/" + id + "/plan?saved=1"
	if row := r.PostFormValue("row"); row != "" {
		to += "&row=" + url.QueryEscape(row) + "&did=" + url.QueryEscape(strings.TrimPrefix(r.PostFormValue("do"), "un"))
	}
	http.Redirect(w, r, to, http.StatusSeeOther)
	return nil
}

// planWork is what a form asks for.
func (s *Server) planWork(r *http.Request) (func(context.Context, func(app.Progress)) (app.Record, error), error) {
	id, row, from := r.PathValue("id"), r.PostFormValue("row"), version(r)
	do, beside, _ := strings.Cut(r.PostFormValue("do"), ":")
	var at *practical.TimeOfDay
	if text := strings.TrimSpace(r.PostFormValue("at")); do == "pin" && text != "" {
		t, err := practical.ParseTimeOfDay(text)
		if err != nil {
			return nil, practical.Fault{Code: practical.Invalid, Field: "at", Message: quote(text) + " is not a time of day", Hint: "write it like 09:05"}
		}
		at = &t
	}
	options := func(improved func(app.Progress)) app.PlanOptions {
		o := s.options.Plan
		o.Improved = improved
		return o
	}
	return func(ctx context.Context, improved func(app.Progress)) (app.Record, error) {
		o := options(improved)
		switch do {
		case "up":
			return s.app.Move(ctx, id, from, row, app.Up, "", o)
		case "down":
			return s.app.Move(ctx, id, from, row, app.Down, "", o)
		case "before":
			return s.app.Move(ctx, id, from, row, app.Before, beside, o)
		case "after":
			return s.app.Move(ctx, id, from, row, app.After, beside, o)
		case "pin":
			return s.app.Pin(ctx, id, from, row, at, o)
		case "unpin":
			return s.app.Unpin(ctx, id, from, row, o)
		case "way-out":
			return s.app.TakeWayOut(ctx, id, from, beside, o)
		default:
			return s.app.Plan(ctx, id, o)
		}
	}, nil
}

// planFailed shows the page as it was, with the reason.
func (s *Server) planFailed(w http.ResponseWriter, r *http.Request, u *run) error {
	_ = s.runs.ended(r.PathValue("id"))
	var fault practical.Fault
	var faults practical.Faults
	if asFault(u.err, &fault) && (fault.Code == practical.Conflict || fault.Code == practical.NotFound && u.rec.Practical == nil) {
		return s.settle(w, r, u.rec, u.err)
	}
	if !errors.As(u.err, &faults) && !asFault(u.err, &fault) {
		return u.err
	}
	rec, err := s.app.Open(r.Context(), r.PathValue("id"))
	if err != nil {
		return err
	}
	page := s.planPage(r, rec, s.runs.of(rec.ID))
	page.fail(u.err)
	return s.render(w, http.StatusUnprocessableEntity, "plan", page)
}

// fail puts the reason why there is no new plan on the page.
func (p *PlanPage) fail(err error) {
	var fault practical.Fault
	var faults practical.Faults
	switch {
	case errors.As(err, &faults) && len(faults) > 0:
		p.Failed, p.FailHint = sentence(faults[0].Message), sentence(faults[0].Hint)
		if n := len(faults); n > 1 {
			p.Failed = fmt.Sprintf("%s (and %d more to put right)", strings.TrimSuffix(p.Failed, "."), n-1)
		}
	case errors.As(err, &fault):
		p.Failed, p.FailHint = sentence(fault.Message), sentence(fault.Hint)
	case errors.Is(err, context.Canceled):
		p.Failed, p.FailHint = "Stopped before a plan was found.", "Press Dovetail to begin again."
	default:
		p.Failed, p.FailHint = "The plan could not be made because something broke on our side.", "Everything you typed is kept. Try again."
	}
	p.Said = p.Failed
}

// planPage is the page of a record, or of the search that goes on for it (nil: none).
func (s *Server) planPage(r *http.Request, rec app.Record, u *run) PlanPage {
	page := PlanPage{
		Action: "/practical/" + rec.ID + "/plan", Plan: rec.Plan, Stale: rec.PlanStale, Pair: rec.Practical.Cooks == 2,
		Pinned: len(rec.Practical.Pins), Files: files(rec.ID),
		Empty: !slices.ContainsFunc(rec.Practical.Dishes, func(d practical.Dish) bool { return len(d.Steps) > 0 }),
	}
	page.Base = s.base(r, rec, "Plan", nil)
	page.Bar.Troubles = blocking(rec)
	if n := len(page.Bar.Troubles); n > 0 {
		page.Bar.TroubleTitle = "Put this right first, then dovetail"
	}
	if u != nil {
		last, seen, _ := u.now()
		page.Running, page.Sofar = true, "Looking for a plan."
		query := r.URL.Query()
		query.Set("saved", "1")
		page.After = page.Action + "?" + query.Encode()
		if seen > 0 {
			page.Sofar = sofar(last, rec.Practical.Clock.Hours)
		}
		page.Said = page.Sofar
		return page
	}
	if rec.Plan == nil {
		return page
	}
	page.Status, page.Aims = standing(rec.Plan), rec.Plan.Aims()
	page.Conflict = clashes(rec)
	for i, d := range rec.Plan.Dishes {
		page.Dishes = append(page.Dishes, chip(i, d.Letter, d.Name))
	}
	page.Rows = planRows(rec.Plan)
	page.Plait = template.HTML(picture.Plait(rec.Plan, besideRows(nil))) // its text is escaped by the picture
	page.Words = picture.Words(rec.Plan)
	if r.URL.Query().Get("saved") != "" || r.Method == http.MethodPost {
		page.Said = page.Status
		if row := moved(page.Rows, r.URL.Query()); row != "" {
			page.Said = row + " " + page.Status
		}
	}
	return page
}

// clashes are the demands that cannot hold together.
func clashes(rec app.Record) []Clash {
	var list []Clash
	for _, demand := range rec.Plan.Conflict {
		clash := Clash{Text: demand.Text}
		for _, d := range rec.Practical.Dishes {
			if stepIndex(d, demand.Step) >= 0 {
				clash.Step = demand.Step
				clash.Link = fmt.Sprintf("/practical/%s/dishes/%s?step=%s#open", rec.ID, url.PathEscape(d.Letter), url.QueryEscape(demand.Step))
			}
		}
		list = append(list, clash)
	}
	return list
}

// names is every candidate of every class.
func (s *Server) names(ctx context.Context) ([]string, error) {
	classes, err := s.app.Classes(ctx)
	var all []string
	for _, c := range classes {
		for _, candidate := range c.Candidates {
			all = append(all, candidate.String())
		}
	}
	return all, err
}

// moved says where a row that was moved or held stands now, and keeps the focus on it.
func moved(rows []PlanRow, q url.Values) string {
	for i, row := range rows {
		if row.ID == q.Get("row") {
			rows[i].Focus = q.Get("did")
			return fmt.Sprintf("%s is now at %s, row %d of %d.", row.Name, row.Time, i+1, len(rows))
		}
	}
	return ""
}

// blocking is what has to be put right before a plan can be made.
func blocking(rec app.Record) []Trouble {
	var list []Trouble
	for _, fault := range append(rec.Practical.Validate(), rec.Practical.Ready()...) {
		link := "/practical/" + rec.ID
		for _, st := range stops {
			if countWithin(practical.Faults{fault}, st.prefixes) > 0 {
				link += st.link
				break
			}
		}
		text := fault.Message
		if fault.Hint != "" {
			text += "; " + fault.Hint
		}
		list = append(list, Trouble{Where: say(rec.Practical, fault.Field), Text: text, Link: link})
	}
	return list
}

// standing says in a sentence how the plan stands.
func standing(p *timeplan.Plan) string {
	finish, bound, allowed := p.Finish.Write(p.Hours), p.Bound.Write(p.Hours), p.Allowed.Write(p.Hours)
	if !p.Fits() {
		if len(p.Rows) == 0 {
			return "It cannot be done, whatever the time."
		}
		return fmt.Sprintf("It does not fit: the best plan finishes at %s, %s after the time is up at %s.", finish, count(p.Over, "minute"), allowed)
	}
	spare := "with no time to spare"
	if n := int(p.Allowed - p.Finish); n > 0 {
		spare = count(n, "minute") + " to spare"
	}
	if p.Status == timeplan.Optimal || p.Bound >= p.Finish {
		return fmt.Sprintf("It fits. It finishes at %s, %s. No plan can finish earlier.", finish, spare)
	}
	return fmt.Sprintf("It fits. It finishes at %s, %s. No plan can finish before %s.", finish, spare, bound)
}

func files(id string) []File {
	at := "/practical/" + id + "/"
	return []File{
		{at + "print", "Print view"},
		{at + "print?large=1", "Print view, large type"},
		{at + "plan.pdf", "PDF, portrait"},
		{at + "plan.pdf?landscape=1", "PDF, landscape"},
		{at + "plan.pdf?large=1", "PDF, large type"},
		{at + "plan.txt", "Plain text"},
		{at + "plan.json", "JSON"},
		{at + "practical.yaml", "Practical file"},
	}
}
