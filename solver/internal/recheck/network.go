package recheck

// network holds the longest paths between all starts, all ends and time 0: how
// much later one is than the other in every schedule, by lags and lengths alone.
type network struct {
	nodes int
	zero  int // the variable of 0 has the last node
	paths []int
	cycle bool // there is one longer than 0: no schedule
}

// mostNodes limits the work, which grows with the cube.
const mostNodes = 500

func newNetwork(n, zero int) *network {
	w := &network{nodes: 2*n + 1, zero: zero}
	w.paths = make([]int, w.nodes*w.nodes)
	for i := range w.paths {
		if i%(w.nodes+1) > 0 {
			w.paths[i] = -farthest
		}
	}
	return w
}

func (w *network) node(v int) int {
	if v == w.zero {
		return w.nodes - 1
	}
	return v
}

// least is how much later to is than from at least; -farthest if nothing says so.
func (w *network) least(from, to int) int {
	a, b := w.node(from), w.node(to)
	if a >= w.nodes || b >= w.nodes {
		return -farthest
	}
	return w.paths[a*w.nodes+b]
}

// add puts a lag into every path.
func (w *network) add(a apart) {
	from, to, gap := w.node(a.from.v), w.node(a.to.v), a.gap()
	if w.paths[from*w.nodes+to] >= gap {
		return
	}
	after := w.paths[to*w.nodes : (to+1)*w.nodes]
	for x := range w.nodes {
		head := w.paths[x*w.nodes+from]
		if head == -farthest {
			continue
		}
		row := w.paths[x*w.nodes : (x+1)*w.nodes]
		for y, tail := range after {
			if tail != -farthest {
				row[y] = max(row[y], head+gap+tail)
			}
		}
	}
	w.cycle = w.cycle || w.paths[to*w.nodes+to] > 0 || w.paths[from*w.nodes+from] > 0
}

// temporal demands lengths and lags, and of couples of which one order cannot
// be, by the paths, the other.
func (c *checker) temporal() {
	if 2*c.n+1 <= mostNodes {
		c.far = newNetwork(c.n, c.zero)
	}
	demand := func(a apart) {
		c.always(a)
		if c.far != nil && !c.far.cycle {
			c.far.add(a)
		}
	}
	zero := term{c.zero, 0}
	for i, a := range c.p.Activities {
		s, e := term{c.startOf(i), 0}, term{c.endOf(i), 0}
		demand(apart{s, e, a.MinDuration})
		demand(apart{e, s, -a.MaxDuration})
		demand(apart{zero, s, 0})
		demand(apart{e, zero, -c.p.Horizon})
		c.always(apart{e, term{c.last, 0}, 0})
	}
	for _, l := range c.p.Lags {
		demand(c.apart(l))
	}
	if c.far == nil {
		return
	}
	for again := true; again && !c.far.cycle; {
		again = false
		for _, o := range c.couples {
			for _, way := range [...]couple{o, {o.j, o.i}} {
				a, back := c.order(way.i, way.j), c.order(way.j, way.i)
				if c.far.least(back.to.v, back.from.v) > 0 && c.far.least(a.from.v, a.to.v) < 0 {
					demand(a)
					again = true
				}
			}
		}
	}
	c.begin.dead = c.begin.dead || c.far.cycle
}

// follow says that by the paths i ends before j starts.
func (c *checker) follow(i, j int) bool {
	return c.far != nil && c.far.least(c.endOf(i), c.startOf(j)) >= 0
}
