// Package network is the one translator between the kitchen and the engine: a
// practical becomes a scheduling problem, a solution becomes a plan. Every
// demand keeps its origin here, so that a conflict can be said in the trade's
// words. It knows nothing of how schedules are found, nor of who shows them.
package network

import (
	"context"
	"errors"
	"time"

	"plait.example/internal/practical"
	"plait.example/internal/timeplan"
	"plait.example/solver"
	"plait.example/solver/problem"
)

// Options steer one planning. Zero values are the usual ones.
type Options struct {
	Seed     int64
	Effort   int64          // greatest number of conflicts of the main search; 0: DefaultEffort
	Time     time.Duration  // safety net on the wall clock; 0: none. A plan it cut short may not repeat
	Before   *timeplan.Plan // the plan of the practical as it was before a change, or nil: what can stay where it was stays
	Improved func(Progress)
}

// DefaultEffort is what a plan is worth unless the caller says otherwise, in
// conflicts of the search. Measured: a three-dish practical needs a few hundred.
const DefaultEffort = 20000

// Progress is one step of a search that is running.
type Progress struct {
	Finish practical.TimeOfDay // of the best plan so far; meaningless until Found
	Bound  practical.TimeOfDay // no plan can finish before
	Found  bool
	Unfit  bool // it is known not to fit: what is left is to find out why, and what would help
}

// Plan dovetails a practical. The practical must pass Ready; its faults come
// back as the error otherwise. A practical that cannot fit is not an error: the
// plan then says by how much, why, and what would help.
func Plan(ctx context.Context, p *practical.Practical, o Options) (*timeplan.Plan, error) {
	if faults := p.Ready(); len(faults) > 0 {
		return nil, faults
	}
	n := translate(p)
	found, err := n.search(ctx, n.problem, o)
	if err != nil {
		return nil, err
	}
	if found.solution != nil {
		return n.finished(found), nil
	}
	return n.overrun(ctx, found.result.Status == solver.Infeasible, o)
}

// found is what a search ended with.
type found struct {
	result   solver.Result
	solution *problem.Solution // of the network's own problem, nil where there is none
	levels   []timeplan.Level
}

// harder is how many times the effort is doubled where a search ended without
// a plan and without a proof that there is none.
const harder = 4

// search solves, with more effort while nothing is known.
func (n *network) search(ctx context.Context, p *problem.Problem, o Options) (f found, err error) {
	if o.Effort <= 0 {
		o.Effort = DefaultEffort
	}
	a := n.aim(p, o.Before)
	for range 1 + harder {
		f.result, err = n.solve(ctx, a, o)
		if err != nil || f.result.Status != solver.Unknown {
			break
		}
		o.Effort *= 2
	}
	if f.result.Solution != nil {
		f.solution, f.levels = n.takeOutLater(a, f.result.Solution), a.levels(f.result)
	}
	return f, err
}

// solve runs the engine and tells the progress in times of day.
func (n *network) solve(ctx context.Context, a *aimed, o Options) (solver.Result, error) {
	var improved func(solver.Progress)
	if o.Improved != nil {
		improved = func(s solver.Progress) {
			if s.Level == 0 {
				o.Improved(Progress{Finish: n.at(s.Value), Bound: n.at(s.Bound), Found: s.Solution != nil})
			}
		}
	}
	result, err := solver.Solve(ctx, a.problem, solver.Options{
		Seed: o.Seed, Effort: o.Effort, Efforts: a.efforts(), Time: o.Time, Start: a.start, Improved: improved,
	})
	if err != nil && (result.Solution == nil || !errors.Is(err, context.Canceled)) {
		return result, err
	}
	return result, nil
}

// finished is the plan of a practical that fits. Written in steps of five
// minutes it may finish a little after the earliest that is possible.
func (n *network) finished(f found) *timeplan.Plan {
	plan := n.plan(n.settle(f.solution))
	plan.Status, plan.Bound, plan.Seed = timeplan.Feasible, n.at(f.result.Bound), f.result.Seed
	plan.Levels = n.pairLevels(f.levels, plan.Rows)
	if f.result.Status == solver.Optimal && plan.Finish == plan.Bound {
		plan.Status = timeplan.Optimal
	}
	return plan
}
