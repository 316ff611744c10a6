package recheck

import "slices"

// play is a variable that speaks of a state: of the block of one activity's
// need, or of the blocks of two. Blocks are the stretches between changes,
// numbered from 0, the one before the first change.
type play struct {
	v     int
	kind  string
	i, j  int // activities; j only for two
	state int
	a, b  int // what else the kind asks for
}

// kinds of play: how many numbers each asks for, and whether of two activities.
var kinds = map[string]struct {
	numbers int
	two     bool
	truth   bool
}{
	"level":  {4, false, true},  // activity state level usual: the level is this one; usual counts if there is no need
	"place":  {3, false, false}, // activity state most: number of the block, at most that
	"turn":   {2, false, false}, // activity state: number of the block; 0 if there is no need
	"change": {3, false, false}, // activity state usual: when the change to the block began
	"worked": {2, false, false}, // activity state: when the work of that change ended; 0 if there was none
	"kind":   {4, false, true},  // activity state work settle: that change took so long
	"source": {3, false, true},  // activity state level: that change came from the level
	"same":   {3, true, true},   // two activities, state: one block
	"before": {3, true, true},   // the first one's block is earlier
	"next":   {3, true, true},   // and directly before the other's
}

// ofState reads a definition that speaks of a state.
func (c *checker) ofState(kind string, k []int) (view, bool) {
	form, known := kinds[kind]
	if !known || len(k) != form.numbers {
		return view{}, false
	}
	y := play{kind: kind, i: k[0], state: k[1]}
	if form.two {
		y.j, y.state = k[1], k[2]
	} else {
		k = append(slices.Clone(k), 0, 0)
		y.a, y.b = k[2], k[3]
	}
	if min(y.i, y.j, y.state) < 0 || max(y.i, y.j) >= c.n || y.state >= len(c.p.States) {
		return view{}, false
	}
	if y.kind == "place" || y.kind == "change" {
		of := about{kind: y.kind, state: y.state}
		if a, known := c.usual[of]; known && a != y.a || y.kind == "place" && y.a < 1 {
			return view{}, false // two needs of one block must have the same
		}
		c.usual[of] = y.a
	}
	least, most := 0, 1
	if !form.truth {
		least, most = min(0, y.a), max(c.p.Horizon, c.n, y.a)
	}
	w := c.make(least, most)
	y.v = w.v
	c.plays = append(c.plays, y)
	c.note(&y)
	if kind == "before" || kind == "next" {
		c.attach(link{v: w.v, half: true, apart: c.order(y.i, y.j)})
	}
	return w, true
}

// allowed is the set of levels that a mode allows of state k; nil if it does
// not need the state.
func (c *checker) allowed(i, m, k int) []bool {
	var set []bool
	for _, need := range c.p.Activities[i].Modes[m].Needs {
		if need.State != k {
			continue
		}
		if set == nil {
			set = slices.Repeat([]bool{true}, len(c.p.States[k].Levels))
		}
		for l := range set {
			set[l] = set[l] && slices.Contains(need.Levels, l)
		}
	}
	return set
}

// surely is the set of levels that activity i may stand at, in whatever mode
// is left; false if it may do without the state.
func (c *checker) surely(d *domain, i, k int) ([]bool, bool) {
	set := make([]bool, len(c.p.States[k].Levels))
	needed := len(c.p.Activities[i].Modes) > 0
	for m := range c.p.Activities[i].Modes {
		if !c.modeLeft(d, i, m) {
			continue
		}
		one := c.allowed(i, m, k)
		needed = needed && one != nil
		for l := range one {
			set[l] = set[l] || one[l]
		}
	}
	return set, needed
}

// levels: activities that surely need a state at levels that differ are a
// change apart, and one that cannot have the initial level waits for a change.
func (c *checker) levels(d *domain) {
	for k := range c.p.States {
		for i := range c.n {
			a, needed := c.surely(d, i, k)
			if !needed {
				continue
			}
			st := &c.p.States[k]
			if least, share := c.between(k, only(len(a), st.Initial), a); !share {
				d.atLeast(c.startOf(i), st.ChangeFrom+least)
				if place, known := c.find("place", i, 0, k, 0); known {
					d.atLeast(place, 1)
				}
			}
			for j := range i {
				b, needed := c.surely(d, j, k)
				if !needed {
					continue
				}
				to, shared := c.between(k, a, b)
				from, _ := c.between(k, b, a)
				if !shared {
					oneOf(d, c.changed(i, j, to), c.changed(j, i, from))
				}
			}
		}
	}
}

func only(n, l int) []bool {
	set := make([]bool, n)
	set[l] = true
	return set
}

// between is the least time of a change from a level of one set to one of
// another, and whether they have a level in common.
func (c *checker) between(k int, a, b []bool) (least int, shared bool) {
	least = c.p.Horizon + 1
	for from := range a {
		for to := range b {
			if a[from] && b[to] {
				shared = shared || from == to
				w := c.p.States[k].Change[from][to]
				least = min(least, w.Work+w.Settle)
			}
		}
	}
	return least, shared
}

// changed is the demand that j starts after i, a change of so long between;
// one without length takes the moment of its start.
func (c *checker) changed(i, j, least int) apart {
	a := apart{term{c.endOf(i), 0}, term{c.startOf(j), 0}, least}
	if c.p.Activities[i].MaxDuration == 0 {
		a.least++
	}
	return a
}
