package solver

import "plait.example/solver/problem"

// The temporal network: an arc says that one point is at least so long after
// another. Node 0 is the origin; activity i starts at node 2i+1 and ends at
// node 2i+2. The demands contradict each other if and only if a cycle of arcs
// is longer than 0.
type network struct {
	nodes int
	arcs  []temporalArc
}

type temporalArc struct{ from, to, least int }

func node(pt problem.Point) int {
	switch {
	case pt.Activity == problem.Origin:
		return 0
	case pt.End:
		return 2*pt.Activity + 2
	}
	return 2*pt.Activity + 1
}

// temporal builds the network of what always holds: lags, lengths, horizon.
func temporal(p *problem.Problem) *network {
	n := &network{nodes: 2*len(p.Activities) + 1}
	for i, a := range p.Activities {
		s, e := node(problem.Start(i)), node(problem.End(i))
		n.arcs = append(n.arcs,
			temporalArc{s, e, a.MinDuration}, temporalArc{e, s, -a.MaxDuration},
			temporalArc{0, s, 0}, temporalArc{e, 0, -p.Horizon})
	}
	for _, l := range p.Lags {
		n.arcs = append(n.arcs, temporalArc{node(l.From), node(l.To), l.Min})
	}
	return n
}

// earliest is the longest path from the origin to every node (Bellman, Ford).
// It returns false if there is a cycle longer than 0.
func (n *network) earliest() ([]int, bool) {
	at := make([]int, n.nodes)
	for range n.nodes + 1 {
		changed := false
		for _, a := range n.arcs {
			if v := at[a.from] + a.least; v > at[a.to] {
				at[a.to] = v
				changed = true
			}
		}
		if !changed {
			return at, true
		}
	}
	return nil, false
}

// distances are the longest paths between all pairs of points.
type distances struct {
	nodes int
	least []int32 // by from*nodes+to; unrelated if there is no path
}

// mostNodes limits the work of all pairs, which grows with the cube.
const (
	mostNodes = 320
	unrelated = -1 << 29
)

// measure computes the distances (Floyd, Warshall), or nil if there are too
// many points.
func measure(p *problem.Problem) *distances {
	n := temporal(p)
	if n.nodes > mostNodes {
		return nil
	}
	d := &distances{n.nodes, make([]int32, n.nodes*n.nodes)}
	for i := range d.least {
		d.least[i] = unrelated
	}
	for i := range n.nodes {
		d.least[i*n.nodes+i] = 0
	}
	for _, a := range n.arcs {
		cell := &d.least[a.from*n.nodes+a.to]
		*cell = max(*cell, int32(max(a.least, -p.Horizon)))
	}
	for k := range n.nodes {
		d.through(k)
	}
	return d
}

// through lets paths pass node k.
func (d *distances) through(k int) {
	via := d.least[k*d.nodes : (k+1)*d.nodes]
	for i := range d.nodes {
		head := d.least[i*d.nodes+k]
		if head == unrelated {
			continue
		}
		row := d.least[i*d.nodes : (i+1)*d.nodes]
		for j, tail := range via {
			if tail != unrelated && head+tail > row[j] {
				row[j] = head + tail
			}
		}
	}
}

// lengths are the least and the greatest length of activity i, by what it says
// itself and by the lags around it. A nil table knows nothing of those.
func (d *distances) lengths(i int, a *problem.Activity) (least, most int) {
	least, most = a.MinDuration, a.MaxDuration
	if d == nil {
		return least, most
	}
	from, to := node(problem.Start(i)), node(problem.End(i))
	least = max(least, int(d.least[from*d.nodes+to]))
	return least, max(least, min(most, -int(d.least[to*d.nodes+from])))
}

// What the network says of a lag.
type verdict int

const (
	open verdict = iota
	always
	never
)

// between says whether a lag always or never holds by the network alone. A
// nil table knows nothing.
func between(d *distances, l problem.Lag) verdict {
	if d == nil {
		return open
	}
	from, to := node(l.From), node(l.To)
	if int(d.least[from*d.nodes+to]) >= l.Min {
		return always
	}
	if int(d.least[to*d.nodes+from]) > -l.Min {
		return never
	}
	return open
}
