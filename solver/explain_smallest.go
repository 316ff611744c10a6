package solver

import "slices"

// smallest finds a smallest conflict once one is known (implicit hitting sets
// of corrections: Ignatiev, Previti, Liffiton and Marques-Silva, CP 2015,
// 173-182). When the effort is spent, it is the best that was found.
func (x *explaining) smallest() Conflict {
	x.best = x.shortest()
	x.necessary()
	x.best, _ = x.reduced(x.shortest(), firstShare)
	minimal := false
	for share := int64(firstShare); ; share *= 2 {
		before := x.left
		x.meet(share)
		if x.proved() || x.left <= 0 || x.ctx.Err() != nil {
			break
		}
		x.best, minimal = x.reduced(x.best, share)
		if x.left == before && share > x.left {
			break // nothing more to be asked with what is left
		}
	}
	if x.proved() {
		minimal = true // a conflict that could spare a member would not be smallest
	}
	c := Conflict{Minimal: minimal, Smallest: x.proved(), Least: x.least}
	for _, i := range x.best.members() {
		c.Demands = append(c.Demands, x.names[i])
	}
	return c
}

// firstShare is the effort for a question at first, in conflicts.
const firstShare = 100

func (x *explaining) proved() bool { return x.least >= x.best.size() }

// shortest is the first of the conflicts known that has the fewest members.
func (x *explaining) shortest() group {
	return slices.MinFunc(x.conflicts, func(a, b group) int { return a.size() - b.size() })
}

// necessary finds demands without which all others hold: they are in every
// conflict. With many of them, the questions that follow are easier.
func (x *explaining) necessary() {
	for _, i := range x.weighty {
		if !x.inAll(i) || x.proved() {
			continue
		}
		if x.ask(x.all.without(i), firstShare) == holds {
			x.correct(newGroup(len(x.names)).with(i))
		}
	}
	if x.forced.size() >= worthHardening {
		x.harden(x.forced)
	}
}

const worthHardening = 2

// inAll says that demand i is in every conflict that is known.
func (x *explaining) inAll(i int) bool {
	return !slices.ContainsFunc(x.conflicts, func(c group) bool { return !c.has(i) })
}

// correct notes that the rest holds without this correction.
func (x *explaining) correct(correction group) {
	if correction.size() == 1 {
		x.forced = x.forced.or(correction)
		x.least = max(x.least, x.forced.size())
	}
	if !slices.ContainsFunc(x.corrections, func(c group) bool { return c.within(correction) }) {
		x.corrections = append(slices.DeleteFunc(x.corrections, correction.within), correction)
	}
}

const (
	growShare  = 20 // effort to keep some demands more, in conflicts
	growUnsure = 2  // how many such questions may be left without an answer
)

// keptWith is the largest group known to hold that has all of g.
func (x *explaining) keptWith(g group) group {
	best := g
	for _, k := range x.kept {
		if g.within(k) && k.size() > best.size() {
			best = k
		}
	}
	return best
}

// grow makes a correction of what g, which holds, leaves out. First all of the
// others are asked for with g, less one of each conflict; then, where there is
// no answer, half of them, and so on; last those that had to make way alone.
func (x *explaining) grow(g group) {
	if slices.ContainsFunc(x.corrections, func(c group) bool { return !c.meets(g) }) {
		return // one is known
	}
	kept := x.keptWith(g)
	unsures := 0
	for parts := [][]int{x.weighty}; len(parts) > 0 && unsures < growUnsure; {
		part := parts[len(parts)-1]
		parts = parts[:len(parts)-1]
		more := newGroup(len(x.names))
		for _, i := range part {
			if !kept.has(i) && !x.known(kept.with(i)) {
				more = more.with(i)
			}
		}
		for more.size() > 0 {
			if c := x.breaking(kept.or(more)); c != nil {
				i := x.victim(c.less(kept))
				if more = more.without(i); !x.known(kept.with(i)) {
					parts = append([][]int{{i}}, parts...)
				}
				continue
			}
			switch x.ask(kept.or(more), growShare) {
			case holds:
				kept, more = x.keptWith(kept.or(more)), nil
			case unsure:
				unsures++
				if list := x.ordered(more); len(list) > 1 {
					parts = append(parts, list[len(list)/2:], list[:len(list)/2])
				}
				more = nil
			}
		}
	}
	x.correct(x.all.less(kept))
}

// ordered lists a group in the order of weight.
func (x *explaining) ordered(g group) []int {
	return slices.DeleteFunc(slices.Clone(x.weighty), func(i int) bool { return !g.has(i) })
}

// breaking is a smallest conflict known within g, or nil.
func (x *explaining) breaking(g group) (found group) {
	for _, c := range x.conflicts {
		if c.within(g) && (found == nil || c.size() < found.size()) {
			found = c
		}
	}
	return found
}

// victim is the member of g that is in the most conflicts; -1 if g is empty.
func (x *explaining) victim(g group) int {
	best, most := -1, -1
	for _, i := range x.weighty {
		if !g.has(i) {
			continue
		}
		n := 0
		for _, c := range x.conflicts {
			if c.has(i) {
				n++
			}
		}
		if n >= most {
			best, most = i, n
		}
	}
	return best
}

// reduced is a conflict within c that cannot spare a member, as far as so much
// effort a question tells, and whether that is proved.
func (x *explaining) reduced(c group, share int64) (group, bool) {
	minimal := true
	for at := len(x.weighty) - 1; at >= 0; at-- {
		i := x.weighty[at]
		if !c.has(i) || x.forced.has(i) {
			continue
		}
		rest := c.without(i)
		switch x.ask(rest, share) {
		case breaks:
			c = x.breaking(rest)
		case holds:
			x.grow(rest)
		case unsure:
			minimal = false
		}
	}
	return c, minimal
}

// meet proves the best conflict smallest or finds one that is, with so much
// effort a question.
func (x *explaining) meet(share int64) {
	for x.left > 0 && x.ctx.Err() == nil {
		h := hitting{sets: x.corrections, rank: x.ranks(), steps: hittingSteps}
		g, out := h.least(x.forced, x.least, x.best.size()-1)
		switch out {
		case none:
			x.least = x.best.size()
			return
		case gaveUp:
			return
		}
		x.least = max(x.least, g.size())
		switch x.ask(g, share) {
		case breaks:
			x.best, x.least = g, g.size()
			return
		case unsure:
			return
		}
		for g != nil {
			g = x.disjoint(g, share)
		}
	}
}

// disjoint makes a correction of what g, which holds, leaves out, and returns g
// with that correction, to find another that has no member in common with it;
// nil if that does not hold.
func (x *explaining) disjoint(g group, share int64) group {
	before := len(x.corrections)
	x.grow(g)
	if len(x.corrections) == 0 || len(x.corrections) < before {
		return nil
	}
	more := g.or(x.corrections[len(x.corrections)-1])
	if x.ask(more, share) != holds {
		return nil
	}
	return more
}

// ranks is the place of each demand in the order of weight.
func (x *explaining) ranks() []int {
	rank := make([]int, len(x.weighty))
	for at, i := range x.weighty {
		rank[i] = at
	}
	return rank
}
