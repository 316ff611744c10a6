package network

import (
	"slices"

	"plait.example/solver/problem"
	"plait.example/solver/verify"
)

// settle makes a solution as a cook would have it: dials turned no sooner than
// need be, and rows on five-minute marks, where that is asked for and can be
// had. What it changes is judged again; what the judge refuses is not kept.
func (n *network) settle(later *problem.Solution) *problem.Solution {
	if turned := n.turnLater(later); len(verify.Check(n.problem, turned)) == 0 {
		later = turned
	}
	if n.practical.Clock.Round != mark {
		return later
	}
	rows := n.rows(later)
	n.giveCooks(rows, later)
	if rounded := n.round(later, rows); rounded != nil && len(verify.Check(n.problem, rounded)) == 0 {
		return rounded
	}
	return later
}

// takeOutLater leaves food in the fridge, the freezer or the warm until shortly
// before its next job, as far as its longest wait, the hands and the aims allow.
// Food that cooks is left alone: it comes out when it is done.
func (n *network) takeOutLater(a *aimed, s *problem.Solution) *problem.Solution {
	s = a.plain(s)
	values := a.values(s)
	for _, jobs := range n.order {
		if jobs.takeOut < 0 || cooks(jobs.step.Wait.Place) {
			continue
		}
		out := jobs.takeOut
		for at := n.wantedAt(jobs, s) - n.jobs[out].minutes; at > s.Start[out]; at-- {
			moved := copySolution(s)
			moved.End[jobs.wait], moved.Start[out], moved.End[out] = at, at, at+n.jobs[out].minutes
			if len(verify.Check(n.problem, moved)) == 0 && slices.Compare(a.values(moved), values) <= 0 {
				s = moved
				break
			}
		}
	}
	return s
}

// turnLater moves the turns of ovens and grills as late as their loads and the
// hands allow, so that nothing heats for nothing.
func (n *network) turnLater(s *problem.Solution) *problem.Solution {
	moved := copySolution(s)
	for i := len(moved.Changes) - 1; i >= 0; i-- {
		c := &moved.Changes[i]
		if !n.isOven(c.State) {
			continue
		}
		work, settle := n.changeCost(moved, i)
		latest := n.firstNeed(moved, i) - work - settle
		for at := latest; at > c.At; at-- {
			if n.handsFree(moved, i, at, at+work) {
				c.At = at
				break
			}
		}
	}
	slices.SortStableFunc(moved.Changes, func(a, b problem.StateChange) int { return a.At - b.At })
	return moved
}

func copySolution(s *problem.Solution) *problem.Solution {
	return &problem.Solution{
		Start: slices.Clone(s.Start), End: slices.Clone(s.End),
		Mode: slices.Clone(s.Mode), Changes: slices.Clone(s.Changes),
	}
}

func (n *network) isOven(state int) bool {
	return slices.ContainsFunc(n.ovens, func(o ovenState) bool { return o.state == state })
}

// changeCost is what the i-th change takes, from the level that stood before it.
func (n *network) changeCost(s *problem.Solution, i int) (work, settle int) {
	c := s.Changes[i]
	change := n.problem.States[c.State].Change[levelBefore(n.problem, s, i)][c.Level]
	return change.Work, change.Settle
}

// firstNeed is when the i-th change's level is first needed.
func (n *network) firstNeed(s *problem.Solution, i int) int {
	c := s.Changes[i]
	first := n.problem.Horizon
	for a := range n.problem.Activities {
		if s.Start[a] >= c.At && n.needsState(a, s.Mode[a], c.State) {
			first = min(first, s.Start[a])
		}
	}
	if first == n.problem.Horizon {
		return c.At // nothing needs it: leave it where it is
	}
	return first
}

func (n *network) needsState(activity, mode, state int) bool {
	modes := n.problem.Activities[activity].Modes
	if len(modes) == 0 {
		return false
	}
	return slices.ContainsFunc(modes[mode].Needs, func(need problem.Need) bool { return need.State == state })
}

// handsFree says whether a pair of hands is idle over [from, until), the i-th change apart.
func (n *network) handsFree(s *problem.Solution, i, from, until int) bool {
	for at := from; at < until; at++ {
		if n.handsUsed(s, i, at) >= n.handsAt(at) {
			return false
		}
	}
	return true
}

func (n *network) handsUsed(s *problem.Solution, except, at int) (used int) {
	for a := range n.problem.Activities {
		if s.Start[a] <= at && at < s.End[a] {
			used += n.handsOfMode(a, s.Mode[a])
		}
	}
	for i, c := range s.Changes {
		if i == except {
			continue
		}
		if work, _ := n.changeCost(s, i); c.At <= at && at < c.At+work {
			used++
		}
	}
	return used
}

func (n *network) handsOfMode(activity, mode int) (amount int) {
	if modes := n.problem.Activities[activity].Modes; len(modes) > 0 {
		for _, u := range modes[mode].Uses {
			if u.Resource == n.hands {
				amount += u.Amount
			}
		}
	}
	return amount
}

// handsAt is how many pairs of hands there are at a time.
func (n *network) handsAt(at int) int {
	r := n.problem.Resources[n.hands]
	for _, c := range r.Closures {
		if c.From <= at && at < c.Until {
			return c.Left
		}
	}
	return r.Capacity
}
