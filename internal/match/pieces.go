package match

import (
	"slices"

	"plait.example/internal/act"
	"plait.example/internal/written"
)

// piece is an act of a row, or the words of a row that says none, as it is
// laid beside the steps.
type piece struct {
	row     int
	kind    act.Kind // empty: no act is said
	verb    string
	act     act.Act
	words   []weighted // of the piece, sorted by stem
	stands  []string   // stems of what a technique stands for: "choux" for butter, water, flour, eggs
	total   float64
	strange []int     // dishes that have not a food which it names and others have
	own     int       // words of its own that steps have
	speaks  []float64 // for each dish, by its words
	made    bool      // "make the choux": may stand for several steps
	chore   bool
	dish    int   // -1: none
	allow   []int // dishes it may be about, from the row's own words; nil: any
}

type weighted struct {
	stem   string
	weight float64 // in this piece, times how much the stem tells
}

// chores are kinds that are a step only where a recipe says the same.
var chores = map[act.Kind]bool{
	act.WashUp: true, act.WashHands: true, act.FinalClean: true, act.CleanDown: true, act.Idle: true, act.Timer: true, act.HeatOven: true, act.TurnOven: true, act.OvenOff: true, act.SetUp: true,
	act.KeepHot: true, act.Ready: true,
}

var makers = map[string]bool{"make": true, "start": true, "begin": true, "prepar": true, "prep": true, "do": true, "finish": true, "assembl": true, "cook": true}

// Weights of words that a piece takes from elsewhere in its row.
const (
	fromRow    = 0.25
	fromBefore = 0.45
	strangers  = 0.25 // of a word that no step has
	strangeAct = 2.2  // the same, of a verb
	ofStanding = 0.45
)

// piecesOf cuts a row into pieces.
func (k *known) piecesOf(n int, r written.Row, acts []act.Act) (list []piece) {
	var said []act.Act
	for _, a := range acts {
		if !a.Implied {
			said = append(said, a)
		}
	}
	if len(said) == 0 {
		if len(act.WordsOf(r.Text)) == 0 {
			return nil
		}
		said = []act.Act{{Start: 0, End: len(r.Text)}}
	}
	var before map[string]bool // words of the last piece that names a thing
	for i, a := range said {
		start, end := a.Start, len(r.Text)
		if i == 0 {
			start = 0
		}
		if i+1 < len(said) {
			end = max(start, said[i+1].Start)
		}
		p := piece{row: n, kind: a.Kind, verb: canonical(a.Verb), act: a, dish: -1, chore: chores[a.Kind], speaks: make([]float64, len(k.dishes))}
		own := k.mended(r.Text[start:end])
		weights := map[string]float64{}
		if len(a.Objects) == 0 {
			for stem := range k.mended(r.Text) {
				weights[stem] = fromRow
			}
			for stem := range before {
				weights[stem] = fromBefore
			}
		}
		if len(a.Objects) > 0 || before == nil {
			before = own
		}
		for stem := range own {
			weights[stem] = 1
		}
		p.strange = k.strangersTo(own)
		p.made = makers[a.Verb] || a.Kind == ""
		p.stands = standsFor(own, p.made)
		for _, stem := range sorted(weights) {
			rare, known := k.rare[stem]
			if known && own[stem] {
				if !k.verbs[stem] {
					p.own++
				}
				for d, v := range k.tells[stem] {
					p.speaks[d] += v
				}
			}
			if known {
				p.words = append(p.words, weighted{stem, weights[stem] * rare})
				p.total += weights[stem] * rare
			} else {
				p.total += weights[stem] * unknownWeight(stem)
			}
		}
		list = append(list, p)
	}
	return list
}

// mended are the stems of a text; a word that no step has is read as the one it is near to.
func (k *known) mended(text string) map[string]bool {
	m := map[string]bool{}
	for _, w := range act.WordsOf(text) {
		stem := canonical(w.Stem)
		if _, ok := k.rare[stem]; !ok {
			if near, ok := act.Nearest(stem, k.stems); ok {
				stem = near
			}
		}
		m[stem] = true
	}
	return m
}

// strangersTo are the dishes in which a food that the words name does not come, though it does in others.
func (k *known) strangersTo(own map[string]bool) (dishes []int) {
	for d := range k.dishes {
		for _, stem := range sorted(own) {
			if tells := k.tells[stem]; tells != nil && tells[d] == 0 && slices.Max(tells) > 0 {
				dishes = append(dishes, d)
				break
			}
		}
	}
	return dishes
}

// unknownWeight is the weight of a word that no step has.
func unknownWeight(stem string) float64 {
	if act.IsVerb(stem) && !plainVerbs[stem] {
		return strangeAct
	}
	return strangers
}
