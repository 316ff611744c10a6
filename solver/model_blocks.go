package solver

import (
	"slices"

	"plait.example/solver/internal/lcg"
	"plait.example/solver/problem"
)

// blocks posts how the needs of one state form blocks (see need).
type blocks struct {
	*model
	st      *problem.State
	needs   []*need
	tracked bool // what a change takes depends on the level it comes from
}

// dependsOnSource says that two changes to one level take different times. If
// none do, nobody need know which block comes directly before another.
func (b *blocks) dependsOnSource() bool {
	sources := b.usedLevels()
	sources[b.st.Initial] = true
	for to := range b.st.Levels {
		var first *problem.Change
		for from, used := range sources {
			if !used || from == to {
				continue
			}
			c := &b.st.Change[from][to]
			if first != nil && *first != *c {
				return true
			}
			first = c
		}
	}
	return false
}

// usedLevels are the levels that some need allows.
func (b *blocks) usedLevels() []bool {
	used := make([]bool, len(b.st.Levels))
	for _, n := range b.needs {
		for l, lit := range n.level {
			used[l] = used[l] || !b.e.Fails(lit)
		}
	}
	return used
}

// variables makes position and change of a need's block.
func (b *blocks) variables(n *need) {
	h := b.p.Horizon
	most := 1
	if b.tracked {
		most = len(b.needs)
	}
	n.place = lcg.Term{Var: b.e.NewVar(0, most)}
	n.initial = n.place.AtMost(0)
	from := min(b.st.ChangeFrom, h+1)
	n.change = lcg.Term{Var: b.e.NewVar(from, max(h, from))}
	b.e.AddClause(n.present.Not(), n.initial.Not(), n.level[b.st.Initial])
	b.nameBlock(n, most)
	n.changed = b.all(n.present, n.initial.Not())
	b.e.AddDifference(n.change, 0, b.start[n.activity], n.changed)
}

// relate posts how two needs stand: one block, or either's before the other's.
func (b *blocks) relate(x, y *need) {
	either := []lcg.Lit{x.present.Not(), y.present.Not()}
	same := lcg.True.Not()
	if b.couldShare(x, y) {
		same = b.e.NewBool()
		b.namePair(same, "same", x, y)
		b.oneBlock(same, x, y)
		either = append(either, same)
	}
	y.same = append(y.same, same)
	xy, yx := b.e.NewBool(), b.e.NewBool()
	b.namePair(xy, "before", x, y)
	b.namePair(yx, "before", y, x)
	b.e.AddClause(append(either, xy, yx)...)
	for _, l := range []lcg.Lit{same, xy, yx} {
		b.e.Imply(x.present, l)
		b.e.Imply(y.present, l)
	}
	for _, two := range [][2]lcg.Lit{{xy, yx}, {same, xy}, {same, yx}} {
		b.e.AddClause(two[0].Not(), two[1].Not())
	}
	b.precedes(xy, x, y)
	b.precedes(yx, y, x)
}

// couldShare says that two needs have a level in common.
func (b *blocks) couldShare(x, y *need) bool {
	for l := range x.level {
		if !b.e.Fails(x.level[l]) && !b.e.Fails(y.level[l]) {
			return true
		}
	}
	return false
}

// oneBlock ties level, position and change of two needs.
func (b *blocks) oneBlock(same lcg.Lit, x, y *need) {
	for l := range x.level {
		b.e.Imply(y.level[l], same, x.level[l])
		b.e.Imply(x.level[l], same, y.level[l])
	}
	for _, t := range [][2]lcg.Term{{x.place, y.place}, {x.change, y.change}} {
		b.e.AddDifference(t[0], 0, t[1], same)
		b.e.AddDifference(t[1], 0, t[0], same)
	}
}

// precedes posts that the block of x ends before the change to that of y
// begins. A need without length takes the moment of its start.
func (b *blocks) precedes(when lcg.Lit, x, y *need) {
	b.e.AddDifference(b.end[x.activity], 0, y.change, when)
	if b.least[x.activity] == 0 {
		b.e.AddDifference(b.start[x.activity], 1, y.change, when)
	}
	if b.tracked {
		b.e.AddDifference(x.place, 1, y.place, when)
	} else {
		b.e.Imply(y.initial.Not(), when)
	}
	b.e.AddDifference(b.end[x.activity], b.leastBetween(x, y), b.start[y.activity], when)
	y.later = append(y.later, after{x, when})
}

// leastBetween is the least time between two needs in different blocks.
func (b *blocks) leastBetween(x, y *need) int {
	least := b.p.Horizon + 1
	for from := range x.level {
		for to := range y.level {
			if b.e.Fails(x.level[from]) || b.e.Fails(y.level[to]) {
				continue
			}
			least = min(least, takes(b.st, from, to))
		}
	}
	return least
}

// takes is the time of a change; none for equal levels.
func takes(st *problem.State, from, to int) int {
	if from == to {
		return 0
	}
	return st.Change[from][to].Work + st.Change[from][to].Settle
}

// lead says which need of a block stands for its change: the first by index.
func (b *blocks) lead(n *need, earlier []*need) lcg.Lit {
	parts := []lcg.Lit{n.changed}
	for i := range earlier {
		parts = append(parts, n.same[i].Not())
	}
	return b.all(parts...)
}

// kind is a distinct length of change, and the literal that it is this one.
type kind struct {
	problem.Change
	when lcg.Lit
}

// change posts how long the change to a need's block takes.
func (b *blocks) change(n *need) {
	kinds := b.kinds(n)
	n.works, n.leastWork = lcg.True.Not(), 0
	var working []lcg.Lit
	works := map[int]bool{}
	for _, k := range kinds {
		b.e.AddDifference(n.change, min(k.Work+k.Settle, b.p.Horizon+1), b.start[n.activity], k.when)
		if k.Work > 0 {
			working = append(working, k.when)
			works[k.Work] = true
			if n.leastWork == 0 || k.Work < n.leastWork {
				n.leastWork = k.Work
			}
		}
	}
	if len(working) > 0 {
		n.works = b.all(n.leads, b.some(working...))
	}
	n.worked = n.change.Plus(n.leastWork)
	if len(works) > 1 {
		n.worked = lcg.Term{Var: b.e.NewVar(0, b.p.Horizon)}
		b.name(n.worked.Var, "worked", n.activity, n.state)
		b.e.AddDifference(n.change, n.leastWork, n.worked, n.works)
		for _, k := range kinds {
			if k.Work > 0 {
				b.e.AddDifference(n.change, min(k.Work, b.p.Horizon+1), n.worked, b.all(k.when, n.leads))
			}
		}
	}
}

// kinds makes a literal for each distinct length of the change to n's block;
// it holds when a change from a possible level to the block's level has that
// length.
func (b *blocks) kinds(n *need) []kind {
	var out []kind
	when := func(c problem.Change) lcg.Lit {
		for _, k := range out {
			if k.Change == c {
				return k.when
			}
		}
		out = append(out, kind{c, b.e.NewBool()})
		b.name(out[len(out)-1].when.Var(), "kind", n.activity, n.state, c.Work, c.Settle)
		return out[len(out)-1].when
	}
	from := b.sources(n)
	for to, level := range n.level {
		if b.e.Fails(level) {
			continue
		}
		for f, source := range from {
			if f != to && !b.e.Fails(source) {
				b.e.Imply(when(b.st.Change[f][to]), n.changed, source, level)
			}
		}
	}
	return out
}

// sources makes literals, one a level, that the change to n's block comes from
// that level. If it makes no difference, the levels in use all count as true.
func (b *blocks) sources(n *need) []lcg.Lit {
	used := b.usedLevels()
	used[b.st.Initial] = true
	from := slices.Repeat([]lcg.Lit{lcg.True.Not()}, len(used))
	for l, ok := range used {
		switch {
		case ok && b.tracked:
			from[l] = b.e.NewBool()
			b.name(from[l].Var(), "source", n.activity, n.state, l)
		case ok:
			from[l] = lcg.True
		}
	}
	if b.tracked {
		b.follows(n, from)
	}
	return from
}

// follows posts that the block of n comes first, or directly after the block
// of another need, whose level it comes from.
func (b *blocks) follows(n *need, from []lcg.Lit) {
	first := n.place.AtMost(1)
	b.e.Imply(from[b.st.Initial], n.changed, first)
	ways := []lcg.Lit{n.changed.Not(), first}
	for _, a := range n.later {
		next := b.e.NewBool()
		b.namePair(next, "next", a.earlier, n)
		b.e.Imply(a.when, next)
		b.e.AddDifference(n.place, -1, a.earlier.place, next)
		for l, level := range a.earlier.level {
			if !b.e.Fails(level) {
				b.e.Imply(from[l], next, level)
			}
		}
		ways = append(ways, next)
	}
	b.e.AddClause(ways...)
}
