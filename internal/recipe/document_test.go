package recipe

import (
	"archive/zip"
	"bytes"
	"os"
	"slices"
	"strings"
	"testing"

	"plait.example/internal/format"
)

func mustDocument(t *testing.T, name string, data []byte) Reading {
	t.Helper()
	d, err := format.Read(name, data)
	if err != nil {
		t.Fatal(err)
	}
	return ReadDocument(d)
}

// wordFile is a Word document with these paragraphs as its body's XML.
func wordFile(t *testing.T, body string) []byte {
	t.Helper()
	var b bytes.Buffer
	z := zip.NewWriter(&b)
	for name, text := range map[string]string{
		"[Content_Types].xml": `<?xml version="1.0"?><Types xmlns="http://schemas.openxmlformats.org/package/2006/content-types"><Default Extension="rels" ContentType="application/vnd.openxmlformats-package.relationships+xml"/><Override PartName="/word/document.xml" ContentType="application/vnd.openxmlformats-officedocument.wordprocessingml.document.main+xml"/></Types>`,
		"_rels/.rels":         `<?xml version="1.0"?><Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships"><Relationship Id="r1" Type="http://schemas.openxmlformats.org/officeDocument/2006/relationships/officeDocument" Target="word/document.xml"/></Relationships>`,
		"word/document.xml":   `<?xml version="1.0"?><w:document xmlns:w="http://schemas.openxmlformats.org/wordprocessingml/2006/main"><w:body>` + body + `</w:body></w:document>`,
	} {
		w, err := z.Create(name)
		if err != nil {
			t.Fatal(err)
		}
		if _, err := w.Write([]byte(text)); err != nil {
			t.Fatal(err)
		}
	}
	if err := z.Close(); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

func paragraphs(lines ...string) string {
	var b strings.Builder
	for _, l := range lines {
		b.WriteString("<w:p><w:r><w:t>" + l + "</w:t></w:r></w:p>")
	}
	return b.String()
}

func cell(lines ...string) string { return "<w:tc>" + paragraphs(lines...) + "</w:tc>" }

// TestDocuments: one invented recipe in the shapes that documents give it.
func TestDocuments(t *testing.T) {
	table := "<w:tbl><w:tr>" + cell("Ingredients") + cell("Method") + "</w:tr><w:tr>" +
		cell("200 g plain flour", "100 g butter", "1 egg", "a pinch of salt", "50 ml milk") + cell("Rub the butter into the flour.", "Chill for 20 minutes.", "Bake at 200C for 15 minutes.", "Cool on a rack.") + "</w:tr></w:tbl>"
	rows := "<w:tbl><w:tr>" + cell("Ingredient") + cell("Amount") + "</w:tr><w:tr>" + cell("plain flour") + cell("200 g") + "</w:tr><w:tr>" + cell("butter") + cell("100 g") + "</w:tr></w:tbl>"
	timed := "<w:tbl><w:tr>" + cell("Step") + cell("What to do") + cell("Time") + "</w:tr><w:tr>" + cell("1") + cell("Rub the butter into the flour.") + cell("10 mins") + "</w:tr><w:tr>" +
		cell("2") + cell("Chill.") + cell("20") + "</w:tr><w:tr>" + cell("3") + cell("Bake at 200C.") + cell("15 min") + "</w:tr></w:tbl>"
	method := paragraphs("Method", "Rub the butter into the flour.", "Chill for 20 minutes.", "Bake at 200C for 15 minutes.")
	for name, data := range map[string][]byte{
		"paragraphs": wordFile(t, paragraphs("Shortbread", "Ingredients", "200 g plain flour", "100 g butter")+method),
		"columns":    wordFile(t, paragraphs("Shortbread")+table),
		"rows":       wordFile(t, paragraphs("Shortbread", "Ingredients")+rows+method),
		"timed":      wordFile(t, paragraphs("Shortbread", "Ingredients", "200 g plain flour", "100 g butter")+timed),
		"page":       []byte("<!doctype html><title>Shortbread</title><h1>Shortbread</h1><h2>Ingredients</h2><ul><li>200 g plain flour<li>100 g butter</ul><h2>Method</h2><ol><li>Rub the butter into the flour.<li>Chill for 20 minutes.<li>Bake at 200C for 15 minutes.</ol>"),
		"data":       []byte(`{"@context":"https://schema.org","@type":"Recipe","name":"Shortbread","recipeIngredient":["200 g plain flour","100 g butter"],"recipeInstructions":"Rub the butter into the flour.\nChill for 20 minutes.\nBake at 200C for 15 minutes."}`),
		"Windows":    []byte("Shortbread\r\nIngredients\r\n200 g plain flour\r\n\xBD tsp salt\r\n100 g butter\r\nMethod\r\n1. Rub the butter into the flour.\r\n2. Chill for 20 minutes.\r\n3. Bake at 200\xB0C for 15 minutes.\r\n"),
	} {
		read := mustDocument(t, name, data)
		if len(read.Recipes) != 1 {
			t.Errorf("%s: %d recipes in\n%s", name, len(read.Recipes), read.Text)
			continue
		}
		r := read.Recipes[0]
		if r.Title != "Shortbread" || len(r.Ingredients) < 2 || r.Ingredients[0].Name != "plain flour" || r.Ingredients[0].Quantity != 200 {
			t.Errorf("%s: title %q, ingredients %+v in\n%s", name, r.Title, r.Ingredients, read.Text)
		}
		if len(r.Steps) < 3 || r.Steps[1].Wait == nil || r.Steps[1].Wait.Least != 20 || r.Steps[2].Wait == nil || r.Steps[2].Wait.Celsius != 200 {
			t.Errorf("%s: steps %+v in\n%s", name, r.Steps, read.Text)
		}
		checkRecipes(t, read.Text, read.Recipes)
	}
}

// TestPublishedData: schema.org's own example of a Recipe, in its three syntaxes
// (Apache-2.0; the licence lies beside the files), is the same recipe.
func TestPublishedData(t *testing.T) {
	for _, name := range []string{"recipe.jsonld", "recipe.microdata.html", "recipe.rdfa.html"} {
		data, err := os.ReadFile("../format/webpage/testdata/schema.org/" + name)
		if err != nil {
			t.Fatal(err)
		}
		read := mustDocument(t, name, data)
		r := read.Recipes[0]
		var lines, texts []string
		for _, ing := range r.Ingredients {
			lines = append(lines, ing.Raw)
		}
		for _, s := range r.Steps {
			texts = append(texts, s.Text)
		}
		if r.Title != "Mom's World Famous Banana Bread" || !slices.Equal(lines, []string{"3 or 4 ripe bananas, smashed", "1 egg", "3/4 cup sugar"}) {
			t.Errorf("%s: %q, %q", name, r.Title, lines)
		}
		if want := []string{"Preheat the oven to 350 degrees.", "Mix in the ingredients in a bowl. Add the flour last. Pour the mixture into a loaf pan", "and bake for one hour."}; !slices.Equal(texts, want) {
			t.Errorf("%s: steps %q", name, texts)
		}
		if w := r.Steps[2].Wait; w == nil || w.Least != 60 || w.Celsius != 180 {
			t.Errorf("%s: bakes %+v", name, w)
		}
	}
}

// TestSectionsOfData: schema.org's example of a HowTo with sections, steps,
// directions and tips: every direction is in a step, under its section's name.
func TestSectionsOfData(t *testing.T) {
	data, err := os.ReadFile("../format/webpage/testdata/schema.org/howto.microdata.html")
	if err != nil {
		t.Fatal(err)
	}
	r := mustDocument(t, "howto", data).Recipes[0]
	components := map[string]int{}
	var all strings.Builder
	for _, s := range r.Steps {
		components[s.Component]++
		all.WriteString(s.Text + " ")
	}
	if len(r.Steps) != 10 || components["Preparation"] == 0 || components["Finishing up"] == 0 {
		t.Errorf("%d steps in %v", len(r.Steps), components)
	}
	for _, want := range []string{"hazard lights", "wheel wedges", "jack underneath", "hubcap", "spare tire on"} {
		if !strings.Contains(all.String(), want) {
			t.Errorf("%q is lost: %s", want, all.String())
		}
	}
}

// TestDataIsReadTheSameAsItsText: what a page's data was written down as reads
// like the data, so that a dish can be read again from the text it keeps.
func TestDataIsReadTheSameAsItsText(t *testing.T) {
	data, err := os.ReadFile("../format/webpage/testdata/tart.html")
	if err != nil {
		t.Fatal(err)
	}
	read := mustDocument(t, "tart.html", data)
	again := Read(read.Text)
	if len(again) != 1 || len(again[0].Steps) != len(read.Recipes[0].Steps) || !slices.Equal(again[0].Ingredients, read.Recipes[0].Ingredients) || again[0].Title != read.Recipes[0].Title {
		t.Fatalf("read again: %+v\nwant %+v", again, read.Recipes[0])
	}
	for i, s := range again[0].Steps {
		if first := read.Recipes[0].Steps[i]; s.Text != first.Text || s.Component != first.Component {
			t.Errorf("step %q of %q, want %q of %q", s.Text, s.Component, first.Text, first.Component)
		}
	}
}

// TestTimesOfData: a page's times are used, and told of where the steps are far from them. Invented.
func TestTimesOfData(t *testing.T) {
	page := func(times, method string) Recipe {
		return mustDocument(t, "page", []byte(`{"@context":"https://schema.org","@type":"Recipe","name":"Loaf",`+times+`"recipeIngredient":["1 egg"],"recipeInstructions":"`+method+`"}`)).Recipes[0]
	}
	r := page(`"cookTime":"PT45M",`, `Mix the dough.\nBake at 180C.`)
	if w := r.Steps[1].Wait; w == nil || w.Least != 45 {
		t.Errorf("the cooking time is not lent to the baking: %+v", w)
	}
	note := func(r Recipe) bool { return strings.Contains(strings.Join(r.Unread, "\n"), "The page says") }
	if r := page(`"totalTime":"PT30M",`, `Mix the dough.\nLeave to prove for 2 hours.`); !note(r) {
		t.Errorf("2 hours in 30 minutes: %q", r.Unread)
	}
	if r := page(`"totalTime":"PT2H",`, `Mix the dough.\nLeave to prove for 90 minutes.`); note(r) {
		t.Errorf("90 minutes in 2 hours: %q", r.Unread)
	}
	for yield, want := range map[string]int{"4": 4, "6-8 people": 6, "12 buns": 12, "1 loaf": 0, "Serves 3": 3} {
		if r := page(`"recipeYield":"`+yield+`",`, `Mix.\nBake for 20 minutes.`); r.Serves != want {
			t.Errorf("%q: serves %d, want %d", yield, r.Serves, want)
		}
	}
}
