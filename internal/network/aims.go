package network

import (
	"slices"

	"plait.example/internal/practical"
	"plait.example/internal/timeplan"
	"plait.example/solver"
	"plait.example/solver/problem"
	"plait.example/solver/verify"
)

// aim is one thing that a plan is made as good in as can be, and what that is
// worth.
type aim struct {
	name   timeplan.Aim
	goal   problem.Objective
	less   int   // the engine's value is so much above the one that is told
	effort int64 // greatest, in conflicts; 0: as much as there is
}

// Aims of which nobody is told.
const (
	aimStay  timeplan.Aim = "stay"
	aimTouch timeplan.Aim = "finishing touch"
)

func (a aim) told() bool { return a.name != aimStay && a.name != aimTouch }

// What the lesser aims are worth, in conflicts. Measured on the demonstration: its
// finish, its freshness and its oven are proved in 430; the rest together may
// take about as long again.
const (
	switchEffort = 300
	spreadEffort = 100
	orderEffort  = 100
	stayEffort   = 100
	touchEffort  = 150
)

// aims, the most important first: the earliest finish; hot food fresh at
// serving; few oven changes; few changes of dish; wash-ups apart; each dish's
// steps in the order of its recipe. A later aim never spoils an earlier one.
//
// That nothing is broken comes before all of them, and is no aim: every demand
// binds, and a practical that cannot meet all is answered with the demands that
// cannot hold together (see overrun), not with a plan that quietly breaks one.
//
// Where a plan from before an edit is given, rows that stay at its times and in
// its order come after all of that: the old plan decides between plans that
// are equally good, and never makes one worse. Last, as a finishing touch, food
// stands about as little as it can.
func (n *network) aims(p *problem.Problem, was *problem.Solution) (list []aim) {
	for _, a := range append(n.mainAims(), []aim{
		{name: timeplan.AimSwitches, goal: n.switches(p), less: 1, effort: switchEffort},
		{name: timeplan.AimWashUps, goal: n.spread(), effort: spreadEffort},
		{name: timeplan.AimOrder, goal: n.ownOrder(), effort: orderEffort},
		{name: aimStay, goal: n.stay(was), effort: stayEffort},
		{name: aimTouch, goal: n.standing(), effort: touchEffort},
	}...) {
		if !a.empty() {
			a.goal.Name = string(a.name)
			list = append(list, a)
		}
	}
	return list
}

// empty says that there is nothing to aim at.
func (a aim) empty() bool {
	g := a.goal
	return !g.Makespan && len(g.Terms)+len(g.Changes)+len(g.Switches)+len(g.Soft) == 0
}

// mainAims are those that are worth all the effort there is.
func (n *network) mainAims() []aim {
	return []aim{
		{name: timeplan.AimFinish, goal: problem.Objective{Makespan: true}},
		{name: timeplan.AimFresh, goal: n.freshness()},
		{name: timeplan.AimOven, goal: n.turns()},
	}
}

// mainObjectives puts the main aims into the network's own problem.
func (n *network) mainObjectives() {
	for _, a := range n.mainAims() {
		if !a.empty() {
			a.goal.Name = string(a.name)
			n.problem.Objectives = append(n.problem.Objectives, a.goal)
		}
	}
}

// aimed is a problem with the aims in it.
type aimed struct {
	problem *problem.Problem
	aims    []aim
	start   *problem.Solution // near which to begin, or nil
	dish    int               // the state of the dish in hand; that many states without it
}

// aim puts the aims into a copy of a problem of this network's activities.
func (n *network) aim(p *problem.Problem, before *timeplan.Plan) *aimed {
	a := &aimed{problem: problem.Without(p, nil), start: n.hint(before), dish: len(p.States)}
	a.problem.Objectives = nil
	a.aims = n.aims(a.problem, a.start)
	for _, aim := range a.aims {
		a.problem.Objectives = append(a.problem.Objectives, aim.goal)
	}
	return a
}

func (a *aimed) efforts() (list []int64) {
	for _, aim := range a.aims {
		list = append(list, aim.effort)
	}
	return list
}

// levels are what a search knows of the aims that people are told of.
func (a *aimed) levels(result solver.Result) (levels []timeplan.Level) {
	for k, l := range result.Levels {
		if aim := a.aims[k]; aim.told() {
			levels = append(levels, timeplan.Level{
				Aim: aim.name, Value: max(0, l.Value-aim.less), Bound: max(0, l.Bound-aim.less), Proved: l.Proved,
			})
		}
	}
	return levels
}

// plain is a solution without the dish in hand.
func (a *aimed) plain(s *problem.Solution) *problem.Solution {
	s = copySolution(s)
	s.Changes = slices.DeleteFunc(s.Changes, func(c problem.StateChange) bool { return c.State == a.dish })
	return s
}

// values are how good a solution without the dish in hand is in each aim but
// the finishing touch.
func (a *aimed) values(s *problem.Solution) (values []int) {
	s = a.inHand(s)
	for _, aim := range a.aims {
		if aim.name != aimTouch {
			values = append(values, verify.Value(a.problem, aim.goal, s))
		}
	}
	return values
}

// inHand is a solution with the dish in hand: it changes when a job of another
// dish begins.
func (a *aimed) inHand(s *problem.Solution) *problem.Solution {
	if a.dish == len(a.problem.States) {
		return s
	}
	type job struct{ at, dish int }
	var jobs []job
	for i, activity := range a.problem.Activities {
		if len(activity.Modes) == 0 {
			continue
		}
		for _, need := range activity.Modes[s.Mode[i]].Needs {
			if need.State == a.dish {
				jobs = append(jobs, job{s.Start[i], need.Levels[0]})
			}
		}
	}
	slices.SortStableFunc(jobs, func(x, y job) int { return x.at - y.at })
	with, level := copySolution(s), 0
	for _, j := range jobs {
		if j.dish != level {
			with.Changes = append(with.Changes, problem.StateChange{State: a.dish, Level: j.dish, At: j.at})
			level = j.dish
		}
	}
	return with
}

// freshness is the minutes that hot food stands before it is served.
func (n *network) freshness() (fresh problem.Objective) {
	for d, dish := range n.practical.Dishes {
		if dish.Serve.Heat != practical.Hot {
			continue
		}
		for _, s := range n.freshSteps(d) {
			fresh.Terms = append(fresh.Terms, span(problem.End(s.last), problem.Start(n.serves[d]))...)
		}
	}
	return fresh
}

// turns is how often the dial of an oven or a grill is turned.
func (n *network) turns() (turns problem.Objective) {
	for _, o := range n.ovens {
		turns.Changes = append(turns.Changes, o.state)
	}
	return turns
}

// switches is how often the cook goes from one dish to another: a state of no
// working time, whose levels are the dishes and which every job of a dish needs.
// Jobs of no dish (washing up, clean-downs, the dial) stay out. Of a pair it is
// no aim of the search: who does what is shared out when the times stand, with
// as few changes as those times allow (see cooks).
func (n *network) switches(p *problem.Problem) (count problem.Objective) {
	dishes := len(n.practical.Dishes)
	if n.practical.Cooks > 1 || dishes < 2 {
		return count
	}
	inHand := problem.State{Name: "dish in hand", Levels: []string{"none yet"}}
	for _, d := range n.practical.Dishes {
		inHand.Levels = append(inHand.Levels, d.Letter)
	}
	for range inHand.Levels {
		inHand.Change = append(inHand.Change, make([]problem.Change, len(inHand.Levels)))
	}
	state := len(p.States)
	p.States = append(p.States, inHand)
	for a, j := range n.jobs {
		modes := p.Activities[a].Modes
		for m := range modes {
			if j.dish >= 0 && n.handsOfMode(a, m) > 0 {
				modes[m].Needs = append(modes[m].Needs, problem.Need{State: state, Levels: []int{j.dish + 1}})
			}
		}
	}
	count.Switches = []int{state}
	return count
}

// spread is points for wash-ups that are close together, the serving or the
// clean-down at the end counting as the last: 1 for a gap below three quarters
// of the longest stretch of work without one, 2 more below five eighths, 8 more
// below a half. A judgement: so many small gaps are dearer than even ones, and
// none falls in a heap with the end.
func (n *network) spread() (close problem.Objective) {
	every := n.practical.Rules.WashEvery
	from, since := problem.Zero(), n.start
	apart := func(to int) {
		for _, gap := range []struct{ minutes, price int }{{every / 2, 8}, {every * 5 / 8, 2}, {every * 3 / 4, 1}} {
			lag := problem.Lag{From: from, To: problem.Start(to), Min: since + gap.minutes}
			close.Soft = append(close.Soft, problem.Soft{Any: []problem.Lag{lag}, Weight: gap.price})
		}
		from, since = problem.End(to), 0
	}
	for _, a := range n.washUps {
		apart(a)
	}
	if len(n.washUps) > 0 {
		apart(n.lastOfAll())
	}
	return close
}

// lastOfAll is the clean-down, else the finish.
func (n *network) lastOfAll() int {
	for a, j := range n.jobs {
		if j.part == partClean {
			return a
		}
	}
	return n.finish
}

// ownOrder is steps of a dish that are begun before the one above them. The
// order of the steps is all that a practical states of the learner's own order;
// that of the dishes is only how they are listed.
func (n *network) ownOrder() (turned problem.Objective) {
	var above *stepJobs
	for _, s := range n.order {
		if above != nil && above.dish == s.dish && above.step.SetUp == s.step.SetUp {
			lag := problem.Lag{From: problem.End(above.first), To: problem.Start(s.first)}
			turned.Soft = append(turned.Soft, problem.Soft{Any: []problem.Lag{lag}, Weight: 1})
		}
		above = s
	}
	return turned
}

// stay is what an edit moved for nothing: a row that has left its time counts
// one, a row that is no longer after the one it was after counts two.
func (n *network) stay(was *problem.Solution) (moved problem.Objective) {
	if was == nil {
		return moved
	}
	rows := n.rowsInOrder(was)
	for i, a := range rows {
		at := was.Start[a]
		moved.Soft = append(moved.Soft,
			problem.Soft{Any: []problem.Lag{{From: problem.Zero(), To: problem.Start(a), Min: at}}, Weight: 1},
			problem.Soft{Any: []problem.Lag{{From: problem.Start(a), To: problem.Zero(), Min: -at}}, Weight: 1})
		if i > 0 {
			lag := problem.Lag{From: problem.End(rows[i-1]), To: problem.Start(a)}
			moved.Soft = append(moved.Soft, problem.Soft{Any: []problem.Lag{lag}, Weight: 2})
		}
	}
	return moved
}

// rowsInOrder are the activities that are rows, in the order of a solution.
func (n *network) rowsInOrder(s *problem.Solution) (rows []int) {
	for a, j := range n.jobs {
		if j.row != "" && j.minutes > 0 {
			rows = append(rows, a)
		}
	}
	slices.SortStableFunc(rows, func(a, b int) int { return s.Start[a] - s.Start[b] })
	return rows
}

// standing is minutes in which food stands about between its steps, or stays
// longer where it cooks.
func (n *network) standing() (standing problem.Objective) {
	for _, s := range n.order {
		for _, after := range s.step.After {
			standing.Terms = append(standing.Terms, span(problem.End(n.steps[after.Step].last), problem.Start(s.first))...)
		}
		if s.takeOut >= 0 && cooks(s.step.Wait.Place) {
			standing.Terms = append(standing.Terms, span(problem.Start(s.wait), problem.End(s.wait))...)
		}
	}
	return standing
}

// span is the minutes from one point to another.
func span(from, to problem.Point) []problem.Term {
	return []problem.Term{{Point: from, Weight: -1}, {Point: to, Weight: 1}}
}
