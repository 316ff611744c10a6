package solver

import (
	"testing"

	"plait.example/solver/problem"
)

// Four activities need 3, 3, 2 and 1 of a resource of 4, the last two also the
// whole of another: pairs 0-1, 0-2, 1-2 clash on the one, 2-3 on the other. 3
// follows 0 and 1, which keeps those pairs apart as well: one clique holds all.
func TestCliques(t *testing.T) {
	p := &problem.Problem{Horizon: 40, Resources: []problem.Resource{{Capacity: 4}, {Capacity: 1}}}
	for _, amount := range []int{3, 3, 2, 1} {
		p.Activities = append(p.Activities, problem.Activity{
			MinDuration: 3, MaxDuration: 3, Modes: []problem.Mode{{Uses: []problem.Use{{Resource: 0, Amount: amount}}}},
		})
	}
	for i := 2; i < 4; i++ {
		m := &p.Activities[i].Modes[0]
		m.Uses = append(m.Uses, problem.Use{Resource: 1, Amount: 1})
	}
	for i := range 2 {
		p.Lags = append(p.Lags, problem.Lag{From: problem.End(i), To: problem.Start(3)})
	}
	m := compile(p, 1)
	resource, all := m.clashes()
	for _, c := range []struct {
		a, b      int
		byUse, at bool
	}{{0, 1, true, true}, {0, 2, true, true}, {1, 2, true, true}, {2, 3, true, true}, {0, 3, false, true}, {1, 3, false, true}} {
		if resource.has(c.a, c.b) != c.byUse || all.has(c.b, c.a) != c.at {
			t.Errorf("%d and %d: clash on a resource %v, at all %v", c.a, c.b, resource.has(c.a, c.b), all.has(c.b, c.a))
		}
	}
	members := grown(all, 1, 0)
	if len(members) != 4 {
		t.Errorf("clique %v, want all four", members)
	}
}
