package lcg

// Core is a part of the last run's assumptions that cannot hold together, when
// the run ended as Failed. It is valid until the next run.
func (e *Engine) Core() []Lit { return e.core }

// blame finds the assumptions behind the failure of one of them: the reasons
// of its negation, followed back to decisions, all of which are assumptions.
func (e *Engine) blame(failed Lit) {
	e.core = append(e.core[:0], failed)
	e.markStart()
	e.stack = append(e.stack[:0], failed.Not())
	for len(e.stack) > 0 {
		l := e.stack[len(e.stack)-1]
		e.stack = e.stack[:len(e.stack)-1]
		c := e.cause(l)
		if c < 0 || e.trail[c].level == 0 || e.shown[c] != 0 {
			continue
		}
		e.settle(c, 1)
		whole := Lit{l.Side, e.trail[c].new}
		if e.trail[c].reason.kind == byDecision {
			e.core = append(e.core, whole)
			continue
		}
		e.stack = e.unfold(e.stack, whole, e.trail[c].reason, c)
	}
	e.markClear()
}
