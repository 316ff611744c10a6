package check

import (
	"slices"
	"testing"

	"plait.example/internal/check/checktest"
)

// told by which faults a mishap of the cook may be.
var toldBy = map[checktest.MishapKind][]int{
	checktest.Burnt:    {1, 14, 20},
	checktest.Raw:      {14, 2, 20, 25},
	checktest.Clash:    {25, 26, 27, 20, 13},
	checktest.Overrun:  {22, 25, 54},
	checktest.ColdOven: {3, 8, 9, 20},
	checktest.Backward: {20},
	checktest.Lost:     {2, 1, 20},
}

// Where a cook who follows the plan, and who knows nothing of the rules, burns
// something, has hands in two places or runs over, the rules have said so.
func TestWhatGoesWrongIsTold(t *testing.T) {
	mishaps, told := 0, 0
	for _, folder := range folders {
		_, faulty := corpus(t, folder)
		for _, p := range faulty {
			m := matchedTo(t, p)
			found := Run(m, Options{})
			for _, mishap := range checktest.Follow(p, int(m.Practical.Allowed())) {
				mishaps++
				if slices.ContainsFunc(found, func(f Finding) bool {
					return slices.Contains(toldBy[mishap.Kind], f.Fault) || mishap.Kind == checktest.ColdOven && f.Rule == "not-turned"
				}) {
					told++
				} else {
					t.Logf("%s, row %d: %s: %s: not told; found:\n%s", p.Name, mishap.Row, mishap.Kind, mishap.Text, shown(found))
				}
			}
		}
	}
	t.Logf("%d of %d mishaps told", told, mishaps)
	if mishaps < 30 || told*100 < mishaps*98 {
		t.Errorf("%d of %d mishaps told", told, mishaps)
	}
}
