package solver

import (
	"context"
	"errors"
	"fmt"

	"plait.example/solver/internal/lcg"
	"plait.example/solver/problem"
	"plait.example/solver/verify"
)

// Relaxation is a cheapest way to make demands hold together, and the schedule
// that it buys.
type Relaxation struct {
	Yields   []Yield           // those that give way, in the order in which they were offered
	Price    int               // of them together
	Least    int               // proved: nothing cheaper will do
	Solution *problem.Solution // keeps all of Relaxed(p, Yields); nil if the limits ended the search before there was any
	Levels   []Level           // the objectives of p in that schedule, as in Result
}

// Proved says that no relaxation is cheaper.
func (r Relaxation) Proved() bool { return r.Solution != nil && r.Least >= r.Price }

// ErrStuck is what Relax says if the demands cannot hold together even where
// all that may give way does so as far as it may.
var ErrStuck = errors.New("the demands cannot hold together even so")

// Relax finds the cheapest way to let demands of p give way so that all of them
// can hold together, and then the best schedule that this buys. Only those in
// slacks give way; offering one alone asks for the least amount that helps by
// itself. If nothing need give way, the Price is 0.
//
// The options are those of Solve; two thirds of the effort at most go into the
// price, the rest into the schedule. A search cut short still tells the cheapest
// relaxation found, and in Least what is proved. The error is ErrStuck, says
// what is wrong with p or slacks, or is that of a context that ended before
// there was a relaxation.
func Relax(ctx context.Context, p *problem.Problem, slacks []Slack, o Options) (Relaxation, error) {
	if err := p.Validate(); err != nil {
		return Relaxation{}, fmt.Errorf("the problem is not valid: %w", err)
	}
	if err := faulty(p, slacks); err != nil {
		return Relaxation{}, err
	}
	if err := ctx.Err(); err != nil {
		return Relaxation{}, err
	}
	limited, cancel := o.within(ctx)
	defer cancel()
	x, err := newRelaxing(limited, p, slacks, o)
	if err != nil {
		return Relaxation{}, err
	}
	if err := x.cheapest(); err != nil {
		return x.found, err
	}
	if x.found.Solution == nil {
		return x.found, ctx.Err()
	}
	return x.found, x.better(limited)
}

// relaxing is one call of Relax.
type relaxing struct {
	ctx    context.Context
	p      *problem.Problem
	slacks []Slack
	o      Options
	left   int64 // effort
	m      *model
	b      *brancher
	by     []lcg.Term // by slack: the units it gives; a constant 0 if not by degrees
	price  lcg.Var
	found  Relaxation
}

func newRelaxing(ctx context.Context, p *problem.Problem, slacks []Slack, o Options) (*relaxing, error) {
	x := &relaxing{ctx: ctx, p: p, slacks: slacks, o: o, left: o.Effort}
	if x.left <= 0 {
		x.left = usualEffort
	}
	var most []Yield
	var soft []string
	gone := map[string]bool{}
	for _, s := range slacks {
		most = append(most, Yield{Demand: s.Demand, By: s.Most})
		if s.Drop > 0 {
			soft = append(soft, s.Demand)
			gone[s.Demand] = true
		}
	}
	loose := Relaxed(p, most)
	loose.Objectives = []problem.Objective{{Name: "none"}}
	if _, ok := temporal(problem.Without(loose, gone)).earliest(); !ok {
		return nil, ErrStuck
	}
	x.m = compileSoft(loose, o.Seed, soft)
	x.m.e.SetMemory(o.Memory)
	x.post()
	x.b = newBrancher(x.m)
	return x, nil
}

// cheapest works from both ends: for a price below the best found, by a step
// that grows with success, and in every second round for one near the bound,
// where a failure is a proof.
func (x *relaxing) cheapest() error {
	end := x.left / 3
	slice, step, rise := int64(200), 1, 1
	for round := 0; x.left > end && x.ctx.Err() == nil && !x.found.Proved(); round++ {
		low, target := x.m.e.Low(x.price), x.m.e.High(x.price)
		fromBelow := x.found.Solution != nil && round%2 == 1
		switch {
		case fromBelow:
			target = min(low+rise-1, x.found.Price-1)
		case x.found.Solution != nil:
			target = max(low, x.found.Price-step)
		}
		out := x.search(min(slice, x.left-end), target)
		switch out {
		case lcg.Found:
			if err := x.take(); err != nil {
				return err
			}
		case lcg.Failed:
			x.m.e.AddClause(lcg.AtLeast(x.price, target+1))
		case lcg.Stopped:
			slice += slice / 4
		case lcg.Refuted:
			if x.found.Solution == nil {
				return ErrStuck
			}
			x.found.Least = x.found.Price
			continue
		}
		x.found.Least = x.m.e.Low(x.price)
		if x.found.Solution != nil {
			x.found.Least = min(x.found.Least, x.found.Price)
		}
		if fromBelow {
			rise = adapt(rise, out == lcg.Failed)
		} else {
			step = adapt(step, out == lcg.Found)
		}
	}
	return nil
}

// search looks for a schedule of at most that price; what need not give way is
// kept first.
func (x *relaxing) search(effort int64, price int) lcg.Outcome {
	before := x.m.e.Stats
	out := x.m.e.Run(lcg.Search{
		Assume: []lcg.Lit{lcg.AtMost(x.price, price)}, Conflicts: effort, Events: effort * eventsPerConflict,
		Stop: func() bool { return x.ctx.Err() != nil },
		Branch: func() (lcg.Lit, bool) {
			for _, s := range x.slacks {
				if l := x.m.while(s.Demand); undecided(x.m.e, l) {
					return l, true
				}
			}
			return x.b.next()
		},
		Restart: func(run int) int64 {
			x.b.byClock = run%4 == 0
			return firstUnit * lcg.Luby(run)
		},
	})
	after := x.m.e.Stats
	x.left -= 1 + after.Conflicts - before.Conflicts + (after.Propagations-before.Propagations)/eventsPerConflict
	return out
}

// take reads what the engine stands at, and has it judged.
func (x *relaxing) take() error {
	r := Relaxation{Solution: x.m.extract()}
	for i, s := range x.slacks {
		y := Yield{Demand: s.Demand, By: x.m.e.Min(x.by[i]), Dropped: !x.m.e.Holds(x.m.while(s.Demand))}
		if y.Dropped {
			y.By = 0
			r.Price += s.Drop
		}
		if r.Price += y.By * s.Price; y.Dropped || y.By > 0 {
			r.Yields = append(r.Yields, y)
		}
	}
	for v := range x.m.e.Vars() {
		x.m.e.Prefer(lcg.Var(v), x.m.e.Low(lcg.Var(v)))
	}
	x.m.e.Reset()
	if breaches := verify.Check(Relaxed(x.p, r.Yields), r.Solution); len(breaches) > 0 {
		return fmt.Errorf("internal error: the judge refuses a schedule that the search found: %s", breaches[0])
	}
	if x.found.Solution == nil || r.Price < x.found.Price {
		x.found = r
	}
	return nil
}

// better improves the schedule with what is left of the effort.
func (x *relaxing) better(ctx context.Context) error {
	o := x.o
	o.Start, o.Effort, o.Time, o.Proof = x.found.Solution, max(1, x.left), 0, nil
	r, err := Solve(ctx, Relaxed(x.p, x.found.Yields), o)
	if r.Solution != nil {
		x.found.Solution, x.found.Levels = r.Solution, r.Levels
		return nil
	}
	if ctx.Err() != nil {
		return nil // there was no time for it; the schedule is one all the same
	}
	return err
}
