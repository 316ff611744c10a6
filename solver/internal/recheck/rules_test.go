package recheck

import (
	"fmt"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"plait.example/solver/problem"
)

// little is an invented problem of four or five activities on tight resources,
// with lags both ways, some lengths that vary and some closures. In a crowd,
// most of them want most of the few resources.
func little(rng *rand.Rand) *problem.Problem {
	crowd := min(1, rng.IntN(3))
	n := 4 + crowd
	p := &problem.Problem{Horizon: 8 + 2*crowd + rng.IntN(2)}
	for range 1 + rng.IntN(3) {
		r := problem.Resource{Capacity: 1 + rng.IntN(2-crowd) + rng.IntN(2-crowd)}
		if rng.IntN(4+4*crowd) == 0 {
			from := rng.IntN(p.Horizon - 2)
			r.Closures = []problem.Closure{{From: from, Until: from + 1 + rng.IntN(2), Left: rng.IntN(r.Capacity)}}
		}
		p.Resources = append(p.Resources, r)
	}
	for range n {
		length := max(2*crowd, min(rng.IntN(5), 3))
		a := problem.Activity{MinDuration: length, MaxDuration: length, Modes: []problem.Mode{{}}}
		if rng.IntN(4) == 0 {
			a.MaxDuration += 1 + rng.IntN(2)
		}
		for r := range p.Resources {
			if amount := min(rng.IntN(p.Resources[r].Capacity+1+2*crowd), p.Resources[r].Capacity); amount > 0 {
				a.Modes[0].Uses = append(a.Modes[0].Uses, problem.Use{Resource: r, Amount: amount})
			}
		}
		p.Activities = append(p.Activities, a)
	}
	for range rng.IntN(3 - crowd) {
		i, j := rng.IntN(n), rng.IntN(n)
		if i != j {
			p.Lags = append(p.Lags, problem.Lag{From: problem.Start(i), To: problem.Start(j), Min: rng.IntN(6) - 4})
		}
	}
	return p
}

// schedules are all schedules of p, as starts and then ends: tried one by one,
// by nothing that the checker knows.
func schedules(p *problem.Problem) (list [][]int) {
	n := len(p.Activities)
	now := make([]int, 2*n)
	at := func(pt problem.Point) int {
		if pt.End {
			return now[n+pt.Activity]
		}
		return now[pt.Activity]
	}
	var place func(i int)
	place = func(i int) {
		if i == n {
			for _, l := range p.Lags {
				if at(l.To) < at(l.From)+l.Min {
					return
				}
			}
			list = append(list, slices.Clone(now))
			return
		}
		a := p.Activities[i]
		for start := 0; start <= p.Horizon; start++ {
			for end := start + a.MinDuration; end <= min(start+a.MaxDuration, p.Horizon); end++ {
				if now[i], now[n+i] = start, end; fit(p, now) {
					place(i + 1)
				}
			}
		}
		now[i], now[n+i] = 0, 0
	}
	place(0)
	return list
}

// fit says that no minute takes more of a resource than there is.
func fit(p *problem.Problem, now []int) bool {
	for r, res := range p.Resources {
		for t := range p.Horizon {
			left := res.Capacity
			for _, k := range res.Closures {
				if k.From <= t && t < k.Until {
					left = k.Left
				}
			}
			for i, a := range p.Activities {
				if now[i] <= t && t < now[len(p.Activities)+i] {
					left -= amountOf(a.Modes[0].Uses, r)
				}
			}
			if left < 0 {
				return false
			}
		}
	}
	return true
}

func amountOf(list []problem.Use, r int) (sum int) {
	for _, u := range list {
		if u.Resource == r {
			sum += u.Amount
		}
	}
	return sum
}

// order is a variable that says whether i ends before j starts.
type order struct{ i, j, v int }

// told is a checker with a variable for every order of two activities, and
// what these variables are.
func told(p *problem.Problem) (c *checker, orders []order) {
	c = newChecker(p, 0)
	for i := range c.n {
		c.let(strings.Fields(fmt.Sprintf("s%d start %d", i, i)))
		c.let(strings.Fields(fmt.Sprintf("e%d end %d", i, i)))
	}
	for i := range c.n {
		for j := range c.n {
			if i != j {
				name := fmt.Sprintf("b%d_%d", i, j)
				c.let(strings.Fields(fmt.Sprintf("%s lag e%d s%d 0", name, i, j)))
				orders = append(orders, order{i, j, c.names[name].v})
			}
		}
	}
	return c, orders
}

// TestRulesLoseNoSchedule holds every rule by itself against all schedules of
// small problems: in random bounds, whatever a rule rules out has no schedule.
func TestRulesLoseNoSchedule(t *testing.T) {
	rng := rand.New(rand.NewPCG(1, 2))
	deduced := map[string]int{}
	for range 200 {
		p := little(rng)
		all := schedules(p)
		if len(all) > 2000 {
			continue // too loose to tell much
		}
		c, orders := told(p)
		c.propagate(c.root)
		if len(c.r.Faults) > 0 {
			t.Fatal(c.r.Faults)
		}
		if c.root.dead && len(all) > 0 {
			t.Fatalf("no schedule is said to be left; %v is one of\n%+v", all[0], p)
		}
		for _, s := range all {
			checkPaths(t, c, s)
		}
		for range 20 {
			allHeard(t, c, someBounds(rng, c, orders, all))
			d := someBounds(rng, c, orders, all)
			var inside [][]int
			for _, s := range all {
				if within(d, orders, s) {
					inside = append(inside, s)
				}
			}
			for _, rule := range []struct {
				name  string
				apply func(*domain)
			}{
				{"wake", c.wake},
				{"minutes", c.minutes},
				{"in line", c.inLine},
				{"windows", c.windows},
				{"all", func(d *domain) { c.propagate(d) }},
			} {
				e := d.clone()
				if c.wake(e); e.dead && rule.name != "wake" {
					continue
				}
				low, high := slices.Clone(e.lo), slices.Clone(e.hi)
				rule.apply(e)
				if e.dead || !slices.Equal(low, e.lo) || !slices.Equal(high, e.hi) {
					deduced[rule.name]++
				}
				for _, s := range inside {
					if e.dead || !within(e, orders, s) {
						t.Fatalf("%s loses %v, which is in %v to %v, of\n%+v", rule.name, s, d.lo, d.hi, p)
					}
				}
			}
		}
	}
	t.Log(deduced)
	for name, least := range map[string]int{"wake": 400, "minutes": 60, "in line": 60, "windows": 100, "all": 150} {
		if deduced[name] < least {
			t.Errorf("%s deduced something %d times only", name, deduced[name])
		}
	}
}

// allHeard says that rules that look at nothing but what was touched miss
// nothing: all of it touched once more, nothing changes.
func allHeard(t *testing.T, c *checker, d *domain) {
	t.Helper()
	if !c.propagate(d) {
		return
	}
	e := d.clone()
	for v := range e.lo {
		e.touched = append(e.touched, lit{v, atLeast, e.lo[v]}, lit{v, atMost, e.hi[v]})
	}
	for r := range e.stale {
		e.stale[r] = true
	}
	if !c.propagate(e) || !slices.Equal(e.lo, d.lo) || !slices.Equal(e.hi, d.hi) {
		t.Fatalf("%v to %v; on a second look %v to %v, dead %v; of\n%+v", d.lo, d.hi, e.lo, e.hi, e.dead, c.p)
	}
}

// someBounds are bounds around one of the schedules, or anywhere, and some
// orders given.
func someBounds(rng *rand.Rand, c *checker, orders []order, all [][]int) *domain {
	d := c.root.clone()
	var s []int
	if len(all) > 0 && rng.IntN(4) > 0 {
		s = all[rng.IntN(len(all))]
	}
	width := 2 + rng.IntN(5)
	for v := range 2 * c.n {
		if rng.IntN(3) == 0 {
			continue
		}
		x := rng.IntN(c.p.Horizon + 1)
		if s != nil {
			x = s[v]
		}
		d.atLeast(v, x-rng.IntN(width))
		d.atMost(v, x+rng.IntN(width))
	}
	for _, o := range orders {
		switch {
		case rng.IntN(4) > 0:
		case s != nil:
			d.fix(o.v, one(s[c.n+o.i] <= s[o.j]))
		default:
			d.fix(o.v, rng.IntN(2))
		}
	}
	return d
}

// within says that a schedule is in the bounds, and that the orders are as said.
func within(d *domain, orders []order, s []int) bool {
	for v, x := range s {
		if x < d.lo[v] || x > d.hi[v] {
			return false
		}
	}
	for _, o := range orders {
		if x := one(s[len(s)/2+o.i] <= s[o.j]); x < d.lo[o.v] || x > d.hi[o.v] {
			return false
		}
	}
	return true
}

// checkPaths holds every longest path against a schedule.
func checkPaths(t *testing.T, c *checker, s []int) {
	t.Helper()
	s = append(slices.Clone(s), 0) // time 0
	for from := range s {
		for to := range s {
			if s[to]-s[from] < c.far.least(from, to) {
				t.Fatalf("variable %d is %d after %d in %v; must be %d by the paths of\n%+v", to, s[to]-s[from], from, s, c.far.least(from, to), c.p)
			}
		}
	}
}
