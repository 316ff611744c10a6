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
		x.meet(share)
		if x.proved() || x.left <= 0 || x.ctx.Err() != nil {
			break
		}
		x.best, minimal = x.reduced(x.best, share)
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
			x.correct(x.all.without(i), newGroup(len(x.names)).with(i))
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

// correct notes a correction, less what of it a little effort finds to be kept
// with all the rest.
func (x *explaining) correct(kept, correction group) {
	for _, i := range correction.members() {
		if x.ask(kept.with(i), growShare) == holds {
			kept = x.keptWith(kept.with(i))
		}
	}
	correction = x.all.less(kept)
	if correction.size() == 1 {
		x.forced = x.forced.or(correction)
		x.least = max(x.least, x.forced.size())
	}
	x.corrections = slices.DeleteFunc(x.corrections, correction.within)
	if !slices.ContainsFunc(x.corrections, func(c group) bool { return c.within(correction) }) {
		x.corrections = append(x.corrections, correction)
	}
}

// growShare is the effort to keep one demand more, in conflicts.
const growShare = 50

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

// grow makes a correction of what g, which holds, leaves out: from above, as
// many of the others as can be are asked for with g, less one of each group
// that is found to break.
func (x *explaining) grow(g group) {
	if slices.ContainsFunc(x.corrections, func(c group) bool { return !c.meets(g) }) {
		return // one is known
	}
	want := x.all
	for {
		c := x.breaking(want)
		if c == nil {
			switch x.ask(want, growShare) {
			case holds:
				kept := x.keptWith(want)
				x.correct(kept, x.all.less(kept))
				return
			case unsure:
				kept := x.keptWith(g)
				x.correct(kept, x.all.less(kept))
				return
			}
			continue
		}
		i := x.victim(c.less(g))
		if i < 0 {
			return
		}
		want = want.without(i)
	}
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
