package solver

import (
	"cmp"
	"math/rand/v2"
	"slices"

	"plait.example/solver/internal/lcg"
	"plait.example/solver/problem"
)

// Large-neighbourhood search (P. Shaw, 1998): most activities may move only a
// little from where the best schedule has them, a few move freely, and the
// engine looks for something better. What it learns stays, for it follows from
// the problem alone. Which activities are free is drawn anew each time; how
// many adapts to how the searches end.

// roamer is the state of the neighbourhoods of one Solve.
type roamer struct {
	r     *rand.Rand
	free  float64 // share of the activities that move freely
	share int64   // the search's effort divided by this is for neighbourhoods
	mean  int     // length of an activity
	users [][]int // by resource that several use: activities
	tries int     // neighbourhoods searched
}

const (
	roamConflicts  = 150 // for one neighbourhood
	leastRoamShare = 8
	leastFree      = 0.05
	mostFree       = 0.8
	freeAfterProof = 1.1 // the neighbourhood held nothing better: look wider
	freeAfterLimit = 0.95
	firstFreeShare = 0.25
	mostHeld       = 600 // so many activities are held at most; with more, the rest move freely
)

func newRoamer(p *problem.Problem, seed int64) *roamer {
	w := &roamer{r: rand.New(rand.NewPCG(uint64(seed), 0x10a)), free: firstFreeShare, share: 1}
	sum := 0
	w.users = make([][]int, len(p.Resources))
	for i, a := range p.Activities {
		sum += a.MinDuration
		for _, m := range a.Modes {
			for _, u := range m.Uses {
				w.users[u.Resource] = append(w.users[u.Resource], i)
			}
		}
	}
	w.mean = max(1, sum/max(1, len(p.Activities)))
	w.users = slices.DeleteFunc(w.users, func(list []int) bool { return len(list) < 3 })
	return w
}

// roam searches neighbourhoods of the best schedule for a better value of the
// objective in hand, after a search of so many conflicts.
func (s *solving) roam(searched int64) {
	w := s.roamer
	improved := false
	for end := s.left - searched/w.share; s.left > max(0, end) && s.values[s.level] > s.m.bound(s.level) && !s.stop(); {
		w.tries++
		assume := append(s.nearby(), s.m.below(s.level, s.values[s.level]-1))
		switch s.search(min(roamConflicts, s.left), assume...) {
		case lcg.Found:
			if !s.take() {
				return
			}
			improved = true
		case lcg.Refuted:
			return
		case lcg.Failed:
			w.free = min(mostFree, w.free*freeAfterProof)
			s.left-- // or nothing might count
		case lcg.Stopped:
			w.free = max(leastFree, w.free*freeAfterLimit)
		}
	}
	if improved {
		w.share = 1
	} else {
		w.share = min(2*w.share, leastRoamShare)
	}
}

// nearby is what keeps the activities that are not free close to the best schedule.
func (s *solving) nearby() []lcg.Lit {
	w := s.roamer
	move := [...]int{1, w.mean, 3 * w.mean}[w.r.IntN(3)]
	free := w.draw(s.best, max(2, int(w.free*float64(len(s.p.Activities)))))
	var assume []lcg.Lit
	held := 0
	for i := range s.p.Activities {
		if free[i] || held == mostHeld {
			continue
		}
		held++
		at := s.best.Start[i]
		assume = append(assume, s.m.start[i].AtMost(at+move), s.m.start[i].AtLeast(at-move))
		if modes := s.m.mode[i]; len(modes) > 1 {
			assume = append(assume, modes[s.best.Mode[i]])
		}
	}
	return assume
}

// draw chooses about k activities to be free: those of a stretch of time,
// those of a stretch of time on one resource, or any.
func (w *roamer) draw(best *problem.Solution, k int) []bool {
	n := len(best.Start)
	free := make([]bool, n)
	pool := make([]int, n)
	for i := range pool {
		pool[i] = i
	}
	kind := w.r.IntN(4)
	if kind == 3 {
		w.r.Shuffle(n, func(i, j int) { pool[i], pool[j] = pool[j], pool[i] })
	} else {
		centre := best.Start[w.r.IntN(n)]
		if kind == 2 && len(w.users) > 0 {
			pool = slices.Clone(w.users[w.r.IntN(len(w.users))])
		}
		slices.SortStableFunc(pool, func(a, b int) int {
			return cmp.Compare(away(best, a, centre), away(best, b, centre))
		})
	}
	for _, i := range pool[:min(k, len(pool))] {
		free[i] = true
	}
	return free
}

// away is how far an activity is from a moment.
func away(s *problem.Solution, i, t int) int {
	return max(0, s.Start[i]-t, t-s.End[i])
}
