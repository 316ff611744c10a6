package recipe

import (
	"math/rand/v2"
	"os"
	"path/filepath"
	"sort"
	"strings"
	"testing"
	"unicode"
	"unicode/utf8"

	"plait.example/internal/practical"
)

// texts is every recipe text in testdata.
func texts(t testing.TB) map[string]string {
	t.Helper()
	m := map[string]string{}
	for _, dir := range []string{"recipes", "fresh", "uk", "own", "period"} {
		files, _ := filepath.Glob("testdata/" + dir + "/*.[mt][dx]*")
		for _, f := range files {
			if strings.Contains(f, "NOTICE") {
				continue
			}
			b, err := os.ReadFile(f)
			if err != nil {
				t.Fatal(err)
			}
			m[f] = string(b)
		}
	}
	if len(m) < 30 {
		t.Fatalf("%d texts in testdata, want 30 or more", len(m))
	}
	return m
}

// checkRecipes fails when a word of the text is lost: every character that is
// no space must stand in exactly one step, or in an ingredient, a heading, the
// title, the portions or Unread.
func checkRecipes(t *testing.T, text string, all []Recipe) {
	t.Helper()
	if len(all) == 0 {
		t.Fatal("no recipe at all: want one, if need be empty")
	}
	covered := make([]bool, len(text))
	end := 0
	for _, r := range all {
		if len(r.Steps) != len(r.Sources) {
			t.Fatalf("%d steps but %d sources", len(r.Steps), len(r.Sources))
		}
		ids := map[string]bool{}
		for i, s := range r.Steps {
			src := r.Sources[i]
			if src.Step != s.ID || ids[s.ID] {
				t.Fatalf("step %d: id %q, source %q, or twice", i, s.ID, src.Step)
			}
			ids[s.ID] = true
			if src.Start < end || src.End <= src.Start || src.End > len(text) {
				t.Fatalf("step %q at %d to %d after %d: out of order or empty", s.ID, src.Start, src.End, end)
			}
			end = src.End
			if text[src.Start:src.End] != s.Text {
				t.Fatalf("step %q: text %q is not the source's %q", s.ID, s.Text, text[src.Start:src.End])
			}
			for k := src.Start; k < src.End; k++ {
				covered[k] = true
			}
		}
		for _, s := range r.Steps {
			checkStep(t, s, ids)
		}
		checkDish(t, r)
	}
	checkFound(t, text, covered, all)
}

// checkStep holds the rules of form of a step, and that it comes after other steps of the recipe.
func checkStep(t *testing.T, s practical.Step, ids map[string]bool) {
	t.Helper()
	h := s.Hands
	if h.Low < 0 || h.Low > h.Likely || h.Likely > h.High || h.High > 600 {
		t.Fatalf("step %q: hands %v", s.ID, h)
	}
	if s.Doubt < 0 || s.Doubt > 1 {
		t.Fatalf("step %q: doubt %v", s.ID, s.Doubt)
	}
	if len(s.Why) == 0 {
		t.Fatalf("step %q %q has no reason", s.ID, s.Text)
	}
	if w := s.Wait; w != nil && (w.Least < 1 || w.Most != 0 && w.Most < w.Least || w.Place == "" || w.Place == practical.AtHands || w.Every < 0 || w.DoorShut > w.Least ||
		w.Place == practical.AtOven && (w.Celsius < 50 || w.Celsius > 300) || w.Attention == practical.Look && w.Every < 1) {
		t.Fatalf("step %q: wait %+v", s.ID, *w)
	}
	for _, a := range s.After {
		if !ids[a.Step] || a.Step == s.ID {
			t.Fatalf("step %q comes after %q, which is itself or not there", s.ID, a.Step)
		}
	}
}

// checkDish holds that a dish's steps refer to those before them only, so that no ring is among them.
func checkDish(t *testing.T, r Recipe) {
	t.Helper()
	d := r.Dish("A")
	ids := map[string]bool{}
	for _, s := range d.Steps {
		for _, a := range s.After {
			if !ids[a.Step] {
				t.Fatalf("dish step %q comes after %q, which is not there", s.ID, a.Step)
			}
		}
		ids[s.ID] = true
	}
}

// checkFound looks for every word outside the steps in the rest of what was read.
func checkFound(t *testing.T, text string, covered []bool, all []Recipe) {
	t.Helper()
	var b strings.Builder
	for _, r := range all {
		b.WriteString(r.Title + " ")
		for _, u := range r.Unread {
			b.WriteString(u + " ")
		}
		for _, g := range r.Ingredients {
			b.WriteString(g.Raw + " " + g.Component + " ")
		}
		for _, s := range r.Steps {
			b.WriteString(s.Component + " ")
		}
	}
	rest := strings.ToLower(b.String())
	for _, w := range wordsOutside(text, covered) {
		if strings.Contains(rest, strings.ToLower(w)) || headingWord(w) {
			continue
		}
		t.Fatalf("the word %q is in no step, no ingredient, no heading and not in Unread", w)
	}
}

// wordsOutside is the words, letters only, that no step covers.
func wordsOutside(text string, covered []bool) []string {
	var out []string
	start := -1
	for i, r := range text {
		inWord := unicode.IsLetter(r) && r != utf8.RuneError && !covered[i]
		if inWord && start < 0 {
			start = i
		}
		if !inWord && start >= 0 {
			out = append(out, text[start:i])
			start = -1
		}
	}
	if start >= 0 {
		out = append(out, text[start:])
	}
	return out
}

// headingWords are words of a heading or of the portions line, which are read and not kept, and the "and" before the last of a list in a sentence.
var headingWords = func() map[string]bool {
	m := map[string]bool{}
	for _, t := range tokenize("ingredients method directions instructions steps step for the you will need what to do serves servings serving makes about of preparation people portions yield yields x feeds serve how make it title and", 0) {
		m[t.stem] = true
	}
	return m
}()

func headingWord(w string) bool { return headingWords[stem(strings.ToLower(w))] }

// TestEveryWordIsFound holds for all texts of testdata.
func TestEveryWordIsFound(t *testing.T) {
	for name, text := range texts(t) {
		t.Run(name, func(t *testing.T) {
			all := Read(text)
			checkRecipes(t, text, all)
			if len(all[0].Steps) < 2 {
				t.Fatalf("%d steps", len(all[0].Steps))
			}
		})
	}
}

// TestMutations reads texts with lines dropped, doubled, moved and cut, and holds the same.
func TestMutations(t *testing.T) {
	var names []string
	all := texts(t)
	for n := range all {
		names = append(names, n)
	}
	// Order of a map is not fixed: sort before drawing.
	sort.Strings(names)
	r := rand.New(rand.NewPCG(1, 2))
	for range 400 {
		a, b := all[names[r.IntN(len(names))]], all[names[r.IntN(len(names))]]
		text := mutate(r, a, b)
		checkRecipes(t, text, Read(text))
	}
}

func mutate(r *rand.Rand, a, b string) string {
	lines := strings.Split(a, "\n")
	other := strings.Split(b, "\n")
	for range 1 + r.IntN(6) {
		i := r.IntN(len(lines))
		switch r.IntN(6) {
		case 0:
			lines = append(lines[:i], lines[i+1:]...)
		case 1:
			lines[i] = other[r.IntN(len(other))]
		case 2:
			j := r.IntN(len(lines))
			lines[i], lines[j] = lines[j], lines[i]
		case 3:
			lines[i] = strings.ToUpper(lines[i])
		case 4:
			if n := len(lines[i]); n > 2 {
				lines[i] = lines[i][:r.IntN(n)]
			}
		case 5:
			lines[i] = strings.NewReplacer(". ", "; ", " ", "  ").Replace(lines[i])
		}
		if len(lines) == 0 {
			lines = []string{""}
		}
	}
	return strings.Join(lines, "\n")
}
