package recheck

// watcher is one of the two literals of a clause that must fail before the
// clause can say anything.
type watcher struct {
	clause int
	k      int
}

// side is where watchers of a literal wait: for the bound that makes it fail.
func (l lit) side() int {
	if l.upper {
		return 2 * l.v
	}
	return 2*l.v + 1
}

// plain is a clause without literals that another one of it follows from.
func plain(clause []lit) []lit {
	var out []lit
next:
	for _, l := range clause {
		for n := range out {
			if o := &out[n]; o.v == l.v && o.upper == l.upper {
				if l.upper {
					o.k = max(o.k, l.k)
				} else {
					o.k = min(o.k, l.k)
				}
				continue next
			}
		}
		out = append(out, l)
	}
	return out
}

// learn takes a clause on. What it says at the root is said there.
func (c *checker) learn(clause []lit) {
	clause = plain(clause)
	open := 0
	for n, l := range clause {
		if c.root.holds(l) {
			return
		}
		if !c.root.fails(l) {
			clause[open], clause[n] = clause[n], clause[open]
			open++
		}
	}
	switch open {
	case 0:
		c.root.dead = true
	case 1:
		c.root.hold(clause[0])
	default:
		c.clauses = append(c.clauses, clause)
		c.watch(len(c.clauses)-1, clause[0])
		c.watch(len(c.clauses)-1, clause[1])
	}
}

func (c *checker) watch(clause int, l lit) {
	for len(c.watchers) < 2*len(c.root.lo) {
		c.watchers = append(c.watchers, nil)
	}
	c.watchers[l.side()] = append(c.watchers[l.side()], watcher{clause, l.k})
}

// hear looks at the clauses that wait for a bound.
func (c *checker) hear(d *domain, l lit) {
	side := 2 * l.v
	if l.upper {
		side++
	}
	if c.deaf || side >= len(c.watchers) {
		return
	}
	list := c.watchers[side]
	kept := list[:0]
	for n, w := range list {
		mine := lit{l.v, !l.upper, w.k}
		if !d.fails(mine) || !c.pass(d, w.clause, mine) {
			kept = append(kept, w)
		}
		if d.dead {
			kept = append(kept, list[n+1:]...)
			break
		}
	}
	c.watchers[side] = kept
}

// pass gives the watch over a clause from a literal that fails to another, and
// says whether one was free. If none was, the other watched literal must hold.
func (c *checker) pass(d *domain, number int, mine lit) bool {
	clause := c.clauses[number]
	if clause[0] == mine {
		clause[0], clause[1] = clause[1], clause[0]
	}
	if d.holds(clause[0]) {
		return false
	}
	for n := 2; n < len(clause); n++ {
		if !d.fails(clause[n]) {
			clause[1], clause[n] = clause[n], clause[1]
			c.watch(number, clause[1])
			return true
		}
	}
	d.hold(clause[0])
	return false
}
