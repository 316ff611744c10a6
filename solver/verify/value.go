package verify

import "plait.example/solver/problem"

// Value is what the objective o comes to in s: the sum of the makespan, the
// weighted times, the number of changes that take work, that of all changes,
// and the weights of what is broken, as o asks. The schedule must be one that
// Check accepts.
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
		sum += changes(p, k, s, true)
	}
	for _, k := range o.Switches {
		sum += changes(p, k, s, false)
	}
	for _, i := range Broken(o, s) {
		sum += o.Soft[i].Weight
	}
	return sum
}

// changes counts the changes of state k, perhaps only those that take work.
func changes(p *problem.Problem, k int, s *problem.Solution, working bool) int {
	count, level := 0, p.States[k].Initial
	for _, c := range s.Changes {
		if c.State != k {
			continue
		}
		if c.Level != level && (!working || p.States[k].Change[level][c.Level].Work > 0) {
			count++
		}
		level = c.Level
	}
	return count
}

// Broken lists, by index and rising, the choices in o.Soft that s breaks. The
// schedule must be one that Check accepts.
func Broken(o problem.Objective, s *problem.Solution) []int {
	var list []int
	for i, soft := range o.Soft {
		asked := true
		for _, f := range soft.If {
			asked = asked && s.Mode[f.Activity] == f.Mode
		}
		kept := false
		for _, l := range soft.Any {
			kept = kept || s.Time(l.To)-s.Time(l.From) >= l.Min
		}
		if asked && !kept {
			list = append(list, i)
		}
	}
	return list
}
