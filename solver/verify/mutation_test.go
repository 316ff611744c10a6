package verify_test

import (
	"slices"
	"sync"
	"testing"

	"plait.example/solver/internal/brute"
	"plait.example/solver/problem"
	"plait.example/solver/verify"
)

// best is a random problem with its best schedule.
type best struct {
	seed uint64
	p    *problem.Problem
	s    *problem.Solution
}

// bests are found once for all the tests that break them.
var bests = sync.OnceValue(func() (list []best) {
	for seed := uint64(1000); seed < 1100; seed++ {
		p := brute.Random(seed)
		if _, s, found := brute.Lexicographic(p); found {
			list = append(list, best{seed, p, s})
		}
	}
	return list
})

// good calls each with best schedules of random problems.
func good(t *testing.T, each func(seed uint64, p *problem.Problem, s *problem.Solution)) {
	t.Helper()
	if len(bests()) < 30 {
		t.Fatalf("only %d good schedules to break", len(bests()))
	}
	for _, b := range bests() {
		each(b.seed, b.p, b.s)
	}
}

func refused(breaches []verify.Breach, demand string) bool {
	return slices.ContainsFunc(breaches, func(b verify.Breach) bool { return b.Demand == demand && b.Text != "" })
}

// Moving an activity so that a lag is short by one breaks that lag.
func TestBrokenLagsAreNamed(t *testing.T) {
	broken := 0
	good(t, func(seed uint64, p *problem.Problem, s *problem.Solution) {
		for _, l := range p.Lags {
			if l.From.Activity == l.To.Activity {
				continue
			}
			m, late := clone(s), s.Time(l.To)-s.Time(l.From)-l.Min+1
			if i := l.To.Activity; i != problem.Origin {
				m.Start[i] -= late
				m.End[i] -= late
			} else {
				m.Start[l.From.Activity] += late
				m.End[l.From.Activity] += late
			}
			broken++
			if b := verify.Check(p, m); !refused(b, l.Demand) {
				t.Errorf("seed %d: %s broken by 1, breaches %v", seed, l.Demand, b)
			}
		}
	})
	if broken < 30 {
		t.Errorf("only %d lags broken", broken)
	}
}

// Making an activity one unit shorter or longer than it may be is seen.
func TestBrokenLengthsAreSeen(t *testing.T) {
	good(t, func(seed uint64, p *problem.Problem, s *problem.Solution) {
		for i, a := range p.Activities {
			for _, d := range []int{a.MinDuration - 1, a.MaxDuration + 1} {
				m := clone(s)
				m.End[i] = m.Start[i] + d
				b := verify.Check(p, m)
				if !slices.ContainsFunc(b, func(b verify.Breach) bool { return slices.Equal(b.Activities, []int{i}) }) {
					t.Errorf("seed %d: %s lasting %d accepted: %v", seed, a.Name, d, b)
				}
			}
		}
	})
}

// A capacity one below what is in use at the start of an activity, there and
// then, is a breach of that resource.
func TestBrokenCapacitiesAreNamed(t *testing.T) {
	broken := 0
	good(t, func(seed uint64, p *problem.Problem, s *problem.Solution) {
		for i, a := range p.Activities {
			if len(a.Modes) == 0 || s.End[i] == s.Start[i] {
				continue
			}
			for _, u := range a.Modes[s.Mode[i]].Uses {
				q := problem.Without(p, nil)
				q.Resources[u.Resource].Closures = []problem.Closure{
					{From: s.Start[i], Until: s.Start[i] + 1, Left: min(u.Amount-1, q.Resources[u.Resource].Capacity), Demand: "closed"},
				}
				broken++
				if b := verify.Check(q, s); !refused(b, "closed") {
					t.Errorf("seed %d: %s runs in a closure: %v", seed, a.Name, b)
				}
			}
		}
	})
	if broken < 30 {
		t.Errorf("only %d capacities broken", broken)
	}
}

// Best schedules have no change that nobody needs, so each one missing, or
// begun in the middle of the need it serves, is a breach of the state.
func TestBrokenChangesAreNamed(t *testing.T) {
	broken := 0
	good(t, func(seed uint64, p *problem.Problem, s *problem.Solution) {
		for c, change := range s.Changes {
			m := clone(s)
			m.Changes = slices.Delete(m.Changes, c, c+1)
			late := clone(s)
			for i, a := range p.Activities {
				serves := len(a.Modes) > 0 && slices.ContainsFunc(a.Modes[s.Mode[i]].Needs, func(n problem.Need) bool { return n.State == change.State })
				if serves && s.Start[i] >= change.At && (late.Changes[c].At == change.At || s.Start[i] < late.Changes[c].At) {
					late.Changes[c].At = s.Start[i] + 1
				}
			}
			broken++
			for _, m := range []*problem.Solution{m, late} {
				if b := verify.Check(p, m); !refused(b, p.States[change.State].Demand) {
					t.Errorf("seed %d: change %d missing or late: %v\n%+v", seed, c, b, m)
				}
			}
		}
	})
	if broken < 10 {
		t.Errorf("only %d changes broken", broken)
	}
}

// Every choice that binds is seen when none of its ways is left.
func TestBrokenChoicesAreNamed(t *testing.T) {
	broken := 0
	good(t, func(seed uint64, p *problem.Problem, s *problem.Solution) {
		for c := range p.Choices {
			q := problem.Without(p, nil)
			choice := &q.Choices[c]
			binds := true
			for _, f := range choice.If {
				binds = binds && s.Mode[f.Activity] == f.Mode
			}
			for i := range choice.Any {
				l := &choice.Any[i]
				l.Min = s.Time(l.To) - s.Time(l.From) + 1
			}
			if b := verify.Check(q, s); refused(b, choice.Demand) != binds {
				t.Errorf("seed %d: %s binds: %v, breaches %v", seed, choice.Demand, binds, b)
			}
			broken++
		}
	})
	if broken < 20 {
		t.Errorf("only %d choices broken", broken)
	}
}
