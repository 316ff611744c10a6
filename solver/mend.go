package solver

import (
	"plait.example/solver/internal/lcg"
	"plait.example/solver/problem"
)

// A schedule of a problem that has changed a little is mended: every activity
// is asked to stay close to where it was; those that the engine blames when
// that fails are let go, until the rest can stay.

const (
	mendRounds    = 40  // tries
	mendConflicts = 100 // for one of them
)

// fits says that a schedule speaks of the activities and modes of p.
func fits(p *problem.Problem, s *problem.Solution) bool {
	if len(s.Start) != len(p.Activities) || len(s.End) != len(s.Start) || len(s.Mode) != len(s.Start) {
		return false
	}
	for i, m := range s.Mode {
		if m < 0 || m >= max(1, len(p.Activities[i].Modes)) {
			return false
		}
	}
	return true
}

// mend looks for a solution near a schedule that the judge refused. False
// means that none was found so.
func (s *solving) mend(old *problem.Solution) bool {
	s.m.prefer(old)
	move := s.roamer.mean
	free := make([]bool, len(old.Start))
	for range mendRounds {
		owner := map[lcg.Lit]int{}
		var assume []lcg.Lit
		for i, at := range old.Start {
			if free[i] {
				continue
			}
			for _, l := range [...]lcg.Lit{s.m.start[i].AtMost(at + move), s.m.start[i].AtLeast(at - move), s.m.mode[i][old.Mode[i]]} {
				owner[l] = i
				assume = append(assume, l)
			}
		}
		switch s.search(min(mendConflicts, s.left), assume...) {
		case lcg.Found:
			return s.take()
		case lcg.Failed:
			for _, l := range s.m.e.Core() {
				if i, asked := owner[l]; asked {
					free[i] = true
				}
			}
		case lcg.Refuted:
			return false
		case lcg.Stopped:
			move *= 2
		}
		if s.left <= 0 || s.stop() {
			return false
		}
	}
	return false
}
