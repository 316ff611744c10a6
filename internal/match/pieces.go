package match

import (
	"slices"
	"strconv"
	"strings"
	"unicode"

	"plait.example/internal/act"
	"plait.example/internal/written"
)

// piece is an act of a row, or the words of a row that says none, as it is
// laid beside the steps.
type piece struct {
	row     int
	text    string   // of its row
	kind    act.Kind // empty: no act is said
	verb    string
	act     act.Act
	words   []weighted // of the piece, sorted by stem
	stands  []string   // stems of what a technique stands for: "choux" for butter, water, flour, eggs
	total   float64
	own     map[string]bool // stems of its own words
	all     map[string]bool // stems of its row
	things  int             // those of them that name things which steps have
	strange []int           // dishes that have not a food which it names and others have
	speaks  []float64       // for each dish, by its words
	made    bool            // "make the choux": may stand for several steps
	fixed   bool            // set by the teacher: it stands for step only
	step    int
	chore   bool
	off     bool  // something is turned off
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
	ofProduct  = 0.4 // of what was made before: "top with the mash"
)

// piecesOf cuts a row into pieces.
func (k *known) piecesOf(n int, r written.Row, acts []act.Act) (list []piece) {
	all := k.mended(r.Text)
	for _, c := range clauses(r.Text, acts) {
		p := k.pieceOf(n, r.Text, all, c, list)
		if len(list) > 0 && onlyStirs(&p) {
			continue
		}
		if p.act.Verb == "stir" && k.namesOnlyDish(&p) {
			p.kind, p.act.Kind = act.Test, act.Test // "stir the stew" is a look at it
		}
		list = append(list, p)
	}
	return list
}

// namesOnlyDish says whether a piece names a dish, by its name, and nothing else that is worked on.
func (k *known) namesOnlyDish(p *piece) bool {
	named := false
	for stem := range p.own {
		if stem == p.verb || k.rare[stem] == 0 || plainVerbs[stem] {
			continue
		}
		if !slices.ContainsFunc(k.dishes, func(d dishWords) bool { return d.name[stem] }) {
			return false
		}
		named = true
	}
	return named
}

// onlyStirs says whether a piece is a word on the one before: "simmer, stirring now and then".
func onlyStirs(p *piece) bool {
	if p.kind != act.Mix || p.verb != "mix" && p.verb != canonical("stir") {
		return false
	}
	if len(p.own) < 2 {
		return false
	}
	for stem := range p.own {
		if stem != p.verb && stem != "sometim" && stem != "occasion" && stem != "constant" && stem != "continu" && stem != "time" {
			return false
		}
	}
	return true
}

// clause is a part of a row with the act that it says, if any.
type clause struct {
	act        act.Act
	start, end int
}

// clauses cuts a row at its acts; where a stop or "then" parts words from the
// act's verb, they are a clause of their own: "White sauce. Knock back the dough".
func clauses(text string, acts []act.Act) (list []clause) {
	var said []act.Act
	for _, a := range acts {
		if !a.Implied {
			said = append(said, a)
		}
	}
	if len(said) == 0 {
		said = []act.Act{{}}
	}
	for i, a := range said {
		start, end := a.Start, len(text)
		if i == 0 {
			start = 0
		}
		for _, later := range said[i+1:] {
			if later.Start > start {
				end = later.Start
				break
			}
		}
		for _, part := range parts(text, start, end, a) {
			c := clause{start: part[0], end: part[1]}
			if m := minutesOfNext(text[c.start:c.end]); m > 0 && part[0] > a.At && a.Kind == act.Hob {
				c.act = act.Act{Kind: a.Kind, At: c.start, Least: m, Most: m, Objects: a.Objects}
			}
			if a.At >= c.start && a.At < c.end || i == 0 && len(acts) == 0 && len(list) == 0 {
				c.act = a
			}
			if c.act.Kind != "" || tells(text[c.start:c.end]) {
				list = append(list, c)
			}
		}
	}
	return list
}

// tells says whether words without an act may stand for a step: not a warning,
// and not a note of allergens, which names foods of every step.
func tells(text string) bool {
	words := act.WordsOf(text)
	note := slices.ContainsFunc(words, func(w act.Word) bool { return strings.HasPrefix(w.Stem, "allerg") || w.Stem == "contain" })
	return len(words) > 0 && !note && !act.Forbids(text) && !act.Spares(text)
}

// parts cuts text from start to end after stops, before "then", before the words
// of the act if a comma stands there, and after an "out" that has no verb: "buns out".
func parts(text string, start, end int, a act.Act) (list [][2]int) {
	from := start
	cut := func(at int) {
		if strings.TrimSpace(text[from:at]) != "" {
			list = append(list, [2]int{from, at})
		}
		from = at
	}
	for i := start; i < end; i++ {
		next := i+1 >= end || text[i+1] == ' '
		switch {
		case text[i] == ',' && a.Kind == act.Hob && i > a.At && minutesOfNext(text[from:i]) > 0 && minutesOfNext(text[i+1:end]) > 0:
			cut(i + 1) // "fry onion 5 min, garlic 1 min, chicken 6 min"
		case strings.HasPrefix(text[i:end], "→") && a.Verb == "" && i > start:
			cut(i)
		case text[i] == '.' && next, text[i] == ';', text[i] == '\n':
			cut(i + 1)
		case strings.HasPrefix(text[i:end], " then "), i == a.Start && i > start && strings.HasSuffix(strings.TrimSpace(text[:i]), ","),
			a.Kind == act.TakeOut && a.Verb == "" && i == a.At+len("out") && strings.HasSuffix(text[:i], "out"):
			cut(i)
		}
	}
	cut(end)
	return list
}

// minutesOfNext is the number that stands, after words, before the first comma
// or stop of a text; 0: none.
func minutesOfNext(text string) int {
	words, number := false, 0
	for _, w := range strings.FieldsFunc(strings.TrimLeft(text, " ,"), func(r rune) bool { return r == ' ' }) {
		first := strings.TrimRight(w, ",.;")
		if n, err := strconv.Atoi(strings.TrimRight(first, "mins")); err == nil && n > 0 && n <= 60 {
			number = n
		} else if number == 0 {
			words = true
		}
		if first != w {
			break
		}
	}
	if !words {
		return 0
	}
	return number
}

// pieceOf reads a clause; all are the stems of the row, done the pieces of the row before it.
func (k *known) pieceOf(n int, text string, all map[string]bool, c clause, done []piece) piece {
	a := c.act
	p := piece{row: n, text: text, kind: a.Kind, verb: canonical(a.Verb), act: a, dish: -1, chore: chores[a.Kind], speaks: make([]float64, len(k.dishes))}
	p.own, p.all = k.mended(text[c.start:c.end]), all
	p.off = strings.Contains(strings.ToLower(text[c.start:c.end])+" ", " off ")
	weights := map[string]float64{}
	if bare := a.Kind != "" && len(a.Objects) == 0; bare || len(done) > 0 && a.Kind == act.Cut && !k.namesThing(p.own) {
		for stem := range p.all {
			if bare {
				weights[stem] = fromRow
			}
		}
		for i := len(done) - 1; i >= 0; i-- {
			if done[i].things > 0 || i == 0 {
				for stem := range done[i].own {
					weights[stem] = fromBefore
				}
				break
			}
		}
	}
	for stem := range p.own {
		weights[stem] = 1
	}
	for _, stem := range k.products(text[c.start:c.end]) {
		weights[stem] = ofProduct
	}
	p.chore = p.chore || p.kind == act.Plate && warmsPlates(&p)
	p.strange = k.strangersTo(p.own)
	p.made = makers[a.Verb] && !(a.Verb == "cook" && a.Least > 0) || a.Kind == "" || a.Kind == act.Other && a.Verb == "" && c.end < len(text) // "dip done & chilling"
	p.stands = standsFor(p.own, p.made || p.own["veget"])
	for _, stem := range sorted(weights) {
		rare, known := k.rare[stem]
		if !known {
			p.total += weights[stem] * unknownWeight(stem)
			continue
		}
		p.words = append(p.words, weighted{stem, weights[stem] * rare})
		p.total += weights[stem] * rare
		if p.own[stem] {
			if !k.verbs[stem] {
				p.things++
			}
			for d, v := range k.tells[stem] {
				p.speaks[d] += v
			}
		}
	}
	return p
}

// mended are the stems of a text; a word that no step has is read as the one it is near to.
func (k *known) mended(text string) map[string]bool {
	m := map[string]bool{}
	for _, w := range k.own.WordsOf(text) {
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

// products are the stems of verbs that a text uses as things: "the mash".
func (k *known) products(text string) (list []string) {
	before := ""
	for _, w := range strings.FieldsFunc(strings.ToLower(text), func(r rune) bool { return !unicode.IsLetter(r) }) {
		if before == "the" || before == "my" || before == "cold" || before == "cooled" || before == "your" {
			for _, v := range k.own.WordsOf(w) {
				if stem := canonical(v.Stem); k.verbs[stem] && !plainVerbs[stem] {
					list = append(list, stem)
				}
			}
		}
		before = w
	}
	return list
}

// namesThing says whether the words name a thing that any step has.
func (k *known) namesThing(own map[string]bool) bool {
	for stem := range own {
		if k.rare[stem] > 0 && !k.verbs[stem] && !plainVerbs[stem] {
			return true
		}
	}
	return false
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
