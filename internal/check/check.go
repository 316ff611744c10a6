package check

import (
	"cmp"
	"context"
	"slices"

	"plait.example/internal/match"
)

// Options say how a plan is checked. The zero value is the usual way.
type Options struct {
	Rules  Rules  // zero: Usual()
	Saving Saving // nil: only what the plan itself shows
}

// Saving finds the cheapest change of order that would save minutes, for the
// teacher alone. False: none is known.
type Saving func(m match.Matched) (Saved, bool)

// Saved is a change of order and what it would save.
type Saved struct {
	Row     int    // that would be moved, from 1
	After   int    // row after which it would stand; 0: first
	Minutes int    // saved
	What    string // in the trade's words: "slice the salad while the quiche bakes"
}

// Run is every finding of the rules that are on, the most serious first and
// then by row, what is said of the plan as a whole after its rows. It never
// fails: what cannot be judged is not judged.
func Run(m match.Matched, o Options) []Finding {
	found, _ := RunWithin(context.Background(), m, o) // it never ends
	return found
}

// RunWithin is Run until ctx ends; its error is then that of ctx.
func RunWithin(ctx context.Context, m match.Matched, o Options) ([]Finding, error) {
	if len(m.Rows) == 0 {
		return nil, nil
	}
	v := look(m, o.Saving)
	var found []Finding
	for _, rule := range o.Rules.List() {
		if err := ctx.Err(); err != nil {
			return nil, err
		}
		if rule.On && (v.hasTimes || !rule.Times) {
			f := &asker{view: v, rule: rule}
			rule.test(v, f)
			found = append(found, f.found...)
		}
	}
	slices.SortStableFunc(found, func(a, b Finding) int {
		return cmp.Or(cmp.Compare(rank(a.Severity), rank(b.Severity)), cmp.Compare(last(a.Row), last(b.Row)))
	})
	return found, nil
}

func rank(s Severity) int { return slices.Index([]Severity{Stops, Marks, Polish}, s) }

// last puts what is said of the whole plan behind all rows.
func last(row int) int {
	if row == 0 {
		return int(^uint(0) >> 1)
	}
	return row
}
