package lcg

// unfold appends to out true literals that together imply l, all of them made
// true before the event at index at. l may be weaker than what the event set.
func (e *Engine) unfold(out []Lit, l Lit, r reason, at int32) []Lit {
	switch r.kind {
	case byClause:
		e.reward(r.a)
		for _, k := range e.lits(r.a) {
			if k.Side != l.Side {
				out = append(out, k.Not())
			}
		}
	case byEdge:
		d := &e.edges[r.a]
		out = append(out, Lit{d.from, l.Min - d.weight}, d.when)
	case byGap:
		d := &e.edges[r.a]
		out = append(out, Lit{d.from, r.b}, Lit{d.to ^ 1, 1 - r.b - d.weight})
	case byStored:
		out = append(out, e.reasonPool[r.a:r.b]...)
	case byTable:
		out = e.props[r.a].unfold(e, out, l, r.b, at)
	}
	return out
}
