package solver_test

import (
	"context"
	"errors"
	"fmt"
	"math/rand/v2"
	"reflect"
	"slices"
	"strings"
	"testing"

	"plait.example/solver"
	"plait.example/solver/internal/brute"
	"plait.example/solver/problem"
	"plait.example/solver/verify"
)

func relaxed(t *testing.T, p *problem.Problem, slacks ...solver.Slack) solver.Relaxation {
	t.Helper()
	r, err := solver.Relax(context.Background(), p, slacks, solver.Options{Seed: 1})
	if err != nil || !r.Proved() {
		t.Fatalf("got %+v, error %v", r, err)
	}
	if breaches := verify.Check(solver.Relaxed(p, r.Yields), r.Solution); len(breaches) > 0 {
		t.Fatalf("%v", breaches)
	}
	return r
}

func yields(t *testing.T, r solver.Relaxation, price int, want ...solver.Yield) {
	t.Helper()
	if r.Price != price || !slices.Equal(r.Yields, want) {
		t.Errorf("price %d, %+v; want %d, %+v", r.Price, r.Yields, price, want)
	}
}

// One worker, 4 + 5 + 6 = 15 of work, all by 12: 3 later, or a second worker,
// or, where each has a deadline of its own, one that is let go.
func TestRelaxByDegrees(t *testing.T) {
	p := steps(30, 1, 4, 5, 6)
	for i := range 3 {
		after(p, "all by 12", problem.End(i), problem.Zero(), -12)
	}
	later := solver.Slack{Demand: "all by 12", Most: 20, Price: 2}
	yields(t, relaxed(t, p, later), 6, solver.Yield{Demand: "all by 12", By: 3})
	more := solver.Slack{Demand: "workers", Most: 2, Price: 5}
	yields(t, relaxed(t, p, later, more), 5, solver.Yield{Demand: "workers", By: 1})
	later.Drop = 4
	yields(t, relaxed(t, p, later, more), 4, solver.Yield{Demand: "all by 12", Dropped: true})
	yields(t, relaxed(t, steps(30, 1, 4), solver.Slack{Demand: "workers", Drop: 1}), 0)

	// By 5 in pairs: 9 in one hand is 4 too many, so two workers and 6 - 5 = 1 later.
	p = steps(30, 1, 4, 5, 6)
	for i := range 3 {
		after(p, "all by 5", problem.End(i), problem.Zero(), -5)
	}
	yields(t, relaxed(t, p, solver.Slack{Demand: "all by 5", Most: 9, Price: 1}, solver.Slack{Demand: "workers", Most: 2, Price: 3}),
		7, solver.Yield{Demand: "all by 5", By: 1}, solver.Yield{Demand: "workers", By: 2}) // 1 + 6; with one more, 4 + 5 = 9 is 4 late: 4 + 3 as well
}

// The worker is away over [4, 9) and comes back for a part: b (5) by 9 after a
// (4) wants one over [4, 9).
func TestRelaxClosure(t *testing.T) {
	p := steps(30, 1, 4, 5)
	p.Resources[0].Closures = []problem.Closure{{From: 4, Until: 9, Demand: "away"}}
	after(p, "in line", problem.End(0), problem.Start(1), 0)
	after(p, "b by 9", problem.End(1), problem.Zero(), -9)
	yields(t, relaxed(t, p, solver.Slack{Demand: "away", Most: 3, Price: 1}), 1, solver.Yield{Demand: "away", By: 1})
	// Otherwise b comes after: 9 + 5 = 14, 5 late.
	yields(t, relaxed(t, p, solver.Slack{Demand: "b by 9", Most: 9, Price: 1}), 5, solver.Yield{Demand: "b by 9", By: 5})
	// A lag of any two points: b may begin before a has ended, by so much; but one worker does not do both.
	if _, err := solver.Relax(context.Background(), p, []solver.Slack{{Demand: "in line", Most: 4, Price: 1}}, solver.Options{}); !errors.Is(err, solver.ErrStuck) {
		t.Errorf("error %v; want ErrStuck", err)
	}
}

// What is refused says why.
func TestRelaxRefuses(t *testing.T) {
	p := steps(30, 1, 4, 5)
	for want, slacks := range map[string][]solver.Slack{
		"no demand has the name": {{Demand: "nobody", Drop: 1}},
		"named twice":            {{Demand: "workers", Drop: 1}, {Demand: "workers", Drop: 1}},
		"below 0":                {{Demand: "workers", Most: -1, Drop: 1}},
		"has no price":           {{Demand: "workers", Most: 1}},
		"cannot give way":        {{Demand: "workers", Price: 1}},
		"at most":                {{Demand: "workers", Most: 1 << 20, Price: 1 << 20}},
	} {
		if _, err := solver.Relax(context.Background(), p, slacks, solver.Options{}); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%+v: error %v; want %q", slacks, err, want)
		}
	}
	p.Horizon = 0
	if _, err := solver.Relax(context.Background(), p, nil, solver.Options{}); err == nil {
		t.Error("an invalid problem is relaxed")
	}
	ctx, cancel := context.WithCancel(context.Background())
	cancel()
	if _, err := solver.Relax(ctx, steps(3, 1, 4, 5), nil, solver.Options{}); !errors.Is(err, context.Canceled) {
		t.Errorf("error %v; want that of the context", err)
	}
}

// Of random problems, what is told as the cheapest is the cheapest of all ways
// to give way that leave a schedule, each tried with every schedule.
func TestRelaxAgainstBruteForce(t *testing.T) {
	seeds := drawn(80)
	paid, stuck, several := 0, 0, 0
	for seed := range uint64(seeds) {
		p := shared(seed)
		slacks := someSlacks(p, seed)
		options := solver.Options{Seed: 1, Effort: 5000}
		got, err := solver.Relax(context.Background(), p, slacks, options)
		again, _ := solver.Relax(context.Background(), p, slacks, options)
		if !reflect.DeepEqual(got, again) {
			t.Errorf("seed %d: %+v, and again %+v", seed, got, again)
		}
		want, can := cheapest(p, slacks)
		switch {
		case !can:
			stuck++
			if !errors.Is(err, solver.ErrStuck) {
				t.Errorf("seed %d: %+v, error %v; nothing helps", seed, got, err)
			}
			continue
		case err != nil || !got.Proved() || got.Price != want:
			t.Errorf("seed %d: %+v, error %v; want a price of %d, %+v", seed, got, err, want, slacks)
			continue
		}
		if b := verify.Check(solver.Relaxed(p, got.Yields), got.Solution); len(b) > 0 {
			t.Errorf("seed %d: %v", seed, b)
		}
		if price(slacks, got.Yields) != got.Price {
			t.Errorf("seed %d: %+v have not the price %d", seed, got.Yields, got.Price)
		}
		if want > 0 {
			paid++
		}
		if len(got.Yields) > 1 {
			several++
		}
	}
	if paid < seeds/8 || stuck < seeds/40 || several == 0 {
		t.Errorf("a poor mixture: %d paid for, %d of these with several yields, %d stuck", paid, several, stuck)
	}
	t.Logf("%d paid for, %d of these with several yields, %d stuck", paid, several, stuck)
}

// shared is a random problem; every other one has demands that share names.
func shared(seed uint64) *problem.Problem {
	p := brute.Random(seed)
	p.Objectives = nil
	if seed%2 == 0 {
		return p
	}
	n := 0
	again := func(name *string) {
		if n++; *name != "" && n%2 == 0 {
			*name = fmt.Sprintf("demand %d", n%3)
		}
	}
	for i := range p.Lags {
		again(&p.Lags[i].Demand)
	}
	for i := range p.Choices {
		again(&p.Choices[i].Demand)
	}
	for i := range p.Resources {
		again(&p.Resources[i].Demand)
		for k := range p.Resources[i].Closures {
			again(&p.Resources[i].Closures[k].Demand)
		}
	}
	return p
}

// someSlacks lets up to three demands give way.
func someSlacks(p *problem.Problem, seed uint64) (slacks []solver.Slack) {
	r := rand.New(rand.NewPCG(seed, 3))
	names := p.Demands()
	for _, i := range r.Perm(len(names))[:min(3, len(names))] {
		s := solver.Slack{Demand: names[i], Most: r.IntN(3)}
		if s.Most > 0 {
			s.Price = 1 + r.IntN(3)
		}
		if s.Most == 0 || r.IntN(2) == 0 {
			s.Drop = 1 + r.IntN(6)
		}
		slacks = append(slacks, s)
	}
	return slacks
}

func price(slacks []solver.Slack, yields []solver.Yield) (sum int) {
	for _, y := range yields {
		s := slacks[slices.IndexFunc(slacks, func(s solver.Slack) bool { return s.Demand == y.Demand })]
		if y.Dropped {
			sum += s.Drop
		}
		sum += y.By * s.Price
	}
	return sum
}

// cheapest tries all ways to give way, the cheapest first, if the loosest helps.
func cheapest(p *problem.Problem, slacks []solver.Slack) (int, bool) {
	var loosest []solver.Yield
	for _, s := range slacks {
		y := solver.Yield{Demand: s.Demand, By: s.Most, Dropped: s.Drop > 0}
		if y.Dropped {
			y.By = 0
		}
		loosest = append(loosest, y)
	}
	if _, found := brute.Best(solver.Relaxed(p, loosest)); !found {
		return 0, false
	}
	ways := [][]solver.Yield{nil}
	for _, s := range slacks {
		var more [][]solver.Yield
		for _, w := range ways {
			for by := range s.Most + 1 {
				more = append(more, append(slices.Clone(w), solver.Yield{Demand: s.Demand, By: by}))
			}
			if s.Drop > 0 {
				more = append(more, append(slices.Clone(w), solver.Yield{Demand: s.Demand, Dropped: true}))
			}
		}
		ways = more
	}
	slices.SortStableFunc(ways, func(a, b []solver.Yield) int { return price(slacks, a) - price(slacks, b) })
	for _, w := range ways {
		if _, found := brute.Best(solver.Relaxed(p, w)); found {
			return price(slacks, w), true
		}
	}
	return 0, false
}
