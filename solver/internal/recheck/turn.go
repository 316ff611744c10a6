package recheck

// turns: how many changes a state has. A block of another level than the one
// before, or than the initial one, has a number greater by one; the last number
// is that of the changes.
func (c *checker) turns(d *domain) {
	for n := range c.plays {
		y := &c.plays[n]
		switch y.kind {
		case "turn", "place":
			d.atLeast(c.counts[y.state], d.lo[y.v])
			if y.kind == "turn" {
				d.atMost(y.v, d.hi[c.counts[y.state]])
				c.changeFirst(d, y)
			}
		case "same":
			if d.lo[y.v] == 1 {
				c.equal(d, "turn", y, 0)
			}
		case "before":
			if d.lo[y.v] == 1 {
				c.greater(d, y.i, y.j, y.state)
			}
		}
	}
	for k := range c.p.States {
		c.levelsInTurn(d, k)
	}
}

// changeFirst: a need that cannot have the initial level comes after a change.
func (c *checker) changeFirst(d *domain, y *play) {
	if set, needed := c.surely(d, y.i, y.state); needed && !set[c.p.States[y.state].Initial] {
		d.atLeast(y.v, 1)
	}
}

// greater makes the number of the block of j greater than that of i.
func (c *checker) greater(d *domain, i, j, k int) {
	one, knownOne := c.find("turn", i, 0, k, 0)
	two, knownTwo := c.find("turn", j, 0, k, 0)
	if knownOne && knownTwo {
		d.keepApart(apart{term{one, 0}, term{two, 0}, 1})
	}
}

// levelsInTurn: of two needs that are surely at different levels, the later
// one has the greater number; and every level that is surely needed but the
// initial one takes a change.
func (c *checker) levelsInTurn(d *domain, k int) {
	wanted := make([]bool, len(c.p.States[k].Levels))
	for i := range c.n {
		a, needed := c.surely(d, i, k)
		if !needed {
			continue
		}
		if l, single := theOnly(a); single {
			wanted[l] = true
		}
		for j := range i {
			b, needed := c.surely(d, j, k)
			if !needed {
				continue
			}
			if _, shared := c.between(k, a, b); shared {
				continue
			}
			switch {
			case c.comesFirst(d, i, j):
				c.greater(d, i, j, k)
			case c.comesFirst(d, j, i):
				c.greater(d, j, i, k)
			}
		}
	}
	wanted[c.p.States[k].Initial] = false
	count := 0
	for _, w := range wanted {
		count += one(w)
	}
	d.atLeast(c.counts[k], count)
}

func theOnly(set []bool) (level int, single bool) {
	count := 0
	for l, in := range set {
		if in {
			level = l
			count++
		}
	}
	return level, count == 1
}

// comesFirst says that i surely ends before j starts, of two activities that
// do not overlap: by their times, by a choice of the search, or as a variable
// that stands for their order says.
func (c *checker) comesFirst(d *domain, i, j int) bool {
	if d.ordered(c.order(i, j)) || d.impossible(c.order(j, i)) {
		return true
	}
	for _, v := range c.told[i*c.n+j] {
		if d.lo[v] == 1 {
			return true
		}
	}
	for _, v := range c.told[j*c.n+i] {
		if d.hi[v] == 0 {
			return true
		}
	}
	return false
}
