package web

import (
	"cmp"
	"fmt"
	"net/http"
	"slices"
	"strconv"

	"plait.example/internal/app"
	"plait.example/internal/picture"
	"plait.example/internal/practical"
)

// HandedPage is one plan that was handed in: its rows as they were read, and
// what was found, for the teacher.
type HandedPage struct {
	Base
	HandedCard
	Action  string
	Rows    []HandedRow
	Groups  []FoundGroup
	Correct *Correcting
	Shows   bool // the setting lets the learner have a page
	Word    bool // the plan is a Word document
	Unread  []string
	Done    string
	Earlier *PlanLink // the plans before and after it in the list; nil: there is none
	Next    *PlanLink
}

// PlanLink leads to another plan.
type PlanLink struct{ Link, Who string }

// HandedRow is a row as it was read.
type HandedRow struct {
	Number     int
	Clock      string
	How        string // how the time is known, when it is not just written
	Chips      []Chip
	Text       string
	Points     string
	Steps      []string // that it stands for
	Sure       string
	Unsure     bool
	Fixed      bool // by the teacher
	Found      []FoundFault
	Correcting bool
}

// FoundFault is a finding on the page.
type FoundFault struct {
	Severity, Words, Question, Evidence, Answer string
	Row                                         int
}

// FoundGroup is the findings of a severity.
type FoundGroup struct {
	Severity, Words string
	List            []FoundFault
}

// Correcting is the choice of steps for one row.
type Correcting struct {
	Row    int
	Text   string
	Dishes []StepsOf
}

// StepsOf is the steps of a dish to choose from.
type StepsOf struct {
	Chip
	Steps []StepChoice
}

// StepChoice is a step to choose.
type StepChoice struct {
	ID, Text string
	Chosen   bool
}

func (s *Server) handed(w http.ResponseWriter, r *http.Request) error {
	wanting, of, wait, err := s.toWait(r)
	if err != nil {
		return err
	}
	if wait {
		return s.waiting(w, r, wanting, of)
	}
	page, err := s.handedPage(r)
	if err != nil {
		return err
	}
	return s.render(w, http.StatusOK, "handed", page)
}

func (s *Server) handedPage(r *http.Request) (HandedPage, error) {
	rec, h, err := s.app.HandedPlan(r.Context(), r.PathValue("id"), planNumber(r))
	if err != nil {
		return HandedPage{}, err
	}
	_, all, err := s.app.HandedPlans(r.Context(), rec.ID, nil)
	if err != nil {
		return HandedPage{}, err
	}
	setting, err := s.app.FeedbackSetting(r.Context(), rec.ID)
	if err != nil {
		return HandedPage{}, err
	}
	card := handedCard(rec.ID, h)
	page := HandedPage{
		Base: s.base(r, rec, "Check", nil), HandedCard: card, Action: card.Link, Shows: setting.Shows(),
		Word: h.Checked.Word, Unread: slices.Concat(h.Notes, h.Matched.Plan.Unread), Done: doneWords[r.URL.Query().Get("done")],
	}
	page.Title = h.Who + " · " + page.Bar.Title
	page.Earlier, page.Next = beside(rec.ID, all, h.ID)
	for _, severity := range []string{"stops", "marks", "polish"} {
		g := FoundGroup{Severity: severity, Words: severityWords[severity]}
		for _, f := range h.Findings {
			if string(f.Severity) == severity {
				g.List = append(g.List, FoundFault{severity, severityWords[severity], f.Question, f.Evidence, f.Answer, f.Row})
			}
		}
		if len(g.List) > 0 {
			page.Groups = append(page.Groups, g)
		}
	}
	correct, _ := strconv.Atoi(r.URL.Query().Get("row"))
	page.Rows = handedRows(rec.Practical, h, page.Groups, correct)
	page.Correct = correcting(rec.Practical, h, correct)
	return page, nil
}

// beside leads to the plans before and after one in the list.
func beside(id string, all []*app.HandedPlan, plan int64) (earlier, next *PlanLink) {
	link := func(i int) *PlanLink {
		if i < 0 || i >= len(all) {
			return nil
		}
		return &PlanLink{fmt.Sprintf("/practical/%s/plans/%d", id, all[i].ID), all[i].Who}
	}
	at := slices.IndexFunc(all, func(h *app.HandedPlan) bool { return h.ID == plan })
	return link(at - 1), link(at + 1)
}

func handedRows(p *practical.Practical, h *app.HandedPlan, groups []FoundGroup, correct int) (rows []HandedRow) {
	for _, r := range h.Matched.Rows {
		row := HandedRow{
			Number: r.Number, Text: r.Text, Points: r.Points, Steps: app.Stands(p, r), Correcting: r.Number == correct,
			Sure: fmt.Sprintf("%d %%", int(100*r.Sure+0.5)), Unsure: r.Sure < 0.5,
		}
		if r.Clock != "" {
			row.Clock = r.At.Write(24)
		}
		row.How = map[string]string{"next": "blank: next", "counted": "worked out", "mended": "read from “" + r.Written + "”"}[string(r.Clock)]
		_, row.Fixed = h.Fixed[r.Number]
		for _, letter := range r.Letters {
			if i := dishIndex(p, letter); i >= 0 {
				row.Chips = append(row.Chips, chip(i, letter, named(p.Dishes[i])))
			}
		}
		for _, g := range groups {
			for _, f := range g.List {
				if f.Row == r.Number {
					row.Found = append(row.Found, f)
				}
			}
		}
		rows = append(rows, row)
	}
	return rows
}

// correcting is the choice of steps for a row; nil when none is being corrected.
func correcting(p *practical.Practical, h *app.HandedPlan, row int) *Correcting {
	for _, r := range h.Matched.Rows {
		if r.Number != row {
			continue
		}
		c := &Correcting{Row: row, Text: r.Text}
		var chosen []string
		for _, s := range r.Steps {
			chosen = append(chosen, s.ID)
		}
		for i, d := range p.Dishes {
			of := StepsOf{Chip: chip(i, d.Letter, named(d))}
			for _, s := range d.Steps {
				of.Steps = append(of.Steps, StepChoice{s.ID, s.Text, slices.Contains(chosen, s.ID)})
			}
			serve := d.Letter + app.ServeStep
			of.Steps = append(of.Steps, StepChoice{serve, "Serve it", slices.Contains(chosen, serve)})
			c.Dishes = append(c.Dishes, of)
		}
		slices.SortStableFunc(c.Dishes, func(a, b StepsOf) int { // the row's own dishes come first
			return cmp.Compare(own(r.Letters, b.Letter), own(r.Letters, a.Letter))
		})
		return c
	}
	return nil
}

// own is 1 for a letter that is in the list, else 0.
func own(letters []string, letter string) int {
	if slices.Contains(letters, letter) {
		return 1
	}
	return 0
}

// changeHanded corrects what a row stands for, or puts the plan away.
func (s *Server) changeHanded(w http.ResponseWriter, r *http.Request) error {
	id, plan := r.PathValue("id"), planNumber(r)
	switch do := r.PostFormValue("do"); do {
	case "away", "back":
		if err := s.app.PutPlanAway(r.Context(), id, plan, do == "away"); err != nil {
			return err
		}
		http.Redirect(w, r, "/practical/"+id+"/plans?done="+do, http.StatusSeeOther)
		return nil
	case "fix", "clear":
		row, err := strconv.Atoi(r.PostFormValue("row"))
		if err != nil || row < 1 {
			return practical.Fault{Code: practical.Invalid, Field: "row", Message: fmt.Sprintf("%.20q is no row of a plan", r.PostFormValue("row")), Hint: "press Correct beside a row"}
		}
		if err := s.app.FixRow(r.Context(), id, plan, row, r.PostForm["step"], do == "clear"); err != nil {
			return err
		}
		http.Redirect(w, r, fmt.Sprintf("%s?done=row#row-%d", r.URL.Path, row), http.StatusSeeOther)
		return nil
	}
	return practical.Fault{Code: practical.Invalid, Message: "nothing was asked for", Hint: "press one of the buttons"}
}

// handedPlait draws the learner's own plan.
func (s *Server) handedPlait(w http.ResponseWriter, r *http.Request) error {
	_, h, err := s.app.HandedPlan(r.Context(), r.PathValue("id"), planNumber(r))
	if err != nil {
		return err
	}
	w.Header().Set("Content-Type", "image/svg+xml")
	_, err = w.Write(picture.Plait(h.Plait(), picture.Options{Rows: true, Width: 900}))
	return err
}

// pupilPage sends a learner's page in one of its forms.
func (s *Server) pupilPage(form string) func(http.ResponseWriter, *http.Request) error {
	return func(w http.ResponseWriter, r *http.Request) error {
		_, h, err := s.app.HandedPlan(r.Context(), r.PathValue("id"), planNumber(r))
		if err != nil {
			return err
		}
		doc, err := s.app.PupilPage(r.Context(), r.PathValue("id"), h, form)
		if err != nil {
			return err
		}
		if form == app.PageHTML {
			w.Header().Set("Content-Security-Policy", printPolicy)
		}
		return send(w, doc, form != app.PageHTML && form != app.PagePDF)
	}
}

// original sends the plan as it was handed in; never to be shown as a page of ours.
func (s *Server) original(w http.ResponseWriter, r *http.Request) error {
	doc, err := s.app.HandedFile(r.Context(), r.PathValue("id"), planNumber(r))
	if err != nil {
		return err
	}
	return send(w, doc, true)
}
