package solver_test

import (
	"context"
	"fmt"
	"slices"
	"testing"

	"plait.example/solver"
	"plait.example/solver/problem"
)

// late is an invented workshop in which every demand has a name, to be done by
// a time before the best schedule ends: 28 activities and 47 names.
func late(t testing.TB) *problem.Problem {
	t.Helper()
	p := workshop(3, 2, 8)
	p.Objectives = p.Objectives[:1]
	r, err := solver.Solve(context.Background(), p, solver.Options{Seed: 1})
	if err != nil || r.Status != solver.Optimal {
		t.Fatalf("status %v, error %v", r.Status, err)
	}
	for i := range p.Lags {
		p.Lags[i].Demand = fmt.Sprintf("lag %d", i)
	}
	for i := range p.Resources {
		p.Resources[i].Demand = p.Resources[i].Name
		for c := range p.Resources[i].Closures {
			p.Resources[i].Closures[c].Demand = "away"
		}
	}
	for i := range p.States {
		p.States[i].Demand = "setting of the " + p.States[i].Name
	}
	for i := range p.Activities {
		p.Lags = append(p.Lags, problem.Lag{From: problem.End(i), To: problem.Zero(), Min: 1 - r.Bound, Demand: "done by"})
	}
	return p
}

// The conflict is one, and each of its demands is needed for it.
func TestExplainWorkshop(t *testing.T) {
	p := late(t)
	c, err := solver.Explain(context.Background(), p, solver.Options{Seed: 1, Effort: 20_000})
	if err != nil || !c.Minimal || len(c.Demands) == 0 {
		t.Fatalf("%+v, error %v", c, err)
	}
	t.Logf("%d activities, %d names, %d in conflict, smallest: %v", len(p.Activities), len(p.Demands()), len(c.Demands), c.Smallest)
	status := func(names []string) solver.Status {
		gone := map[string]bool{}
		for _, n := range p.Demands() {
			gone[n] = !slices.Contains(names, n)
		}
		q := problem.Without(p, gone)
		q.Objectives = []problem.Objective{{}}
		r, err := solver.Solve(context.Background(), q, solver.Options{Seed: 2})
		if err != nil {
			t.Fatal(err)
		}
		return r.Status
	}
	if got := status(c.Demands); got != solver.Infeasible {
		t.Errorf("%q together: %v", c.Demands, got)
	}
	for i, n := range c.Demands {
		if got := status(slices.Concat(c.Demands[:i], c.Demands[i+1:])); got != solver.Optimal {
			t.Errorf("without %q: %v", n, got)
		}
	}
}

func BenchmarkExplain(b *testing.B) {
	p := late(b)
	var first solver.Conflict
	for i := 0; b.Loop(); i++ {
		c, err := solver.Explain(context.Background(), p, solver.Options{Seed: 1, Effort: 20_000})
		if i == 0 {
			first = c
		}
		if err != nil || !c.Minimal || !slices.Equal(c.Demands, first.Demands) {
			b.Fatalf("%+v, error %v", c, err)
		}
	}
}
