package network

import (
	"fmt"

	"plait.example/internal/practical"
	"plait.example/solver/problem"
)

// longest is more minutes than any wait or plan has: two days.
const longest = 2880

// serving makes a serve row of each dish: after all its steps, on a clean
// bench, cold before hot, all within the serving window.
func (n *network) serving() {
	for d := range n.practical.Dishes {
		dish := &n.practical.Dishes[d]
		a := n.add(job{part: partServe, row: dish.Letter + "/serve", dish: d, minutes: max(1, dish.Serve.Minutes)},
			[]problem.Use{n.inHands()}, n.hygiene(practical.ReadyToEat))
		n.serves = append(n.serves, a)
		for _, s := range n.lastSteps(d) {
			n.atLeast(problem.End(s.last), problem.Start(a), 0, "")
			if w := s.step.Wait; s.wait >= 0 && s.takeOut < 0 && w.Most > 0 {
				n.atMost(problem.Start(s.wait), problem.Start(a), w.Most, "wait-most/"+s.step.ID)
			}
		}
		n.servedFresh(d, a)
	}
	n.servingOrder()
}

// servedFresh has a dish served soon after the last of its last steps: that is,
// soon after at least one of them.
func (n *network) servedFresh(d, serve int) {
	dish := &n.practical.Dishes[d]
	if dish.Serve.Within <= 0 {
		return
	}
	fresh := problem.Choice{Demand: n.demand("within/"+dish.Letter, "",
		"%s is served at most %d minutes after it is ready", dish.Name, dish.Serve.Within)}
	for _, s := range n.freshSteps(d) {
		fresh.Any = append(fresh.Any, problem.Lag{From: problem.Start(serve), To: problem.End(s.last), Min: -dish.Serve.Within})
	}
	if len(fresh.Any) > 0 {
		n.problem.Choices = append(n.problem.Choices, fresh)
	}
}

// lastSteps are the steps of a dish that no other step waits for; set-up jobs
// count only where there is nothing else.
func (n *network) lastSteps(dish int) (last []*stepJobs) {
	var setUp []*stepJobs
	followed := map[string]bool{}
	for _, s := range n.order {
		for _, after := range s.step.After {
			followed[after.Step] = true
		}
	}
	for _, s := range n.order {
		switch {
		case s.dish != dish || followed[s.step.ID]:
		case s.step.SetUp:
			setUp = append(setUp, s)
		default:
			last = append(last, s)
		}
	}
	if len(last) == 0 {
		return setUp
	}
	return last
}

// freshSteps are the last steps that make a dish hot, if any do, else all last steps.
func (n *network) freshSteps(dish int) []*stepJobs {
	last := n.lastSteps(dish)
	var hot []*stepJobs
	for _, s := range last {
		if w := s.step.Wait; w != nil && cooks(w.Place) {
			hot = append(hot, s)
			continue
		}
		for _, k := range s.step.Uses {
			if k == practical.Ring || k == practical.GrillPan {
				hot = append(hot, s)
				break
			}
		}
	}
	if len(hot) > 0 {
		return hot
	}
	return last
}

// servingOrder: cold first, hot last, all inside the window.
func (n *network) servingOrder() {
	rank := map[practical.Heat]int{practical.Cold: 0, practical.AsIs: 1, practical.Hot: 2}
	window := n.practical.Rules.Window
	for i, a := range n.serves {
		for j, b := range n.serves {
			di, dj := n.practical.Dishes[i], n.practical.Dishes[j]
			if rank[di.Serve.Heat] < rank[dj.Serve.Heat] {
				n.atLeast(problem.End(a), problem.Start(b), 0,
					n.demand("serving-order", "", "cold dishes are served first and hot ones last"))
			}
			if i != j && window > 0 {
				n.atMost(problem.Start(a), problem.End(b), window,
					n.demand("serving-window", "", "all dishes are served within %d minutes", window))
			}
		}
	}
}

// washing puts wash-ups between the jobs: at most a set stretch apart, and not
// so close together that there is nothing to wash.
func (n *network) washing() {
	r := n.practical.Rules
	if r.WashEvery <= 0 || r.WashUp <= 0 {
		return
	}
	demand := n.demand("wash-up", "", "washing-up of %d minutes at least every %d minutes", r.WashUp, r.WashEvery)
	before, since := problem.Zero(), n.start
	length := n.allowed - n.start - r.CleanDown
	for i := range max(0, (length-1)/(r.WashEvery+r.WashUp)) {
		a := n.add(job{part: partWashUp, row: fmt.Sprintf("wash-up/%d", i+1), dish: -1, minutes: r.WashUp},
			[]problem.Use{n.inHands()}, nil)
		n.washUps = append(n.washUps, a)
		n.atLeast(before, problem.Start(a), since+r.WashEvery/2, demand)
		n.atMost(before, problem.Start(a), since+r.WashEvery, demand)
		n.beforeServing(a, demand)
		before, since = problem.End(a), 0
	}
}

// lastStretch binds the last wash-up on the way to the clean-down at the end.
// It bears a name of its own, since a practical that overruns needs more
// wash-ups than fit.
func (n *network) lastStretch(clean int) {
	if len(n.washUps) == 0 {
		return
	}
	n.atMost(problem.End(n.washUps[len(n.washUps)-1]), problem.Start(clean), n.practical.Rules.WashEvery,
		n.demand(lastStretch, "", "the last wash-up comes at most %d minutes before the clean-down", n.practical.Rules.WashEvery))
}

const lastStretch = "wash-up/last"

// beforeServing keeps a wash-up on the way out of the serving at the end.
func (n *network) beforeServing(a int, demand string) {
	for _, s := range n.serves {
		n.atLeast(problem.End(a), problem.Start(s), 0, demand)
	}
}

// ending is tasting and the last clean-down, inside the clock or after it, and
// the moment when everything is done.
func (n *network) ending() {
	r := n.practical.Rules
	before := append([]int(nil), n.serves...)
	for _, last := range []struct {
		part    part
		minutes int
		inside  bool
		words   string
	}{
		{partTasting, r.Tasting, r.TastingInside, "tasting is inside the clock"},
		{partClean, r.CleanDown, r.CleanInside, "the last clean-down is inside the clock"},
	} {
		if last.minutes <= 0 {
			continue
		}
		j := job{part: last.part, row: string(last.part), dish: -1, minutes: last.minutes}
		if !last.inside {
			n.afterwards = append(n.afterwards, j)
			continue
		}
		a := n.add(j, []problem.Use{n.inHands()}, nil)
		for _, b := range before {
			n.atLeast(problem.End(b), problem.Start(a), 0, n.demand(string(last.part), "", "%s", last.words))
		}
		before = []int{a}
		if last.part == partClean {
			n.lastStretch(a)
		}
	}
	n.finish = n.add(job{part: partFinish, dish: -1}, nil, nil)
	for a := range n.jobs[:n.finish] {
		n.atLeast(problem.End(a), problem.Start(n.finish), 0, "")
	}
}

// clock keeps set-up jobs before the start, everything else after it, and the
// finish inside the time allowed.
func (n *network) clock() {
	for _, s := range n.order {
		if s.step.SetUp {
			end := s.hands
			if s.putIn >= 0 {
				end = s.putIn
			}
			if end < 0 {
				end = s.first
			}
			n.atMost(problem.Zero(), problem.End(end), n.start, "")
			continue
		}
		n.atLeast(problem.Zero(), problem.Start(s.first), n.start, "")
	}
	ready := 0 // the first activity added
	for _, s := range n.order {
		n.atLeast(problem.End(ready), problem.Start(s.first), 0, "")
	}
	n.atMost(problem.Zero(), problem.End(n.finish), n.allowed,
		n.demand("finish", "", "everything is done by %s", n.clockWords(n.at(n.allowed))))
}

// horizon is a time by which anything that can be planned can be planned.
func (n *network) horizon() {
	n.problem.Horizon = min(longest, max(2*n.allowed, n.allowed+600))
	for i := range n.problem.Activities {
		a := &n.problem.Activities[i]
		a.MaxDuration = min(a.MaxDuration, n.problem.Horizon)
	}
}

// pins hold rows where the user put them.
func (n *network) pins() {
	rows := map[string]int{}
	for a, j := range n.jobs {
		if j.row != "" {
			rows[j.row] = a
		}
	}
	for _, pin := range n.practical.Pins {
		a, known := rows[pin.Row]
		if !known {
			continue // a turn of the oven's dial or a clean-down: it follows the rest
		}
		if pin.At != nil {
			demand := n.demand("pin/"+pin.Row, n.jobs[a].stepID(), "%s is pinned to %s", n.jobWords(a), n.clockWords(*pin.At))
			n.exactly(problem.Zero(), problem.Start(a), n.minute(*pin.At), demand)
		}
		if b, known := rows[pin.After]; known {
			demand := n.demand("pin/"+pin.Row, n.jobs[a].stepID(), "%s is pinned after %s", n.jobWords(a), n.jobWords(b))
			n.atLeast(problem.End(b), problem.Start(a), 0, demand)
		}
	}
}

func (j job) stepID() string {
	if j.step == nil {
		return ""
	}
	return j.step.ID
}
