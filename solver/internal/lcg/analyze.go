package lcg

import (
	"cmp"
	"slices"
)

// analyze turns the conflict into a clause of the first-UIP kind, left in
// e.learnt with the asserting literal first and a literal of the level to
// return to second. It returns that level, or -1 if the conflict holds at the
// root.
//
// What must be explained is kept by side: the greatest number needed of it
// and the first event that implies that number. Walking the trail backwards
// visits those events in order.
func (e *Engine) analyze() int {
	top := e.conflictLevel()
	if top == 0 {
		return -1
	}
	e.backTo(top)
	begin := e.levels[top-1]
	open := 0
	for _, l := range e.conflict {
		open += e.require(l, begin)
	}
	at := int32(len(e.trail)) - 1
	var uip Lit
	for {
		for e.needAt[e.trail[at].side] != at {
			at--
		}
		side := e.trail[at].side
		uip = Lit{side, e.need[side]}
		e.bump(uip)
		if open == 1 {
			break
		}
		e.needAt[side] = -1
		open--
		e.buffer = e.unfold(e.buffer[:0], uip, e.trail[at].reason, at)
		for _, l := range e.buffer {
			open += e.require(l, begin)
		}
		at--
	}
	e.needAt[uip.Side] = -1
	e.collect(uip)
	return e.secondLevel()
}

// conflictLevel is the greatest level among the events behind the conflict.
func (e *Engine) conflictLevel() int {
	top := int32(0)
	for _, l := range e.conflict {
		if c := e.cause(l); c >= 0 {
			top = max(top, e.trail[c].level)
		}
	}
	return int(top)
}

// require adds a literal to what must be explained. It returns by how much the
// count of sides of the conflict level changes.
func (e *Engine) require(l Lit, begin int32) int {
	had := e.needAt[l.Side]
	if had >= 0 && e.need[l.Side] >= l.Min {
		return 0
	}
	c := e.cause(l)
	if c < 0 || e.trail[c].level == 0 {
		return 0
	}
	if had < 0 {
		e.touched = append(e.touched, l.Side)
	}
	e.need[l.Side], e.needAt[l.Side] = l.Min, c
	e.bump(l)
	if c >= begin && had < begin {
		return 1
	}
	return 0
}

// collect writes the learnt clause, drops what the rest implies, and clears
// the marks. A side may have been touched twice.
func (e *Engine) collect(uip Lit) {
	e.learnt = append(e.learnt[:0], uip.Not())
	slices.SortFunc(e.touched, func(a, b Side) int {
		return cmp.Or(cmp.Compare(e.needAt[a], e.needAt[b]), cmp.Compare(a, b))
	})
	e.touched = slices.Compact(e.touched)
	e.markStart()
	for _, s := range e.touched {
		if c := e.needAt[s]; c >= 0 {
			l := Lit{s, e.need[s]}
			if !e.followed(l, c, c, depthOfProof) {
				e.learnt = append(e.learnt, l.Not())
			}
		}
	}
	for _, s := range e.touched {
		e.needAt[s] = -1
	}
	e.touched = e.touched[:0]
	e.markClear()
}

// secondLevel moves a literal of the greatest level below the conflict to the
// second place and returns its level.
func (e *Engine) secondLevel() int {
	best := int32(0)
	for i := 1; i < len(e.learnt); i++ {
		if lv := e.trail[e.cause(e.learnt[i].Not())].level; lv > best {
			best = lv
			e.learnt[1], e.learnt[i] = e.learnt[i], e.learnt[1]
		}
	}
	return int(best)
}

// learn stores the learnt clause and asserts its first literal.
func (e *Engine) learn() bool {
	e.Stats.Learnt++
	e.Stats.Literals += int64(len(e.learnt))
	if e.onLearn != nil {
		e.onLearn(e.learnt)
	}
	for _, l := range e.learnt {
		e.raise(l)
	}
	if len(e.learnt) == 1 {
		return e.set(e.learnt[0], reason{})
	}
	c := e.store(e.learnt, e.spread())
	e.clauses[c].activity = e.clauseUp
	e.attach(c)
	return e.set(e.learnt[0], reason{byClause, c, 0})
}

// spread counts the decision levels in the learnt clause.
func (e *Engine) spread() int32 {
	e.marked = e.marked[:0]
	for _, l := range e.learnt[1:] {
		lv := e.trail[e.cause(l.Not())].level
		if !slices.Contains(e.marked, lv) {
			e.marked = append(e.marked, lv)
		}
	}
	return int32(len(e.marked)) + 1
}
