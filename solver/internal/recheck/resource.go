package recheck

import "slices"

// leastAmounts notes what every activity takes at least, whatever its mode.
func (c *checker) leastAmounts(d *domain) {
	if c.single {
		return // noted at the beginning
	}
	for i, a := range c.p.Activities {
		for r := range c.p.Resources {
			c.amount[i][r] = 0
			first := true
			for m := range a.Modes {
				if !c.modeLeft(d, i, m) {
					continue
				}
				if u := c.taken[i][m][r]; first || u < c.amount[i][r] {
					c.amount[i][r], first = u, false
				}
			}
		}
	}
}

// noteUses sums what every mode takes of every resource, and notes couples:
// those that clash in whatever modes, and those that may.
func (c *checker) noteUses() {
	for _, a := range c.p.Activities {
		var modes [][]int
		var taker []int
		for _, m := range a.Modes {
			row := make([]int, len(c.p.Resources))
			for _, u := range m.Uses {
				row[u.Resource] += u.Amount
				taker = append(taker, u.Resource)
			}
			modes = append(modes, row)
		}
		slices.Sort(taker)
		c.taken, c.taker = append(c.taken, modes), append(c.taker, slices.Compact(taker))
		c.amount = append(c.amount, make([]int, len(c.p.Resources)))
	}
	c.leastAmounts(c.begin)
	c.single = !hasChoice(c.modes)
	for i := range c.n {
		for j := range i {
			switch {
			case c.clash(i, j):
				c.pair(i, j)
			case !c.single && c.mayClash(i, j):
				c.perhaps = append(c.perhaps, couple{i, j})
			}
		}
	}
}

func hasChoice(modes [][]int) bool {
	for _, vars := range modes {
		if len(vars) > 0 {
			return true
		}
	}
	return false
}

// mayClash says that two activities clash in some modes.
func (c *checker) mayClash(i, j int) bool {
	for r := range c.room {
		a, b := 0, 0
		for _, row := range c.taken[i] {
			a = max(a, row[r])
		}
		for _, row := range c.taken[j] {
			b = max(b, row[r])
		}
		if a > 0 && b > 0 && a+b > c.p.Resources[r].Capacity {
			return true
		}
	}
	return false
}

// minutes: what surely runs is counted minute by minute; nobody covers a
// minute that has no room left for it.
func (c *checker) minutes(d *domain) {
	for r, room := range c.room {
		used := c.used(d, r, len(room))
		for t := range room {
			if used[t] > room[t] {
				d.dead = true
				return
			}
		}
		for i := range c.n {
			if c.cover(d, i, r, used); d.dead {
				return
			}
		}
	}
}

// used counts what surely runs.
func (c *checker) used(d *domain, r, minutes int) []int {
	used := cleared(&c.profile, minutes+1)
	for i := range c.n {
		if from, until := d.hi[c.startOf(i)], d.lo[c.endOf(i)]; from < until && c.amount[i][r] > 0 {
			used[from] += c.amount[i][r]
			used[until] -= c.amount[i][r]
		}
	}
	for t := range minutes {
		used[t+1] += used[t]
	}
	return used
}

// cleared is a list of so many zeros, in the room there is.
func cleared(list *[]int, size int) []int {
	if cap(*list) < size {
		*list = make([]int, size)
	}
	*list = (*list)[:size]
	clear(*list)
	return *list
}

// cover keeps activity i off the minutes without room for it. What is used is
// as it was before the first of these steps, which is never too much.
func (c *checker) cover(d *domain, i, r int, used []int) {
	s, e, need := c.startOf(i), c.endOf(i), c.amount[i][r]
	from, until := d.hi[s], d.lo[e] // what of i is counted itself
	if !c.single {
		for t := from; t < until; t++ {
			for m := range c.p.Activities[i].Modes {
				if c.modeLeft(d, i, m) && used[t]-need+c.taken[i][m][r] > c.room[r][t] {
					c.drop(d, i, m)
				}
			}
		}
	}
	if need == 0 {
		return
	}
	most := func(t int) bool { return used[t]+need > c.room[r][t] && (t < from || t >= until) }
	for t := d.lo[s]; t < d.lo[e] && t < d.hi[s] && !d.dead; t++ {
		if most(t) {
			d.atLeast(s, t+1)
			d.atLeast(e, t+1+c.p.Activities[i].MinDuration)
		}
	}
	for t := d.hi[e] - 1; t >= d.hi[s] && t >= d.lo[e] && !d.dead; t-- {
		if most(t) {
			d.atMost(e, t)
			d.atMost(s, t-c.p.Activities[i].MinDuration)
		}
	}
}

// clash says that two activities surely cannot run at once, as a resource has
// no room for both.
func (c *checker) clash(i, j int) bool {
	if c.p.Activities[i].MinDuration == 0 || c.p.Activities[j].MinDuration == 0 {
		return false
	}
	for r := range c.room {
		a, b := c.amount[i][r], c.amount[j][r]
		if a > 0 && b > 0 && a+b > c.p.Resources[r].Capacity {
			return true
		}
	}
	return false
}

// pairs: those that clash in the modes that are left.
func (c *checker) pairs(d *domain) {
	for _, o := range c.perhaps {
		if c.clash(o.i, o.j) {
			c.oneFirst(d, o.i, o.j)
		}
	}
}

func oneOf(d *domain, a, b apart) {
	noA, noB := d.impossible(a), d.impossible(b)
	switch {
	case noA && noB:
		d.dead = true
	case noA:
		d.keepApart(b)
	case noB:
		d.keepApart(a)
	}
}
