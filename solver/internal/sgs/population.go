package sgs

import (
	"math/rand/v2"
	"slices"

	"plait.example/solver/problem"
)

// Population improves schedules of one project. What it does depends on the
// seed and on the number of schedules asked for, on nothing else.
type Population struct {
	w       *workbench
	r       *rand.Rand
	key     [][]int64 // by rule
	least   int
	members []member
	best    member
	ready   int // members made since the last beginning
	still   int // crossings since the last better member of any kind
	load    []float64
}

// member is a schedule that starts as early as justification makes it.
type member struct {
	last  int32
	start []int32
}

// New makes schedules by all rules and keeps the best.
func New(g *Project, seed int64) *Population {
	p := &Population{w: newWorkbench(g), r: rand.New(rand.NewPCG(uint64(seed), 0x51a7))}
	t := g.measure()
	p.least = t.least(g)
	p.load = make([]float64, g.horizon+2)
	for _, rule := range rules {
		p.key = append(p.key, rule(g, t))
	}
	for _, key := range p.key {
		p.w.ranked(key, nil)
		p.keep(p.w.justify(p.w.generate(forwards)))
		if p.Proved() {
			break
		}
	}
	return p
}

// Least is what the lags alone say of the makespan; Proved that the best
// schedule reaches it.
func (p *Population) Least() int   { return p.least }
func (p *Population) Proved() bool { return int(p.best.last) <= p.least }

// Best is the best schedule so far, as a solution of the problem.
func (p *Population) Best() *problem.Solution {
	g := p.w.Project
	s := &problem.Solution{Start: make([]int, g.n), End: make([]int, g.n), Mode: make([]int, g.n)}
	for i, at := range p.best.start {
		s.Start[i], s.End[i] = int(at), int(at+g.length[i])
	}
	return s
}

// Makespan is that of the best schedule.
func (p *Population) Makespan() int { return int(p.best.last) }

// size of the population.
const size = 40

// stale is after how many crossings without a better member, a member of the
// population each, it begins anew.
const stale = 60

// Run generates about so many schedules. It reports whether the best became better.
func (p *Population) Run(schedules int64) bool {
	before := p.best.last
	for end := p.w.made + schedules; p.w.made < end && !p.Proved(); {
		if p.ready < size {
			p.fill()
		} else {
			p.cross()
		}
	}
	return p.best.last < before
}

// Take makes a schedule found elsewhere a member.
func (p *Population) Take(s *problem.Solution) {
	for i, at := range s.Start {
		p.w.start[i] = int32(at)
	}
	last := int32(0)
	for i, at := range p.w.start {
		last = max(last, at+p.w.length[i])
	}
	p.enter(p.w.justify(last))
}

// fill adds one member by a rule and chance.
func (p *Population) fill() {
	if len(p.members) < size {
		n := make([]int32, p.w.n)
		p.members = append(p.members, member{start: n})
	}
	key := p.key[p.r.IntN(2)]
	p.w.ranked(key, p.r)
	p.put(p.ready, p.w.justify(p.w.generate(forwards)))
	p.ready++
}

// put writes the schedule in hand over a member.
func (p *Population) put(k int, last int32) {
	p.members[k].last = last
	copy(p.members[k].start, p.w.start)
	p.keep(last)
}

// keep takes the schedule in hand as the best if it is.
func (p *Population) keep(last int32) {
	if p.best.start == nil || last < p.best.last {
		p.best = member{last, slices.Clone(p.w.start)}
	}
}

// cross makes a child of two members: one gives its busiest stretch of time,
// the other what comes before and after.
func (p *Population) cross() {
	if p.still > stale*size {
		p.anew()
		return
	}
	father, mother := p.pick(), p.pick()
	if father == mother {
		mother = (father + 1 + p.r.IntN(size-1)) % size
	}
	f, m := &p.members[father], &p.members[mother]
	from, until := p.busy(f)
	high := max(f.last, m.last)
	for i := range p.w.key {
		switch at := m.start[i]; {
		case from <= f.start[i] && f.start[i] < until:
			p.w.key[i] = high + 1 + f.start[i]
		case at < from:
			p.w.key[i] = at
		default:
			p.w.key[i] = 2*high + 2 + at
		}
	}
	p.mutate()
	p.w.arrange(forwards, 3*high+3)
	p.enter(p.w.justify(p.w.generate(forwards)))
}

// pick is the better of two members drawn at random.
func (p *Population) pick() int {
	a, b := p.r.IntN(size), p.r.IntN(size)
	if p.members[b].last < p.members[a].last {
		return b
	}
	return a
}

// busy is the stretch of time, of a length drawn between a quarter and three
// quarters of the schedule, that uses the most of the resources.
func (p *Population) busy(m *member) (from, until int32) {
	load := p.load[:m.last+1]
	clear(load)
	for i, at := range m.start {
		for t := at; t < at+p.w.length[i]; t++ {
			load[t] += p.w.share[i]
		}
	}
	length := max(1, m.last/4+int32(p.r.IntN(int(m.last)/2+1)))
	sum := 0.0
	for _, x := range load[:length] {
		sum += x
	}
	best := sum
	for t := length; t < m.last; t++ {
		if sum += load[t] - load[t-length]; sum > best {
			best, from = sum, t-length+1
		}
	}
	return from, from + length
}

// mutate exchanges the keys of a few activities.
func (p *Population) mutate() {
	k := p.w.key
	for range p.r.IntN(4) {
		a, b := p.r.IntN(len(k)), p.r.IntN(len(k))
		k[a], k[b] = k[b], k[a]
	}
}

// enter lets the schedule in hand take the place of a member that is no
// better, unless it is there already.
func (p *Population) enter(last int32) {
	p.keep(last)
	p.still++
	worst := 0
	for k := range p.members[:p.ready] {
		m := &p.members[k]
		if m.last == last && slices.Equal(m.start, p.w.start) {
			return
		}
		if m.last > p.members[worst].last {
			worst = k
		}
	}
	if p.ready < size || last > p.members[worst].last {
		return
	}
	if last < p.members[worst].last {
		p.still = 0
	}
	p.put(worst, last)
}

// anew empties the population; the best is kept beside it.
func (p *Population) anew() { p.ready, p.still = 0, 0 }
