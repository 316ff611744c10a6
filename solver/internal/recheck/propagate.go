package recheck

import "plait.example/solver/problem"

// propagate applies every constraint in turn until nothing changes; false if
// one cannot hold. Cheap ones go first.
func (c *checker) propagate(d *domain) bool {
	for !d.dead {
		d.changed = false
		for _, rule := range [...]func(*domain){c.times, c.oneMode, c.choices, c.meanings, c.broken, c.lengths, c.goals, c.learnt} {
			if rule(d); d.dead {
				return false
			}
		}
		if d.changed {
			continue
		}
		c.leastAmounts(d)
		for _, rule := range [...]func(*domain){c.blocks, c.turns, c.minutes, c.pairs, c.levels, c.windows} {
			if rule(d); d.dead {
				return false
			}
			if d.changed {
				break
			}
		}
		if !d.changed {
			return true
		}
	}
	return false
}

// times: lengths, lags, and the makespan as the greatest end.
func (c *checker) times(d *domain) {
	last := 0
	for i, a := range c.p.Activities {
		s, e := term{c.startOf(i), 0}, term{c.endOf(i), 0}
		d.keepApart(apart{s, e, a.MinDuration})
		d.keepApart(apart{e, s, -a.MaxDuration})
		d.keepApart(apart{e, term{c.last, 0}, 0})
		last = max(last, d.hi[e.v])
	}
	d.atMost(c.last, last)
	for _, a := range d.orders {
		d.keepApart(a)
	}
	for _, l := range c.p.Lags {
		d.keepApart(c.apart(l))
	}
}

// oneMode: exactly one mode each.
func (c *checker) oneMode(d *domain) {
	for _, vars := range c.modes {
		left, only := 0, -1
		for m, v := range vars {
			if d.lo[v] == 1 {
				for other, w := range vars {
					if other != m {
						d.atMost(w, 0)
					}
				}
			}
			if d.hi[v] == 1 {
				left, only = left+1, v
			}
		}
		switch {
		case len(vars) > 0 && left == 0:
			d.dead = true
		case left == 1:
			d.atLeast(only, 1)
		}
	}
}

// choices: of the conditions and lags of a choice, one must hold.
func (c *checker) choices(d *domain) {
	for _, ch := range c.p.Choices {
		var ways []apart
		var open []problem.Chosen
		done := false
		for _, f := range ch.If {
			switch {
			case !c.modeLeft(d, f.Activity, f.Mode):
				done = true
			case len(c.modes[f.Activity]) > 0 && d.lo[c.modes[f.Activity][f.Mode]] == 0:
				open = append(open, f)
			}
		}
		for _, l := range ch.Any {
			a := c.apart(l)
			done = done || d.sure(a)
			if !d.impossible(a) {
				ways = append(ways, a)
			}
		}
		switch {
		case done || len(ways)+len(open) > 1:
		case len(ways) == 1:
			d.keepApart(ways[0])
		case len(open) == 1:
			c.drop(d, open[0].Activity, open[0].Mode)
		default:
			d.dead = true
		}
	}
}

// meanings: what is defined holds exactly when its definition does.
func (c *checker) meanings(d *domain) {
	for _, t := range c.truths {
		switch {
		case d.sure(t.apart):
			d.atLeast(t.v, 1)
		case d.impossible(t.apart):
			d.atMost(t.v, 0)
		}
		switch {
		case d.lo[t.v] == 1:
			d.keepApart(t.apart)
		case d.hi[t.v] == 0:
			d.keepApart(t.converse())
		}
	}
	for _, a := range c.alls {
		var open []lit
		fails := false
		for _, l := range a.lits {
			if d.holds(l.not()) {
				fails = true
			} else if !d.holds(l) {
				open = append(open, l)
			}
		}
		switch {
		case fails:
			d.atMost(a.v, 0)
		case len(open) == 0:
			d.atLeast(a.v, 1)
		case d.lo[a.v] == 1:
			for _, l := range open {
				d.hold(l)
			}
		case d.hi[a.v] == 0 && len(open) == 1:
			d.hold(open[0].not())
		}
	}
	for _, b := range c.before {
		if d.lo[b.v] == 1 {
			d.keepApart(b.apart)
		}
	}
}

// goals: every objective is the sum of its parts.
func (c *checker) goals(d *domain) {
	for _, s := range c.sums {
		low, high := s.constant, s.constant
		for _, p := range s.parts {
			a, b := p.weight*d.lo[p.v], p.weight*d.hi[p.v]
			low, high = low+min(a, b), high+max(a, b)
		}
		d.atLeast(s.value, low)
		d.atMost(s.value, high)
		for _, p := range s.parts {
			a, b := p.weight*d.lo[p.v], p.weight*d.hi[p.v]
			most := d.hi[s.value] - (low - min(a, b)) // of weight times the part
			least := d.lo[s.value] - (high - max(a, b))
			switch {
			case p.weight > 0:
				d.atMost(p.v, floor(most, p.weight))
				d.atLeast(p.v, -floor(-least, p.weight))
			case p.weight < 0:
				d.atLeast(p.v, -floor(most, -p.weight))
				d.atMost(p.v, floor(-least, -p.weight))
			}
		}
	}
}

func floor(a, b int) int {
	q := a / b
	if a%b < 0 {
		q--
	}
	return q
}

// learnt: the clauses taken on so far.
func (c *checker) learnt(d *domain) {
next:
	for _, clause := range c.clauses {
		open := 0
		var only lit
		for _, l := range clause {
			if d.holds(l) {
				continue next
			}
			if !d.holds(l.not()) {
				if open++; open > 1 {
					continue next
				}
				only = l
			}
		}
		if open == 0 {
			d.dead = true
			return
		}
		d.hold(only)
	}
}
