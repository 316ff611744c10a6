package app

import (
	"fmt"
	"slices"
	"strings"

	"plait.example/internal/practical"
)

// The edits of a dish's steps. Each works on the practical in place, for use
// within Change, keeps who-follows-whom whole, and names the steps of the dish
// anew in their order (A1, A2...), in every reference and pin too. They give the
// id of the step to look at afterwards, "" when the edit could not be made.

// AddStep puts an empty step after the given one of a dish ("": at the end).
func AddStep(p *practical.Practical, letter, after string) string {
	d := dishOf(p, letter)
	if d == nil {
		return ""
	}
	at := len(d.Steps)
	if after != "" {
		if at = stepIndex(d, after) + 1; at == 0 {
			return ""
		}
	}
	step := practical.Step{ID: freeID(d), Hands: practical.Estimate{Low: 4, Likely: 5, High: 8}, Doubt: 1, Why: []string{"a new step: set its minutes"}}
	if at > 0 {
		previous := d.Steps[at-1].ID
		step.After = []practical.After{{Step: previous}}
		for _, s := range allSteps(p) {
			for i := range s.After {
				if s.After[i].Step == previous {
					s.After[i].Step = step.ID
				}
			}
		}
	}
	d.Steps = slices.Insert(d.Steps, at, step)
	return renumber(p, d)[step.ID]
}

// RemoveStep takes a step away; what came after it comes after what it came after.
func RemoveStep(p *practical.Practical, letter, id string) string {
	d := dishOf(p, letter)
	i := stepIndex(d, id)
	if i < 0 {
		return ""
	}
	gone := d.Steps[i]
	d.Steps = slices.Delete(d.Steps, i, i+1)
	bypass(p, gone)
	p.Pins = slices.DeleteFunc(p.Pins, func(pin practical.Pin) bool {
		return stepOf(pin.Row) == id || stepOf(pin.After) == id
	})
	renumber(p, d)
	if len(d.Steps) == 0 {
		return ""
	}
	return d.Steps[min(i, len(d.Steps)-1)].ID
}

// RemoveDish takes a dish away with its steps and pins.
func RemoveDish(p *practical.Practical, letter string) bool {
	d := dishOf(p, letter)
	if d == nil {
		return false
	}
	for len(d.Steps) > 0 {
		gone := d.Steps[0]
		d.Steps = d.Steps[1:]
		bypass(p, gone)
	}
	p.Dishes = slices.DeleteFunc(p.Dishes, func(x practical.Dish) bool { return x.Letter == letter })
	dropPins(p)
	return true
}

// SplitStep makes two steps of one, before the byte of its text that is given, or
// at the end of the sentence nearest to the middle when at is not the beginning
// of a later word. The hands' minutes are shared by length; the wait and the
// check go with the second.
func SplitStep(p *practical.Practical, letter, id string, at int) string {
	d := dishOf(p, letter)
	i := stepIndex(d, id)
	if i < 0 {
		return ""
	}
	first := d.Steps[i]
	second := first
	second.ID, second.Doubt = freeID(d), 1
	first.Doubt = 1
	first.Text, second.Text = cutAt(first.Text, at)
	share := func(whole int) (int, int) {
		all := len(first.Text) + len(second.Text)
		if all == 0 {
			return whole, 0
		}
		part := whole * len(first.Text) / all
		return part, whole - part
	}
	first.Hands.Low, second.Hands.Low = share(first.Hands.Low)
	first.Hands.Likely, second.Hands.Likely = share(first.Hands.Likely)
	first.Hands.High, second.Hands.High = share(first.Hands.High)
	first.Wait, first.Check = nil, ""
	second.After = []practical.After{{Step: first.ID}}
	second.Uses, second.Why = slices.Clone(first.Uses), append(slices.Clone(first.Why), "split in two: check both")
	for _, s := range allSteps(p) {
		for k := range s.After {
			if s.After[k].Step == first.ID {
				s.After[k].Step = second.ID
			}
		}
	}
	d.Steps[i] = first
	d.Steps = slices.Insert(d.Steps, i+1, second)
	return renumber(p, d)[first.ID]
}

// JoinStep makes one step of a step and the one below it. Two steps that both
// wait cannot be joined: the error says so.
func JoinStep(p *practical.Practical, letter, id string) (string, error) {
	d := dishOf(p, letter)
	i := stepIndex(d, id)
	if i < 0 || i+1 >= len(d.Steps) {
		return "", practical.Fault{Code: practical.Invalid, Field: "steps", Message: "there is no step below to join", Hint: "join a step with the one below it"}
	}
	first, second := d.Steps[i], d.Steps[i+1]
	if first.Wait != nil {
		return "", practical.Fault{
			Code: practical.Invalid, Field: "steps",
			Message: fmt.Sprintf("step %s ends in a wait, so the hands' part of %s cannot be joined to it", first.ID, second.ID),
			Hint:    "set its wait to none first",
		}
	}
	joined := second
	joined.ID = first.ID
	joined.Text = strings.TrimSpace(first.Text + " " + second.Text)
	joined.Hands = practical.Estimate{Low: first.Hands.Low + second.Hands.Low, Likely: first.Hands.Likely + second.Hands.Likely, High: first.Hands.High + second.Hands.High}
	joined.Uses = kitOf(first.Uses, second.Uses)
	joined.Kit, joined.Check, joined.Safety = both(first.Kit, second.Kit), both(first.Check, second.Check), both(first.Safety, second.Safety)
	joined.Why = append(slices.Clone(first.Why), second.Why...)
	joined.Doubt = max(first.Doubt, second.Doubt)
	joined.SetUp = first.SetUp && second.SetUp
	if joined.Food == "" {
		joined.Food = first.Food
	}
	if joined.Component == "" {
		joined.Component = first.Component
	}
	joined.After = slices.Clone(first.After)
	for _, a := range second.After {
		if a.Step != first.ID && !slices.ContainsFunc(joined.After, func(x practical.After) bool { return x.Step == a.Step }) {
			joined.After = append(joined.After, a)
		}
	}
	d.Steps[i] = joined
	d.Steps = slices.Delete(d.Steps, i+1, i+2)
	for _, s := range allSteps(p) {
		for k := range s.After {
			if s.After[k].Step == second.ID {
				s.After[k].Step = first.ID
			}
		}
	}
	p.Pins = slices.DeleteFunc(p.Pins, func(pin practical.Pin) bool {
		return stepOf(pin.Row) == second.ID || stepOf(pin.After) == second.ID
	})
	return renumber(p, d)[first.ID], nil
}

// MoveStep puts a step before the one above it (-1) or after the one below it
// (+1) in its dish. Where the lower of the two came after the upper, they change
// places in the order of work as well.
func MoveStep(p *practical.Practical, letter, id string, by int) string {
	d := dishOf(p, letter)
	i := stepIndex(d, id)
	upper := min(i, i+by)
	if i < 0 || by*by != 1 || upper < 0 || upper+1 >= len(d.Steps) {
		return ""
	}
	above, below := d.Steps[upper], d.Steps[upper+1]
	if link := slices.IndexFunc(below.After, func(a practical.After) bool { return a.Step == above.ID }); link >= 0 {
		kept := below.After[link]
		others := slices.Delete(slices.Clone(below.After), link, link+1)
		for _, s := range allSteps(p) {
			for k := range s.After {
				if s.ID != below.ID && s.After[k].Step == below.ID {
					s.After[k].Step = above.ID
				}
			}
		}
		below.After = slices.Clone(above.After)
		kept.Step = below.ID
		above.After = append(others, kept)
	}
	d.Steps[upper], d.Steps[upper+1] = below, above
	return renumber(p, d)[id]
}

// SureOfStep says that the figures of a step are right as they stand.
func SureOfStep(p *practical.Practical, letter, id string) string {
	d := dishOf(p, letter)
	i := stepIndex(d, id)
	if i < 0 {
		return ""
	}
	d.Steps[i].Doubt = 0
	d.Steps[i].Why = append([]string{"looked at, and found right"}, d.Steps[i].Why...)
	return id
}
