package solver

import "slices"

// transport takes goods from sources to sinks so that what that is worth is
// greatest; supply and demand sum to the same. Shortest augmenting paths with
// potentials (J. Edmonds, R. Karp, 1972; N. Tomizawa, 1971).
type transport struct {
	sources, sinks []load
	supply, demand []int   // what is left
	worth          [][]int // by source and sink: of one unit
	taken          [][]int
	raise          []int // potential of a source, then of a sink
}

// solve gives what is taken from where to where.
func (t *transport) solve() (flows []flow) {
	n := len(t.sources)
	t.raise = make([]int, n+len(t.sinks))
	for j := range t.sinks {
		for i := range t.sources {
			t.raise[n+j] = max(t.raise[n+j], t.worth[i][j])
		}
	}
	top := slices.Max(append([]int{0}, t.raise...))
	for j := range t.sinks {
		t.raise[n+j] = top - t.raise[n+j]
	}
	for range t.sources {
		t.taken = append(t.taken, make([]int, len(t.sinks)))
	}
	for t.augment(top) {
	}
	for i, row := range t.taken {
		for j, amount := range row {
			if amount > 0 {
				flows = append(flows, flow{t.sources[i], t.sinks[j], amount, t.worth[i][j]})
			}
		}
	}
	return flows
}

const unreached = 1 << 60

// augment takes more along a shortest path from a source with supply to a sink
// with demand; false if there is none.
func (t *transport) augment(top int) bool {
	n := len(t.sources)
	dist := slices.Repeat([]int{unreached}, len(t.raise))
	from := slices.Repeat([]int{-1}, len(t.raise))
	done := make([]bool, len(t.raise))
	for i, left := range t.supply {
		if left > 0 {
			dist[i] = 0
		}
	}
	end := -1
	for end < 0 {
		v := -1
		for k, d := range dist {
			if !done[k] && d < unreached && (v < 0 || d < dist[v]) {
				v = k
			}
		}
		if v < 0 {
			return false
		}
		done[v] = true
		if v >= n && t.demand[v-n] > 0 {
			end = v
			break
		}
		t.reach(v, top, dist, from)
	}
	for k := range dist {
		t.raise[k] += min(dist[k], dist[end])
	}
	t.shift(end, from)
	return true
}

// reach follows the arcs of one node: from a source to every sink, from a sink
// back to the sources that it takes from.
func (t *transport) reach(v, top int, dist, from []int) {
	n := len(t.sources)
	if v < n {
		for j := range t.sinks {
			if d := dist[v] + top - t.worth[v][j] + t.raise[v] - t.raise[n+j]; d < dist[n+j] {
				dist[n+j], from[n+j] = d, v
			}
		}
		return
	}
	for i := range t.sources {
		if t.taken[i][v-n] > 0 {
			if d := dist[v] - (top - t.worth[i][v-n]) + t.raise[v] - t.raise[i]; d < dist[i] {
				dist[i], from[i] = d, v
			}
		}
	}
}

// shift takes as much along the path to a sink as can be.
func (t *transport) shift(end int, from []int) {
	n := len(t.sources)
	amount, begin := t.demand[end-n], end
	for ; from[begin] >= 0; begin = from[begin] {
		if begin < n { // back over an arc
			amount = min(amount, t.taken[begin][from[begin]-n])
		}
	}
	amount = min(amount, t.supply[begin])
	t.demand[end-n] -= amount
	t.supply[begin] -= amount
	for v := end; from[v] >= 0; v = from[v] {
		if v < n {
			t.taken[v][from[v]-n] -= amount
		} else {
			t.taken[from[v]][v-n] += amount
		}
	}
}
