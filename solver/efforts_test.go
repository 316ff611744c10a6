package solver_test

import (
	"context"
	"testing"

	"plait.example/solver"
	"plait.example/solver/verify"
)

// An objective of no effort is kept as good as the first solution has it, and
// not improved; the ones after it may not spoil it. An effort that is too small
// for a proof leaves a bound all the same.
func TestEffortsByObjective(t *testing.T) {
	p := workshop(3, 2, 6)
	best, err := solver.Solve(context.Background(), p, solver.Options{})
	if err != nil || best.Solution == nil {
		t.Fatal(best.Status, err)
	}
	first, _ := firstSolution(t, p, nil)
	held, err := solver.Solve(context.Background(), p, solver.Options{Efforts: []int64{-1, -1}})
	if err != nil || held.Solution == nil {
		t.Fatal(held.Status, err)
	}
	for k, g := range p.Objectives[:2] {
		if had := verify.Value(p, g, first); held.Levels[k].Value > had {
			t.Errorf("%s: %d, and the first solution had %d", g.Name, held.Levels[k].Value, had)
		}
	}
	if held.Levels[0].Value == best.Levels[0].Value && held.Levels[1].Value == best.Levels[1].Value {
		t.Errorf("the first solution %+v is the best: nothing is shown", held.Levels)
	}
	little, err := solver.Solve(context.Background(), p, solver.Options{Efforts: []int64{1}})
	if err != nil || little.Solution == nil || little.Bound > best.Levels[0].Value || little.Levels[0].Value < best.Levels[0].Value {
		t.Errorf("with little effort for the first: %+v, %v; without a limit %+v", little, err, best)
	}
}

// What is found by the way for an objective that was given up is kept: with it
// forgotten, some of these searches never end.
func TestGainedByTheWay(t *testing.T) {
	gained := 0
	for seed := range uint64(5) {
		p := workshop(seed, 3, 8)
		given, err := solver.Solve(context.Background(), p, solver.Options{Efforts: []int64{-1, -1, -1}})
		if err != nil {
			t.Fatal(err)
		}
		r, err := solver.Solve(context.Background(), p, solver.Options{Effort: 600, Efforts: []int64{-1}})
		if err != nil {
			t.Fatal(err)
		}
		if r.Solution == nil {
			continue
		}
		if r.Levels[0].Value > given.Levels[0].Value {
			t.Errorf("seed %d: %+v is worse than the first solution's %+v", seed, r.Levels[0], given.Levels[0])
		}
		if r.Levels[0].Value < given.Levels[0].Value {
			gained++
		}
		for k, g := range p.Objectives {
			if l := r.Levels[k]; l.Value != verify.Value(p, g, r.Solution) || l.Bound > l.Value {
				t.Errorf("seed %d: %+v of a schedule with %d", seed, l, verify.Value(p, g, r.Solution))
			}
		}
	}
	if gained == 0 {
		t.Error("nothing was gained by the way: nothing is shown")
	}
}
