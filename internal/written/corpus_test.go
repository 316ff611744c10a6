package written_test

import (
	"strings"
	"testing"

	"plait.example/internal/check/checktest"
	"plait.example/internal/format"
	"plait.example/internal/practical"
	"plait.example/internal/written"
)

// The invented plans, each in one of the layouts and kinds of file that people
// use, come back row by row: clock, dish, words.
func TestDocuments(t *testing.T) {
	var documents []checktest.Document
	for _, folder := range []string{checktest.LookedAt, checktest.Second, checktest.Third} {
		some, err := checktest.Documents(folder)
		if err != nil {
			t.Fatal(err)
		}
		documents = append(documents, some...)
	}
	if testing.Short() {
		documents = checktest.Few(documents)
	}
	for _, d := range documents {
		read, err := format.Read(d.Name, d.Data)
		if err != nil {
			t.Errorf("%v", err)
			continue
		}
		known := written.Options{Clock: clockOf(t, d)}
		for _, n := range checktest.Names[d.Plan.Menu] {
			known.Dishes = append(known.Dishes, written.Named{Letter: n[0], Name: n[1]})
		}
		for _, o := range []written.Options{known, {Clock: known.Clock}} {
			compare(t, d, written.Read(d.Name, read.Blocks, o))
		}
	}
}

// clockOf is the clock of the plan's practical, as far as its file can be read alone.
func clockOf(t *testing.T, d checktest.Document) *practical.Clock {
	t.Helper()
	text, err := d.Plan.Practical()
	if err != nil {
		t.Fatal(err)
	}
	return &practical.Read("practical.yaml", []byte(text)).Practical.Clock
}

func compare(t *testing.T, d checktest.Document, p written.Plan) {
	t.Helper()
	if len(p.Rows) != len(d.Plan.Rows) {
		t.Errorf("%s: %d rows, want %d", d.Name, len(p.Rows), len(d.Plan.Rows))
		return
	}
	for i, r := range p.Rows {
		want := d.Plan.Rows[i]
		if text := squeeze(r.Text + " " + r.Points); r.At != want.Clock || !strings.Contains(text, squeeze(want.Text)) || !strings.Contains(text, squeeze(want.Points)) {
			t.Errorf("%s row %d: %v %q (%q), want %v %q, %q", d.Name, i+1, r.At, text, r.Written, want.Clock, want.Text, want.Points)
		}
		dish := "all"
		for _, n := range checktest.Names[d.Plan.Menu] {
			if n[0] == want.Dish {
				dish = n[1]
			}
		}
		if got := strings.Join(r.Dishes, "+"); got != want.Dish && got != dish && !(got == "" && dish == "all") {
			t.Errorf("%s row %d: dish %q, want %q (%q %s %s)", d.Name, i+1, got, want.Dish, r.Text, r.Ink, r.Shade)
		}
	}
}

func squeeze(s string) string { return strings.Join(strings.Fields(s), " ") }
