package recheck

import (
	"slices"

	"plait.example/solver/problem"
)

// verdict is what became of a step.
type verdict int

const (
	shown verdict = iota
	searched
	unchecked
	refuted
)

// follows says whether a clause follows from the problem and the steps before.
func (c *checker) follows(clause []lit) verdict {
	if len(c.root.touched) > 0 {
		c.settle()
	}
	d := &c.trial
	d.copy(c.root)
	for _, l := range clause {
		d.hold(l.not())
	}
	if !c.propagate(d) {
		return shown
	}
	s := search{c: c, left: c.nodes, first: clause}
	switch {
	case s.below(d):
		return refuted
	case s.left < 0:
		return unchecked
	}
	return searched
}

// step checks a clause and takes it on, if it is right.
func (c *checker) step(clause []lit) bool {
	switch c.follows(clause) {
	case shown:
		c.r.Propagated++
	case searched:
		c.r.Searched++
	case unchecked:
		c.r.Unchecked++
		return false
	case refuted:
		c.r.Refuted++
		c.fault("a schedule contradicts this step")
		return false
	}
	c.learn(clause)
	c.settle()
	return true
}

// settle brings the root up to what is known.
func (c *checker) settle() {
	c.dead = c.dead || !c.propagate(c.root)
	c.root.dead = c.dead
}

// bound checks that no schedule has less than v for objective k, given what is
// kept of those before it.
func (c *checker) bound(k, v int) {
	if k != len(c.kept) {
		c.fault("a bound of objective %d; %d are kept, so it must be of objective %d", k, len(c.kept), len(c.kept))
		return
	}
	if c.step([]lit{{c.values[k], atLeast, v}}) {
		c.shownBound[k] = max(v, c.shownBound[k])
	}
}

// keep leaves out, from here on, all schedules with more than v for objective k.
func (c *checker) keep(k, v int) {
	if k != len(c.kept) {
		c.fault("objective %d is kept; must be objective %d", k, len(c.kept))
		return
	}
	c.kept = append(c.kept, v)
	c.root.hold(lit{c.values[k], atMost, v})
	c.settle()
}

// claim notes what the log says of an objective: "k value bound b".
func (c *checker) claim(words []string) {
	k, v, ok := c.goal(words[:min(2, len(words))])
	if !ok {
		return
	}
	b, ok := c.number(words[len(words)-1])
	if !ok || len(words) != 4 || words[2] != "bound" || k != len(c.claims) {
		c.fault("a claim must be \"value %d <value> bound <bound>\"", len(c.claims))
		return
	}
	c.claims = append(c.claims, [2]int{v, b})
}

// end checks the last line: what is claimed must follow.
func (c *checker) end(words []string) {
	c.ended = true
	if len(words) != 1 || !slices.Contains([]string{"optimal", "feasible", "infeasible", "unknown"}, words[0]) {
		c.fault("the end must be optimal, feasible, infeasible or unknown")
		return
	}
	c.r.Status = words[0]
	switch words[0] {
	case "unknown":
	case "infeasible":
		if len(c.kept) > 0 || len(c.claims) > 0 {
			c.fault("schedules are left out or valued, but there is said to be none")
			return
		}
		c.r.Proved = c.dead || c.step(nil)
	default:
		c.endWithSchedule(words[0] == "optimal")
	}
}

func (c *checker) endWithSchedule(optimal bool) {
	values, ok := c.judge()
	if !ok {
		return
	}
	c.r.Values = values
	if len(c.claims) != len(values) {
		c.fault("%d values are claimed; there are %d objectives", len(c.claims), len(values))
		return
	}
	proved := true
	for k, claim := range c.claims {
		if claim[0] != values[k] {
			c.fault("objective %d is said to be %d in the schedule; it is %d", k, claim[0], values[k])
		}
		if claim[1] > claim[0] {
			c.fault("objective %d is said to be %d, below its bound %d", k, claim[0], claim[1])
		}
		if k < len(c.kept) && c.kept[k] < values[k] {
			c.fault("only schedules with at most %d for objective %d were looked at; this one has %d", c.kept[k], k, values[k])
		}
		if claim[1] > c.shownBound[k] && k == len(c.kept) {
			c.bound(k, claim[1]) // a bound that needed no search of its own
		}
		proved = proved && claim[1] <= c.shownBound[k]
	}
	if optimal && c.claims[0][1] < c.claims[0][0] {
		c.fault("the schedule is said to be optimal, but the bound %d is below its value %d", c.claims[0][1], c.claims[0][0])
	}
	c.r.Bounds, c.r.Proved = slices.Clone(c.shownBound), proved
}

// judge reads the schedule of the log as one and values it.
func (c *checker) judge() ([]int, bool) {
	for _, column := range [][]int{c.schedule.Start, c.schedule.End, c.schedule.Mode} {
		if len(column) != c.n {
			c.fault("the log has no schedule of %d activities", c.n)
			return nil, false
		}
	}
	d := c.begin.clone()
	for i := range c.n {
		d.fix(c.startOf(i), c.schedule.Start[i])
		d.fix(c.endOf(i), c.schedule.End[i])
		m := c.schedule.Mode[i]
		if modes := c.modes[i]; m < 0 || m >= max(1, len(modes)) {
			c.fault("activity %d has no mode %d", i, m)
			return nil, false
		} else if len(modes) > 1 {
			d.fix(modes[m], 1)
		}
	}
	c.deaf = true // the schedule is held against the problem alone
	defer func() { c.deaf = false }()
	s := search{c: c, left: scheduleNodes, given: &c.schedule}
	if !c.propagate(d) || !s.states(d) {
		c.fault("the schedule of the log breaks the problem")
		return nil, false
	}
	return s.values, true
}

const scheduleNodes = 1_000_000

// objectives are those of p, or the makespan.
func objectives(p *problem.Problem) []problem.Objective {
	if len(p.Objectives) == 0 {
		return []problem.Objective{{Makespan: true}}
	}
	return p.Objectives
}
