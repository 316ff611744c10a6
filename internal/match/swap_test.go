package match

import (
	"slices"
	"testing"
)

// Rows in the wrong order keep their steps, so that the order can be seen to be wrong.
func TestRowsThatChangePlaces(t *testing.T) {
	rows, right := 0, 0
	for _, e := range readExamples(t, "last") {
		for n := range e.plan.Rows {
			m := e.nextOfDish(n)
			if m < 0 {
				continue
			}
			plan := e.plan
			plan.Rows = slices.Clone(e.plan.Rows)
			plan.Rows[n], plan.Rows[m] = plan.Rows[m], plan.Rows[n]
			got := Match(plan, e.practical, nil)
			for at, own := range map[int]int{n: m, m: n} {
				rows++
				if e.has(own, got.Rows[at].Steps) {
					right++
				} else {
					t.Logf("%s with rows %d and %d changed: %q has %v, want %v", e.name, n+1, m+1, got.Rows[at].Text, ids(got.Rows[at].Steps), ids(e.must[own]))
				}
			}
		}
	}
	t.Logf("rows that changed places: %d of %d right (%.1f %%)", right, rows, 100*float64(right)/float64(rows))
	if 100*right < 85*rows {
		t.Error("at least 85 % are wanted")
	}
}

// nextOfDish is the next row of the same dish, when both have steps; -1: none.
func (e example) nextOfDish(n int) int {
	for m := n + 1; m < len(e.plan.Rows); m++ {
		if slices.Equal(e.plan.Rows[m].Dishes, e.plan.Rows[n].Dishes) {
			if len(e.must[n]) > 0 && len(e.must[m]) > 0 {
				return m
			}
			return -1
		}
	}
	return -1
}

// has says whether the steps are those of row n.
func (e example) has(n int, steps []Step) bool {
	for _, w := range e.must[n] {
		if !slices.ContainsFunc(steps, func(s Step) bool { return s.ID == w.ID }) {
			return false
		}
	}
	for _, s := range steps {
		same := func(w Step) bool { return w.ID == s.ID }
		if !slices.ContainsFunc(e.must[n], same) && !slices.ContainsFunc(e.may[n], same) {
			return false
		}
	}
	return true
}
