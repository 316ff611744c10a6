package lcg

import (
	"cmp"
	"slices"
)

// reduce drops the learnt clauses that did least, at the root. Clauses of few
// levels are kept (G. Audemard, L. Simon, Predicting learnt clauses quality,
// 2009).
func (e *Engine) reduce() {
	e.forget()
	var weak []int32
	for c := range e.clauses {
		k := &e.clauses[c]
		if !k.dead && e.settledClause(int32(c)) {
			e.drop(k)
		}
		if !k.dead && k.spread > 2 {
			weak = append(weak, int32(c))
		}
	}
	slices.SortFunc(weak, func(a, b int32) int {
		x, y := &e.clauses[a], &e.clauses[b]
		return cmp.Or(cmp.Compare(x.activity, y.activity), cmp.Compare(y.spread, x.spread), cmp.Compare(a, b))
	})
	for _, c := range weak[:len(weak)/2] {
		e.drop(&e.clauses[c])
	}
	e.pack()
}

// settledClause says that a clause holds at the root.
func (e *Engine) settledClause(c int32) bool {
	for _, l := range e.lits(c) {
		if e.Holds(l) {
			return true
		}
	}
	return false
}

func (e *Engine) drop(k *clause) {
	k.dead = true
	if k.spread > 0 {
		e.learnts--
	}
}

// pack removes dead clauses from the arena and builds the watches anew.
func (e *Engine) pack() {
	for s := range e.watches {
		e.watches[s].clear()
	}
	arena := e.arena[:0]
	n := 0
	for _, k := range e.clauses {
		if k.dead {
			continue
		}
		from := int32(len(arena))
		arena = append(arena, e.arena[k.from:k.from+k.size]...)
		k.from = from
		e.clauses[n] = k
		n++
	}
	e.arena, e.clauses = arena, e.clauses[:n]
	for c := range e.clauses {
		e.attach(int32(c))
	}
}

// reward raises a learnt clause that took part in a conflict.
func (e *Engine) reward(c int32) {
	k := &e.clauses[c]
	if k.spread == 0 {
		return
	}
	k.activity += e.clauseUp
	if k.activity > 1e20 {
		for i := range e.clauses {
			e.clauses[i].activity *= 1e-20
		}
		e.clauseUp *= 1e-20
	}
}

// SetMemory limits what the search may remember, in bytes; 0 is no limit.
// Learnt clauses are dropped sooner then, and if that does not help, Run stops.
func (e *Engine) SetMemory(bytes int64) { e.memory, e.full = bytes, false }

// Full says that Run stopped, or would at once, for lack of memory.
func (e *Engine) Full() bool { return e.full }

// Size is about how many bytes clauses, their watches and the literals to
// branch on take.
func (e *Engine) Size() int64 {
	const literal, perClause, perAtom = 8, 24 + 2*16, 80
	return int64(len(e.arena))*literal + int64(len(e.clauses))*perClause + int64(len(e.atoms.keys))*perAtom
}

// crowded says that the limit of memory is passed.
func (e *Engine) crowded() bool { return e.memory > 0 && e.Size() > e.memory }
