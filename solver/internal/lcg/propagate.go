package lcg

// propagator is a constraint with a state of its own. It may run at any time;
// run deduces what it can and returns false with e.conflict filled in.
type propagator interface {
	run(e *Engine) bool
	// unfold gives the literals behind l, all true before the event at index
	// at; data is what the propagator stored with the reason.
	unfold(e *Engine, out []Lit, l Lit, data, at int32) []Lit
}

// Classes of cost: cheap propagators run first.
const (
	cheap = iota
	middling
	dear
)

// ring is a queue of propagators.
type ring struct {
	items []int32
	begin int
}

func (q *ring) push(p int32) { q.items = append(q.items, p) }

func (q *ring) pop() (int32, bool) {
	if q.begin == len(q.items) {
		q.items, q.begin = q.items[:0], 0
		return 0, false
	}
	q.begin++
	return q.items[q.begin-1], true
}

// wake says that a propagator depends on a side.
type wake struct {
	prop  int32
	class int32
}

// addPropagator registers p and the sides whose rise wakes it, and runs it
// once at the next propagation.
func (e *Engine) addPropagator(p propagator, class int, sides []Side) int32 {
	i := int32(len(e.props))
	e.props = append(e.props, p)
	e.queued = append(e.queued, false)
	for _, s := range sides {
		if s>>1 == 0 {
			continue
		}
		ws := e.wakes[s]
		if n := len(ws); n > 0 && ws[n-1].prop == i {
			continue
		}
		e.wakes[s] = append(ws, wake{i, int32(class)})
	}
	if class == dear {
		e.dears = append(e.dears, i)
	}
	e.enqueue(wake{i, int32(class)})
	return i
}

// wakeDear queues all dear propagators: a quick search may have slept through
// their wakes.
func (e *Engine) wakeDear() {
	for _, p := range e.dears {
		e.enqueue(wake{p, dear})
	}
}

func (e *Engine) enqueue(w wake) {
	if !e.queued[w.prop] {
		e.queued[w.prop] = true
		e.queue[w.class].push(w.prop)
	}
}

func (e *Engine) clearQueue() {
	for c := range e.queue {
		q := &e.queue[c]
		for _, p := range q.items[q.begin:] {
			e.queued[p] = false
		}
		q.items, q.begin = q.items[:0], 0
	}
}

// propagate runs to a fixed point, or until the run's events are spent. It
// returns false with the conflict filled in.
func (e *Engine) propagate() bool {
	for {
		if !e.propagateTrail() {
			e.clearQueue()
			return false
		}
		if e.spent() {
			return true
		}
		p, ok := e.nextPropagator()
		if !ok {
			return true
		}
		e.queued[p] = false
		if !e.props[p].run(e) {
			e.clearQueue()
			return false
		}
	}
}

// propagateTrail deals with all events: edges, clauses, then wakes.
func (e *Engine) propagateTrail() bool {
	for e.head < len(e.trail) && !e.spent() {
		side, old, new := e.trail[e.head].side, e.trail[e.head].old, e.trail[e.head].new
		e.head++
		e.Stats.Propagations++
		for _, w := range e.wakes[side] {
			e.enqueue(w)
		}
		if !e.propagateClauses(side, old, new) || !e.propagateEdges(side, old) {
			return false
		}
	}
	return true
}

// spent says that the run has propagated as many events as it may.
func (e *Engine) spent() bool { return e.Stats.Propagations >= e.lastEvent }

func (e *Engine) nextPropagator() (int32, bool) {
	for c := range e.queue {
		if c == dear && e.quick {
			break
		}
		if p, ok := e.queue[c].pop(); ok {
			return p, true
		}
	}
	return 0, false
}
