package network

import (
	"context"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"plait.example/internal/practical"
	"plait.example/internal/practical/practicaltest"
	"plait.example/internal/timeplan"
)

// modest keeps a random practical's search short: what is asked here is
// soundness, not strength.
var modest = Options{Seed: 1, Effort: 1500}

// Any valid practical gives a plan that a second reading of its rows accepts,
// or a proof that none exists with the demands that are to blame.
func TestAnyPractical(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := practicaltest.Practical(t)
		plan, err := Plan(context.Background(), p, modest)
		if err != nil {
			t.Fatalf("Plan: %v", err)
		}
		for _, f := range timeplan.Judge(plan) {
			t.Errorf("judge: %+v\n%s", f, outline(plan))
		}
		if plan.Status == timeplan.Infeasible && len(plan.Conflict) == 0 {
			t.Errorf("it does not fit, and nothing is to blame")
		}
		everyStepStands(t, p, plan)
	})
}

// everyStepStands checks that a plan with rows has each step's rows, in the
// order and with the gaps that the practical asks for: read from the rows alone.
func everyStepStands(t *rapid.T, p *practical.Practical, plan *timeplan.Plan) {
	if len(plan.Rows) == 0 {
		return
	}
	first, last := map[string]practical.TimeOfDay{}, map[string]practical.TimeOfDay{}
	for _, r := range plan.Rows {
		for _, id := range r.Steps {
			if at, known := first[id]; !known || r.At < at {
				first[id] = r.At
			}
			last[id] = max(last[id], r.End())
		}
	}
	for _, d := range p.Dishes {
		for _, s := range d.Steps {
			if _, has := first[s.ID]; !has && s.Hands.Likely > 0 {
				t.Errorf("step %s has no row", s.ID)
			}
			for _, after := range s.After {
				from, a := last[after.Step]
				to, b := first[s.ID]
				if a && b && to < from+practical.TimeOfDay(after.Least) {
					t.Errorf("%s at %s, %s ends at %s, least gap %d", s.ID, to, after.Step, from, after.Least)
				}
			}
		}
	}
}

// The finish of a plan proved best does not depend on names or on the order in
// which dishes and steps were typed.
func TestRenamingAndPermuting(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := practicaltest.Practical(t)
		p.Pins = nil
		other := *p
		other.Dishes = nil
		for _, i := range rapid.Permutation(indices(len(p.Dishes))).Draw(t, "dishes") {
			other.Dishes = append(other.Dishes, renamed(t, p.Dishes[i]))
		}
		a, errA := Plan(context.Background(), p, modest)
		b, errB := Plan(context.Background(), &other, modest)
		if errA != nil || errB != nil {
			t.Fatalf("Plan: %v, %v", errA, errB)
		}
		proved := func(plan *timeplan.Plan) bool { return plan.Status == timeplan.Optimal }
		if proved(a) && proved(b) && a.Finish != b.Finish {
			t.Errorf("finish %s, and %s after renaming and permuting", a.Finish, b.Finish)
		}
		if a.Bound > b.Finish || b.Bound > a.Finish {
			t.Errorf("bounds %s, %s against finishes %s, %s", a.Bound, b.Bound, a.Finish, b.Finish)
		}
		if len(a.Rows) > 0 && len(b.Rows) == 0 || len(b.Rows) > 0 && len(a.Rows) == 0 {
			t.Errorf("%d rows, and %d after renaming and permuting", len(a.Rows), len(b.Rows))
		}
	})
}

func indices(n int) []int {
	list := make([]int, n)
	for i := range list {
		list[i] = i
	}
	return list
}

// renamed is the same dish under another name, its steps listed in another order.
func renamed(t *rapid.T, d practical.Dish) practical.Dish {
	d.Name = strings.ToUpper(d.Name) + " again"
	steps := slices.Clone(d.Steps)
	d.Steps = nil
	for _, i := range rapid.Permutation(indices(len(steps))).Draw(t, "steps") {
		d.Steps = append(d.Steps, steps[i])
	}
	return d
}
