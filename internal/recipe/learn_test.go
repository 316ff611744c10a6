package recipe

import (
	"os"
	"strings"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"plait.example/internal/practical"
)

// The recipes and the corrections of these tests are invented.

const scones = `Cheese scones

225 g self-raising flour
50 g butter
75 g cheese
1 egg
100 ml milk

Rub the butter into the flour.
Grate the cheese.
Stir in the cheese.
Mix in the egg and the milk.
Knead the dough for 8 minutes.
Roll out and cut into rounds.
Bake at 200 C for 12 minutes.
`

var march = time.Date(2026, 3, 12, 9, 0, 0, 0, time.UTC)

// stepLike is the first step of a recipe whose text holds words.
func stepLike(t *testing.T, r Recipe, words string) practical.Step {
	t.Helper()
	for _, s := range r.Steps {
		if strings.Contains(s.Text, words) {
			return s
		}
	}
	t.Fatalf("no step with %q in %+v", words, r.Steps)
	return practical.Step{}
}

func named(r Recipe) map[string]string {
	m := map[string]string{}
	for _, s := range r.Steps {
		m[s.ID] = s.Text
	}
	return m
}

// learnt is the correction that a change of a step leaves.
func learnt(t *testing.T, r Recipe, words string, change func(*practical.Step)) Correction {
	t.Helper()
	before := stepLike(t, r, words)
	after := before
	change(&after)
	c, ok := Learn(before, after, r.Title, march, named(r))
	if !ok {
		t.Fatalf("nothing learnt of %q", words)
	}
	return c
}

func TestNormalWords(t *testing.T) {
	for _, same := range [][]string{
		{"Knead the dough for 8 minutes.", "and knead the dough for 8 mins", "Kneading dough, for 8 min!", "**Knead** your dough for 8 minutes"},
		{"Bake at 200 °C for 20-25 minutes", "bake at 200C for 20 - 25 mins."},
	} {
		for _, other := range same[1:] {
			if a, b := NormalWords(same[0]), NormalWords(other); a != b {
				t.Errorf("%q is %q, %q is %q: want the same", same[0], a, other, b)
			}
		}
	}
	for _, apart := range [][2]string{{"Knead for 8 minutes", "Knead for 10 minutes"}, {"Bake at 200 C", "Bake at 180 C"}, {"Chop the onion", "Chop the carrot"}} {
		if NormalWords(apart[0]) == NormalWords(apart[1]) {
			t.Errorf("%q and %q are the same", apart[0], apart[1])
		}
	}
	if got := NormalWords("The, a. !"); got != "" {
		t.Errorf("words that say nothing are %q", got)
	}
}

func TestCorrectionIsUsedNextTime(t *testing.T) {
	c := learnt(t, Read(scones)[0], "Knead", func(s *practical.Step) { s.Hands = practical.Estimate{Low: 8, Likely: 10, High: 12} })
	next := strings.Replace(scones, "Knead the dough for 8 minutes", "Then knead dough for 8 mins", 1)
	s := stepLike(t, Reader{Corrections: NewCorrections([]Correction{c})}.Read(next)[0], "knead")
	if s.Hands != (practical.Estimate{Low: 8, Likely: 10, High: 12}) || s.Doubt != 0 {
		t.Errorf("hands %+v, doubt %g", s.Hands, s.Doubt)
	}
	want := "your correction of 12 March 2026: hands 8 to 12 minutes, likely 10 (read as 8)"
	if len(s.Why) < 2 || s.Why[0] != want {
		t.Errorf("why %q, want %q first", s.Why, want)
	}
	// Other words, and no corrections: as the program reads.
	if diff := cmp.Diff(Read(scones), Reader{Corrections: NewCorrections([]Correction{{Words: "Knead for 9 minutes", Date: "2026-03-12", Figures: c.Figures}})}.Read(scones)); diff != "" {
		t.Errorf("a correction of other words changed the reading (-want +got):\n%s", diff)
	}
}

func TestEachFigureIsRemembered(t *testing.T) {
	read := Read(scones)[0]
	for _, c := range []struct {
		name, words string
		change      func(*practical.Step)
		holds       func(practical.Step) bool
	}{
		{"wait", "Bake", func(s *practical.Step) { w := *s.Wait; w.Least, w.Most = 14, 16; s.Wait = &w }, func(s practical.Step) bool { return s.Wait.Least == 14 && s.Wait.Most == 16 }},
		{"no most", "Bake", func(s *practical.Step) { w := *s.Wait; w.Least, w.Most = 14, 0; s.Wait = &w }, func(s practical.Step) bool { return s.Wait.Least == 14 && s.Wait.Most == 0 }},
		{"celsius", "Bake", func(s *practical.Step) { w := *s.Wait; w.Celsius = 220; s.Wait = &w }, func(s practical.Step) bool { return s.Wait.Celsius == 220 }},
		{"place", "Bake", func(s *practical.Step) { s.Wait = &practical.Wait{Place: practical.AtHob, Least: 8, Most: 9} }, func(s practical.Step) bool {
			return s.Wait.Place == practical.AtHob && s.Wait.Celsius == 0 && s.Wait.Least == 8
		}},
		{"no wait", "Bake", func(s *practical.Step) { s.Wait = nil }, func(s practical.Step) bool { return s.Wait == nil }},
		{"a wait", "Knead", func(s *practical.Step) {
			s.Wait = &practical.Wait{Place: practical.AtWarm, Least: 30, Most: 60, Attention: practical.Look, Every: 10}
		}, func(s practical.Step) bool {
			return s.Wait != nil && s.Wait.Place == practical.AtWarm && s.Wait.Most == 60 && s.Wait.Attention == practical.Look && s.Wait.Every == 10
		}},
		{"attention", "Bake", func(s *practical.Step) { w := *s.Wait; w.Attention = practical.Stay; s.Wait = &w }, func(s practical.Step) bool { return s.Wait.Attention == practical.Stay }},
		{"food", "Grate", func(s *practical.Step) { s.Food = practical.ReadyToEat }, func(s practical.Step) bool { return s.Food == practical.ReadyToEat }},
		{"set-up", "Grate", func(s *practical.Step) { s.SetUp = true }, func(s practical.Step) bool { return s.SetUp }},
		{"links", "Roll out", func(s *practical.Step) {
			s.After = []practical.After{{Step: stepLike(t, read, "Grate").ID}, {Step: stepLike(t, read, "Knead").ID, Least: 5, Most: new(20)}}
		}, func(s practical.Step) bool {
			return len(s.After) == 2 && s.After[1].Least == 5 && *s.After[1].Most == 20
		}},
	} {
		t.Run(c.name, func(t *testing.T) {
			one := learnt(t, read, c.words, c.change)
			kept, faults := ParseCorrections("c.yaml", NewCorrections([]Correction{one}).Write()) // as it comes back from its file
			if len(faults) > 0 {
				t.Fatal(faults)
			}
			got := stepLike(t, Reader{Corrections: kept}.Read(scones)[0], c.words)
			if !c.holds(got) || !strings.HasPrefix(got.Why[0], "your correction of 12 March 2026: ") {
				t.Errorf("%+v, wait %+v", got, got.Wait)
			}
		})
	}
}

// What a recipe says around a step decides its temperature and order: a
// correction made where they were read otherwise is not used.
func TestAroundDecides(t *testing.T) {
	plain := strings.Replace(scones, "Bake at 200 C for 12 minutes", "Bake for 12 minutes", 1)
	hot := strings.Replace(plain, "Rub the", "Heat the oven to 220 C.\nRub the", 1)
	warm := strings.Replace(plain, "Rub the", "Heat the oven to 180 C.\nRub the", 1)
	c := NewCorrections([]Correction{learnt(t, Read(hot)[0], "Bake", func(s *practical.Step) { w := *s.Wait; w.Celsius = 210; s.Wait = &w })})
	if s := stepLike(t, Reader{Corrections: c}.Read(hot)[0], "Bake"); s.Wait.Celsius != 210 {
		t.Errorf("in the same recipe %d °C, want 210", s.Wait.Celsius)
	}
	if s := stepLike(t, Reader{Corrections: c}.Read(warm)[0], "Bake"); s.Wait.Celsius != 180 || strings.Contains(strings.Join(s.Why, " "), "your correction") {
		t.Errorf("in another recipe %d °C, want 180: %q", s.Wait.Celsius, s.Why)
	}
}

// An order that would go round in a ring is left as it was read.
func TestNoRing(t *testing.T) {
	r := Read(scones)[0]
	first := stepLike(t, r, "Rub")
	c := learnt(t, r, "Rub", func(s *practical.Step) { s.After = []practical.After{{Step: stepLike(t, r, "Bake").ID}} })
	got := stepLike(t, Reader{Corrections: NewCorrections([]Correction{c})}.Read(scones)[0], "Rub")
	if diff := cmp.Diff(first, got); diff != "" {
		t.Errorf("(-want +got)\n%s", diff)
	}
}

func TestThen(t *testing.T) {
	at := func(was, now string) Correction {
		return Correction{Words: "Knead", Date: "2026-03-12", Figures: []Figure{{"hands", was, now}}}
	}
	if got, ok := at("8", "10").Then(at("10", "12")); !ok || got.Figures[0] != (Figure{"hands", "8", "12"}) {
		t.Errorf("8 to 10 to 12: %+v", got)
	}
	if got, ok := at("8", "10").Then(at("10", "8")); ok {
		t.Errorf("taken back, and yet %+v", got)
	}
	food := Correction{Words: "Knead", Date: "2026-03-13", Figures: []Figure{{"food", "none", "raw"}}}
	if got, ok := at("8", "10").Then(food); !ok || len(got.Figures) != 2 || got.Date != "2026-03-13" {
		t.Errorf("two figures: %+v", got)
	}
}

func TestMerge(t *testing.T) {
	one := func(words, date, was, now string) Correction {
		return Correction{Words: words, Date: date, Recipe: "Scones", Figures: []Figure{{"hands", was, now}}}
	}
	mine := NewCorrections([]Correction{one("Knead", "2026-03-01", "8", "10"), one("Whisk", "2026-03-01", "2", "3")})
	theirs := NewCorrections([]Correction{one("kneading", "2026-03-05", "8", "6"), one("Whisk", "2026-03-05", "2", "3"), one("Fold", "2026-03-05", "2", "4")})
	merged, added, conflicts := Merge(mine, theirs, false)
	want := []Conflict{{"Knead", "hands", "10", "6", "1 March 2026", "5 March 2026", "Scones"}}
	if diff := cmp.Diff(want, conflicts); diff != "" || added != 1 || len(merged.All()) != 3 {
		t.Errorf("added %d, %d in all; conflicts (-want +got):\n%s", added, len(merged.All()), diff)
	}
	if c, _ := merged.For("Knead"); c.Figures[0].Now != "10" {
		t.Errorf("mine does not stand: %+v", c)
	}
	merged, _, _ = Merge(mine, theirs, true)
	if c, _ := merged.For("Knead"); c.Figures[0].Now != "6" || c.Date != "2026-03-05" {
		t.Errorf("theirs was preferred: %+v", c)
	}
	if merged, added, _ := Merge(nil, theirs, false); added != 3 || len(merged.All()) != 3 {
		t.Errorf("into nothing: %d", added)
	}
}

func TestParseCorrectionsFaults(t *testing.T) {
	const whole = "plait-corrections: 1\ncorrections:\n- words: Knead\n  date: 2026-03-12\n  now: {hands: 10}\n  was: {hands: 8}\n"
	if c, faults := ParseCorrections("c.yaml", []byte(whole)); len(faults) > 0 || len(c.All()) != 1 {
		t.Fatal(faults)
	}
	for _, c := range []struct{ name, old, new, want string }{
		{"not YAML", "corrections:\n", "corrections: [\n", "the file is not one of corrections"},
		{"another file", whole, "title: Scones\n", "the file is not one of corrections"},
		{"no form", "plait-corrections: 1\n", "", "does not say that it holds corrections"},
		{"newer", ": 1", ": 9", "a newer plait wrote this file"},
		{"no words", "Knead", "'!'", "c.yaml:3:"},
		{"date", "2026-03-12", "12 March", "c.yaml:4:9: corrections[0].date: “12 March” is not a date; write it as 2026-03-12"},
		{"figure", "now: {hands", "now: {hand", "“hand” is nothing that is remembered"},
		{"value", "{hands: 10}", "{hands: ten}", "“ten” cannot be read; write minutes of hands as 10, or as 8 to 12, likely 10"},
		{"order", "{hands: 10}", "{hands: '9 to 7, likely 8'}", "write the minutes in order"},
		{"place", "{hands: 10}", "{place: cellar}", "write the place as one of"},
		{"no was", "was: {hands: 8}", "was: {}", "it does not say what hands was read as"},
		{"nothing", "now: {hands: 10}", "now: {}", "this correction changes nothing"},
		{"twice", "corrections:\n", "corrections:\n- {words: knead, date: 2026-03-11, now: {food: raw}, was: {food: none}}\n", "means the same as correction 1"},
		{"alias", "now: {hands: 10}", "now: &a {hands: 10}", "anchors and aliases"},
		{"unknown", "  date", "  colour: red\n  date", "colour"},
	} {
		_, faults := ParseCorrections("c.yaml", []byte(strings.Replace(whole, c.old, c.new, 1)))
		if !strings.Contains(faults.Error(), c.want) {
			t.Errorf("%s: %q, want %q in it", c.name, faults.Error(), c.want)
		}
		for _, f := range faults {
			if f.Hint == "" || f.Code != practical.Invalid {
				t.Errorf("%s: %+v", c.name, f)
			}
		}
	}
}

// Whatever is written comes back, and a corrected step stays in form.
func TestCorrectionsRoundTrip(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		var list []Correction
		for range rapid.IntRange(0, 4).Draw(t, "n") {
			words := rapid.StringMatching(`[A-Z][a-z]{2,9} [a-z:#'"\\&*é½-]{1,12}( \d{1,3} minutes)?\.?`).Draw(t, "words")
			low := rapid.IntRange(0, 300).Draw(t, "low")
			after := practical.Step{Hands: practical.Around(low), Food: rapid.SampledFrom([]practical.Food{"", practical.Raw}).Draw(t, "food")}
			if rapid.Bool().Draw(t, "waits") {
				after.Wait = &practical.Wait{Place: practical.AtOven, Least: low, Most: low + 5, Celsius: 50 + low/2}
			}
			after.After = []practical.After{{Step: "A1", Least: low}, {Step: "A2"}}
			c, ok := Learn(practical.Step{Text: words}, after, words, march, map[string]string{"A1": words, "A2": "Whisk: well"})
			if ok {
				list = append(list, c)
			}
		}
		want := NewCorrections(list)
		data := want.Write()
		got, faults := ParseCorrections("c.yaml", data)
		if len(faults) > 0 {
			t.Fatalf("%v\n%s", faults, data)
		}
		if diff := cmp.Diff(want.All(), got.All()); diff != "" {
			t.Fatalf("(-want +got)\n%s\n%s", diff, data)
		}
	})
}

// The example of docs/corrections.md is read, and what the document says of it is so.
func TestCorrectionsDocument(t *testing.T) {
	text, err := os.ReadFile("../../docs/corrections.md")
	if err != nil {
		t.Fatal(err)
	}
	_, rest, _ := strings.Cut(string(text), "```yaml\n")
	example, _, _ := strings.Cut(rest, "```")
	c, faults := ParseCorrections("docs/corrections.md", []byte(example))
	if len(faults) > 0 {
		t.Fatal(faults)
	}
	if got := string(c.Write()); got != example {
		t.Errorf("written again it is\n%s", got)
	}
	s := stepLike(t, Reader{Corrections: c}.Read(scones)[0], "Knead")
	if s.Hands.Likely == 10 {
		t.Error("the dough of the scones is no part of these words")
	}
	s = stepLike(t, Reader{Corrections: c}.Read(strings.Replace(scones, "Knead the dough for", "Knead for", 1))[0], "Knead")
	if !strings.Contains(strings.Join(strings.Fields(string(text)), " "), s.Why[0]) {
		t.Errorf("the document does not say %q", s.Why[0])
	}
	for _, name := range FigureNames() {
		if !strings.Contains(string(text), "| `"+name+"` |") {
			t.Errorf("the document does not tell of %s", name)
		}
	}
}

func FuzzParseCorrections(f *testing.F) {
	f.Add([]byte("plait-corrections: 1\ncorrections:\n- words: Knead\n  date: 2026-03-12\n  now: {hands: 10}\n  was: {hands: 8}\n"))
	f.Fuzz(func(t *testing.T, data []byte) {
		c, faults := ParseCorrections("c.yaml", data)
		if (c == nil) != (len(faults) > 0) {
			t.Fatalf("%v and %v", c, faults)
		}
		if c != nil {
			Reader{Corrections: c}.Read(scones)
		}
	})
}
