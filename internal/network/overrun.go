package network

import (
	"cmp"
	"context"
	"errors"
	"fmt"
	"slices"

	"plait.example/internal/practical"
	"plait.example/internal/timeplan"
	"plait.example/solver"
	"plait.example/solver/problem"
	"plait.example/solver/verify"
)

// askEffort is what each question of what would help is worth, in conflicts.
const askEffort = 1000

// overrun is the answer to a practical that cannot fit: the earliest it can be
// done, the demands that cannot hold together, and the ways out. Where nothing
// was found and nothing proved, it may still turn up a plan that fits.
func (n *network) overrun(ctx context.Context, proved bool, o Options) (*timeplan.Plan, error) {
	late, err := n.search(ctx, problem.Without(n.problem, map[string]bool{"finish": true, lastStretch: true}), o)
	if err != nil {
		return nil, err
	}
	if late.solution != nil && late.solution.Start[n.finish] <= n.allowed && len(verify.Check(n.problem, late.solution)) == 0 {
		return n.finished(late), nil
	}
	plan := n.late(late)
	plan.Status, plan.Seed = timeplan.Infeasible, o.Seed
	if o.Improved != nil {
		o.Improved(Progress{Finish: plan.Finish, Bound: plan.Bound, Found: len(plan.Rows) > 0, Unfit: true})
	}
	if !proved {
		plan.Notes = append(plan.Notes, "No plan that fits was found. That there is none is not proved: more effort may find one.")
	}
	return plan, n.explain(ctx, plan, o)
}

// late is the plan that runs over, or an empty one where no time would help.
func (n *network) late(f found) *timeplan.Plan {
	if f.solution == nil {
		return n.empty()
	}
	plan := n.plan(n.settle(f.solution))
	plan.Bound, plan.Levels = n.at(f.result.Bound), n.pairLevels(f.levels, plan.Rows)
	plan.Over = max(0, int(plan.Finish-plan.Allowed))
	return plan
}

// explain writes into a plan that does not fit what is to blame and what would
// help. The first is worth as much effort as the plan was: with 3000 conflicts,
// three dishes a minute short gave 34 unproved demands; with 20000, 5, proved smallest.
func (n *network) explain(ctx context.Context, plan *timeplan.Plan, o Options) error {
	conflict, err := solver.Explain(ctx, n.problem, solver.Options{Seed: o.Seed, Effort: cmp.Or(max(0, o.Effort), DefaultEffort), Time: o.Time})
	switch {
	case errors.Is(err, context.Canceled):
		conflict.Demands, err = []string{"finish"}, nil
		plan.Notes = append(plan.Notes, "You stopped the search before it knew why the plan does not fit. Dovetail again to find out.")
	case errors.Is(err, solver.ErrHold) || err == nil && len(conflict.Demands) == 0:
		conflict.Demands, err = []string{"finish"}, nil // what was not met, for want of a proof
	}
	if err != nil {
		return err
	}
	plan.Conflict = n.told(conflict.Demands)
	plan.WaysOut, err = n.waysOut(ctx, plan, conflict.Demands, o)
	return err
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
			Text: fmt.Sprintf("finish %s later, at %s", minutesOf(plan.Over), plan.Finish.Write(plan.Hours)),
		})
	}
	for _, w := range append(n.changes(), n.drops(conflict)...) {
		finish, fits, err := n.try(ctx, w, o)
		if errors.Is(err, context.Canceled) {
			break // those that are known are something
		}
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

func minutesOf(n int) string { return counted(n, "minute") }

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
	result, err := solver.Solve(ctx, p, solver.Options{Seed: o.Seed, Effort: askEffort, Efforts: []int64{0, -1, -1}, Time: o.Time})
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

// leaveOut takes a dish, and all that names its steps, out of a practical.
func leaveOut(p *practical.Practical, d int) {
	gone := map[string]bool{p.Dishes[d].Letter + "/serve": true}
	without := map[string]bool{}
	for _, s := range p.Dishes[d].Steps {
		without[s.ID] = true
		for _, part := range []part{partHands, partPutIn, partTakeOut} {
			gone[s.ID+"/"+string(part)] = true
		}
	}
	p.Dishes = slices.Delete(slices.Clone(p.Dishes), d, d+1)
	for i := range p.Dishes {
		steps := slices.Clone(p.Dishes[i].Steps)
		for j := range steps {
			steps[j].After = slices.DeleteFunc(slices.Clone(steps[j].After), func(a practical.After) bool { return without[a.Step] })
		}
		p.Dishes[i].Steps = steps
	}
	p.Rules.Dishes = 0
	p.Pins = slices.DeleteFunc(slices.Clone(p.Pins), func(pin practical.Pin) bool { return gone[pin.Row] || gone[pin.After] })
}

const giveUp = "give up this limit: "

// drops are the demands of the conflict itself that a cook may let go: a pin, a
// longest wait, a longest gap. Shortest waits are what the food needs.
func (n *network) drops(conflict []string) (ways []way) {
	for _, name := range conflict {
		for _, c := range []struct {
			prefix, words string
			cost          int
		}{
			{"pin/", "unpin: ", 5}, {"gap-most/", giveUp, 25}, {"wait-most/", giveUp, 25}, {"within/", giveUp, 27},
		} {
			if len(name) > len(c.prefix) && name[:len(c.prefix)] == c.prefix {
				ways = append(ways, way{demand: name, cost: c.cost, text: c.words + n.demands[name].Text})
			}
		}
	}
	return ways
}
