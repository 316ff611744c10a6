package check

import (
	"reflect"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"plait.example/internal/match"
	"plait.example/internal/practical"
	"plait.example/internal/written"
)

// The most serious come first, then the rows in their order, then what is said of
// the plan as a whole; and a second run finds the same.
func TestOrderOfFindings(t *testing.T) {
	m := planOf(t, kitchenOnly(), faultyPlan)
	found := Run(m, Options{})
	if !slices.IsSortedFunc(found, func(a, b Finding) int {
		if c := rank(a.Severity) - rank(b.Severity); c != 0 {
			return c
		}
		return min(1, max(-1, last(a.Row)-last(b.Row)))
	}) {
		t.Errorf("not in order:\n%s", shown(found))
	}
	for range 5 {
		if !reflect.DeepEqual(Run(m, Options{}), found) {
			t.Fatal("a second run finds something else")
		}
	}
}

func TestEmptyPlan(t *testing.T) {
	if found := Run(match.Matched{}, Options{}); len(found) > 0 {
		t.Errorf("an empty plan has findings:\n%s", shown(found))
	}
}

// A plan without times is judged by the order of its rows alone.
func TestPlanWithoutTimes(t *testing.T) {
	m := planOf(t, kitchenOnly(), faultyPlan)
	for i := range m.Rows {
		m.Rows[i].At, m.Rows[i].Clock, m.Rows[i].Written = 0, written.NoClock, ""
	}
	found := Run(m, Options{})
	for _, f := range found {
		if rule, _ := Usual().Named(f.Rule); rule.Times || f.Minutes > 60 {
			t.Errorf("%s by a clock that is not there: %s", f.Rule, f.Evidence)
		}
	}
	for _, rule := range []string{"in-never-out", "not-pre-heated", "raw-then-ready", "no-core-check", "no-washing-up"} {
		if len(told(found, rule)) == 0 {
			t.Errorf("%s is not told", rule)
		}
	}
}

// Whatever rows a document gives, the rules end, and each finding is about rows
// that are there.
func TestAnyPlan(t *testing.T) {
	texts := []string{"", "Bake at 180C for 20 minutes", "take out", "chop chicken", "Serve", "wash up", "make choux, pipe and bake", "…", "put in fridge to set", "fry onions", "knead 10 mins", "prove 40 mins", "oven on 200C gas 4", "ice the cake", "reheat the rice", "boil gelatine"}
	rapid.Check(t, func(t *rapid.T) {
		var plan written.Plan
		for i := range rapid.IntRange(0, 25).Draw(t, "rows") {
			r := written.Row{
				Number: i + 1, Line: i, Table: rapid.IntRange(-1, 1).Draw(t, "table"),
				Text: rapid.SampledFrom(texts).Draw(t, "text"), Points: rapid.SampledFrom(texts).Draw(t, "points"),
				At:      practical.TimeOfDay(rapid.IntRange(0, 1500).Draw(t, "at")),
				Clock:   rapid.SampledFrom([]written.Clock{written.NoClock, written.Said, written.Carried, written.Counted, written.Restored}).Draw(t, "clock"),
				Minutes: rapid.SampledFrom([]int{0, 0, 5, 60}).Draw(t, "minutes"),
			}
			if rapid.Bool().Draw(t, "until") {
				r.HasUntil, r.Until = true, practical.TimeOfDay(rapid.IntRange(0, 1500).Draw(t, "end"))
			}
			if d := rapid.SampledFrom([]string{"", "A", "B", "all"}).Draw(t, "dish"); d != "" {
				r.Dishes = []string{d}
			}
			plan.Rows = append(plan.Rows, r)
		}
		var p *practical.Practical
		if rapid.Bool().Draw(t, "kitchen") {
			p = kitchenOnly()
		}
		for _, f := range Run(matchedOf(plan, p), Options{}) {
			for _, n := range append([]int{f.Row}, f.Rows...) {
				if n < 0 || n > len(plan.Rows) || n == 0 && len(f.Rows) > 0 {
					t.Fatalf("row %d: %+v", n, f)
				}
			}
			if f.Minutes < 0 {
				t.Fatalf("minutes: %+v", f)
			}
		}
	})
}

// 24 plans of 60 rows, as a class hands them in.
func BenchmarkClass(b *testing.B) {
	sound, faulty := corpus(b, folders[0])
	var class []match.Matched
	for i := range 24 {
		p := slices.Concat(sound, faulty)[i]
		for len(p.Rows) < 60 {
			more := slices.Clone(p.Rows)
			for k := range more {
				more[k].Clock += practical.TimeOfDay(200)
			}
			p.Rows = append(p.Rows, more...)
		}
		p.Rows = p.Rows[:60]
		class = append(class, seenAs["with its recipes"](b, p))
	}
	rows := 0
	for b.Loop() {
		rows = 0
		for _, m := range class {
			rows += len(m.Rows)
			if len(Run(m, Options{})) == 0 {
				b.Fatal("nothing was found")
			}
		}
	}
	if rows != 24*60 {
		b.Fatalf("%d rows", rows)
	}
}
