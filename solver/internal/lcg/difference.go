package lcg

// edge demands value(to) >= value(from) + weight while when holds. A
// difference x + c <= y is two edges: one for the lower bounds, one for the
// upper bounds.
type edge struct {
	from, to Side
	weight   int32
	when     Lit
}

// arc is an edge as its start sees it.
type arc struct {
	to     Side
	weight int32
	when   Lit
	edge   int32
}

// gate is an edge that a literal, once its side reaches guard, switches on.
type gate struct {
	guard int32
	edge  int32
}

// AddDifference demands x + c <= y. It holds always, or while the literal
// when holds; if it cannot hold, when becomes false.
func (e *Engine) AddDifference(x Term, c int, y Term, when Lit) {
	e.backTo(0)
	if e.Fails(when) {
		return
	}
	w := int32(c) + x.Add - y.Add
	if x.Var == y.Var {
		if w > 0 {
			e.AddClause(when.Not())
		}
		return
	}
	switch {
	case x.Var == 0: // y >= 1 + w
		e.AddClause(when.Not(), AtLeast(y.Var, int(1+w)))
		return
	case y.Var == 0: // x <= 1 - w
		e.AddClause(when.Not(), AtMost(x.Var, int(1-w)))
		return
	}
	e.addEdge(edge{Side(2 * x.Var), Side(2 * y.Var), w, when})
	e.addEdge(edge{Side(2*y.Var) + 1, Side(2*x.Var) + 1, w, when})
}

func (e *Engine) addEdge(d edge) {
	i := int32(len(e.edges))
	e.edges = append(e.edges, d)
	a := arc{d.to, d.weight, d.when, i}
	e.out[d.from] = append(e.out[d.from], a)
	if !e.Holds(d.when) {
		e.gates[d.when.Side] = append(e.gates[d.when.Side], gate{d.when.Min, i})
	}
	if !e.follow(&a, e.bound[d.from]) {
		e.broken = true
	}
}

// propagateEdges passes a side's bound along its edges.
func (e *Engine) propagateEdges(side Side, old int32) bool {
	arcs := e.out[side]
	now := e.bound[side]
	for i := range arcs {
		a := &arcs[i]
		v := now + a.weight
		if e.bound[a.to] >= v {
			continue
		}
		if !e.follow(a, now) {
			return false
		}
	}
	for _, g := range e.gates[side] {
		if g.guard > old && g.guard <= now {
			d := &e.edges[g.edge]
			l := Lit{d.to, e.bound[d.from] + d.weight}
			if !e.set(l, reason{byEdge, g.edge, 0}) {
				return false
			}
		}
	}
	return true
}

// follow applies one arc from the value of its start.
func (e *Engine) follow(a *arc, from int32) bool {
	switch {
	case e.Holds(a.when):
		return e.set(Lit{a.to, from + a.weight}, reason{byEdge, a.edge, 0})
	case from+a.weight > -e.bound[a.to^1]:
		return e.set(a.when.Not(), reason{byGap, a.edge, from})
	}
	return true
}
