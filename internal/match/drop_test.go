package match

import (
	"slices"
	"testing"
)

// A row that is not there must not be made up for by others: each row of each
// plan is taken out in turn, and the steps that it alone stood for must have no row.
func TestStepsOfARowThatIsMissing(t *testing.T) {
	gone, madeUp := 0, 0
	for _, folder := range []string{"tuned", "second", "fresh", "last"} {
		for _, e := range readExamples(t, folder) {
			for n := range e.plan.Rows {
				plan := e.plan
				plan.Rows = slices.Delete(slices.Clone(e.plan.Rows), n, n+1)
				got := Match(plan, e.practical, nil)
				for _, s := range e.must[n] {
					if e.elsewhere(n, s.ID) {
						continue
					}
					gone++
					for _, r := range got.Rows {
						if i := slices.IndexFunc(r.Steps, func(g Step) bool { return g.ID == s.ID }); i >= 0 {
							madeUp++
							t.Logf("%s without %q: %s is found in %q (%.2f)", e.name, e.plan.Rows[n].Text, s.ID, r.Text, r.Steps[i].Sure)
							break
						}
					}
				}
			}
		}
	}
	t.Logf("%d steps whose row was taken out, %d made up for by other rows (%.1f %%)", gone, madeUp, 100*float64(madeUp)/float64(gone))
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
