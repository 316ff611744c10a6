package solver

import (
	"slices"

	"plait.example/solver/internal/lcg"
	"plait.example/solver/problem"
)

// A weighted sum of times is written as a sum of spans, each from one time to
// another, since a sum of times that move together is bounded far better so:
// every span has a least length by the network of lags, and a bound on the sum
// bounds every span from above.
//
// The spans are chosen so that the sum of their least lengths is greatest: a
// transport problem, the dual of the sum's minimum over the network alone.
// Times of negative weight are the sources, those of positive weight the sinks,
// the origin balances them.

// load is a time in a sum.
type load struct {
	v      lcg.Var // 0 for the origin
	node   int     // of the network
	weight int
}

// flow is so many spans from one load to another.
type flow struct {
	from, to load
	amount   int
	least    int // of the span
}

// mostLoads limits the work of choosing spans, which grows with the cube.
const mostLoads = 300

// loads lists the times that a sum gives a weight, and what of the sum is
// constant.
func (m *model) loads(terms []problem.Term) (list []load, constant int) {
	at := map[lcg.Var]int{}
	for _, t := range terms {
		if t.Point.Activity == problem.Origin {
			continue
		}
		x := m.point(t.Point)
		constant += t.Weight * int(x.Add)
		i, seen := at[x.Var]
		if !seen {
			n := 2*t.Point.Activity + 1
			if x.Var != m.start[t.Point.Activity].Var {
				n++
			}
			i = len(list)
			at[x.Var] = i
			list = append(list, load{v: x.Var, node: n})
		}
		list[i].weight += t.Weight
	}
	return slices.DeleteFunc(list, func(l load) bool { return l.weight == 0 }), constant
}

// times writes weighted times as parts.
func (m *model) times(terms []problem.Term) (parts []lcg.Part, constant int) {
	loads, constant := m.loads(terms)
	if m.apart == nil || len(loads) > mostLoads {
		for _, l := range loads {
			parts = append(parts, lcg.Part{Weight: l.weight, Var: l.v})
		}
		return parts, constant
	}
	for _, f := range m.flows(loads) {
		switch {
		case f.from.v == 0:
			parts = append(parts, lcg.Part{Weight: f.amount, Var: f.to.v})
		case f.to.v == 0:
			parts = append(parts, lcg.Part{Weight: -f.amount, Var: f.from.v})
		default:
			constant += f.amount * f.least
			if v, open := m.span(f); open {
				parts = append(parts, lcg.Part{Weight: f.amount, Var: v})
			}
		}
	}
	m.nameSum(parts)
	return parts, constant
}

// span is a variable that is at least how much longer than its least a span is;
// none if it has one length.
func (m *model) span(f flow) (lcg.Var, bool) {
	most := min(m.e.High(f.to.v)-m.e.Low(f.from.v), -int(m.apart.least[f.to.node*m.apart.nodes+f.from.node]))
	if most <= f.least {
		return 0, false
	}
	v := m.e.NewVar(0, most-f.least)
	m.nameSpan(v, f)
	m.e.AddLinear([]lcg.Part{{Weight: 1, Var: f.to.v}, {Weight: -1, Var: f.from.v}, {Weight: -1, Var: v}}, f.least)
	return v, true
}

// leastSpan is the least time from one load to another that is known.
func (m *model) leastSpan(from, to load) int {
	earliest, latest := 0, 0
	if to.v != 0 {
		earliest = m.e.Low(to.v)
	}
	if from.v != 0 {
		latest = m.e.High(from.v)
	}
	return max(int(m.apart.least[from.node*m.apart.nodes+to.node]), earliest-latest)
}

// flows chooses the spans.
func (m *model) flows(loads []load) []flow {
	t := transport{}
	sum := 0
	for _, l := range loads {
		sum += l.weight
		if l.weight < 0 {
			t.sources, t.supply = append(t.sources, l), append(t.supply, -l.weight)
		} else {
			t.sinks, t.demand = append(t.sinks, l), append(t.demand, l.weight)
		}
	}
	switch {
	case sum > 0:
		t.sources, t.supply = append(t.sources, load{}), append(t.supply, sum)
	case sum < 0:
		t.sinks, t.demand = append(t.sinks, load{}), append(t.demand, -sum)
	}
	for _, from := range t.sources {
		row := make([]int, len(t.sinks))
		for j, to := range t.sinks {
			row[j] = m.leastSpan(from, to)
		}
		t.worth = append(t.worth, row)
	}
	return t.solve()
}
