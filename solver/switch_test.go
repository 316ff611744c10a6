package solver

import (
	"context"
	"testing"

	"plait.example/solver/internal/brute"
	"plait.example/solver/problem"
)

// jobs are activities of these lengths and kinds on one machine; kind 0 is the
// one that it stands at first.
func jobs(lengths, kinds []int) *problem.Problem {
	p := &problem.Problem{Horizon: 30, Resources: []problem.Resource{{Capacity: 1}}}
	st := problem.State{Levels: []string{"none", "red", "blue", "green"}}
	for range st.Levels {
		st.Change = append(st.Change, make([]problem.Change, len(st.Levels)))
	}
	p.States = []problem.State{st}
	for i, d := range lengths {
		p.Activities = append(p.Activities, problem.Activity{MinDuration: d, MaxDuration: d, Modes: []problem.Mode{{
			Uses: []problem.Use{{Resource: 0, Amount: 1}}, Needs: []problem.Need{{State: 0, Levels: []int{kinds[i]}}},
		}}})
	}
	return p
}

func before(a, b int) problem.Lag { return problem.Lag{From: problem.End(a), To: problem.Start(b)} }

// The answers are worked by hand, in the comment beside each.
func TestSwitchesAndSoft(t *testing.T) {
	finish := problem.Objective{Name: "finish", Makespan: true}
	switches := problem.Objective{Name: "switches", Switches: []int{0}}
	soft := func(weight int, any ...problem.Lag) problem.Soft { return problem.Soft{Any: any, Weight: weight} }
	for _, c := range []struct {
		name string
		p    func() *problem.Problem
		want []int
	}{
		{"two kinds", func() *problem.Problem {
			// 3+1+2+2 = 8; none to red, red to blue: 2.
			p := jobs([]int{3, 1, 2, 2}, []int{1, 2, 1, 2})
			p.Objectives = []problem.Objective{finish, switches}
			return p
		}, []int{8, 2}},
		{"there and back", func() *problem.Problem {
			// Red before blue, and other blue before other red: a third switch.
			p := jobs([]int{3, 1, 2, 2}, []int{1, 2, 1, 2})
			p.Lags = []problem.Lag{before(0, 1), before(3, 2)}
			p.Objectives = []problem.Objective{finish, switches}
			return p
		}, []int{8, 3}},
		{"the finish comes first", func() *problem.Problem {
			// Red comes at 0 and at 5, blue at 2: without waiting 2+3+2 = 7 and 3 switches.
			p := jobs([]int{2, 3, 2}, []int{1, 2, 1})
			p.Lags = []problem.Lag{{From: problem.Zero(), To: problem.Start(1), Min: 2}, {From: problem.Zero(), To: problem.Start(2), Min: 5}}
			p.Objectives = []problem.Objective{finish, switches}
			return p
		}, []int{7, 3}},
		{"switches come first", func() *problem.Problem {
			// As above, but the blue comes first, at 2, and then both reds: 2+3+2+2 = 9 and 2 switches.
			p := jobs([]int{2, 3, 2}, []int{1, 2, 1})
			p.Lags = []problem.Lag{{From: problem.Zero(), To: problem.Start(1), Min: 2}, {From: problem.Zero(), To: problem.Start(2), Min: 5}}
			p.Objectives = []problem.Objective{switches, finish}
			return p
		}, []int{2, 9}},
		{"either kind", func() *problem.Problem {
			// What may be red or green is red: none to red, red to blue.
			p := jobs([]int{1, 1, 1}, []int{1, 2, 3})
			p.Activities[2].Modes[0].Needs[0].Levels = []int{3, 1}
			p.Objectives = []problem.Objective{switches}
			return p
		}, []int{2}},
		{"kinds keep apart what nothing else does", func() *problem.Problem {
			// No machine: two reds side by side (3), the blue not with them: 3 + 2. One without length takes a moment of its own: 6.
			p := jobs([]int{3, 2, 2, 0}, []int{1, 1, 2, 3})
			p.Resources[0].Capacity = 4
			p.Objectives = []problem.Objective{finish, switches}
			p.Lags = []problem.Lag{before(0, 3), before(3, 2)}
			return p
		}, []int{6, 3}},
		{"a circle of wishes", func() *problem.Problem {
			// One of three must break: the one of weight 2.
			p := jobs([]int{1, 1, 1}, []int{0, 0, 0})
			p.Objectives = []problem.Objective{finish, {Soft: []problem.Soft{soft(3, before(0, 1)), soft(2, before(1, 2)), soft(4, before(2, 0))}}}
			return p
		}, []int{3, 2}},
		{"one of two ways", func() *problem.Problem {
			// The first comes at 4 or later, or by 0: at 0, then 2 more: 4. At 4 or later the finish would be 6.
			p := jobs([]int{2, 2}, []int{0, 0})
			p.Objectives = []problem.Objective{finish, {Soft: []problem.Soft{soft(1,
				problem.Lag{From: problem.Zero(), To: problem.Start(0), Min: 4}, problem.Lag{From: problem.Start(0), To: problem.Zero()})}}}
			return p
		}, []int{4, 0}},
		{"a price of modes", func() *problem.Problem {
			// Two machines: side by side 3, at a price of 7 for the second; a wish of 1 for the first job to be over
			// before the second begins, asked only on the first machine, is not asked.
			p := jobs([]int{3, 3}, []int{0, 0})
			p.Resources = append(p.Resources, problem.Resource{Capacity: 1})
			p.Activities[1].Modes = append(p.Activities[1].Modes, problem.Mode{Uses: []problem.Use{{Resource: 1, Amount: 1}}})
			p.Objectives = []problem.Objective{finish, {Soft: []problem.Soft{
				{If: []problem.Chosen{{Activity: 1, Mode: 1}}, Weight: 7},
				{If: []problem.Chosen{{Activity: 1}}, Any: []problem.Lag{before(0, 1)}, Weight: 1},
			}}}
			return p
		}, []int{3, 7}},
		{"all in one", func() *problem.Problem {
			// 2 switches, 3 for the finish of both jobs, 5 for the wish that cannot be.
			p := jobs([]int{2, 1}, []int{1, 2})
			p.Objectives = []problem.Objective{{Makespan: true, Switches: []int{0}, Soft: []problem.Soft{soft(5, before(0, 0))}}}
			return p
		}, []int{2 + 3 + 5}},
	} {
		t.Run(c.name, func(t *testing.T) {
			r, err := Solve(context.Background(), c.p(), Options{})
			if err != nil || len(r.Levels) != len(c.want) {
				t.Fatalf("error %v, levels %+v, want %v", err, r.Levels, c.want)
			}
			for k, l := range r.Levels {
				if l.Value != c.want[k] || !l.Proved {
					t.Errorf("level %d: %+v, want %d, proved", k, l, c.want[k])
				}
			}
		})
	}
}

// What only later objectives ask for is not posted with the problem: neither
// soft choices nor a state that demands nothing.
func TestLaterObjectivesCostNothingAtFirst(t *testing.T) {
	p := jobs([]int{3, 1, 2, 2}, []int{1, 2, 1, 2})
	p.Objectives = []problem.Objective{{Makespan: true}, {Switches: []int{0}}, {Soft: []problem.Soft{{Any: []problem.Lag{before(0, 1)}, Weight: 1}}}}
	q := problem.Without(p, nil)
	q.Objectives, q.States = nil, nil
	for i := range q.Activities {
		q.Activities[i].Modes[0].Needs = nil
	}
	m, n := compile(p, 1), compile(q, 1)
	if m.e.Vars() != n.e.Vars() {
		t.Errorf("%d variables, want %d", m.e.Vars(), n.e.Vars())
	}
	m.objective(p.Objectives[1])
	if m.e.Low(m.goal[1]) != 2 || m.e.Vars() == n.e.Vars() {
		t.Errorf("at least %d switches, want 2; %d variables", m.e.Low(m.goal[1]), m.e.Vars())
	}
}

// A wish between two jobs on one machine is often the same as their order, but
// not always: every lag between them, in a day that just holds both and in one
// that leaves a little, costs what a search that tries every schedule says.
func TestWishesThatOrdersTell(t *testing.T) {
	used := 0
	for code := range 4 * 2 * 2 * 19 {
		horizon, back, ends, least := 7+code%2, code/2%2, code/4%4, code/16-9
		p := jobs([]int{3, 4}, []int{0, 0})
		p.Horizon = horizon
		l := problem.Lag{From: problem.Point{Activity: back, End: ends&1 > 0}, To: problem.Point{Activity: 1 - back, End: ends&2 > 0}, Min: least}
		p.Objectives = []problem.Objective{{Soft: []problem.Soft{{Any: []problem.Lag{l}, Weight: 2}}}}
		if _, same := compile(p, 1).orderOf(l); same {
			used++
			sameAsOrder(t, p, l)
		}
		want, _ := brute.Best(p)
		r, err := Solve(context.Background(), p, Options{Effort: 500})
		if err != nil || r.Status != Optimal || r.Levels[0].Value != want {
			t.Errorf("%+v, horizon %d: error %v, %v %+v, want %d", l, horizon, err, r.Status, r.Levels, want)
		}
		// The other way round, a schedule that breaks it is not taken for one that keeps it.
		p.Lags = []problem.Lag{{From: l.To, To: l.From, Min: 1 - least}}
		if _, found := brute.Best(p); !found {
			continue
		}
		if r, err = Solve(context.Background(), p, Options{Effort: 500}); err != nil || r.Status != Optimal || r.Levels[0].Value != 2 {
			t.Errorf("%+v broken, horizon %d: error %v, %v %+v, want 2", l, horizon, err, r.Status, r.Levels)
		}
	}
	if used < 50 {
		t.Errorf("only %d of the wishes are an order", used)
	}
}

// sameAsOrder places two jobs in every way that does not overlap: the lag must
// hold just when the activity that it comes from is first.
func sameAsOrder(t *testing.T, p *problem.Problem, l problem.Lag) {
	t.Helper()
	for one := range 9 {
		for other := range 9 {
			s := &problem.Solution{Start: []int{one, other}, End: []int{one + 3, other + 4}}
			if s.Start[0] < s.End[1] && s.Start[1] < s.End[0] {
				continue
			}
			first := s.End[l.From.Activity] <= s.Start[l.To.Activity]
			if holds := s.Time(l.To)-s.Time(l.From) >= l.Min; holds != first {
				t.Errorf("%+v is taken for an order; at %d and %d it holds: %v", l, one, other, holds)
			}
		}
	}
}
