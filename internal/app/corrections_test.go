package app_test

import (
	"errors"
	"slices"
	"strings"
	"testing"

	"plait.example/internal/app"
	"plait.example/internal/practical"
	"plait.example/internal/recipe"
)

// kneading is an invented recipe.
const kneading = `Soda bread

450 g plain flour
300 ml buttermilk

1. Mix the flour and the buttermilk.
2. Knead the dough for 8 minutes.
3. Bake at 200 C for 30 minutes.
`

func mustAdd(t *testing.T, a *app.App, r app.Record, text string) app.Record {
	t.Helper()
	r, _, err := a.AddDish(t.Context(), r.ID, r.Version, text)
	if err != nil {
		t.Fatal(err)
	}
	return r
}

// step is the step of the last dish with these words.
func step(t *testing.T, r app.Record, words string) *practical.Step {
	t.Helper()
	d := r.Practical.Dishes[len(r.Practical.Dishes)-1]
	i := slices.IndexFunc(d.Steps, func(s practical.Step) bool { return strings.Contains(s.Text, words) })
	if i < 0 {
		t.Fatalf("no step %q in %+v", words, d.Steps)
	}
	return &r.Practical.Dishes[len(r.Practical.Dishes)-1].Steps[i]
}

// mustCorrect puts the hands of the kneading step right.
func mustCorrect(t *testing.T, a *app.App, r app.Record, hands practical.Estimate) app.Record {
	t.Helper()
	id := step(t, r, "Knead").ID
	r, _, err := a.Correct(t.Context(), r.ID, r.Version, "knead", func(p *practical.Practical) practical.Faults {
		for i := range p.Dishes {
			for k := range p.Dishes[i].Steps {
				if p.Dishes[i].Steps[k].ID == id {
					p.Dishes[i].Steps[k].Hands = hands
				}
			}
		}
		return nil
	}, nil)
	if err != nil {
		t.Fatal(err)
	}
	return r
}

func remembered(t *testing.T, a *app.App) []recipe.Correction {
	t.Helper()
	c, err := a.Corrections(t.Context())
	if err != nil {
		t.Fatal(err)
	}
	return c.All()
}

func TestCorrectionsAreRemembered(t *testing.T) {
	a := mustApp(t)
	r := mustAdd(t, a, mustNew(t, a), kneading)
	// A form saves itself field by field: the first state is out of order.
	r = mustCorrect(t, a, r, practical.Estimate{Low: 12, Likely: 8, High: 8})
	if got := remembered(t, a); len(got) != 0 {
		t.Errorf("minutes out of order are used: %+v", got)
	}
	want := practical.Estimate{Low: 12, Likely: 14, High: 20}
	r = mustCorrect(t, a, r, want)
	got := remembered(t, a)
	if len(got) != 1 || got[0].Figures[0] != (recipe.Figure{Name: "hands", Was: "8", Now: "12 to 20, likely 14"}) || got[0].Recipe != "Soda bread" || got[0].Date != "2026-11-25" {
		t.Fatalf("remembered %+v", got)
	}
	if s := step(t, r, "Knead"); s.Doubt != 0 || !strings.HasPrefix(s.Why[0], "your correction of 25 November 2026: hands") || strings.HasPrefix(s.Why[1], "your correction") {
		t.Errorf("the step itself: doubt %g, why %q", s.Doubt, s.Why)
	}
	other := mustAdd(t, a, mustNew(t, a), strings.Replace(kneading, "Soda bread", "Rye bread", 1))
	if s := step(t, other, "Knead"); s.Hands != want {
		t.Errorf("in the next recipe %+v", s.Hands)
	}
	theirs := &app.App{Store: a.Store, Now: a.Now, Teacher: "another"}
	if s := step(t, mustAdd(t, theirs, mustNew(t, theirs), kneading), "Knead"); s.Hands == want {
		t.Error("another teacher reads with these corrections")
	}
	if err := a.Forget(t.Context(), "and knead the dough, 8 mins"); err != nil || len(remembered(t, a)) != 0 {
		t.Errorf("not forgotten: %v", err)
	}
}

func TestUndoForgets(t *testing.T) {
	a := mustApp(t)
	before := mustAdd(t, a, mustNew(t, a), kneading)
	after := mustCorrect(t, a, before, practical.Around(14))
	back, err := a.Undo(t.Context(), after.ID, after.Version)
	if err != nil {
		t.Fatal(err)
	}
	if err := a.TakenBack(t.Context(), after.Practical, back.Practical); err != nil || len(remembered(t, a)) != 0 {
		t.Errorf("after undo %+v, %v", remembered(t, a), err)
	}
	if err := a.TakenBack(t.Context(), back.Practical, after.Practical); err != nil || len(remembered(t, a)) != 1 {
		t.Errorf("after redo %+v, %v", remembered(t, a), err)
	}
}

func TestShareCorrections(t *testing.T) {
	mine, theirs := mustApp(t), mustApp(t)
	mustCorrect(t, mine, mustAdd(t, mine, mustNew(t, mine), kneading), practical.Around(14))
	mustCorrect(t, theirs, mustAdd(t, theirs, mustNew(t, theirs), kneading), practical.Around(6))
	c, err := theirs.Corrections(t.Context())
	if err != nil {
		t.Fatal(err)
	}
	file := c.Write()
	in, err := mine.CompareCorrections(t.Context(), "theirs.yaml", file)
	if err != nil || in.Added != 0 || len(in.Conflicts) != 1 || in.Conflicts[0].Mine != "11 to 19, likely 14" || in.Conflicts[0].Theirs != "5 to 8, likely 6" {
		t.Errorf("%+v, %v", in, err)
	}
	for _, tt := range []struct {
		prefer bool
		want   string
	}{{false, "11 to 19, likely 14"}, {true, "5 to 8, likely 6"}} {
		if _, err := mine.TakeCorrections(t.Context(), "theirs.yaml", file, tt.prefer); err != nil {
			t.Fatal(err)
		}
		if got := remembered(t, mine)[0].Figures[0].Now; got != tt.want {
			t.Errorf("theirs preferred %v: %s, want %s", tt.prefer, got, tt.want)
		}
	}
	var faults practical.Faults
	if _, err := mine.TakeCorrections(t.Context(), "bad.yaml", []byte("title: scones"), false); !errors.As(err, &faults) {
		t.Errorf("a file that is none: %v", err)
	}
}

func TestTechniquesOfATeacher(t *testing.T) {
	a := mustApp(t)
	table, own, err := a.Techniques(t.Context())
	if err != nil || own {
		t.Fatal(own, err)
	}
	edited := strings.Replace(string(table.Write()), "rub-in,", "rub-in-slowly,", 1)
	edited = edited[:strings.Index(edited, "\r\nknead-light,")] + edited[strings.Index(edited, "\r\nknock-back,"):] // one row less
	kept, err := a.UseTechniques(t.Context(), "mine.csv", []byte(edited))
	if err != nil {
		t.Fatal(err)
	}
	if c := app.ChangesOf(kept); !slices.Equal(c.Added, []string{"rub-in-slowly"}) || !slices.Equal(c.Gone, []string{"rub-in", "knead-light"}) || len(c.Changed) != 0 {
		t.Errorf("changes %+v", c)
	}
	_, err = a.UseTechniques(t.Context(), "bad.csv", []byte(strings.Replace(edited, "basic", "easy", 1)))
	var faults practical.Faults
	if !errors.As(err, &faults) || faults[0].Line != 2 {
		t.Errorf("a bad table: %v", err)
	}
	if now, own, err := a.Techniques(t.Context()); err != nil || !own || now.Find("rub-in-slowly") == nil {
		t.Errorf("own %v, %v", own, err)
	}
	if err := a.DropTechniques(t.Context()); err != nil {
		t.Fatal(err)
	}
	if _, own, _ := a.Techniques(t.Context()); own {
		t.Error("still the teacher's own")
	}
}

func TestAddChosen(t *testing.T) {
	a := mustApp(t)
	r := mustNew(t, a)
	r, _, err := a.AddChosen(t.Context(), r.ID, r.Version, "two.docx", []string{kneading, scones})
	if err != nil || len(r.Practical.Dishes) != 2 || r.Practical.Dishes[1].Name != "Cheese scones" || r.Practical.Dishes[1].Text != scones {
		t.Errorf("%v: %+v", err, r.Practical.Dishes)
	}
}

// edit changes a step of the first dish, by its place.
func edit(t *testing.T, a *app.App, r app.Record, k int, change func(*practical.Step)) app.Record {
	t.Helper()
	r, _, err := a.Correct(t.Context(), r.ID, r.Version, "edit", func(p *practical.Practical) practical.Faults {
		change(&p.Dishes[0].Steps[k])
		return nil
	}, nil)
	if err != nil {
		t.Fatal(err)
	}
	return r
}

// A step that the teacher puts in other words is still known by those of the recipe.
func TestRewordedStepIsKnown(t *testing.T) {
	a := mustApp(t)
	r := mustAdd(t, a, mustNew(t, a), kneading)
	k := slices.IndexFunc(r.Practical.Dishes[0].Steps, func(s practical.Step) bool { return strings.HasPrefix(s.Text, "Knead") })
	r = edit(t, a, r, k, func(s *practical.Step) { s.Text = "Work the dough well." })
	r = edit(t, a, r, k, func(s *practical.Step) { s.Text = "Work it on a floured board." })
	edit(t, a, r, k, func(s *practical.Step) { s.Hands = practical.Around(15) })
	if s := step(t, mustAdd(t, a, mustNew(t, a), kneading), "Knead"); s.Hands != practical.Around(15) {
		t.Errorf("read again %+v; remembered %+v", s, remembered(t, a))
	}
}

// The reason tells what the recipe was read as, however many changes there were.
func TestReasonTellsTheReading(t *testing.T) {
	a := mustApp(t)
	r := mustAdd(t, a, mustNew(t, a), kneading)
	k := slices.IndexFunc(r.Practical.Dishes[0].Steps, func(s practical.Step) bool { return strings.HasPrefix(s.Text, "Knead") })
	for _, minutes := range []int{9, 12, 20} {
		r = edit(t, a, r, k, func(s *practical.Step) { s.Hands = practical.Estimate{Low: minutes, Likely: minutes, High: minutes} })
	}
	why := r.Practical.Dishes[0].Steps[k].Why
	if why[0] != "your correction of 25 November 2026: hands 20 minutes (read as 8)" || strings.HasPrefix(why[1], "your correction") {
		t.Errorf("%q", why)
	}
	r = edit(t, a, r, k, func(s *practical.Step) { s.Hands = practical.Estimate{Low: 8, Likely: 8, High: 8} })
	if why := r.Practical.Dishes[0].Steps[k].Why; strings.HasPrefix(why[0], "your correction") || len(remembered(t, a)) != 0 {
		t.Errorf("put back as it was read: %q, remembered %+v", why, remembered(t, a))
	}
}

func TestRemembersOff(t *testing.T) {
	a := mustApp(t)
	r := mustCorrect(t, a, mustAdd(t, a, mustNew(t, a), kneading), practical.Around(14))
	if err := a.SetRemembers(t.Context(), false); err != nil {
		t.Fatal(err)
	}
	r = mustCorrect(t, a, r, practical.Around(30))
	if s := step(t, r, "Knead"); s.Hands != practical.Around(30) {
		t.Errorf("the dish itself: %+v", s.Hands)
	}
	if s := step(t, mustAdd(t, a, mustNew(t, a), kneading), "Knead"); s.Hands != practical.Around(14) {
		t.Errorf("the next recipe: %+v, want what was remembered before", s.Hands)
	}
	if err := a.SetRemembers(t.Context(), true); err != nil {
		t.Fatal(err)
	}
	if on, err := a.Remembers(t.Context()); err != nil || !on {
		t.Errorf("on %v, %v", on, err)
	}
}
