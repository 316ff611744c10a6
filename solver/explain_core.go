package solver

import (
	"slices"

	"plait.example/solver/internal/lcg"
	"plait.example/solver/problem"
)

// core looks for conflicts with one model for all questions: every demand has
// a literal that is assumed, what is learnt from one question serves the next,
// and the reasons of a failure name the demands to blame. Demands of states
// are not asked about; they always hold here.
type core struct {
	*explaining
	m     *model
	b     *brancher
	named map[lcg.Lit]string
	hard  []string
}

func newCore(x *explaining) *core {
	c := &core{explaining: x, named: map[lcg.Lit]string{}}
	var soft []string
	for _, n := range x.weighty() {
		if slices.ContainsFunc(x.p.States, func(s problem.State) bool { return s.Demand == n }) {
			c.hard = append(c.hard, n)
		} else {
			soft = append(soft, n)
		}
	}
	if len(soft) == 0 {
		return c
	}
	c.m = compileSoft(x.p, x.o.Seed, soft)
	c.b = newBrancher(c.m)
	for n, l := range c.m.soft {
		c.named[l] = n
	}
	return c
}

// blamed is a conflict that is part of names, if names are proved to break
// with no more than the given effort.
func (c *core) blamed(names []string, effort int64) ([]string, answer) {
	var assume []lcg.Lit
	for _, n := range names {
		assume = append(assume, c.m.soft[n])
	}
	before := c.m.e.Stats
	out := c.m.e.Run(lcg.Search{
		Assume: assume, Conflicts: effort, Events: effort * eventsPerConflict, Branch: c.b.next,
		Stop: func() bool { return c.ctx.Err() != nil },
		Restart: func(run int) int64 {
			c.b.byClock = run%4 == 0
			return firstUnit * lcg.Luby(run)
		},
	})
	after := c.m.e.Stats
	c.left -= callCost + after.Conflicts - before.Conflicts + (after.Propagations-before.Propagations)/eventsPerConflict
	switch out {
	case lcg.Refuted:
		return nil, breaks
	case lcg.Failed:
		var kept []string
		for _, l := range c.m.e.Core() {
			kept = append(kept, c.named[l])
		}
		return kept, breaks
	case lcg.Found:
		c.schedules = append(c.schedules, c.m.extract()) // asked about before any other search
		c.m.e.Reset()
		return nil, holds
	}
	return nil, unsure
}

// cored is a conflict, small if the effort suffices; false if it does not
// suffice for any.
func (x *explaining) cored() ([]string, bool) {
	c := newCore(x)
	if c.m == nil {
		return nil, false
	}
	names, a := c.blamed(c.softNames(), x.left/2)
	if a != breaks {
		return nil, false
	}
	for range coreTrims {
		less, a := c.blamed(names, max(leastShare, x.left/shares))
		if a != breaks || len(less) >= len(names) {
			break
		}
		names = less
	}
	enough := x.all / 2
	for i := len(names) - 1; i >= 0 && x.left > enough; i-- {
		rest := slices.Concat(names[:i], names[i+1:])
		if less, a := c.blamed(rest, max(1, min(coreEffort, x.left))); a == breaks {
			names = less
			i = min(i, len(names))
		}
	}
	return slices.Concat(names, c.hard), true
}

const (
	coreTrims  = 4   // times that a conflict is asked about once more, to be blamed on less
	coreEffort = 300 // conflicts for the question whether a conflict can spare a demand
)

// softNames are the demands that have literals, weighty ones first.
func (c *core) softNames() []string {
	return slices.DeleteFunc(c.weighty(), func(n string) bool { return slices.Contains(c.hard, n) })
}
