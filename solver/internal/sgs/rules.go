package sgs

import "math/rand/v2"

// A priority rule gives every activity a key; the least comes first.
type rule func(g *Project, t *times) []int64

// times are what the lags alone say: earliest and latest starts against the
// least length of the project, and how much hangs on an activity.
type times struct {
	earliest, latest []int64
	after            []int64   // activities that wait for it, directly or not
	weight           []float64 // its own work and that of those
}

// rules in the order in which they are tried (R. Kolisch, S. Hartmann,
// Heuristic algorithms for the RCPSP, 1999; A. Alvarez-Valdes, J. Tamarit, 1989).
var rules = []rule{latestFinish, latestStart, leastSlack, mostAfter, greatestWeight}

func latestFinish(g *Project, t *times) []int64 {
	return keys(g, func(i int) int64 { return t.latest[i] + int64(g.length[i]) })
}

func latestStart(g *Project, t *times) []int64 {
	return keys(g, func(i int) int64 { return t.latest[i] })
}

func leastSlack(g *Project, t *times) []int64 {
	return keys(g, func(i int) int64 { return t.latest[i] - t.earliest[i] })
}

func mostAfter(g *Project, t *times) []int64 {
	return keys(g, func(i int) int64 { return -t.after[i] })
}

func greatestWeight(g *Project, t *times) []int64 {
	return keys(g, func(i int) int64 { return int64(-1000 * t.weight[i]) })
}

func keys(g *Project, key func(i int) int64) []int64 {
	out := make([]int64, g.n)
	for i := range out {
		out[i] = key(i)
	}
	return out
}

// measure finds the times of the project.
func (g *Project) measure() *times {
	t := &times{make([]int64, g.n), make([]int64, g.n), make([]int64, g.n), make([]float64, g.n)}
	a := &g.ways[forwards]
	total := int64(0)
	for _, i := range g.topo {
		t.earliest[i] = int64(g.release[i])
		for k := a.first[i]; k < a.first[i+1]; k++ {
			t.earliest[i] = max(t.earliest[i], t.earliest[a.from[k]]+int64(a.least[k]))
		}
		total = max(total, t.earliest[i]+int64(g.length[i]))
	}
	for i := range g.n {
		t.latest[i] = total - int64(g.length[i])
	}
	before := make([]bool, g.n*g.n) // [i*n+j]: j waits for i
	for k := g.n - 1; k >= 0; k-- {
		j := g.topo[k]
		t.after[j] = 0
		t.weight[j] = g.work(j)
		for x, waits := range before[int(j)*g.n : int(j+1)*g.n] {
			if waits {
				t.after[j]++
				t.weight[j] += g.work(int32(x))
			}
		}
		for k := a.first[j]; k < a.first[j+1]; k++ {
			i := a.from[k]
			t.latest[i] = min(t.latest[i], t.latest[j]-int64(a.least[k]))
			row := before[int(i)*g.n : int(i+1)*g.n]
			row[j] = true
			for x, waits := range before[int(j)*g.n : int(j+1)*g.n] {
				row[x] = row[x] || waits
			}
		}
	}
	return t
}

// work is the length of an activity and a share for what it uses.
func (g *Project) work(i int32) float64 {
	return float64(g.length[i]) * (1 + g.share[i])
}

// least is the length of the project by its lags alone.
func (t *times) least(g *Project) int {
	total := int64(0)
	for i := range g.n {
		total = max(total, t.earliest[i]+int64(g.length[i]))
	}
	return int(total)
}

// ranked puts activities by a rule's keys into w.key, as ranks; with regret,
// a biased draw among those that the lags allow next, so that a rule gives
// many lists (A. Drexl, Management Science 37, 1991).
func (w *workbench) ranked(key []int64, r *rand.Rand) {
	waits := w.waits
	clear(waits)
	a, back := &w.ways[forwards], &w.ways[backwards]
	open := w.order[:0]
	for i := range w.n {
		waits[i] = a.first[i+1] - a.first[i]
		if waits[i] == 0 {
			open = append(open, int32(i))
		}
	}
	w.list = w.list[:0]
	for len(open) > 0 {
		k := draw(open, key, r)
		i := open[k]
		open = append(open[:k], open[k+1:]...)
		w.list = append(w.list, i)
		for x := back.first[i]; x < back.first[i+1]; x++ {
			j := back.from[x]
			if waits[j]--; waits[j] == 0 {
				open = append(open, j)
			}
		}
	}
}

// draw takes the index of the least key, or of one at random with a bias to
// lesser keys.
func draw(open []int32, key []int64, r *rand.Rand) int {
	worst := key[open[0]]
	for _, i := range open {
		worst = max(worst, key[i])
	}
	best, bestScore := 0, -1.0
	for k, i := range open {
		score := float64(worst-key[i]) + 1
		if r != nil {
			score *= r.Float64() // close to a draw in proportion, and cheap
		}
		if score > bestScore {
			best, bestScore = k, score
		}
	}
	return best
}
