package lcg

// clause is a range of the arena: at least one of its literals holds.
type clause struct {
	from, size int32
	activity   float32
	spread     int32 // number of levels when learnt; 0 for a clause of the problem
	dead       bool
}

// watch belongs to a clause literal that becomes false when its side's
// opposite reaches guard.
type watch struct {
	guard  int32
	clause int32
	other  Lit // if it holds, the clause needs no look
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
	e.watches[n.Side] = append(e.watches[n.Side], watch{n.Min, c, other})
}

// propagateClauses looks at the clauses of which a watched literal became
// false when a side rose from old to new.
func (e *Engine) propagateClauses(side Side, old, new int32) bool {
	ws := e.watches[side]
	n := 0
	for i := 0; i < len(ws); i++ {
		w := ws[i]
		if w.guard <= old || w.guard > new || e.bound[w.other.Side] >= w.other.Min {
			ws[n] = w
			n++
			continue
		}
		lits := e.lits(w.clause)
		gone := Lit{side, w.guard}.Not()
		if lits[0] == gone {
			lits[0], lits[1] = lits[1], gone
		}
		first := lits[0]
		if first != w.other && e.bound[first.Side] >= first.Min {
			ws[n] = watch{w.guard, w.clause, first}
			n++
			continue
		}
		if e.moveWatch(lits, w.clause, first) {
			continue
		}
		ws[n] = watch{w.guard, w.clause, first}
		n++
		if !e.set(first, reason{byClause, w.clause, 0}) {
			n += copy(ws[n:], ws[i+1:])
			e.watches[side] = ws[:n]
			return false
		}
	}
	e.watches[side] = ws[:n]
	return true
}

// moveWatch gives the second watch of a clause to a literal that is not false.
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
