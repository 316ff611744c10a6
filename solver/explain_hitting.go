package solver

import "slices"

// hitting looks for a smallest group that meets every one of sets, by branch
// and bound: members of a set of one must be taken; sets that are disjoint ask
// for a member each, which is a bound; then each member of a shortest open set
// is tried in turn, without those tried before it.
type hitting struct {
	sets  []group
	rank  []int // by member: those of low rank are tried first
	steps int   // how many more nodes may be looked at
}

// hittingSteps is some tenths of a second's work.
const hittingSteps = 100_000

type outcome int

const (
	met    outcome = iota
	none           // no group of that size meets them all
	gaveUp         // out of steps
)

// least finds a smallest such group that has all of base, at least and at most
// so many members.
func (h *hitting) least(base group, low, high int) (group, outcome) {
	open := slices.DeleteFunc(slices.Clone(h.sets), base.meets)
	slices.SortStableFunc(open, func(a, b group) int { return a.size() - b.size() })
	for size := max(low, base.size()); size <= high; size++ {
		if g, out := h.within(base, open, size-base.size()); out != none {
			return g, out
		}
	}
	return nil, none
}

// within adds at most more members to g so that it meets the open sets, which
// stand in order of size.
func (h *hitting) within(g group, open []group, more int) (group, outcome) {
	if h.steps--; h.steps < 0 {
		return nil, gaveUp
	}
	if len(open) == 0 {
		return g, met
	}
	if disjoint(open) > more {
		return nil, none
	}
	members := open[0].members()
	often := make([]int, len(h.rank))
	for _, s := range open {
		for _, i := range s.members() {
			often[i]++
		}
	}
	slices.SortFunc(members, func(a, b int) int {
		if often[a] != often[b] {
			return often[b] - often[a]
		}
		return h.rank[a] - h.rank[b]
	})
	for _, i := range members {
		var rest []group
		for _, s := range open {
			if !s.has(i) {
				rest = append(rest, s)
			}
		}
		if found, out := h.within(g.with(i), rest, more-1); out != none {
			return found, out
		}
		if open = spared(open, i); open == nil {
			return nil, none
		}
	}
	return nil, none
}

// spared is the sets without member i, or nil if that leaves one empty.
func spared(sets []group, i int) (out []group) {
	for _, s := range sets {
		if s.has(i) {
			if s = s.without(i); s.size() == 0 {
				return nil
			}
		}
		out = append(out, s)
	}
	slices.SortStableFunc(out, func(a, b group) int { return a.size() - b.size() })
	return out
}

// disjoint counts sets of which no two have a member in common, taken greedily.
func disjoint(sets []group) (n int) {
	taken := make(group, len(sets[0]))
	for _, s := range sets {
		if !s.meets(taken) {
			taken = taken.or(s)
			n++
		}
	}
	return n
}
