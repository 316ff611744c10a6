package recheck

// link is a lag that always holds, or one with a variable that says whether
// it does.
type link struct {
	v    int // or none
	half bool
	apart
}

const none = -1

// couple is two activities that clash in whatever modes: one of them ends
// before the other starts.
type couple struct{ i, j int }

// attach makes a link heard of by what it speaks of.
func (c *checker) attach(l link) {
	c.links = append(c.links, l)
	at := len(c.links) - 1
	for _, v := range [...]int{l.from.v, l.to.v, l.v} {
		if v != none {
			c.linked = grow(c.linked, v)
			c.linked[v] = append(c.linked[v], at)
		}
	}
}

// always demands a lag of every schedule.
func (c *checker) always(a apart) { c.attach(link{v: none, apart: a}) }

func grow(lists [][]int, v int) [][]int {
	for len(lists) <= v {
		lists = append(lists, nil)
	}
	return lists
}

// truth makes a variable say whether a lag holds. If the lag is an order of
// two activities, it is remembered as that.
func (c *checker) truth(v int, a apart) {
	c.attach(link{v: v, apart: a})
	if c.far != nil {
		switch {
		case c.far.least(a.from.v, a.to.v) >= a.gap():
			c.root.atLeast(v, 1)
		case c.far.least(a.to.v, a.from.v) > -a.gap():
			c.root.atMost(v, 0)
		}
	}
	i, j, order := c.isOrder(a)
	if !order {
		return
	}
	c.told[i*c.n+j] = append(c.told[i*c.n+j], v)
	for len(c.speaks) <= v {
		c.speaks = append(c.speaks, couple{none, none})
	}
	c.speaks[v] = couple{i, j}
	for _, at := range c.couplesOf(i) {
		if o := c.couples[at]; o == (couple{i, j}) || o == (couple{j, i}) {
			c.coupled = grow(c.coupled, v)
			c.coupled[v] = append(c.coupled[v], at)
		}
	}
}

// gap is how far the variables themselves are apart.
func (a apart) gap() int { return a.least + a.from.add - a.to.add }

// isOrder says that a lag is that from the end of one activity to the start of another.
func (c *checker) isOrder(a apart) (i, j int, order bool) {
	if a.from.v >= 2*c.n || a.to.v >= c.n {
		return 0, 0, false
	}
	i, j = a.from.v%c.n, a.to.v
	length := 0
	if a.from.v < c.n {
		length = c.p.Activities[i].MinDuration
		if c.p.Activities[i].MaxDuration != length {
			return 0, 0, false
		}
	}
	return i, j, i != j && a.gap() == length
}

// couplesOf are the couples that activity i is in.
func (c *checker) couplesOf(i int) []int {
	c.coupled = grow(c.coupled, c.endOf(i))
	return c.coupled[c.startOf(i)]
}

// pair notes a couple.
func (c *checker) pair(i, j int) {
	c.couples = append(c.couples, couple{i, j})
	for _, v := range [...]int{c.startOf(i), c.endOf(i), c.startOf(j), c.endOf(j)} {
		c.coupled = grow(c.coupled, v)
		c.coupled[v] = append(c.coupled[v], len(c.couples)-1)
	}
}

// wake lets every rule that waits for a bound look at it: lags, the variables
// that speak of them, couples, and clauses.
func (c *checker) wake(d *domain) {
	for n := 0; n < len(d.touched) && !d.dead; n++ {
		l := d.touched[n]
		if d.passed(l) {
			continue
		}
		c.mark(d, l.v)
		if l.v < len(c.linked) {
			for _, at := range c.linked[l.v] {
				c.links[at].apply(d)
			}
		}
		if l.v < len(c.coupled) {
			for _, at := range c.coupled[l.v] {
				c.oneFirst(d, c.couples[at].i, c.couples[at].j)
			}
		}
		c.hear(d, l)
	}
	d.touched = d.touched[:0]
}

// mark notes which activities and resources are to be looked at again.
func (c *checker) mark(d *domain, v int) {
	switch {
	case v < 2*c.n:
		d.moved[v%c.n] = true
		for _, r := range c.taker[v%c.n] {
			d.stale[r] = true
		}
	case v < len(c.speaks) && c.speaks[v].i != none:
		d.moved[c.speaks[v].i], d.moved[c.speaks[v].j] = true, true
	case !c.single:
		for r := range d.stale {
			d.stale[r] = true
		}
	}
}

func (l *link) apply(d *domain) {
	if l.v == none {
		d.keepApart(l.apart)
		return
	}
	if !l.half {
		if d.sure(l.apart) {
			d.atLeast(l.v, 1)
		}
		if d.hi[l.v] == 0 {
			d.keepApart(l.converse())
		}
	}
	if d.impossible(l.apart) {
		d.atMost(l.v, 0)
	}
	if d.lo[l.v] == 1 {
		d.keepApart(l.apart)
	}
}

// order is the demand that i ends before j starts.
func (c *checker) order(i, j int) apart {
	return apart{term{c.endOf(i), 0}, term{c.startOf(j), 0}, 0}
}

// oneFirst: of two that clash, one ends before the other starts. What cannot
// be so by their times, or is not so by a variable that says it, leaves the other way.
func (c *checker) oneFirst(d *domain, i, j int) {
	noA, noB := c.never(d, i, j), c.never(d, j, i)
	switch {
	case noA && noB:
		d.dead = true
	case noA:
		c.putFirst(d, j, i)
	case noB:
		c.putFirst(d, i, j)
	}
}

// never says that i cannot end before j starts.
func (c *checker) never(d *domain, i, j int) bool {
	if d.impossible(c.order(i, j)) {
		return true
	}
	for _, v := range c.told[i*c.n+j] {
		if d.hi[v] == 0 {
			return true
		}
	}
	for _, v := range c.told[j*c.n+i] {
		if d.lo[v] == 1 {
			return true
		}
	}
	return false
}

// putFirst makes i end before j starts, and the variables say so.
func (c *checker) putFirst(d *domain, i, j int) {
	d.keepApart(c.order(i, j))
	for _, v := range c.told[i*c.n+j] {
		d.atLeast(v, 1)
	}
	for _, v := range c.told[j*c.n+i] {
		d.atMost(v, 0)
	}
}
