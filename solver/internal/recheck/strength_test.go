package recheck

import (
	"fmt"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"plait.example/solver/problem"
)

// on makes a problem of activities without other demands than resources, from
// their lengths and what they take of each resource.
func on(horizon int, capacities []int, lengths []int, takes ...[]int) *problem.Problem {
	p := &problem.Problem{Horizon: horizon}
	for _, k := range capacities {
		p.Resources = append(p.Resources, problem.Resource{Capacity: k})
	}
	for i, length := range lengths {
		a := problem.Activity{MinDuration: length, MaxDuration: length, Modes: []problem.Mode{{}}}
		for r, amount := range takes[i] {
			if amount > 0 {
				a.Modes[0].Uses = append(a.Modes[0].Uses, problem.Use{Resource: r, Amount: amount})
			}
		}
		p.Activities = append(p.Activities, a)
	}
	return p
}

// TestStepsThatOneRuleShows are steps that hold, as can be told by hand, and
// that a rule must show without any search.
func TestStepsThatOneRuleShows(t *testing.T) {
	two := on(40, []int{1}, []int{3, 4}, []int{1}, []int{1})
	lagged := on(40, []int{1}, []int{3, 4}, []int{1}, []int{1})
	lagged.Lags = []problem.Lag{{From: problem.Start(0), To: problem.Start(1), Min: -3}} // 1 cannot be the first, since it takes 4
	circle := on(40, nil, []int{3, 4}, nil, nil)
	circle.Lags = []problem.Lag{{From: problem.Start(0), To: problem.Start(1), Min: -3}, {From: problem.Start(1), To: problem.Start(0), Min: 4}}
	five := on(40, []int{2}, []int{2, 2, 2, 2, 2}, []int{1}, []int{1}, []int{1}, []int{1}, []int{1})
	ample := on(40, []int{9, 2}, []int{2, 2, 2, 2, 2}, []int{1, 1}, []int{1, 1}, []int{1, 1}, []int{1, 1}, []int{1, 1})
	three := on(40, []int{1, 1, 1}, []int{3, 4, 5}, []int{1, 1, 0}, []int{1, 0, 1}, []int{0, 1, 1})
	four := fourByPairs()
	const orders = "let b1 lag s0+3 s1 0\nlet b2 lag s1+4 s0 0\n"
	for _, c := range []struct {
		why   string
		p     *problem.Problem
		steps string
	}{
		{"an order denied is the other one", two, orders + "clause b1 b2"},
		{"not both orders", two, orders + "clause !b1 !b2"},
		{"a lag leaves one order", lagged, orders + "clause b1"},
		{"lags in a circle", circle, "clause"},
		{"ten of a room of two by five, and no pair clashes", five, "bound 0 5"},
		{"likewise, on the second of two resources", ample, "bound 0 5"},
		{"four of them before 4 leave the fifth no room there", five, "clause s0>=3 s1>=3 s2>=3 s3>=3 s4>=4"},
		{"no minute of it is an earliest start", five, "clause s0>=4 s1>=4 s2>=4 s3>=4 s4>=4 s0<=0 s1<=0 s2<=0 s3<=0 s4<=0"},
		{"three that clash by pairs, on as many resources", three, "bound 0 12"},
		{"two that come before it take their time one after the other", four, "clause s1>=5 s2>=5 s0>=6"},
		{"what must come after, likewise", four, "clause s1<=32 s2<=32 s0<=28"},
		{"it is not the last of four", four, "clause s0>=9 s1>=13 s2>=13 s3>=13 s0<=6"},
		{"nor the first", four, "clause s0>=25 s1<=23 s2<=23 s3<=23 s0<=24"},
	} {
		t.Run(c.why, func(t *testing.T) {
			log := fmt.Sprintf("proof 1 activities %d horizon %d objectives 1\n", len(c.p.Activities), c.p.Horizon)
			for i := range c.p.Activities {
				log += fmt.Sprintf("let s%d start %d\n", i, i)
			}
			r, err := Replay(c.p, strings.NewReader(log+c.steps+"\nend unknown\n"), 0)
			if err != nil || !r.Sound() || r.Propagated != 1 || r.Unchecked > 0 {
				t.Errorf("%q: %v, %v", c.steps, r, err)
			}
			if r, err = Replay(c.p, strings.NewReader(log+c.steps+"\nend unknown\n"), 20_000); err != nil || !r.Sound() {
				t.Errorf("%q, with a search: %v, %v", c.steps, r, err)
			}
		})
	}
}

// fourByPairs is one of 6 and three of 3, every two of them on a resource of
// their own.
func fourByPairs() *problem.Problem {
	return on(40, []int{1, 1, 1, 1, 1, 1}, []int{6, 3, 3, 3},
		[]int{1, 1, 1, 0, 0, 0}, []int{1, 0, 0, 1, 1, 0}, []int{0, 1, 0, 1, 0, 1}, []int{0, 0, 1, 0, 1, 1})
}

// TestNotLast: three of 3 cannot all be done before 9. The one of 6 that starts
// by 8 is not the last, so it ends by 12 if the others start by then; and the
// same backwards from 40.
func TestNotLast(t *testing.T) {
	c := newChecker(fourByPairs(), 0)
	d, e := c.root.clone(), c.root.clone()
	d.atMost(0, 8)
	e.atLeast(0, 40-8-6)
	for i := 1; i < 4; i++ {
		d.atMost(i, 12)
		e.atLeast(i, 40-12-3)
	}
	if !c.propagate(d) || d.hi[0] != 6 {
		t.Errorf("starts by %d; must be 6", d.hi[0])
	}
	if !c.propagate(e) || e.lo[0] != 28 {
		t.Errorf("starts at %d or later; must be 28", e.lo[0])
	}
}

// TestClausesHeard holds the watched literals against looking at every clause
// again and again, on random clauses over ten variables, down random paths of
// bounds and back.
func TestClausesHeard(t *testing.T) {
	rng := rand.New(rand.NewPCG(3, 4))
	dead, units := 0, 0
	for range 100 {
		p := on(6, nil, []int{0, 0, 0, 0, 0}, nil, nil, nil, nil, nil)
		for i := range p.Activities {
			p.Activities[i].MaxDuration = 6
		}
		c := newChecker(p, 0)
		var clauses [][]lit
		for range 15 + rng.IntN(15) {
			var clause []lit
			for range 2 + rng.IntN(3) {
				clause = append(clause, lit{rng.IntN(10), rng.IntN(2) == 0, 1 + rng.IntN(5)})
			}
			clauses = append(clauses, slices.Clone(clause))
			c.learn(clause)
			c.settle()
			var down func(d *domain, depth int)
			down = func(d *domain, depth int) {
				for range 2 {
					e := d.clone()
					e.hold(lit{rng.IntN(10), rng.IntN(2) == 0, rng.IntN(7)})
					twin := e.clone()
					c.propagate(e)
					repeated(c, twin, clauses)
					if e.dead != twin.dead || !e.dead && (!slices.Equal(e.lo, twin.lo) || !slices.Equal(e.hi, twin.hi)) {
						t.Fatalf("%v to %v, dead %v; by every clause %v to %v, dead %v; clauses %v", e.lo, e.hi, e.dead, twin.lo, twin.hi, twin.dead, clauses)
					}
					dead += one(e.dead)
					units++
					if depth > 0 && !e.dead {
						down(e, depth-1)
					}
				}
			}
			if !c.root.dead {
				down(c.root, 2)
			}
		}
	}
	if dead < 500 || units < 5000 {
		t.Errorf("%d ends of %d: too few to mean much", dead, units)
	}
}

// repeated applies every clause, and every rule but those of clauses, until
// nothing changes.
func repeated(c *checker, d *domain, clauses [][]lit) {
	c.deaf = true
	defer func() { c.deaf = false }()
	for again := true; again && c.propagate(d); {
		again = false
		for _, clause := range clauses {
			var open []lit
			for _, l := range clause {
				if !d.fails(l) {
					open = append(open, l)
				}
			}
			weakest := plain(slices.Clone(open))
			switch {
			case len(open) == 0:
				d.dead = true
			case len(weakest) == 1 && !d.holds(weakest[0]):
				d.hold(weakest[0])
				again = true
			}
		}
	}
}
