package lcg

// energy is the time-table-edge-finding propagator of a resource (A. Schutt,
// T. Feydy, P. Stuckey, Explaining time-table-edge-finding propagation for the
// cumulative resource constraint, 2013). A window of time offers capacity
// times length; tasks that cannot leave the window take their part of it. If
// they take more than there is, that is a conflict; if a task would take more
// than is left by starting early, it starts later, and the mirror image.
//
// A task takes at least p in a window [a,b) if it ends at a+p or later, starts
// at b-p or earlier, and is at least p long. That is the whole of every
// explanation.
type energy struct {
	c        *cumulative
	shallow  bool // run under the assumptions alone, not below decisions
	rest     int  // wakes to let go by
	wait     int  // gone by since the last run
	mirror   bool // time runs backwards: start is minus the end
	n        int
	loose    int     // how many of them have free energy
	task     []int32 // the present tasks
	est, lst []int32
	ect, lct []int32
	least    []int32
	amount   []int64
	free     []int64 // energy outside the compulsory part
	ttBegin  []int64 // energy of the time-table before est
	ttEnd    []int64 // and before lct
	byEst    []int32 // loose tasks, descending
	byLct    []int32 // descending
	take     []int32 // overlap with the window in hand
	part     []int32 // what of it an explanation keeps
	because  []Lit
}

func (e *Engine) addEnergy(c *cumulative, sides []Side, shallow bool) {
	e.addPropagator(&energy{c: c, shallow: shallow}, dear, sides)
}

func (g *energy) unfold(_ *Engine, out []Lit, _ Lit, _, _ int32) []Lit { return out }

func (g *energy) run(e *Engine) bool {
	if e.level() > e.assumed {
		if g.shallow {
			return true
		}
		if g.wait++; g.wait < g.rest {
			return true
		}
	}
	g.wait = 0
	before := len(e.trail)
	ok := g.both(e)
	if !ok || len(e.trail) > before {
		g.rest = 0
	} else {
		g.rest = min(2*g.rest+1, longestRest)
	}
	return ok
}

// longestRest is how many wakes go by at most after runs without a deduction:
// the dearest propagator works where it pays.
const longestRest = 32

// both scans forwards and backwards in time.
func (g *energy) both(e *Engine) bool {
	g.c.build(e)
	g.c.sumProfile()
	for _, mirror := range [...]bool{false, true} {
		g.mirror = mirror
		g.load(e)
		if !g.scan(e) {
			return false
		}
	}
	return true
}

// load reads the bounds of the tasks that are present.
func (g *energy) load(e *Engine) {
	c := g.c
	if g.est == nil {
		n := len(c.tasks)
		for _, s := range []*[]int32{&g.task, &g.est, &g.lst, &g.ect, &g.lct, &g.least, &g.byEst, &g.byLct, &g.take, &g.part} {
			*s = make([]int32, n)
		}
		for _, s := range []*[]int64{&g.amount, &g.free, &g.ttBegin, &g.ttEnd} {
			*s = make([]int64, n)
		}
	}
	g.n, g.loose = 0, 0
	for i := range c.tasks {
		t := &c.tasks[i]
		if !e.Holds(t.Present) {
			continue
		}
		k := g.n
		g.n++
		g.task[k] = int32(i)
		est, lst, ect, lct := int32(e.Min(t.Start)), int32(e.Max(t.Start)), int32(e.Min(t.End)), int32(e.Max(t.End))
		g.ttBegin[k], g.ttEnd[k] = c.energyBefore(est), c.energyBefore(lct)
		if g.mirror {
			est, lst, ect, lct = -lct, -ect, -lst, -est
			g.ttBegin[k], g.ttEnd[k] = -g.ttEnd[k], -g.ttBegin[k]
		}
		g.est[k], g.lst[k], g.ect[k], g.lct[k] = est, lst, ect, lct
		g.least[k], g.amount[k] = int32(t.Least), int64(t.Amount)
		g.free[k] = int64(t.Amount) * int64(max(0, int32(t.Least)-max(0, ect-lst)))
		if g.free[k] > 0 {
			g.byEst[g.loose], g.byLct[g.loose] = int32(k), int32(k)
			g.loose++
		}
	}
	descend(g.byEst[:g.loose], g.est)
	descend(g.byLct[:g.loose], g.lct)
}

// descend sorts an order by falling key.
func descend(order, key []int32) {
	for i := 1; i < len(order); i++ {
		x := order[i]
		k := key[x]
		j := i
		for ; j > 0 && key[order[j-1]] < k; j-- {
			order[j] = order[j-1]
		}
		order[j] = x
	}
}

// scan looks at every window from an earliest start to a latest end.
func (g *energy) scan(e *Engine) bool {
	capacity := int64(g.c.capacity)
	last := never
	for _, y := range g.byLct[:g.loose] {
		end := g.lct[y]
		if end == last {
			continue
		}
		last = end
		var sum, most int64
		for _, x := range g.byEst[:g.loose] {
			begin := g.est[x]
			if begin >= end {
				continue
			}
			if g.lct[x] <= end {
				sum += g.free[x]
			} else {
				in := min(g.free[x], g.amount[x]*int64(max(0, end-max(g.lst[x], g.ect[x]))))
				sum += in
				most = max(most, min(g.free[x], g.amount[x]*int64(end-begin))-in)
			}
			left := capacity*int64(end-begin) - sum - (g.ttEnd[y] - g.ttBegin[x])
			if left < most && !g.window(e, begin, end) {
				return false
			}
		}
	}
	return true
}

// window does all that can be deduced from [begin, end).
func (g *energy) window(e *Engine, begin, end int32) bool {
	total := int64(0)
	for k := range g.n {
		g.take[k] = g.overlap(k, begin, end)
		total += g.amount[k] * int64(g.take[k])
	}
	offer := int64(g.c.capacity) * int64(end-begin)
	if total > offer {
		e.conflict = g.reasons(e.conflict[:0], -1, begin, end, total-offer-1)
		return false
	}
	for u := range g.n {
		a := g.amount[u]
		others := total - a*int64(g.take[u])
		most := int32(min((offer-others)/a, 1<<29)) // of the window for u
		if most >= min(g.least[u], g.ect[u]-begin, end-begin) || end-most <= g.est[u] {
			continue
		}
		l := g.startAtLeast(u, end-most)
		if e.Holds(l) {
			continue
		}
		spare := others + a*int64(most+1) - offer - 1
		g.because = append(g.because[:0], g.endAtLeast(u, begin+most+1), g.c.tasks[g.task[u]].Present)
		g.because = g.reasons(g.because, u, begin, end, spare)
		if !e.setStored(l, g.because) {
			return false
		}
	}
	return true
}

// overlap is the least time that task k spends in [begin, end).
func (g *energy) overlap(k int, begin, end int32) int32 {
	length := max(g.least[k], g.ect[k]-g.lst[k])
	return max(0, min(length, g.ect[k]-begin, end-g.lst[k], end-begin))
}

// reasons gives the literals behind the overlaps, weakened by spare energy:
// first whole tasks go, then parts.
func (g *energy) reasons(out []Lit, skip int, begin, end int32, spare int64) []Lit {
	for k := range g.n {
		g.part[k] = g.take[k]
		if use := g.amount[k] * int64(g.take[k]); use <= spare {
			g.part[k] = 0
			if k != skip {
				spare -= use
			}
		}
	}
	for k := range g.n {
		if k == skip || g.part[k] == 0 {
			continue
		}
		p := g.part[k]
		if p > g.least[k] { // by the compulsory part alone
			out = append(out, g.startAtMost(k, max(g.lst[k], begin)), g.endAtLeast(k, min(g.ect[k], end)))
		} else {
			less := int32(min(spare/g.amount[k], int64(p)))
			spare -= int64(less) * g.amount[k]
			p -= less
			out = append(out, g.startAtMost(k, end-p), g.endAtLeast(k, begin+p))
		}
		out = append(out, g.c.tasks[g.task[k]].Present)
	}
	return out
}

func (g *energy) startAtLeast(k int, v int32) Lit {
	t := &g.c.tasks[g.task[k]]
	if g.mirror {
		return t.End.AtMost(int(-v))
	}
	return t.Start.AtLeast(int(v))
}

func (g *energy) startAtMost(k int, v int32) Lit {
	t := &g.c.tasks[g.task[k]]
	if g.mirror {
		return t.End.AtLeast(int(-v))
	}
	return t.Start.AtMost(int(v))
}

func (g *energy) endAtLeast(k int, v int32) Lit {
	t := &g.c.tasks[g.task[k]]
	if g.mirror {
		return t.Start.AtMost(int(-v))
	}
	return t.End.AtLeast(int(v))
}

// sumProfile makes the energies before each segment.
func (c *cumulative) sumProfile() {
	c.before = c.before[:0]
	sum := int64(0)
	for _, s := range c.profile {
		c.before = append(c.before, sum)
		sum += int64(s.height) * int64(s.to-s.from)
	}
	c.before = append(c.before, sum)
}

// energyBefore is the energy of the compulsory parts before t.
func (c *cumulative) energyBefore(t int32) int64 {
	k := firstAfter(c.profile, t)
	sum := c.before[k]
	if k < len(c.profile) && c.profile[k].from < t {
		sum += int64(c.profile[k].height) * int64(t-c.profile[k].from)
	}
	return sum
}
