package solver

import (
	"slices"

	"plait.example/solver/internal/lcg"
	"plait.example/solver/problem"
)

// A state is instant if its changes take no time and may come at any time. All
// that it demands is that activities at different levels do not overlap. Where
// a resource or lags see to that, nothing of the state is posted; what it takes
// to count its changes is posted when an objective that counts them has its
// turn. The changes are read off a schedule.

// instant says that state k is instant. Where demands may be left out, none is
// taken to be: what keeps activities apart may be left out too.
func (m *model) instant(k int) bool {
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
	return true
}

// wish is the set of levels of a state that an activity may have in a mode.
type wish struct {
	activity, mode int
	levels         []bool
}

// wishes lists who may need state k in which mode, in the order of activities.
func (m *model) wishes(k int) (list []wish) {
	for i := range m.p.Activities {
		for md := range m.p.Activities[i].Modes {
			if set := levelsOf(&m.p.Activities[i].Modes[md], k, len(m.p.States[k].Levels)); set != nil {
				list = append(list, wish{i, md, set})
			}
		}
	}
	return list
}

// keepApart posts of instant state k that activities at different levels do not
// overlap, as far as nothing else says so.
func (m *model) keepApart(k int) {
	wishes := m.wishes(k)
	loose := map[pair]bool{}
	var found []pair
	for i, x := range wishes {
		if !slices.Contains(x.levels, true) {
			m.e.AddClause(m.mode[x.activity][x.mode].Not())
		}
		for _, y := range wishes[:i] {
			two := pair{y.activity, x.activity}
			if two.a != two.b && !loose[two] && !sameLevel(x.levels, y.levels) && !m.keptApart(x, y) {
				loose[two] = true
				found = append(found, two)
			}
		}
	}
	if found == nil {
		return
	}
	m.needsOf(k)
	for _, two := range found {
		m.sequence(m.needOf(k, two.a), m.needOf(k, two.b))
	}
}

// needOf is the need that an activity has of state k.
func (m *model) needOf(k, activity int) *need {
	return m.needs[k][slices.IndexFunc(m.needs[k], func(n *need) bool { return n.activity == activity })]
}

// sameLevel says that two sets are one level, and the same.
func sameLevel(a, b []bool) bool {
	count := 0
	for l := range a {
		if a[l] || b[l] {
			count++
		}
	}
	return count == 1 && slices.Equal(a, b)
}

// keptApart says that two activities cannot overlap in these modes. One
// without length is somewhere all the same, and no resource keeps it apart.
func (m *model) keptApart(x, y wish) bool {
	if m.couldBeEmpty(x.activity) || m.couldBeEmpty(y.activity) {
		return false
	}
	s, t := &task{activity: x.activity}, &task{activity: y.activity}
	if m.couldPrecede(s, t) == always || m.couldPrecede(t, s) == always {
		return true
	}
	a, b := &m.p.Activities[x.activity].Modes[x.mode], &m.p.Activities[y.activity].Modes[y.mode]
	for r, res := range m.p.Resources {
		one, other := amountOf(a.Uses, r), amountOf(b.Uses, r)
		if one > 0 && other > 0 && one+other > res.Capacity {
			return true
		}
	}
	return false
}

// couldBeEmpty says that nothing is known to give an activity a length.
func (m *model) couldBeEmpty(i int) bool {
	return m.p.Activities[i].MinDuration == 0 &&
		between(m.apart, problem.Lag{From: problem.Start(i), To: problem.End(i), Min: 1}) != always
}

// row reads the changes of an instant state off a schedule: each as late as
// can be, to a level that serves as many activities in a row as any.
func (m *model) row(k int, s *problem.Solution) []problem.StateChange {
	st := &m.p.States[k]
	wishes := slices.DeleteFunc(m.wishes(k), func(w wish) bool { return s.Mode[w.activity] != w.mode })
	slices.SortStableFunc(wishes, func(a, b wish) int { return s.Start[a.activity] - s.Start[b.activity] })
	level := make([]bool, len(st.Levels))
	level[st.Initial] = true
	var list []problem.StateChange
	for len(wishes) > 0 {
		// Those that overlap one after another have one level.
		at, until := s.Start[wishes[0].activity], 0
		set := slices.Repeat([]bool{true}, len(level))
		for len(wishes) > 0 && (until == 0 || s.Start[wishes[0].activity] < until) {
			set = common(set, wishes[0].levels)
			until = max(until, s.End[wishes[0].activity], s.Start[wishes[0].activity]+1)
			wishes = wishes[1:]
		}
		if both := common(level, set); slices.Contains(both, true) {
			level = both
		} else {
			list = append(list, problem.StateChange{State: k, At: at})
			level = set
		}
		if len(list) > 0 {
			list[len(list)-1].Level = slices.Index(level, true)
		}
	}
	return list
}

// common is what two sets share.
func common(a, b []bool) []bool {
	both := make([]bool, len(a))
	for l := range both {
		both[l] = a[l] && b[l]
	}
	return both
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
	if m.instants[k] && m.needs[k] == nil {
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
			if m.instants[k] {
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
	if !m.instants[n.state] {
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

// inTurn ties the numbers of the blocks of two needs of an instant state: if
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
	xy, yx = m.all(x.present, y.present, m.over(x, y)), m.all(x.present, y.present, m.over(y, x))
	either := []lcg.Lit{x.present.Not(), y.present.Not(), xy, yx}
	for l := range x.level {
		if both := m.all(x.level[l], y.level[l]); !m.e.Fails(both) {
			either = append(either, both) // at one level they may overlap
		}
	}
	m.e.AddClause(either...)
	return xy, yx
}

// over is a literal under which x is over when y starts. A need without length
// takes the moment of its start.
func (m *model) over(x, y *need) lcg.Lit {
	ended := m.holding(problem.Lag{From: problem.End(x.activity), To: problem.Start(y.activity)})
	if !m.couldBeEmpty(x.activity) {
		return ended
	}
	return m.all(ended, m.holding(problem.Lag{From: problem.Start(x.activity), To: problem.Start(y.activity), Min: 1}))
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
