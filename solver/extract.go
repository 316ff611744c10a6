package solver

import (
	"cmp"
	"slices"

	"plait.example/solver/problem"
)

// extract reads the solution that the engine stands at.
func (m *model) extract() *problem.Solution {
	n := len(m.p.Activities)
	s := &problem.Solution{Start: make([]int, n), End: make([]int, n), Mode: make([]int, n)}
	for i := range n {
		s.Start[i], s.End[i] = m.e.Min(m.start[i]), m.e.Min(m.end[i])
		for k, l := range m.mode[i] {
			if m.e.Holds(l) {
				s.Mode[i] = k
			}
		}
	}
	for k := range m.p.States {
		if m.instants[k] {
			s.Changes = append(s.Changes, m.row(k, s)...)
		} else {
			s.Changes = append(s.Changes, m.changes(k)...)
		}
	}
	slices.SortStableFunc(s.Changes, func(a, b problem.StateChange) int {
		return cmp.Or(cmp.Compare(a.At, b.At), cmp.Compare(a.State, b.State))
	})
	return s
}

// changes lists the changes of state k in order of time.
func (m *model) changes(k int) []problem.StateChange {
	var list []problem.StateChange
	for _, n := range m.needs[k] {
		if !m.e.Holds(n.leads) {
			continue
		}
		for l, lit := range n.level {
			if m.e.Holds(lit) {
				list = append(list, problem.StateChange{State: k, Level: l, At: m.e.Min(n.change)})
			}
		}
	}
	slices.SortStableFunc(list, func(a, b problem.StateChange) int { return cmp.Compare(a.At, b.At) })
	level := m.p.States[k].Initial
	return slices.DeleteFunc(list, func(c problem.StateChange) bool {
		same := c.Level == level
		level = c.Level
		return same
	})
}
