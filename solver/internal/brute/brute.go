// Package brute finds the best schedule of a tiny problem by trying them all
// and asking the judge. It is support for tests: nothing but a test may import
// it, and it must know nothing of the search that it is held against.
//
// It takes time of about horizon to the power of the number of activities:
// five activities on a horizon of ten are a second's work.
package brute

import (
	"slices"

	"plait.example/solver/problem"
	"plait.example/solver/verify"
)

// Best is the least value of the first objective of p (the makespan if it has
// none), and whether p has a schedule at all. It panics if p is not valid.
func Best(p *problem.Problem) (value int, found bool) {
	first := *p
	first.Objectives = objectives(p)[:1]
	values, _, found := Lexicographic(&first)
	if !found {
		return 0, false
	}
	return values[0], true
}

// Lexicographic is a schedule of p that no other beats, with the values of its
// objectives in order of importance. It panics if p is not valid.
func Lexicographic(p *problem.Problem) (values []int, s *problem.Solution, found bool) {
	if err := p.Validate(); err != nil {
		panic("brute: " + err.Error())
	}
	n := len(p.Activities)
	e := enumeration{p: p, objectives: objectives(p)}
	e.now = problem.Solution{Start: make([]int, n), End: make([]int, n), Mode: make([]int, n)}
	first := e.objectives[0]
	e.onlyMakespan = len(e.objectives) == 1 && first.Makespan &&
		len(first.Terms)+len(first.Changes)+len(first.Switches)+len(first.Soft) == 0
	e.due = make([][]problem.Lag, n)
	for _, l := range p.Lags {
		if last := max(l.From.Activity, l.To.Activity); last != problem.Origin {
			e.due[last] = append(e.due[last], l)
		}
	}
	e.activity(0)
	return e.values, e.best, e.best != nil
}

func objectives(p *problem.Problem) []problem.Objective {
	if len(p.Objectives) == 0 {
		return []problem.Objective{{Makespan: true}}
	}
	return p.Objectives
}

type enumeration struct {
	p            *problem.Problem
	objectives   []problem.Objective
	onlyMakespan bool
	due          [][]problem.Lag // the lags that can be told once activity i is placed
	now          problem.Solution
	values       []int
	best         *problem.Solution
}

// activity tries every place for activity i and those after it.
func (e *enumeration) activity(i int) {
	if i == len(e.p.Activities) {
		e.state(0)
		return
	}
	a := e.p.Activities[i]
	for start := 0; start+a.MinDuration <= e.p.Horizon; start++ {
		for end := start + a.MinDuration; end <= min(start+a.MaxDuration, e.p.Horizon); end++ {
			e.now.Start[i], e.now.End[i] = start, end
			if e.hopeless(i) {
				continue
			}
			for m := range max(1, len(a.Modes)) {
				e.now.Mode[i] = m
				e.activity(i + 1)
			}
		}
	}
}

// hopeless says that no places for the activities after i can help.
func (e *enumeration) hopeless(i int) bool {
	if e.onlyMakespan && e.best != nil && e.now.End[i] >= e.values[0] {
		return true
	}
	return slices.ContainsFunc(e.due[i], func(l problem.Lag) bool {
		return e.now.Time(l.To) < e.now.Time(l.From)+l.Min
	})
}

// need is a stretch over which a state must stand at one of levels.
type need struct {
	from, until int
	levels      []int
}

// state tries every row of changes for state k and those after it.
func (e *enumeration) state(k int) {
	if k == len(e.p.States) {
		e.judge()
		return
	}
	var needs []need
	for i, a := range e.p.Activities {
		if len(a.Modes) == 0 {
			continue
		}
		for _, n := range a.Modes[e.now.Mode[i]].Needs {
			if n.State == k {
				from := e.now.Start[i]
				needs = append(needs, need{from, max(from+1, e.now.End[i]), n.Levels})
			}
		}
	}
	slices.SortStableFunc(needs, func(a, b need) int { return a.from - b.from })
	e.changes(k, needs, e.p.States[k].Initial, 0, 0)
}

// changes tries every way to serve needs, the state standing at level, in need
// until busy, and settled since free. There is at most one change before each
// need, since every change must serve one.
func (e *enumeration) changes(k int, needs []need, level, busy, free int) {
	if len(needs) == 0 {
		e.state(k + 1)
		return
	}
	st, n := e.p.States[k], needs[0]
	if slices.Contains(n.levels, level) {
		e.changes(k, needs[1:], level, max(busy, n.until), free)
	}
	for _, to := range n.levels {
		if to == level {
			continue
		}
		c := st.Change[level][to]
		first, last := max(busy, free, st.ChangeFrom), n.from-c.Work-c.Settle
		if c.Work == 0 || len(st.Uses) == 0 {
			first = max(first, last) // one place is as good as another
		}
		for at := first; at <= last; at++ {
			e.now.Changes = append(e.now.Changes, problem.StateChange{State: k, Level: to, At: at})
			e.changes(k, needs[1:], to, n.until, at+c.Work+c.Settle)
			e.now.Changes = e.now.Changes[:len(e.now.Changes)-1]
		}
	}
}

// judge keeps the schedule in hand if it is better than the best and right.
func (e *enumeration) judge() {
	values := make([]int, len(e.objectives))
	for i, o := range e.objectives {
		values[i] = verify.Value(e.p, o, &e.now)
	}
	if e.best != nil && slices.Compare(values, e.values) >= 0 {
		return
	}
	if len(verify.Check(e.p, &e.now)) > 0 {
		return
	}
	e.values = values
	e.best = &problem.Solution{
		Start: slices.Clone(e.now.Start), End: slices.Clone(e.now.End),
		Mode: slices.Clone(e.now.Mode), Changes: slices.Clone(e.now.Changes),
	}
}
