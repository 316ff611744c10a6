package network

import (
	"plait.example/internal/practical"
	"plait.example/internal/timeplan"
	"plait.example/solver/problem"
)

// waits writes the waits into the plan and says where each step's stands.
func (n *network) waits(s *problem.Solution, plan *timeplan.Plan) map[*stepJobs]int {
	index := map[*stepJobs]int{}
	for _, jobs := range n.order {
		if jobs.wait < 0 {
			continue
		}
		w := jobs.step.Wait
		wait := timeplan.Wait{
			Step: jobs.step.ID, Dish: n.practical.Dishes[jobs.dish].Letter, Place: w.Place,
			From: n.at(s.Start[jobs.wait]), Until: n.at(s.End[jobs.wait]),
			Least: w.Least, Most: w.Most, Attention: w.Attention, Every: w.Every,
		}
		if jobs.takeOut < 0 { // it stands until it is wanted
			wanted := n.wantedAt(jobs, s)
			if w.Most > 0 {
				wanted = min(wanted, s.Start[jobs.wait]+w.Most)
			}
			wait.Until = n.at(max(s.End[jobs.wait], wanted))
		}
		if o := n.ovenOf(jobs, s); o != nil {
			wait.Oven = n.ovenLabel(o)
			wait.Celsius = max(0, o.celsius[levelAt(n.problem, s, o.state, s.Start[jobs.wait])])
		}
		index[jobs] = len(plan.Waits)
		plan.Waits = append(plan.Waits, wait)
	}
	return index
}

// followers are the steps that come after a step.
func (n *network) followers(jobs *stepJobs) (next []*stepJobs) {
	for _, s := range n.order {
		for _, after := range s.step.After {
			if after.Step == jobs.step.ID {
				next = append(next, s)
				break
			}
		}
	}
	return next
}

// wantedAt is when the next job takes up food that stands on the side.
func (n *network) wantedAt(jobs *stepJobs, s *problem.Solution) int {
	next := n.followers(jobs)
	if len(next) == 0 {
		return s.Start[n.serves[jobs.dish]]
	}
	wanted := longest
	for _, f := range next {
		wanted = min(wanted, s.Start[f.first])
	}
	return wanted
}

// threads writes the strands of the plait: from row to row, by way of a place.
func (n *network) threads(s *problem.Solution, plan *timeplan.Plan, waits map[*stepJobs]int) {
	w := &weaver{network: n, plan: plan, solution: s, waits: waits, row: map[string]int{}}
	for i, r := range plan.Rows {
		w.row[r.ID] = i
	}
	for _, jobs := range n.order {
		w.step(jobs)
	}
	for d, serve := range n.serves {
		to := w.row[n.jobs[serve].row]
		for _, last := range n.lastSteps(d) {
			w.join(last, to)
		}
		w.add(timeplan.Thread{From: to, To: -1, Place: practical.Served, Wait: -1}, d, "")
	}
	w.setUp()
}

// setUp draws set-up jobs that no step names as what it follows to the first
// of their dish's rows after the clock has started: that is what they are for.
func (w *weaver) setUp() {
	for _, jobs := range w.network.order {
		if !jobs.step.SetUp || len(w.network.followers(jobs)) > 0 {
			continue
		}
		letter := w.network.practical.Dishes[jobs.dish].Letter
		for i, r := range w.plan.Rows {
			if r.Dish == letter && r.At >= w.plan.Start && len(r.Steps) > 0 {
				w.join(jobs, i)
				break
			}
		}
	}
}

// weaver holds what the strands are drawn from.
type weaver struct {
	network  *network
	plan     *timeplan.Plan
	solution *problem.Solution
	waits    map[*stepJobs]int
	row      map[string]int
}

func (w *weaver) add(t timeplan.Thread, dish int, component string) {
	t.Dish, t.Component = w.network.practical.Dishes[dish].Letter, component
	w.plan.Threads = append(w.plan.Threads, t)
}

// rowOf is the row of an activity, false where it has none.
func (w *weaver) rowOf(activity int) (int, bool) {
	if activity < 0 {
		return 0, false
	}
	i, known := w.row[w.network.jobs[activity].row]
	return i, known
}

// step draws a step's own pieces, and those from what it follows.
func (w *weaver) step(jobs *stepJobs) {
	hands, hasHands := w.rowOf(jobs.hands)
	putIn, hasPutIn := w.rowOf(jobs.putIn)
	takeOut, hasTakeOut := w.rowOf(jobs.takeOut)
	component := jobs.step.Component
	if hasHands && hasPutIn {
		w.add(timeplan.Thread{From: hands, To: putIn, Place: practical.AtHands, Wait: -1}, jobs.dish, component)
	}
	if hasPutIn && hasTakeOut {
		w.add(timeplan.Thread{From: putIn, To: takeOut, Place: jobs.step.Wait.Place, Wait: w.waits[jobs]}, jobs.dish, component)
	}
	first, known := hands, hasHands
	if !known {
		first, known = putIn, hasPutIn
	}
	if !known {
		return // no rows: the strand passes through it to the next step's
	}
	for _, after := range jobs.step.After {
		w.join(w.network.steps[after.Step], first)
	}
}

// join draws the piece from the last row of a step to a row. A step without
// rows hands on to what it follows, with its wait.
func (w *weaver) join(before *stepJobs, to int) {
	if w.joinRow(before, to, -1) {
		return
	}
	wait, has := w.waits[before]
	if !has {
		wait = -1
	}
	for _, after := range before.step.After {
		earlier := w.network.steps[after.Step]
		if !w.joinRow(earlier, to, wait) {
			w.join(earlier, to)
		}
	}
}

// joinRow draws from a step's last row, if it has one.
func (w *weaver) joinRow(before *stepJobs, to, wait int) bool {
	for _, activity := range []int{before.takeOut, before.putIn, before.hands} {
		from, known := w.rowOf(activity)
		if !known {
			continue
		}
		place := practical.AtSide
		if wait < 0 && before.wait >= 0 && before.takeOut < 0 {
			wait = w.waits[before]
		}
		if wait < 0 && w.plan.Rows[from].End() == w.plan.Rows[to].At {
			place = practical.AtHands
		}
		w.add(timeplan.Thread{From: from, To: to, Place: place, Wait: wait}, before.dish, before.step.Component)
		return true
	}
	return false
}
