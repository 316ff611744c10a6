package match

import (
	"plait.example/internal/act"
)

// Weights of the order in which a dish's steps are met.
const (
	nextStep  = 0.3
	skipStep  = 0.06 // for each step passed over
	skipMost  = 0.4
	backwards = 0.5 // before a step that must come first
	sideways  = 0.1 // to another thread of the dish
	againStep = 0.1
	aside     = 0.1 // taken out, while the work goes on elsewhere
)

// align finds the best way of a dish's pieces, in the order of the plan,
// through the dish's steps (Viterbi 1967): each piece stands for a step or for
// none, steps in their order are better than others, but an order that is
// wrong stays visible. It sets at[i] to the step of piece i, -1 for none.
func (k *known) align(d int, list []int, pieces []piece, fit [][]float64, at []int) {
	dw := k.dishes[d]
	n := dw.to - dw.from
	const start = 0 // state 0: no step yet; state j+1: step from+j was the last
	score := make([]float64, n+1)
	for s := 1; s <= n; s++ {
		score[s] = -1e9
	}
	type link struct{ state, step int }
	links := make([][]link, len(list))
	for i, pi := range list {
		next := make([]float64, n+1)
		links[i] = make([]link, n+1)
		for s := range n + 1 {
			next[s], links[i][s] = score[s], link{s, -1}
		}
		for j := range n {
			f := fit[pi][dw.from+j]
			if f < -0.6 {
				continue
			}
			for s := range n + 1 {
				v := score[s] + f + k.moves(dw.from+s-1, dw.from+j, s == start, i > 0 && pieces[list[i-1]].row == pieces[pi].row, &pieces[pi])
				if v > next[j+1] {
					next[j+1], links[i][j+1] = v, link{s, dw.from + j}
				}
				// A load taken out need not move the work on.
				if v -= aside; !owns(pieces[pi].kind) && v > next[s] {
					next[s], links[i][s] = v, link{s, dw.from + j}
				}
			}
		}
		score = next
	}
	s := start
	for b := range score {
		if score[b] > score[s] {
			s = b
		}
	}
	for i := len(list) - 1; i >= 0; i-- {
		l := links[i][s]
		at[list[i]] = l.step
		s = l.state
	}
}

// moves is the weight of meeting step j after step b.
func (k *known) moves(b, j int, first, together bool, p *piece) float64 {
	if first {
		return -min(skipMost, skipStep*float64(j-k.dishes[k.steps[j].dish].from))
	}
	from, to := &k.steps[b], &k.steps[j]
	switch {
	case p.kind == act.TakeOut && j > b:
		return -backwards
	case b == j && looks(p.kind):
		return againStep + nextStep
	case looks(p.kind):
		return 0
	case b == j && together && p.made:
		return againStep + nextStep
	case b == j:
		return againStep
	case j == b+1:
		return nextStep
	case j > b:
		skipped := 0
		for s := b + 1; s < j; s++ {
			if k.steps[s].component == to.component || to.before[s] {
				skipped++
			}
		}
		return nextStep/2 - min(skipMost, skipStep*float64(skipped))
	case p.kind == act.TakeOut || p.kind == act.FromCold:
		return -min(aside, skipStep/3*float64(b-j)) // what went in last comes out first
	case from.before[j] && k.oneThing(b, j):
		return -backwards
	}
	return -sideways
}
