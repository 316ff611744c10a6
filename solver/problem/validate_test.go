package problem_test

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"plait.example/solver/problem"
)

// press is a valid problem that uses every noun.
func press() *problem.Problem {
	return &problem.Problem{
		Name: "press", Horizon: 40,
		Activities: []problem.Activity{
			{Name: "ink", MinDuration: 2, MaxDuration: 2, Modes: []problem.Mode{
				{Name: "by hand", Uses: []problem.Use{{Resource: 0, Amount: 1}}},
				{Name: "by roller", Uses: []problem.Use{{Resource: 1, Amount: 2}}},
			}},
			{Name: "print", MinDuration: 3, MaxDuration: 6, Modes: []problem.Mode{
				{Uses: []problem.Use{{Resource: 0, Amount: 1}}, Needs: []problem.Need{{State: 0, Levels: []int{1, 2}}}},
			}},
			{Name: "done"},
		},
		Lags: []problem.Lag{
			{From: problem.End(0), To: problem.Start(1), Demand: "ink first"},
			{From: problem.Start(1), To: problem.End(0), Min: -4, Demand: "print while wet"},
			{From: problem.End(1), To: problem.Start(2)},
		},
		Choices: []problem.Choice{{
			If:     []problem.Chosen{{Activity: 0, Mode: 1}},
			Any:    []problem.Lag{{From: problem.Zero(), To: problem.Start(0), Min: 5}},
			Demand: "roller comes at 5",
		}},
		Resources: []problem.Resource{
			{Name: "printer", Capacity: 1, Demand: "one printer", Closures: []problem.Closure{
				{From: 30, Until: 31, Demand: "pause"}, {From: 20, Until: 25, Demand: "break"},
			}},
			{Name: "power", Capacity: 3, Demand: "fuse"},
		},
		States: []problem.State{{
			Name: "plate", Levels: []string{"none", "A", "B"}, Demand: "one plate", Uses: []problem.Use{{Resource: 0, Amount: 1}},
			Change: [][]problem.Change{{{}, {Work: 1}, {Work: 1}}, {{Settle: 1}, {}, {Work: 1, Settle: 1}}, {{Settle: 1}, {Work: 1, Settle: 1}, {}}},
		}},
		Objectives: []problem.Objective{
			{Name: "end", Makespan: true},
			{Name: "wet", Terms: []problem.Term{{Point: problem.Start(1), Weight: 1}, {Point: problem.End(0), Weight: -1}}},
			{Name: "plates", Changes: []int{0}},
			{Name: "care", Switches: []int{0}, Soft: []problem.Soft{
				{Any: []problem.Lag{{From: problem.End(0), To: problem.Start(1), Min: 2}, {From: problem.End(1), To: problem.Zero(), Min: -15}}, Weight: 3},
				{If: []problem.Chosen{{Activity: 0, Mode: 1}}, Weight: 1},
			}},
		},
	}
}

func TestValid(t *testing.T) {
	if err := press().Validate(); err != nil {
		t.Error(err)
	}
	if err := (&problem.Problem{Horizon: 1}).Validate(); err != nil {
		t.Errorf("a problem of nothing: %v", err)
	}
}

func TestFaults(t *testing.T) {
	type P = *problem.Problem
	for _, c := range []struct {
		want   string
		damage func(P)
	}{
		{"horizon is 0; must be 1 to", func(p P) { p.Horizon = 0 }},
		{"horizon is 10000001; must be 1 to 10000000", func(p P) { p.Horizon = 10_000_001 }},
		{"activities[0]: min is -1", func(p P) { p.Activities[0].MinDuration = -1 }},
		{"activities[1]: max is 2; must be min (3)", func(p P) { p.Activities[1].MaxDuration = 2 }},
		{"activities[1]: max is 4611686018427387904", func(p P) { p.Activities[1].MaxDuration = 1 << 62 }},
		{"activities[0].modes[1].uses[0]: resource is 2; must be 0 to 1", func(p P) { p.Activities[0].Modes[1].Uses[0].Resource = 2 }},
		{"activities[0].modes[0].uses[0]: amount is 0; must be 1", func(p P) { p.Activities[0].Modes[0].Uses[0].Amount = 0 }},
		{"activities[1].modes[0].needs[0]: state is -1; must be 0 to 0", func(p P) { p.Activities[1].Modes[0].Needs[0].State = -1 }},
		{"activities[1].modes[0].needs[0]: level is 3; must be 0 to 2", func(p P) { p.Activities[1].Modes[0].Needs[0].Levels[0] = 3 }},
		{"activities[1].modes[0].needs[0]: levels is empty", func(p P) { p.Activities[1].Modes[0].Needs[0].Levels = nil }},
		{"lags[0]: from activity is 3; must be 0 to 2", func(p P) { p.Lags[0].From.Activity = 3 }},
		{"lags[1]: to activity is -2; must be 0 to 2", func(p P) { p.Lags[1].To.Activity = -2 }},
		{"lags[0]: from is the end of the origin", func(p P) { p.Lags[0].From = problem.Point{Activity: problem.Origin, End: true} }},
		{"lags[2]: lag is -1000000001", func(p P) { p.Lags[2].Min = -1_000_000_001 }},
		{"choices[0].if[0]: activity is 7", func(p P) { p.Choices[0].If[0].Activity = 7 }},
		{"choices[0].if[0]: mode is 2; must be 0 to 1", func(p P) { p.Choices[0].If[0].Mode = 2 }},
		{"choices[0]: any is empty", func(p P) { p.Choices[0] = problem.Choice{} }},
		{"choices[0].any[0]: to activity is 9", func(p P) { p.Choices[0].Any[0].To.Activity = 9 }},
		{"resources[1]: capacity is -1", func(p P) { p.Resources[1].Capacity = -1 }},
		{"resources[0].closures[0]: runs from 30 until 30", func(p P) { p.Resources[0].Closures[0].Until = 30 }},
		{"resources[0].closures[1]: runs from -1", func(p P) { p.Resources[0].Closures[1].From = -1 }},
		{"resources[0].closures[1]: left is 2; must be 0 to the capacity 1", func(p P) { p.Resources[0].Closures[1].Left = 2 }},
		{"resources[0]: closures[1] and closures[0] overlap", func(p P) { p.Resources[0].Closures[1].Until = 31 }},
		{"states[0]: initial is 3; must be 0 to 2", func(p P) { p.States[0].Initial = 3 }},
		{"states[0]: levels is empty", func(p P) { p.States[0].Levels = nil }},
		{"states[0].uses[0]: resource is 5", func(p P) { p.States[0].Uses[0].Resource = 5 }},
		{"states[0]: changeFrom is -1", func(p P) { p.States[0].ChangeFrom = -1 }},
		{"states[0]: change has 2 rows for 3 levels", func(p P) { p.States[0].Change = p.States[0].Change[:2] }},
		{"states[0]: change[1] has 2 entries for 3 levels", func(p P) { p.States[0].Change[1] = p.States[0].Change[1][:2] }},
		{"states[0]: change[0][1] takes work -1 and settle 0", func(p P) { p.States[0].Change[0][1].Work = -1 }},
		// None to A and on to B: 1 + 2 = 3.
		{"states[0]: change[0][2] takes 4, longer than 3 by way of level 1", func(p P) { p.States[0].Change[0][2].Settle = 3 }},
		{"objectives[1].terms[0]: point activity is 3", func(p P) { p.Objectives[1].Terms[0].Point.Activity = 3 }},
		{"objectives[1].terms[0]: weight is 1000000000001", func(p P) { p.Objectives[1].Terms[0].Weight = 1_000_000_000_001 }},
		{"objectives[1]: weights up to terms[1] times the horizon exceed", func(p P) { p.Objectives[1].Terms[1].Weight = 25_000_000_000 }},
		{"objectives[2]: changes is 1; must be 0 to 0", func(p P) { p.Objectives[2].Changes[0] = 1 }},
		{"objectives[2]: changes names state 0 twice", func(p P) { p.Objectives[2].Changes = []int{0, 0} }},
		{"objectives[3]: switches is -1; must be 0 to 0", func(p P) { p.Objectives[3].Switches[0] = -1 }},
		{"objectives[3]: switches names state 0 twice", func(p P) { p.Objectives[3].Switches = []int{0, 0} }},
		{"objectives[3].soft[0]: weight is 0; must be 1 to", func(p P) { p.Objectives[3].Soft[0].Weight = 0 }},
		{"objectives[3].soft[0].any[1]: from activity is 3", func(p P) { p.Objectives[3].Soft[0].Any[1].From.Activity = 3 }},
		{"objectives[3].soft[1].if[0]: mode is 2; must be 0 to 1", func(p P) { p.Objectives[3].Soft[1].If[0].Mode = 2 }},
		{"objectives[3].soft[1]: any is empty; without an if", func(p P) { p.Objectives[3].Soft[1].If = nil }},
		{"objectives[3]: weights up to soft[1] sum to more than 1000000000000", func(p P) { p.Objectives[3].Soft[1].Weight = 1_000_000_000_000 }},
	} {
		p := press()
		c.damage(p)
		if err := p.Validate(); err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("got %v\nwant %s", err, c.want)
		}
	}
}

func TestAllFaultsAtOnce(t *testing.T) {
	p := press()
	p.Horizon, p.Activities[0].MinDuration, p.States[0].Initial = 0, -1, 9
	err := p.Validate()
	if err == nil || strings.Count(err.Error(), "\n") != 2 {
		t.Errorf("want three faults, got %v", err)
	}
	var none *problem.Problem
	if none.Validate() == nil {
		t.Error("no problem is valid")
	}
}

// The triangle rule, held against a plain search for a quicker way through all
// chains of levels, on every matrix of three levels with times 0 to 2.
func TestTriangle(t *testing.T) {
	var times [6]int
	for code := range 729 {
		for i, c := 0, code; i < 6; i, c = i+1, c/3 {
			times[i] = c % 3
		}
		d := [3][3]int{{0, times[0], times[1]}, {times[2], 0, times[3]}, {times[4], times[5], 0}}
		p := press()
		quicker := false
		for a := range 3 {
			for c := range 3 {
				p.States[0].Change[a][c] = problem.Change{Work: d[a][c] / 2, Settle: d[a][c] - d[a][c]/2}
				for b := range 3 {
					quicker = quicker || a != c && d[a][b]+d[b][c] < d[a][c]
				}
			}
		}
		if got := p.Validate() != nil; got != quicker {
			t.Fatalf("%v: refused %v, want %v", d, got, quicker)
		}
	}
}

func TestDemands(t *testing.T) {
	want := []string{"ink first", "print while wet", "roller comes at 5", "one printer", "pause", "break", "fuse", "one plate"}
	if got := press().Demands(); !slices.Equal(got, want) {
		t.Errorf("got %q\nwant %q", got, want)
	}
}

func ExampleProblem_Validate() {
	p := problem.Problem{Horizon: 10, Activities: []problem.Activity{{Name: "wait", MinDuration: 4, MaxDuration: 3}}}
	p.Lags = []problem.Lag{{From: problem.End(0), To: problem.Start(1)}}
	fmt.Println(p.Validate())
	// Output:
	// activities[0]: max is 3; must be min (4) to 10000000
	// lags[0]: to activity is 1; must be 0 to 0
}
