package solver_test

import (
	"fmt"
	"math/rand/v2"

	"plait.example/solver/problem"
)

// workshop is an invented problem of the kind the solver is for: jobs of a
// chain of steps on one pair of hands, with waits of variable length between,
// a kiln whose setting is a state, and a bench that must be cleaned after dusty
// work. Around 110 activities for 4 jobs of 20 steps.
func workshop(seed uint64, jobs, steps int) *problem.Problem {
	w := &shop{r: rand.New(rand.NewPCG(seed, 11)), p: &problem.Problem{Name: "workshop", Horizon: 400}}
	w.p.Resources = []problem.Resource{
		{Name: "hands", Capacity: 1, Closures: []problem.Closure{{From: 90, Until: 100, Left: 0}}},
		{Name: "kiln", Capacity: 2},
		{Name: "rings", Capacity: 3},
		{Name: "drill", Capacity: 1},
		{Name: "shelf", Capacity: 4},
	}
	settings := []int{20, 180, 200, 220}
	kiln := problem.State{Name: "kiln", Uses: []problem.Use{{Resource: 0, Amount: 1}}}
	for _, a := range settings {
		kiln.Levels = append(kiln.Levels, fmt.Sprint(a))
		var row []problem.Change
		for _, b := range settings {
			row = append(row, problem.Change{Work: 1, Settle: max((b-a)/12, (a-b)/20)})
		}
		kiln.Change = append(kiln.Change, row)
	}
	bench := problem.State{
		Name: "bench", Levels: []string{"clean", "dusty"}, Uses: []problem.Use{{Resource: 0, Amount: 1}},
		Change: [][]problem.Change{{{}, {}}, {{Work: 4}, {}}},
	}
	w.p.States = []problem.State{kiln, bench}
	var fresh []problem.Term
	for j := range jobs {
		last := w.job(j, steps)
		fresh = append(fresh, problem.Term{Point: problem.End(last), Weight: -1})
	}
	fresh = append(fresh, w.wait...)
	w.p.Objectives = []problem.Objective{
		{Name: "finish", Makespan: true}, {Name: "changes", Changes: []int{0, 1}}, {Name: "fresh", Terms: fresh},
	}
	return w.p
}

type shop struct {
	r    *rand.Rand
	p    *problem.Problem
	wait []problem.Term
}

func (w *shop) add(name string, least, most int, m problem.Mode) int {
	w.p.Activities = append(w.p.Activities, problem.Activity{Name: name, MinDuration: least, MaxDuration: most, Modes: []problem.Mode{m}})
	return len(w.p.Activities) - 1
}

func (w *shop) after(from, to, least, most int) {
	w.p.Lags = append(w.p.Lags, problem.Lag{From: problem.End(from), To: problem.Start(to), Min: least})
	if most >= 0 {
		w.p.Lags = append(w.p.Lags, problem.Lag{From: problem.Start(to), To: problem.End(from), Min: -most})
	}
}

// job adds a chain of steps; every fourth is followed by a wait.
func (w *shop) job(j, steps int) int {
	hands := []problem.Use{{Resource: 0, Amount: 1}}
	last := -1
	for s := range steps {
		m := problem.Mode{Uses: hands}
		if w.r.IntN(3) == 0 {
			m.Uses = append(m.Uses[:1:1], problem.Use{Resource: 3, Amount: 1})
		}
		if w.r.IntN(2) == 0 {
			m.Needs = []problem.Need{{State: 1, Levels: []int{w.r.IntN(5) / 4}}}
		}
		d := 1 + w.r.IntN(3)
		a := w.add(fmt.Sprintf("%d.%d", j, s), d, d, m)
		if last >= 0 {
			w.after(last, a, 0, -1)
		}
		last = a
		if s%4 == 3 {
			last = w.pause(j, s, a)
		}
	}
	return last
}

// pause puts something in, leaves it for a while and takes it out.
func (w *shop) pause(j, s, before int) int {
	hands := problem.Mode{Uses: []problem.Use{{Resource: 0, Amount: 1}}}
	in := w.add(fmt.Sprintf("%d.%d in", j, s), 1, 1, hands)
	m := problem.Mode{}
	switch w.r.IntN(3) {
	case 0:
		m.Uses = []problem.Use{{Resource: 1, Amount: 1}}
		m.Needs = []problem.Need{{State: 0, Levels: [][]int{{1, 2}, {2}, {2, 3}}[w.r.IntN(3)]}}
	case 1:
		m.Uses = []problem.Use{{Resource: 2, Amount: 1}}
	default:
		m.Uses = []problem.Use{{Resource: 4, Amount: 1}}
	}
	least := 8 + w.r.IntN(20)
	rest := w.add(fmt.Sprintf("%d.%d wait", j, s), least, least+5+w.r.IntN(15), m)
	out := w.add(fmt.Sprintf("%d.%d out", j, s), 1, 1, hands)
	w.after(before, in, 0, 10)
	w.after(in, rest, 0, 0)
	w.after(rest, out, 0, 0)
	w.wait = append(w.wait, problem.Term{Point: problem.End(rest), Weight: 1}, problem.Term{Point: problem.Start(rest), Weight: -1})
	return out
}
