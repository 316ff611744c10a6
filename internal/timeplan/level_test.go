package timeplan_test

import (
	"testing"

	"github.com/google/go-cmp/cmp"

	"plait.example/internal/timeplan"
)

func TestAims(t *testing.T) {
	p := &timeplan.Plan{Hours: 24, Bound: 704, Levels: []timeplan.Level{
		{Aim: timeplan.AimFinish, Value: 187, Bound: 187, Proved: true},
		{Aim: timeplan.AimFresh, Value: 1, Bound: 0},
		{Aim: timeplan.AimOven, Value: 1, Bound: 1, Proved: true},
		{Aim: timeplan.AimSwitches, Value: 14, Bound: 5},
		{Aim: timeplan.AimWashUps, Value: 3, Bound: 3, Proved: true},
		{Aim: timeplan.AimOrder, Value: 2, Bound: 2, Proved: true},
		{Aim: "of a later edition", Value: 2},
	}}
	want := []string{
		"It cannot finish sooner: proved.",
		"Hot food stands for 1 minute before it is served. Less: not proved impossible.",
		"The oven or grill is turned once. Fewer: proved impossible.",
		"You change from one dish to another 14 times. Fewer: not proved impossible.",
		"Some wash-ups are close together. Further apart: proved impossible.",
		"2 steps are each begun before the one above it in the recipe. Fewer: proved impossible.",
	}
	if diff := cmp.Diff(want, p.Aims()); diff != "" {
		t.Error(diff)
	}
	p.Levels = []timeplan.Level{
		{Aim: timeplan.AimFinish, Value: 187, Bound: 180},
		{Aim: timeplan.AimFresh, Proved: true},
		{Aim: timeplan.AimWashUps, Proved: true},
		{Aim: timeplan.AimOrder, Proved: true},
	}
	p.Cooks = 2
	p.Levels = append(p.Levels, timeplan.Level{Aim: timeplan.AimSwitches, Value: 2, Bound: 1})
	want = []string{
		"Whether it can finish sooner: not proved, but never before 11:44.",
		"Hot food is served the moment it is ready.",
		"The wash-ups are well apart.",
		"Every dish keeps to the order of its recipe.",
		"The two of you change from one dish to another twice. Fewer: not proved impossible.",
	}
	if diff := cmp.Diff(want, p.Aims()); diff != "" {
		t.Error(diff)
	}
}
