package solver

import (
	"context"
	"testing"
	"time"

	"plait.example/solver/internal/brute"
	"plait.example/solver/problem"
)

// The activities drawn to be free are as many as asked, or all users of the
// resource that was drawn.
func TestDraw(t *testing.T) {
	p := &problem.Problem{Horizon: 100, Resources: []problem.Resource{{Capacity: 1}}}
	best := &problem.Solution{}
	for i := range 20 {
		a := problem.Activity{MinDuration: 2, MaxDuration: 2}
		if i < 5 {
			a.Modes = []problem.Mode{{Uses: []problem.Use{{Resource: 0, Amount: 1}}}}
		}
		p.Activities = append(p.Activities, a)
		best.Start, best.End, best.Mode = append(best.Start, 2*i), append(best.End, 2*i+2), append(best.Mode, 0)
	}
	w := newRoamer(p, 1)
	if w.mean != 2 || len(w.users) != 1 || len(w.users[0]) != 5 {
		t.Fatalf("mean length %d, users %v", w.mean, w.users)
	}
	for range 200 {
		count := 0
		for _, free := range w.draw(best, 8) {
			if free {
				count++
			}
		}
		if count != 8 && count != 5 {
			t.Fatalf("%d are free, want 8, or the 5 users of the resource", count)
		}
	}
}

// After neighbourhoods were searched, and all that was learnt there, values
// and proofs are those of a search that tries every schedule.
func TestRoamingAgainstEverySchedule(t *testing.T) {
	roamed, draws := 0, uint64(200)
	if testing.Short() { // with the race detector; without -short all are drawn
		draws = 50
	}
	for seed := range draws {
		p := brute.Random(seed)
		want, _, feasible := brute.Lexicographic(p)
		if !feasible {
			continue
		}
		s := newSolving(context.Background(), p, Options{Seed: int64(seed)}, time.Now())
		if s.begin() {
			s.roam(200)
			roamed += s.roamer.tries
			s.descend()
		}
		s.finish(time.Now())
		if s.wrong != nil {
			t.Fatalf("seed %d: %v", seed, s.wrong)
		}
		for k, l := range s.result.Levels {
			if l.Value != want[k] || !l.Proved {
				t.Fatalf("seed %d: levels %+v, want %v", seed, s.result.Levels, want)
			}
		}
	}
	if uint64(roamed) < 3*draws/10 {
		t.Errorf("only %d neighbourhoods were searched", roamed)
	}
}
