package match

import (
	"slices"
	"testing"
)

// How sure a match is says something. Right steps are those of the plans as
// they stand; wrong ones come where a row is taken out and another stands in for it.
func TestSureStepsAreRightMoreOften(t *testing.T) {
	var right, wrong []float64
	for _, e := range readExamples(t, "last")[:3] {
		for n, r := range Match(e.plan, e.practical, nil).Rows {
			for _, s := range r.Steps {
				if slices.ContainsFunc(e.must[n], func(w Step) bool { return w.ID == s.ID }) {
					right = append(right, s.Sure)
				}
			}
		}
		for n := range e.plan.Rows {
			for _, s := range e.madeUp(n) {
				wrong = append(wrong, s.Sure)
			}
		}
	}
	t.Logf("steps right: %d, sure %.2f in the mean, %.0f %% of them at least 0.5; wrong: %d, %.2f, %.0f %%", len(right), mean(right), share(right), len(wrong), mean(wrong), share(wrong))
	if mean(wrong) > mean(right)-0.15 {
		t.Error("wrong steps are about as sure as right ones")
	}
}

func mean(list []float64) float64 {
	sum := 0.0
	for _, x := range list {
		sum += x
	}
	return sum / float64(max(1, len(list)))
}

// share is how many of a hundred are at least a half.
func share(list []float64) float64 {
	n := 0
	for _, x := range list {
		if x >= 0.5 {
			n++
		}
	}
	return 100 * float64(n) / float64(max(1, len(list)))
}
