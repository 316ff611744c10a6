package solver

import (
	"slices"

	"plait.example/solver/internal/lcg"
	"plait.example/solver/problem"
)

// task is a use of one resource: by an activity in some of its modes, or by a
// change of a state.
type task struct {
	lcg.Task
	activity int // or -1
	least    int // length
}

// resource posts the resource's time-table, the order of the pairs that it
// cannot hold at once, and its energy.
func (m *model) resource(r int) {
	res := &m.p.Resources[r]
	tasks := m.tasks(r)
	for i := range tasks {
		tasks[i].Present = m.all(tasks[i].Present, m.while(res.Demand))
	}
	var table []lcg.Task
	for _, t := range tasks {
		table = append(table, t.Task)
	}
	for _, c := range res.Closures {
		from, until := min(c.From, m.p.Horizon), min(c.Until, m.p.Horizon)
		if from < until && c.Left < res.Capacity {
			table = append(table, lcg.Task{
				Start: lcg.Constant(from), End: lcg.Constant(until),
				Amount: res.Capacity - c.Left, Present: m.while(c.Demand), Least: until - from,
			})
		}
	}
	if total(table) <= res.Capacity {
		return
	}
	energetic := 2*total(table) > res.Capacity*len(table)
	m.e.AddCumulative(table, res.Capacity, energetic)
	m.alone(tasks, table, res.Capacity)
	if !energetic || len(tasks) <= fewTasks {
		m.pairs(tasks, res.Capacity)
	}
}

// users are the activities that surely use a resource.
type users struct {
	capacity int
	list     []task
}

// alone notes the activities that surely use a resource, for cliques. If
// others may use it too, those that need more than half of it are looked at here.
func (m *model) alone(tasks []task, table []lcg.Task, capacity int) {
	u := users{capacity: capacity}
	for _, t := range tasks {
		if t.activity >= 0 && t.least > 0 && m.e.Holds(t.Present) {
			u.list = append(u.list, t)
		}
	}
	m.users = append(m.users, u)
	if len(u.list) == len(table) {
		return
	}
	table = slices.DeleteFunc(slices.Clone(table), func(t lcg.Task) bool { return 2*t.Amount <= capacity })
	if len(table) >= leastClique {
		m.e.AddDisjunctive(table)
	}
}

// fewTasks is up to how many tasks a resource has both energy and orders. With
// more, energy alone proves sooner; measured on unary resources.
const fewTasks = 20

func total(tasks []lcg.Task) int {
	sum := 0
	for _, t := range tasks {
		sum += t.Amount
	}
	return sum
}

// tasks lists the uses of resource r.
func (m *model) tasks(r int) []task {
	var out []task
	for i := range m.p.Activities {
		out = append(out, m.usesOf(i, r)...)
	}
	for k := range m.p.States {
		amount := amountOf(m.p.States[k].Uses, r)
		if amount == 0 {
			continue
		}
		for _, n := range m.needs[k] {
			if n.works != lcg.True.Not() {
				out = append(out, task{lcg.Task{Start: n.change, End: n.worked, Amount: amount, Present: n.works, Least: n.leastWork}, -1, n.leastWork})
			}
		}
	}
	return out
}

// usesOf lists the amounts of resource r that activity i uses in its modes,
// one task an amount.
func (m *model) usesOf(i, r int) []task {
	a := &m.p.Activities[i]
	if a.MaxDuration == 0 {
		return nil
	}
	var amounts []int
	byAmount := map[int][]lcg.Lit{}
	for k, mode := range a.Modes {
		if amount := amountOf(mode.Uses, r); amount > 0 {
			if byAmount[amount] == nil {
				amounts = append(amounts, amount)
			}
			byAmount[amount] = append(byAmount[amount], m.mode[i][k])
		}
	}
	var out []task
	for _, amount := range amounts {
		present := lcg.True
		if len(byAmount[amount]) < len(a.Modes) {
			present = m.some(byAmount[amount]...)
		}
		out = append(out, task{lcg.Task{Start: m.start[i], End: m.end[i], Amount: amount, Present: present, Least: m.least[i]}, i, m.least[i]})
	}
	return out
}

// amountOf sums what a list of uses takes of resource r.
func amountOf(uses []problem.Use, r int) int {
	sum := 0
	for _, u := range uses {
		if u.Resource == r {
			sum += u.Amount
		}
	}
	return sum
}

// mostPairs limits the orders that one resource posts.
const mostPairs = 6000

// pairs gives an order to any two tasks that are never without length and
// whose amounts exceed the capacity together.
func (m *model) pairs(tasks []task, capacity int) {
	tasks = slices.DeleteFunc(slices.Clone(tasks), func(t task) bool { return t.least == 0 || t.Amount > capacity })
	count := 0
	for i := range tasks {
		for j := range i {
			a, b := &tasks[j], &tasks[i]
			if a.Amount+b.Amount <= capacity || a.activity >= 0 && a.activity == b.activity {
				continue
			}
			if count++; count > mostPairs {
				return
			}
			m.inOrder(a, b)
		}
	}
}

// inOrder demands that one of two tasks ends before the other starts, while
// both are there.
func (m *model) inOrder(a, b *task) {
	both := []lcg.Lit{a.Present.Not(), b.Present.Not()}
	sure := m.e.Holds(a.Present) && m.e.Holds(b.Present)
	key := pair{a.activity, b.activity}
	if sure && a.activity >= 0 && b.activity >= 0 {
		if _, done := m.order[key]; done {
			return
		}
		switch first, second := m.couldPrecede(a, b), m.couldPrecede(b, a); {
		case first == always || second == always:
			m.order[key] = lcg.True
			return
		case first == never:
			m.order[key] = lcg.True
			m.e.AddDifference(b.End, 0, a.Start, lcg.True)
			return
		case second == never:
			m.order[key] = lcg.True
			m.e.AddDifference(a.End, 0, b.Start, lcg.True)
			return
		}
	}
	before := m.e.NewBool()
	after := before.Not()
	m.nameOrder(before, a, b)
	if !sure {
		after = m.e.NewBool()
		m.nameOrder(after, b, a)
		m.e.AddClause(append(both, before, after)...)
	} else if a.activity >= 0 && b.activity >= 0 {
		m.order[key] = before
	}
	m.e.AddDifference(a.End, 0, b.Start, before)
	m.e.AddDifference(b.End, 0, a.Start, after)
}

// couldPrecede says what the network knows of the end of a coming before the
// start of b.
func (m *model) couldPrecede(a, b *task) verdict {
	return between(m.apart, problem.Lag{From: problem.End(a.activity), To: problem.Start(b.activity)})
}
