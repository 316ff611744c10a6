package solver_test

import (
	"context"
	"fmt"

	"plait.example/solver"
	"plait.example/solver/problem"
)

// Two lorries of 4 and 5 hours are unloaded at one gate, by 7. Each way out is
// asked for alone, then the cheapest of all together.
func ExampleRelax() {
	gate := []problem.Mode{{Uses: []problem.Use{{Resource: 0, Amount: 1}}}}
	p := &problem.Problem{
		Horizon: 24,
		Activities: []problem.Activity{
			{Name: "first lorry", MinDuration: 4, MaxDuration: 4, Modes: gate},
			{Name: "second lorry", MinDuration: 5, MaxDuration: 5, Modes: gate},
		},
		Lags: []problem.Lag{
			{From: problem.End(0), To: problem.Zero(), Min: -7, Demand: "done by 7"},
			{From: problem.End(1), To: problem.Zero(), Min: -7, Demand: "done by 7"},
		},
		Resources: []problem.Resource{{Name: "gate", Capacity: 1, Demand: "one gate"}},
	}
	later := solver.Slack{Demand: "done by 7", Most: 12, Price: 10} // 10 an hour
	gates := solver.Slack{Demand: "one gate", Most: 1, Price: 50}   // 50 for another gate
	for _, slacks := range [][]solver.Slack{{later}, {gates}, {later, gates}} {
		r, err := solver.Relax(context.Background(), p, slacks, solver.Options{})
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Println(r.Yields, "price", r.Price, "proved", r.Proved(), "ends", r.Levels[0].Value)
	}
	// Output:
	// [{done by 7 2 false}] price 20 proved true ends 9
	// [{one gate 1 false}] price 50 proved true ends 5
	// [{done by 7 2 false}] price 20 proved true ends 9
}
