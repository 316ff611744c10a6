package recheck

import "plait.example/solver/problem"

// price is a choice that may be broken, and the variable that says that it is.
type price struct {
	v int
	problem.Soft
}

// broken: what may be broken is broken exactly when its conditions are met and
// none of its lags holds.
func (c *checker) broken(d *domain) {
	for _, p := range c.prices {
		c.price(d, p)
	}
}

func (c *checker) price(d *domain, p price) {
	asked, kept := true, false // surely
	var open []problem.Chosen
	for _, f := range p.If {
		switch {
		case !c.modeLeft(d, f.Activity, f.Mode):
			d.atMost(p.v, 0)
			return
		case len(c.modes[f.Activity]) > 0 && d.lo[c.modes[f.Activity][f.Mode]] == 0:
			asked = false
			open = append(open, f)
		}
	}
	var ways []apart
	for _, l := range p.Any {
		a := c.apart(l)
		kept = kept || d.sure(a)
		if !d.impossible(a) {
			ways = append(ways, a)
		}
	}
	switch {
	case kept:
		d.atMost(p.v, 0)
	case asked && len(ways) == 0:
		d.atLeast(p.v, 1)
	case d.lo[p.v] == 1:
		for _, f := range open {
			d.atLeast(c.modes[f.Activity][f.Mode], 1)
		}
		for _, a := range ways {
			d.keepApart(a.converse())
		}
	case d.hi[p.v] == 1:
	case asked && len(ways) == 1:
		d.keepApart(ways[0])
	case len(open) == 1 && len(ways) == 0:
		c.drop(d, open[0].Activity, open[0].Mode)
	}
}
