package solver_test

import (
	"context"
	"fmt"

	"plait.example/solver"
	"plait.example/solver/problem"
)

// Glue dries for 4 to 6 before the clamp may come off, and one pair of hands
// has to paint for 5 in between. By 9 it cannot be done.
func ExampleExplain() {
	hands := []problem.Mode{{Uses: []problem.Use{{Resource: 0, Amount: 1}}}}
	p := &problem.Problem{
		Horizon: 20,
		Activities: []problem.Activity{
			{Name: "glue", MinDuration: 2, MaxDuration: 2, Modes: hands},
			{Name: "dry", MinDuration: 4, MaxDuration: 6},
			{Name: "unclamp", MinDuration: 1, MaxDuration: 1, Modes: hands},
			{Name: "paint", MinDuration: 5, MaxDuration: 5, Modes: hands},
		},
		Lags: []problem.Lag{
			{From: problem.End(0), To: problem.Start(1)},
			{From: problem.Start(1), To: problem.End(0)},
			{From: problem.End(1), To: problem.Start(2)},
			{From: problem.Start(2), To: problem.End(1)},
			{From: problem.End(0), To: problem.Start(3), Demand: "paint after gluing"},
			{From: problem.End(3), To: problem.Start(2), Demand: "paint before unclamping"},
			{From: problem.Zero(), To: problem.Start(0), Min: 2, Demand: "glue comes at 2"},
			{From: problem.End(2), To: problem.Zero(), Min: -9, Demand: "all by 9"},
		},
		Resources: []problem.Resource{{Name: "hands", Capacity: 1, Demand: "one pair of hands"}},
	}
	conflict, err := solver.Explain(context.Background(), p, solver.Options{})
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, name := range conflict.Demands {
		fmt.Println(name)
	}
	// Output:
	// paint after gluing
	// paint before unclamping
	// glue comes at 2
	// all by 9
}
