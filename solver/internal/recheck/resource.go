package recheck

// leastAmounts notes what every activity takes at least, whatever its mode.
func (c *checker) leastAmounts(d *domain) {
	for i, a := range c.p.Activities {
		for r := range c.p.Resources {
			c.amount[i][r] = 0
			first := true
			for m, mode := range a.Modes {
				if !c.modeLeft(d, i, m) {
					continue
				}
				if u := uses(mode.Uses, r); first || u < c.amount[i][r] {
					c.amount[i][r], first = u, false
				}
			}
		}
	}
}

// minutes: what surely runs is counted minute by minute; nobody covers a
// minute that has no room left for it.
func (c *checker) minutes(d *domain) {
	for r, room := range c.room {
		used := make([]int, len(room))
		for i := range c.n {
			for t := d.hi[c.startOf(i)]; t < d.lo[c.endOf(i)]; t++ {
				used[t] += c.amount[i][r]
			}
		}
		for t := range room {
			if used[t] > room[t] {
				d.dead = true
				return
			}
		}
		for i := range c.n {
			if c.cover(d, i, r, used); d.dead || d.changed {
				return
			}
		}
	}
}

// cover keeps activity i off the minutes without room for it.
func (c *checker) cover(d *domain, i, r int, used []int) {
	s, e, need := c.startOf(i), c.endOf(i), c.amount[i][r]
	from, until := d.hi[s], d.lo[e] // what of i is counted itself
	others := func(t int) int {
		if from <= t && t < until {
			return used[t] - need
		}
		return used[t]
	}
	for t := from; t < until; t++ {
		for m, mode := range c.p.Activities[i].Modes {
			if c.modeLeft(d, i, m) && others(t)+uses(mode.Uses, r) > c.room[r][t] {
				c.drop(d, i, m)
			}
		}
	}
	if need == 0 {
		return
	}
	for t := d.lo[s]; t < d.lo[e] && t < d.hi[s]; t++ {
		if others(t)+need > c.room[r][t] {
			d.atLeast(s, t+1)
		}
	}
	for t := d.hi[e] - 1; t >= d.hi[s] && t >= d.lo[e]; t-- {
		if others(t)+need > c.room[r][t] {
			d.atMost(e, t)
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

// order is the demand that i ends before j starts.
func (c *checker) order(i, j int) apart {
	return apart{term{c.endOf(i), 0}, term{c.startOf(j), 0}, 0}
}

// pairs: of two that clash, one ends before the other starts.
func (c *checker) pairs(d *domain) {
	for i := range c.n {
		for j := range i {
			if c.clash(i, j) {
				oneOf(d, c.order(i, j), c.order(j, i))
			}
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

// windows: in any window of time, what cannot leave it takes no more than
// there is; who would take too much by starting first starts later, and the
// other way round.
func (c *checker) windows(d *domain) {
	for r, room := range c.room {
		var members []int
		for i := range c.n {
			if c.amount[i][r] > 0 && c.p.Activities[i].MinDuration > 0 {
				members = append(members, i)
			}
		}
		before := make([]int, len(room)+1)
		for t, k := range room {
			before[t+1] = before[t] + k
		}
		for _, x := range members {
			for _, y := range members {
				from, until := d.lo[c.startOf(x)], d.hi[c.endOf(y)]
				if from < until && until <= len(room) {
					c.window(d, r, members, from, until, before[until]-before[from])
				}
				if d.dead {
					return
				}
			}
		}
	}
}

func (c *checker) window(d *domain, r int, members []int, from, until, offer int) {
	total := 0
	for _, i := range members {
		total += c.amount[i][r] * c.inside(d, i, from, until)
	}
	if total > offer {
		d.dead = true
		return
	}
	for _, i := range members {
		others := total - c.amount[i][r]*c.inside(d, i, from, until)
		length := c.p.Activities[i].MinDuration
		s, e := c.startOf(i), c.endOf(i)
		for !d.dead && others+c.amount[i][r]*overlap(d.lo[s], max(d.lo[s]+length, d.lo[e]), from, until) > offer {
			d.atLeast(s, d.lo[s]+1)
		}
		for !d.dead && others+c.amount[i][r]*overlap(min(d.hi[e]-length, d.hi[s]), d.hi[e], from, until) > offer {
			d.atMost(e, d.hi[e]-1)
		}
		if d.changed {
			return // the sums are out of date
		}
	}
}

// inside is how long i is in [from, until) at least: pushed to either side.
func (c *checker) inside(d *domain, i, from, until int) int {
	length := c.p.Activities[i].MinDuration
	early := overlap(d.lo[c.endOf(i)]-length, d.lo[c.endOf(i)], from, until)
	late := overlap(d.hi[c.startOf(i)], d.hi[c.startOf(i)]+length, from, until)
	return min(early, late)
}

func overlap(a, b, from, until int) int { return max(0, min(b, until)-max(a, from)) }
