package verify

import "plait.example/solver/problem"

// Value is what the objective o comes to in s: the sum of the makespan, the
// weighted times and the number of changes that take work, as o asks. The
// schedule must be one that Check accepts.
func Value(p *problem.Problem, o problem.Objective, s *problem.Solution) int {
	sum := 0
	if o.Makespan {
		last := 0
		for _, end := range s.End {
			last = max(last, end)
		}
		sum += last
	}
	for _, t := range o.Terms {
		sum += t.Weight * s.Time(t.Point)
	}
	for _, k := range o.Changes {
		sum += worked(p, k, s)
	}
	return sum
}

// worked counts the changes of state k that take work.
func worked(p *problem.Problem, k int, s *problem.Solution) int {
	count, level := 0, p.States[k].Initial
	for _, c := range s.Changes {
		if c.State != k {
			continue
		}
		if c.Level != level && p.States[k].Change[level][c.Level].Work > 0 {
			count++
		}
		level = c.Level
	}
	return count
}
