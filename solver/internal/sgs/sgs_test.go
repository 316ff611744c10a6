package sgs

import (
	"fmt"
	"math/rand/v2"
	"slices"
	"testing"

	"plait.example/solver/internal/brute"
	"plait.example/solver/problem"
	"plait.example/solver/verify"
)

// plain is an invented plain project: up to n activities, some without
// length, up to six resources, lags that may be shorter or longer than the
// activity that they follow, release times.
func plain(r *rand.Rand, n, resources int) *problem.Problem {
	p := &problem.Problem{Horizon: 1000}
	for k := range resources {
		p.Resources = append(p.Resources, problem.Resource{Name: fmt.Sprint(k), Capacity: 1 + r.IntN(4)})
	}
	for i := range n {
		d := r.IntN(5)
		a := problem.Activity{Name: fmt.Sprint(i), MinDuration: d, MaxDuration: d}
		m := problem.Mode{}
		for k, res := range p.Resources {
			if r.IntN(2) == 0 {
				m.Uses = append(m.Uses, problem.Use{Resource: k, Amount: 1 + r.IntN(res.Capacity)})
			}
		}
		a.Modes = []problem.Mode{m}
		p.Activities = append(p.Activities, a)
		for j := range i {
			if r.IntN(4) == 0 {
				from := problem.Point{Activity: j, End: r.IntN(2) == 0}
				p.Lags = append(p.Lags, problem.Lag{From: from, To: problem.Start(i), Min: r.IntN(3)})
			}
		}
		if r.IntN(6) == 0 {
			p.Lags = append(p.Lags, problem.Lag{From: problem.Zero(), To: problem.Start(i), Min: r.IntN(4)})
		}
	}
	return p
}

// Every schedule that comes out passes the judge and has the makespan that it
// is said to have.
func TestSchedulesPassTheJudge(t *testing.T) {
	makespan := problem.Objective{Makespan: true}
	for seed := range uint64(300) {
		r := rand.New(rand.NewPCG(seed, 7))
		p := plain(r, 1+r.IntN(25), r.IntN(7))
		g, ok := Read(p)
		if !ok {
			t.Fatalf("seed %d: not read as a plain project", seed)
		}
		pop := New(g, int64(seed))
		for range 5 {
			s := pop.Best()
			if breaches := verify.Check(p, s); len(breaches) > 0 {
				t.Fatalf("seed %d: %v", seed, breaches)
			}
			if got := verify.Value(p, makespan, s); got != pop.Makespan() || got < pop.Least() {
				t.Fatalf("seed %d: makespan %d, said to be %d, at least %d", seed, got, pop.Makespan(), pop.Least())
			}
			pop.Run(200)
		}
	}
}

// On tiny projects the population finds the optimum, as a search that tries
// every schedule finds it, and the least by the lags is never above it.
func TestTinyProjectsAgainstEverySchedule(t *testing.T) {
	for seed := range uint64(300) {
		r := rand.New(rand.NewPCG(seed, 8))
		p := plain(r, 2+r.IntN(3), 1+r.IntN(3))
		for i := range p.Activities {
			d := min(p.Activities[i].MinDuration, 2)
			p.Activities[i].MinDuration, p.Activities[i].MaxDuration = d, d
		}
		g, ok := Read(p)
		if !ok {
			t.Fatalf("seed %d: not read as a plain project", seed)
		}
		pop := New(g, 1)
		pop.Run(3000)
		p.Horizon = max(1, pop.Makespan())
		least, found := brute.Best(p)
		if !found || pop.Makespan() != least || pop.Least() > least {
			t.Errorf("seed %d: makespan %d and at least %d, want %d", seed, pop.Makespan(), pop.Least(), least)
		}
	}
}

// What is not plain is refused.
func TestNotPlain(t *testing.T) {
	for name, change := range map[string]func(p *problem.Problem){
		"choice":    func(p *problem.Problem) { p.Choices = []problem.Choice{{Any: p.Lags[:1]}} },
		"length":    func(p *problem.Problem) { p.Activities[1].MaxDuration++ },
		"modes":     func(p *problem.Problem) { p.Activities[1].Modes = make([]problem.Mode, 2) },
		"need":      func(p *problem.Problem) { p.Activities[1].Modes = []problem.Mode{{Needs: make([]problem.Need, 1)}} },
		"closure":   func(p *problem.Problem) { p.Resources[0].Closures = []problem.Closure{{From: 1, Until: 2}} },
		"objective": func(p *problem.Problem) { p.Objectives = []problem.Objective{{Changes: []int{0}}} },
		"switches":  func(p *problem.Problem) { p.Objectives = []problem.Objective{{Makespan: true, Switches: []int{0}}} },
		"soft lag": func(p *problem.Problem) {
			p.Objectives = []problem.Objective{{Makespan: true, Soft: []problem.Soft{{Weight: 1}}}}
		},
		"maximal lag": func(p *problem.Problem) {
			p.Lags = append(p.Lags, problem.Lag{From: problem.Start(1), To: problem.Start(0), Min: -9})
		},
		"deadline": func(p *problem.Problem) {
			p.Lags = append(p.Lags, problem.Lag{From: problem.Start(1), To: problem.Zero(), Min: -9})
		},
		"cycle": func(p *problem.Problem) {
			p.Lags = append(p.Lags, problem.Lag{From: problem.Start(1), To: problem.Start(0)})
		},
		"too much": func(p *problem.Problem) { p.Resources[0].Capacity = 1 },
		"own end late": func(p *problem.Problem) {
			p.Lags = append(p.Lags, problem.Lag{From: problem.End(1), To: problem.Start(1)})
		},
	} {
		p := &problem.Problem{
			Horizon: 50, Resources: []problem.Resource{{Capacity: 2}}, Lags: []problem.Lag{{From: problem.Start(0), To: problem.Start(1)}},
		}
		for range 3 {
			p.Activities = append(p.Activities, problem.Activity{
				MinDuration: 2, MaxDuration: 2, Modes: []problem.Mode{{Uses: []problem.Use{{Resource: 0, Amount: 2}}}},
			})
		}
		if _, ok := Read(p); !ok {
			t.Fatal("a plain project is refused")
		}
		if change(p); accepted(p) {
			t.Errorf("%s: read as a plain project", name)
		}
	}
}

func accepted(p *problem.Problem) bool {
	_, ok := Read(p)
	return ok
}

// The same seed gives the same schedule; a schedule given to the population
// is never lost.
func TestRepeats(t *testing.T) {
	p := plain(rand.New(rand.NewPCG(5, 9)), 40, 4)
	run := func(seed int64, rounds int) *Population {
		g, _ := Read(p)
		pop := New(g, seed)
		for range rounds {
			pop.Run(5000 / int64(rounds))
		}
		return pop
	}
	a, b := run(3, 1), run(3, 1)
	if !slices.Equal(a.Best().Start, b.Best().Start) {
		t.Error("two runs with one seed differ")
	}
	g, _ := Read(p)
	other := New(g, 4)
	other.Take(a.Best())
	if other.Makespan() > a.Makespan() {
		t.Errorf("makespan %d after a schedule of %d was given", other.Makespan(), a.Makespan())
	}
}

// Making a schedule allocates nothing.
func BenchmarkSchedules(b *testing.B) {
	g, _ := Read(plain(rand.New(rand.NewPCG(6, 9)), 120, 4))
	pop := New(g, 1)
	pop.least = 0 // or it might stop at the best
	pop.Run(2 * size * 4)
	b.ReportAllocs()
	for b.Loop() {
		pop.cross()
	}
}
