package web

import (
	"net/http"
	"net/url"
	"slices"
	"strings"
	"testing"

	"github.com/PuerkitoBio/goquery"

	"plait.example/internal/practical"
)

// stew and flapjack are invented recipes.
const (
	stew     = "Bean stew\n\nIngredients\n1 onion\n400 g beans\n1 tsp cumin\n\nMethod\n1. Chop the onion and fry it for 5 minutes with the garlic.\n2. Add the beans and simmer for 20 minutes.\n"
	flapjack = "Flapjack\n\nIngredients\n100 g butter\n200 g oats\n\nMethod\n1. Melt the butter and stir in the oats.\n2. Bake at 180 C for 20 minutes.\n"
)

func TestReadAFile(t *testing.T) {
	s := newSite(t)
	rec := s.kept(menu())
	at := "/practical/" + rec.ID + "/dishes"
	s.upload(at+"/file", "flapjack.html", "<html><body><h1>Flapjack</h1><h2>Ingredients</h2><ul><li>100 g butter<li>200 g oats</ul><h2>Method</h2><ol><li>Melt the butter and stir in the oats.<li>Bake at 180 C for 20 minutes.</ol></body></html>").ok().says("h1", "Flapjack")
	d := s.now(rec.ID).Practical.Dishes
	if len(d) != 3 || d[2].Steps[len(d[2].Steps)-1].Wait.Celsius != 180 {
		t.Errorf("dishes %+v", d)
	}
	for name, content := range map[string]string{"nothing.txt": "Dear Sir,\nthank you for your letter.\n", "sheet.xlsx": "PK\x03\x04 not a document", "empty.txt": ""} {
		a := s.upload(at+"/file", name, content)
		if a.status != http.StatusUnprocessableEntity {
			t.Errorf("%s: status %d", name, a.status)
		}
		described(a)
	}
	s.upload(at+"/file", "letter.txt", "Dear Sir,\nthank you for your letter.\n").says("textarea", "thank you for your letter")
	if got := len(s.now(rec.ID).Practical.Dishes); got != 3 {
		t.Errorf("%d dishes after files without a recipe, want 3", got)
	}
}

func TestChooseFromSeveral(t *testing.T) {
	s := newSite(t)
	rec := s.kept(menu())
	at := "/practical/" + rec.ID + "/dishes"
	a := s.upload(at+"/file", "both.txt", stew+"\n\n"+flapjack).ok()
	a.has(".choice", 2)
	a.says(".choice:first-of-type", "Bean stew 3 ingredients")
	form := a.form("form[action$=chosen]", "")
	none := s.post(at+"/chosen", form)
	if none.status != http.StatusUnprocessableEntity {
		t.Errorf("none ticked: status %d", none.status)
	}
	none.says("#take-fault", "No recipe is ticked")
	none.says(".choice:first-of-type", "Bean stew 3 ingredients")
	form["take"] = []string{"1"}
	s.post(at+"/chosen", form).ok().says("h1", "Flapjack")
	if d := s.now(rec.ID).Practical.Dishes; len(d) != 3 || strings.TrimSpace(d[2].Text) != strings.TrimSpace(flapjack) {
		t.Errorf("%d dishes, the last with the text %q", len(d), d[len(d)-1].Text)
	}
}

// A pasted text with several recipes is chosen from in the same way.
func TestChooseFromPasted(t *testing.T) {
	s := newSite(t)
	rec := s.kept(menu())
	at := "/practical/" + rec.ID + "/dishes"
	form := s.get(at).form("form[action$=dishes][data-pastes]", "")
	form.Set("text", strings.ReplaceAll(stew+"\n\n"+flapjack, "\n", "\r\n"))
	a := s.post(at, form).ok()
	a.says("main", "The pasted text holds 2 recipes")
	chosen := a.form("form[action$=chosen]", "")
	chosen["take"] = []string{"0", "1"}
	s.post(at+"/chosen", chosen).ok().has(".cards li", 4)
	if now := s.now(rec.ID); now.Label != "add recipes of the pasted text" || now.Practical.Dishes[3].Name != "Flapjack" {
		t.Errorf("%q, %+v", now.Label, now.Practical.Dishes)
	}
}

// The page of a dish checks its ingredients off and says what is missing in its list.
func TestCheckedOff(t *testing.T) {
	s := newSite(t)
	rec := s.kept(menu())
	at := "/practical/" + rec.ID + "/dishes"
	form := s.get(at).form("form[action$=dishes][data-pastes]", "")
	form.Set("text", stew)
	a := s.post(at, form).ok()
	a.says("section[aria-labelledby=ingredients-title]", "1 of 3 lines is used in no step")
	a.says(".checked .not", "1 tsp cumin in no step")
	a.says(".checked .not", "garlic in step C")
	a.says(".checked li:first-child", "1 onion in step C1")
	// Each step is marked by its number, not by colour alone.
	steps := s.now(rec.ID).Practical.Dishes[2].Steps
	a.has(".recipe-text mark .no", len(steps))
	classes := a.Find(".recipe-text mark").Map(func(_ int, m *goquery.Selection) string { return m.AttrOr("class", "") })
	if len(slices.Compact(slices.Clone(classes))) != len(classes) {
		t.Errorf("neighbouring steps are underlined alike: %q", classes)
	}
}

// Doubts stand the most doubtful first; one press says that a step is right.
func TestDoubtsInOrder(t *testing.T) {
	s := newSite(t)
	p := menu()
	p.Dishes[0].Steps[0].Doubt, p.Dishes[0].Steps[1].Doubt = 0.5, 0.9
	rec := s.kept(p)
	path := "/practical/" + rec.ID + "/dishes/A"
	a := s.get(path).ok()
	order := a.Find(".doubts li a").Map(func(_ int, m *goquery.Selection) string { return m.Text() })
	if !slices.Equal(order, []string{"Step A2", "Step A3", "Step A1"}) {
		t.Errorf("order %q", order)
	}
	a = s.post(path, a.form("#form", "sure:A2")).ok()
	a.has(".doubts li", 2)
	if step := s.now(rec.ID).Practical.Dishes[0].Steps[1]; step.Doubt != 0 {
		t.Errorf("doubt %g", step.Doubt)
	}
}

func TestSplitWhereOneWants(t *testing.T) {
	s := newSite(t)
	p := menu()
	p.Dishes[0].Steps[0].Text = "Rub the butter into the flour, add water and form a dough."
	rec := s.kept(p)
	path := "/practical/" + rec.ID + "/dishes/A"
	form := s.get(path+"?step=A1").form("#form", "split:A1")
	form.Set("cut", "31")
	s.post(path, form).ok()
	d := s.now(rec.ID).Practical.Dishes[0]
	if d.Steps[0].Text != "Rub the butter into the flour," || d.Steps[1].Text != "add water and form a dough." {
		t.Errorf("%q and %q", d.Steps[0].Text, d.Steps[1].Text)
	}
}

// The likely minutes typed alone take the low and the high ones along.
func TestLikelyMinutesAlone(t *testing.T) {
	for typed, want := range map[string]practical.Estimate{"20": {Low: 6, Likely: 20, High: 27}, "4": {Low: 3, Likely: 4, High: 12}, "9": {Low: 6, Likely: 9, High: 12}} {
		p := menu()
		if faults := apply(p, url.Values{"dishes[0].steps[0].hands.likely": {typed}, "dishes[0].steps[0].hands.low": {"6"}}, "dishes"); len(faults) > 0 {
			t.Fatal(faults)
		}
		if got := p.Dishes[0].Steps[0].Hands; got != want {
			t.Errorf("%s: %+v, want %+v", typed, got, want)
		}
	}
}
