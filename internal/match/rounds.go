package match

import (
	"maps"
	"slices"
	"strings"

	"plait.example/internal/act"
)

// Rounds of reading the whole plan: from the second on, a piece is read with
// what the others are taken for.
const rounds = 4

// Weights of what the rest of the plan says of a piece and a step.
const (
	taken      = 0.55 // another row stands for the step, and better
	saidAgain  = 0.6  // in the same words
	lookedAt   = 0.6  // a look at what the row works on
	ofNovel    = 0.5  // so much less when it says what the other row does not say of the step
	notTwin    = 0.5  // the same row stands above, for another step
	suits      = 0.4  // by itself, out of order
	firstComes = 0.35 // so much better must a later row be
	plain      = 1.2  // a score from which on a piece is as good as any
	neighbours = 0.2  // the piece before or after stands for the step before or after
	disorder   = 0.15 // for each piece that is out of order with it
	mostly     = 0.6  // all disorder together
	sureAnchor = 0.35 // from which score on a piece says something of others
)

// context adds to the scores what the rest of the plan says, as it was read in
// the round before.
func (k *known) context(pieces []piece, fit [][]float64, at []int) [][]float64 {
	owner := make([]int, len(k.steps))
	for j := range owner {
		owner[j] = -1
	}
	for i, j := range at {
		if j >= 0 && owns(pieces[i].kind) && (owner[j] < 0 || min(fit[i][j], plain) > fit[owner[j]][j]+firstComes) {
			owner[j] = i
		}
	}
	twin := make([]int, len(pieces))
	for i := range pieces {
		twin[i] = twinOf(pieces, i)
	}
	out := make([][]float64, len(pieces))
	for i := range pieces {
		out[i] = make([]float64, len(k.steps))
		copy(out[i], fit[i])
		for j := range k.steps {
			if fit[i][j] < -0.7 {
				continue
			}
			if o := owner[j]; o >= 0 && pieces[o].row != pieces[i].row && owns(pieces[i].kind) && !twins(pieces, o, i) && !k.halves(pieces, at, o, i, j) {
				out[i][j] -= taken*(1-ofNovel*novel(&pieces[i], &pieces[o], &k.steps[j])) + saidAgain*alikeWords(&pieces[i], &pieces[o])
				if k.steps[j].alone {
					out[i][j] -= forOnly
				}
			}
			if looks(pieces[i].kind) {
				if besideIt(i, j, pieces, at) {
					out[i][j] += lookedAt
				}
				continue
			}
			if t := twin[i]; t >= 0 && at[t] != j {
				out[i][j] -= notTwin
			}
			out[i][j] += k.inOrder(i, j, pieces, fit, at)
		}
	}
	return out
}

// novel is the share of what a piece says of a step, 0 to 1, that the other does not say.
func novel(p, other *piece, s *stepWords) float64 {
	fresh, all := 0.0, 0.0
	if s.serve {
		return 0
	}
	for _, w := range p.words {
		if s.words[w.stem] < 1 {
			continue
		}
		all += w.weight
		if !slices.ContainsFunc(other.words, func(o weighted) bool { return o.stem == w.stem }) {
			fresh += w.weight
		}
	}
	if all == 0 {
		return 0
	}
	return fresh / all
}

// alikeWords is the share of a piece's words, 0 to 1, that another has too.
func alikeWords(p, other *piece) float64 {
	shared, all := 0.0, 0.0
	for _, w := range p.words {
		all += w.weight
		if slices.ContainsFunc(other.words, func(o weighted) bool { return o.stem == w.stem }) {
			shared += w.weight
		}
	}
	if all == 0 {
		return 0
	}
	return shared / all
}

// besideIt says whether another piece of the same row stands for step j.
func besideIt(i, j int, pieces []piece, at []int) bool {
	for n := range pieces {
		if n != i && pieces[n].row == pieces[i].row && at[n] == j {
			return true
		}
	}
	return false
}

// twinOf is the piece above that says the same in a row that says the same; -1: none.
func twinOf(pieces []piece, i int) int {
	for o := range i {
		if pieces[o].row != pieces[i].row && twins(pieces, o, i) {
			return o
		}
	}
	return -1
}

// twins says whether two pieces are of rows in the same words, and the same pieces of them.
func twins(pieces []piece, o, i int) bool {
	a, b := &pieces[o], &pieces[i]
	return a.kind == b.kind && len(a.all) > 1 && maps.Equal(a.own, b.own) && maps.Equal(a.all, b.all)
}

// owns says whether a kind of act is the step's work, which is done once; it is
// looked at and taken out besides.
func owns(kind act.Kind) bool {
	return kind != act.TakeOut && kind != act.FromCold && kind != act.Test && kind != act.Probe && kind != act.Taste
}

// halves says whether piece i may share step j with its owner: the hands' work in
// one row, the wait in another.
func (k *known) halves(pieces []piece, at []int, owner, i, j int) bool {
	s := &k.steps[j]
	if s.ends == "" || len(s.kinds) < 2 {
		return false
	}
	for n := range pieces {
		if at[n] == j && pieces[n].row == pieces[owner].row && pieces[n].kind == pieces[i].kind {
			return false
		}
	}
	return (pieces[owner].kind == s.ends) != (pieces[i].kind == s.ends)
}

// inOrder says how well step j suits piece i by the pieces around it.
func (k *known) inOrder(i, j int, pieces []piece, fit [][]float64, at []int) (score float64) {
	d, wrong, near := k.steps[j].dish, 0, 0.0
	last, next := -1, -1
	for n, s := range at {
		if s < 0 || n == i || k.steps[s].dish != d || fit[n][s] < sureAnchor {
			continue
		}
		if n < i {
			last = s
			if s != j && k.steps[s].before[j] && k.oneThing(s, j) && pieces[i].kind != act.TakeOut {
				wrong++
			}
		} else {
			if next < 0 {
				next = s
			}
			if s != j && k.steps[j].before[s] && k.oneThing(s, j) && pieces[n].kind != act.TakeOut {
				wrong++
			}
		}
	}
	if last >= 0 && (last == j-1 || last == j) {
		near += neighbours
	}
	if next >= 0 && (next == j+1 || next == j) {
		near += neighbours / 2
	}
	return near - min(mostly, disorder*float64(wrong))
}

// lastHeated gives a look, or a probe, the last step of cooking that the dish
// has begun above it, whatever food it names: the lamb of a tagine is browned
// first and probed when it has simmered.
func (k *known) lastHeated(pieces []piece, at []int) {
	for i := range pieces {
		j := at[i]
		if j < 0 || !looks(pieces[i].kind) || besideIt(i, j, pieces, at) {
			continue
		}
		last := j
		for n := range i {
			if s := at[n]; s > last && k.steps[s].dish == k.steps[j].dish && k.steps[s].before[j] && heated[k.steps[s].ends] && k.steps[s].wait.Least >= longCooking {
				last = s
			}
		}
		at[i] = last
	}
}

// longCooking is the minutes from which on a step is what cooks a dish through.
const longCooking = 20

var heated = map[act.Kind]bool{act.Hob: true, act.PutIn: true, act.Grill: true, act.Microwave: true}

// goOn gives a row that carries on with what it was doing the step that its dish
// was at: "finish the gnocchi", "carried on shaping".
func (k *known) goOn(pieces []piece, at []int) {
	for i := range pieces {
		p := &pieces[i]
		if !p.goesOn() || p.dish < 0 {
			continue
		}
		for n := i - 1; n >= 0; n-- {
			if pieces[n].dish == p.dish && at[n] >= 0 && pieces[n].row != p.row && owns(pieces[n].kind) && k.steps[at[n]].ends == "" {
				at[i] = at[n]
				break
			}
		}
	}
}

// goesOn says whether a piece says only that something is gone on with.
func (p *piece) goesOn() bool {
	words := strings.Fields(strings.ToLower(p.text))
	if len(words) > 6 || p.act.Least > 0 || p.kind == act.TakeOut || p.kind == act.Serve {
		return false
	}
	for i, w := range words {
		if i < 3 && (w == "finish" || w == "finished" || w == "continue" || w == "continued" || w == "carry" || w == "carried") {
			return i+1 < len(words) && words[i+1] != "with" && !strings.HasSuffix(p.text, "off")
		}
	}
	return false
}

// late gives pieces that stand for nothing, because they are out of order, the
// steps that nothing stands for and that they suit well by themselves.
func (k *known) late(pieces []piece, fit [][]float64, at []int) {
	free := make([]bool, len(k.steps))
	for j := range free {
		free[j] = !slices.Contains(at, j)
	}
	for i := range pieces {
		if at[i] >= 0 || pieces[i].dish < 0 || pieces[i].kind == "" || !owns(pieces[i].kind) {
			continue
		}
		dw := k.dishes[pieces[i].dish]
		best := -1
		for j := dw.from; j < dw.to; j++ {
			if free[j] && fit[i][j] > suits && (best < 0 || fit[i][j] > fit[i][best]) {
				best = j
			}
		}
		if best >= 0 {
			at[i], free[best] = best, false
		}
	}
}
