package lcg

// event is one rise of a side's bound.
type event struct {
	side     Side
	old, new int32
	prev     int32 // the event of the same side before this one, or -1
	level    int32
	reason   reason
}

// reason says why an event happened; it is unfolded to literals only when
// conflict analysis asks (see explain.go).
type reason struct {
	kind reasonKind
	a, b int32
}

type reasonKind uint8

const (
	byDecision reasonKind = iota
	byClause              // a: clause
	byEdge                // a: edge
	byGap                 // a: edge whose condition fails, b: number on its side from
	byStored              // a, b: range of the reason pool
	byTable               // a: propagator, b: pair of task and kind, packed; the point follows from the literal
)

// set makes a literal true for a reason. It returns false, with the conflict
// filled in, if the literal is false.
func (e *Engine) set(l Lit, r reason) bool {
	if e.bound[l.Side] >= l.Min {
		return true
	}
	if e.bound[l.Side^1] > -l.Min {
		e.conflict = e.unfold(e.conflict[:0], l, r, int32(len(e.trail)))
		e.conflict = append(e.conflict, l.Not())
		return false
	}
	e.trail = append(e.trail, event{
		side: l.Side, old: e.bound[l.Side], new: l.Min,
		prev: e.last[l.Side], level: int32(len(e.levels)), reason: r,
	})
	e.last[l.Side] = int32(len(e.trail) - 1)
	e.bound[l.Side] = l.Min
	return true
}

// setStored makes a literal true because the given literals hold. The slice
// is copied.
func (e *Engine) setStored(l Lit, because []Lit) bool {
	if e.bound[l.Side] >= l.Min {
		return true
	}
	if e.bound[l.Side^1] > -l.Min {
		e.conflict = append(e.conflict[:0], because...)
		e.conflict = append(e.conflict, l.Not())
		return false
	}
	from := int32(len(e.reasonPool))
	e.reasonPool = append(e.reasonPool, because...)
	return e.set(l, reason{byStored, from, int32(len(e.reasonPool))})
}

// decide opens a level with a literal.
func (e *Engine) decide(l Lit) {
	e.levels = append(e.levels, int32(len(e.trail)))
	e.set(l, reason{kind: byDecision})
}

// level is the number of open decisions.
func (e *Engine) level() int { return len(e.levels) }

// backTo undoes all levels above the given one.
func (e *Engine) backTo(level int) {
	if len(e.levels) <= level {
		return
	}
	e.backtracks++
	keep := e.levels[level]
	for i := int32(len(e.trail)) - 1; i >= keep; i-- {
		ev := &e.trail[i]
		v := Var(ev.side >> 1)
		if e.binary[v] {
			e.phase[v] = e.bound[2*v]
		}
		e.bound[ev.side] = ev.old
		e.last[ev.side] = ev.prev
		if ev.reason.kind == byStored {
			e.reasonPool = e.reasonPool[:ev.reason.a]
		}
		if len(e.atoms.parked[v]) > 0 {
			e.unpark(v)
		}
	}
	e.trail = e.trail[:keep]
	e.levels = e.levels[:level]
	e.head = int(keep)
	e.clearQueue()
}

// forget empties the trail at the root: what holds there needs no reason.
func (e *Engine) forget() {
	e.logRoot()
	for _, ev := range e.trail {
		e.last[ev.side] = -1
	}
	e.trail = e.trail[:0]
	e.reasonPool = e.reasonPool[:0]
	e.head = 0
}

// cause is the first event that made the literal true, or -1 if it holds at
// the root. The literal must be true.
func (e *Engine) cause(l Lit) int32 {
	i := e.last[l.Side]
	for i >= 0 && e.trail[i].old >= l.Min {
		i = e.trail[i].prev
	}
	return i
}
