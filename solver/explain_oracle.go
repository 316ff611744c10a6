package solver

import (
	"context"
	"slices"

	"plait.example/solver/internal/lcg"
	"plait.example/solver/problem"
	"plait.example/solver/verify"
)

// oracle answers whether some demands hold together. It has one model for all
// questions: every demand has a literal that is assumed, what is learnt from
// one question serves the next, and the reasons of a failure name the demands
// to blame. What it was told or found out it never asks again.
type oracle struct {
	ctx     context.Context
	p       *problem.Problem // with every name, without objectives
	o       Options
	names   []string
	index   map[string]int
	weighty []int // the names' indices, those that bind the most first
	all     group
	cyclic  bool  // the lags alone contradict each other
	left    int64 // effort

	m    *model
	b    *brancher
	lits []lcg.Lit // by name; True for those of hard
	hard group     // what always holds in the model, and in every question

	conflicts   []group // each breaks
	kept        []group // each holds
	corrections []group // without each of which the rest hold; none holds another
	tried       map[string]int64
}

func newOracle(ctx context.Context, p *problem.Problem, o Options) *oracle {
	x := &oracle{ctx: ctx, p: problem.Without(p, nil), o: o, names: p.Demands(), left: o.Effort}
	x.p.Objectives = []problem.Objective{{Name: "none"}}
	x.index = make(map[string]int, len(x.names))
	x.all = newGroup(len(x.names))
	for i, n := range x.names {
		x.index[n] = i
		x.all = x.all.with(i)
	}
	if x.left <= 0 {
		x.left = usualEffort
	}
	_, ok := temporal(x.p).earliest()
	x.cyclic = !ok
	x.weighty = x.byWeight()
	x.harden(newGroup(len(x.names)))
	return x
}

// harden makes the model anew, with these demands in all questions to come.
// What is known of a demand from the beginning is worth more than what is
// learnt of its literal.
func (x *oracle) harden(hard group) {
	var soft []string
	for i, n := range x.names {
		if !hard.has(i) {
			soft = append(soft, n)
		}
	}
	x.hard = hard
	x.tried = map[string]int64{}
	x.m = nil
	if x.cyclic && x.cycle(hard) != nil {
		return
	}
	x.m = compileSoft(x.p, x.o.Seed, soft)
	x.m.e.SetMemory(x.o.Memory)
	x.b = newBrancher(x.m)
	x.lits = x.lits[:0]
	for _, n := range x.names {
		x.lits = append(x.lits, x.m.while(n))
	}
}

// keep is the problem with these demands alone.
func (x *oracle) keep(g group) *problem.Problem {
	gone := make(map[string]bool, len(x.names))
	for i, n := range x.names {
		gone[n] = !g.has(i)
	}
	return problem.Without(x.p, gone)
}

// askUnit is the Luby unit of a question, in conflicts.
const askUnit = 20

// callCost is how many conflicts the mere asking counts for.
const callCost = 5

// ask says whether the demands of g hold together, with at most that effort.
// If they do, kept has a group that has them all; if not, conflicts has one
// that they have.
func (x *oracle) ask(g group, effort int64) answer {
	switch {
	case slices.ContainsFunc(x.kept, g.within):
		return holds
	case x.known(g):
		return breaks
	}
	if x.cyclic {
		if c := x.cycle(g); c != nil {
			x.conflicts = append(x.conflicts, c)
			return breaks
		}
	}
	effort = min(effort, x.left)
	if effort <= 0 || x.ctx.Err() != nil || x.tried[g.key()] >= effort || x.m == nil {
		return unsure
	}
	a := x.run(g, effort)
	if a == unsure {
		x.tried[g.key()] = effort
	}
	return a
}

// known says that g has a conflict that is known.
func (x *oracle) known(g group) bool {
	return slices.ContainsFunc(x.conflicts, func(c group) bool { return c.within(g) })
}

func (x *oracle) run(g group, effort int64) answer {
	var assume []lcg.Lit
	for _, i := range x.weighty {
		if g.has(i) && !x.hard.has(i) {
			assume = append(assume, x.lits[i])
		}
	}
	before := x.m.e.Stats
	out := x.m.e.Run(lcg.Search{
		Assume: assume, Conflicts: effort, Events: effort * eventsPerConflict, Branch: x.b.next,
		Stop: func() bool { return x.ctx.Err() != nil },
		Restart: func(run int) int64 {
			x.b.byClock = run%4 == 0
			return askUnit * lcg.Luby(run)
		},
	})
	after := x.m.e.Stats
	x.left -= callCost + after.Conflicts - before.Conflicts + (after.Propagations-before.Propagations)/eventsPerConflict
	switch out {
	case lcg.Refuted:
		x.conflicts = append(x.conflicts, x.hard)
		return breaks
	case lcg.Failed:
		blamed := x.hard
		for _, l := range x.m.e.Core() {
			blamed = blamed.with(slices.Index(x.lits, l))
		}
		x.conflicts = append(x.conflicts, blamed)
		return breaks
	case lcg.Found:
		s := x.m.extract()
		for v := range x.m.e.Vars() {
			x.m.e.Prefer(lcg.Var(v), x.m.e.Low(lcg.Var(v)))
		}
		x.m.e.Reset()
		return x.hold(g, s)
	}
	return unsure
}

// hold notes a schedule for g, with all that it keeps besides.
func (x *oracle) hold(g group, s *problem.Solution) answer {
	kept := x.all
	for {
		breaches := verify.Check(x.keep(kept), s)
		if len(breaches) == 0 {
			x.kept = append(x.kept, kept)
			return holds
		}
		less := kept
		for _, b := range breaches {
			if i, named := x.index[b.Demand]; named && !g.has(i) {
				less = less.without(i)
			}
		}
		switch {
		case less.size() < kept.size():
			kept = less
		case kept.size() > g.size():
			kept = g // the judge blames one of two that clash, and it is of g
		default:
			return unsure // the judge refuses what the search found: nothing is known
		}
	}
}

// decide asks with the one model, and failing that with a model in which the
// demands are from the beginning all that there is, which deduces more.
func (x *oracle) decide(g group, effort int64) answer {
	if a := x.ask(g, effort); a != unsure || x.left <= 0 || x.ctx.Err() != nil {
		return a
	}
	r, err := Solve(x.ctx, x.keep(g), Options{Seed: x.o.Seed, Memory: x.o.Memory, Effort: max(1, min(effort, x.left))})
	x.left -= r.Stats.Conflicts + r.Stats.Propagations/eventsPerConflict + callCost
	switch {
	case err != nil:
		return unsure
	case r.Solution != nil:
		return x.hold(g, r.Solution)
	case r.Status == Infeasible:
		x.conflicts = append(x.conflicts, g)
		return breaks
	}
	return unsure
}

// cycle is a conflict of lags alone within g, or nil: the names along a cycle
// of lags that is longer than 0.
func (x *oracle) cycle(g group) group {
	q := x.keep(g)
	n := temporal(q)
	at, by := make([]int, n.nodes), make([]int, n.nodes)
	last := -1
	for range n.nodes + 1 {
		last = -1
		for k, a := range n.arcs {
			if v := at[a.from] + a.least; v > at[a.to] {
				at[a.to], by[a.to], last = v, k, a.to
			}
		}
		if last < 0 {
			return nil
		}
	}
	for range n.nodes { // from here back into the cycle
		last = n.arcs[by[last]].from
	}
	c := newGroup(len(x.names))
	for node := last; ; {
		k := by[node]
		if lag := k - 4*len(q.Activities); lag >= 0 && q.Lags[lag].Demand != "" {
			c = c.with(x.index[q.Lags[lag].Demand])
		}
		if node = n.arcs[k].from; node == last {
			return c
		}
	}
}

// byWeight puts first the names that bind the most: deadlines, and what meets
// the most activities. Conflicts of such names have fewer members.
func (x *oracle) byWeight() []int {
	weight := make([]int, len(x.names))
	add := func(name string, much int) {
		if name != "" {
			weight[x.index[name]] += much
		}
	}
	for _, l := range x.p.Lags {
		add(l.Demand, 1)
		if l.To.Activity == problem.Origin {
			add(l.Demand, len(x.p.Activities))
		}
	}
	for _, c := range x.p.Choices {
		add(c.Demand, 1)
	}
	for _, a := range x.p.Activities {
		for _, m := range a.Modes {
			for _, u := range m.Uses {
				add(x.p.Resources[u.Resource].Demand, 1)
			}
			for _, n := range m.Needs {
				add(x.p.States[n.State].Demand, 1)
			}
		}
	}
	order := make([]int, len(x.names))
	for i := range order {
		order[i] = i
	}
	slices.SortStableFunc(order, func(a, b int) int { return weight[b] - weight[a] })
	return order
}
