package solver

import (
	"plait.example/solver/internal/lcg"
	"plait.example/solver/problem"
)

// post posts how far each demand gives way, and the price. The model has all of
// them as loose as they may be.
func (x *relaxing) post() {
	var parts []lcg.Part
	dropped, total := 0, 0
	by := map[string]lcg.Term{}
	for _, s := range x.slacks {
		t := lcg.Constant(0)
		if s.Most > 0 {
			t = lcg.Term{Var: x.m.e.NewVar(0, s.Most)}
			by[s.Demand] = t
			parts = append(parts, lcg.Part{Weight: s.Price, Var: t.Var})
		}
		x.by = append(x.by, t)
		if s.Drop > 0 {
			parts = append(parts, lcg.Part{Weight: -s.Drop, Var: x.m.while(s.Demand).Var()})
			dropped += s.Drop
		}
		total += s.Most*s.Price + s.Drop
	}
	x.price = x.m.e.NewVar(0, min(total, widest))
	x.m.e.AddLinear(append(parts, lcg.Part{Weight: -1, Var: x.price}), -dropped)
	for _, l := range x.p.Lags {
		if t, gives := by[l.Demand]; gives {
			x.lag(l, t, x.m.while(l.Demand))
		}
	}
	for _, c := range x.p.Choices {
		if t, gives := by[c.Demand]; gives {
			x.choice(c, t)
		}
	}
	for r := range x.p.Resources {
		x.resource(r, by)
	}
}

// lag demands to + by >= from + least while a literal holds.
func (x *relaxing) lag(l problem.Lag, by lcg.Term, when lcg.Lit) {
	limit := by // to + by
	if l.To.Activity != problem.Origin {
		to := x.m.point(l.To)
		limit = lcg.Term{Var: x.m.e.NewVar(0, x.m.e.Max(to)+x.m.e.Max(by))}
		x.m.e.AddLinear([]lcg.Part{{Weight: 1, Var: limit.Var}, {Weight: -1, Var: to.Var}, {Weight: -1, Var: by.Var}}, int(to.Add))
	}
	h := x.p.Horizon
	x.m.e.AddDifference(x.m.point(l.From), min(max(l.Min, -h), h+x.m.e.Max(by)+1), limit, when)
}

// choice demands that one of the lags holds as far as the choice gives way.
func (x *relaxing) choice(c problem.Choice, by lcg.Term) {
	lits := []lcg.Lit{x.m.while(c.Demand).Not()}
	for _, f := range c.If {
		lits = append(lits, x.m.mode[f.Activity][f.Mode].Not())
	}
	for _, l := range c.Any {
		b := x.m.e.NewBool()
		x.lag(l, by, b)
		lits = append(lits, b)
	}
	x.m.e.AddClause(lits...)
}

// resource fills up what a resource and its closures do not give. Of a resource
// that may have most more, a unit is taken all the while for each that it does
// not give; of a closure likewise, while it lasts.
func (x *relaxing) resource(r int, by map[string]lcg.Term) {
	res := &x.p.Resources[r]
	capacity := x.m.p.Resources[r].Capacity // at most
	if t, gives := by[res.Demand]; gives {
		x.fill(r, 0, x.p.Horizon, capacity, res.Capacity, t, lcg.True)
	}
	for _, c := range res.Closures {
		if t, gives := by[c.Demand]; gives {
			x.fill(r, min(c.From, x.p.Horizon), min(c.Until, x.p.Horizon), max(capacity, c.Left+x.m.e.Max(t)), c.Left, t, x.m.while(c.Demand))
		}
	}
}

// fill demands that over [from, until) no more than left + by is used, and no
// more than capacity ever.
func (x *relaxing) fill(r, from, until, capacity, left int, by lcg.Term, when lcg.Lit) {
	if from >= until {
		return
	}
	var table []lcg.Task
	for _, t := range x.m.tasks(r) {
		t.Present = x.m.all(t.Present, x.m.while(x.p.Resources[r].Demand))
		table = append(table, t.Task)
	}
	taken := func(amount int, present lcg.Lit) {
		if amount > 0 {
			table = append(table, lcg.Task{
				Start: lcg.Constant(from), End: lcg.Constant(until), Amount: amount, Present: present, Least: until - from,
			})
		}
	}
	most := x.m.e.Max(by)
	taken(capacity-left-most, when)
	for j := range most {
		taken(1, x.m.all(when, by.AtMost(j)))
	}
	x.m.e.AddCumulative(table, capacity, false)
}
