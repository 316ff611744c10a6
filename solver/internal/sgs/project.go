// Package sgs makes good schedules of plain projects quickly: activities of
// fixed length in one mode, minimal lags, resources of constant capacity, the
// least makespan. A list of activities becomes a schedule by serial generation
// (each activity as early as those before it in the list allow); priority
// rules give first lists, justification tightens schedules, and a population
// of schedules is crossed. It proves nothing and judges nothing: it must know
// nothing of the search that does, and its schedules pass the judge elsewhere.
//
// Sources: R. Kolisch, Serial and parallel resource-constrained project
// scheduling methods revisited, EJOR 90 (1996); V. Valls, F. Ballestin,
// S. Quintanilla, Justification and RCPSP: a technique that pays, EJOR 165
// (2005); D. Debels, M. Vanhoucke, A decomposition-based genetic algorithm for
// the resource-constrained project-scheduling problem, Operations Research 55
// (2007).
package sgs

import (
	"slices"

	"plait.example/solver/problem"
)

// Project is a plain project, forwards and backwards.
type Project struct {
	n        int
	length   []int32
	words    int      // of a profile at one time: four resources each
	need     []uint64 // by activity and word
	full     []uint64 // by word: nothing in use
	share    []float64
	horizon  int // no schedule is longer
	topo     []int32
	release  []int32
	ways     [2]arcs // forwards and backwards in time
	deadline int     // of the problem
}

// arcs are the lags between starts, by the activity that must wait.
type arcs struct {
	first []int32 // by activity: index of its first arc; one more at the end
	from  []int32
	least []int32
}

// lag is a lag between two starts.
type lag struct{ from, to, least int32 }

// lanes are the resources in one word, each with a bit to spare at its top.
const (
	lanes    = 4
	laneBits = 16
	spare    = uint64(0x8000_8000_8000_8000)
	most     = 1<<15 - 1 // capacity of a lane
	longest  = 1 << 16   // horizon; beyond it profiles would be large
)

// Read reads a problem as a plain project; false if it is not one.
func Read(p *problem.Problem) (*Project, bool) {
	if len(p.Objectives) > 0 {
		if o := p.Objectives[0]; !o.Makespan || len(o.Terms)+len(o.Changes)+len(o.Switches)+len(o.Soft) > 0 {
			return nil, false
		}
	}
	if len(p.Choices) > 0 || len(p.Activities) == 0 {
		return nil, false
	}
	g := &Project{n: len(p.Activities), deadline: p.Horizon}
	if !g.readActivities(p) {
		return nil, false
	}
	lags, ok := g.readLags(p)
	if !ok || !g.sort(lags) {
		return nil, false
	}
	g.horizon = 0
	for i := range g.n {
		g.horizon += int(g.length[i])
		g.horizon = max(g.horizon, int(g.release[i]+g.length[i]))
	}
	for _, l := range lags {
		g.horizon += max(0, int(l.least-g.length[l.from]))
	}
	for i := range g.n {
		g.horizon += int(g.release[i])
	}
	return g, g.horizon < longest
}

// readActivities reads lengths and uses.
func (g *Project) readActivities(p *problem.Problem) bool {
	g.words = max(1, (len(p.Resources)+lanes-1)/lanes)
	g.full = make([]uint64, g.words)
	g.need = make([]uint64, g.n*g.words)
	g.length, g.release, g.share = make([]int32, g.n), make([]int32, g.n), make([]float64, g.n)
	for r, res := range p.Resources {
		if res.Capacity > most || len(res.Closures) > 0 {
			return false
		}
		g.full[r/lanes] |= uint64(res.Capacity) << (r % lanes * laneBits)
	}
	for i, a := range p.Activities {
		if a.MinDuration != a.MaxDuration || len(a.Modes) > 1 || a.MinDuration > longest {
			return false
		}
		g.length[i] = int32(a.MinDuration)
		for _, m := range a.Modes {
			if len(m.Needs) > 0 || !g.readUses(i, m.Uses, p.Resources) {
				return false
			}
		}
	}
	return true
}

func (g *Project) readUses(i int, uses []problem.Use, resources []problem.Resource) bool {
	total := make(map[int]int, len(uses))
	for _, u := range uses {
		total[u.Resource] += u.Amount
		if total[u.Resource] > resources[u.Resource].Capacity {
			return false
		}
		g.need[i*g.words+u.Resource/lanes] += uint64(u.Amount) << (u.Resource % lanes * laneBits)
		g.share[i] += float64(u.Amount) / float64(max(1, resources[u.Resource].Capacity))
	}
	return true
}

// readLags reads minimal lags as lags between starts. Maximal lags make a
// problem that is not plain, but for one that says what holds anyway: that an
// activity which nothing delays starts at the origin.
func (g *Project) readLags(p *problem.Problem) ([]lag, bool) {
	delayed := make([]bool, g.n)
	var lags []lag
	for _, l := range p.Lags {
		from, to := l.From.Activity, l.To.Activity
		least := l.Min
		if l.From.End && from >= 0 {
			least += int(g.length[from])
		}
		if l.To.End && to >= 0 {
			least -= int(g.length[to])
		}
		switch {
		case least > longest || from == to && least > 0:
			return nil, false
		case to == problem.Origin || from == to:
		case from == problem.Origin:
			g.release[to] = max(g.release[to], int32(max(least, 0)))
			delayed[to] = delayed[to] || least > 0
		case least < 0:
			return nil, false
		default:
			lags = append(lags, lag{int32(from), int32(to), int32(least)})
			delayed[to] = true
		}
	}
	for _, l := range p.Lags {
		if l.To.Activity == problem.Origin && l.From.Activity != problem.Origin {
			if i := l.From.Activity; delayed[i] || g.length[i] > 0 || l.Min > 0 {
				return nil, false
			}
		}
	}
	return lags, true
}

// sort puts the activities into an order that the lags allow; false if they
// make a cycle.
func (g *Project) sort(lags []lag) bool {
	waits := make([]int32, g.n)
	after := make([][]lag, g.n)
	back := make([]lag, len(lags))
	for k, l := range lags {
		waits[l.to]++
		after[l.from] = append(after[l.from], l)
		back[k] = lag{l.to, l.from, l.least + g.length[l.to] - g.length[l.from]}
	}
	for i := range g.n {
		if waits[i] == 0 {
			g.topo = append(g.topo, int32(i))
		}
	}
	for k := 0; k < len(g.topo); k++ {
		for _, l := range after[g.topo[k]] {
			if waits[l.to]--; waits[l.to] == 0 {
				g.topo = append(g.topo, l.to)
			}
		}
	}
	g.ways = [2]arcs{g.arcs(lags), g.arcs(back)}
	return len(g.topo) == g.n
}

// arcs groups lags by the activity that waits.
func (g *Project) arcs(lags []lag) arcs {
	lags = slices.Clone(lags)
	slices.SortStableFunc(lags, func(a, b lag) int { return int(a.to - b.to) })
	a := arcs{first: make([]int32, g.n+1)}
	for _, l := range lags {
		a.first[l.to+1]++
		a.from, a.least = append(a.from, l.from), append(a.least, l.least)
	}
	for i := range g.n {
		a.first[i+1] += a.first[i]
	}
	return a
}
