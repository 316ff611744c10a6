package solver

import "plait.example/solver/internal/lcg"

// brancher chooses decisions. By the clock it takes the thing that can start
// earliest and starts it then, as a serial schedule-generation scheme does,
// but with propagation and learning behind it; by activity it follows the
// engine. Either way the rest is completed in a fixed order, so that every
// variable is fixed in the end.
type brancher struct {
	m       *model
	starts  []startable
	rest    []lcg.Lit // Booleans to complete, with the sign to try first
	ints    []lcg.Var
	byClock bool
}

// startable is something with a start: an activity or the change of a need.
type startable struct {
	start lcg.Term
	modes []lcg.Lit
	tail  int // longest path to the end of the project, for ties
}

func newBrancher(m *model) *brancher {
	b := &brancher{m: m}
	for i := range m.start {
		b.starts = append(b.starts, startable{start: m.start[i], modes: m.mode[i]})
	}
	for _, needs := range m.needs {
		for _, n := range needs {
			b.rest = append(b.rest, n.level...)
			b.rest = append(b.rest, n.initial)
			b.rest = append(b.rest, n.same...)
			for _, a := range n.later {
				b.rest = append(b.rest, a.when)
			}
		}
	}
	for v := range m.e.Vars() {
		b.ints = append(b.ints, lcg.Var(v))
	}
	return b
}

// next is the decision to take now; false when all is decided.
func (b *brancher) next() (lcg.Lit, bool) {
	if b.byClock {
		if l, ok := b.earliest(); ok {
			return l, true
		}
	} else if l, ok := b.m.e.MostActive(); ok {
		return l, true
	}
	return b.complete()
}

// earliest takes the open activity of least earliest start, of least latest
// start among those: its mode first, then its start.
func (b *brancher) earliest() (lcg.Lit, bool) {
	e := b.m.e
	best, bestLow, bestHigh := -1, 0, 0
	for i := range b.starts {
		s := &b.starts[i]
		low, high := e.Min(s.start), e.Max(s.start)
		if low == high {
			continue
		}
		if best < 0 || low < bestLow || low == bestLow && high < bestHigh {
			best, bestLow, bestHigh = i, low, high
		}
	}
	if best < 0 {
		return lcg.Lit{}, false
	}
	for _, l := range b.starts[best].modes {
		if !e.Holds(l) && !e.Fails(l) {
			return l, true
		}
	}
	return b.starts[best].start.AtMost(bestLow), true
}

// complete fixes what is left: Booleans by their preferred sign, then numbers
// at their least.
func (b *brancher) complete() (lcg.Lit, bool) {
	e := b.m.e
	if l, ok := b.earliest(); ok {
		return l, true
	}
	for _, l := range b.rest {
		if !e.Holds(l) && !e.Fails(l) {
			return l, true
		}
	}
	for _, v := range b.ints {
		if !e.Fixed(v) {
			return lcg.AtMost(v, e.Low(v)), true
		}
	}
	return lcg.Lit{}, false
}
