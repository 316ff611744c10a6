package solver

import (
	"context"
	"errors"
	"fmt"
	"slices"

	"plait.example/solver/problem"
	"plait.example/solver/verify"
)

// Conflict is a set of demands that cannot hold together, nor with what
// carries no name. If that alone cannot hold, it is empty and Minimal. If it
// is empty and not Minimal, the limits ended before any conflict was proved.
type Conflict struct {
	Demands  []string // in the order of Problem.Demands
	Minimal  bool     // proved that without any one of them the rest can hold
	Smallest bool     // proved that no conflict has fewer demands
}

// ErrHold is what Explain says of a problem that has a schedule.
var ErrHold = errors.New("the demands can hold together")

// Explain finds a smallest set of demands, by name, that cannot hold together.
// Lags, choices, closures, resources and states without a name, lengths and
// the horizon are taken as given; objectives are left aside.
//
// Effort bounds the work of all searches together, in conflicts, each search
// counting as five more than it meets. If that or the time cuts the work short,
// what is told is a conflict all the same, but perhaps not Smallest, or not
// even Minimal. The error is ErrHold if there is nothing to explain, says why
// p is not valid, or is that of a context that ended before a conflict was proved.
func Explain(ctx context.Context, p *problem.Problem, o Options) (Conflict, error) {
	if err := p.Validate(); err != nil {
		return Conflict{}, fmt.Errorf("the problem is not valid: %w", err)
	}
	if err := ctx.Err(); err != nil {
		return Conflict{}, err
	}
	limited := ctx
	if o.Time > 0 {
		var cancel context.CancelFunc
		limited, cancel = context.WithTimeout(ctx, o.Time)
		defer cancel()
	}
	x := newExplaining(limited, p, o)
	test := x.quick
	if x.quick(x.names) != breaks {
		test = x.full
		switch x.full(x.names) {
		case holds:
			return Conflict{}, ErrHold
		case unsure:
			return Conflict{}, ctx.Err()
		}
	}
	x.each = max(leastShare, x.left/shares)
	if names, found := x.cored(); found {
		x.each, x.left = sparingShare, min(x.left, x.all/laterShare)
		return x.smallest(x.spared(names)), nil
	}
	// The smallest conflict first; if half the effort does not find it, any
	// that cannot spare a member, and what is left to make that smaller.
	reserve := x.left / 2
	x.left -= reserve
	best := x.smallest(Conflict{Demands: x.names})
	if !best.Smallest {
		x.left += reserve
		best = x.smallest(x.spared(x.shrunk(test, x.weighty())))
	}
	return best, nil
}

const (
	shares     = 16   // each search after the first may take one such share of the effort
	leastShare = 2000 // or this many conflicts, if that is more and they are there
	callCost   = 5    // conflicts that the mere asking counts for

	sparingShare = 300 // conflicts for one question about a conflict that is small already
	laterShare   = 5   // the effort divided by this is for all such questions
)

// answer says whether some demands can hold together.
type answer int

const (
	unsure answer = iota
	holds
	breaks
)

// explaining is one call of Explain.
type explaining struct {
	ctx       context.Context
	p         *problem.Problem // with every name
	o         Options
	names     []string
	place     map[string]int      // in names
	all       int64               // effort
	left      int64               // of it for all searches to come
	each      int64               // effort for the next
	schedules []*problem.Solution // found on the way
	asked     map[string]found    // by the names kept
	sets      [][]string          // each without which the rest hold together
}

// found is an answer, with a schedule if it is holds.
type found struct {
	answer   answer
	schedule *problem.Solution
}

func newExplaining(ctx context.Context, p *problem.Problem, o Options) *explaining {
	x := &explaining{ctx: ctx, p: problem.Without(p, nil), o: o, names: p.Demands(), left: o.Effort, asked: map[string]found{}}
	x.p.Objectives = []problem.Objective{{Name: "none"}}
	x.place = make(map[string]int, len(x.names))
	for i, n := range x.names {
		x.place[n] = i
	}
	if x.left <= 0 {
		x.left = usualEffort
	}
	x.all, x.each = x.left, x.left
	return x
}

// keep is the problem with these demands alone.
func (x *explaining) keep(names []string) *problem.Problem {
	gone := make(map[string]bool, len(x.names))
	for _, n := range x.names {
		gone[n] = true
	}
	for _, n := range names {
		gone[n] = false
	}
	return problem.Without(x.p, gone)
}

// quick looks at lags and lengths alone: it never answers holds.
func (x *explaining) quick(names []string) answer {
	if _, ok := temporal(x.keep(names)).earliest(); !ok {
		return breaks
	}
	return unsure
}

func (x *explaining) full(names []string) answer { return x.ask(names).answer }

// ask looks at schedules found before, and then searches.
func (x *explaining) ask(names []string) found {
	key := fmt.Sprintf("%q", x.ordered(names))
	f, known := x.asked[key]
	if !known {
		f = x.search(x.keep(names))
		x.asked[key] = f
	}
	return f
}

func (x *explaining) search(q *problem.Problem) found {
	for _, s := range x.schedules {
		if len(verify.Check(q, s)) == 0 {
			return found{holds, s}
		}
	}
	if _, ok := temporal(q).earliest(); !ok {
		return found{answer: breaks}
	}
	if x.left <= 0 || x.ctx.Err() != nil {
		return found{}
	}
	r, err := Solve(x.ctx, q, Options{Seed: x.o.Seed, Memory: x.o.Memory, Effort: max(1, min(x.each, x.left))})
	x.left -= r.Stats.Conflicts + callCost
	switch {
	case err != nil:
		return found{}
	case r.Solution != nil:
		x.schedules = append(x.schedules, r.Solution)
		return found{holds, r.Solution}
	case r.Status == Infeasible:
		return found{answer: breaks}
	}
	return found{}
}

// weighty puts first the names that bind the most: deadlines, and what meets
// the most activities. Conflicts of such names have fewer members.
func (x *explaining) weighty() []string {
	weight := map[string]int{}
	for _, l := range x.p.Lags {
		weight[l.Demand]++
		if l.To.Activity == problem.Origin {
			weight[l.Demand] += len(x.p.Activities)
		}
	}
	for _, c := range x.p.Choices {
		weight[c.Demand]++
	}
	for _, a := range x.p.Activities {
		for _, m := range a.Modes {
			for _, u := range m.Uses {
				weight[x.p.Resources[u.Resource].Demand]++
			}
			for _, n := range m.Needs {
				weight[x.p.States[n.State].Demand]++
			}
		}
	}
	names := slices.Clone(x.names)
	slices.SortStableFunc(names, func(a, b string) int { return weight[b] - weight[a] })
	return names
}

// shrunk is a part of names that breaks and that test cannot shrink further,
// if test answers breaks for all of them. Names that come first are kept
// rather than later ones (QuickXplain: Junker, AAAI 2004, 167-172).
func (x *explaining) shrunk(test func([]string) answer, names []string) []string {
	if test(nil) == breaks {
		return nil
	}
	return x.halve(test, nil, false, names)
}

// halve is such a part of names together with base. If grown, base has more in
// it than when that was last asked.
func (x *explaining) halve(test func([]string) answer, base []string, grown bool, names []string) []string {
	if grown && test(base) == breaks {
		return nil
	}
	if len(names) <= 1 {
		return names
	}
	first, second := names[:len(names)/2], names[len(names)/2:]
	kept := x.halve(test, slices.Concat(base, first), true, second)
	return slices.Concat(x.halve(test, slices.Concat(base, kept), len(kept) > 0, first), kept)
}

// spared is a conflict less what it can spare, when resources are looked at
// too, and says whether the rest is proved to be needed.
func (x *explaining) spared(conflict []string) Conflict {
	names, minimal := x.ordered(conflict), true
	for i := len(names) - 1; i >= 0; i-- {
		rest := slices.Concat(names[:i], names[i+1:])
		switch x.full(rest) {
		case breaks:
			names = rest
		case unsure:
			minimal = false
		}
	}
	return Conflict{Demands: names, Minimal: minimal, Smallest: len(names) == 0}
}

// ordered puts names in the order of Problem.Demands.
func (x *explaining) ordered(names []string) []string {
	names = slices.Clone(names)
	slices.SortFunc(names, func(a, b string) int { return x.place[a] - x.place[b] })
	return names
}
