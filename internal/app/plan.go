package app

import (
	"context"

	"plait.example/internal/network"
	"plait.example/internal/practical"
	"plait.example/internal/timeplan"
)

// PlanOptions bound and steer the search. Improved may be nil; it is called
// from the planning goroutine at each better plan or bound.
type PlanOptions = network.Options

// Progress is one step of a running search.
type Progress = network.Progress

// PlanPractical plans a practical that need not be kept. A practical that breaks
// rules of form gives them all as practical.Faults; one that cannot fit is no
// error: the plan's Status, Conflict and WaysOut say so.
func (a *App) PlanPractical(ctx context.Context, p *practical.Practical, o PlanOptions) (*timeplan.Plan, error) {
	if faults := append(p.Validate(), p.Ready()...); len(faults) > 0 {
		return nil, faults
	}
	if err := a.gate.enter(ctx); err != nil {
		return nil, err
	}
	defer a.gate.leave()
	return network.Plan(ctx, p, o)
}

// Plan plans the current version of a practical and keeps the plan with it. A
// version that has a plan already is planned afresh. One that has none, after a
// change, keeps what it can of the last plan of the practical, unless o names
// another. When ctx ends during the search, the best plan so far is kept, if
// there is one. Faults of form come back as practical.Faults, with the record.
func (a *App) Plan(ctx context.Context, id string, o PlanOptions) (Record, error) {
	r, err := a.Store.Load(ctx, id)
	if err != nil {
		return Record{}, err
	}
	return a.planRecord(ctx, r, o)
}

func (a *App) planRecord(ctx context.Context, r Record, o PlanOptions) (Record, error) {
	began := a.now()
	if r.Plan == nil && o.Before == nil {
		last, err := a.Store.LastPlan(ctx, r.ID)
		if err != nil {
			return r, err
		}
		o.Before = last
	}
	made, err := a.PlanPractical(ctx, r.Practical, o)
	if err != nil {
		return r, err
	}
	ctx = context.WithoutCancel(ctx) // a search that was stopped has made a plan all the same
	if err := a.Store.SavePlan(ctx, r.ID, r.Version, made); err != nil {
		return r, err
	}
	a.log().Info("planned", "practical", r.ID, "version", r.Version, "status", made.Status, "rows", len(made.Rows), "took", a.now().Sub(began))
	return a.Store.Load(ctx, r.ID)
}
