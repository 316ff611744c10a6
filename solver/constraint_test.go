package solver_test

import (
	"context"
	"slices"
	"strings"
	"testing"

	"plait.example/solver"
	"plait.example/solver/problem"
	"plait.example/solver/verify"
)

func fixed(d int, modes ...problem.Mode) problem.Activity {
	return problem.Activity{MinDuration: d, MaxDuration: d, Modes: modes}
}

func uses(resource, amount int) problem.Mode {
	return problem.Mode{Uses: []problem.Use{{Resource: resource, Amount: amount}}}
}

func needs(levels ...int) problem.Mode {
	return problem.Mode{Needs: []problem.Need{{State: 0, Levels: levels}}}
}

func follows(from, to, least int) problem.Lag {
	return problem.Lag{From: problem.End(from), To: problem.Start(to), Min: least}
}

func unary() []problem.Resource { return []problem.Resource{{Name: "R", Capacity: 1}} }

// kiln has the levels cold, 180 and 200. A change takes 1 of work and settles
// for 9 from cold, 3 between the other two.
func kiln() []problem.State {
	up, between := problem.Change{Work: 1, Settle: 9}, problem.Change{Work: 1, Settle: 3}
	return []problem.State{{
		Name: "kiln", Levels: []string{"cold", "180", "200"},
		Change: [][]problem.Change{{{}, up, up}, {up, {}, between}, {up, between, {}}},
	}}
}

// TestConstraints has a problem a constraint; the sum behind each answer
// stands beside it.
func TestConstraints(t *testing.T) {
	for _, test := range []struct {
		name string
		p    problem.Problem
		want int // makespan; -1: infeasible
	}{
		{
			"a lag of 4 from end to start: 3 + 4 + 2 = 9",
			problem.Problem{Horizon: 20, Activities: []problem.Activity{fixed(3), fixed(2)}, Lags: []problem.Lag{follows(0, 1, 4)}},
			9,
		},
		{
			"a maximal lag of 4: 0 over 2..5, 2 over 5..9, 1 at 9, just 4 after 5: 10",
			problem.Problem{
				Horizon: 20, Resources: unary(),
				Activities: []problem.Activity{fixed(3, uses(0, 1)), fixed(1, uses(0, 1)), fixed(4, uses(0, 1))},
				Lags: []problem.Lag{
					{From: problem.Zero(), To: problem.Start(0), Min: 2},
					follows(0, 2, 0), follows(2, 1, 0),
					{From: problem.Start(1), To: problem.End(0), Min: -4},
				},
			},
			10,
		},
		{
			"the same with a maximal lag of 3: no room for 4 between",
			problem.Problem{
				Horizon: 20, Resources: unary(),
				Activities: []problem.Activity{fixed(3, uses(0, 1)), fixed(1, uses(0, 1)), fixed(4, uses(0, 1))},
				Lags: []problem.Lag{
					follows(0, 2, 0), follows(2, 1, 0), {From: problem.Start(1), To: problem.End(0), Min: -3},
				},
			},
			-1,
		},
		{
			"a cycle of lags longer than 0: 0 ends 3 after it starts, 1 starts then, and 0 again",
			problem.Problem{Horizon: 1000000, Activities: []problem.Activity{fixed(3), fixed(1)}, Lags: []problem.Lag{follows(0, 1, 0), follows(1, 0, 0)}},
			-1,
		},
		{
			"unary: 3 + 4 + 5 = 12",
			problem.Problem{Horizon: 20, Resources: unary(), Activities: []problem.Activity{fixed(3, uses(0, 1)), fixed(4, uses(0, 1)), fixed(5, uses(0, 1))}},
			12,
		},
		{
			"capacity 3 with amounts 2, 1, 2 of length 4: 2 and 1 together, then 2: 8",
			problem.Problem{
				Horizon: 20, Resources: []problem.Resource{{Capacity: 3}},
				Activities: []problem.Activity{fixed(4, uses(0, 2)), fixed(4, uses(0, 1)), fixed(4, uses(0, 2))},
			},
			8,
		},
		{
			"closed over 3..6: 3 before, 4 after: 10",
			problem.Problem{
				Horizon: 20, Resources: []problem.Resource{{Capacity: 1, Closures: []problem.Closure{{From: 3, Until: 6}}}},
				Activities: []problem.Activity{fixed(3, uses(0, 1)), fixed(4, uses(0, 1))},
			},
			10,
		},
		{
			"variable length: 1 starts at 2 on the same resource, so 0 of length 2..6 stops at 2: 2 + 3 = 5",
			problem.Problem{
				Horizon: 20, Resources: unary(),
				Activities: []problem.Activity{{MinDuration: 2, MaxDuration: 6, Modes: []problem.Mode{uses(0, 1)}}, fixed(3, uses(0, 1))},
				Lags:       []problem.Lag{follows(0, 1, 0)},
			},
			5,
		},
		{
			"a length that a lag stretches: 0 ends when 1 ends, at 8",
			problem.Problem{
				Horizon:    20,
				Activities: []problem.Activity{{MinDuration: 2, MaxDuration: 6}, fixed(8)},
				Lags: []problem.Lag{
					{From: problem.End(1), To: problem.End(0)}, {From: problem.Start(0), To: problem.Zero(), Min: -2},
				},
			},
			8,
		},
		{
			"the same, but 0 would last 7",
			problem.Problem{
				Horizon:    20,
				Activities: []problem.Activity{{MinDuration: 2, MaxDuration: 6}, fixed(8)},
				Lags: []problem.Lag{
					{From: problem.End(1), To: problem.End(0)}, {From: problem.Start(0), To: problem.Zero(), Min: -1},
				},
			},
			-1,
		},
		{
			"modes: two machines for three activities of 4: 8",
			problem.Problem{
				Horizon: 20, Resources: []problem.Resource{{Capacity: 1}, {Capacity: 1}},
				Activities: []problem.Activity{
					fixed(4, uses(0, 1), uses(1, 1)), fixed(4, uses(0, 1), uses(1, 1)), fixed(4, uses(0, 1), uses(1, 1)),
				},
			},
			8,
		},
		{
			"a choice: 0 before 1 with a gap of 5, or 1 before 0 with 1: 2 + 1 + 3 = 6",
			problem.Problem{
				Horizon: 20, Activities: []problem.Activity{fixed(2), fixed(3)},
				Choices: []problem.Choice{{Any: []problem.Lag{follows(0, 1, 5), follows(1, 0, 1)}}},
			},
			6,
		},
		{
			"a choice that holds in mode 0 alone: mode 1 avoids it: 3",
			problem.Problem{
				Horizon: 20, Activities: []problem.Activity{fixed(3, problem.Mode{}, problem.Mode{}), fixed(3)},
				Choices: []problem.Choice{{If: []problem.Chosen{{Activity: 0}}, Any: []problem.Lag{follows(0, 1, 5), follows(1, 0, 1)}}},
			},
			3,
		},
		{
			"an empty choice forbids mode 0; mode 1 needs the unary resource: 3 + 3 = 6",
			problem.Problem{
				Horizon: 20, Resources: unary(),
				Activities: []problem.Activity{fixed(3, problem.Mode{}, uses(0, 1)), fixed(3, uses(0, 1))},
				Choices:    []problem.Choice{{If: []problem.Chosen{{Activity: 0}}}},
			},
			6,
		},
		{
			"a state: heat 10, 5 at 180, change 4, 5 at 200: 24",
			problem.Problem{Horizon: 60, States: kiln(), Activities: []problem.Activity{fixed(5, needs(1)), fixed(5, needs(2))}},
			24,
		},
		{
			"levels in common share: heat 10, then all three at 180: 15",
			problem.Problem{Horizon: 60, States: kiln(), Activities: []problem.Activity{fixed(5, needs(1, 2)), fixed(5, needs(1)), fixed(5, needs(0, 1))}},
			15,
		},
		{
			"no change before 20: 20 + 10 + 5 = 35",
			problem.Problem{
				Horizon: 60, Activities: []problem.Activity{fixed(5, needs(1))},
				States: func() []problem.State { s := kiln(); s[0].ChangeFrom = 20; return s }(),
			},
			35,
		},
		{
			"the work of a change takes the resource: 1 + 4 on it, beside heating until 10, then 5: 15",
			problem.Problem{
				Horizon: 60, Resources: unary(),
				Activities: []problem.Activity{fixed(5, needs(1)), fixed(4, uses(0, 1))},
				States:     func() []problem.State { s := kiln(); s[0].Uses = []problem.Use{{Resource: 0, Amount: 1}}; return s }(),
			},
			15,
		},
		{
			"a resource that can never hold the amount",
			problem.Problem{Horizon: 20, Resources: unary(), Activities: []problem.Activity{fixed(1, uses(0, 2))}},
			-1,
		},
		{"no activities at all: 0", problem.Problem{Horizon: 5}, 0},
	} {
		t.Run(test.name, func(t *testing.T) {
			r, err := solver.Solve(context.Background(), &test.p, solver.Options{})
			if err != nil {
				t.Fatal(err)
			}
			if test.want < 0 {
				if r.Status != solver.Infeasible || r.Solution != nil {
					t.Errorf("status %v with %+v, want infeasible", r.Status, r.Solution)
				}
				return
			}
			if r.Status != solver.Optimal || r.Levels[0].Value != test.want || r.Bound != test.want {
				t.Errorf("status %v, levels %+v, bound %d; want %d", r.Status, r.Levels, r.Bound, test.want)
			}
			if breaches := verify.Check(&test.p, r.Solution); breaches != nil {
				t.Errorf("the judge refuses it: %v", breaches)
			}
		})
	}
}

// TestObjectivesInOrder has two activities of 2 on one resource and a third
// that can wait. First the makespan, 6; then the start of 2 as late as can be
// (weight -1): it is last, at 4; then the start of 0: 0.
func TestObjectivesInOrder(t *testing.T) {
	p := &problem.Problem{
		Horizon: 20, Resources: unary(),
		Activities: []problem.Activity{fixed(2, uses(0, 1)), fixed(2, uses(0, 1)), fixed(2, uses(0, 1))},
		Objectives: []problem.Objective{
			{Name: "finish", Makespan: true},
			{Name: "late", Terms: []problem.Term{{Point: problem.Start(2), Weight: -1}}},
			{Name: "early", Terms: []problem.Term{{Point: problem.Start(0), Weight: 3}, {Point: problem.Start(1), Weight: 1}}},
		},
	}
	r, err := solver.Solve(context.Background(), p, solver.Options{})
	if err != nil {
		t.Fatal(err)
	}
	want := []solver.Level{
		{Name: "finish", Value: 6, Bound: 6, Proved: true},
		{Name: "late", Value: -4, Bound: -4, Proved: true},
		{Name: "early", Value: 2, Bound: 2, Proved: true},
	}
	if r.Status != solver.Optimal || !slices.Equal(r.Levels, want) {
		t.Errorf("status %v, levels %+v, want %+v", r.Status, r.Levels, want)
	}
}

func TestInvalidProblemIsRefused(t *testing.T) {
	_, err := solver.Solve(context.Background(), &problem.Problem{}, solver.Options{})
	if err == nil || !strings.Contains(err.Error(), "horizon") {
		t.Errorf("error %v, want one that names the horizon", err)
	}
}
