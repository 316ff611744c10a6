package solver

import (
	"slices"

	"plait.example/solver/internal/lcg"
	"plait.example/solver/problem"
)

// need is what one activity needs of one state. Needs served by the same
// change, with no other change between them, are a block; the block from
// before the first change is the initial one. For any two needs a literal
// says that they share a block, and two that the block of one is earlier.
// Blocks have positions 0 (initial), 1, 2 and so on; a need's block follows
// directly the block whose position is one less, and that gives the level
// from which its change comes.
//
// Only changes to a level that some activity then needs are made. By the
// triangle rule no schedule becomes shorter by a pointless one, unless work
// can be split by way of a third level.
type need struct {
	activity  int
	state     int
	present   lcg.Lit
	level     []lcg.Lit // by level: the block stands at it
	initial   lcg.Lit   // the block is the initial one
	changed   lcg.Lit   // the need is there and its block is not initial
	place     lcg.Term  // position of the block
	change    lcg.Term  // when the change to the block begins; free for the initial one
	worked    lcg.Term  // when its work ends
	leads     lcg.Lit   // first by index of a block that is not initial
	works     lcg.Lit   // leads, and the change takes work
	leastWork int       // of a change that takes work
	same      []lcg.Lit // by need of smaller index: one block
	later     []after   // the needs that may come in earlier blocks
	turn      lcg.Term  // number of the block, if an objective counts the changes
}

// after says that an earlier need's block ends before this one's change.
type after struct {
	earlier *need
	when    lcg.Lit
}

// state posts state k.
func (m *model) state(k int) {
	st := &m.p.States[k]
	m.needsOf(k)
	b := &blocks{model: m, st: st, needs: m.needs[k]}
	b.tracked = b.dependsOnSource()
	for j, n := range b.needs {
		b.variables(n)
		for _, o := range b.needs[:j] {
			b.relate(o, n)
		}
	}
	for j, n := range b.needs {
		n.leads = b.lead(n, b.needs[:j])
		b.change(n)
	}
}

// needsOf reads who needs state k.
func (m *model) needsOf(k int) {
	for i := range m.p.Activities {
		if n := m.need(k, i); n != nil {
			m.needs[k] = append(m.needs[k], n)
			m.nameLevels(n)
		}
	}
}

// need reads what activity i needs of state k over its modes; nil if nothing.
func (m *model) need(k, i int) *need {
	st := &m.p.States[k]
	a := &m.p.Activities[i]
	allowed := make([][]bool, len(a.Modes)) // by mode; nil: no need
	var with []lcg.Lit
	possible := make([]bool, len(st.Levels))
	for md := range a.Modes {
		allowed[md] = levelsOf(&a.Modes[md], k, len(st.Levels))
		if allowed[md] == nil {
			continue
		}
		with = append(with, m.mode[i][md])
		for l, ok := range allowed[md] {
			possible[l] = possible[l] || ok
		}
	}
	if with == nil {
		return nil
	}
	n := &need{activity: i, state: k, present: lcg.True, leads: lcg.True.Not(), works: lcg.True.Not()}
	if len(with) < len(a.Modes) {
		n.present = m.some(with...)
	}
	n.present = m.all(n.present, m.while(st.Demand))
	n.level = m.levels(possible)
	for md, set := range allowed {
		if set != nil {
			m.restrict(n, m.mode[i][md], set)
		}
	}
	return n
}

// levelsOf is the set of levels that a mode allows of state k, or nil if it
// does not need the state. Several needs of one state must all hold.
func levelsOf(mode *problem.Mode, k, levels int) []bool {
	var set []bool
	for _, need := range mode.Needs {
		if need.State != k {
			continue
		}
		if set == nil {
			set = slices.Repeat([]bool{true}, levels)
		}
		for l := range set {
			set[l] = set[l] && slices.Contains(need.Levels, l)
		}
	}
	return set
}

// levels makes literals, one a possible level, of which exactly one holds; the
// others never do.
func (m *model) levels(possible []bool) []lcg.Lit {
	var can []int
	for l, ok := range possible {
		if ok {
			can = append(can, l)
		}
	}
	lits := slices.Repeat([]lcg.Lit{lcg.True.Not()}, len(possible))
	for i, l := range m.modes(len(can)) {
		if len(can) > 0 {
			lits[can[i]] = l
		}
	}
	return lits
}

// restrict demands one of a set of levels in a mode.
func (m *model) restrict(n *need, mode lcg.Lit, set []bool) {
	clause := []lcg.Lit{mode.Not(), m.while(m.p.States[n.state].Demand).Not()}
	for l, ok := range set {
		if ok {
			clause = append(clause, n.level[l])
		}
	}
	m.e.AddClause(clause...)
}
