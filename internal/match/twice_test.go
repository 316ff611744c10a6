package match

import (
	"slices"
	"testing"
)

// A row that stands twice stands for the same step twice, or the second for
// none: it must not be taken for another step.
func TestRowsThatStandTwice(t *testing.T) {
	same, none, other := 0, 0, 0
	for _, folder := range []string{"last"} {
		for _, e := range readExamples(t, folder) {
			for n := range e.plan.Rows {
				if len(e.must[n]) == 0 {
					continue
				}
				plan := e.plan
				at := min(n+3, len(plan.Rows))
				plan.Rows = slices.Insert(slices.Clone(e.plan.Rows), at, plan.Rows[n])
				got := Match(plan, e.practical, nil).Rows[at]
				right, wrong := 0, 0
				for _, s := range got.Steps {
					id := func(w Step) bool { return w.ID == s.ID }
					if slices.ContainsFunc(e.must[n], id) || slices.ContainsFunc(e.may[n], id) {
						right++
					} else {
						wrong++
					}
				}
				switch {
				case wrong > 0:
					other++
					t.Logf("%s: the second %q is taken for %v", e.name, got.Text, ids(got.Steps))
				case right > 0:
					same++
				default:
					none++
				}
			}
		}
	}
	t.Logf("rows put in twice: %d the same step again, %d none, %d another step", same, none, other)
	if 20*other > same+none+other {
		t.Error("more than one in twenty is taken for another step")
	}
}
