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
// carries no name. It is empty if even what carries no name cannot hold.
type Conflict struct {
	Demands []string // in the order of Problem.Demands
	Minimal bool     // proved that without any one of them the rest can hold
}

// What Explain answers when there is no conflict to tell.
var (
	ErrHold     = errors.New("the demands can hold together")
	ErrUnproved = errors.New("the limits ended before it was known whether the demands can hold together")
)

// Explain finds a smallest set of demands, by name, that cannot hold together:
// one that loses its conflict with any of its members. Lags, choices, closures,
// resources and states without a name, lengths and the horizon are taken as
// given; objectives are left aside.
//
// Of two orders of preference it keeps the smaller answer, so there may be a
// smaller one still. Effort bounds the conflicts of all searches together; if
// that or the time cuts the work short, the set is a conflict all the same but
// Minimal is false. The error is ErrHold if a schedule exists, ErrUnproved if
// the limits ended before a conflict was proved, or says why p is not valid.
func Explain(ctx context.Context, p *problem.Problem, o Options) (Conflict, error) {
	if err := p.Validate(); err != nil {
		return Conflict{}, fmt.Errorf("the problem is not valid: %w", err)
	}
	if err := ctx.Err(); err != nil {
		return Conflict{}, err
	}
	if o.Time > 0 {
		var cancel context.CancelFunc
		ctx, cancel = context.WithTimeout(ctx, o.Time)
		defer cancel()
	}
	x := newExplaining(ctx, p, o)
	if x.quick(x.names) == breaks {
		// A set that fails on lags alone is found fast, and what is left of it
		// may still shrink when resources are looked at.
		x.each = x.left / shares
		return x.smallest(x.shrunk(x.quick, x.names), x.shrunk(x.quick, reversed(x.names))), nil
	}
	switch x.full(x.names) {
	case holds:
		return Conflict{}, ErrHold
	case unsure:
		return Conflict{}, ErrUnproved
	}
	x.each = x.left / shares
	return x.smallest(x.shrunk(x.full, x.names), x.shrunk(x.full, reversed(x.names))), nil
}

// Each search after the first may take one such share of the effort.
const shares = 16

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
	p         *problem.Problem
	o         Options
	names     []string
	left      int64               // conflicts that all searches may still meet
	each      int64               // conflicts that the next may meet
	schedules []*problem.Solution // found on the way
	asked     map[string]answer   // of full, by the names kept
}

func newExplaining(ctx context.Context, p *problem.Problem, o Options) *explaining {
	x := &explaining{ctx: ctx, p: problem.Without(p, nil), o: o, names: p.Demands(), left: o.Effort, asked: map[string]answer{}}
	x.p.Objectives = []problem.Objective{{Name: "none"}}
	if x.left <= 0 {
		x.left = usualEffort
	}
	x.each = x.left
	return x
}

// keep is the problem with these demands alone.
func (x *explaining) keep(names []string) *problem.Problem {
	gone := map[string]bool{}
	for _, n := range x.names {
		gone[n] = !slices.Contains(names, n)
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

// full looks at schedules found before, and then searches.
func (x *explaining) full(names []string) answer {
	key := fmt.Sprintf("%q", names)
	a, known := x.asked[key]
	if !known {
		a = x.search(x.keep(names))
		x.asked[key] = a
	}
	return a
}

func (x *explaining) search(q *problem.Problem) answer {
	for _, s := range x.schedules {
		if len(verify.Check(q, s)) == 0 {
			return holds
		}
	}
	if _, ok := temporal(q).earliest(); !ok {
		return breaks
	}
	if x.left <= 0 || x.ctx.Err() != nil {
		return unsure
	}
	r, err := Solve(x.ctx, q, Options{Seed: x.o.Seed, Effort: max(1, min(x.each, x.left))})
	x.left -= r.Stats.Conflicts
	switch {
	case err != nil:
		return unsure
	case r.Solution != nil:
		x.schedules = append(x.schedules, r.Solution)
		return holds
	case r.Status == Infeasible:
		return breaks
	}
	return unsure
}

// shrunk is a smallest part of names for which test answers breaks, if it does
// for all of them. Names that come first are kept rather than later ones
// (QuickXplain: Junker, AAAI 2004, 167-172).
func (x *explaining) shrunk(test func([]string) answer, names []string) []string {
	if test(nil) == breaks {
		return nil
	}
	return x.halve(test, nil, false, names)
}

// halve is a smallest part of names that breaks together with base. If grown,
// base has more in it than when that was last asked.
func (x *explaining) halve(test func([]string) answer, base []string, grown bool, names []string) []string {
	if grown && test(x.ordered(base)) == breaks {
		return nil
	}
	if len(names) == 1 {
		return names
	}
	first, second := names[:len(names)/2], names[len(names)/2:]
	kept := x.halve(test, slices.Concat(base, first), true, second)
	return slices.Concat(x.halve(test, slices.Concat(base, kept), len(kept) > 0, first), kept)
}

// smallest takes the smaller of two conflicts, leaves out what the full
// problem can spare, and says whether the rest is proved to be needed.
func (x *explaining) smallest(a, b []string) Conflict {
	if len(b) < len(a) {
		a = b
	}
	names := x.ordered(a)
	minimal := true
	for i := len(names) - 1; i >= 0; i-- {
		rest := slices.Concat(names[:i], names[i+1:])
		switch x.full(rest) {
		case breaks:
			names = rest
		case unsure:
			minimal = false
		}
	}
	return Conflict{Demands: names, Minimal: minimal}
}

// ordered puts names in the order of Problem.Demands.
func (x *explaining) ordered(names []string) []string {
	names = slices.Clone(names)
	slices.SortFunc(names, func(a, b string) int { return slices.Index(x.names, a) - slices.Index(x.names, b) })
	return names
}

func reversed(names []string) []string {
	names = slices.Clone(names)
	slices.Reverse(names)
	return names
}
