package solver

import "plait.example/solver/internal/lcg"

// aimConflicts is how many conflicts it may take to show the search the best
// schedule in the terms of a new objective.
const aimConflicts = 100

// aim turns to the objective in hand. What the search needs to know of it is
// posted only now, so that the objectives before it do not pay for it; then
// the search is led once to the best schedule, so that it begins from there.
func (s *solving) aim() {
	if s.level == 0 {
		return // posted with the problem
	}
	s.m.e.Reset()
	s.m.objective(s.goals[s.level])
	s.proof.define()
	s.b = newBrancher(s.m)
	s.m.prefer(s.best)
	assume := []lcg.Lit{s.m.within(s.level, s.values[s.level])}
	for i := range s.m.start {
		assume = append(assume,
			s.m.start[i].AtMost(s.best.Start[i]), s.m.start[i].AtLeast(s.best.Start[i]),
			s.m.end[i].AtMost(s.best.End[i]), s.m.end[i].AtLeast(s.best.End[i]),
			s.m.mode[i][s.best.Mode[i]])
	}
	if s.left > 0 && s.search(min(aimConflicts, s.left), assume...) == lcg.Found {
		s.take()
	}
}
