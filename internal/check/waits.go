package check

import (
	"fmt"
	"slices"
	"strings"

	"plait.example/internal/act"
	"plait.example/internal/match"
	"plait.example/internal/practical"
)

// class is what kind of wait a recipe's wait is, for the rule that tells it.
type class int

const (
	otherWait class = iota
	chilling
	proving
	resting // pastry and dough
	cooling // before it is filled or iced
	restingMeat
)

// waitSeen is a wait of a recipe that the plan makes too short or too long.
type waitSeen struct {
	step  *stepSeen
	class class
	rows  []*row
	there string // minutes found
	asked string // minutes of the recipe
	short int    // minutes missing; 0: it is too long
	long  int
}

// waits are the waits of the recipes that do not fit, oven apart, worked out once.
func (v *view) waits() []waitSeen {
	if v.waitList == nil {
		v.waitList = append([]waitSeen{}, v.findWaits()...)
	}
	return v.waitList
}

func (v *view) findWaits() (list []waitSeen) {
	v.eachStep(func(s *stepSeen) {
		if len(s.rows) == 0 {
			return
		}
		if w := s.step.Wait; w != nil && w.Place != practical.AtOven && w.Place != practical.AtGrill {
			told := false
			if ends := v.waitEnds(s); ends != nil {
				if seen, wrong := v.compare(s, s.lastBefore(ends), ends, w.Least, w.Most); wrong && !guessed(s, seen) && !(seen.short > 0 && ends.begin-s.rows[0].begin >= w.Least) {
					list = append(list, seen)
					told = true
				}
			}
			if seen, wrong := v.saidShort(s); wrong && !told {
				list = append(list, seen)
			}
		}
		for _, a := range s.step.After {
			before := v.steps[a.Step]
			if before == nil || len(before.rows)+len(before.outs) == 0 {
				continue
			}
			from := before.rows
			if len(before.outs) > 0 {
				from = before.outs
			}
			most := 0
			if a.Most != nil {
				most = max(1, *a.Most)
			}
			if a.Least == 0 && most == 0 || !v.related(before, s) {
				continue
			}
			if seen, wrong := v.compare(before, from[len(from)-1], s.rows[0], a.Least, most); wrong {
				seen.step = s
				list = append(list, seen)
			}
		}
	})
	return list
}

// saidShort says that a row says less than half of the minutes of its step's
// long wait, whatever the clock gives.
func (v *view) saidShort(s *stepSeen) (waitSeen, bool) {
	w := s.step.Wait
	if w.Least < 30 {
		return waitSeen{}, false
	}
	kinds := s.waitKinds()
	if w.Place == practical.AtHob {
		kinds = []act.Kind{act.Hob}
	}
	for _, r := range s.rows {
		if len(r.Steps) > 2 {
			continue
		}
		for _, d := range r.deeds {
			if d.Most > 0 && 2*d.Most < w.Least && slices.Contains(kinds, d.Kind) {
				return waitSeen{step: s, class: v.classOf(s, r), rows: []*row{r}, there: fmt.Sprint(d.Most), asked: between(w.Least, max(w.Least, w.Most)), short: w.Least - d.Most}, true
			}
		}
	}
	return waitSeen{}, false
}

// oneChill is the least minutes of the only long wait in the cold that the
// dish's recipe has; 0: none, or several.
func (v *view) oneChill(letter string) (least int) {
	n := 0
	v.eachStep(func(s *stepSeen) {
		if w := s.step.Wait; w != nil && s.dish.Letter == letter && w.Place == practical.AtFridge && w.Least >= 30 {
			n++
			least = w.Least
		}
	})
	if n != 1 {
		return 0
	}
	return least
}

// waitStepsOf are the steps of a row with a wait in the place.
func (v *view) waitStepsOf(r *row, place practical.Place) (list []*stepSeen) {
	for _, s := range r.Steps {
		if seen := v.steps[s.ID]; seen != nil && s.Sure >= sureEnough && seen.step.Wait != nil && seen.step.Wait.Place == place {
			list = append(list, seen)
		}
	}
	return list
}

// guessed says that the recipe's text gives no minutes, so that those of its
// wait are only usual ones: they call nothing too short.
func guessed(s *stepSeen, w waitSeen) bool {
	said := strings.ContainsAny(s.step.Text, "0123456789") || hourSaid.in(wordsOf(s.step.Text))
	return !said && w.short > 0 && (w.class == chilling || w.class == otherWait)
}

var hourSaid = lex("hour, hours, minute, minutes, half, overnight")

// waitEnds is the row in which a wait's food is next wanted; nil: not known.
func (v *view) waitEnds(s *stepSeen) *row {
	var first *row
	consider := func(r *row) {
		if r.place > s.rows[0].place && !slices.Contains(s.rows, r) && (first == nil || r.place < first.place) {
			first = r
		}
	}
	for _, r := range s.outs {
		consider(r)
	}
	if first != nil {
		return first
	}
	for _, id := range s.next {
		next := v.steps[id]
		if len(next.rows) == 0 || !v.related(s, next) {
			return nil
		}
		for _, r := range next.rows {
			consider(r)
		}
	}
	return first
}

// lastBefore is the last row of the step before another row.
func (s *stepSeen) lastBefore(r *row) *row {
	last := s.rows[0]
	for _, o := range s.rows {
		if o.place < r.place {
			last = o
		}
	}
	return last
}

// compare judges the minutes between two rows against those of the recipe.
func (v *view) compare(s *stepSeen, from, to *row, least, most int) (waitSeen, bool) {
	if from.backwards || to.backwards || !from.timed || !to.timed || to.place <= from.place {
		return waitSeen{}, false
	}
	longest := to.begin - from.begin
	if own := min(s.step.Hands.Low, from.least()); longest > own {
		longest -= own
	}
	shortest := max(0, to.begin-from.end)
	seen := waitSeen{step: s, class: v.classOf(s, to), rows: []*row{to, from}, there: between(shortest, longest), asked: between(least, max(least, most))}
	slack := max(5, least/5)
	switch {
	case least > 0 && longest < least-slack:
		seen.short = least - longest
	case most > 0 && shortest > max(most+max(10, most/4), longProve(seen.class)) && from == s.rows[len(s.rows)-1] && !v.endedBetween(from, to):
		seen.long = shortest - most
	default:
		return waitSeen{}, false
	}
	return seen, true
}

// endedBetween says that a row of the dish between two others takes something off or out.
func (v *view) endedBetween(from, to *row) bool {
	return slices.ContainsFunc(v.inTime[from.place+1:to.place], func(r *row) bool { return r.samely(from) && ending.in(r.words) })
}

var ending = lex("off, out, drain*, remov*, turn off")

// longProve is the minutes below which dough that waits is not told: shaped
// dough stands a while before the oven is free. Common practice, no source.
func longProve(c class) int {
	if c == proving {
		return 70
	}
	return 0
}

// classOf finds the rule that a wait belongs to.
func (v *view) classOf(s *stepSeen, to *row) class {
	w := s.step.Wait
	text := wordsOf(s.step.Text)
	switch {
	case w != nil && w.Place == practical.AtWarm:
		return proving
	case pastry.in(text) && w != nil && (w.Place == practical.AtFridge || w.Place == practical.AtSide):
		return resting
	case w != nil && (w.Place == practical.AtFridge || w.Place == practical.AtFreezer):
		return chilling
	case slices.ContainsFunc(to.deeds, fillsCold), w != nil && w.Place == practical.AtSide && to.has(act.Fill, act.Decorate) && bakedSweet.in(wordsOf(s.dish.Name)):
		return cooling
	case rawMeat.in(text) && w != nil && w.Place == practical.AtSide:
		return restingMeat
	}
	return otherWait
}

// tellWaits tells the waits of one class.
func (v *view) tellWaits(f *asker, c class) {
	for _, w := range v.waits() {
		if w.class == c && (w.short > 0 || c == proving) {
			f.tell(w.saw())
		}
	}
}

func (w waitSeen) saw() saw {
	return saw{rows: w.rows, step: w.step.step.ID, minutes: max(w.short, w.long), say: map[string]string{
		"there": w.there, "found": w.there, "need": w.asked, "range": w.asked,
		"what": fmt.Sprintf("%q", w.step.step.Text),
	}}
}

func waitTooShort(v *view, f *asker) {
	for _, w := range v.waits() {
		if w.class == otherWait && w.short > 0 && (len(w.rows) < 2 || touch(w.rows[0], w.rows[1])) {
			f.tell(w.saw())
		}
	}
}

// touch says that two rows may be about one food: they name one in common, or
// one of them names none.
func touch(a, b *row) bool {
	foods := func(r *row) (list []string) {
		for _, d := range r.deeds {
			for _, o := range d.Objects {
				if w := []string{o}; !vessel.in(w) && !everywhere.in(w) && !product.in(w) {
					list = append(list, o)
				}
			}
		}
		return list
	}
	from, to := foods(a), foods(b)
	return len(from) == 0 || len(to) == 0 || slices.ContainsFunc(to, func(o string) bool { return slices.Contains(from, o) || mentions(a.words, []string{o}) })
}

// product are stems of what is made of other foods: they say nothing of which.
var product = lex("soup, sauc, mixtur, dough, fill, cake, curri, stew, batter, pastri")

func waitTooLong(v *view, f *asker) {
	for _, w := range v.waits() {
		if w.long > 0 && w.class != proving {
			f.tell(w.saw())
		}
	}
}

// waited says that a row stands for a step whose own wait is judged by its recipe.
func (v *view) waited(r *row, place practical.Place) bool {
	return slices.ContainsFunc(r.Steps, func(s match.Step) bool {
		seen := v.steps[s.ID]
		return seen != nil && s.Sure >= sureEnough && seen.step.Wait != nil && (place == "" && seen.step.Wait.Place != practical.AtOven || seen.step.Wait.Place == place)
	})
}
