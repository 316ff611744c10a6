package recipe

import (
	"fmt"
	"strings"

	"plait.example/internal/format"
	"plait.example/internal/format/webpage"
)

// Reading is what was read of a document.
type Reading struct {
	Text    string // what the recipes' Sources count bytes in
	Recipes []Recipe
}

// ReadDocument reads the recipes of a document: those that a web page describes
// in its data, if they hold a method; else those that its text holds. It never
// fails, like Read.
func (rd Reader) ReadDocument(d format.Document) Reading {
	if len(d.Recipes) == 0 {
		d.Recipes = bareData(d)
	}
	if described := withMethod(d.Recipes); len(described) > 0 {
		return rd.readData(described)
	}
	text := textOf(d)
	read := rd.Read(text)
	if len(read) == 1 && len(read[0].Steps) == 0 && len(d.Recipes) > 0 {
		return rd.readData(d.Recipes)
	}
	last := &read[len(read)-1]
	last.Unread = append(last.Unread, d.Notes...)
	return Reading{text, read}
}

// bareData is the recipes of a text that is nothing but data, as a web page holds it.
func bareData(d format.Document) []webpage.Recipe {
	text := strings.TrimSpace(d.Text)
	if d.Kind != format.Text || text == "" || text[0] != '{' && text[0] != '[' || !strings.Contains(text, `"@type"`) {
		return nil
	}
	page, err := webpage.Read([]byte("<meta charset=utf-8><script type=\"application/ld+json\">" + text + "</script>"))
	if err != nil {
		return nil // then it is read as text
	}
	return page.Recipes
}

// withMethod is the recipes that say what to do.
func withMethod(all []webpage.Recipe) (out []webpage.Recipe) {
	for _, r := range all {
		if len(r.Instructions) > 0 {
			out = append(out, r)
		}
	}
	return out
}

// readData reads recipes whose parts the page itself tells apart. They are
// written down as one text, so that each step can be found in it, but no line is
// guessed at: each goes to the part it came from.
func (rd Reader) readData(described []webpage.Recipe) Reading {
	var w dataWriter
	drafts := make([]*draft, len(described))
	for i, r := range described {
		drafts[i] = w.recipe(r)
	}
	text := w.text.String()
	out := Reading{Text: text}
	for i, d := range drafts {
		w.sort(text, d)
		r := rd.one(d, text)
		if note := timesNote(described[i], r); note != "" {
			r.Unread = append(r.Unread, note)
		}
		out.Recipes = append(out.Recipes, r)
	}
	return out
}

// dataWriter writes described recipes down and remembers which line is what.
type dataWriter struct {
	text  strings.Builder
	lines map[*draft][]dataLine
}

// dataLine is a line of the text that was written: its bytes and its part.
type dataLine struct {
	start, end int
	part       section
	component  string
}

func (w *dataWriter) recipe(r webpage.Recipe) *draft {
	if w.text.Len() > 0 {
		w.text.WriteString("\n")
	}
	d := &draft{title: r.Name, titleLevel: 1, start: w.text.Len()}
	if r.Name != "" {
		w.line("# " + r.Name)
		w.line("")
	}
	for _, said := range []string{r.Description, yieldLine(r.Yield), timeLine("Preparation time", r.Prep), timeLine("Cooking time", r.Cook), timeLine("Total time", r.Total)} {
		if said != "" {
			w.part(d, front, "", said)
		}
	}
	w.line("\n## Ingredients\n")
	for _, l := range r.Ingredients {
		w.part(d, ingredientPart, "", "- "+l)
	}
	w.line("\n## Method\n")
	n := 0
	for _, s := range r.Instructions {
		named := ""
		if s.Name != "" {
			w.line("### " + s.Name)
			named = component(line{text: s.Name})
		}
		for _, step := range s.Steps {
			n++
			w.part(d, methodPart, named, fmt.Sprintf("%d. %s", n, step))
		}
	}
	d.end = w.text.Len()
	return d
}

func (w *dataWriter) line(s string) { w.text.WriteString(s + "\n") }

// part writes a line that belongs to a part of the recipe.
func (w *dataWriter) part(d *draft, part section, component, s string) {
	if w.lines == nil {
		w.lines = map[*draft][]dataLine{}
	}
	start := w.text.Len()
	w.lines[d] = append(w.lines[d], dataLine{start, start + len(s), part, component})
	w.line(s)
}

// sort puts the lines of a recipe in its draft.
func (w *dataWriter) sort(text string, d *draft) {
	for _, at := range w.lines[d] {
		l := readLine(text, at.start, at.end)
		switch {
		case len(l.ts) == 0:
		case at.part == ingredientPart:
			d.ingredients = append(d.ingredients, listed{l, at.component})
		case at.part == methodPart:
			d.items = append(d.items, item{start: l.start, end: l.end, ts: l.ts, component: at.component, numbered: true})
		default:
			d.front(l)
		}
	}
}

// front takes a line that stands before the ingredients: portions, times, a description.
func (d *draft) front(l line) {
	if n, ok := portions(l.ts); ok {
		d.serves = n
	} else if !d.head.read(l.text, l.ts) {
		d.unread = append(d.unread, l.text)
	}
}

// yieldLine is what a page says of portions, as a recipe says it: "Serves: 4", "Makes: 12 buns".
func yieldLine(yield string) string {
	ts := tokenize(yield, 0)
	switch _, next := readSpan(ts, 0); {
	case yield == "" || next == 0:
		return yield
	case next == len(ts) || hasAny(ts, "people", "person", "portion", "portions", "serving", "servings", "serves", "adults"):
		return "Serves: " + yield
	}
	return "Makes: " + yield
}

func timeLine(what string, minutes int) string {
	if minutes == 0 {
		return ""
	}
	return fmt.Sprintf("%s: %d minutes", what, minutes)
}
