package recipe

import (
	"fmt"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"plait.example/internal/practical"
)

// truth is a row written by hand about a text; see testdata/README.md.
type truth struct {
	words, kind, minutes, place, celsius string
	after                                []string
	look                                 string // how closely the wait is watched: "10", "leave", "look", "stay"; empty: not judged
	step                                 int    // of the recipe read; -1: none
}

// tally counts what was right of what there was.
type tally struct{ right, of int }

func (t *tally) note(ok bool) {
	t.of++
	if ok {
		t.right++
	}
}

func (t tally) share() float64 {
	if t.of == 0 {
		return 1
	}
	return float64(t.right) / float64(t.of)
}

func (t tally) String() string {
	return fmt.Sprintf("%4d of %4d  %5.1f %%", t.right, t.of, 100*t.share())
}

// score is a tally a field. Precision is over what was read, recall over the truth.
type score struct {
	minutes, minutesPrecise, celsius, celsiusPrecise, split, place, order, look tally
}

func readTruth(t *testing.T, path string) []truth {
	t.Helper()
	b, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	var rows []truth
	for n, l := range strings.Split(strings.TrimRight(string(b), "\n"), "\n") {
		f := strings.Split(l, "\t")
		if len(f) < 5 {
			t.Fatalf("%s:%d: %d columns, want 5 or 6", path, n+1, len(f))
		}
		r := truth{words: f[0], kind: f[1], minutes: f[2], place: f[3], celsius: f[4], step: -1}
		if len(f) > 5 && f[5] != "" {
			r.after = strings.Split(f[5], ",")
		}
		if len(f) > 6 {
			r.look = f[6]
		}
		rows = append(rows, r)
	}
	return rows
}

// locate finds the step that holds each row's words; every row's words stand after the row's before, or anywhere.
func locate(t *testing.T, text string, r Recipe, rows []truth) {
	t.Helper()
	from := 0
	for i := range rows {
		at := strings.Index(text[from:], rows[i].words)
		if at < 0 {
			t.Fatalf("%q is not in the text after the row before it", rows[i].words)
		}
		at += from
		from = at
		for k, s := range r.Sources {
			if at >= s.Start && at < s.End {
				rows[i].step = k
			}
		}
	}
}

// TestTruth compares what is read with what people wrote down about the texts.
func TestTruth(t *testing.T) {
	for _, set := range []struct {
		name string
		min  score // shares in per cent that must not be lost: tally.right holds it
	}{
		{"recipes", floor(95, 95, 95, 95, 92, 92, 88)},
		{"fresh", floor(95, 95, 95, 95, 92, 92, 88)},
		{"uk", floor(95, 95, 95, 95, 92, 92, 88)},
		{"own", floor(99, 99, 99, 99, 95, 95, 92)},
		{"period", floor(99, 99, 99, 99, 92, 92, 88)},
		{"held", floor(98, 98, 99, 99, 98, 97, 95)},
		{"held2", floor(97, 97, 99, 99, 97, 97, 97)},
		{"third", floor(99, 99, 99, 99, 98, 97, 98)},
		{"fourth", floor(98, 99, 99, 99, 99, 98, 93)},
		{"fifth", floor(98, 96, 99, 92, 99, 98, 95)},
		{"sixth", floor(99, 97, 99, 87, 99, 99, 97)},
		{"seventh", floor(98, 99, 99, 99, 98, 99, 92)},
		{"eighth", floor(97, 95, 99, 99, 98, 97, 95)},
		{"ninth", floor(97, 97, 99, 99, 99, 99, 96)},
		{"tenth", floor(97, 99, 99, 85, 98, 95, 93)},
	} {
		t.Run(set.name, func(t *testing.T) {
			var total score
			files, _ := filepath.Glob("testdata/truth/" + set.name + "/*.tsv")
			if len(files) == 0 {
				t.Fatal("no truth found")
			}
			for _, path := range files {
				name := strings.TrimSuffix(filepath.Base(path), ".tsv")
				texts, _ := filepath.Glob("testdata/" + set.name + "/" + name + ".*")
				if len(texts) != 1 {
					t.Fatalf("%s: %d texts", name, len(texts))
				}
				b, err := os.ReadFile(texts[0])
				if err != nil {
					t.Fatal(err)
				}
				rows := readTruth(t, path)
				all := Read(string(b))
				if len(all) != 1 {
					t.Fatalf("%s: read as %d recipes", name, len(all))
				}
				locate(t, string(b), all[0], rows)
				judge(t, name, all[0], rows, &total)
			}
			report(t, len(files), total)
			total.atLeast(t, set.min)
		})
	}
}

func floor(m, mp, c, cp, s, p, o int) score {
	f := func(n int) tally { return tally{n, 100} }
	return score{f(m), f(mp), f(c), f(cp), f(s), f(p), f(o), f(o)}
}

func (s score) atLeast(t *testing.T, min score) {
	t.Helper()
	got, want := s.fields(), min.fields()
	for i := range got {
		if got[i].t.share() < want[i].t.share() {
			t.Errorf("%s: %v, want at least %.0f %%", got[i].name, got[i].t, 100*want[i].t.share())
		}
	}
}

type field struct {
	name string
	t    tally
}

func (s score) fields() []field {
	return []field{
		{"stated minutes, recall", s.minutes},
		{"stated minutes, precision", s.minutesPrecise},
		{"oven degrees, recall", s.celsius},
		{"oven degrees, precision", s.celsiusPrecise},
		{"hands or wait", s.split},
		{"place", s.place},
		{"order", s.order},
		{"attention", s.look},
	}
}

func report(t *testing.T, texts int, s score) {
	t.Logf("%d texts", texts)
	for _, f := range s.fields() {
		t.Logf("%-28s %v", f.name, f.t)
	}
}

// judge scores one recipe.
func judge(t *testing.T, name string, r Recipe, rows []truth, s *score) {
	said := map[int]bool{} // steps whose stated minutes the truth knows
	degrees := map[int]bool{}
	for i, row := range rows {
		miss := func(what string, args ...any) {
			t.Logf("%s row %d %q: %s", name, i+1, row.words, fmt.Sprintf(what, args...))
		}
		if row.step < 0 {
			miss("in no step")
			if row.kind != "-" {
				s.split.note(false)
			}
			if row.minutes != "~" {
				s.minutes.note(false)
			}
			continue
		}
		st := r.Steps[row.step]
		if row.minutes != "~" {
			ok := minutesRight(st, row.minutes)
			s.minutes.note(ok)
			said[row.step] = said[row.step] || ok
			if !ok {
				miss("minutes %s, read %s", row.minutes, figures(st))
			}
		}
		if row.kind != "-" {
			ok := kindRight(st, row.kind)
			s.split.note(ok)
			if !ok {
				miss("kind %s, read %s", row.kind, figures(st))
			}
		}
		if row.place != "-" {
			ok := placeRight(st, row.place)
			s.place.note(ok)
			if !ok {
				miss("place %s, read %s", row.place, figures(st))
			}
		}
		if row.celsius != "-" && row.kind == "wait" {
			ok := st.Wait != nil && strconv.Itoa(st.Wait.Celsius) == row.celsius
			s.celsius.note(ok)
			degrees[row.step] = degrees[row.step] || ok
			if !ok {
				miss("degrees %s, read %s", row.celsius, figures(st))
			}
		}
		if row.look != "" {
			ok := lookRight(st, row.look)
			s.look.note(ok)
			if !ok {
				miss("attention %s, read %s", row.look, figures(st))
			}
		}
		for _, a := range row.after {
			ok := orderRight(r, rows, i, a)
			s.order.note(ok)
			if !ok {
				miss("order after %s is wrong", a)
			}
		}
	}
	for k, st := range r.Steps {
		if saysMinutes(st) {
			s.minutesPrecise.note(said[k])
			if !said[k] {
				t.Logf("%s step %s: minutes that the truth does not know: %s %q", name, st.ID, figures(st), st.Text)
			}
		}
		if st.Wait != nil && st.Wait.Place == practical.AtOven && hasDegrees(rows, k) {
			s.celsiusPrecise.note(degrees[k])
		}
	}
}

func hasDegrees(rows []truth, step int) bool {
	for _, r := range rows {
		if r.step == step && r.celsius != "-" {
			return true
		}
	}
	return false
}

func figures(s practical.Step) string {
	if s.Wait == nil {
		return fmt.Sprintf("hands %v uses %v %q", s.Hands, s.Uses, s.Text)
	}
	return fmt.Sprintf("hands %v wait %d-%d %s %d %s %q", s.Hands, s.Wait.Least, s.Wait.Most, s.Wait.Place, s.Wait.Celsius, s.Wait.Attention, s.Text)
}

func saysMinutes(s practical.Step) bool {
	for _, w := range s.Why {
		if strings.HasSuffix(w, "': said") {
			return true
		}
	}
	return false
}

// minutesRight compares with hands or wait. A wait with no most agrees with a single figure.
func minutesRight(s practical.Step, want string) bool {
	low, high, open := parseMinutes(want)
	if s.Wait != nil {
		w := s.Wait
		if low == 0 && high > 0 && w.Most == high {
			return true // "up to"
		}
		if w.Least == low && (open && w.Most == 0 || !open && (w.Most == high || w.Most == 0 && low == high || w.Place == practical.AtWarm && low == high && w.Most <= low*5/4)) {
			return true
		}
	}
	if low == 0 && high > 0 {
		return s.Hands.High == high // "no more than"
	}
	return s.Hands.Low == low && s.Hands.High == high
}

// lookRight compares the attention: a figure is how often to look, in minutes.
func lookRight(s practical.Step, want string) bool {
	if s.Wait == nil {
		return false
	}
	if every, err := strconv.Atoi(want); err == nil {
		return s.Wait.Attention == practical.Look && s.Wait.Every == every
	}
	return string(s.Wait.Attention) == want
}

func parseMinutes(s string) (low, high int, open bool) {
	open = strings.HasSuffix(s, "+")
	a, b, found := strings.Cut(strings.TrimSuffix(s, "+"), "-")
	low, _ = strconv.Atoi(a)
	high = low
	if found {
		high, _ = strconv.Atoi(b)
	}
	return low, high, open
}

func kindRight(s practical.Step, kind string) bool {
	switch kind {
	case "wait":
		return s.Wait != nil
	case "busy":
		return s.Wait == nil || s.Wait.Attention == practical.Stay
	case "oven":
		return strings.HasPrefix(s.ID, ovenID)
	case "serve":
		return s.ID == serveID
	}
	return s.Wait == nil && s.ID != serveID && !strings.HasPrefix(s.ID, ovenID)
}

func placeRight(s practical.Step, place string) bool {
	if s.Wait != nil {
		return string(s.Wait.Place) == place
	}
	if place == "microwave" {
		return len(s.Uses) > 0 && s.Uses[0] == practical.Microwave
	}
	ring := false
	for _, k := range s.Uses {
		ring = ring || k == practical.Ring
	}
	return ring == (place == "hob") && (place == "hob" || place == "bench")
}

// orderRight says whether row i comes after row a, at once or by others between; "!a": that it need not.
func orderRight(r Recipe, rows []truth, i int, a string) bool {
	not := strings.HasPrefix(a, "!")
	n, _ := strconv.Atoi(strings.TrimPrefix(a, "!"))
	from, to := rows[n-1].step, rows[i].step
	if from == to {
		return !not
	}
	if from < 0 || to < 0 {
		return false
	}
	return reaches(r, to, r.Steps[from].ID) != not
}

func reaches(r Recipe, from int, id string) bool {
	seen := map[int]bool{}
	var visit func(int) bool
	visit = func(k int) bool {
		if seen[k] {
			return false
		}
		seen[k] = true
		for _, a := range r.Steps[k].After {
			if a.Step == id {
				return true
			}
			for m, s := range r.Steps {
				if s.ID == a.Step && visit(m) {
					return true
				}
			}
		}
		return false
	}
	return visit(from)
}
