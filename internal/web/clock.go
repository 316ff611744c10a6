package web

import (
	"net/http"
)

// FormPage is a page that is one form of groups: the clock, the kitchen.
type FormPage struct {
	Base
	Heading, About string
	Action         string
	Groups         []Group
	Next           Next
	Mirror         string // what is taken from the answer when a change saves itself
}

// Next is where the road goes on.
type Next struct{ Link, Words string }

var clockPrefixes = []string{"title", "date", "cooks", "clock", "rules"}

// clock is the page of the clock and the rules.
func (s *Server) clock(w http.ResponseWriter, r *http.Request) error {
	rec, err := s.app.Open(r.Context(), r.PathValue("id"))
	if err != nil {
		return err
	}
	return s.render(w, http.StatusOK, "form", s.clockPage(r, edited{rec: rec, focus: r.URL.Query().Get("focus")}))
}

func (s *Server) saveClock(w http.ResponseWriter, r *http.Request) error {
	e, ok, err := s.edit(w, r, clockPrefixes, lists("clock"))
	if !ok {
		return err
	}
	if len(e.unread) > 0 {
		return s.render(w, http.StatusUnprocessableEntity, "form", s.clockPage(r, e))
	}
	e.home(w, r, r.URL.Path, nil)
	return nil
}

func (s *Server) clockPage(r *http.Request, e edited) FormPage {
	f := newForm(e.rec.Practical, r.PostForm, e.unread, e.focus)
	breaks, add := f.entries("clock.rest-breaks", "rest break", "at", "minutes")
	page := FormPage{
		Heading: "Clock and rules", About: "The starting point has filled all of this in. Change what is different at your school, and leave the rest.",
		Action: "/practical/" + e.rec.ID,
		Groups: []Group{
			{Legend: "The session", Fields: f.fields("", "title", "date", "cooks")},
			{Legend: "The clock", Fields: f.fields("clock.", "set-up", "start", "finish", "hours", "round")},
			{Legend: "Extra time", About: "Set-up begins earlier; cooking and serving finish later. 25 means a quarter more.", Fields: f.fields("clock.extra-time.", "set-up", "cook", "serve")},
			{Legend: "Rest breaks", About: "The clock and the hands stop. The food goes on.", Entries: breaks, Add: add},
			{Legend: "Set-up", Fields: f.fields("rules.", "set-up-verbs", "oven-in-set-up")},
			{Legend: "Serving and tasting", Fields: f.fields("rules.", "dishes", "serving-window", "tasting", "tasting-inside")},
			{Legend: "Washing-up and clean-down", Fields: f.fields("rules.", "wash-up-every", "wash-up", "raw-clean-down", "rinse", "clean-down", "clean-down-inside")},
			{Legend: "Pace", Fields: f.fields("rules.", "pace", "looks")},
		},
		Next: Next{"/practical/" + e.rec.ID + "/kitchen", "On to the kitchen"},
	}
	page.Base, page.Mirror = s.base(r, e.rec, "Clock", f), mirror(page.Groups)
	return page
}
