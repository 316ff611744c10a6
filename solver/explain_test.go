package solver_test

import (
	"context"
	"errors"
	"fmt"
	"reflect"
	"slices"
	"testing"

	"plait.example/solver"
	"plait.example/solver/internal/brute"
	"plait.example/solver/problem"
)

// steps are activities of these lengths, each using one worker of so many.
func steps(horizon, workers int, lengths ...int) *problem.Problem {
	p := &problem.Problem{Horizon: horizon, Resources: []problem.Resource{{Name: "worker", Capacity: workers, Demand: "workers"}}}
	for i, d := range lengths {
		p.Activities = append(p.Activities, problem.Activity{
			Name: string(rune('a' + i)), MinDuration: d, MaxDuration: d,
			Modes: []problem.Mode{{Uses: []problem.Use{{Resource: 0, Amount: 1}}}},
		})
	}
	return p
}

func after(p *problem.Problem, demand string, from, to problem.Point, least int) {
	p.Lags = append(p.Lags, problem.Lag{From: from, To: to, Min: least, Demand: demand})
}

func explained(t *testing.T, p *problem.Problem, want ...string) {
	t.Helper()
	got, err := solver.Explain(context.Background(), p, solver.Options{Seed: 1})
	if err != nil || !got.Minimal || !got.Smallest || !slices.Equal(got.Demands, want) {
		t.Errorf("got %+v, error %v; want %q", got, err, want)
	}
}

// a (4) then b (5) end at 9; b must end by 8. What is said of c is beside the point.
func TestExplainLags(t *testing.T) {
	p := steps(30, 3, 4, 5, 6)
	after(p, "a before c", problem.End(0), problem.Start(2), 0)
	after(p, "a before b", problem.End(0), problem.Start(1), 0)
	after(p, "b by 8", problem.End(1), problem.Zero(), -8)
	after(p, "c from 3", problem.Zero(), problem.Start(2), 3)
	explained(t, p, "a before b", "b by 8")
}

// Two conflicts: three demands make one (a, b, c in line take 15), two the other.
// The smaller is told.
func TestExplainTellsTheSmaller(t *testing.T) {
	p := steps(30, 3, 4, 5, 6)
	after(p, "a before b", problem.End(0), problem.Start(1), 0)
	after(p, "b before c", problem.End(1), problem.Start(2), 0)
	after(p, "c by 14", problem.End(2), problem.Zero(), -14)
	after(p, "a from 7", problem.Zero(), problem.Start(0), 7)
	after(p, "a by 10", problem.End(0), problem.Zero(), -10)
	explained(t, p, "a from 7", "a by 10")
}

// One worker, 4 + 5 + 6 = 15 of work. All by 14 is one too few; any two of the
// deadlines leave the third free.
func TestExplainResource(t *testing.T) {
	p := steps(30, 1, 4, 5, 6)
	for i, name := range []string{"a by 14", "b by 14", "c by 14"} {
		after(p, name, problem.End(i), problem.Zero(), -14)
	}
	after(p, "a from 2", problem.Zero(), problem.Start(0), 2)
	explained(t, p, "a by 14", "b by 14", "c by 14", "workers")
}

// The worker is away over [4, 9): b (5) cannot be done in time, a can.
func TestExplainClosure(t *testing.T) {
	p := steps(30, 1, 4, 5)
	p.Resources[0].Closures = []problem.Closure{{From: 4, Until: 9, Demand: "away"}, {From: 20, Until: 21, Demand: "later"}}
	after(p, "b by 12", problem.End(1), problem.Zero(), -12)
	// Without "workers" no worker is asked for, so that name belongs to it.
	explained(t, p, "b by 12", "workers", "away")
}

// The worker has no name: what is left to say is the deadlines.
func TestExplainBackground(t *testing.T) {
	p := steps(30, 1, 4, 5)
	p.Resources[0].Demand = ""
	after(p, "a by 8", problem.End(0), problem.Zero(), -8)
	after(p, "b by 8", problem.End(1), problem.Zero(), -8)
	explained(t, p, "a by 8", "b by 8")
	p.Horizon = 8
	explained(t, p)
}

// Red and blue at once, and the change takes 3.
func TestExplainStateAndChoice(t *testing.T) {
	p := steps(30, 3, 4, 4, 1)
	p.States = []problem.State{{
		Name: "die", Levels: []string{"red", "blue"}, Demand: "one die",
		Change: [][]problem.Change{{{}, {Work: 1, Settle: 2}}, {{Work: 1, Settle: 2}, {}}},
	}}
	for i := range 2 {
		p.Activities[i].Modes[0].Needs = []problem.Need{{State: 0, Levels: []int{i}}}
	}
	p.Choices = []problem.Choice{{Demand: "together", Any: []problem.Lag{{From: problem.Start(1), To: problem.Start(0), Min: -6}}}}
	p.Choices = append(p.Choices, problem.Choice{Demand: "red first", Any: []problem.Lag{{From: problem.End(0), To: problem.Start(1)}}})
	explained(t, p, "together", "red first", "one die")
}

func TestExplainNothingToExplain(t *testing.T) {
	p := steps(30, 1, 4, 5)
	after(p, "b by 9", problem.End(1), problem.Zero(), -9)
	if got, err := solver.Explain(context.Background(), p, solver.Options{}); !errors.Is(err, solver.ErrHold) {
		t.Errorf("got %+v, error %v; want ErrHold", got, err)
	}
	p.Horizon = 0
	if _, err := solver.Explain(context.Background(), p, solver.Options{}); err == nil {
		t.Error("an invalid problem is explained")
	}
	ctx, cancel := context.WithCancel(context.Background())
	cancel()
	if _, err := solver.Explain(ctx, steps(3, 1, 4, 5), solver.Options{}); !errors.Is(err, context.Canceled) {
		t.Errorf("error %v; want that of the context", err)
	}
}

// choose calls each with every choice of so many of the names.
func choose(names []string, count int, each func([]string)) {
	var pick func(chosen []string, from int)
	pick = func(chosen []string, from int) {
		if len(chosen) == count {
			each(chosen)
			return
		}
		for i := from; i < len(names); i++ {
			pick(append(slices.Clone(chosen), names[i]), i+1)
		}
	}
	if count >= 0 {
		pick(nil, 0)
	}
}

// Every conflict told for a random problem is one, and no set with fewer
// members is, by trying all schedules; so every part of it can hold. Every
// other problem has demands that share a name. The same call gives the same
// answer, and ErrHold is said of exactly those that have a schedule.
func TestExplainAgainstBruteForce(t *testing.T) {
	told, empty := 0, 0
	for seed := range uint64(drawn(400)) {
		p := shared(seed)
		got, err := solver.Explain(context.Background(), p, solver.Options{Seed: 1})
		again, _ := solver.Explain(context.Background(), p, solver.Options{Seed: 1})
		if !reflect.DeepEqual(got, again) {
			t.Errorf("seed %d: %+v, and again %+v", seed, got, again)
		}
		if errors.Is(err, solver.ErrHold) {
			if _, found := brute.Best(p); !found {
				t.Errorf("seed %d: said to hold, but there is no schedule", seed)
			}
			continue
		}
		if err != nil || !got.Minimal || !got.Smallest || got.Least != len(got.Demands) {
			t.Errorf("seed %d: %+v, error %v", seed, got, err)
			continue
		}
		told++
		if len(got.Demands) == 0 {
			empty++
		}
		only := func(names []string) *problem.Problem {
			gone := map[string]bool{}
			for _, n := range p.Demands() {
				gone[n] = !slices.Contains(names, n)
			}
			return problem.Without(p, gone)
		}
		if _, found := brute.Best(only(got.Demands)); found {
			t.Errorf("seed %d: %q can hold together", seed, got.Demands)
		}
		// What has one member fewer, whichever they are, can hold.
		choose(p.Demands(), len(got.Demands)-1, func(names []string) {
			if _, found := brute.Best(only(names)); !found {
				t.Errorf("seed %d: %q is told, but %q conflict", seed, got.Demands, names)
			}
		})
	}
	t.Logf("%d conflicts told, %d of them empty", told, empty)
	if told < drawn(100) || empty > told/4 {
		t.Errorf("a poor mixture: %d conflicts told, %d of them empty", told, empty)
	}
}

// With little effort the answer is none, or a true conflict.
func TestExplainCutShort(t *testing.T) {
	p := steps(60, 2, 7, 6, 5, 7, 6, 5, 4, 7, 6)
	for i := range p.Activities {
		after(p, fmt.Sprintf("%c by 26", 'a'+i), problem.End(i), problem.Zero(), -26)
	}
	for effort := int64(1); effort <= 1<<16; effort *= 4 {
		got, err := solver.Explain(context.Background(), p, solver.Options{Effort: effort})
		switch {
		case err != nil:
			t.Errorf("effort %d: %v", effort, err)
		case got.Demands == nil && !got.Minimal && effort < 1<<16: // nothing was proved
		case len(got.Demands) != 10 || !got.Minimal && effort == 1<<16:
			// 7 + 6 + 5 + 7 + 6 + 5 + 4 + 7 + 6 = 53 of work where there is 2 * 26
			// = 52. Without any one there is room: the two can share the work
			// evenly. So all nine deadlines and the workers make the one conflict.
			t.Errorf("effort %d: %+v", effort, got)
		}
	}
}
