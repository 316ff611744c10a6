package solver

import (
	"slices"

	"plait.example/solver/internal/lcg"
	"plait.example/solver/problem"
)

// A state is idle if it demands nothing that other demands do not: its changes
// take no time, may come at any time, and activities that could need different
// levels are kept apart by a resource or by lags. Nothing of it is posted; its
// changes are read off a schedule. If an objective counts its changes, what
// that takes is posted when the objective's turn comes.

// idle says that state k is idle.
func (m *model) idle(k int) bool {
	st := &m.p.States[k]
	if m.soft != nil || st.ChangeFrom > 0 {
		return false
	}
	for from, row := range st.Change {
		for to, c := range row {
			if from != to && c.Work+c.Settle > 0 {
				return false
			}
		}
	}
	var wishes []wish
	for i := range m.p.Activities {
		for md := range m.p.Activities[i].Modes {
			if set := levelsOf(&m.p.Activities[i].Modes[md], k, len(st.Levels)); set != nil {
				wishes = append(wishes, wish{i, md, set})
			}
		}
	}
	for i, x := range wishes {
		if !slices.Contains(x.levels, true) {
			return false
		}
		for _, y := range wishes[:i] {
			if x.activity != y.activity && !sameLevel(x.levels, y.levels) && !m.keptApart(x, y) {
				return false
			}
		}
	}
	return true
}

// wish is the set of levels of a state that an activity may have in a mode.
type wish struct {
	activity, mode int
	levels         []bool
}

// sameLevel says that two sets are one level, and the same.
func sameLevel(a, b []bool) bool {
	return slices.Equal(a, b) && slices.Index(a, true) == lastTrue(a)
}

func lastTrue(set []bool) int {
	for l := len(set) - 1; l >= 0; l-- {
		if set[l] {
			return l
		}
	}
	return -1
}

// keptApart says that two activities cannot overlap in these modes. One
// without length is somewhere all the same, and no resource keeps it apart.
func (m *model) keptApart(x, y wish) bool {
	a, b := &m.p.Activities[x.activity], &m.p.Activities[y.activity]
	if a.MinDuration == 0 || b.MinDuration == 0 {
		return false
	}
	s, t := &task{activity: x.activity}, &task{activity: y.activity}
	if m.couldPrecede(s, t) == always || m.couldPrecede(t, s) == always {
		return true
	}
	for r, res := range m.p.Resources {
		one, other := amountOf(a.Modes[x.mode].Uses, r), amountOf(b.Modes[y.mode].Uses, r)
		if one > 0 && other > 0 && one+other > res.Capacity {
			return true
		}
	}
	return false
}

// row reads the changes of an idle state off a schedule: each as late as can
// be, to a level that serves as many activities in a row as any.
func (m *model) row(k int, s *problem.Solution) []problem.StateChange {
	st := &m.p.States[k]
	var wishes []wish
	for i := range m.p.Activities {
		if len(m.p.Activities[i].Modes) == 0 {
			continue
		}
		if set := levelsOf(&m.p.Activities[i].Modes[s.Mode[i]], k, len(st.Levels)); set != nil {
			wishes = append(wishes, wish{activity: i, levels: set})
		}
	}
	slices.SortStableFunc(wishes, func(a, b wish) int { return s.Start[a.activity] - s.Start[b.activity] })
	level := make([]bool, len(st.Levels))
	level[st.Initial] = true
	var list []problem.StateChange
	for _, w := range wishes {
		both := make([]bool, len(level))
		for l := range both {
			both[l] = level[l] && w.levels[l]
		}
		if level = both; !slices.Contains(both, true) {
			list = append(list, problem.StateChange{State: k, At: s.Start[w.activity]})
			level = w.levels
		}
		if len(list) > 0 {
			list[len(list)-1].Level = slices.Index(level, true)
		}
	}
	return list
}

// switches is a variable that is at least the number of changes of state k.
//
// Every need has the number of its block: at least 1 if its block is not the
// initial one, and greater by 1 than that of any need before it at another
// level. The last number is how many changes there are.
func (m *model) switches(k int) lcg.Var {
	if v, done := m.switched[k]; done {
		return v
	}
	if m.idles[k] {
		m.needsOf(k)
	}
	needs := m.needs[k]
	v := m.e.NewVar(0, len(needs))
	m.name(v, "switches", k)
	m.switched[k] = v
	m.e.AddClause(lcg.AtLeast(v, m.leastSwitches(k)))
	for j, n := range needs {
		m.turn(n, len(needs))
		m.e.AddDifference(n.turn, 0, lcg.Term{Var: v}, lcg.True)
		for i, o := range needs[:j] {
			if m.idles[k] {
				m.inTurn(o, n)
				continue
			}
			m.e.AddDifference(o.turn, 0, n.turn, n.same[i])
			m.e.AddDifference(n.turn, 0, o.turn, n.same[i])
		}
	}
	for _, n := range needs {
		for _, a := range n.later {
			m.e.AddDifference(a.earlier.turn, 1, n.turn, a.when)
		}
	}
	return v
}

// turn makes the number of a need's block.
func (m *model) turn(n *need, most int) {
	if n.turn = n.place; m.e.High(n.place.Var) == most && most > 1 {
		return // positions are numbers already
	}
	n.turn = lcg.Term{Var: m.e.NewVar(0, most)}
	m.name(n.turn.Var, "turn", n.activity, n.state)
	m.e.Imply(n.turn.AtLeast(1), n.present, n.level[m.p.States[n.state].Initial].Not())
	if !m.idles[n.state] {
		m.e.Imply(n.turn.AtLeast(1), n.changed)
	}
}

// leastSwitches is how many levels but the initial one some activity surely needs.
func (m *model) leastSwitches(k int) int {
	wanted := make([]bool, len(m.p.States[k].Levels))
	for _, n := range m.needs[k] {
		for l, lit := range n.level {
			wanted[l] = wanted[l] || m.e.Holds(n.present) && m.e.Holds(lit)
		}
	}
	wanted[m.p.States[k].Initial] = false
	count := 0
	for _, w := range wanted {
		if w {
			count++
		}
	}
	return count
}

// inTurn ties the numbers of the blocks of two needs of an idle state: if
// their levels differ, the block of the later one has the greater number.
func (m *model) inTurn(x, y *need) {
	var differ []lcg.Lit // by level of x: it has that level, and y another
	for l := range x.level {
		d := m.all(x.level[l], y.level[l].Not())
		if m.e.Holds(d) {
			differ = []lcg.Lit{lcg.True}
			break
		}
		if !m.e.Fails(d) {
			differ = append(differ, d)
		}
	}
	if len(differ) == 0 {
		return
	}
	xy, yx := m.sequence(x, y)
	for _, d := range differ {
		m.e.AddDifference(x.turn, 1, y.turn, m.all(xy, d))
		m.e.AddDifference(y.turn, 1, x.turn, m.all(yx, d))
	}
}

// sequence gives literals that both needs are there and the one ends before
// the other starts. Where the levels of the two differ, one or the other holds
// if both are there.
func (m *model) sequence(x, y *need) (xy, yx lcg.Lit) {
	if m.e.Holds(x.present) && m.e.Holds(y.present) && !m.couldOverlap(x, y) {
		order := m.ordered(x.activity, y.activity)
		return order, order.Not()
	}
	one := m.holding(problem.Lag{From: problem.End(x.activity), To: problem.Start(y.activity)})
	other := m.holding(problem.Lag{From: problem.End(y.activity), To: problem.Start(x.activity)})
	xy, yx = m.all(x.present, y.present, one), m.all(x.present, y.present, other)
	either := []lcg.Lit{x.present.Not(), y.present.Not(), xy, yx}
	for l := range x.level {
		if both := m.all(x.level[l], y.level[l]); !m.e.Fails(both) {
			either = append(either, both) // at one level they may overlap
		}
	}
	m.e.AddClause(either...)
	return xy, yx
}

// couldOverlap says that in some of their modes two needs are not kept apart.
func (m *model) couldOverlap(x, y *need) bool {
	for a := range m.p.Activities[x.activity].Modes {
		for b := range m.p.Activities[y.activity].Modes {
			if !m.keptApart(wish{activity: x.activity, mode: a}, wish{activity: y.activity, mode: b}) {
				return true
			}
		}
	}
	return false
}

// ordered is a literal that a ends before b starts, of two activities that
// never overlap; its negation is the other order.
func (m *model) ordered(a, b int) lcg.Lit {
	for range 2 {
		if l, known := m.order[pair{a, b}]; known && l.Var() != 0 {
			return l
		}
		if l, known := m.order[pair{b, a}]; known && l.Var() != 0 {
			return l.Not()
		}
		first, second := m.couldPrecede(&task{activity: a}, &task{activity: b}), m.couldPrecede(&task{activity: b}, &task{activity: a})
		switch {
		case first == always || second == never:
			return lcg.True
		case first == never || second == always:
			return lcg.True.Not()
		}
		m.inOrder(m.run(a), m.run(b))
	}
	return m.order[pair{a, b}]
}

// run is an activity as a task that is surely there.
func (m *model) run(i int) *task {
	return &task{Task: lcg.Task{Start: m.start[i], End: m.end[i], Present: lcg.True}, activity: i}
}
