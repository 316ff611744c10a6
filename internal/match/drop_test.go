package match

import (
	"slices"
	"testing"
)

// A row that is not there must not be made up for by others: each row of these
// plans is taken out in turn, and the steps that it alone stood for must have no row.
func TestStepsOfARowThatIsMissing(t *testing.T) {
	gone, madeUp := 0, 0
	for _, folder := range []string{"last"} {
		for _, e := range readExamples(t, folder) {
			for n := range e.plan.Rows {
				for _, s := range e.must[n] {
					if !e.elsewhere(n, s.ID) {
						gone++
					}
				}
				for _, s := range e.madeUp(n) {
					madeUp++
					t.Logf("%s without %q: %s is found (%.2f)", e.name, e.plan.Rows[n].Text, s.ID, s.Sure)
				}
			}
		}
	}
	if 100*madeUp > 12*gone {
		t.Errorf("more than 12 in a hundred are made up for")
	}
	t.Logf("%d steps whose row was taken out, %d made up for by other rows (%.1f %%)", gone, madeUp, 100*float64(madeUp)/float64(gone))
}

// madeUp takes row n out and gives its steps that are found nevertheless.
func (e example) madeUp(n int) (steps []Step) {
	plan := e.plan
	plan.Rows = slices.Delete(slices.Clone(e.plan.Rows), n, n+1)
	got := Match(plan, e.practical, nil)
	for _, s := range e.must[n] {
		if e.elsewhere(n, s.ID) {
			continue
		}
		for _, r := range got.Rows {
			if i := slices.IndexFunc(r.Steps, func(g Step) bool { return g.ID == s.ID }); i >= 0 {
				steps = append(steps, r.Steps[i])
				break
			}
		}
	}
	return steps
}

// elsewhere says whether another row may stand for a step too.
func (e example) elsewhere(n int, id string) bool {
	for i := range e.must {
		same := func(s Step) bool { return s.ID == id }
		if i != n && (slices.ContainsFunc(e.must[i], same) || slices.ContainsFunc(e.may[i], same)) {
			return true
		}
	}
	return false
}
