package web

import (
	"context"
	"net/http"
	"net/url"
	"strings"
	"testing"
	"time"

	"plait.example/internal/app"
	"plait.example/internal/practical"
)

// ashsPlan is the plan of a learner, invented by us: it never takes
// the pasties out.
const (
	ashsPlan = "Name: Ash Example\n\nTime\tDish\tWhat I do\n9.00\tall\tWash hands\n9.05\tLeek pasties\tRub in the butter and flour, chill 20 mins\n" +
		"9.15\tPepper sauce\tChop peppers\n9.40\tLeek pasties\tRoll out and fill\n9.55\tLeek pasties\tPut in the oven at fan 180C for 25 minutes\n10.30\tPepper sauce\tSimmer 15 minutes\n11.00\tall\tWash up\n"
	takenOut = "10.21\tLeek pasties\tTake out of the oven, golden\n"
)

// handIn hands in that plan for a practical.
func (s *site) handIn(id string) {
	s.Helper()
	if _, err := s.app.HandIn(context.Background(), id, []app.PlanFile{{Name: "ash.txt", Data: []byte(ashsPlan)}}); err != nil {
		s.Fatal(err)
	}
}

// A plan is brought, read and checked; a second one by the same learner says
// what was mended; a broken file is kept and told, and stops only itself.
func TestPlansAreHandedIn(t *testing.T) {
	s := newSite(t)
	rec := s.kept(menu())
	at := "/practical/" + rec.ID + "/plans"
	s.get(at).ok().has("table", 0)
	s.upload(at, "ash.txt", ashsPlan).ok()
	a := s.upload(at, "broken.docx", "PK\x03\x04 and no more").ok()
	a.has(".handed-in tbody tr", 2)
	a.says(".handed-in", "Ash Example")
	a.says(".handed-in", "Could not be read")
	one := s.get(at + "/1").ok()
	one.has(".handed tbody tr", 7)
	one.says("#row-5", "A4")
	one.says(".findings.stops", "Row 5")
	later := strings.Replace(ashsPlan, "10.30\t", takenOut+"10.30\t", 1)
	s.app.Now = func() time.Time { return noon().Add(time.Hour) } // what comes together is of different pupils
	a = s.upload(at, "ash-2.txt", later).ok()
	a.says(".handed-in", "earlier plan")
	a.says(".handed-in", "mended")
	s.get(at + "/9").status404()
	s.upload(at, ".DS_Store", "what a system put into a folder").ok().has(".handed-in tbody tr", 3)
}

func (a answer) status404() {
	a.Helper()
	if a.status != http.StatusNotFound {
		a.Errorf("status %d, want 404", a.status)
	}
}

// A teacher says what a row stands for, and takes it back.
func TestRowIsCorrected(t *testing.T) {
	s := newSite(t)
	rec := s.kept(menu())
	s.handIn(rec.ID)
	at := "/practical/" + rec.ID + "/plans/1"
	s.get(at+"?row=3").ok().has("#correct input[name=step]", 8)
	s.post(at, url.Values{"do": {"fix"}, "row": {"3"}, "step": {"A3", "B2"}}).ok()
	a := s.get(at).ok()
	a.says("#row-3", "A3")
	a.says("#row-3", "B2")
	a.says("#row-3", "as you said")
	s.post(at, url.Values{"do": {"clear"}, "row": {"3"}}).ok()
	s.get(at).ok().says("#row-3", "B1")
	for _, c := range []struct{ row, step, says string }{
		{"x", "A3", "ress Correct"}, {"0", "A3", "ress Correct"}, {"99", "A3", "from 1 to 7"}, {"3", "Z9", "ne of A1"}, {"3", "A3 ", "ne of A1"},
	} {
		if a := s.post(at, url.Values{"do": {"fix"}, "row": {c.row}, "step": {c.step}}); a.status != http.StatusUnprocessableEntity || !strings.Contains(a.body, c.says) {
			t.Errorf("row %s as %s: status %d, want words %q", c.row, c.step, a.status, c.says)
		}
	}
	s.get(at).ok().says("#row-3", "B1") // nothing of that was kept
	s.post(at, url.Values{"do": {"away"}}).ok()
	a = s.get("/practical/" + rec.ID + "/plans").ok()
	a.has(".handed-in", 0)
	a.says(".away", "ash.txt")
	s.post(at, url.Values{"do": {"back"}}).ok().has(".handed-in tbody tr", 1)
}

// An assessed practical shows a learner nothing; a coached one logs what it shows,
// and says no answer.
func TestWhatLearnersAreShown(t *testing.T) {
	s := newSite(t)
	rec := s.kept(menu())
	s.handIn(rec.ID)
	at := "/practical/" + rec.ID + "/plans"
	if a := s.get(at + "/1/page.html"); a.status < 400 || strings.Contains(a.body, "come out") {
		t.Errorf("assessed: status %d", a.status)
	}
	s.post(at, url.Values{"setting": {"coached"}}).ok()
	a := s.get(at + "/1/page.html").ok()
	_, h, err := s.app.HandedPlan(t.Context(), rec.ID, 1)
	if err != nil || len(h.Findings) == 0 {
		t.Fatalf("%v, %d findings", err, len(h.Findings))
	}
	for _, f := range h.Findings {
		if f.Answer != "" && strings.Contains(a.body, f.Answer) {
			t.Errorf("the learner's page holds an answer: %s", f.Answer)
		}
	}
	for form, mark := range map[string]string{"/1/page.pdf": "%PDF", "/1/page.docx": "PK", "/class.xlsx": "PK", "/1/plait.svg": "<svg", "/1/original": "Name: Ash"} {
		if a := s.get(at + form).ok(); !strings.HasPrefix(a.body, mark) {
			t.Errorf("%s begins %q", form, a.body[:min(12, len(a.body))])
		}
	}
	if log := s.get(at + "/asked.txt").ok().body; strings.Count(log, "Ash Example") != 3 || !strings.Contains(log, h.Findings[0].Question) {
		t.Errorf("the log of what learners were shown:\n%s", log)
	}
}

// A plan can be pasted, and what cannot be used comes back.
func TestPlanIsPasted(t *testing.T) {
	s := newSite(t)
	rec := s.kept(menu())
	at := "/practical/" + rec.ID + "/plans"
	s.post(at, url.Values{"name": {"Ash"}, "text": {"9.00 wash hands\n9.05 rub butter into flour\n9.20 chop peppers"}}).ok().says(".handed-in", "Ash")
	if a := s.post(at, url.Values{"text": {" "}}); a.status != http.StatusUnprocessableEntity {
		t.Errorf("nothing brought: status %d", a.status)
	}
}

// A teacher's file of rules turns a rule off; a faulty one is told by line and not taken.
func TestRulesOfOnesOwn(t *testing.T) {
	s := newSite(t)
	rec := s.kept(menu())
	s.handIn(rec.ID)
	at := "/practical/" + rec.ID + "/plans"
	s.get(at+"/1").ok().says(".findings.stops", "When does it come out")
	if a := s.upload(at+"/rules", "rules.yaml", "rules:\n  in-never-out: {on: perhaps}\n"); a.status != http.StatusUnprocessableEntity || !strings.Contains(a.body, "Line 2") {
		t.Errorf("a faulty file: status %d", a.status)
	}
	s.upload(at+"/rules", "rules.yaml", "rules:\n  in-never-out: {on: false}\n").ok().says("details", "Your own file is in use")
	if a := s.get(at + "/1").ok(); strings.Contains(a.body, "When does it come out") {
		t.Error("the rule that is off still tells")
	}
	if a := s.get(at + "/rules.yaml").ok(); !strings.Contains(a.body, "on: false") {
		t.Errorf("the file comes back as %q", a.body)
	}
	s.post(at+"/rules", url.Values{"do": {"drop"}}).ok().says("details", "The usual rules are in use")
}

func TestDishIsScaled(t *testing.T) {
	s := newSite(t)
	p := menu()
	p.Dishes[0].Ingredients = []practical.Ingredient{{Raw: "200 g flour", Quantity: 200, Unit: "g", Name: "flour"}, {Raw: "2 eggs", Quantity: 2, Name: "eggs"}}
	rec := s.kept(p)
	at := "/practical/" + rec.ID + "/dishes/A"
	form := func(n string) url.Values {
		return url.Values{"version": {s.get(at).Find("#keep").AttrOr("data-version", "")}, "portions": {n}}
	}
	s.post(at+"/portions", form("2")).ok().says("#ingredients", "100 g flour")
	if d := s.now(rec.ID).Practical.Dishes[0]; d.Portions != 2 || d.Ingredients[1].Quantity != 1 {
		t.Errorf("%+v", d.Ingredients)
	}
	s.post(at+"/portions", form("many")).ok().says("main", "1 to 500")
}
