package solver

import (
	"math"

	"plait.example/solver/internal/lcg"
)

// brancher chooses decisions. By the clock it takes the activity that can
// start earliest and starts it then, as a serial schedule-generation scheme
// does, but with propagation and learning behind it; by activity it follows
// the engine. Either way the rest is completed in a fixed order, so that every
// variable is fixed in the end.
type brancher struct {
	m       *model
	starts  []startable
	rest    []lcg.Lit // Booleans to complete, with the sign to try first
	byClock bool
	urgent  bool // of what can start soon, the most urgent comes first
	// How far rest and the variables were found decided, and at which count
	// of conflicts and restarts: going on from there is sound until the next.
	restDone, varsDone int
	doneAt             int64
}

// startable is an activity as the branching sees it.
type startable struct {
	start lcg.Term
	modes []lcg.Lit
	needs []*need
}

func newBrancher(m *model) *brancher {
	b := &brancher{m: m}
	for i := range m.start {
		b.starts = append(b.starts, startable{start: m.start[i], modes: m.mode[i]})
	}
	for _, needs := range m.needs {
		for _, n := range needs {
			b.starts[n.activity].needs = append(b.starts[n.activity].needs, n)
			b.rest = append(b.rest, n.initial)
			b.rest = append(b.rest, n.same...)
			b.rest = append(b.rest, n.level...)
			for _, a := range n.later {
				b.rest = append(b.rest, a.when)
			}
		}
	}
	return b
}

// clock sets whether decisions go by the clock from now on. Whenever they do
// anew, the rule is the other one.
func (b *brancher) clock(on bool) {
	if b.byClock = on; on {
		b.urgent = !b.urgent
	}
}

// next is the decision to take now; false when all is decided.
func (b *brancher) next() (lcg.Lit, bool) {
	if !b.byClock {
		if l, ok := b.m.e.MostActive(); ok {
			return l, true
		}
	}
	if l, ok := b.earliest(); ok {
		return l, true
	}
	return b.complete()
}

// earliest takes an open activity: its mode, its place in the states, then its
// start, as early as can be.
func (b *brancher) earliest() (lcg.Lit, bool) {
	e := b.m.e
	best := b.pick()
	if best < 0 {
		return lcg.Lit{}, false
	}
	s := &b.starts[best]
	bestLow := e.Min(s.start)
	if l, ok := b.firstOpen(s.modes); ok {
		return l, true
	}
	for _, n := range s.needs {
		if l, ok := b.serve(n); ok {
			return l, true
		}
	}
	return s.start.AtMost(bestLow), true
}

// pick is the open activity of least earliest start, of least latest start
// among those. If the urgent come first, it is that of least latest start among
// all that can start before any of them has to end (B. Giffler, G. Thompson,
// Algorithms for solving production-scheduling problems, 1960). -1: none is open.
func (b *brancher) pick() int {
	e := b.m.e
	best, bestLow, bestHigh := -1, 0, 0
	soon := 0
	if b.urgent {
		soon = b.soonest()
	}
	for i := range b.starts {
		low, high := e.Min(b.starts[i].start), e.Max(b.starts[i].start)
		if low == high || b.urgent && low >= soon {
			continue
		}
		sooner := low < bestLow || low == bestLow && high < bestHigh
		if b.urgent {
			sooner = high < bestHigh || high == bestHigh && low < bestLow
		}
		if best < 0 || sooner {
			best, bestLow, bestHigh = i, low, high
		}
	}
	return best
}

// soonest is the least time by which an open activity has been started and, if
// it has a length, can have ended.
func (b *brancher) soonest() int {
	e := b.m.e
	soon := math.MaxInt
	for i := range b.starts {
		if low := e.Min(b.starts[i].start); low < e.Max(b.starts[i].start) {
			soon = min(soon, max(e.Min(b.m.end[i]), low+1))
		}
	}
	return soon
}

// serve settles how a need comes by its level: from the beginning, with a
// need already placed, or by a change as early as can be.
func (b *brancher) serve(n *need) (lcg.Lit, bool) {
	e := b.m.e
	if !e.Holds(n.present) {
		return lcg.Lit{}, false
	}
	if undecided(e, n.initial) {
		return n.initial, true
	}
	if l, ok := b.firstOpen(n.same); ok {
		return l, true
	}
	if l, ok := b.firstOpen(n.level); ok {
		return l, true
	}
	if e.Holds(n.leads) && e.Min(n.change) < e.Max(n.change) {
		return n.change.AtMost(e.Min(n.change)), true
	}
	return lcg.Lit{}, false
}

// complete fixes what is left: Booleans by their preferred sign, then numbers
// at their least.
func (b *brancher) complete() (lcg.Lit, bool) {
	e := b.m.e
	if now := e.Backtracks(); now != b.doneAt {
		b.restDone, b.varsDone, b.doneAt = 0, 0, now
	}
	for ; b.restDone < len(b.rest); b.restDone++ {
		if l := b.rest[b.restDone]; undecided(e, l) {
			return l, true
		}
	}
	for ; b.varsDone < e.Vars(); b.varsDone++ {
		if v := lcg.Var(b.varsDone); !e.Fixed(v) {
			return lcg.AtMost(v, e.Low(v)), true
		}
	}
	return lcg.Lit{}, false
}

func (b *brancher) firstOpen(lits []lcg.Lit) (lcg.Lit, bool) {
	for _, l := range lits {
		if undecided(b.m.e, l) {
			return l, true
		}
	}
	return lcg.Lit{}, false
}

func undecided(e *lcg.Engine, l lcg.Lit) bool { return !e.Holds(l) && !e.Fails(l) }
