package recheck

// piece is an activity that takes some of a resource, and its times.
type piece struct {
	i, amount          int
	length             int // at least
	least              int // at least, wherever it lies
	est, lst, ect, lct int
}

// windows: in any window of time, what cannot leave it takes no more than
// there is; who would take too much by starting first starts later, and the
// other way round. Every minute is tried as the first and as the end.
func (c *checker) windows(d *domain) {
	for r := range c.room {
		if !d.stale[r] {
			continue
		}
		d.stale[r] = false
		c.pieces = c.pieces[:0]
		first, last := c.p.Horizon, 0
		for i := range c.n {
			if length := c.p.Activities[i].MinDuration; c.amount[i][r] > 0 && length > 0 {
				s, e := c.startOf(i), c.endOf(i)
				x := piece{i, c.amount[i][r], max(length, d.lo[e]-d.hi[s]), length, d.lo[s], d.hi[s], d.lo[e], d.hi[e]}
				c.pieces = append(c.pieces, x)
				first, last = min(first, x.est), max(last, x.lct)
			}
		}
		for from := first; from < last && !d.dead; from++ {
			c.windowsFrom(d, r, from, last)
		}
		if len(d.touched) > 0 {
			return // lengths come first
		}
	}
}

// windowsFrom tries every window that begins at a minute. The least time that
// an activity spends there grows with the end of the window, minute by minute,
// from its latest start on, as far as its length and its earliest end allow.
func (c *checker) windowsFrom(d *domain, r, from, last int) {
	grows := cleared(&c.slope, last-from+1)
	most := 0 // that any could take besides
	for n := range c.pieces {
		x := &c.pieces[n]
		if x.est < x.lst && x.lct > from {
			most = max(most, x.amount*x.least)
		}
		if x.ect <= from {
			continue
		}
		begin := max(x.lst, from)
		grows[begin-from] += x.amount
		grows[begin-from+min(x.length, x.ect-from)] -= x.amount
	}
	spare, total, rate := 0, 0, 0
	for until := from + 1; until <= last; until++ {
		rate += grows[until-1-from]
		total += rate
		spare += c.room[r][until-1] - rate
		if spare < 0 {
			d.dead = true
			return
		}
		if total > 0 && spare < most {
			c.window(d, from, until, spare)
		}
	}
}

// window looks at one window with so much to spare: nobody takes more than
// that besides what it takes anyway. Who may spend less time there than it must
// if it began before the window's end less that time, begins later.
func (c *checker) window(d *domain, from, until, spare int) {
	for n := range c.pieces {
		x := &c.pieces[n]
		if x.est >= until || x.lct <= from {
			continue
		}
		may := max(0, min(x.length, x.ect-from, until-x.lst, until-from)) + spare/x.amount
		most := min(x.least, until-from)
		if most <= may {
			continue
		}
		if x.ect-from > may {
			d.atLeast(c.startOf(x.i), until-may)
		}
		if until-x.lst > may {
			d.atMost(c.endOf(x.i), from+may)
		}
	}
}
