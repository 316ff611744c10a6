package solver_test

import (
	"fmt"
	"math/rand/v2"
	"strings"
	"testing"

	"plait.example/solver"
	"plait.example/solver/problem"
)

// TestNothingFollowsThatAScheduleContradicts makes random steps that the best
// schedule of a published instance contradicts: that not all starts are in
// bounds about its own, with the orders that it has. However narrow the
// bounds, no rule of the checker may show such a step.
func TestNothingFollowsThatAScheduleContradicts(t *testing.T) {
	rng := rand.New(rand.NewPCG(5, 6))
	for _, file := range []string{"j3037_3.sm", "j3046_6.sm", "j30_psp64.sch", "j30_psp155.sch", "ubo20_psp65.sch", "ubo50_psp20.sch", "ubo100_psp15.sch"} {
		p := read(t, file)
		r, _ := logged(t, p, solver.Options{Seed: 1})
		if r.Status != solver.Optimal {
			t.Fatalf("%s: %v", file, r.Status)
		}
		var log strings.Builder
		fmt.Fprintf(&log, "proof 1 activities %d horizon %d objectives 1\nlet last makespan\n", len(p.Activities), p.Horizon)
		for i := range p.Activities {
			fmt.Fprintf(&log, "let s%d start %d\n", i, i)
		}
		orders := denied(&log, rng, p, r.Solution)
		const steps = 50
		for n := range steps {
			fmt.Fprintf(&log, "clause%s\n", around(rng, r.Solution, 1+n/3, orders))
		}
		log.WriteString("end unknown\n")
		if c := replayed(t, p, []byte(log.String()), 0); !c.Sound() || c.Propagated > 0 || c.Unchecked != steps {
			t.Errorf("%s: %v; all %d must be unchecked", file, c, steps)
		}
	}
}

// denied defines some orders of two activities, and returns the literals that
// the schedule does not fulfil.
func denied(log *strings.Builder, rng *rand.Rand, p *problem.Problem, s *problem.Solution) (literals []string) {
	for i, a := range p.Activities {
		for j := range p.Activities {
			if i == j || rng.IntN(3) > 0 {
				continue
			}
			fmt.Fprintf(log, "let b%d.%d lag s%d+%d s%d 0\n", i, j, i, a.MinDuration, j)
			sign := ""
			if s.End[i] <= s.Start[j] {
				sign = "!"
			}
			literals = append(literals, fmt.Sprintf(" %sb%d.%d", sign, i, j))
		}
	}
	return literals
}

// around is a clause that only a schedule outside bounds about s fulfils, or
// one with other orders, or one that is longer.
func around(rng *rand.Rand, s *problem.Solution, width int, orders []string) string {
	clause := ""
	last := 0
	for i, at := range s.Start {
		last = max(last, s.End[i])
		if rng.IntN(5) > 0 {
			clause += fmt.Sprintf(" s%d>=%d s%d<=%d", i, at+1+rng.IntN(width), i, at-1-rng.IntN(width))
		}
	}
	for _, l := range orders {
		if rng.IntN(3) == 0 {
			clause += l
		}
	}
	return clause + fmt.Sprintf(" last>=%d", last+1)
}
