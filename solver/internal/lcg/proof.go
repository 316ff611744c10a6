package lcg

// Log passes to the caller every clause that the engine comes to know without
// being told: each learnt clause as it is learnt, and each bound at the root as
// it is put away, in an order in which each follows from the constraints and
// from those before it. An empty clause is a refutation. Both slices are valid
// during the call only. Without a caller nothing is written and nothing kept.
func (e *Engine) Log(to func(clause []Lit)) { e.onLearn, e.logged = to, to != nil }

// logRoot tells the bounds on the trail, which are those of the root.
func (e *Engine) logRoot() {
	if !e.logged {
		return
	}
	for _, ev := range e.trail {
		if ev.level == 0 {
			e.onLearn([]Lit{{ev.side, ev.new}})
		}
	}
}

// logRefuted tells the bounds at the root, then that they contradict each other.
func (e *Engine) logRefuted() {
	if e.logged {
		e.logRoot()
		e.onLearn(nil)
	}
}
