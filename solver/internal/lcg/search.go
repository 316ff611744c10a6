package lcg

// Outcome is how a search ended.
type Outcome int

// The four ends of a search.
const (
	Found   Outcome = iota // every variable that Branch cares for is decided
	Refuted                // no solution at all
	Failed                 // no solution under the assumptions
	Stopped                // a limit
)

// Limits and guidance of one search.
type Search struct {
	Assume    []Lit               // made true first, in order
	Conflicts int64               // greatest number of conflicts; 0: none
	Events    int64               // greatest number of events propagated; 0: none
	Branch    func() (Lit, bool)  // the next decision; false: all decided
	Stop      func() bool         // asked now and then; may be nil
	Restart   func(run int) int64 // conflicts until restart number run+1
	Quick     bool                // leave dear propagators out: weaker, not wrong
}

// Run searches until a solution, a refutation or a limit. After Found the
// bounds show the solution until the next call that changes the engine.
// Learnt clauses stay, whatever was assumed: they follow from the constraints.
func (e *Engine) Run(s Search) Outcome {
	e.backTo(0)
	if e.broken {
		return Refuted
	}
	e.quick, e.assumed = s.Quick, len(s.Assume)
	e.wakeDear()
	begin := e.Stats.Conflicts
	e.lastEvent = 1 << 62
	if s.Events > 0 {
		e.lastEvent = e.Stats.Propagations + s.Events
	}
	run, runEnd := 0, begin+s.restartAfter(0)
	for {
		if !e.propagate() {
			e.Stats.Conflicts++
			if !e.resolve() {
				e.broken = true
				e.logRefuted()
				return Refuted
			}
			continue
		}
		done := e.Stats.Conflicts
		if s.Conflicts > 0 && done-begin >= s.Conflicts || s.Stop != nil && e.ask(s.Stop) || e.full || e.spent() {
			e.backTo(0)
			return Stopped
		}
		if e.level() == 0 && len(e.trail) > 0 {
			e.forget()
		}
		if done >= runEnd || e.crowded() {
			run++
			runEnd = done + s.restartAfter(run)
			e.restart()
			continue
		}
		l, outcome, end := e.next(&s)
		if end {
			return outcome
		}
		e.Stats.Decisions++
		e.decide(l)
	}
}

// Reset undoes all decisions: the bounds are again those proved at the root.
func (e *Engine) Reset() { e.backTo(0) }

// restartAfter is the number of conflicts of a run.
func (s *Search) restartAfter(run int) int64 {
	if s.Restart == nil {
		return 1 << 60
	}
	return s.Restart(run)
}

// ask calls stop once in a while.
func (e *Engine) ask(stop func() bool) bool {
	e.asked++
	return e.asked%64 == 0 && stop()
}

// next is the literal to decide: assumptions first, then the branching.
func (e *Engine) next(s *Search) (Lit, Outcome, bool) {
	for e.level() < len(s.Assume) {
		l := s.Assume[e.level()]
		if e.Fails(l) {
			e.blame(l)
			e.backTo(0)
			return l, Failed, true
		}
		if !e.Holds(l) {
			return l, 0, false
		}
		e.levels = append(e.levels, int32(len(e.trail)))
	}
	l, more := s.Branch()
	return l, Found, !more
}

// resolve learns from the conflict and jumps back. False: refuted.
func (e *Engine) resolve() bool {
	back := e.analyze()
	if back < 0 {
		return false
	}
	e.backTo(back)
	if !e.learn() {
		return false
	}
	e.atoms.decay()
	e.clauseUp /= 0.999
	return true
}

func (e *Engine) restart() {
	e.Stats.Restarts++
	e.backTo(0)
	if e.learnts > e.learntMax || e.crowded() {
		e.reduce()
		e.learntMax += 100
		e.full = e.memory > 0 && e.Size() > e.memory-e.memory/8 // it would forget again and again
	}
}

// Luby is the n-th restart length of M. Luby, A. Sinclair, D. Zuckerman
// (1993): 1 1 2 1 1 2 4 ..., n from 0.
func Luby(n int) int64 {
	size, length := 1, int64(1)
	for size < n+1 {
		size = 2*size + 1
		length *= 2
	}
	for size-1 != n {
		size = (size - 1) / 2
		length /= 2
		n %= size
	}
	return length
}
