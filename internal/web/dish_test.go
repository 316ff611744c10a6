package web

import (
	"net/http"
	"net/url"
	"strings"
	"testing"

	"plait.example/internal/practical"
)

func TestDishes(t *testing.T) {
	s := newSite(t)
	rec := s.kept(menu())
	at := "/practical/" + rec.ID + "/dishes"
	a := s.get(at).ok()
	a.has(".cards li", 2)
	a.says(".cards", "4 steps, about 24 minutes of hands. Served hot.") // 8 + 1 + 14 + 1
	a.says(".cards", "1 step to check")
	form := a.form("[data-pastes]", "")
	form.Set("text", strings.ReplaceAll(pasted, "\n", "\r\n"))
	s.post(at, form).ok().says("h1", "Cheese scones")
	d := s.now(rec.ID).Practical.Dishes
	if len(d) != 3 || d[2].Letter != "C" || strings.TrimSpace(d[2].Text) != strings.TrimSpace(pasted) || len(d[2].Steps) < 5 {
		t.Errorf("%d dishes, the last %+v", len(d), d[len(d)-1])
	}
	s.post(at, s.get(at).form("[data-pastes]", "empty")).ok().says("main", "No steps yet")
	s.post(at, url.Values{"version": {s.get(at).Find("#keep").AttrOr("data-version", "")}, "do": {"remove:A"}}).ok().has(".cards li", 3)
	if got := s.now(rec.ID).Label; got != "remove dish A" {
		t.Errorf("label %q", got)
	}
}

// Nothing pasted, far too much pasted, and text without a recipe in it.
func TestPasteAbsurd(t *testing.T) {
	s := newSite(t)
	rec := s.kept(menu())
	at := "/practical/" + rec.ID + "/dishes"
	blank := s.post(at, s.get(at).form("[data-pastes]", ""))
	if blank.status != http.StatusUnprocessableEntity {
		t.Errorf("blank: status %d", blank.status)
	}
	described(blank)
	long := strings.Repeat("Stir it well for a while and then a while more, until somebody says stop.\n", 20_000)
	form := s.get(at).form("[data-pastes]", "")
	form.Set("text", long)
	over := s.post(at, form)
	if over.status != http.StatusRequestEntityTooLarge {
		t.Errorf("long: status %d", over.status)
	}
	if got := over.Find("#text").Text(); strings.TrimSpace(got) != strings.TrimSpace(long) {
		t.Errorf("%d of %d letters came back", len(got), len(long))
	}
	if n := len(s.now(rec.ID).Practical.Dishes); n != 2 {
		t.Errorf("%d dishes", n)
	}
}

// 10,000 lines become a dish whose steps stand on pages of their own.
func TestPasteTenThousandLines(t *testing.T) {
	s := newSite(t)
	rec := s.kept(menu())
	at := "/practical/" + rec.ID + "/dishes"
	form := s.get(at).form("[data-pastes]", "")
	form.Set("text", "Long soup\n\nMethod\n"+strings.Repeat("Stir for 2 minutes.\n", 10_000))
	if a := s.post(at, form); a.status != http.StatusOK && a.status != http.StatusRequestEntityTooLarge && a.status != http.StatusUnprocessableEntity {
		t.Fatalf("status %d", a.status)
	}
	if got := s.now(rec.ID).Practical; len(got.Dishes) == 3 {
		a := s.get(at + "/C").ok()
		if n := a.Find(".steps tbody tr").Length(); n > perPage {
			t.Errorf("%d steps on one page", n)
		}
		later := a.Find("a[href*='from=']").AttrOr("href", "")
		if len(got.Dishes[2].Steps) > perPage && s.get(later).ok().Find(".steps tbody tr").Length() == 0 {
			t.Errorf("%q shows no steps", later)
		}
	}
}

func TestDish(t *testing.T) {
	s := newSite(t)
	rec := s.kept(menu())
	at := "/practical/" + rec.ID + "/dishes/A"
	a := s.get(at).ok()
	a.has(".steps tbody tr", 4)
	a.says(".note", "Step A3 “Roll out and fill.”: no time is given in the recipe")
	a.says(".recipe-text mark:first-of-type", "A1 Rub the butter into the flour.")
	a.has(".recipe-text mark", 4)
	form := a.form("#form", "")
	form.Set("dishes[0].steps[0].hands.high", "15 min")
	form.Set("dishes[0].steps[2].wait.place", "side")
	form.Set("dishes[0].steps[2].wait.least", "10")
	s.post(at, form).ok()
	steps := s.now(rec.ID).Practical.Dishes[0].Steps
	if steps[0].Hands.High != 15 || steps[2].Wait == nil || steps[2].Wait.Place != practical.AtSide || steps[2].Wait.Least != 10 {
		t.Errorf("%+v", steps)
	}
}

func TestDishStepOpen(t *testing.T) {
	s := newSite(t)
	rec := s.kept(menu())
	at := "/practical/" + rec.ID + "/dishes/A"
	a := s.get(at + "?step=A4").ok()
	a.has("tr#open textarea", 1)
	a.has(".recipe-text mark.here", 1)
	form := a.form("#form", "")
	form.Set("dishes[0].steps[3].text", "Bake until golden.")
	form.Set("dishes[0].steps[3].wait.celsius", "190 C")
	form.Set("dishes[0].steps[3].wait.attention", "look")
	form.Set("dishes[0].steps[3].wait.every", "5")
	form["dishes[0].steps[3].uses"] = []string{"", "mixer"}
	form.Set("dishes[0].steps[3].after[0].least", "2")
	form.Set("dishes[0].steps[3].after[0].most", "20")
	form.Set("dishes[0].steps[3].after[1].step", "B1")
	form["dishes[0].steps[3].set-up"] = []string{off, on}
	after := s.post(at, form).ok()
	after.has("tr#open", 1)
	got := s.now(rec.ID).Practical.Dishes[0].Steps[3]
	if got.Text != "Bake until golden." || got.Wait.Celsius != 190 || got.Wait.Every != 5 || len(got.Uses) != 1 || !got.SetUp ||
		len(got.After) != 2 || got.After[0].Least != 2 || *got.After[0].Most != 20 || got.After[1].Step != "B1" {
		t.Errorf("%+v", got)
	}
	form = after.form("#form", "")
	form.Set("dishes[0].steps[3].after[0].step", "")
	s.post(at, form).ok()
	if got := s.now(rec.ID).Practical.Dishes[0].Steps[3]; len(got.After) != 1 || got.After[0].Step != "B1" {
		t.Errorf("%+v", got.After)
	}
}

// Each button of a step, with what was typed beside it kept.
func TestDishButtons(t *testing.T) {
	for do, want := range map[string]struct {
		steps int
		label string
		text  string // of the first step
	}{
		"add:A1":    {5, "add a step to dish A", "Rub the butter into the flour."},
		"add:":      {5, "add a step to dish A", "Rub the butter into the flour."},
		"split:A1":  {5, "split step A1", "Rub the"},
		"join:A3":   {3, "join step A3 with the next", "Rub the butter into the flour."},
		"remove:A1": {3, "remove step A1", "Chill for 20 minutes."},
		"down:A1":   {4, "move step A1 down", "Chill for 20 minutes."},
		"up:A2":     {4, "move step A2 up", "Chill for 20 minutes."},
		"look:A2":   {4, "Dish A, name of the dish", "Rub the butter into the flour."},
	} {
		t.Run(do, func(t *testing.T) {
			s := newSite(t)
			rec := s.kept(menu())
			at := "/practical/" + rec.ID + "/dishes/A"
			form := s.get(at).form("#form", do)
			form.Set("dishes[0].name", "Typed beside")
			s.post(at, form).ok()
			got := s.now(rec.ID)
			d := got.Practical.Dishes[0]
			if len(d.Steps) != want.steps || got.Label != want.label || !strings.HasPrefix(d.Steps[0].Text, want.text) || d.Name != "Typed beside" {
				t.Errorf("%d steps, label %q, first %q, name %q", len(d.Steps), got.Label, d.Steps[0].Text, d.Name)
			}
			for _, fault := range got.Practical.Validate() {
				if strings.HasPrefix(do, "add:") && strings.HasSuffix(fault.Field, ".text") {
					continue // the new step has no words yet
				}
				t.Errorf("left a fault: %v", fault)
			}
		})
	}
}

func TestDishJoinRefused(t *testing.T) {
	s := newSite(t)
	rec := s.kept(menu())
	at := "/practical/" + rec.ID + "/dishes/A"
	a := s.post(at, s.get(at).form("#form", "join:A2"))
	if a.status != http.StatusUnprocessableEntity {
		t.Errorf("status %d", a.status)
	}
	a.says(".note", "Step A2 ends in a wait")
	a.has("#form", 1)
	if got := s.now(rec.ID).Version; got != rec.Version {
		t.Errorf("version %d", got)
	}
}

func TestDishReadAgain(t *testing.T) {
	s := newSite(t)
	rec := s.kept(menu())
	at := "/practical/" + rec.ID + "/dishes/B"
	form := s.get(at).ok().form("[data-pastes]", "read")
	form.Set("again", pasted)
	s.post(at, form).ok()
	if d := s.now(rec.ID).Practical.Dishes[1]; len(d.Steps) < 5 || d.Letter != "B" || d.Serve.How != "in a warm bowl" {
		t.Errorf("%+v", d)
	}
}

func TestDishErrNotFound(t *testing.T) {
	s := newSite(t)
	rec := s.kept(menu())
	for _, path := range []string{"/practical/" + rec.ID + "/dishes/Z", "/practical/none", "/practical/none/plan", "/nowhere", "/assets/none.css"} {
		if a := s.get(path); a.status != http.StatusNotFound {
			t.Errorf("%s: status %d", path, a.status)
		}
	}
}

func TestMarked(t *testing.T) {
	steps := []practical.Step{{ID: "A1", Text: "Rub in the butter."}, {ID: "A2", Text: "nowhere in it"}, {ID: "A3", Text: "Chill it for an hour"}}
	text := "Method\n1.  Rub in  the\nbutter. CHILL it for an hour, then\nroll."
	var b strings.Builder
	for _, piece := range marked("/d", text, steps, "A3") {
		b.WriteString("[" + piece.Step + ":" + piece.Text + "]")
	}
	if got, want := b.String(), "[:Method\n1.  ][A1:Rub in  the\nbutter.][: ][A3:CHILL it for an hour,][: then\nroll.]"; got != want {
		t.Errorf("\n got %q\nwant %q", got, want)
	}
	if marked("/d", " \n", steps, "") != nil {
		t.Error("an empty text has pieces")
	}
}

// Words of a pasted recipe that become no step are told on the page that
// follows, beside the steps that were read.
func TestLeftOutIsTold(t *testing.T) {
	s := newSite(t)
	at := "/practical/" + s.kept(menu()).ID + "/dishes"
	form := s.get(at).form("[data-pastes]", "")
	form.Set("text", "Pie\nPreheat the oven to 200C.\n\nIngredients\n100 g flour\n50 g butter\n\nMethod\nRub the butter into the flour. Bake for 20 minutes.\n")
	page := s.post(at, form).ok()
	if got := page.Find(".note").Text(); !strings.Contains(got, "Preheat the oven to 200C.") || !strings.Contains(got, "not made into a step") {
		t.Errorf("notes: %q", got)
	}
	if page.Find(".steps tbody tr").Length() == 0 {
		t.Error("no steps beside the note")
	}
}
