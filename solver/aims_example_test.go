package solver_test

import (
	"context"
	"fmt"

	"plait.example/solver"
	"plait.example/solver/problem"
	"plait.example/solver/verify"
)

// One press prints four sheets, two with red ink and two with black. Of all the
// shortest ways it wants one in which the ink changes as seldom as can be. The
// levels of the state are the inks; changing takes no time, but is a nuisance.
func ExampleSolve_switches() {
	inks := problem.State{Name: "ink", Levels: []string{"none yet", "red", "black"}}
	for range inks.Levels {
		inks.Change = append(inks.Change, make([]problem.Change, len(inks.Levels)))
	}
	p := &problem.Problem{
		Horizon: 60, Resources: []problem.Resource{{Name: "press", Capacity: 1}}, States: []problem.State{inks},
		Objectives: []problem.Objective{{Name: "finish", Makespan: true}, {Name: "switches", Switches: []int{0}}},
	}
	for _, sheet := range []struct {
		name    string
		minutes int
		ink     int
	}{{"title", 8, 1}, {"text", 12, 2}, {"notes", 6, 2}, {"cover", 10, 1}} {
		p.Activities = append(p.Activities, problem.Activity{
			Name: sheet.name, MinDuration: sheet.minutes, MaxDuration: sheet.minutes,
			Modes: []problem.Mode{{Uses: []problem.Use{{Resource: 0, Amount: 1}}, Needs: []problem.Need{{State: 0, Levels: []int{sheet.ink}}}}},
		})
	}
	// The text is set after the title, the cover after the notes.
	p.Lags = []problem.Lag{{From: problem.End(0), To: problem.Start(1)}, {From: problem.End(2), To: problem.Start(3)}}
	r, err := solver.Solve(context.Background(), p, solver.Options{})
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, l := range r.Levels {
		fmt.Println(l.Name, l.Value, "proved:", l.Proved)
	}
	// Output:
	// finish 36 proved: true
	// switches 3 proved: true
}

// Three jobs share a bench. What is wished for cannot all be had, so that what
// is broken weighs as little as can be.
func ExampleSolve_softLags() {
	p := &problem.Problem{Horizon: 30, Resources: []problem.Resource{{Name: "bench", Capacity: 1}}}
	for _, name := range []string{"saw", "plane", "glue"} {
		p.Activities = append(p.Activities, problem.Activity{
			Name: name, MinDuration: 5, MaxDuration: 5, Modes: []problem.Mode{{Uses: []problem.Use{{Resource: 0, Amount: 1}}}},
		})
	}
	wish := func(weight, first, then int) problem.Soft {
		return problem.Soft{Any: []problem.Lag{{From: problem.End(first), To: problem.Start(then)}}, Weight: weight}
	}
	wishes := problem.Objective{Name: "broken wishes", Soft: []problem.Soft{wish(3, 0, 1), wish(1, 2, 0), wish(2, 1, 2)}}
	p.Objectives = []problem.Objective{{Name: "finish", Makespan: true}, wishes}
	r, err := solver.Solve(context.Background(), p, solver.Options{})
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, l := range r.Levels {
		fmt.Println(l.Name, l.Value, "proved:", l.Proved)
	}
	fmt.Println("broken:", verify.Broken(wishes, r.Solution))
	// Output:
	// finish 15 proved: true
	// broken wishes 1 proved: true
	// broken: [1]
}
