package solver

import (
	"plait.example/solver/internal/lcg"
	"plait.example/solver/problem"
)

// widest is the greatest range of an objective's variable.
const widest = 1 << 28

// objective makes a variable that is at least the objective, in units of
// scale above base.
func (m *model) objective(o problem.Objective) {
	if v, alone := m.alreadyThere(o); alone {
		m.goal, m.scale, m.base = append(m.goal, v), append(m.scale, 1), append(m.base, 0)
		return
	}
	parts, constant := m.parts(o)
	low, high := constant, constant
	for _, a := range parts {
		x, y := a.Weight*m.e.Low(a.Var), a.Weight*m.e.High(a.Var)
		low, high = low+min(x, y), high+max(x, y)
	}
	scale := 1 + max(0, high-low)/widest
	goal := m.e.NewVar(0, max(0, high-low)/scale+1)
	m.name(goal, "goal", len(m.goal), low, scale)
	m.e.AddLinear(append(parts, lcg.Part{Weight: -scale, Var: goal}), low-constant)
	m.goal, m.scale, m.base = append(m.goal, goal), append(m.scale, scale), append(m.base, low)
}

// alreadyThere is the variable of an objective that needs none of its own.
func (m *model) alreadyThere(o problem.Objective) (lcg.Var, bool) {
	switch rest := len(o.Terms) + len(o.Changes) + len(o.Soft); {
	case rest == 0 && o.Makespan && len(o.Switches) == 0:
		return m.last, true
	case rest == 0 && !o.Makespan && len(o.Switches) == 1:
		return m.switches(o.Switches[0]), true
	}
	return 0, false
}

// parts writes an objective as a weighted sum of variables and a constant.
func (m *model) parts(o problem.Objective) (parts []lcg.Part, constant int) {
	weight := map[lcg.Var]int{}
	var order []lcg.Var
	add := func(v lcg.Var, w int) {
		if _, seen := weight[v]; !seen {
			order = append(order, v)
		}
		weight[v] += w
	}
	if o.Makespan {
		add(m.last, 1)
	}
	times, constant := m.times(o.Terms)
	for _, t := range times {
		add(t.Var, t.Weight)
	}
	for _, k := range o.Changes {
		for _, n := range m.needs[k] {
			if v, one := m.count(n.works); one {
				add(v, 1)
			}
		}
	}
	for _, k := range o.Switches {
		add(m.switches(k), 1)
	}
	for _, s := range o.Soft {
		switch l := m.kept(s); {
		case m.e.Holds(l):
		case m.e.Fails(l):
			constant += s.Weight
		default:
			v, _ := m.count(l.Not())
			add(v, s.Weight)
		}
	}
	for _, v := range order {
		if weight[v] != 0 {
			parts = append(parts, lcg.Part{Weight: weight[v], Var: v})
		}
	}
	return parts, constant
}

// count is a variable that is 1 when the literal holds; none if it never does.
func (m *model) count(l lcg.Lit) (lcg.Var, bool) {
	if m.e.Fails(l) {
		return 0, false
	}
	if l == lcg.Is(l.Var()) {
		return l.Var(), true
	}
	b := m.e.NewBool()
	m.nameAll(b, []lcg.Lit{l})
	m.e.Imply(b, l)
	return b.Var(), true
}

// bound is the least value of objective k that the engine has not ruled out.
func (m *model) bound(k int) int {
	return m.base[k] + m.scale[k]*(m.e.Low(m.goal[k])-1) + 1
}

// below is the literal that objective k is at most v; with a coarse scale it
// may ask for less.
func (m *model) below(k, v int) lcg.Lit {
	x := v - m.base[k]
	if x < 0 {
		return lcg.AtMost(m.goal[k], -1)
	}
	return lcg.AtMost(m.goal[k], x/m.scale[k])
}

// within is a literal that every solution with objective k at most v allows.
func (m *model) within(k, v int) lcg.Lit {
	return lcg.AtMost(m.goal[k], (v-m.base[k]+m.scale[k]-1)/m.scale[k])
}
