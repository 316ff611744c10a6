package network

import (
	"plait.example/solver/problem"
)

// orderKept is the problem with every choice made as in a solution: what shares
// a resource or a state keeps its order, so that only lags are left.
func (n *network) orderKept(s *problem.Solution) *temporal {
	nodes := 1 + 2*len(n.problem.Activities) + len(s.Changes)
	t := &temporal{edges: make([][]edge, nodes), earliest: make([]int, nodes)}
	for i := range t.earliest {
		t.earliest[i] = -1
	}
	for a, activity := range n.problem.Activities {
		t.add(0, startNode(a), 0)
		t.add(startNode(a), endNode(a), activity.MinDuration)
		t.add(endNode(a), startNode(a), -activity.MaxDuration)
	}
	for _, l := range n.problem.Lags {
		t.lag(l)
	}
	for _, c := range n.problem.Choices {
		for _, l := range c.Any {
			if s.Time(l.To) >= s.Time(l.From)+l.Min {
				t.lag(l)
				break
			}
		}
	}
	n.keepResources(t, s)
	n.keepStates(t, s)
	return t
}

func (t *temporal) lag(l problem.Lag) { t.add(node(l.From), node(l.To), l.Min) }

func node(p problem.Point) int {
	switch {
	case p.Activity == problem.Origin:
		return 0
	case p.End:
		return endNode(p.Activity)
	default:
		return startNode(p.Activity)
	}
}

// usage is one occupation of a resource: an activity's or a change's.
// Of the hands, cook is whose they are (0: the only cook's).
type usage struct{ resource, from, until, start, end, work, cook int }

// keepResources keeps apart what is apart on each resource, closures included.
func (n *network) keepResources(t *temporal, s *problem.Solution) {
	var usages []usage
	for a, activity := range n.problem.Activities {
		if len(activity.Modes) == 0 || s.Start[a] == s.End[a] {
			continue
		}
		for _, u := range activity.Modes[s.Mode[a]].Uses {
			usages = append(usages, usage{u.Resource, s.Start[a], s.End[a], startNode(a), endNode(a), 0, n.cookFor(a)})
		}
	}
	named := map[int]string{}
	for id, i := range n.changeNames(s) {
		named[i] = id
	}
	for i, c := range s.Changes {
		work, _ := n.changeCost(s, i)
		for _, u := range n.problem.States[c.State].Uses {
			if work > 0 {
				usages = append(usages, usage{u.Resource, c.At, c.At + work, n.changeNode(i), n.changeNode(i), work, n.cookOf[named[i]]})
			}
		}
	}
	for _, a := range usages {
		for _, b := range usages {
			two := a.resource == n.hands && a.cook != b.cook // each cook's hands are a line of their own
			if a.resource == b.resource && a.until <= b.from && !two {
				t.add(a.end, b.start, a.work)
			}
		}
		for _, c := range n.problem.Resources[a.resource].Closures {
			if a.until <= c.From {
				t.add(a.end, 0, a.work-c.From)
			} else if a.from >= c.Until {
				t.add(0, a.start, c.Until)
			}
		}
	}
}

// cookFor is whose hands an activity is in. A wait that must be watched is with
// the cook who put it in.
func (n *network) cookFor(activity int) int {
	j := n.jobs[activity]
	if j.part == partWait {
		putIn := n.steps[j.step.ID].putIn
		if putIn < 0 {
			return 0 // on the side, in nobody's hands
		}
		return n.cookOf[n.jobs[putIn].row]
	}
	return n.cookOf[j.row]
}

// keepStates keeps every change after the needs before it and before those after it.
func (n *network) keepStates(t *temporal, s *problem.Solution) {
	for i, c := range s.Changes {
		work, settle := n.changeCost(s, i)
		t.add(0, n.changeNode(i), n.problem.States[c.State].ChangeFrom)
		for a := range n.problem.Activities {
			if !n.needsState(a, s.Mode[a], c.State) {
				continue
			}
			if s.Start[a] >= c.At {
				t.add(n.changeNode(i), startNode(a), work+settle)
			} else {
				t.add(endNode(a), n.changeNode(i), 0)
			}
		}
		for j := range s.Changes[:i] {
			if s.Changes[j].State == c.State {
				before, _ := n.changeCost(s, j)
				t.add(n.changeNode(j), n.changeNode(i), before)
			}
		}
	}
}
