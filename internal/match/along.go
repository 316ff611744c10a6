package match

import (
	"math"
	"slices"
)

// A step goes along with a piece that says so much of it, though the piece stands for another step.
const (
	alongLeast = 0.5 // share of the step's words
	alongNear  = 0.3 // the same for a step beside one of the piece's own
	alongMade  = 0.22
)

// along finds rows for the steps that no piece stands for: one row often stands
// for several steps ("make the choux"). It gives the further steps of each piece.
func (k *known) along(pieces []piece, fit [][]float64, at []int) map[int][]int {
	met := make([]int, len(k.steps)) // the piece that stands for a step, plus one
	for i, j := range at {
		if j >= 0 && met[j] == 0 {
			met[j] = i + 1
		}
	}
	result := map[int][]int{}
	for range 3 {
		k.alongOnce(pieces, at, met, result)
	}
	for i := range result {
		slices.Sort(result[i])
	}
	return result
}

func (k *known) alongOnce(pieces []piece, at, met []int, result map[int][]int) {
	for d, dw := range k.dishes {
		for j := dw.from; j < dw.to-1; j++ {
			if met[j] > 0 || k.steps[j].setUp {
				continue
			}
			best, chosen := 0.0, -1
			for i := range pieces {
				if pieces[i].dish != d || at[i] < 0 || k.steps[at[i]].serve {
					continue
				}
				if s := k.goesAlong(&pieces[i], i, j, at, met, pieces); s > best {
					best, chosen = s, i
				}
			}
			if chosen >= 0 {
				met[j] = chosen + 1
				result[chosen] = append(result[chosen], j)
			}
		}
	}
}

// goesAlong scores a step as one more of a piece; 0: it is not.
func (k *known) goesAlong(p *piece, i, j int, at, met []int, pieces []piece) float64 {
	s := &k.steps[j]
	said, stood := 0.0, 0.0
	for _, w := range p.words {
		if s.words[w.stem] == 1 && !k.dishes[s.dish].name[w.stem] {
			said += w.weight
		}
	}
	for _, stem := range p.stands {
		if s.words[stem] == 1 {
			stood += k.rare[stem]
		}
	}
	share := 0.0
	if s.telling > 0 {
		share = min(1, (said+stood)/s.telling)
	}
	near := math.Abs(float64(at[i]-j)) <= 1 || k.between(pieces[i].row, j, met, pieces)
	switch {
	case p.made && k.oneThing(at[i], j) && share >= alongMade, near && share >= alongNear, share >= alongLeast:
		return share + 0.1/(1+math.Abs(float64(at[i]-j)))
	case k.between(pieces[i].row, j, met, pieces):
		return 0.05
	}
	return 0
}

// oneThing says whether two steps make the same part of a dish.
func (k *known) oneThing(a, b int) bool { return k.steps[a].component == k.steps[b].component }

// between says whether the steps before and after j are both of the row.
func (k *known) between(row, j int, met []int, pieces []piece) bool {
	dw := k.dishes[k.steps[j].dish]
	if j == dw.from || j+1 >= dw.to {
		return false
	}
	a, b := met[j-1], met[j+1]
	return a > 0 && b > 0 && pieces[a-1].row == row && pieces[b-1].row == row
}
