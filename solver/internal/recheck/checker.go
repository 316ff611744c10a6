package recheck

import (
	"slices"

	"plait.example/solver/problem"
)

// checker is a problem as variables and plain constraints, and the state of
// one replay. Activity i starts at variable i and ends at variable n+i.
type checker struct {
	p      *problem.Problem
	n      int
	nodes  int
	r      Report
	at     int // line of the log
	ended  bool
	dead   bool // the problem with what is kept has no schedule: shown
	begin  *domain
	root   *domain
	trial  domain    // of the step in hand
	zero   int       // the variable of 0
	last   int       // the makespan
	single bool      // no activity has a choice of modes
	modes  [][]int   // by activity: a variable a mode, if there are several
	taken  [][][]int // by activity, mode and resource
	amount [][]int   // by activity and resource: least in any mode left
	room   [][]int   // by resource and minute: what there is
	worked []int     // by state: number of changes that take work
	counts []int     // by state: number of changes
	prices []price   // of what objectives would rather have
	spans  []span
	values []int // by objective
	sums   []sum
	names  map[string]view
	alls   []all  // variables that say whether all of some literals hold
	plays  []play // variables that speak of states
	spoken map[about]int
	usual  map[about]int // by kind and state: what their variables are at most, or usually

	far     *network // nil if there are too many activities
	links   []link   // lags, and variables that say whether a lag holds
	linked  [][]int  // by variable: links that speak of it
	couples []couple // pairs that clash in whatever modes
	coupled [][]int  // by variable: couples that wait for it
	perhaps []couple // pairs that clash in some modes
	told    [][]int  // by two activities: variables that say that one ends before the other starts
	speaks  []couple // by such a variable: the two
	taker   [][]int  // by activity: resources that it takes in some mode
	cliques [][]int

	clauses    [][]lit
	watchers   [][]watcher // by side of a bound
	deaf       bool        // clauses are left out
	kept       []int
	shownBound []int
	claims     [][2]int
	schedule   problem.Solution

	profile, slope, latest []int // room for rules to work in
	pieces                 []piece
	members                []member
	looked                 []bool
}

// view is what a name of the log stands for: base + scale*name is compared
// with the variable; for all but objectives that is the variable itself.
type view struct {
	v, base, scale int
}

// sum demands that a value is the sum of its parts and a constant.
type sum struct {
	value    int
	parts    []part
	constant int
}

type part struct{ v, weight int }

type all struct {
	v    int
	lits []lit
}

const farthest = 1 << 60

func (c *checker) startOf(i int) int { return i }
func (c *checker) endOf(i int) int   { return c.n + i }

func (c *checker) point(pt problem.Point) term {
	switch {
	case pt.Activity == problem.Origin:
		return term{c.zero, 0}
	case pt.End:
		return term{c.endOf(pt.Activity), 0}
	}
	return term{c.startOf(pt.Activity), 0}
}

func (c *checker) apart(l problem.Lag) apart {
	return apart{c.point(l.From), c.point(l.To), l.Min}
}

func newChecker(p *problem.Problem, nodes int) *checker {
	c := &checker{
		p: p, n: len(p.Activities), nodes: nodes, begin: &domain{},
		names: map[string]view{}, spoken: map[about]int{}, usual: map[about]int{},
	}
	d := c.begin
	for range 2 * c.n {
		d.add(0, p.Horizon)
	}
	c.zero, c.last = d.add(0, 0), d.add(0, p.Horizon)
	for _, a := range p.Activities {
		var vars []int
		if len(a.Modes) > 1 {
			for range a.Modes {
				vars = append(vars, d.add(0, 1))
			}
		}
		c.modes = append(c.modes, vars)
	}
	for range p.States {
		c.worked = append(c.worked, d.add(0, c.n))
		c.counts = append(c.counts, d.add(0, c.n))
	}
	for _, o := range objectives(p) {
		c.objective(o)
	}
	for r := range p.Resources {
		c.room = append(c.room, c.roomOf(r))
	}
	c.told = make([][]int, c.n*c.n)
	d.moved, d.stale = slices.Repeat([]bool{true}, c.n), slices.Repeat([]bool{true}, len(c.room))
	c.noteUses()
	c.temporal()
	c.findCliques()
	c.root = d.clone()
	c.dead = !c.propagate(c.root)
	return c
}

func (c *checker) objective(o problem.Objective) {
	s := sum{value: c.begin.add(-farthest, farthest)}
	if o.Makespan {
		s.parts = append(s.parts, part{c.last, 1})
	}
	for _, t := range o.Terms {
		s.parts = append(s.parts, part{c.point(t.Point).v, t.Weight})
	}
	for _, k := range o.Changes {
		s.parts = append(s.parts, part{c.worked[k], 1})
	}
	for _, k := range o.Switches {
		s.parts = append(s.parts, part{c.counts[k], 1})
	}
	for _, f := range o.Soft {
		c.prices = append(c.prices, price{c.begin.add(0, 1), f})
		s.parts = append(s.parts, part{c.prices[len(c.prices)-1].v, f.Weight})
	}
	c.values, c.sums = append(c.values, s.value), append(c.sums, s)
	c.shownBound = append(c.shownBound, -farthest)
}

// roomOf is what a resource has, minute by minute.
func (c *checker) roomOf(r int) []int {
	res := &c.p.Resources[r]
	room := make([]int, c.p.Horizon)
	for t := range room {
		room[t] = res.Capacity
		for _, k := range res.Closures {
			if k.From <= t && t < k.Until {
				room[t] = k.Left
			}
		}
	}
	return room
}

// modeLeft says that activity i may still run in mode m.
func (c *checker) modeLeft(d *domain, i, m int) bool {
	return len(c.modes[i]) == 0 || d.hi[c.modes[i][m]] == 1
}

// drop rules a mode out.
func (c *checker) drop(d *domain, i, m int) {
	if len(c.modes[i]) == 0 {
		d.dead = true
	} else {
		d.atMost(c.modes[i][m], 0)
	}
}

// uses is what a mode takes of a resource.
func uses(list []problem.Use, r int) (sum int) {
	for _, u := range list {
		if u.Resource == r {
			sum += u.Amount
		}
	}
	return sum
}
