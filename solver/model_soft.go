package solver

import (
	"plait.example/solver/internal/lcg"
	"plait.example/solver/problem"
)

// kept is a literal such that the choice is not broken while it holds. It may
// be false though the choice is kept: that costs the search nothing, since an
// objective is only ever held down.
func (m *model) kept(s problem.Soft) lcg.Lit {
	var ways []lcg.Lit
	for _, f := range s.If {
		ways = append(ways, m.mode[f.Activity][f.Mode].Not())
	}
	for _, l := range s.Any {
		ways = append(ways, m.holding(l))
	}
	return m.some(ways...)
}

// holding is a literal under which a lag holds: a bound of a time, an order
// that is there already, or one of its own.
func (m *model) holding(l problem.Lag) lcg.Lit {
	l.Demand = ""
	switch between(m.apart, l) {
	case always:
		return lcg.True
	case never:
		return lcg.True.Not()
	}
	if l.From.Activity == problem.Origin && l.To.Activity == problem.Origin {
		return constant(l.Min <= 0)
	}
	if l.From.Activity == problem.Origin {
		return m.point(l.To).AtLeast(min(l.Min, m.p.Horizon+1))
	}
	if l.To.Activity == problem.Origin {
		return m.point(l.From).AtMost(max(-l.Min, -1))
	}
	if l.Min <= -m.p.Horizon {
		return lcg.True
	}
	if order, same := m.orderOf(l); same {
		return order
	}
	if lit, done := m.lags[l]; done {
		return lit
	}
	lit := m.e.NewBool()
	m.e.Prefer(lit.Var(), 1)
	m.nameLag(lit, l)
	m.lag(l, lit)
	m.lags[l] = lit
	return lit
}

func constant(holds bool) lcg.Lit {
	if holds {
		return lcg.True
	}
	return lcg.True.Not()
}

// orderOf is the literal of an order of two activities, if the lag holds in
// that order and cannot hold in the other.
func (m *model) orderOf(l problem.Lag) (lcg.Lit, bool) {
	a, b := l.From.Activity, l.To.Activity
	order, known := m.order[pair{a, b}]
	if !known {
		if order, known = m.order[pair{b, a}]; known {
			order = order.Not()
		}
	}
	if !known || order.Var() == 0 || a == b {
		return lcg.Lit{}, false
	}
	// How far To is after From at least if a comes first, From after To if b does.
	ahead, back := 0, 0
	first, second := m.p.Activities[a].MinDuration, m.p.Activities[b].MinDuration
	if l.From.End {
		back += first
	} else {
		ahead += first
	}
	if l.To.End {
		ahead += second
	} else {
		back += second
	}
	return order, l.Min <= ahead && l.Min > -back
}
