package match

import (
	"math"
	"slices"
	"strconv"
	"strings"

	"plait.example/internal/act"
)

// A step goes along with a piece that says so much of it, though the piece stands for another step.
const (
	alongSure    = 0.8  // share of the step's things, wherever it stands
	alongLeast   = 0.45 // the same beside a step of the row
	alongMade    = 0.22
	alongNamed   = 0.6  // beside a step of the row, whatever is done to them
	alongBetween = 0.15 // between two steps of the row
)

// along finds rows for the steps that no piece stands for: one row often stands
// for several steps ("make the choux"). It gives the further steps of each piece.
func (k *known) along(pieces []piece, at []int) map[int][]int {
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
				if pieces[i].dish != d || at[i] < 0 || pieces[i].fixed {
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

// goesAlong scores a step as one more of a piece; 0: it is not. It must stand
// beside a step of the same row, be said in part, and be of a kind with what the row does.
func (k *known) goesAlong(p *piece, i, j int, at, met []int, pieces []piece) float64 {
	s := &k.steps[j]
	before, after := k.ofRow(p.row, j-1, met, pieces), k.ofRow(p.row, j+1, met, pieces)
	share := k.said(p, s, p.row, pieces)
	kind := k.kindSaid(p.row, s, met, pieces)
	near := 0.1 / (1 + math.Abs(float64(at[i]-j)))
	switch {
	case share >= alongSure && kind && !s.onlyNamed:
		return share + near
	case p.made && !s.kinds[act.Ready] && (p.kind != act.Cut || s.kinds[act.Cut]) && k.oneThing(at[i], j) && k.stood(p, s) >= alongMade && k.open(p.row, at[i], j, met, pieces):
		return k.stood(p, s) + near
	case after && shortRest(s) && k.takesOut(p.row, j-1, at, pieces):
		return alongBetween + near
	case !before && !after:
		return 0
	case before && s.wait != nil && k.minutesSaid(p, s):
		return alongBetween + near
	case before && s.ends == "" && s.kinds[act.TakeOut] && s.things == 0 && k.kindSaid(p.row, s, met, pieces):
		return alongBetween + near
	case kind && (s.ends == "" || s.ends == act.Hob) && k.ownVerbSaid(p.row, s, pieces):
		return alongLeast + near
	case strings.Contains(strings.ToLower(p.text), "everything") && (puttingTogether(s) || s.kinds[act.Plate]):
		return alongBetween + near
	case share >= alongNamed && puttingTogether(s), share >= alongSure && s.many && s.ends == "" && !s.kinds[act.Cut]:
		return share + near
	case share >= alongLeast && kind, s.things == 0 && (s.ends == "" || s.ends == act.Hob) && k.verbSaid(p.row, s, pieces):
		return share + near
	case before && after && (p.made && k.stood(p, s) >= alongBetween || kind && share >= alongBetween || s.things == 0 && (kind || p.made || s.ends == "")):
		return alongBetween + near
	}
	return 0
}

// puttingTogether says whether a step adds, fills or cooks what it names: a row
// that names the same beside it means it, whatever its verb.
func puttingTogether(s *stepWords) bool {
	if s.ends != "" && s.ends != act.Hob || s.kinds[act.Cut] {
		return false
	}
	return s.kinds[act.Mix] || s.kinds[act.Fill] || s.kinds[act.Decorate] || s.kinds[act.Shape] || s.kinds[act.Hob] || s.kinds[act.Plate]
}

// open says whether no other row stands for a step between two steps.
func (k *known) open(row, a, b int, met []int, pieces []piece) bool {
	for j := min(a, b) + 1; j < max(a, b); j++ {
		if met[j] > 0 && pieces[met[j]-1].row != row {
			return false
		}
	}
	return true
}

// ofRow says whether a row stands for step j of the same dish already.
func (k *known) ofRow(row, j int, met []int, pieces []piece) bool {
	return j >= 0 && j < len(met) && met[j] > 0 && pieces[met[j]-1].row == row
}

// said is the share of the step's things, 0 to 1, that the row names in its pieces for the dish.
func (k *known) said(p *piece, s *stepWords, row int, pieces []piece) float64 {
	if s.things == 0 {
		return 0
	}
	sum := 0.0
	for _, stem := range sorted(s.words) {
		w := s.words[stem]
		if w == 1 && !k.verbs[stem] && (s.onlyNamed || !k.dishes[s.dish].name[stem]) && k.rowSays(stem, row, s.dish, pieces) {
			sum += k.rare[stem]
		}
	}
	return sum / s.things
}

func (k *known) rowSays(stem string, row, dish int, pieces []piece) bool {
	for i := range pieces {
		if p := &pieces[i]; p.row == row && p.dish == dish && slices.ContainsFunc(p.words, func(w weighted) bool { return w.stem == stem }) {
			return true
		}
	}
	return false
}

// stood is the share of the step's words that a technique stands for or the piece says.
func (k *known) stood(p *piece, s *stepWords) float64 {
	sum := 0.0
	for _, w := range p.words {
		if s.words[w.stem] == 1 && !k.dishes[s.dish].name[w.stem] {
			sum += k.rare[w.stem]
		}
	}
	for _, stem := range p.stands {
		if s.words[stem] == 1 {
			sum += k.rare[stem]
		}
	}
	if s.telling == 0 {
		return 0
	}
	return min(1, sum/s.telling)
}

// kindSaid says whether the row does something of the step's kind. A wait must
// be said as that wait, and each that is said begins one only.
func (k *known) kindSaid(row int, s *stepWords, met []int, pieces []piece) bool {
	begun := 0
	for j := range k.steps {
		if t := &k.steps[j]; t.dish == s.dish && t.ends == s.ends && k.ofRow(row, j, met, pieces) {
			begun++
		}
	}
	for i := range pieces {
		p := &pieces[i]
		if p.row != row || p.dish != s.dish || !s.kinds[p.kind] {
			continue
		}
		if s.ends == "" || s.ends == act.Hob && s.wait.Least < longWait {
			return true
		}
		if p.kind == s.ends || begins[p.kind] {
			begun--
		}
	}
	return begun < 0
}

// longWait is the minutes from which on each simmering must be said by itself.
const longWait = 20

// minutesSaid says whether a row says the minutes of a step's wait, and no other wait of the dish has as many.
func (k *known) minutesSaid(p *piece, s *stepWords) bool {
	if s.wait.Least < 2 || s.ends == act.Chill {
		return false
	}
	figure := strconv.Itoa(s.wait.Least)
	if !slices.Contains(strings.FieldsFunc(p.text, func(r rune) bool { return r < '0' || r > '9' }), figure) {
		return false
	}
	n := 0
	for j := k.dishes[s.dish].from; j < k.dishes[s.dish].to; j++ {
		if w := k.steps[j].wait; w != nil && w.Least == s.wait.Least {
			n++
		}
	}
	return n == 1
}

// verbSaid says whether the row says a verb of the step that is not everybody's.
func (k *known) verbSaid(row int, s *stepWords, pieces []piece) bool {
	for _, stem := range sorted(s.words) {
		if s.words[stem] == 1 && k.verbs[stem] && !plainVerbs[stem] && k.rowSays(stem, row, s.dish, pieces) {
			return true
		}
	}
	return false
}

// oneThing says whether two steps make the same part of a dish.
func (k *known) oneThing(a, b int) bool { return k.steps[a].component == k.steps[b].component }

// ownVerbSaid says whether the row says a verb that of the dish's steps this one
// alone has, and that leads its piece: "pasta dough - knead 10, wrap, rest".
func (k *known) ownVerbSaid(row int, s *stepWords, pieces []piece) bool {
	for i := range pieces {
		p := &pieces[i]
		if p.row != row || p.dish != s.dish || p.verb == "" || plainVerbs[p.verb] || s.words[p.verb] < 1 || !s.kinds[p.kind] {
			continue
		}
		dw, have := k.dishes[s.dish], 0
		for j := dw.from; j < dw.to; j++ {
			if k.steps[j].words[p.verb] == 1 {
				have++
			}
		}
		if have == 1 {
			return true
		}
	}
	return false
}

// shortRest says whether a step only leaves food where it stands for some minutes: "leave in the tins for 5 minutes".
func shortRest(s *stepWords) bool {
	return s.wait != nil && s.wait.Least <= 10 && (s.ends == act.Rest || s.ends == act.Cool)
}

// takesOut says whether a piece of the row ends the wait of step j.
func (k *known) takesOut(row, j int, at []int, pieces []piece) bool {
	for i := range pieces {
		if pieces[i].row == row && pieces[i].kind == act.TakeOut && at[i] == j && j >= 0 {
			return true
		}
	}
	return false
}
