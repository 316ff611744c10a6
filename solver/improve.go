package solver

import (
	"fmt"
	"slices"

	"plait.example/solver/internal/lcg"
)

// restartUnit is the Luby unit, in conflicts; firstUnit that of the search for
// a first solution, of which every fourth run goes by the clock.
const (
	restartUnit = 256
	firstUnit   = 100
)

// quickEffort is how many conflicts the first search may take without dear
// propagation.
const quickEffort = 300

// eventsPerConflict is how many events of propagation count as one conflict
// more. Usual is a tenth of it; long chains of lags are what it is for.
const eventsPerConflict = 3000

// search runs the engine for at most the given effort.
func (s *solving) search(conflicts int64, assume ...lcg.Lit) lcg.Outcome {
	before := s.m.e.Stats
	out := s.m.e.Run(lcg.Search{
		Assume:    assume,
		Conflicts: min(conflicts, s.left),
		Events:    min(conflicts, s.left) * eventsPerConflict,
		Branch:    s.b.next,
		Quick:     s.best == nil && s.quick,
		Stop:      s.stop,
		Restart: func(run int) int64 {
			s.b.clock(s.best == nil && run%4 == 0)
			if s.best == nil {
				return 100 * lcg.Luby(run)
			}
			return restartUnit * lcg.Luby(run)
		},
	})
	after := s.m.e.Stats
	s.left -= after.Conflicts - before.Conflicts + (after.Propagations-before.Propagations)/eventsPerConflict
	return out
}

// first finds any solution. It returns false at a limit or a refutation.
func (s *solving) first() bool {
	for s.quick = true; ; s.quick = false {
		effort := s.left
		if s.quick {
			effort = quickEffort
		}
		switch s.search(effort) {
		case lcg.Found:
			return s.take()
		case lcg.Refuted:
			s.result.Status = Infeasible
			return false
		case lcg.Stopped:
			if !s.quick || s.left <= 0 || s.stop() {
				return false
			}
		}
	}
}

// improve works on the objective in hand until its value is proved or its
// share of the conflicts is spent. It goes down from the best value, by a step
// that grows with success; in every fourth round it tries a value near the
// bound instead, where a failure is a proof that raises the bound.
func (s *solving) improve() {
	k := s.level
	end := s.left - s.share()
	if s.left > end {
		s.lift()
	}
	slice, step := int64(200), 1
	rise := max(1, (s.values[k]-s.m.bound(k))/2)
	for round := 0; s.left > end && s.m.bound(k) < s.values[k]; round++ {
		low, high := s.m.bound(k), s.values[k]
		fromBelow := round%4 == 3
		target := max(low, high-step)
		if fromBelow {
			target = min(low+rise-1, high-1)
		}
		lit := s.m.below(k, target)
		before, stood := s.left, s.values
		out := s.search(min(slice, s.left-end), lit)
		switch out {
		case lcg.Found:
			if !s.take() || !s.reached(stood, target) {
				return
			}
		case lcg.Refuted:
			s.bounds = append(s.bounds, s.values[k])
			s.proof.bound(k, s.bounds[k])
			return
		case lcg.Failed:
			s.m.e.AddClause(lit.Not())
			s.proof.bound(k, s.m.bound(k))
			s.tell()
		case lcg.Stopped:
			if s.stop() {
				end = s.left
				break
			}
			slice += slice / 4
			searched := before - s.left
			s.breed(searched)
			if s.crowd == nil {
				s.roam(searched) // of a plain project the population does better
			}
			if s.wrong != nil {
				return
			}
		}
		if fromBelow {
			rise = adapt(rise, out == lcg.Failed)
		} else {
			step = adapt(step, out == lcg.Found)
		}
	}
	s.bounds = append(s.bounds, min(s.m.bound(k), s.values[k]))
	s.proof.bound(k, s.bounds[k])
}

// reached says whether the objective in hand came down to its target, or one before
// it below what stood. If not, the model values a schedule otherwise than the judge,
// and the same schedule would be found for ever.
func (s *solving) reached(stood []int, target int) bool {
	if s.values[s.level] <= target || !slices.Equal(s.values[:s.level], stood[:s.level]) {
		return true
	}
	s.wrong = fmt.Errorf("internal error: objective %d is %d for the judge, and at most %d for the search", s.level, s.values[s.level], target)
	return false
}

// share is how many of the conflicts left the objective in hand may take.
func (s *solving) share() int64 {
	share := s.left
	if s.level < len(s.goals)-1 {
		share = s.left * 6 / 10
	}
	if s.level < len(s.o.Efforts) && s.o.Efforts[s.level] != 0 {
		share = min(share, max(0, s.o.Efforts[s.level]))
	}
	return share
}

// adapt doubles a step that succeeded and cuts one that did not.
func adapt(step int, success bool) int {
	if success {
		return step * 2
	}
	return max(1, step/4)
}
