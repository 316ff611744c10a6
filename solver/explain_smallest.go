package solver

import (
	"slices"

	"plait.example/solver/problem"
	"plait.example/solver/verify"
)

// smallest looks for a conflict of fewer demands than best, or proves that
// there is none. Every set of demands that can be given up so that the rest
// hold together has a member in every conflict. So a smallest set that meets
// all such sets known so far is a lower bound: if it breaks, it is a smallest
// conflict; if it holds, its schedule gives a new set to be met (Ignatiev,
// Previti, Liffiton and Marques-Silva, CP 2015, 173-182).
func (x *explaining) smallest(best Conflict) Conflict {
	for !best.Smallest {
		h := hitting{sets: x.sets, steps: hittingSteps}
		names, out := h.least(len(best.Demands) - 1)
		switch {
		case out == none:
			best.Smallest = true
			best.Minimal = true // a conflict that could spare a member would not be smallest
			return best
		case out == gaveUp:
			return best
		}
		f := x.ask(names)
		switch f.answer {
		case breaks:
			return Conflict{Demands: x.ordered(names), Minimal: true, Smallest: true}
		case unsure:
			return best
		}
		set := x.sacrifice(names, f.schedule)
		if len(set) == 0 {
			return Conflict{} // a schedule for all: whatever said breaks was wrong
		}
		x.sets = append(x.sets, set)
	}
	return best
}

// sacrifice is a set of demands without which the rest hold together, none of
// them in names, which schedule s keeps. It is made small by looking at what s
// keeps besides, and then by searching for schedules that keep more.
func (x *explaining) sacrifice(names []string, s *problem.Solution) []string {
	rest := slices.DeleteFunc(slices.Clone(x.names), func(n string) bool { return slices.Contains(names, n) })
	kept, rest := extended(names, rest, func(more []string) bool { return len(verify.Check(x.keep(more), s)) == 0 })
	_, rest = extended(kept, rest, func(more []string) bool { return x.full(more) == holds })
	return rest
}

// extended adds to names as much of rest as ok allows, halving what it does
// not allow, and returns what is left over as well.
func extended(names, rest []string, ok func([]string) bool) (kept, left []string) {
	if len(rest) == 0 {
		return names, nil
	}
	if more := slices.Concat(names, rest); ok(more) {
		return more, nil
	}
	if len(rest) == 1 {
		return names, rest
	}
	kept, first := extended(names, rest[:len(rest)/2], ok)
	kept, second := extended(kept, rest[len(rest)/2:], ok)
	return kept, slices.Concat(first, second)
}

// hitting looks for a smallest set of names that meets every one of sets.
type hitting struct {
	sets  [][]string
	steps int // how many more sets of names may be looked at
}

// hittingSteps is a fraction of a second's work.
const hittingSteps = 200_000

type outcome int

const (
	met    outcome = iota
	none           // no set of that size meets them all
	gaveUp         // out of steps
)

// least finds a smallest such set, of at most so many names.
func (h *hitting) least(most int) ([]string, outcome) {
	for size := 0; size <= most; size++ {
		if names, out := h.within(nil, size); out != none {
			return names, out
		}
	}
	return nil, none
}

// within adds at most more names to names, branching on the members of the
// first shortest set that is not met.
func (h *hitting) within(names []string, more int) ([]string, outcome) {
	if h.steps--; h.steps < 0 {
		return nil, gaveUp
	}
	var short []string
	for _, set := range h.sets {
		isMet := slices.ContainsFunc(set, func(n string) bool { return slices.Contains(names, n) })
		if !isMet && (short == nil || len(set) < len(short)) {
			short = set
		}
	}
	if short == nil {
		return names, met
	}
	if more == 0 {
		return nil, none
	}
	for _, n := range short {
		if found, out := h.within(append(slices.Clone(names), n), more-1); out != none {
			return found, out
		}
	}
	return nil, none
}
