package solver

import (
	"cmp"
	"slices"

	"plait.example/solver/internal/lcg"
)

// Activities of which no two can run at once, each pair perhaps for a reason
// of its own (a resource that cannot hold both, or lags), are a clique. The
// engine looks at each clique as at one resource of capacity one.

const (
	leastClique = 3
	mostCliques = 40
	cliqueShare = 2 // all cliques together have at most so many members an activity
)

// clash says of pairs of activities that they never overlap.
type clash struct {
	n     int
	pairs []bool
}

func (c *clash) add(a, b int)      { c.pairs[a*c.n+b], c.pairs[b*c.n+a] = true, true }
func (c *clash) has(a, b int) bool { return c.pairs[a*c.n+b] }

// cliques posts cliques that together hold every pair that a resource keeps
// apart, as far as their number goes.
func (m *model) cliques() {
	resource, any := m.clashes()
	n := len(m.p.Activities)
	covered := clash{n, make([]bool, n*n)}
	var found [][]int
	for a := range n {
		for b := range a {
			if !resource.has(a, b) || covered.has(a, b) || len(found) == mostCliques {
				continue
			}
			members := grown(any, a, b)
			for _, x := range members {
				for _, y := range members {
					covered.add(x, y)
				}
			}
			if len(members) >= leastClique {
				found = append(found, members)
			}
		}
	}
	slices.SortStableFunc(found, func(a, b []int) int { return len(b) - len(a) })
	room := cliqueShare * n
	for _, members := range found {
		if room -= len(members); room < 0 {
			break
		}
		var tasks []lcg.Task
		for _, i := range members {
			tasks = append(tasks, lcg.Task{Start: m.start[i], End: m.end[i], Amount: 1, Present: lcg.True, Least: m.least[i]})
		}
		m.e.AddDisjunctive(tasks)
	}
}

// clashes are the pairs that a resource keeps apart, and those together with
// the pairs that lags do.
func (m *model) clashes() (resource, all *clash) {
	n := len(m.p.Activities)
	resource, all = &clash{n, make([]bool, n*n)}, &clash{n, make([]bool, n*n)}
	for _, tasks := range m.users {
		for i, a := range tasks.list {
			for _, b := range tasks.list[:i] {
				if a.Amount+b.Amount > tasks.capacity {
					resource.add(a.activity, b.activity)
					all.add(a.activity, b.activity)
				}
			}
		}
	}
	for a := range n {
		for b := range a {
			x, y := &task{activity: a}, &task{activity: b}
			if m.apart != nil && (m.couldPrecede(x, y) == always || m.couldPrecede(y, x) == always) {
				all.add(a, b)
			}
		}
	}
	return resource, all
}

// grown is a clique with a and b in it, grown by what clashes with most of
// what is left.
func grown(c *clash, a, b int) []int {
	members := []int{a, b}
	var left []int
	for i := range c.n {
		if i != a && i != b && c.has(i, a) && c.has(i, b) {
			left = append(left, i)
		}
	}
	for len(left) > 0 {
		best := slices.MaxFunc(left, func(x, y int) int {
			return cmp.Or(cmp.Compare(c.degree(x, left), c.degree(y, left)), cmp.Compare(y, x))
		})
		members = append(members, best)
		left = slices.DeleteFunc(left, func(i int) bool { return i == best || !c.has(i, best) })
	}
	return members
}

func (c *clash) degree(a int, among []int) (n int) {
	for _, b := range among {
		if c.has(a, b) {
			n++
		}
	}
	return n
}
