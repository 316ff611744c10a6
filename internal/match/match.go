// Package match finds, for each row of a written plan, the steps of the
// recipes that it stands for, jointly over the whole plan, with how sure it
// is. It judges nothing: what is missing or wrong is for others to say.
package match

import (
	"plait.example/internal/act"
	"plait.example/internal/practical"
	"plait.example/internal/written"
)

// Matched is a written plan beside its practical.
type Matched struct {
	Plan      written.Plan
	Practical *practical.Practical // nil: only the plan is there
	Rows      []Row                // one for each of Plan.Rows, in that order
}

// Row is a row with what it says and what it stands for.
type Row struct {
	written.Row
	Acts    []act.Act // of Text, in its order
	Notes   []act.Act // of Points
	Letters []string  // the practical's dishes that it is about; without a practical, letters of our own in the order of appearance; empty: all or none
	Steps   []Step    // in the order of the text; empty: no step found
	Sure    float64   // 0 a guess to 1; of Steps, or of there being none
}

// Step is a step that a row stands for, or a part of it.
type Step struct {
	ID   string
	Part Part
	Sure float64 // 0 to 1
}

// Part says which part of a step with a wait a row stands for.
type Part string

// The parts.
const (
	Whole   Part = "whole"    // the hands' work, or all of it
	PutIn   Part = "put-in"   // the wait begins
	TakeOut Part = "take-out" // the wait ends
)
