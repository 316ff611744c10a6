package solver

import (
	"plait.example/solver/internal/lcg"
	"plait.example/solver/internal/sgs"
	"plait.example/solver/problem"
	"plait.example/solver/verify"
)

// schedulesPerConflict is how many schedules of a plain project count as one
// conflict: measured, they take about as long.
const schedulesPerConflict = 16

// crowd is a population of schedules of a plain project, worked on in turn
// with the search for proofs.
type crowd struct {
	*sgs.Population
	share int64 // the search's effort divided by this is the population's
}

const leastCrowdShare = 4

// gather makes first schedules if the problem is a plain project, and offers
// the best.
func (s *solving) gather() {
	g, plain := sgs.Read(s.p)
	if !plain {
		return
	}
	s.crowd = &crowd{sgs.New(g, s.o.Seed), 1}
	s.floor = s.crowd.Least()
	s.offerCrowd()
}

// offerCrowd offers the best of the population. The judge may refuse it: the
// population knows nothing of the horizon.
func (s *solving) offerCrowd() bool {
	sol := s.crowd.Best()
	return len(verify.Check(s.p, sol)) == 0 && s.offer(sol)
}

// breed lets the population work after the search has, with an effort that
// depends on its success.
func (s *solving) breed(searched int64) {
	if s.crowd == nil || s.level > 0 {
		return
	}
	effort := min(searched/s.crowd.share, s.left)
	s.left -= effort
	if s.values[0] < s.crowd.Makespan() {
		s.crowd.Take(s.best)
	}
	if s.crowd.Run(effort*schedulesPerConflict) && s.offerCrowd() {
		s.crowd.share = 1
		s.m.prefer(s.best)
		return
	}
	s.crowd.share = min(2*s.crowd.share, leastCrowdShare)
}

// prefer makes the search try a schedule's times and orders first.
func (m *model) prefer(sol *problem.Solution) {
	for i := range m.start {
		m.e.Prefer(m.start[i].Var, sol.Start[i]-int(m.start[i].Add))
		m.e.Prefer(m.end[i].Var, sol.End[i]-int(m.end[i].Add))
	}
	for key, l := range m.order {
		if l == lcg.True {
			continue
		}
		first := sol.End[key.a] <= sol.Start[key.b]
		if l != lcg.Is(l.Var()) {
			first = !first
		}
		value := 0
		if first {
			value = 1
		}
		m.e.Prefer(l.Var(), value)
	}
}
