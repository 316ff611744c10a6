package web

import (
	"net/http"
	"net/url"
	"strings"
	"testing"

	"plait.example/internal/app"
	"plait.example/internal/practical"
)

// From a corrected step to the next recipe, to a colleague, and forgotten again.
func TestCorrectionsRoad(t *testing.T) {
	s := newSite(t)
	s.get("/corrections").ok().says("main", "Nothing yet")
	rec := s.kept(menu())
	at := "/practical/" + rec.ID + "/dishes"
	form := s.get(at).form("form[action$=dishes][data-pastes]", "")
	form.Set("text", flapjack)
	page := s.post(at, form).ok()
	id := s.now(rec.ID).Practical.Dishes[2].Steps[0].ID
	typed := page.form("#form", "")
	typed.Set("dishes[2].steps[0].hands.likely", "7")
	typed.Set("dishes[2].steps[0].hands.high", "9")
	s.post(at+"/C", typed).ok()
	if step := s.now(rec.ID).Practical.Dishes[2].Steps[0]; step.ID != id || step.Doubt != 0 || !strings.HasPrefix(step.Why[0], "your correction of 25 November 2026: hands") {
		t.Errorf("%+v", step)
	}
	a := s.get("/corrections").ok()
	a.has(".cards li", 1)
	a.says(".cards", "Hands")
	a.says(".cards", "25 November 2026, in Flapjack")
	// The same words in another practical.
	other := s.kept(menu())
	form = s.get("/practical/"+other.ID+"/dishes").form("form[action$=dishes][data-pastes]", "")
	form.Set("text", strings.Replace(flapjack, "Flapjack", "Oat squares", 1))
	s.post("/practical/"+other.ID+"/dishes", form).ok()
	if step := s.now(other.ID).Practical.Dishes[2].Steps[0]; step.Hands.Likely != 7 {
		t.Errorf("the next recipe: %+v", step)
	}
	// A colleague with another opinion.
	file := s.get("/corrections.yaml")
	if file.status != http.StatusOK || !strings.HasPrefix(file.body, "plait-corrections: 1\n") {
		t.Fatalf("file: %s", file.body)
	}
	theirs := strings.NewReplacer("likely 7", "likely 6", "2026-11-25", "2026-10-01").Replace(file.body) +
		"  - words: Grate the carrots.\n    date: 2026-10-02\n    now: {hands: 9}\n    was: {hands: 5}\n"
	look := s.upload("/corrections/compare", "theirs.yaml", theirs).ok()
	look.says(".note", "It brings 1 new figure. In 1 figure it differs from yours")
	look.says(".note table", "likely 7")
	if n := len(remembered(s)); n != 1 {
		t.Errorf("looking has added %d", n-1)
	}
	s.post("/corrections/take", look.form("form[action$=take]", "mine")).ok().says(".done", "Added")
	if list := remembered(s); len(list) != 2 || !strings.Contains(list[0].Figures[0].Now, "likely 7") {
		t.Errorf("%+v", list)
	}
	s.post("/corrections/take", look.form("form[action$=take]", "theirs")).ok()
	if got := remembered(s)[0].Figures[0].Now + remembered(s)[1].Figures[0].Now; !strings.Contains(got, "likely 6") {
		t.Errorf("theirs: %s", got)
	}
	bad := s.upload("/corrections/compare", "bad.yaml", strings.Replace(theirs, "hands: 9", "hands: nine", 1))
	if bad.status != http.StatusUnprocessableEntity {
		t.Errorf("a bad file: status %d", bad.status)
	}
	bad.says(".faults", "cannot be read")
	s.post("/corrections", s.get("/corrections").form(".cards li:first-child form", "")).ok().has(".cards li", 1)
	s.post("/corrections", url.Values{"do": {"off"}}).ok().says("main", "Nothing new is remembered at present")
	typed = s.get(at+"/B").form("#form", "")
	typed.Set("dishes[1].steps[0].hands.likely", "9")
	s.post(at+"/B", typed).ok()
	if n := len(remembered(s)); n != 1 {
		t.Errorf("remembered %d although it is turned off", n)
	}
	s.post("/corrections", url.Values{"do": {"on"}}).ok().says(".done", "is remembered again")
}

func remembered(s *site) []app.Correction {
	s.Helper()
	c, err := s.app.Corrections(s.Context())
	if err != nil {
		s.Fatal(err)
	}
	return c.All()
}

func TestUndoForgets(t *testing.T) {
	s := newSite(t)
	rec := s.kept(menu())
	path := "/practical/" + rec.ID + "/dishes/B"
	typed := s.get(path).form("#form", "")
	typed.Set("dishes[1].steps[0].hands.likely", "9")
	page := s.post(path, typed).ok()
	if len(remembered(s)) != 1 {
		t.Fatalf("%+v", remembered(s))
	}
	s.post("/practical/"+rec.ID+"/undo", page.form(".keep form[action$=undo]", "")).ok()
	if got := remembered(s); len(got) != 0 {
		t.Errorf("after undo %+v", got)
	}
	s.post("/practical/"+rec.ID+"/redo", s.get(path).form(".keep form[action$=redo]", "")).ok()
	if got := remembered(s); len(got) != 1 {
		t.Errorf("after redo %+v", got)
	}
}

func TestTechniques(t *testing.T) {
	s := newSite(t)
	a := s.get("/techniques").ok()
	a.has(".group", 12)
	a.says(".box h2", "The table that comes with plait is in use")
	file := s.get("/techniques.csv").body
	mine := strings.Replace(file, "\r\nknead,Knead by hand,10,basic,", "\r\nknead,Knead by hand,10,high,", 1)
	if mine == file {
		t.Fatal("the table has no such row")
	}
	own := s.upload("/techniques", "mine.csv", mine).ok()
	own.says(".done", "The table is kept")
	own.says(".box", "0 added, 1 changed, 0 gone")
	bad := s.upload("/techniques", "mine.csv", strings.Replace(mine, "\r\nknead,Knead by hand,10,high,", "\r\nknead,Knead by hand,13,hard,", 1))
	if bad.status != http.StatusUnprocessableEntity {
		t.Errorf("status %d", bad.status)
	}
	bad.has(".faults li", 2)
	bad.says(".faults", "(skill group): 13 is outside 1 to 12")
	bad.says(".faults li:last-child", "“hard” is no level; write basic, medium or high")
	if !strings.HasPrefix(bad.Find(".faults li:first-child b").Text(), "Cell C") {
		t.Errorf("%s", bad.Find(".faults li").Text())
	}
	if missing := s.upload("/techniques", "", ""); missing.status != http.StatusUnprocessableEntity {
		t.Errorf("no file: status %d", missing.status)
	}
	s.post("/techniques/drop", nil).ok().says(".box h2", "The table that comes with plait is in use")
	for row, want := range map[[2]int]string{{1, 1}: "A1", {3, 26}: "Z3", {14, 27}: "AA14", {2, 52}: "AZ2", {2, 53}: "BA2"} {
		if got := cell(row[0], row[1]); got != want {
			t.Errorf("row %d, column %d is %s, want %s", row[0], row[1], got, want)
		}
	}
}

func TestSkills(t *testing.T) {
	s := newSite(t)
	p := menu()
	rec := s.kept(p)
	a := s.get("/practical/" + rec.ID + "/skills").ok()
	a.has(".skills tbody tr", 12)
	a.says(".skills tbody tr:nth-child(10)", "Make shortcrust by rubbing in (medium)")
	a.says(".skills tbody tr:nth-child(12)", "nothing yet")
	a.says(".raise", "No dish sets anything: a custard or a jelly would.")
	a.says(".key", "Leek pasties: 0 high, 1 medium")
	p.Dishes = []practical.Dish{}
	s.get("/practical/"+s.kept(p).ID+"/skills").ok().says("main", "No dishes yet")
	s.get("/practical/"+rec.ID+"/dishes").says("main", "Skills of this menu")
}
