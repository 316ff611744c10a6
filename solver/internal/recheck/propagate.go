package recheck

import "plait.example/solver/problem"

// propagate applies every constraint until nothing changes; false if one
// cannot hold. What waits for single bounds goes first, then what is cheap,
// then what looks at whole resources.
func (c *checker) propagate(d *domain) bool {
	for !d.dead {
		if len(d.touched) > 0 {
			if c.wake(d); d.dead {
				return false
			}
			for _, rule := range [...]func(*domain){c.longest, c.oneMode, c.choices, c.meanings, c.broken, c.lengths, c.goals} {
				if rule(d); d.dead {
					return false
				}
			}
			continue
		}
		c.leastAmounts(d)
		for _, rule := range [...]func(*domain){c.blocks, c.turns, c.pairs, c.minutes, c.levels, c.inLine, c.windows} {
			if rule(d); d.dead {
				return false
			}
			if len(d.touched) > 0 {
				break
			}
		}
		if len(d.touched) == 0 {
			return true
		}
	}
	return false
}

// longest: the makespan is the greatest end; and what a search chose.
func (c *checker) longest(d *domain) {
	last := 0
	for i := range c.n {
		last = max(last, d.hi[c.endOf(i)])
	}
	d.atMost(c.last, last)
	for _, a := range d.orders {
		d.keepApart(a)
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

// meanings: what stands for several literals holds exactly when all do.
func (c *checker) meanings(d *domain) {
	for _, a := range c.alls {
		var open []lit
		fails := false
		for _, l := range a.lits {
			if d.fails(l) {
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
