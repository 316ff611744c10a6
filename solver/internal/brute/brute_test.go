package brute_test

import (
	"reflect"
	"testing"

	"plait.example/solver/internal/brute"
	"plait.example/solver/problem"
	"plait.example/solver/verify"
)

func fixed(name string, d int, modes ...problem.Mode) problem.Activity {
	return problem.Activity{Name: name, MinDuration: d, MaxDuration: d, Modes: modes}
}

func uses(resource, amount int) problem.Mode {
	return problem.Mode{Uses: []problem.Use{{Resource: resource, Amount: amount}}}
}

func needs(levels ...int) problem.Mode {
	return problem.Mode{Needs: []problem.Need{{State: 0, Levels: levels}}}
}

var twoLevels = problem.State{
	Name: "die", Levels: []string{"red", "blue"},
	Change: [][]problem.Change{{{}, {Work: 1, Settle: 2}}, {{Work: 1, Settle: 1}, {}}},
}

// The answers are worked by hand, in the comment beside each.
func TestBest(t *testing.T) {
	for _, c := range []struct {
		name string
		p    problem.Problem
		want int
		none bool
	}{
		{
			// 2 and 3 on one machine: 2 + 3 = 5.
			name: "unary", want: 5,
			p: problem.Problem{
				Horizon: 8, Resources: []problem.Resource{{Capacity: 1}},
				Activities: []problem.Activity{fixed("a", 2, uses(0, 1)), fixed("b", 3, uses(0, 1))},
			},
		},
		{
			// The machine is away over [2, 4): a (2) before, b (3) after: 4 + 3 = 7.
			name: "closure", want: 7,
			p: problem.Problem{
				Horizon: 8, Resources: []problem.Resource{{Capacity: 1, Closures: []problem.Closure{{From: 2, Until: 4}}}},
				Activities: []problem.Activity{fixed("a", 2, uses(0, 1)), fixed("b", 3, uses(0, 1))},
			},
		},
		{
			// b must start within 1 of a's start, but shares the machine with it for 2.
			name: "maximal lag", none: true,
			p: problem.Problem{
				Horizon: 8, Resources: []problem.Resource{{Capacity: 1}},
				Activities: []problem.Activity{fixed("a", 2, uses(0, 1)), fixed("b", 3, uses(0, 1))},
				Lags: []problem.Lag{
					{From: problem.Start(0), To: problem.Start(1)},
					{From: problem.Start(1), To: problem.Start(0), Min: -1},
				},
			},
		},
		{
			// Red first: 2, change 1 + 2, blue 2: 7. (Blue first: 3 + 2 + 2 + 2 = 9.)
			name: "state", want: 7,
			p: problem.Problem{
				Horizon: 10, States: []problem.State{twoLevels},
				Activities: []problem.Activity{fixed("a", 2, needs(0)), fixed("b", 2, needs(1))},
			},
		},
		{
			// Either level will do for b: both at once, 2.
			name: "shared level", want: 2,
			p: problem.Problem{
				Horizon: 10, States: []problem.State{twoLevels},
				Activities: []problem.Activity{fixed("a", 2, needs(0)), fixed("b", 2, needs(1, 0))},
			},
		},
		{
			// Two ways to do b: on the busy machine, or on the free one: 2 and 3 side by side.
			name: "modes", want: 3,
			p: problem.Problem{
				Horizon: 8, Resources: []problem.Resource{{Capacity: 1}, {Capacity: 1}},
				Activities: []problem.Activity{fixed("a", 2, uses(0, 1)), fixed("b", 3, uses(0, 1), uses(1, 1))},
			},
		},
		{
			// As above, but in the second mode b may not start before 1: 1 + 3 = 4.
			name: "choice", want: 4,
			p: problem.Problem{
				Horizon: 8, Resources: []problem.Resource{{Capacity: 1}, {Capacity: 1}},
				Activities: []problem.Activity{fixed("a", 2, uses(0, 1)), fixed("b", 3, uses(0, 1), uses(1, 1))},
				Choices: []problem.Choice{{
					If:  []problem.Chosen{{Activity: 1, Mode: 1}},
					Any: []problem.Lag{{From: problem.Zero(), To: problem.Start(1), Min: 1}},
				}},
			},
		},
	} {
		t.Run(c.name, func(t *testing.T) {
			got, found := brute.Best(&c.p)
			if found == c.none || got != c.want {
				t.Errorf("Best = %d, %v; want %d, %v", got, found, c.want, !c.none)
			}
		})
	}
}

// The change of the state needs the worker whom a needs as well. b can start at
// 3 at the earliest: the worker does the change over [0, 1) and a over [1, 3),
// while the state settles. So 2 times 3, minus 1, and one change.
func TestLexicographic(t *testing.T) {
	st := twoLevels
	st.Uses = []problem.Use{{Resource: 0, Amount: 1}}
	p := &problem.Problem{
		Horizon: 9, States: []problem.State{st}, Resources: []problem.Resource{{Capacity: 1}},
		Activities: []problem.Activity{fixed("a", 2, uses(0, 1)), fixed("b", 2, needs(1))},
		Lags:       []problem.Lag{{From: problem.End(0), To: problem.Start(1)}},
		Objectives: []problem.Objective{
			{Name: "start of b", Terms: []problem.Term{{Point: problem.Start(1), Weight: 2}}},
			{Name: "start of a", Terms: []problem.Term{{Point: problem.Start(0), Weight: -1}}},
			{Name: "changes", Changes: []int{0}},
		},
	}
	values, s, found := brute.Lexicographic(p)
	if want := []int{6, -1, 1}; !found || values[0] != want[0] || values[1] != want[1] || values[2] != want[2] {
		t.Fatalf("values %v, found %v; want %v", values, found, want)
	}
	if b := verify.Check(p, s); b != nil {
		t.Errorf("the judge refuses it: %v", b)
	}
}

// The random problems are valid, repeat, and are a fair mixture.
func TestRandom(t *testing.T) {
	found, states, switches, soft := 0, 0, 0, 0
	const seeds = 100
	for seed := range uint64(seeds) {
		p := brute.Random(seed)
		if err := p.Validate(); err != nil {
			t.Fatalf("seed %d: %v", seed, err)
		}
		if !reflect.DeepEqual(p, brute.Random(seed)) {
			t.Fatalf("seed %d gives two problems", seed)
		}
		if len(p.States) > 0 {
			states++
		}
		for _, o := range p.Objectives {
			switches += len(o.Switches)
			soft += len(o.Soft)
		}
		if _, s, ok := brute.Lexicographic(p); ok {
			found++
			if b := verify.Check(p, s); b != nil {
				t.Errorf("seed %d: %v", seed, b)
			}
		}
	}
	if switches < seeds/10 || soft < seeds/2 {
		t.Errorf("objectives count switches of only %d states, and have only %d soft choices", switches, soft)
	}
	if found < seeds/4 || found > seeds*3/4 || states < seeds/4 {
		t.Errorf("%d of %d have a schedule, %d a state", found, seeds, states)
	}
}
