package network

import (
	"context"
	"fmt"
	"slices"

	"plait.example/internal/practical"
	"plait.example/internal/timeplan"
	"plait.example/solver"
	"plait.example/solver/problem"
)

// askEffort is what one question of a practical that does not fit is worth, in
// conflicts: why, and what each way out would buy.
const askEffort = 3000

// overrun is the answer to a practical that cannot fit: the earliest it can be
// done, the demands that cannot hold together, and the ways out.
func (n *network) overrun(ctx context.Context, o Options) (*timeplan.Plan, error) {
	late, err := n.solve(ctx, problem.Without(n.problem, map[string]bool{"finish": true, lastStretch: true}), o)
	if err != nil {
		return nil, err
	}
	var plan *timeplan.Plan
	if late.Solution != nil {
		solution := n.turnLater(late.Solution)
		plan = n.plan(solution)
		plan.Bound = n.at(late.Bound)
		plan.Over = int(plan.Finish - plan.Allowed)
	} else {
		plan = n.empty()
	}
	plan.Status, plan.Seed = timeplan.Infeasible, o.Seed
	conflict, err := solver.Explain(ctx, n.problem, solver.Options{Seed: o.Seed, Effort: askEffort, Time: o.Time})
	if err != nil {
		return nil, err
	}
	for _, name := range conflict.Demands {
		plan.Conflict = append(plan.Conflict, n.demands[name])
	}
	plan.WaysOut, err = n.waysOut(ctx, plan, conflict.Demands, o)
	return plan, err
}

// empty is a plan without rows: nothing can be planned whatever the time.
func (n *network) empty() *timeplan.Plan {
	p := n.practical
	plan := &timeplan.Plan{
		Title: p.Title, Date: p.Date, SetUp: n.origin, Start: p.Clock.Start, Allowed: n.at(n.allowed),
		Finish: n.at(n.allowed), Bound: n.at(n.allowed), Hours: p.Clock.Hours, Round: max(1, p.Clock.Round), Cooks: p.Cooks,
		Rows: []timeplan.Row{}, Waits: []timeplan.Wait{}, Threads: []timeplan.Thread{}, Ovens: []timeplan.Setting{},
		Notes: []string{"These demands contradict each other whatever the time allowed."},
	}
	for _, d := range p.Dishes {
		plan.Dishes = append(plan.Dishes, timeplan.Dish{Letter: d.Letter, Name: d.Name, Heat: d.Serve.Heat, Allergens: d.Allergens})
	}
	return plan
}

// way is one relaxation to try. Cost only orders them: what a teacher would
// give up first. Common practice, no source: washing-up moves before a dish is
// left out; the clean-down after raw food and safe cooking never give way.
type way struct {
	demand string
	text   string
	cost   int
	change func(p *practical.Practical) // nil: drop the demand
}

// waysOut tries each relaxation by planning again, and keeps what helps.
func (n *network) waysOut(ctx context.Context, plan *timeplan.Plan, conflict []string, o Options) ([]timeplan.WayOut, error) {
	var out []timeplan.WayOut
	if plan.Over > 0 {
		out = append(out, timeplan.WayOut{
			Demand: "finish", Cost: 30 + plan.Over, Finish: plan.Finish,
			Text: fmt.Sprintf("finish %d minutes later, at %s", plan.Over, plan.Finish.Write(plan.Hours)),
		})
	}
	for _, w := range append(n.changes(), n.drops(conflict)...) {
		finish, fits, err := n.try(ctx, w, o)
		if err != nil {
			return out, err
		}
		if fits {
			out = append(out, timeplan.WayOut{Text: w.text, Demand: w.demand, Finish: finish, Cost: w.cost})
		}
	}
	slices.SortStableFunc(out, func(a, b timeplan.WayOut) int { return a.Cost - b.Cost })
	return out, nil
}

// try plans with one thing relaxed.
func (n *network) try(ctx context.Context, w way, o Options) (practical.TimeOfDay, bool, error) {
	relaxed := n
	p := problem.Without(n.problem, map[string]bool{w.demand: true, lastStretch: true})
	if w.change != nil {
		changed := *n.practical
		changed.Dishes = slices.Clone(changed.Dishes)
		w.change(&changed)
		if len(changed.Ready()) > 0 {
			return 0, false, nil
		}
		relaxed = translate(&changed)
		p = relaxed.problem
	}
	result, err := solver.Solve(ctx, p, solver.Options{Seed: o.Seed, Effort: askEffort, Time: o.Time})
	if err != nil || result.Solution == nil {
		return 0, false, err
	}
	return relaxed.at(result.Solution.Start[relaxed.finish]), true, nil
}

// changes are the relaxations that any practical offers.
func (n *network) changes() []way {
	p := n.practical
	ways := []way{
		{
			demand: "wash-up", cost: 10, text: "leave the washing-up to the end",
			change: func(p *practical.Practical) { p.Rules.WashEvery = 0 },
		},
		{
			demand: "serving-window", cost: 15, text: fmt.Sprintf("serve within %d minutes instead of %d", 2*p.Rules.Window, p.Rules.Window),
			change: func(p *practical.Practical) { p.Rules.Window *= 2 },
		},
	}
	if p.Rules.Pace != practical.Quick {
		ways = append(ways, way{
			demand: "pace", cost: 40, text: "work at the quicker pace (the low estimate of every job)",
			change: func(p *practical.Practical) { p.Rules.Pace = practical.Quick },
		})
	}
	if p.Cooks == 1 {
		ways = append(ways, way{
			demand: "hands", cost: 60, text: "cook as a pair",
			change: func(p *practical.Practical) { p.Cooks = 2 },
		})
	}
	for d := range p.Dishes {
		if len(p.Dishes) > 1 {
			ways = append(ways, way{
				demand: "dish/" + p.Dishes[d].Letter, cost: 200 + d, text: "leave out " + p.Dishes[d].Name,
				change: func(p *practical.Practical) { leaveOut(p, d) },
			})
		}
	}
	return ways
}

// leaveOut takes a dish and its pins out of a practical.
func leaveOut(p *practical.Practical, d int) {
	gone := map[string]bool{p.Dishes[d].Letter + "/serve": true}
	for _, s := range p.Dishes[d].Steps {
		for _, part := range []part{partHands, partPutIn, partTakeOut} {
			gone[s.ID+"/"+string(part)] = true
		}
	}
	p.Dishes = slices.Delete(slices.Clone(p.Dishes), d, d+1)
	p.Rules.Dishes = 0
	p.Pins = slices.DeleteFunc(slices.Clone(p.Pins), func(pin practical.Pin) bool { return gone[pin.Row] || gone[pin.After] })
}

// drops are the demands of the conflict itself that a cook may let go: a pin, a
// longest wait, a longest gap. Shortest waits are what the food needs.
func (n *network) drops(conflict []string) (ways []way) {
	for _, name := range conflict {
		for _, c := range []struct {
			prefix, words string
			cost          int
		}{
			{"pin/", "unpin: ", 5}, {"gap-most/", "let go of: ", 25}, {"wait-most/", "let go of: ", 25}, {"within/", "let go of: ", 27},
		} {
			if len(name) > len(c.prefix) && name[:len(c.prefix)] == c.prefix {
				ways = append(ways, way{demand: name, cost: c.cost, text: c.words + n.demands[name].Text})
			}
		}
	}
	return ways
}
