package solver_test

import (
	"context"
	"slices"
	"testing"

	"plait.example/solver"
	"plait.example/solver/internal/brute"
	"plait.example/solver/verify"
)

// drawn says how many of these random problems a test draws. The race detector
// makes them ten times as slow, and runs with -short, which takes a quarter;
// "go test ./solver" draws all, "go test -race ./solver" all with the detector.
func drawn(all int) int {
	if testing.Short() {
		return all / 4
	}
	return all
}

// TestAgainstBruteForce compares with a search that tries every schedule:
// feasibility and the value of every objective, on small random problems with
// lags, choices, modes, resources with calendars, and states.
func TestAgainstBruteForce(t *testing.T) {
	feasible, infeasible := 0, 0
	for seed := range uint64(drawn(500)) {
		p := brute.Random(seed)
		values, _, found := brute.Lexicographic(p)
		r, err := solver.Solve(context.Background(), p, solver.Options{Seed: int64(seed)})
		if err != nil {
			t.Fatalf("seed %d: %v", seed, err)
		}
		if !found {
			infeasible++
			if r.Status != solver.Infeasible {
				t.Fatalf("seed %d: status %v, but no schedule exists", seed, r.Status)
			}
			continue
		}
		feasible++
		if r.Status != solver.Optimal {
			t.Fatalf("seed %d: status %v, but the best is %v", seed, r.Status, values)
		}
		if breaches := verify.Check(p, r.Solution); breaches != nil {
			t.Fatalf("seed %d: %v", seed, breaches)
		}
		var got []int
		for _, l := range r.Levels {
			got = append(got, l.Value)
			if !l.Proved || l.Bound != l.Value {
				t.Fatalf("seed %d: level %+v is not proved", seed, l)
			}
		}
		if !slices.Equal(got, values) {
			t.Fatalf("seed %d: values %v, best %v", seed, got, values)
		}
	}
	if feasible < drawn(150) || infeasible < drawn(100) {
		t.Errorf("%d feasible and %d infeasible: the problems are one-sided", feasible, infeasible)
	}
	t.Logf("%d feasible, %d infeasible", feasible, infeasible)
}
