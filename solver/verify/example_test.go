package verify_test

import (
	"fmt"

	"plait.example/solver/problem"
	"plait.example/solver/verify"
)

func ExampleCheck() {
	p := &problem.Problem{
		Horizon: 10,
		Activities: []problem.Activity{
			{Name: "sand", MinDuration: 3, MaxDuration: 3},
			{Name: "varnish", MinDuration: 2, MaxDuration: 2},
		},
		Lags: []problem.Lag{{From: problem.End(0), To: problem.Start(1), Min: 1, Demand: "dust settles"}},
	}
	s := &problem.Solution{Start: []int{0, 3}, End: []int{3, 5}, Mode: []int{0, 0}}
	for _, b := range verify.Check(p, s) {
		fmt.Println(b)
	}
	// Output:
	// dust settles: the start of varnish is at 3, must be at least 1 after the end of sand at 3, so at 4 or later
}
