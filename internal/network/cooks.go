package network

import (
	"slices"
	"strings"

	"plait.example/internal/practical"
	"plait.example/internal/timeplan"
	"plait.example/solver/problem"
)

// giveCooks writes into the rows which of a pair does each.
func (n *network) giveCooks(rows []timeplan.Row, s *problem.Solution) {
	if n.practical.Cooks < 2 {
		return
	}
	if n.cookOf == nil {
		n.cookOf = n.cooks(rows, s)
	}
	for i := range rows {
		rows[i].Cook = n.cookOf[rows[i].ID]
	}
}

// cooks shares the rows of a pair out, by their names, so that the two go from
// one dish to another as seldom as these times allow, and then so that a dish
// passes from one to the other as seldom as can be. Two suffice, since no more
// than two jobs are ever at once (interval graphs are perfect). A cook who stays
// with a pan is busy from putting it on to taking it off.
//
// It goes down the rows with every different way to stand so far and the best
// way to come there (dynamic programming): ways are alike if each cook is as
// long busy and had the same dish last, and if each dish was last with the same cook.
func (n *network) cooks(rows []timeplan.Row, s *problem.Solution) map[string]int {
	ways := []sharing{{had: strings.Repeat("-", len(n.practical.Dishes))}}
	for i, r := range rows {
		if r.Action == timeplan.Rest || r.Minutes == 0 {
			continue
		}
		if next := n.shareOut(ways, rows, i, s); len(next) > 0 {
			ways = next
		} // else more jobs than cooks: the judge will say so
	}
	best := slices.MinFunc(ways, func(a, b sharing) int { return a.cost - b.cost })
	cookOf := map[string]int{}
	for w := &best; w.before != nil; w = w.before {
		cookOf[rows[w.row].ID] = w.cook + 1
	}
	return cookOf
}

// sharing is a way to share out the rows down to one.
type sharing struct {
	standing
	had    string // by dish: who had it last, '-' for nobody
	cost   int
	row    int // the last row shared out
	cook   int // whose it is, from 0
	before *sharing
}

// standing is how the two stand.
type standing struct {
	free [2]practical.TimeOfDay // when each can begin something
	dish [2]string              // which each had last
	pan  [2]string              // the step that each stays with
}

// What a way costs: a change of dish, and a dish that passes to the other.
const (
	changeCosts = 1000
	passCosts   = 1
)

// shareOut gives row i to either cook, in each of the ways; of those that then
// stand alike the cheapest is kept.
func (n *network) shareOut(ways []sharing, rows []timeplan.Row, i int, s *problem.Solution) (next []sharing) {
	type key struct {
		standing
		had string
	}
	place := map[key]int{}
	for k := range ways {
		for cook := range 2 {
			w, can := n.given(&ways[k], rows[i], cook, s)
			if !can {
				continue
			}
			w.row = i
			at, known := place[key{w.standing, w.had}]
			switch {
			case !known:
				place[key{w.standing, w.had}] = len(next)
				next = append(next, w)
			case w.cost < next[at].cost:
				next[at] = w
			}
		}
	}
	return next
}

// given is a way with one row more, a cook's; false if the cook cannot do it.
func (n *network) given(before *sharing, r timeplan.Row, cook int, s *problem.Solution) (sharing, bool) {
	w := *before
	w.cook, w.before = cook, before
	stays := n.stays(r)
	switch {
	case stays != nil && r.Action == timeplan.TakeOut:
		if w.pan[cook] != stays.step.ID {
			return w, false
		}
		w.pan[cook] = ""
	case w.free[cook] > r.At:
		return w, false
	}
	w.free[cook] = r.End()
	if stays != nil && r.Action == timeplan.PutIn {
		w.pan[cook], w.free[cook] = stays.step.ID, n.at(s.End[stays.takeOut])
	}
	for c := range w.free {
		w.free[c] = max(w.free[c], r.At) // from here on all that is over is alike
	}
	if d := slices.IndexFunc(n.practical.Dishes, func(d practical.Dish) bool { return d.Letter == r.Dish }); d >= 0 {
		if w.dish[cook] != "" && w.dish[cook] != r.Dish {
			w.cost += changeCosts
		}
		me := byte('0' + cook)
		if w.had[d] != '-' && w.had[d] != me {
			w.cost += passCosts
		}
		w.dish[cook], w.had = r.Dish, w.had[:d]+string(me)+w.had[d+1:]
	}
	return w, true
}

// pairLevels are the levels with a pair's changes of dish among them, in the
// order of the aims.
func (n *network) pairLevels(levels []timeplan.Level, rows []timeplan.Row) []timeplan.Level {
	if n.practical.Cooks < 2 || len(n.practical.Dishes) < 2 {
		return levels
	}
	at := 0
	for at < len(levels) && (levels[at].Aim == timeplan.AimFinish || levels[at].Aim == timeplan.AimFresh || levels[at].Aim == timeplan.AimOven) {
		at++
	}
	return slices.Insert(slices.Clone(levels), at, n.pairSwitches(rows))
}

// pairSwitches is what is known of how often a pair goes from one dish to
// another: each cook's changes, and that every dish but two must be changed to.
func (n *network) pairSwitches(rows []timeplan.Row) timeplan.Level {
	l := timeplan.Level{Aim: timeplan.AimSwitches, Bound: max(0, len(n.practical.Dishes)-2)}
	last := map[int]string{}
	for _, r := range rows {
		if r.Dish == "" || r.Cook == 0 {
			continue
		}
		if was := last[r.Cook]; was != "" && was != r.Dish {
			l.Value++
		}
		last[r.Cook] = r.Dish
	}
	l.Proved = l.Value <= l.Bound
	return l
}

// stays is the step of a row that puts in or takes out what must be watched.
func (n *network) stays(r timeplan.Row) *stepJobs {
	if r.Action != timeplan.PutIn && r.Action != timeplan.TakeOut {
		return nil
	}
	if jobs := n.steps[r.Steps[0]]; jobs.step.Wait.Attention == practical.Stay {
		return jobs
	}
	return nil
}
