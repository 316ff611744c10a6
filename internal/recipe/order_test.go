package recipe

import (
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"
)

// orders is what the links of a recipe should be, as matrices over its steps:
// before[a][b] says that b needs a, at once or through others; may, that b may
// come after a; known, which steps the truth speaks of.
type orders struct {
	before, may [][]bool
	known       []bool
}

// orderScore counts links that are needed, links that were read, and pairs of steps that must stay free of each other.
type orderScore struct{ needed, precise, free tally }

// readOrder reads a truth of order: words of the text TAB rows that the row needs directly; "?3": row 3 may come first.
func readOrder(t *testing.T, path, text string, r Recipe) orders {
	t.Helper()
	b, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	var rows []truth
	for n, l := range strings.Split(strings.TrimRight(string(b), "\n"), "\n") {
		words, needs, ok := strings.Cut(l, "\t")
		if !ok {
			t.Fatalf("%s:%d: no column of needs", path, n+1)
		}
		row := truth{words: words, step: -1}
		if needs != "" {
			row.after = strings.Split(needs, ",")
		}
		rows = append(rows, row)
	}
	locate(t, text, r, rows)
	o := orders{before: square(len(r.Steps)), may: square(len(r.Steps)), known: make([]bool, len(r.Steps))}
	for i, row := range rows {
		if row.step < 0 {
			t.Fatalf("%s row %d %q: in no step", path, i+1, row.words)
		}
		o.known[row.step] = !r.Steps[row.step].SetUp // done before the clock: before all others
		for _, a := range row.after {
			n, err := strconv.Atoi(strings.TrimPrefix(a, "?"))
			if err != nil || n < 1 || n > i {
				t.Fatalf("%s row %d: %q is no earlier row", path, i+1, a)
			}
			o.may[rows[n-1].step][row.step] = true
			o.before[rows[n-1].step][row.step] = o.before[rows[n-1].step][row.step] || !strings.HasPrefix(a, "?")
		}
	}
	closure(o.before)
	closure(o.may)
	return o
}

func square(n int) [][]bool {
	m := make([][]bool, n)
	for i := range m {
		m[i] = make([]bool, n)
	}
	return m
}

// closure adds to a relation all that follows through others.
func closure(m [][]bool) {
	for k := range m {
		for a := range m {
			for b := range m {
				m[a][b] = m[a][b] || m[a][k] && m[k][b]
			}
		}
	}
}

// direct says that b comes after a and not through a known step between.
func direct(m [][]bool, known []bool, a, b int) bool {
	for k := range m {
		if known[k] && m[a][k] && m[k][b] {
			return false
		}
	}
	return m[a][b]
}

// judgeOrder scores the links of a recipe.
func judgeOrder(t *testing.T, name string, r Recipe, o orders, s *orderScore) {
	t.Helper()
	read := square(len(r.Steps))
	for i := range r.Steps {
		for k := range r.Steps {
			for _, a := range r.Steps[i].After {
				read[k][i] = read[k][i] || a.Step == r.Steps[k].ID
			}
		}
	}
	closure(read)
	for a := range read {
		for b := range read {
			if a == b || !o.known[a] || !o.known[b] {
				continue
			}
			if direct(o.before, o.known, a, b) {
				s.needed.note(read[a][b])
				if !read[a][b] {
					t.Logf("%s: missing: %s %.40q needs %s %.40q", name, r.Steps[b].ID, r.Steps[b].Text, r.Steps[a].ID, r.Steps[a].Text)
				}
			}
			if direct(read, o.known, a, b) && (o.before[a][b] || !o.may[a][b]) {
				s.precise.note(o.before[a][b])
				if !o.before[a][b] {
					t.Logf("%s: too much: %s %.40q after %s %.40q", name, r.Steps[b].ID, r.Steps[b].Text, r.Steps[a].ID, r.Steps[a].Text)
				}
			}
			if a < b && !o.may[a][b] && !o.may[b][a] {
				s.free.note(!read[a][b] && !read[b][a])
			}
		}
	}
}

// TestOrderLinks compares the links that are read with those that were written
// down by hand, and the pairs of steps that need not wait for each other.
func TestOrderLinks(t *testing.T) {
	for _, set := range []struct {
		name                  string
		needed, precise, free float64 // shares that must not be lost
	}{
		{"order", 1, 0.98, 0.96},
		{"order2", 1, 0.97, 0.95},
		{"order3", 1, 0.86, 0.62},
	} {
		t.Run(set.name, func(t *testing.T) {
			var total orderScore
			files, _ := filepath.Glob("testdata/truth/" + set.name + "/*.tsv")
			if len(files) == 0 {
				t.Fatal("no truth found")
			}
			for _, path := range files {
				name := strings.TrimSuffix(filepath.Base(path), ".tsv")
				b, err := os.ReadFile("testdata/" + set.name + "/" + name + ".txt")
				if err != nil {
					t.Fatal(err)
				}
				all := Read(string(b))
				if len(all) != 1 {
					t.Fatalf("%s: read as %d recipes", name, len(all))
				}
				judgeOrder(t, name, all[0], readOrder(t, path, string(b), all[0]), &total)
			}
			t.Logf("%d texts: needed %v, precise %v, free %v", len(files), total.needed, total.precise, total.free)
			if total.needed.share() < set.needed || total.precise.share() < set.precise || total.free.share() < set.free {
				t.Errorf("want at least %v, %v, %v", set.needed, set.precise, set.free)
			}
		})
	}
}

// TestServingComesLast: whatever was read, nothing of the dish is left over when it is served.
func TestServingComesLast(t *testing.T) {
	texts, _ := filepath.Glob("testdata/*/*.*")
	served := 0
	for _, path := range texts {
		b, err := os.ReadFile(path)
		if err != nil {
			t.Fatal(err)
		}
		for _, r := range Read(string(b)) {
			last := -1
			for i, s := range r.Steps {
				if s.ID == serveID {
					last = i
				}
			}
			if last < 0 {
				continue
			}
			served++
			for i, s := range r.Steps[:last] {
				if !s.SetUp && !strings.HasPrefix(s.ID, ovenID) && !strings.HasPrefix(s.ID, choreID) && !reaches(r, last, s.ID) {
					t.Errorf("%s: step %d %.40q is not before the serving", path, i+1, s.Text)
				}
			}
		}
	}
	if served < 60 {
		t.Errorf("%d recipes with a serving, want at least 60", served)
	}
}
