package web

import (
	"fmt"
	"io"
	"net/http"
	"strconv"
	"strings"

	"plait.example/internal/app"
	"plait.example/internal/practical"
)

// HandedInPage is the plans that learners handed in for a practical: who, how
// far, and what the class gets wrong.
type HandedInPage struct {
	Base
	Plans      []HandedCard
	Class      ClassTable
	Setting    string
	Choices    []SettingChoice
	Asked      int    // entries in the log of what learners were shown
	Text       string // pasted and not kept
	Name       string
	Done       string
	Faults     practical.Faults
	Passed     []string // files that were brought and are no plans, each with why
	Room       []Field  // how many of what the room has
	RoomOpen   bool     // nothing was said of it, or something wrong
	Waiting    int      // plans that are not checked yet and so not shown
	hours      int
	Away       []app.HandedIn   // put away; each can be brought back
	Rules      bool             // the teacher has a file of rules of their own
	Unusable   practical.Faults // of that file: the usual rules are in use instead
	RuleFaults practical.Faults // of a file of rules that was just brought
}

// HandedCard is a plan in short.
type HandedCard struct {
	*app.HandedPlan
	Link                 string
	Stops, Marks, Polish int
	Change               string // since the plan before it
	Main                 string // the question that matters most
	Why                  string // it could not be read
	Unsaid               string // why it was read and not checked
}

// ClassTable is what to teach again, and the faults that are common.
type ClassTable struct {
	Again  []Again
	Common []Common
	Busy   []BusyRow
}

// BusyRow is a stretch of the clock in which the plans together want more than
// the room has.
type BusyRow struct {
	When, What string
	Unknown    bool // how many the room has was not said
	Who        []string
}

// Again is something to teach again.
type Again struct {
	What   string
	Pupils int
}

// Common is a fault that more than one learner makes.
type Common struct {
	Question string
	Severity string
	Who      string
	Pupils   int
}

// SettingChoice is a choice of a list of buttons.
type SettingChoice struct {
	Value, Words, About string
	Chosen              bool
}

// settingChoices are what learners may be shown.
var settingChoices = []SettingChoice{
	{Value: string(app.Assessed), Words: "Assessed", About: "nothing of the check is for the learner"},
	{Value: string(app.Coached), Words: "Coached", About: "the learner gets up to five questions"},
	{Value: string(app.Worked), Words: "Worked example", About: "questions, with what was seen in the plan"},
}

// severityWords are the severities as the pages say them.
var severityWords = map[string]string{"stops": "Stops the cook, or is unsafe", "marks": "Costs marks", "polish": "Small"}

func (s *Server) handedIn(w http.ResponseWriter, r *http.Request) error {
	wanting, of, wait, err := s.toWait(r)
	if err != nil {
		return err
	}
	if wait {
		return s.waiting(w, r, wanting, of)
	}
	page, err := s.handedInPage(r)
	if err != nil {
		return err
	}
	return s.render(w, http.StatusOK, "handedin", page)
}

// handedInPage is the page with the plans; without them while many of them would
// have to be checked first.
func (s *Server) handedInPage(r *http.Request) (HandedInPage, error) {
	id := r.PathValue("id")
	page, err := s.handedInFrame(r)
	if err != nil {
		return page, err
	}
	wanting, _, wait, err := s.toWait(r)
	if err != nil || wait {
		page.Waiting = wanting
		return page, err
	}
	_, plans, err := s.app.HandedPlans(r.Context(), id, nil)
	if err != nil {
		return page, err
	}
	for _, h := range plans {
		page.Plans = append(page.Plans, handedCard(id, h))
	}
	room, err := s.app.RoomOf(r.Context(), id)
	if err != nil {
		return page, err
	}
	class := s.app.Class(plans, room)
	hours := page.hours
	for _, b := range class.Busy {
		row := BusyRow{When: b.From.Write(hours) + " to " + b.Until.Write(hours), What: fmt.Sprintf("%d %s wanted, the room has %d", b.Most, b.Kit, b.Have), Unknown: b.Have == 0}
		if row.Unknown {
			row.What = fmt.Sprintf("%d %s wanted at once", b.Most, b.Kit)
		}
		for _, u := range b.Who {
			row.Who = append(row.Who, u.Who+" "+u.From.Write(hours)+"\u2013"+u.Until.Write(hours))
		}
		page.Class.Busy = append(page.Class.Busy, row)
	}
	for _, t := range class.Again {
		page.Class.Again = append(page.Class.Again, Again{t.What, t.Pupils})
	}
	for _, f := range class.Faults {
		if len(f.Pupils) > 1 && f.Question != "" {
			who := strings.Join(f.Pupils, ", ")
			if len(f.Pupils) == len(class.Pupils) {
				who = "Everybody."
			}
			page.Class.Common = append(page.Class.Common, Common{f.Question, severityWords[string(f.Severity)], who, len(f.Pupils)})
		}
	}
	return page, nil
}

// handedInFrame is what of the page needs no plan to be checked.
func (s *Server) handedInFrame(r *http.Request) (page HandedInPage, err error) {
	id := r.PathValue("id")
	rec, err := s.app.Open(r.Context(), id)
	if err != nil {
		return page, err
	}
	setting, err := s.app.FeedbackSetting(r.Context(), id)
	if err != nil {
		return page, err
	}
	asked, err := s.app.Asked(r.Context(), id)
	if err != nil {
		return page, err
	}
	rules, err := s.app.Rules(r.Context())
	if err != nil {
		return page, err
	}
	page = HandedInPage{
		Base: s.base(r, rec, "Check", nil), Setting: string(setting), Asked: len(asked), Done: doneWords[r.URL.Query().Get("done")],
		hours: rec.Practical.Clock.Hours, Rules: rules.Own != "", Unusable: rules.Faults[:min(len(rules.Faults), mostFaults)],
	}
	for _, c := range settingChoices {
		c.Chosen = c.Value == page.Setting
		page.Choices = append(page.Choices, c)
	}
	room, err := s.app.RoomOf(r.Context(), id)
	if err != nil {
		return page, err
	}
	page.Room, page.RoomOpen = roomFields(room), len(room) == 0
	page.Away, err = s.app.PutAside(r.Context(), id)
	return page, err
}

func handedCard(id string, h *app.HandedPlan) HandedCard {
	c := HandedCard{
		HandedPlan: h, Link: fmt.Sprintf("/practical/%s/plans/%d", id, h.ID),
		Stops: h.Count("stops"), Marks: h.Count("marks"), Polish: h.Count("polish"),
	}
	if h.Fault != nil {
		c.Why = h.Fault.Message + "; " + h.Fault.Hint
	}
	if h.Unchecked != nil {
		c.Unsaid = h.Unchecked.Message + "; " + h.Unchecked.Hint
	}
	if m, second := h.Mended(); second {
		c.Change = fmt.Sprintf("since the plan before: %d mended, %d still there, %d new", len(m.Gone), len(m.Still), len(m.New))
	}
	if len(h.Findings) > 0 {
		c.Main = h.Findings[0].Question
		if row := h.Findings[0].Row; row > 0 {
			c.Main = fmt.Sprintf("Row %d: %s", row, c.Main)
		}
	}
	return c
}

// handIn keeps the files, or the pasted plan, that the form brings; or changes
// what learners may be shown.
func (s *Server) handIn(w http.ResponseWriter, r *http.Request) error {
	id := r.PathValue("id")
	if setting := r.PostFormValue("setting"); setting != "" {
		if err := s.app.SetFeedback(r.Context(), id, app.Setting(setting)); err != nil {
			return err
		}
		http.Redirect(w, r, r.URL.Path+"?done=setting", http.StatusSeeOther)
		return nil
	}
	files, err := givenPlans(r)
	if err != nil {
		return err
	}
	in, err := s.app.HandIn(r.Context(), id, files)
	if err != nil {
		return err
	}
	if len(files) == 0 {
		in.Faults = practical.Faults{{Code: practical.Invalid, Message: "no plan was chosen and none was pasted", Hint: "choose files, or paste the table of one plan"}}
	}
	if len(in.Faults) == 0 && len(in.Passed) == 0 {
		done := "plans"
		if in.Kept == 0 {
			done = "same"
		}
		http.Redirect(w, r, r.URL.Path+"?done="+done, http.StatusSeeOther)
		return nil
	}
	return s.handedInPart(w, r, in)
}

// handedInPart says what of the files that were brought was not kept. A pasted
// plan that was kept is not in the form again.
func (s *Server) handedInPart(w http.ResponseWriter, r *http.Request, in app.Handed) error {
	page, err := s.handedInPage(r)
	if err != nil {
		return err
	}
	page.Faults = in.Faults
	for _, f := range in.Passed {
		page.Passed = append(page.Passed, f.Name+": "+f.Own)
	}
	if in.Kept+in.There > 0 {
		page.Done = count(in.Kept+in.There, "plan") + " kept."
	} else if len(in.Passed) == 0 {
		page.Text, page.Name = r.PostFormValue("text"), r.PostFormValue("name")
	}
	if len(in.Faults) == 0 {
		page.Said = "Passed over: " + page.Passed[0]
		return s.render(w, http.StatusOK, "handedin", page)
	}
	page.Said = "Not all was kept. " + in.Faults[0].Message
	return s.render(w, http.StatusUnprocessableEntity, "handedin", page)
}

// givenPlans are the files that a form brings, and the plan pasted into it.
func givenPlans(r *http.Request) (files []app.PlanFile, err error) {
	if r.MultipartForm != nil {
		for _, head := range r.MultipartForm.File["file"] {
			file, err := head.Open()
			if err != nil {
				return nil, fmt.Errorf("open what was sent: %w", err)
			}
			data, err := io.ReadAll(file)
			_ = file.Close() // it was only read
			if err != nil {
				return nil, fmt.Errorf("read what was sent: %w", err)
			}
			files = append(files, app.PlanFile{Name: head.Filename, Data: data})
		}
	}
	if text := r.PostFormValue("text"); strings.TrimSpace(text) != "" {
		name := strings.TrimSpace(r.PostFormValue("name"))
		if name == "" {
			name = "pasted plan"
		}
		files = append(files, app.PlanFile{Name: name + ".txt", Data: []byte(text)})
	}
	return files, nil
}

// changeRules takes a teacher's file of rules, or goes back to the usual ones.
func (s *Server) changeRules(w http.ResponseWriter, r *http.Request) error {
	back := strings.TrimSuffix(r.URL.Path, "/rules")
	if r.PostFormValue("do") == "drop" {
		if err := s.app.DropRules(r.Context()); err != nil {
			return err
		}
		http.Redirect(w, r, back+"?done=usual", http.StatusSeeOther)
		return nil
	}
	name, data, err := sent(r)
	if err == nil {
		if err = s.app.UseRules(r.Context(), name, data); err == nil {
			http.Redirect(w, r, back+"?done=rules", http.StatusSeeOther)
			return nil
		}
	}
	page, faults, err := s.refusedPage(r, err)
	if err != nil {
		return err
	}
	page.RuleFaults, page.Said = faults, "The file of rules was not taken. "+faults[0].Message
	return s.render(w, http.StatusUnprocessableEntity, "handedin", page)
}

// refusedPage is the page of plans with the faults for which something was not
// kept; what is no fault of the visitor's is the error.
func (s *Server) refusedPage(r *http.Request, refused error) (HandedInPage, practical.Faults, error) {
	faults, told := faultsOf(refused)
	if !told {
		return HandedInPage{}, nil, refused
	}
	page, err := s.handedInPage(r)
	return page, faults, err
}

// rulesFile sends the teacher's file of rules.
func (s *Server) rulesFile(w http.ResponseWriter, r *http.Request) error {
	rules, err := s.app.Rules(r.Context())
	if err != nil {
		return err
	}
	return send(w, app.Document{Name: "rules.yaml", MediaType: "application/yaml", Data: []byte(rules.Own)}, true)
}

// classSheet sends the table of the class.
func (s *Server) classSheet(w http.ResponseWriter, r *http.Request) error {
	_, plans, err := s.app.HandedPlans(r.Context(), r.PathValue("id"), nil)
	if err != nil {
		return err
	}
	room, err := s.app.RoomOf(r.Context(), r.PathValue("id"))
	if err != nil {
		return err
	}
	doc, err := s.app.ClassSheet(plans, room)
	if err != nil {
		return err
	}
	return send(w, doc, true)
}

// asked sends the log of what learners were shown.
func (s *Server) asked(w http.ResponseWriter, r *http.Request) error {
	list, err := s.app.Asked(r.Context(), r.PathValue("id"))
	if err != nil {
		return err
	}
	text := "What learners were shown of the check of their plans\n\n" + strings.Join(list, "\n") + "\n"
	return send(w, app.Document{Name: "asked.txt", MediaType: "text/plain; charset=utf-8", Data: []byte(text)}, false)
}

// planNumber is which plan an address means; 0 is none.
func planNumber(r *http.Request) int64 {
	n, err := strconv.ParseInt(r.PathValue("plan"), 10, 64)
	if err != nil {
		return 0
	}
	return n
}
