package lcg

import "slices"

// clause is a range of the arena: at least one of its literals holds.
type clause struct {
	from, size int32
	activity   float32
	spread     int32 // number of levels when learnt; 0 for a clause of the problem
	dead       bool
}

// watch belongs to a clause literal that is watched.
type watch struct {
	clause int32
	other  Lit // if it holds, the clause needs no look
}

// watchers holds the watches of the literals that become false as one side
// rises, by the number at which they do.
type watchers struct {
	at    []int32 // rising
	lists [][]watch
}

// list is the list at a number, made if need be.
func (w *watchers) list(at int32) *[]watch {
	k, found := slices.BinarySearch(w.at, at)
	if !found {
		w.at = slices.Insert(w.at, k, at)
		w.lists = slices.Insert(w.lists, k, nil)
	}
	return &w.lists[k]
}

// above is the index of the first number greater than old.
func (w *watchers) above(old int32) int {
	k, found := slices.BinarySearch(w.at, old)
	if found {
		k++
	}
	return k
}

// clear empties all lists and forgets the numbers of those that were empty.
func (w *watchers) clear() {
	n := 0
	for k, list := range w.lists {
		if len(list) > 0 {
			w.at[n], w.lists[n] = w.at[k], list[:0]
			n++
		}
	}
	clear(w.lists[n:])
	w.at, w.lists = w.at[:n], w.lists[:n]
}

// AddClause demands that at least one literal holds. It works at the root.
func (e *Engine) AddClause(lits ...Lit) {
	e.backTo(0)
	kept := make([]Lit, 0, len(lits))
	for _, l := range lits {
		if e.Holds(l) {
			return
		}
		if e.Fails(l) {
			continue
		}
		var always bool
		if kept, always = joinLit(kept, l); always {
			return
		}
	}
	switch len(kept) {
	case 0:
		e.broken = true
	case 1:
		if !e.set(kept[0], reason{}) {
			e.broken = true
		}
	default:
		e.attach(e.store(kept, 0))
	}
}

// joinLit adds a literal to a disjunction; of two on one side the weaker stays.
// It reports a disjunction that always holds.
func joinLit(kept []Lit, l Lit) ([]Lit, bool) {
	for i, k := range kept {
		if k.Side == l.Side {
			kept[i].Min = min(k.Min, l.Min)
			l = kept[i]
			kept = append(kept[:i], kept[i+1:]...)
			return joinLit(kept, l)
		}
		if k.Side == l.Side^1 && k.Not().Min >= l.Min {
			return kept, true
		}
	}
	return append(kept, l), false
}

// Imply demands that the head holds if all of the body do.
func (e *Engine) Imply(head Lit, body ...Lit) {
	lits := make([]Lit, 0, len(body)+1)
	for _, b := range body {
		lits = append(lits, b.Not())
	}
	e.AddClause(append(lits, head)...)
}

func (e *Engine) store(lits []Lit, spread int32) int32 {
	c := clause{from: int32(len(e.arena)), size: int32(len(lits)), spread: spread}
	e.arena = append(e.arena, lits...)
	e.clauses = append(e.clauses, c)
	if spread > 0 {
		e.learnts++
	}
	return int32(len(e.clauses) - 1)
}

func (e *Engine) lits(c int32) []Lit {
	k := &e.clauses[c]
	return e.arena[k.from : k.from+k.size : k.from+k.size]
}

func (e *Engine) attach(c int32) {
	l := e.lits(c)
	e.addWatch(l[0], c, l[1])
	e.addWatch(l[1], c, l[0])
}

func (e *Engine) addWatch(l Lit, c int32, other Lit) {
	n := l.Not()
	list := e.watches[n.Side].list(n.Min)
	*list = append(*list, watch{c, other})
}

// propagateClauses looks at the clauses of which a watched literal became
// false when a side rose from old to new.
func (e *Engine) propagateClauses(side Side, old, new int32) bool {
	w := &e.watches[side]
	for k := w.above(old); k < len(w.at) && w.at[k] <= new; k++ {
		if !e.visit(&w.lists[k], Lit{side, w.at[k]}.Not()) {
			return false
		}
	}
	return true
}

// visit goes through the clauses that watch a literal now false.
func (e *Engine) visit(list *[]watch, gone Lit) bool {
	ws := *list
	n := 0
	for i := 0; i < len(ws); i++ {
		w := ws[i]
		if e.bound[w.other.Side] >= w.other.Min {
			ws[n] = w
			n++
			continue
		}
		lits := e.lits(w.clause)
		if lits[0] == gone {
			lits[0], lits[1] = lits[1], gone
		}
		first := lits[0]
		if first != w.other && e.bound[first.Side] >= first.Min {
			ws[n] = watch{w.clause, first}
			n++
			continue
		}
		if e.moveWatch(lits, w.clause, first) {
			continue
		}
		ws[n] = watch{w.clause, first}
		n++
		if !e.set(first, reason{byClause, w.clause, 0}) {
			n += copy(ws[n:], ws[i+1:])
			*list = ws[:n]
			return false
		}
	}
	*list = ws[:n]
	return true
}

// moveWatch gives the second watch of a clause to a literal that is not false.
// It lies on another side than the one that is gone: a clause has one literal
// a side.
func (e *Engine) moveWatch(lits []Lit, c int32, first Lit) bool {
	for k := 2; k < len(lits); k++ {
		l := lits[k]
		if e.bound[l.Side^1] <= -l.Min {
			lits[1], lits[k] = l, lits[1]
			e.addWatch(l, c, first)
			return true
		}
	}
	return false
}
