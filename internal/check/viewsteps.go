package check

import (
	"slices"

	"plait.example/internal/act"
	"plait.example/internal/match"
	"plait.example/internal/practical"
)

// sureEnough is from where on a match is believed: below, it is as likely wrong.
const sureEnough = 0.5

// stepSeen is a step of a recipe with the rows that stand for it.
type stepSeen struct {
	step     *practical.Step
	dish     *practical.Dish
	order    int    // in its dish, from 0
	rows     []*row // by the clock; for the hands' work or the beginning of the wait
	outs     []*row // for the end of the wait
	next     []string
	kinds    []act.Kind // of its text
	verbs    []string   // stems, of its text
	foods    []string   // what its text names, by stem; else what the step before names
	fresh    bool       // it names an ingredient that no step before it names
	nameless bool       // its own text names none
}

// readSteps finds the rows of each step, and the minutes of each row by its steps.
func (v *view) readSteps() {
	v.steps = map[string]*stepSeen{}
	if v.Practical == nil {
		return
	}
	for i := range v.Practical.Dishes {
		d := &v.Practical.Dishes[i]
		named := map[string]bool{} // ingredients of the steps before
		for k := range d.Steps {
			s := &stepSeen{step: &d.Steps[k], dish: d, order: k}
			s.read(v.Words, named)
			v.steps[s.step.ID] = s
		}
	}
	v.eachStep(func(s *stepSeen) {
		for _, a := range s.step.After {
			if before := v.steps[a.Step]; before != nil {
				before.next = append(before.next, s.step.ID)
			}
		}
		// "leave to rest" is about what the step before made
		if len(s.foods) == 0 && len(s.step.After) == 1 && v.steps[s.step.After[0].Step] != nil {
			s.foods, s.nameless = v.steps[s.step.After[0].Step].foods, true
		}
	})
	v.rowsOfSteps()
}

// read finds what a step's text does and names; named are the ingredients that
// the steps before it name.
func (s *stepSeen) read(words act.Known, named map[string]bool) {
	for _, a := range words.Read(s.step.Text) {
		s.kinds, s.verbs = append(s.kinds, a.Kind), append(s.verbs, a.Verb)
		for _, o := range a.Objects {
			if !vessel.in([]string{o}) {
				s.foods = append(s.foods, o)
			}
		}
	}
	said := wordsOf(s.step.Text)
	for _, ing := range s.dish.Ingredients {
		if keys := foodKeys(ing.Name); len(keys) > 0 && mentions(said, keys) {
			s.foods = append(s.foods, keys...)
			s.fresh = s.fresh || !named[ing.Name]
			named[ing.Name] = true
		}
	}
}

// rowsOfSteps finds the rows of each step, and shares out its minutes among them.
func (v *view) rowsOfSteps() {
	for _, r := range v.inTime {
		for _, s := range r.Steps {
			seen := v.steps[s.ID]
			if seen == nil || s.Sure < sureEnough || len(r.Letters) > 0 && !r.about(seen.dish.Letter) || r.gathers() && seen.cooks() || r.saysDone() || seen.chills() && r.standsOut() || seen.heats() && r.looksOnly() {
				continue
			}
			if s.Part == match.TakeOut {
				seen.outs = append(seen.outs, r)
			} else {
				seen.rows = append(seen.rows, r)
			}
		}
	}
	v.eachStep(func(s *stepSeen) {
		for _, r := range s.rows {
			n := len(s.rows)
			r.recipe.Low += s.step.Hands.Low / n
			r.recipe.Likely += s.step.Hands.Likely / n
			r.recipe.High += s.step.Hands.High / n
		}
	})
}

// looksOnly says that a row looks at what cooks, or probes it, and does no more to it.
func (r *row) looksOnly() bool {
	return r.has(act.Probe, act.Test) && !r.has(act.Hob, act.PutIn, act.TakeOut, act.Grill, act.Microwave, act.Reheat, act.BoilWater, act.Fill, act.KeepHot) &&
		!slices.ContainsFunc(r.deeds, func(d *deed) bool { return d.Kind == act.Mix && d.Verb != "stir" })
}

// chills says that a step is only a wait in the cold.
func (s *stepSeen) chills() bool {
	w := s.step.Wait
	return w != nil && w.Place == practical.AtFridge && s.step.Hands.Likely <= 2
}

// standsOut says that a row leaves food at the side and puts none into the cold.
func (r *row) standsOut() bool {
	return sideSaid.in(r.words) && !r.has(act.Chill, act.Freeze, act.FromCold) && !inCold.in(r.all())
}

var sideSaid = lex("side, worktop, room temperature, counter, bench, table")

// gathers says that a row weighs and collects for all dishes, or only makes a
// tin or the oven ready: it stands for no cooking.
func (r *row) gathers() bool { return r.has(act.SetUp, act.Ready, act.HeatOven) && !r.handles() }

// cooks says that a step is more than gathering and making ready.
func (s *stepSeen) cooks() bool {
	return slices.ContainsFunc(s.kinds, func(k act.Kind) bool {
		return k != act.SetUp && k != act.Ready && k != act.Other && k != act.HeatOven && k != act.BoilWater
	})
}

// eachStep calls f for the steps of the recipes, in their order.
func (v *view) eachStep(f func(*stepSeen)) {
	if v.Practical == nil {
		return
	}
	for i := range v.Practical.Dishes {
		for k := range v.Practical.Dishes[i].Steps {
			f(v.steps[v.Practical.Dishes[i].Steps[k].ID])
		}
	}
}

// seen says that any row stands for the step.
func (s *stepSeen) seen() bool { return len(s.rows)+len(s.outs) > 0 }

// related says that one step works on what another has made: they name a food
// in common, or the later one takes no ingredient that is new to the dish, or
// its words join it to something.
func (v *view) related(before, s *stepSeen) bool {
	words := wordsOf(s.step.Text)
	if len(s.step.After) > 1 && len(s.foods) == 0 || meanwhile.in(words) && !v.sameFood(before, s) {
		return false
	}
	return v.sameFood(before, s) || !s.fresh || joining.in(words)
}

var meanwhile = lex("meanwhile, in the meantime")

// sameFood says that two steps name a food in common.
func (v *view) sameFood(before, s *stepSeen) bool {
	return slices.ContainsFunc(s.foods, func(o string) bool {
		return slices.Contains(before.foods, o) && !vessel.in([]string{o})
	})
}

// joining are words of a step that goes on with what is there.
var joining = lex("stir in, unroll, spread with, spread the, spread over, shape*, roll*, knock*, turn out, top with, pour over, spoon over, fold in, brush*, ice, decorate, cut out, slice into, portion, serve, plate, unmould, return")

// vessel are stems of things that many steps name and that join none.
var vessel = lex("case, cases, glass*, mould*, ramekin*, strip*, piec*, slice*, half, halv*, round*, cube*, chunk*, bowl, pan, tin, tray, oven, water, minut*, heat, plate*, oil, salt, knife, board, fridg*, rest, mixtur*")
