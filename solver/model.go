package solver

import (
	"slices"

	"plait.example/solver/internal/lcg"
	"plait.example/solver/problem"
)

// model is a problem posted to an engine, and the variables by which its
// solutions are read back.
type model struct {
	p        *problem.Problem
	e        *lcg.Engine
	start    []lcg.Term
	end      []lcg.Term
	least    []int       // by activity: its length, or the least that lags leave it
	mode     [][]lcg.Lit // by activity: one literal a mode; True for the only one
	needs    [][]*need   // by state
	goal     []lcg.Var   // by objective
	scale    []int       // by objective: units of the objective in one of goal
	base     []int       // by objective: value of the objective at goal 0
	last     lcg.Var     // the makespan
	order    map[pair]lcg.Lit
	users    []users
	apart    *distances
	soft     map[string]lcg.Lit      // by name of a demand: the demand holds; others always do
	names    *names                  // what the variables mean, for a proof; nil unless one is wanted
	lags     map[problem.Lag]lcg.Lit // lags that objectives ask for
	instants []bool                  // by state: see model_switch.go
	switched map[int]lcg.Var         // by state: number of its changes, if an objective has asked for it
}

func newModel(p *problem.Problem, seed int64) *model {
	return &model{p: p, e: lcg.New(seed), order: map[pair]lcg.Lit{}, lags: map[problem.Lag]lcg.Lit{}, switched: map[int]lcg.Var{}}
}

// pair is two activities, or other things counted alike.
type pair struct{ a, b int }

// compile posts p to a new engine. The problem must be valid and its lags free
// of contradiction.
func compile(p *problem.Problem, seed int64) *model { return compileSoft(p, seed, nil) }

// compileNamed does the same, and notes what the variables mean.
func compileNamed(p *problem.Problem, seed int64) *model {
	m := newModel(p, seed)
	m.names = &names{}
	m.post(p)
	return m
}

// compileSoft does the same, but demands of these names hold only while their
// literals in soft do.
func compileSoft(p *problem.Problem, seed int64, names []string) *model {
	m := newModel(p, seed)
	always := p
	if len(names) > 0 {
		m.soft = make(map[string]lcg.Lit, len(names))
		gone := make(map[string]bool, len(names))
		for _, n := range names {
			m.soft[n], gone[n] = m.e.NewBool(), true
		}
		always = problem.Without(p, gone)
	}
	m.post(always)
	return m
}

// post posts the whole problem with its first objective; always is what holds
// of it come what may.
func (m *model) post(always *problem.Problem) {
	p := m.p
	m.apart = measure(always)
	for i := range p.Activities {
		m.activity(i)
	}
	for _, l := range p.Lags {
		m.lag(l, m.while(l.Demand))
	}
	for _, c := range p.Choices {
		m.choice(c)
	}
	m.needs = make([][]*need, len(p.States))
	for k := range p.States {
		m.instants = append(m.instants, m.instant(k))
		if m.instants[k] {
			m.keepApart(k)
		} else {
			m.state(k)
		}
	}
	for r := range p.Resources {
		m.resource(r)
	}
	m.cliques()
	m.makespan()
	m.objective(objectives(p)[0])
}

// while is the literal that a demand of this name holds.
func (m *model) while(name string) lcg.Lit {
	if l, soft := m.soft[name]; soft {
		return l
	}
	return lcg.True
}

// objectives are those of p, or the makespan.
func objectives(p *problem.Problem) []problem.Objective {
	if len(p.Objectives) == 0 {
		return []problem.Objective{{Name: "makespan", Makespan: true}}
	}
	return p.Objectives
}

// activity makes start, end and mode. A fixed length needs one variable only.
// Lags may say more of the length than the activity does.
func (m *model) activity(i int) {
	a := &m.p.Activities[i]
	h := m.p.Horizon
	least, longest := m.apart.lengths(i, a)
	longest = min(longest, h)
	start := lcg.Term{Var: m.e.NewVar(0, max(-1, h-least))}
	end := start.Plus(least)
	if longest > least {
		end = lcg.Term{Var: m.e.NewVar(min(least, h), h)}
		m.e.AddDifference(start, least, end, lcg.True)
		m.e.AddDifference(end, -longest, start, lcg.True)
	}
	m.start, m.end, m.least = append(m.start, start), append(m.end, end), append(m.least, least)
	m.mode = append(m.mode, m.modes(len(a.Modes)))
	m.nameActivity(len(m.start) - 1)
}

// modes makes n literals of which exactly one holds.
func (m *model) modes(n int) []lcg.Lit {
	switch n {
	case 0, 1:
		return []lcg.Lit{lcg.True}
	case 2:
		l := m.e.NewBool()
		return []lcg.Lit{l, l.Not()}
	}
	var lits []lcg.Lit
	for range n {
		lits = append(lits, m.e.NewBool())
	}
	m.oneOf(lits)
	return lits
}

// oneOf demands that exactly one literal holds.
func (m *model) oneOf(lits []lcg.Lit) {
	m.e.AddClause(lits...)
	for i, a := range lits {
		for _, b := range lits[:i] {
			m.e.AddClause(a.Not(), b.Not())
		}
	}
}

// all is a literal that holds if and only if all of lits do.
func (m *model) all(lits ...lcg.Lit) lcg.Lit {
	var kept []lcg.Lit
	for _, l := range lits {
		if m.e.Fails(l) {
			return lcg.True.Not()
		}
		if !m.e.Holds(l) && !slices.Contains(kept, l) {
			kept = append(kept, l)
		}
	}
	switch len(kept) {
	case 0:
		return lcg.True
	case 1:
		return kept[0]
	}
	b := m.e.NewBool()
	m.nameAll(b, kept)
	m.e.Imply(b, kept...)
	for _, l := range kept {
		m.e.Imply(l, b)
	}
	return b
}

// some is a literal that holds if and only if one of lits does.
func (m *model) some(lits ...lcg.Lit) lcg.Lit {
	var not []lcg.Lit
	for _, l := range lits {
		not = append(not, l.Not())
	}
	return m.all(not...).Not()
}

// point is the term of a point.
func (m *model) point(pt problem.Point) lcg.Term {
	switch {
	case pt.Activity == problem.Origin:
		return lcg.Constant(0)
	case pt.End:
		return m.end[pt.Activity]
	}
	return m.start[pt.Activity]
}

// lag posts a lag that holds while the literal does. What lies beyond the
// horizon either way is cut there.
func (m *model) lag(l problem.Lag, when lcg.Lit) {
	h := m.p.Horizon
	if l.Min <= -h {
		return // no two points are further apart
	}
	m.e.AddDifference(m.point(l.From), min(l.Min, h+1), m.point(l.To), when)
}

// choice posts a clause over one literal a lag.
func (m *model) choice(c problem.Choice) {
	lits := []lcg.Lit{m.while(c.Demand).Not()}
	for _, f := range c.If {
		lits = append(lits, m.mode[f.Activity][f.Mode].Not())
	}
	for _, l := range c.Any {
		switch between(m.apart, l) {
		case always:
			return
		case never:
			continue
		}
		b := m.e.NewBool()
		m.nameLag(b, l)
		m.lag(l, b)
		lits = append(lits, b)
	}
	m.e.AddClause(lits...)
}

// makespan makes the greatest end.
func (m *model) makespan() {
	m.last = m.e.NewVar(0, m.p.Horizon)
	m.name(m.last, "makespan")
	for _, end := range m.end {
		m.e.AddDifference(end, 0, lcg.Term{Var: m.last}, lcg.True)
	}
}
