package solver

import (
	"testing"

	"plait.example/solver/internal/lcg"
	"plait.example/solver/problem"
)

// What lags say of a length counts as much as what the activity says: 0 lasts
// 4 to 9 by lags, 1 lasts 5 because 2 (of length 3) lies within it with 1 before
// and 1 after, and at most 5. Both use a resource of 1, so they take 4 + 5 = 9,
// and that is the bound before any search.
func TestLengthsFromLags(t *testing.T) {
	p := &problem.Problem{
		Horizon:   40,
		Resources: []problem.Resource{{Capacity: 1}},
		Activities: []problem.Activity{
			{MaxDuration: 40, Modes: []problem.Mode{{Uses: []problem.Use{{Amount: 1}}}}},
			{MaxDuration: 40, Modes: []problem.Mode{{Uses: []problem.Use{{Amount: 1}}}}},
			{MinDuration: 3, MaxDuration: 3},
		},
		Lags: []problem.Lag{
			{From: problem.Start(0), To: problem.End(0), Min: 4},
			{From: problem.End(0), To: problem.Start(0), Min: -9},
			{From: problem.Start(1), To: problem.Start(2), Min: 1},
			{From: problem.End(2), To: problem.End(1), Min: 1},
			{From: problem.End(1), To: problem.Start(1), Min: -5},
		},
	}
	d := measure(p)
	for i, want := range [][2]int{{4, 9}, {5, 5}, {3, 3}} {
		if least, most := d.lengths(i, &p.Activities[i]); least != want[0] || most != want[1] {
			t.Errorf("%d lasts %d to %d, want %v", i, least, most, want)
		}
		var nothing *distances
		if least, most := nothing.lengths(i, &p.Activities[i]); least != p.Activities[i].MinDuration || most != p.Activities[i].MaxDuration {
			t.Errorf("%d without a table lasts %d to %d", i, least, most)
		}
	}
	m := compile(p, 1)
	if m.end[1] != m.start[1].Plus(5) {
		t.Error("a length that lags fix has a variable of its own")
	}
	s := &solving{p: p, goals: objectives(p), m: m, values: []int{20}, left: 1, stop: func() bool { return false }}
	s.lift()
	if got := m.bound(0); got != 9 {
		t.Errorf("bound %d, want 9", got)
	}
	if s.glance(lcg.AtMost(m.last, 8)) || !s.glance(lcg.AtMost(m.last, 9)) {
		t.Error("8 is not refused by propagation, or 9 is")
	}
}
