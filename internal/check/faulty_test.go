package check

import (
	"slices"
	"testing"
)

// faultyPlan is a plan of the trade's own making with the faults that a teacher
// must find in it, may find and must not: common practice, no source. Cooker,
// clock and set-up are those of kitchenOnly.
const faultyPlan = `
08:40 | D | Chop the chocolate
09:00 | all | Wash hands, apron on
09:05 | P | Rub in shortcrust, chill
09:20 | C | Dice chicken and onion
09:25 | P | Roll out pastry and line tin
09:40 | P | Blind bake at 190C
10:00 | D | Make choux, pipe, bake 200C gas 4
10:45 | D | Take out buns and fill with cream
10:50 | P | Whisk eggs, fill case, bake 180C 30 min
11:00 | C | Fry onion and chicken, simmer 20 min
11:05 | C | Slice cucumber salad
11:30 | C | Curry done
12:05 | all | Serve everything`

func TestFaultyPlan(t *testing.T) {
	m := planOf(t, kitchenOnly(), faultyPlan)
	for i := range m.Rows { // the key of the plan
		for k, d := range m.Rows[i].Dishes {
			m.Rows[i].Dishes[k] = map[string]string{"P": "quiche", "C": "chicken curry and salad", "D": "cream choux", "all": "all"}[d]
		}
	}
	found := Run(m, Options{})
	must := map[int][]int{ // fault: rows, where they are given
		1: {6, 9}, 3: nil, 6: nil, 7: {7}, 14: {6}, 17: nil, 18: {8}, 21: {12}, 22: {13}, 23: {1}, 25: {4, 10}, 33: {12}, 34: {8}, 36: nil, 38: nil,
		39: nil, 40: {11}, 42: nil, 43: {4}, 53: {12}, 54: nil,
	}
	may := []int{9, 27, 41, 31, 32, 52, 55, 59}
	rows := map[int][]int{}
	for _, f := range found {
		if f.Fault > 0 {
			rows[f.Fault] = append(rows[f.Fault], f.Row)
			if must[f.Fault] == nil && !slices.Contains(may, f.Fault) {
				if _, wanted := must[f.Fault]; !wanted {
					t.Errorf("fault %d (%s) is not among those that must or may be found: %s", f.Fault, f.Rule, f.Evidence)
				}
			}
		}
	}
	for fault, want := range must {
		got := slices.Sorted(slices.Values(rows[fault]))
		if len(got) == 0 || want != nil && !slices.Equal(got, want) {
			t.Errorf("fault %d: found in rows %v, want %v", fault, got, want)
		}
	}
	// the sums beside the plan: 35 minutes of gap, 5 over, chicken out for 100, cream for 80
	for rule, minutes := range map[string]int{"gap": 35, "overrun": 5} {
		for _, f := range found {
			if f.Rule == rule && f.Minutes != minutes {
				t.Errorf("%s: %d minutes, want %d", rule, f.Minutes, minutes)
			}
		}
	}
	if t.Failed() || testing.Verbose() {
		t.Logf("found:\n%s", shown(found))
	}
}
