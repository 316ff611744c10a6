package solver

import "plait.example/solver/internal/lcg"

// lift raises the bound of the objective in hand to the least value that
// propagation alone does not refuse: a destructive bound, by halves, at the
// price of a few propagations.
func (s *solving) lift() {
	k := s.level
	for high := s.values[k]; s.m.bound(k) < high && !s.stop(); {
		low := s.m.bound(k)
		middle := low + (high-low)/2
		lit := s.m.below(k, middle)
		if s.glance(lit) {
			high = middle
			continue
		}
		s.m.e.AddClause(lit.Not())
		if s.m.bound(k) == low {
			return // a coarse scale
		}
		s.proof.bound(k, s.m.bound(k))
	}
}

// glance says that propagation alone does not refuse the literal.
func (s *solving) glance(l lcg.Lit) bool {
	out := s.m.e.Run(lcg.Search{
		Assume: []lcg.Lit{l},
		Branch: func() (lcg.Lit, bool) { return lcg.Lit{}, false },
		Events: max(1, s.left) * eventsPerConflict,
	})
	s.m.e.Reset()
	return out != lcg.Failed
}
