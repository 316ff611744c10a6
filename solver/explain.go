package solver

import (
	"context"
	"errors"
	"fmt"

	"plait.example/solver/problem"
)

// Conflict is a set of demands that cannot hold together, nor with what
// carries no name. If that alone cannot hold, it is empty and Minimal. If it
// is empty and not Minimal, the limits ended before any conflict was proved.
type Conflict struct {
	Demands  []string // each name once, in the order of Problem.Demands
	Minimal  bool     // proved that without any one of them the rest can hold
	Smallest bool     // proved that no conflict has fewer demands
	Least    int      // proved that no conflict has fewer demands than this; len(Demands) if Smallest
}

// ErrHold is what Explain says of a problem that has a schedule.
var ErrHold = errors.New("the demands can hold together")

// within is a context that ends with the time of the options, if they have one.
func (o Options) within(ctx context.Context) (context.Context, context.CancelFunc) {
	if o.Time > 0 {
		return context.WithTimeout(ctx, o.Time)
	}
	return context.WithCancel(ctx)
}

// Explain finds a smallest set of demands, by name, that cannot hold together.
// Lags, choices, closures, resources and states without a name, lengths and
// the horizon are taken as given; objectives are left aside. Demands that share
// a name are one: they are kept or given up together.
//
// Effort bounds the work of all searches together, in conflicts, each search
// counting as five more than it meets. If that, the time or the memory cuts the
// work short, what is told is a conflict all the same, but perhaps not Smallest,
// or not even Minimal. The error is ErrHold if there is nothing to explain, says
// why p is not valid, or is that of a context that ended before a conflict was
// proved.
func Explain(ctx context.Context, p *problem.Problem, o Options) (Conflict, error) {
	if err := p.Validate(); err != nil {
		return Conflict{}, fmt.Errorf("the problem is not valid: %w", err)
	}
	if err := ctx.Err(); err != nil {
		return Conflict{}, err
	}
	limited, cancel := o.within(ctx)
	defer cancel()
	x := newExplaining(limited, p, o)
	switch x.decide(x.all, x.left/2) {
	case holds:
		return Conflict{}, ErrHold
	case unsure:
		return Conflict{}, ctx.Err()
	}
	return x.smallest(), nil
}

// answer says whether some demands can hold together.
type answer int

const (
	unsure answer = iota
	holds
	breaks
)

// explaining is one call of Explain. What it knows grows in two directions:
// conflicts, of which every set of demands that breaks contains one, and
// corrections, without which the rest hold. Every conflict meets every
// correction, so a smallest set that meets all corrections known is never
// larger than a smallest conflict.
type explaining struct {
	*oracle
	forced group // in every conflict
	best   group // a smallest conflict known
	least  int   // no conflict has fewer members
}

func newExplaining(ctx context.Context, p *problem.Problem, o Options) *explaining {
	x := &explaining{oracle: newOracle(ctx, p, o)}
	x.forced = newGroup(len(x.names))
	return x
}
