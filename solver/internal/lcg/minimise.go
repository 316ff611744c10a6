package lcg

// depthOfProof limits how far the redundancy of a literal is followed.
const depthOfProof = 12

// markStart readies the marks: shown[i] is set while event i is settled.
func (e *Engine) markStart() {
	for len(e.shown) < len(e.trail) {
		e.shown = append(e.shown, 0)
	}
	e.settled = e.settled[:0]
}

func (e *Engine) markClear() {
	for _, i := range e.settled {
		e.shown[i] = 0
	}
}

func (e *Engine) settle(at, what int32) {
	if e.shown[at] == 0 {
		e.settled = append(e.settled, at)
	}
	e.shown[at] = what
}

// followed says that the other required literals imply l, made true by the
// event c: every reason, followed back, ends at the root or in a literal
// required before the event root. That order keeps two literals from excusing
// each other; the caller asks for roots in order of the trail.
func (e *Engine) followed(l Lit, c, root int32, depth int) bool {
	r := e.trail[c].reason
	if r.kind == byDecision || depth == 0 {
		return false
	}
	base := len(e.stack)
	e.stack = e.unfold(e.stack, l, r, c)
	ok := true
	for i := base; i < len(e.stack) && ok; i++ {
		ok = e.implied(e.stack[i], root, depth)
	}
	e.stack = e.stack[:base]
	return ok
}

// Settled marks: an event is marked 1 if all that it set was shown to follow,
// 2 if not. The whole number of the event is shown, so that the mark serves
// any weaker literal.
func (e *Engine) implied(l Lit, root int32, depth int) bool {
	c := e.cause(l)
	if c < 0 || e.trail[c].level == 0 {
		return true
	}
	if at := e.needAt[l.Side]; at >= 0 && at < root && e.need[l.Side] >= l.Min {
		return true
	}
	switch e.shown[c] {
	case 1:
		return true
	case 2:
		return false
	}
	if e.followed(Lit{l.Side, e.trail[c].new}, c, root, depth-1) {
		e.settle(c, 1)
		return true
	}
	e.settle(c, 2)
	return false
}
