package check

import (
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
	To      int    // row after which it would stand; 0: first
	Minutes int    // saved
	What    string // in the trade's words: "slice the salad while the quiche bakes"
}

// Run is every finding of the rules that are on, the most serious first and
// then by row. It never fails: what cannot be judged is not judged.
func Run(m match.Matched, o Options) []Finding {
	return nil
}
