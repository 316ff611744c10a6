package web

import (
	"cmp"
	"slices"
	"strings"

	"plait.example/internal/practical"
)

// doubts lists the steps whose figures are more of a guess than read, the most
// doubtful first, those of equal doubt in the order of the dish.
func doubts(action string, d practical.Dish) []Doubt {
	var steps []practical.Step
	for _, step := range d.Steps {
		if doubtful(step) {
			steps = append(steps, step)
		}
	}
	slices.SortStableFunc(steps, func(a, b practical.Step) int { return cmp.Compare(b.Doubt, a.Doubt) })
	list := make([]Doubt, len(steps))
	for i, step := range steps {
		list[i] = Doubt{ID: step.ID, Link: stepLink(action, step.ID), Text: cut(step.Text, 60), Why: strings.Join(step.Why, "; ")}
	}
	return list
}

// doubtful says whether a step's figures are more guess than reading.
func doubtful(s practical.Step) bool { return s.Doubt >= 0.5 }

// putRight counts the steps that the teacher has put right, here or in an earlier recipe.
func putRight(d practical.Dish) (n int) {
	for _, step := range d.Steps {
		if slices.ContainsFunc(step.Why, func(why string) bool { return strings.HasPrefix(why, "your correction of ") }) {
			n++
		}
	}
	return n
}
