package solver_test

import (
	"context"
	"fmt"
	"math/rand/v2"
	"slices"
	"testing"

	"plait.example/solver"
	"plait.example/solver/internal/brute"
	"plait.example/solver/problem"
)

// stately is a small problem in which every activity needs a level: an kiln
// of three settings or a surface of two, whose changes take hands.
func stately(seed uint64) *problem.Problem {
	r := rand.New(rand.NewPCG(seed, 7))
	p := &problem.Problem{Horizon: 9 + r.IntN(4), Resources: []problem.Resource{{Name: "hands", Capacity: 1}}}
	levels := 2 + r.IntN(2)
	st := problem.State{Name: "S", Initial: r.IntN(levels), Uses: []problem.Use{{Resource: 0, Amount: 1}}}
	for a := range levels {
		st.Levels = append(st.Levels, fmt.Sprint(a))
		var row []problem.Change
		for b := range levels {
			c := problem.Change{Work: 1, Settle: max(0, b-a)}
			if levels == 2 && b == 0 {
				c = problem.Change{}
			}
			row = append(row, c)
		}
		st.Change = append(st.Change, row)
	}
	p.States = []problem.State{st}
	for i := range 4 {
		d := r.IntN(3)
		m := problem.Mode{Needs: []problem.Need{{State: 0, Levels: r.Perm(levels)[:1+r.IntN(2)]}}}
		if r.IntN(2) == 0 {
			m.Uses = []problem.Use{{Resource: 0, Amount: 1}}
		}
		p.Activities = append(p.Activities, problem.Activity{Name: fmt.Sprint(i), MinDuration: d, MaxDuration: d, Modes: []problem.Mode{m}})
	}
	for range r.IntN(3) {
		p.Lags = append(p.Lags, problem.Lag{
			From: problem.End(r.IntN(4)), To: problem.Start(r.IntN(4)), Min: r.IntN(5) - 3,
		})
	}
	p.Objectives = []problem.Objective{{Name: "finish", Makespan: true}, {Name: "changes", Changes: []int{0}}}
	if r.IntN(3) == 0 {
		slices.Reverse(p.Objectives)
	}
	return p
}

// TestStatesAgainstBruteForce compares both objectives with a search that
// tries every schedule.
func TestStatesAgainstBruteForce(t *testing.T) {
	feasible := 0
	for seed := range uint64(drawn(400)) {
		p := stately(seed)
		values, _, found := brute.Lexicographic(p)
		r, err := solver.Solve(context.Background(), p, solver.Options{Seed: 3})
		if err != nil {
			t.Fatalf("seed %d: %v", seed, err)
		}
		if !found {
			if r.Status != solver.Infeasible {
				t.Fatalf("seed %d: status %v, but no schedule exists", seed, r.Status)
			}
			continue
		}
		feasible++
		if r.Status != solver.Optimal || r.Levels[0].Value != values[0] || r.Levels[1].Value != values[1] {
			t.Fatalf("seed %d: status %v, levels %+v; best %v", seed, r.Status, r.Levels, values)
		}
	}
	if feasible < drawn(200) {
		t.Errorf("only %d of the problems have a schedule", feasible)
	}
}
