package verify_test

import (
	"testing"

	"plait.example/solver/problem"
	"plait.example/solver/verify"
)

// A schedule of 200 activities in line, two to a resource, all of it right.
func BenchmarkCheck(b *testing.B) {
	const n = 200
	p := &problem.Problem{Horizon: 3 * n, Resources: []problem.Resource{{Capacity: 2}}}
	s := &problem.Solution{Mode: make([]int, n)}
	for i := range n {
		p.Activities = append(p.Activities, problem.Activity{
			MinDuration: 5, MaxDuration: 5, Modes: []problem.Mode{{Uses: []problem.Use{{Amount: 1}}}},
		})
		s.Start, s.End = append(s.Start, i/2*5), append(s.End, i/2*5+5)
		if i >= 2 {
			p.Lags = append(p.Lags, problem.Lag{From: problem.End(i - 2), To: problem.Start(i)})
		}
	}
	for b.Loop() {
		if breaches := verify.Check(p, s); breaches != nil {
			b.Fatal(breaches)
		}
	}
}
