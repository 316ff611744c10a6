package webpage_test

import (
	"os"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"plait.example/internal/format/webpage"
)

// The pages in this file and in testdata/tart.html are invented.
func tart(t testing.TB) []byte {
	t.Helper()
	data, err := os.ReadFile("testdata/tart.html")
	if err != nil {
		t.Fatal(err)
	}
	return data
}

func read(t testing.TB, source string) webpage.Page {
	t.Helper()
	page, err := webpage.Read([]byte(source))
	if err != nil {
		t.Fatal(err)
	}
	return page
}

func TestVisibleText(t *testing.T) {
	page := read(t, string(tart(t)))
	want := `# Leek & cheese tart

Serves 6. A tart for a cold day.
It keeps.

## Ingredients

- 200 g plain flour
- ½ tsp salt
- 2 leeks, sliced
  - the white part only

Tin	Oven
23 cm	180 °C fan 160 °C

## Method

3. Rub the butter into the flour.
4. Chill for 20 minutes.

Use 1 1/2 spoons.

kept
as typed`
	if d := cmp.Diff(want, page.Text); d != "" {
		t.Error(d)
	}
	if page.Title != "Leek tart – Our kitchen notes" {
		t.Errorf("title %q", page.Title)
	}
}

// A graph, several types, references to characters, markup, a comma too many and
// a tab inside a string: what pages in the wild do.
func TestLinkedData(t *testing.T) {
	want := []webpage.Recipe{{
		Name: "Leek & cheese tart", Yield: "6 people", Prep: 25, Cook: 40, Total: 65,
		Ingredients: []string{"200 g plain flour", "½ tsp salt", "2 leeks, sliced"},
		Instructions: []webpage.Section{
			{"For the pastry", []string{"Rub in: Rub the butter into the flour with the salt.", "Chill for 20 minutes."}},
			{"For the filling", []string{"Soften the leeks.", "Bake at 180°C for 40 minutes."}},
		},
	}}
	if d := cmp.Diff(want, read(t, string(tart(t))).Recipes); d != "" {
		t.Error(d)
	}
}

func TestInstructionsHoweverWritten(t *testing.T) {
	for _, c := range []struct {
		name, json string
		want       []webpage.Section
	}{
		{"one text in lines", `"1. Boil the water.\n2. Add the rice.\n\nServe."`, []webpage.Section{{"", []string{"Boil the water.", "Add the rice.", "Serve."}}}},
		{"markup in a text", `"<ol><li>Boil.</li><li>Serve.</li></ol>"`, []webpage.Section{{"", []string{"Boil.", "Serve."}}}},
		{"strings", `["Boil.","Serve."]`, []webpage.Section{{"", []string{"Boil.", "Serve."}}}},
		{"lists in a list", `[[{"@type":"HowToStep","text":"Boil."}],{"@type":"HowToStep","text":"Serve."}]`, []webpage.Section{{"", []string{"Boil.", "Serve."}}}},
		{"one step", `{"@type":"HowToStep","text":"Boil."}`, []webpage.Section{{"", []string{"Boil."}}}},
		{"a list's items", `{"@type":"ItemList","itemListElement":[{"@type":"ListItem","position":2,"item":{"@type":"HowToStep","text":"Serve."}},{"@type":"ListItem","position":1,"item":"Boil."}]}`, []webpage.Section{{"", []string{"Boil.", "Serve."}}}},
		{"name as beginning of text", `[{"@type":"HowToStep","name":"Boil the water…","text":"Boil the water for the rice."}]`, []webpage.Section{{"", []string{"Boil the water for the rice."}}}},
		{"name alone", `[{"@type":"HowToStep","name":"Boil."}]`, []webpage.Section{{"", []string{"Boil."}}}},
		{"sections in a section", `{"@type":"HowToSection","name":"Day 1","itemListElement":{"@type":"HowToSection","name":"Dough","itemListElement":["Mix."]}}`, []webpage.Section{{"Day 1: Dough", []string{"Mix."}}}},
		{"amount at the beginning", `["3 eggs go in first.","180 °C is right."]`, []webpage.Section{{"", []string{"3 eggs go in first.", "180 °C is right."}}}},
	} {
		t.Run(c.name, func(t *testing.T) {
			page := read(t, `<script type="application/ld+json">{"@type":"https://schema.org/Recipe","name":"Rice","recipeInstructions":`+c.json+`}</script>`)
			if len(page.Recipes) != 1 {
				t.Fatalf("%d recipes", len(page.Recipes))
			}
			if d := cmp.Diff(c.want, page.Recipes[0].Instructions); d != "" {
				t.Error(d)
			}
		})
	}
}

func TestMicrodataOfOldPages(t *testing.T) {
	page := read(t, `<body itemscope itemtype="http://schema.org/WebPage"><div itemprop="mainEntity" itemscope itemtype="http://schema.org/Recipe" itemref="times">
<h1 itemprop="name">Flat bread</h1><span itemprop="recipeYield">8</span>
<ul><li itemprop="ingredients">300&nbsp;g flour<li itemprop="ingredients">a pinch of salt</ul>
<ol itemprop="recipeInstructions"><li>Mix.<li>Rest for <time>20 minutes</time>.</ol></div>
<p id="times"><time itemprop="totalTime" datetime="PT45M">three quarters of an hour</time></p>`)
	want := []webpage.Recipe{{
		Name: "Flat bread", Yield: "8", Total: 45, Ingredients: []string{"300 g flour", "a pinch of salt"},
		Instructions: []webpage.Section{{"", []string{"Mix.", "Rest for 20 minutes."}}},
	}}
	if d := cmp.Diff(want, page.Recipes); d != "" {
		t.Error(d)
	}
}

// The same recipe in two syntaxes is one; two recipes on a page are two.
func TestSeveralRecipes(t *testing.T) {
	one := `<script type="application/ld+json">{"@type":"Recipe","name":"A","recipeIngredient":["1 egg"]}</script>`
	again := `<div itemscope itemtype="https://schema.org/Recipe"><b itemprop="name">A</b><i itemprop="recipeIngredient">1 egg</i></div>`
	other := `<script type="application/ld+json">[{"@type":"Recipe","name":"B","recipeIngredient":"2 eggs\n1 onion"}]</script>`
	var names []string
	for _, r := range read(t, one+again+other).Recipes {
		names = append(names, r.Name+" "+strings.Join(r.Ingredients, ", "))
	}
	if d := cmp.Diff([]string{"A 1 egg", "B 2 eggs, 1 onion"}, names); d != "" {
		t.Error(d)
	}
}

func TestEncodings(t *testing.T) {
	for name, source := range map[string]string{
		"said":       "<meta charset=windows-1252><p>\xBD tsp at 180\xB0C",
		"not said":   "<p>\xBD tsp at 180\xB0C",
		"UTF-8":      "<p>½ tsp at 180°C",
		"UTF-16":     "\xFF\xFE<\x00p\x00>\x00\xBD\x00 \x00t\x00s\x00p\x00 \x00a\x00t\x00 \x001\x008\x000\x00\xB0\x00C\x00",
		"references": "<p>&frac12; tsp at 180&#176;C",
	} {
		if got := read(t, source).Text; got != "½ tsp at 180°C" {
			t.Errorf("%s: %q", name, got)
		}
	}
}

// A table that places the page's parts is no table of data.
func TestLayoutTables(t *testing.T) {
	got := read(t, `<table><tr><td><h2>You need</h2><ul><li>1 egg</ul><td><h2>Do</h2><ol><li>Boil it.</ol></table>`).Text
	if want := "## You need\n\n- 1 egg\n\n## Do\n\n1. Boil it."; got != want {
		t.Errorf("%q, want %q", got, want)
	}
}
