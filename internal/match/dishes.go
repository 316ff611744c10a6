package match

import (
	"slices"

	"plait.example/internal/written"
)

// Weights of staying with the dish of the piece before.
const (
	sameRow  = 0.45
	rowAbove = 0.2
	speaking = 0.5 // a word that only this dish has
	blankRow = 0.5 // a row without a dish in a plan that names dishes
)

// choose decides for each piece which dish it is about, and gives the dishes that each row says: the best way through
// the whole plan, in which neighbours are likely to be of one dish.
func (k *known) choose(plan written.Plan, pieces []piece, fit [][]float64) []map[int]bool {
	groups := k.resolve(plan, pieces, fit)
	named := false
	for _, r := range plan.Rows {
		named = named || len(r.Dishes) > 0
	}
	none := len(k.dishes)
	allowed := make([]map[int]bool, len(plan.Rows))
	for n, r := range plan.Rows {
		for _, l := range labelsOf(r) {
			if d, ok := groups[l]; ok && d >= 0 {
				if allowed[n] == nil {
					allowed[n] = map[int]bool{}
				}
				allowed[n][d] = true
			}
		}
	}
	var chain []int // pieces that are about a dish, by index
	for i := range pieces {
		p := &pieces[i]
		p.dish, p.allow = -1, sorted(allowed[p.row])
		if p.chore && !slices.ContainsFunc(fit[i], func(f float64) bool { return f > 0 }) {
			if len(p.allow) == 1 {
				p.dish = p.allow[0]
			}
			continue
		}
		chain = append(chain, i)
	}
	score := make([]float64, none+1)
	from := make([][]int, len(chain))
	for n, i := range chain {
		p := &pieces[i]
		next := make([]float64, none+1)
		from[n] = make([]int, none+1)
		for d := range none + 1 {
			best, at := -1e9, 0
			for b := range none + 1 {
				s := score[b]
				if b == d && d < none && n > 0 {
					s += k.stays(plan, pieces[chain[n-1]].row, p.row, named)
				}
				if s > best {
					best, at = s, b
				}
			}
			next[d], from[n][d] = best+k.about(p, d, fit[i], allowed[p.row]), at
		}
		score = next
	}
	trace(pieces, chain, score, from)
	return allowed
}

// trace goes back along the best way and sets each piece's dish.
func trace(pieces []piece, chain []int, score []float64, from [][]int) {
	none := len(score) - 1
	d := none
	for b := range score {
		if score[b] > score[d] {
			d = b
		}
	}
	for n := len(chain) - 1; n >= 0; n-- {
		if d != none {
			pieces[chain[n]].dish = d
		}
		d = from[n][d]
	}
}

func (k *known) stays(plan written.Plan, before, now int, named bool) float64 {
	r := plan.Rows[now]
	switch {
	case before == now:
		return sameRow
	case named && len(r.Dishes) == 0:
		return blankRow
	}
	return rowAbove
}

// about says how well a piece suits a dish, from its words and its row's dish or colour.
func (k *known) about(p *piece, d int, fit []float64, allowed map[int]bool) float64 {
	if p.fixed {
		if d == k.steps[p.step].dish {
			return certain
		}
		return -certain
	}
	if d == len(k.dishes) {
		if allowed != nil && !p.chore {
			return -0.4
		}
		return 0
	}
	if allowed != nil && !allowed[d] {
		return -8
	}
	s := k.bestIn(fit, d)
	if s > -needed {
		s += min(speaking, speaking*p.speaks[d]/2)
		if best := slices.Max(p.speaks); best > 0.6 && p.speaks[d] < best/3 {
			s -= speaking
		}
	}
	if p.chore && s < 0 {
		s = -0.1
	}
	if allowed != nil {
		s = max(s, -0.2) + 0.4
	}
	return s
}
