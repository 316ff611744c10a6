package solver_test

import (
	"context"
	"testing"

	"plait.example/solver"
	"plait.example/solver/problem"
)

// A step that takes two units more makes an old schedule wrong. The first one
// that is found from it leaves most activities about where they were, and it
// takes less search than from nothing.
func TestMendAfterAChange(t *testing.T) {
	mended, anew, seeds := int64(0), int64(0), uint64(6)
	if testing.Short() {
		seeds = 3
	}
	for seed := range seeds {
		p := workshop(seed, 3, 10)
		r, err := solver.Solve(context.Background(), p, solver.Options{Effort: 3000})
		if err != nil || r.Solution == nil {
			t.Fatalf("seed %d: %v, %v", seed, r.Status, err)
		}
		a := &p.Activities[len(p.Activities)/3]
		a.MinDuration, a.MaxDuration = a.MinDuration+2, a.MaxDuration+2
		near, conflicts := firstSolution(t, p, r.Solution)
		mended += conflicts
		_, conflicts = firstSolution(t, p, nil)
		anew += conflicts
		stayed := 0
		for i, at := range near.Start {
			if d := at - r.Solution.Start[i]; -6 <= d && d <= 6 {
				stayed++
			}
		}
		if stayed < len(near.Start)/2 {
			t.Errorf("seed %d: only %d of %d activities stayed", seed, stayed, len(near.Start))
		}
	}
	if mended >= anew {
		t.Errorf("%d conflicts from the old schedules, %d from nothing", mended, anew)
	}
}

// firstSolution stops at the first one.
func firstSolution(t *testing.T, p *problem.Problem, start *problem.Solution) (*problem.Solution, int64) {
	t.Helper()
	ctx, cancel := context.WithCancel(context.Background())
	defer cancel()
	var first *problem.Solution
	r, err := solver.Solve(ctx, p, solver.Options{Start: start, Improved: func(g solver.Progress) {
		if first == nil {
			first = g.Solution
		}
		cancel()
	}})
	if err != nil || first == nil {
		t.Fatalf("%v, %v", r.Status, err)
	}
	return first, r.Stats.Conflicts
}

// A start that speaks of other activities, or of modes that are not there, is
// left aside.
func TestStartOfAnotherShape(t *testing.T) {
	p := workshop(1, 2, 6)
	n := len(p.Activities)
	for name, start := range map[string]*problem.Solution{
		"nothing":  {},
		"one less": {Start: make([]int, n-1), End: make([]int, n-1), Mode: make([]int, n-1)},
		"no mode":  {Start: make([]int, n), End: make([]int, n), Mode: append(make([]int, n-1), 7)},
		"all at 0": {Start: make([]int, n), End: make([]int, n), Mode: make([]int, n)},
	} {
		r, err := solver.Solve(context.Background(), p, solver.Options{Start: start, Effort: 2000})
		if err != nil || r.Solution == nil {
			t.Errorf("%s: %v, %v", name, r.Status, err)
		}
	}
}
