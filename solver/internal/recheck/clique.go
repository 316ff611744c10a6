package recheck

import (
	"cmp"
	"slices"
)

// A clique is activities of which no two can run at once: a resource has no
// room for both, or lags keep them apart. One after the other they take the
// sum of their lengths.

const (
	leastClique = 3
	cliqueShare = 16 // all together have at most so many members an activity
)

// findCliques grows cliques about couples that clash, the couples first that
// are in no clique yet, and the largest of these cliques first.
func (c *checker) findCliques() {
	near := c.near()
	covered := map[couple]bool{}
	var first, rest [][]int
	for _, o := range c.couples {
		inOne := covered[o]
		if inOne && len(c.couples) > manyCouples {
			continue
		}
		members := clique(near, o)
		switch {
		case len(members) < leastClique:
		case inOne:
			rest = append(rest, members)
		default:
			first = append(first, members)
		}
		for _, i := range members {
			for _, j := range members {
				covered[couple{i, j}] = true
			}
		}
	}
	bySize := func(a, b []int) int { return cmp.Or(len(b)-len(a), slices.Compare(a, b)) }
	slices.SortStableFunc(first, bySize)
	slices.SortStableFunc(rest, bySize)
	room := cliqueShare * c.n
	for _, members := range slices.Concat(first, rest) {
		same := func(x []int) bool { return slices.Equal(x, members) }
		if slices.ContainsFunc(c.cliques, same) {
			continue
		}
		if room -= len(members); room < 0 {
			break
		}
		c.cliques = append(c.cliques, members)
	}
}

// manyCouples is how many are too many to grow a clique about each.
const manyCouples = 1000

// near says of every two activities whether they cannot run at once.
func (c *checker) near() (near [][]bool) {
	for range c.n {
		near = append(near, make([]bool, c.n))
	}
	for i := range c.n {
		for j := range i {
			if c.p.Activities[i].MinDuration > 0 && c.p.Activities[j].MinDuration > 0 {
				near[i][j] = c.clash(i, j) || c.follow(i, j) || c.follow(j, i)
				near[j][i] = near[i][j]
			}
		}
	}
	return near
}

// clique is a couple and what is apart from all members, those first that are
// apart from most of what may still come in.
func clique(near [][]bool, o couple) []int {
	members := []int{o.i, o.j}
	var may []int
	for i := range near {
		if near[i][o.i] && near[i][o.j] {
			may = append(may, i)
		}
	}
	degree := make([]int, len(near))
	for _, i := range may {
		for _, j := range may {
			degree[i] += one(near[i][j])
		}
	}
	for len(may) > 0 {
		best := slices.MaxFunc(may, func(i, j int) int { return cmp.Or(degree[i]-degree[j], j-i) })
		members = append(members, best)
		for _, i := range may {
			for _, j := range may {
				degree[j] -= one(!near[i][best] && near[i][j])
			}
		}
		may = slices.DeleteFunc(may, func(i int) bool { return !near[i][best] })
	}
	slices.Sort(members)
	return members
}

// member is one of a clique and its times. In the mirror, time runs backwards.
type member struct {
	i, length          int
	est, lst, ect, lct int
}

// inLine: the members of a clique run one after the other.
func (c *checker) inLine(d *domain) {
	c.looked = append(c.looked[:0], d.moved...)
	clear(d.moved)
	for _, clique := range c.cliques {
		if !slices.ContainsFunc(clique, func(i int) bool { return c.looked[i] }) {
			continue
		}
		for _, mirror := range [...]bool{false, true} {
			l := line{c: c, d: d, mirror: mirror}
			l.load(clique)
			for n := range l.members {
				m := &l.members[n]
				l.after(m)
				if l.lastFrom(m, l.latest[len(l.latest)-1]) {
					l.notLast(m)
				}
			}
			if l.full(); d.dead {
				return
			}
		}
	}
}

// line is a clique as it stands.
type line struct {
	c       *checker
	d       *domain
	mirror  bool
	members []member // by falling earliest start
	latest  []int    // their latest starts, rising
}

func (l *line) load(clique []int) {
	l.members, l.latest = l.c.members[:0], l.c.latest[:0]
	for _, i := range clique {
		s, e := l.c.startOf(i), l.c.endOf(i)
		m := member{i, l.c.p.Activities[i].MinDuration, l.d.lo[s], l.d.hi[s], l.d.lo[e], l.d.hi[e]}
		if l.mirror {
			m.est, m.lst, m.ect, m.lct = -m.lct, -m.ect, -m.lst, -m.est
		}
		l.members, l.latest = append(l.members, m), append(l.latest, m.lst)
	}
	slices.SortStableFunc(l.members, func(a, b member) int { return b.est - a.est })
	slices.Sort(l.latest)
	l.latest = slices.Compact(l.latest)
	l.c.members, l.c.latest = l.members, l.latest
}

// never says that a cannot end before b starts, of two members.
func (l *line) never(a, b *member) bool {
	if l.mirror {
		return l.c.never(l.d, b.i, a.i)
	}
	return l.c.never(l.d, a.i, b.i)
}

// after: what m cannot come before, it comes after, when all that is done.
func (l *line) after(m *member) {
	sum, end := 0, m.est
	for n := range l.members {
		if k := &l.members[n]; k.i != m.i && l.never(m, k) {
			sum += k.length
			end = max(end, k.est+sum)
		}
	}
	if end > m.est {
		l.startAtLeast(m, end)
	}
}

// notLast: if a set that starts by some time takes longer than until m must
// start, m is not the last of them, so it ends by that time.
func (l *line) notLast(m *member) {
	for _, by := range l.latest {
		if by >= m.lct {
			return
		}
		if l.lastFrom(m, by) {
			l.endAtMost(m, by)
			return
		}
	}
}

// lastFrom says that those that start by some time take longer than until m
// must start.
func (l *line) lastFrom(m *member, by int) bool {
	sum := 0
	for n := range l.members {
		if k := &l.members[n]; k.i != m.i && k.lst <= by {
			if sum += k.length; k.est+sum > m.lst {
				return true
			}
		}
	}
	return false
}

// full: what lies between two times takes no longer than there is.
func (l *line) full() {
	for n := range l.members {
		until, sum := l.members[n].lct, 0
		for k := range l.members {
			if m := &l.members[k]; m.lct <= until {
				if sum += m.length; m.est+sum > until {
					l.d.dead = true
					return
				}
			}
		}
	}
}

func (l *line) startAtLeast(m *member, t int) {
	if l.mirror {
		l.d.atMost(l.c.endOf(m.i), -t)
	} else {
		l.d.atLeast(l.c.startOf(m.i), t)
	}
}

func (l *line) endAtMost(m *member, t int) {
	if l.mirror {
		l.d.atLeast(l.c.startOf(m.i), -t)
	} else {
		l.d.atMost(l.c.endOf(m.i), t)
	}
}
