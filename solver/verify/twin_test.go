package verify_test

import (
	"math/rand/v2"
	"slices"
	"testing"

	"plait.example/solver/problem"
	"plait.example/solver/verify"
)

// holds is a second judge, slow and blunt: it looks at every unit of time by
// itself. It says yes or no and gives no reasons.
func holds(p *problem.Problem, s *problem.Solution) bool {
	for i, a := range p.Activities {
		d := s.End[i] - s.Start[i]
		if s.Start[i] < 0 || s.End[i] > p.Horizon || d < a.MinDuration || d > a.MaxDuration {
			return false
		}
	}
	kept := func(l problem.Lag) bool { return s.Time(l.To)-s.Time(l.From) >= l.Min }
	for _, l := range p.Lags {
		if !kept(l) {
			return false
		}
	}
	for _, c := range p.Choices {
		asked := !slices.ContainsFunc(c.If, func(f problem.Chosen) bool { return s.Mode[f.Activity] != f.Mode })
		if asked && !slices.ContainsFunc(c.Any, kept) {
			return false
		}
	}
	worker := make([][]int, len(p.Resources)) // [resource][time] in use
	for r := range worker {
		worker[r] = make([]int, p.Horizon+1)
	}
	for k := range p.States {
		if !stands(p, s, k, worker) {
			return false
		}
	}
	for i, a := range p.Activities {
		for t := s.Start[i]; t < s.End[i] && len(a.Modes) > 0; t++ {
			for _, u := range a.Modes[s.Mode[i]].Uses {
				worker[u.Resource][t] += u.Amount
			}
		}
	}
	for r, res := range p.Resources {
		for t, used := range worker[r] {
			left := res.Capacity
			for _, c := range res.Closures {
				if t >= c.From && t < c.Until {
					left = c.Left
				}
			}
			if used > left {
				return false
			}
		}
	}
	return true
}

const changing = -1

// stands plays state k forward: level[t] is what it stands at over [t, t+1),
// or changing.
func stands(p *problem.Problem, s *problem.Solution, k int, used [][]int) bool {
	st, now, free := p.States[k], p.States[k].Initial, 0
	level := slices.Repeat([]int{now}, p.Horizon+1)
	for _, c := range s.Changes {
		if c.State != k {
			continue
		}
		if c.Level == now || c.At < free || c.At < st.ChangeFrom {
			return false
		}
		free = c.At + st.Change[now][c.Level].Work + st.Change[now][c.Level].Settle
		if free > p.Horizon || !needed(p, s, c, free) {
			return false
		}
		for t := c.At; t <= p.Horizon; t++ {
			level[t] = c.Level
			if t < free {
				level[t] = changing
			}
			for _, u := range st.Uses {
				if t < c.At+st.Change[now][c.Level].Work {
					used[u.Resource][t] += u.Amount
				}
			}
		}
		now = c.Level
	}
	for i, a := range p.Activities {
		if len(a.Modes) == 0 {
			continue
		}
		for _, n := range a.Modes[s.Mode[i]].Needs {
			if n.State != k {
				continue
			}
			for t := s.Start[i]; t == s.Start[i] || t < s.End[i]; t++ {
				if level[t] != level[s.Start[i]] || !slices.Contains(n.Levels, level[t]) {
					return false
				}
			}
		}
	}
	return true
}

// worth is a second reading of what an objective comes to.
func worth(p *problem.Problem, o problem.Objective, s *problem.Solution) (sum int) {
	if o.Makespan {
		sum = slices.Max(s.End)
	}
	for _, t := range o.Terms {
		for range max(t.Weight, -t.Weight) {
			sum += s.Time(t.Point) * (t.Weight / max(t.Weight, -t.Weight))
		}
	}
	for k, st := range p.States {
		row := []int{st.Initial}
		for _, c := range s.Changes {
			if c.State == k {
				row = append(row, c.Level)
			}
		}
		for i, to := range row[1:] {
			if slices.Contains(o.Switches, k) {
				sum++
			}
			if slices.Contains(o.Changes, k) && st.Change[row[i]][to].Work > 0 {
				sum++
			}
		}
	}
	for _, f := range o.Soft {
		unmet := slices.ContainsFunc(f.If, func(c problem.Chosen) bool { return s.Mode[c.Activity] != c.Mode })
		held := slices.ContainsFunc(f.Any, func(l problem.Lag) bool { return s.Time(l.From)+l.Min <= s.Time(l.To) })
		if !unmet && !held {
			sum += f.Weight
		}
	}
	return sum
}

// needed says that an activity starts at the level of a change once it has
// settled, and before another change of that state begins.
func needed(p *problem.Problem, s *problem.Solution, c problem.StateChange, settled int) bool {
	until, passed := p.Horizon+1, false
	for _, next := range s.Changes {
		if passed && next.State == c.State {
			until = next.At
			break
		}
		passed = passed || next == c
	}
	for i, a := range p.Activities {
		if len(a.Modes) == 0 || s.Start[i] < settled || s.Start[i] >= until {
			continue
		}
		for _, n := range a.Modes[s.Mode[i]].Needs {
			if n.State == c.State && slices.Contains(n.Levels, c.Level) {
				return true
			}
		}
	}
	return false
}

// perturb moves one number of s by a little, or drops or adds a change.
func perturb(rng *rand.Rand, p *problem.Problem, s *problem.Solution) {
	i := rng.IntN(len(p.Activities))
	step := 1 - 2*rng.IntN(2)
	switch what := rng.IntN(6); {
	case what == 0:
		s.Start[i] += step
	case what == 1:
		s.End[i] += step
	case what == 2:
		s.Mode[i] = rng.IntN(max(1, len(p.Activities[i].Modes)))
	case what == 3 && len(s.Changes) > 0:
		c := rng.IntN(len(s.Changes))
		s.Changes = slices.Delete(s.Changes, c, c+1)
	case what == 4 && len(s.Changes) > 0:
		s.Changes[rng.IntN(len(s.Changes))].At += step
	case what == 5 && len(p.States) > 0:
		c := problem.StateChange{Level: rng.IntN(len(p.States[0].Levels)), At: rng.IntN(p.Horizon)}
		s.Changes = append(s.Changes, c)
		slices.SortStableFunc(s.Changes, func(a, b problem.StateChange) int { return a.At - b.At })
	default:
		s.Start[i] += step
		s.End[i] += step
	}
}

func clone(s *problem.Solution) *problem.Solution {
	return &problem.Solution{
		Start: slices.Clone(s.Start), End: slices.Clone(s.End),
		Mode: slices.Clone(s.Mode), Changes: slices.Clone(s.Changes),
	}
}

// The judge and its twin agree on best schedules, and on such schedules with
// one to three numbers changed.
func TestTwin(t *testing.T) {
	yes, no := 0, 0
	for _, b := range bests() {
		seed, p, best := b.seed, b.p, b.s
		rng := rand.New(rand.NewPCG(seed, 1))
		for range 200 {
			s := clone(best)
			for range rng.IntN(4) {
				perturb(rng, p, s)
			}
			breaches := verify.Check(p, s)
			if slices.ContainsFunc(s.Start, func(t int) bool { return t < 0 || t > p.Horizon }) || slices.ContainsFunc(s.Changes, func(c problem.StateChange) bool { return c.At < 0 || c.At > p.Horizon }) {
				if len(breaches) == 0 {
					t.Fatalf("seed %d: outside time, and accepted: %+v", seed, s)
				}
				continue // the twin has no table for it
			}
			want := holds(p, s)
			if got := len(breaches) == 0; got != want {
				t.Fatalf("seed %d: the judge says %v %v, its twin %v\n%+v\n%+v", seed, got, breaches, want, p, s)
			}
			if want {
				yes++
				for _, o := range p.Objectives {
					if got, want := verify.Value(p, o, s), worth(p, o, s); got != want {
						t.Fatalf("seed %d: the judge values %s at %d, its twin at %d\n%+v\n%+v", seed, o.Name, got, want, p, s)
					}
				}
			} else {
				no++
			}
		}
	}
	if yes < 1000 || no < 1000 {
		t.Errorf("a poor mixture: %d right, %d wrong", yes, no)
	}
}
