package network

import (
	"fmt"
	"strings"

	"plait.example/internal/practical"
	"plait.example/solver/problem"
)

// readyMinutes is washing hands, putting the apron on and reading the plan
// through. Common practice, no source.
const readyMinutes = 2

// readyJob is the first row: hands washed before anything is touched.
func (n *network) readyJob() {
	a := n.add(job{part: partReady, row: "ready", dish: -1, minutes: readyMinutes}, []problem.Use{n.inHands()}, nil)
	if n.start >= readyMinutes {
		n.atMost(problem.Zero(), problem.End(a), n.start, "")
	}
}

// stepActivities makes the activities of every step and ties them together.
func (n *network) stepActivities() {
	for d := range n.practical.Dishes {
		dish := &n.practical.Dishes[d]
		for i := range dish.Steps {
			s := &stepJobs{step: &dish.Steps[i], dish: d, hands: -1, putIn: -1, wait: -1, takeOut: -1, first: -1, last: -1}
			n.steps[s.step.ID] = s
			n.order = append(n.order, s)
			n.handsOf(s)
			n.waitOf(s)
			if s.first < 0 { // a step of no minutes still has its place in the order
				s.hands = n.add(n.job(s, partHands, 0), nil, nil)
				s.chain(s.hands)
			}
			n.within(s)
		}
	}
}

func (n *network) job(s *stepJobs, p part, minutes int) job {
	j := job{part: p, dish: s.dish, step: s.step, minutes: minutes}
	if p != partWait {
		j.row = s.step.ID + "/" + string(p)
	}
	return j
}

// chain puts an activity at the end of the step's own.
func (s *stepJobs) chain(activity int) {
	if s.first < 0 {
		s.first = activity
	}
	s.last = activity
}

// handsMinutes is a step's hands minutes at the pace of the practical.
func (n *network) handsMinutes(e practical.Estimate) int {
	switch n.practical.Rules.Pace {
	case practical.Quick:
		return e.Low
	case practical.Steady:
		return e.High
	default:
		return e.Likely
	}
}

// handsOf makes the activity in which the cook works.
func (n *network) handsOf(s *stepJobs) {
	minutes := n.handsMinutes(s.step.Hands)
	if watchedOnSide(s.step) {
		minutes += s.step.Wait.Least
	}
	if w := s.step.Wait; minutes == 0 && w != nil && !hasRows(w.Place) && !watchedOnSide(s.step) {
		minutes = 1 // food on the side is set there by somebody, and the step's words need a row
	}
	if minutes == 0 {
		return
	}
	uses := []problem.Use{n.inHands()}
	needs := n.hygiene(s.step.Food)
	for _, k := range s.step.Uses {
		switch k {
		case practical.GrillPan:
			grillUses, grillNeeds, _ := n.grillUse()
			uses, needs = append(uses, grillUses...), append(needs, grillNeeds...)
		default:
			uses = append(uses, problem.Use{Resource: n.kit[k], Amount: 1})
			needs = append(needs, n.rinseNeed(k, s.dish)...)
		}
	}
	s.hands = n.add(n.job(s, partHands, minutes), uses, needs)
	s.chain(s.hands)
}

// hasRows says whether food is put into and taken out of a place by rows of
// their own. Food on the side stands where it is.
func hasRows(place practical.Place) bool {
	return place != practical.AtSide && place != practical.AtBench
}

// watchedOnSide says whether a step's wait is no wait for the cook: food on the
// side that must not be left is minutes of hands.
func watchedOnSide(s *practical.Step) bool {
	return s.Wait != nil && !hasRows(s.Wait.Place) && s.Wait.Attention == practical.Stay
}

// waitOf makes put in, wait and take out.
func (n *network) waitOf(s *stepJobs) {
	w := s.step.Wait
	if w == nil || watchedOnSide(s.step) {
		return
	}
	if hasRows(w.Place) {
		var needs []problem.Need
		uses := []problem.Use{n.inHands()}
		if s.hands >= 0 || s.step.Food == practical.Raw {
			needs = n.hygiene(s.step.Food)
		}
		s.putIn = n.add(n.job(s, partPutIn, max(1, w.PutIn)), append(uses, n.held(w.Place)...), needs)
		s.chain(s.putIn)
	}
	s.wait = n.add(n.job(s, partWait, 0), nil, nil)
	a := &n.problem.Activities[s.wait]
	a.MaxDuration = longest
	a.Modes, s.oven = n.waitModes(w)
	s.chain(s.wait)
	if hasRows(w.Place) {
		var needs []problem.Need
		if !cooks(w.Place) {
			needs = n.hygiene(s.step.Food)
		}
		uses := append([]problem.Use{n.inHands()}, n.held(w.Place)...)
		s.takeOut = n.add(n.job(s, partTakeOut, max(1, w.TakeOut)), uses, needs)
		s.chain(s.takeOut)
	}
}

// held is what a place takes while food goes on and comes off it: a ring or a
// microwave is not free until the pan is off. (An oven's or a fridge's shelf
// changes over in the one opening of the door.)
func (n *network) held(place practical.Place) []problem.Use {
	switch place {
	case practical.AtHob:
		return []problem.Use{{Resource: n.kit[practical.Ring], Amount: 1}}
	case practical.AtMicrowave:
		return []problem.Use{{Resource: n.kit[practical.Microwave], Amount: 1}}
	}
	return nil
}

// cooks says whether food comes out of a place cooked, and so no longer raw.
func cooks(place practical.Place) bool {
	switch place {
	case practical.AtOven, practical.AtHob, practical.AtGrill, practical.AtMicrowave:
		return true
	}
	return false
}

// waitModes are what a wait takes while it lasts: its place, and attention.
func (n *network) waitModes(w *practical.Wait) (modes []problem.Mode, ovens []int) {
	shelves := max(1, w.Shelves)
	switch w.Place {
	case practical.AtOven:
		modes, ovens = n.ovenModes(w)
	case practical.AtGrill:
		uses, needs, oven := n.grillUse()
		modes = []problem.Mode{{Uses: uses, Needs: needs}}
		if oven >= 0 && n.ovens[oven].oven != nil {
			ovens = []int{oven}
		}
	case practical.AtHob:
		modes = []problem.Mode{{Uses: []problem.Use{{Resource: n.kit[practical.Ring], Amount: 1}}}}
	case practical.AtMicrowave:
		modes = []problem.Mode{{Uses: []problem.Use{{Resource: n.kit[practical.Microwave], Amount: 1}}}}
	case practical.AtFridge:
		modes = []problem.Mode{{Uses: []problem.Use{{Resource: n.kit[practical.FridgeKit], Amount: shelves}}}}
	case practical.AtFreezer:
		modes = []problem.Mode{{Uses: []problem.Use{{Resource: n.kit[practical.FreezerKit], Amount: shelves}}}}
	default:
		modes = []problem.Mode{{}}
	}
	for i := range modes {
		switch w.Attention {
		case practical.Stay:
			modes[i].Uses = append(modes[i].Uses, n.inHands())
		case practical.Look:
			modes[i].Uses = append(modes[i].Uses, problem.Use{Resource: n.looks, Amount: 1})
		}
	}
	return modes, ovens
}

// within ties a step's own activities: each begins when the one before it ends,
// and the wait lasts from its least to its most.
func (n *network) within(s *stepJobs) {
	chain := []int{s.hands, s.putIn, s.wait, s.takeOut}
	before := -1
	for _, a := range chain {
		if a < 0 {
			continue
		}
		if before >= 0 {
			n.exactly(problem.End(before), problem.Start(a), 0, "")
		}
		before = a
	}
	if s.wait < 0 {
		return
	}
	w := s.step.Wait
	verb := waitVerb(w.Place)
	n.atLeast(problem.Start(s.wait), problem.End(s.wait), w.Least,
		n.demand("wait-least/"+s.step.ID, s.step.ID, "%s %s at least %s", n.food(s), verb, minutesOf(w.Least)))
	if w.Most > 0 {
		n.atMost(problem.Start(s.wait), problem.End(s.wait), w.Most,
			n.demand("wait-most/"+s.step.ID, s.step.ID, "%s %s at most %s", n.food(s), verb, minutesOf(w.Most)))
	}
}

// waitVerb is what food does in a place, in the third person.
func waitVerb(place practical.Place) string {
	switch place {
	case practical.AtOven:
		return "is in the oven"
	case practical.AtHob:
		return "is on the hob"
	case practical.AtGrill:
		return "is under the grill"
	case practical.AtMicrowave:
		return "is in the microwave"
	case practical.AtWarm:
		return "stands in the warm"
	case practical.AtFridge:
		return "is in the fridge"
	case practical.AtFreezer:
		return "is in the freezer"
	default:
		return "stands on the side"
	}
}

// food names what a step is about: "the dough (A, leek pasties)".
func (n *network) food(s *stepJobs) string {
	dish := n.practical.Dishes[s.dish]
	if s.step.Component != "" {
		return fmt.Sprintf("the %s of %s (%s)", s.step.Component, dish.Letter, s.step.ID)
	}
	return fmt.Sprintf("%s (%s)", strings.TrimSpace(dish.Name), s.step.ID)
}

// outSoonUsed is how long food may stand between coming out of the cold or the
// warm and its next job, in minutes, where nothing bounds its wait: it can as
// well stay in. A judgement.
const outSoonUsed = 10

// takenOutForUse keeps food in its place until about when it is wanted.
func (n *network) takenOutForUse(s *stepJobs) {
	if s.takeOut < 0 || s.step.Wait.Most > 0 || cooks(s.step.Wait.Place) {
		return
	}
	soon := problem.Choice{Demand: n.demand("out-late/"+s.step.ID, s.step.ID,
		"%s %s until at most %d minutes before it is wanted", n.food(s), waitVerb(s.step.Wait.Place), outSoonUsed)}
	for _, next := range n.followers(s) {
		for _, after := range next.step.After {
			if after.Step == s.step.ID {
				soon.Any = append(soon.Any, problem.Lag{
					From: problem.Start(next.first), To: problem.End(s.takeOut), Min: -max(outSoonUsed, after.Least),
				})
			}
		}
	}
	if len(soon.Any) > 0 {
		n.problem.Choices = append(n.problem.Choices, soon)
	}
}

// sequence ties steps to each other: what follows what, and the gaps that food sets.
func (n *network) sequence() {
	for _, s := range n.order {
		for _, after := range s.step.After {
			before := n.steps[after.Step]
			n.gap(before, s, after)
		}
		n.takenOutForUse(s)
	}
}

// gap is a finish-to-start lag between two steps. Food on the side goes on
// standing until it is wanted, so its longest wait binds the next step too.
func (n *network) gap(before, s *stepJobs, after practical.After) {
	end, start := problem.End(before.last), problem.Start(s.first)
	demand := ""
	if after.Least > 0 {
		demand = n.demand("gap-least/"+s.step.ID+"/"+after.Step, s.step.ID,
			"%s comes at least %s after %s", stepWords(s.step), minutesOf(after.Least), stepWords(before.step))
	}
	n.atLeast(end, start, after.Least, n.orderDemand(before, s, demand))
	if after.Most != nil {
		n.atMost(end, start, *after.Most, n.demand("gap-most/"+s.step.ID+"/"+after.Step, s.step.ID,
			"%s comes at most %s after %s", stepWords(s.step), minutesOf(*after.Most), stepWords(before.step)))
	}
	if w := before.step.Wait; before.wait >= 0 && before.takeOut < 0 && w.Most > 0 && after.Most == nil && after.Least == 0 {
		n.atMost(problem.Start(before.wait), start, w.Most, "wait-most/"+before.step.ID)
	}
}

// orderDemand names a plain "comes after", if no gap has named it already.
func (n *network) orderDemand(before, s *stepJobs, demand string) string {
	if demand != "" {
		return demand
	}
	return n.demand("after/"+s.step.ID+"/"+before.step.ID, s.step.ID, "%s comes after %s", stepWords(s.step), stepWords(before.step))
}
