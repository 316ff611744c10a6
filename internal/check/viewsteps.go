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
	foods    []string   // what its text names, by stem; else what the step before names
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
		for k := range d.Steps {
			s := &stepSeen{step: &d.Steps[k], dish: d, order: k}
			for _, a := range act.Read(s.step.Text) {
				s.kinds = append(s.kinds, a.Kind)
				s.foods = append(s.foods, a.Objects...)
			}
			words := wordsOf(s.step.Text)
			for _, ing := range d.Ingredients {
				if keys := foodKeys(ing.Name); len(keys) > 0 && mentions(words, keys) {
					s.foods = append(s.foods, keys...)
				}
			}
			v.steps[s.step.ID] = s
		}
	}
	v.eachStep(func(s *stepSeen) {
		for _, a := range s.step.After {
			if before := v.steps[a.Step]; before != nil {
				before.next = append(before.next, s.step.ID)
			}
		}
	})
	v.eachStep(func(s *stepSeen) { // "leave to rest" is about what the step before made
		if len(s.foods) == 0 && len(s.step.After) == 1 && v.steps[s.step.After[0].Step] != nil {
			s.foods = v.steps[s.step.After[0].Step].foods
			s.nameless = true
		}
	})
	for _, r := range v.inTime {
		for _, s := range r.Steps {
			seen := v.steps[s.ID]
			if seen == nil || s.Sure < sureEnough {
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
// in common, or the later one names none, or its words join it to something.
func (v *view) related(before, s *stepSeen) bool {
	return v.sameFood(before, s) || len(s.foods) == 0 && len(s.step.After) < 2 || len(before.foods) == 0 || joining.in(wordsOf(s.step.Text))
}

// sameFood says that two steps name a food in common.
func (v *view) sameFood(before, s *stepSeen) bool {
	return slices.ContainsFunc(s.foods, func(o string) bool {
		return slices.Contains(before.foods, o) && !vessel.in([]string{o})
	})
}

// joining are words of a step that goes on with what is there.
var joining = lex("stir in, into, unroll, spread*, shape*, roll*, knock*, turn out, top with, pour over, spoon over, cover, fold in, brush*, ice, decorate, cut out, slice into, portion, serve, plate, unmould, return")

// vessel are stems of things that many steps name and that join none.
var vessel = lex("bowl, pan, tin, tray, oven, water, minut*, heat, plate*, oil, salt, knife, board, fridg*, rest, mixtur*")
