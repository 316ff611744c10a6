package recheck

// about names a variable that speaks of the needs of one activity, or of two.
type about struct {
	kind     string
	i, j     int
	state, a int
}

// find is the variable that the log has for something; false if it has none.
func (c *checker) find(kind string, i, j, state, a int) (int, bool) {
	v, known := c.spoken[about{kind, i, j, state, a}]
	return v, known
}

// note remembers what a variable speaks of.
func (c *checker) note(y *play) {
	key := about{kind: y.kind, i: y.i, j: y.j, state: y.state}
	if y.kind == "level" {
		key.a = y.a
	}
	c.spoken[key] = y.v
}

// blocks: what the variables of states say of each other. The rest is left to
// the search, which makes every row of changes.
func (c *checker) blocks(d *domain) {
	for n := range c.plays {
		y := &c.plays[n]
		switch y.kind {
		case "change":
			c.changeTime(d, y)
		case "same":
			c.together(d, y)
		case "before":
			c.inTurn(d, y)
		}
	}
}

// changeTime: a block that is not the first begins with a change, before its
// needs do.
func (c *checker) changeTime(d *domain, y *play) {
	if place, known := c.find("place", y.i, 0, y.state, 0); known && d.lo[place] >= 1 {
		d.atLeast(y.v, c.p.States[y.state].ChangeFrom)
		d.keepApart(apart{term{y.v, 0}, term{c.startOf(y.i), 0}, c.shortest(y.state)})
	}
}

// shortest is the least time that any change of a state takes.
func (c *checker) shortest(k int) int {
	least := c.p.Horizon
	for from, row := range c.p.States[k].Change {
		for to, w := range row {
			if from != to {
				least = min(least, w.Work+w.Settle)
			}
		}
	}
	return least
}

// together: needs of one block have all in common; of two that are there, one
// block is the earlier if they differ.
func (c *checker) together(d *domain, y *play) {
	one, knownOne := c.find("before", y.i, y.j, y.state, 0)
	two, knownTwo := c.find("before", y.j, y.i, y.state, 0)
	for _, v := range [...]struct {
		v     int
		known bool
	}{{one, knownOne}, {two, knownTwo}} {
		if v.known && d.lo[v.v] == 1 {
			d.atMost(y.v, 0)
		}
		if v.known && d.lo[y.v] == 1 {
			d.atMost(v.v, 0)
		}
	}
	if d.lo[y.v] == 1 {
		for _, kind := range [...]string{"place", "change", "worked"} {
			c.equal(d, kind, y, 0)
		}
		for l := range c.p.States[y.state].Levels {
			c.equal(d, "level", y, l)
		}
		return
	}
	_, first := c.surely(d, y.i, y.state)
	_, second := c.surely(d, y.j, y.state)
	if d.hi[y.v] == 1 || !first || !second || !knownOne || !knownTwo {
		return
	}
	if d.hi[one] == 0 {
		d.atLeast(two, 1)
	}
	if d.hi[two] == 0 {
		d.atLeast(one, 1)
	}
}

// equal makes what two needs of one block have in common the same.
func (c *checker) equal(d *domain, kind string, y *play, a int) {
	one, knownOne := c.find(kind, y.i, 0, y.state, a)
	two, knownTwo := c.find(kind, y.j, 0, y.state, a)
	if knownOne && knownTwo {
		d.keepApart(apart{term{one, 0}, term{two, 0}, 0})
		d.keepApart(apart{term{two, 0}, term{one, 0}, 0})
	}
}

// inTurn: the change to a block comes after the needs of the blocks before.
func (c *checker) inTurn(d *domain, y *play) {
	change, known := c.find("change", y.j, 0, y.state, 0)
	if known {
		ended := apart{term{c.endOf(y.i), 0}, term{change, 0}, 0}
		begun := apart{term{c.startOf(y.i), 0}, term{change, 0}, 1}
		if d.impossible(ended) || d.impossible(begun) {
			d.atMost(y.v, 0)
		}
		if d.lo[y.v] == 1 {
			d.keepApart(ended)
			d.keepApart(begun)
		}
	}
	if place, known := c.find("place", y.j, 0, y.state, 0); known {
		if d.hi[place] == 0 {
			d.atMost(y.v, 0)
		}
		if d.lo[y.v] == 1 {
			d.atLeast(place, 1)
		}
	}
	if back, known := c.find("before", y.j, y.i, y.state, 0); known && d.lo[y.v] == 1 {
		d.atMost(back, 0)
	}
}
