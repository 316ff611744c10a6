package match

import (
	"cmp"
	"math"
	"slices"
	"strings"
	"unicode"

	"plait.example/internal/act"
	"plait.example/internal/practical"
)

// known is a practical as the matcher looks at it.
type known struct {
	steps  []stepWords
	dishes []dishWords
	rare   map[string]float64   // how much a stem tells, by the number of steps that have it
	verbs  map[string]bool      // stems that name what is done
	tells  map[string][]float64 // how much a stem speaks for each dish
	stems  []string             // sorted, for misspelt words
	own    act.Known            // words of the recipes
}

// dishWords is a dish: its steps are steps[from:to], the last of them its serving.
type dishWords struct {
	letter   string
	name     map[string]bool // stems
	from, to int
}

// stepWords is a step, or a dish's serving, as words and kinds of act.
type stepWords struct {
	id        string
	dish      int
	component string
	words     map[string]float64 // stems with their weight in this step
	total     float64
	many      bool    // it names two things or more
	onlyNamed bool    // it names no thing that is not in the dish's name
	things    float64 // of the words that name things and are not in the dish's name
	telling   float64 // of the words that are not in the dish's name
	kinds     map[act.Kind]bool
	ends      act.Kind // kind of act that begins its wait; empty: no wait
	wait      *practical.Wait
	celsius   int
	setUp     bool
	alone     bool // the only step of its dish that ends in such a wait
	serve     bool
	oven      bool         // it speaks of the oven
	core      bool         // its core temperature, or that it is cooked through, is spoken of
	before    map[int]bool // steps that must come before it, however far back
}

// Weights of the words about a step that are not its own text.
const (
	ofComponent = 0.5
	ofDishName  = 0.3
	ofCheck     = 0.25
	leaning     = 0.55
	ofPlainVerb = 0.35
)

var waitKind = map[practical.Place]act.Kind{
	practical.AtOven: act.PutIn, practical.AtFridge: act.Chill, practical.AtFreezer: act.Freeze, practical.AtWarm: act.Prove, practical.AtHob: act.Hob,
	practical.AtGrill: act.Grill, practical.AtMicrowave: act.Microwave, practical.AtSide: act.Rest,
}

// learn reads the practical's steps.
func learn(p *practical.Practical) *known {
	k := &known{rare: map[string]float64{}, verbs: map[string]bool{}, own: wordsOf(p)}
	for d := range p.Dishes {
		dish := &p.Dishes[d]
		dw := dishWords{letter: dish.Letter, name: k.stemsOf(dish.Name), from: len(k.steps)}
		for i := range dish.Steps {
			s := k.readStep(&dish.Steps[i], d, dw.name)
			if i > 0 && k.leansOn(dish.Steps[i].Text) {
				s.lean(&k.steps[len(k.steps)-1])
			}
			k.steps = append(k.steps, s)
		}
		k.steps = append(k.steps, k.readServe(dish, d, dw.name))
		dw.to = len(k.steps)
		k.dishes = append(k.dishes, dw)
		k.order(dish, dw)
		k.only(dw)
		for _, s := range dish.Steps {
			for _, w := range k.own.WordsOf(s.Text) {
				k.verbs[canonical(w.Stem)] = k.verbs[canonical(w.Stem)] || w.Verb
			}
		}
	}
	k.weigh()
	k.speak()
	return k
}

// wordsOf are the words of the recipes, which need no mending; nil: none is there.
func wordsOf(p *practical.Practical) act.Known {
	if p == nil {
		return nil
	}
	var texts []string
	for i := range p.Dishes {
		d := &p.Dishes[i]
		texts = append(texts, d.Name, d.Serve.How)
		for _, ing := range d.Ingredients {
			texts = append(texts, ing.Name)
		}
		for k := range d.Steps {
			texts = append(texts, d.Steps[k].Text, d.Steps[k].Check)
		}
	}
	return act.KnownOf(texts...)
}

// stemsOf are the canonical stems of a text.
func (k *known) stemsOf(text string) map[string]bool {
	m := map[string]bool{}
	for _, w := range k.own.WordsOf(text) {
		m[canonical(w.Stem)] = true
	}
	return m
}

func (k *known) readStep(s *practical.Step, dish int, name map[string]bool) stepWords {
	w := stepWords{id: s.ID, dish: dish, component: s.Component, words: map[string]float64{}, kinds: map[act.Kind]bool{}, wait: s.Wait, setUp: s.SetUp}
	for stem := range name {
		w.words[stem] = ofDishName
	}
	for stem := range k.stemsOf(s.Check) {
		w.words[stem] = max(w.words[stem], ofCheck)
	}
	for stem := range k.stemsOf(s.Component) {
		w.words[stem] = max(w.words[stem], ofComponent)
	}
	for stem := range k.stemsOf(s.Text) {
		w.words[stem] = 1
	}
	for _, a := range k.own.Read(s.Text) {
		if !a.Implied && !(a.Kind == act.Ready && a.Verb == "line" && w.kinds[act.Shape]) { // "roll out the pastry and line the tins"
			w.kinds[a.Kind] = true
		}
		for _, h := range a.Heats {
			w.celsius = max(w.celsius, h.Celsius)
		}
	}
	w.oven = spokenOf(s.Text, "oven")
	w.core = spokenOf(s.Text+" "+s.Check, "75", "core", "juices", "cooked through")
	if s.Wait != nil {
		w.ends = waitKind[s.Wait.Place]
		if w.ends == act.Rest {
			for _, kind := range []act.Kind{act.Cool, act.Marinate, act.Soak, act.Chill, act.Prove} {
				if w.kinds[kind] {
					w.ends = kind
				}
			}
		}
		w.kinds[w.ends] = true
		w.celsius = max(w.celsius, s.Wait.Celsius)
	}
	return w
}

// leansOn says whether a step speaks of what the step before worked on: "Drain.", "Cook it until soft".
func (k *known) leansOn(text string) bool {
	list := k.own.WordsOf(text)
	for _, w := range strings.FieldsFunc(strings.ToLower(text), func(r rune) bool { return !unicode.IsLetter(r) }) {
		if w == "it" || w == "them" || w == "both" {
			return true
		}
	}
	foods := 0
	for _, a := range k.own.Read(text) {
		foods += len(a.Objects)
	}
	return len(list) < 3 || foods == 0
}

// lean takes over the words of the step before, less than said.
func (w *stepWords) lean(before *stepWords) {
	for stem, weight := range before.words {
		w.words[stem] = max(w.words[stem], weight*leaning)
	}
}

func spokenOf(text string, words ...string) bool {
	text = strings.ToLower(text)
	return slices.ContainsFunc(words, func(w string) bool { return strings.Contains(text, w) })
}

func (k *known) readServe(d *practical.Dish, dish int, name map[string]bool) stepWords {
	w := stepWords{id: d.Letter + "/serve", dish: dish, serve: true, words: map[string]float64{}, kinds: map[act.Kind]bool{act.Serve: true, act.Plate: true, act.Decorate: true}}
	for stem := range k.stemsOf(d.Serve.How) {
		w.words[stem] = 1
	}
	for stem := range name {
		w.words[stem] = max(w.words[stem], ofDishName)
	}
	w.words["serv"] = 1
	return w
}

// order notes for each step of a dish all that must come before it.
func (k *known) order(dish *practical.Dish, dw dishWords) {
	index := map[string]int{}
	for i := range dish.Steps {
		j := dw.from + i
		index[dish.Steps[i].ID] = j
		k.steps[j].before = map[int]bool{}
		after := dish.Steps[i].After
		if after == nil && i > 0 {
			after = []practical.After{{Step: dish.Steps[i-1].ID}}
		}
		for _, a := range after {
			if b, ok := index[a.Step]; ok {
				k.steps[j].before[b] = true
				for c := range k.steps[b].before {
					k.steps[j].before[c] = true
				}
			}
		}
	}
	last := &k.steps[dw.to-1]
	last.before = map[int]bool{}
	for j := dw.from; j < dw.to-1; j++ {
		last.before[j] = !k.steps[j].setUp
	}
}

// plainVerbs say little of which step is meant, however few steps have them.
var plainVerbs = func() map[string]bool {
	m := map[string]bool{}
	for _, w := range act.WordsOf("take put place add make leave let get keep use turn bring stand check remove start return continue finish prepare cook heat start go work begin amount mixture large small bowl pan minute") {
		m[canonical(w.Stem)] = true
	}
	return m
}()

// only marks the steps whose kind of wait comes once in the dish.
func (k *known) only(dw dishWords) {
	count := map[act.Kind]int{}
	for j := dw.from; j < dw.to; j++ {
		count[k.steps[j].ends]++
	}
	for j := dw.from; j < dw.to; j++ {
		k.steps[j].alone = k.steps[j].ends != "" && count[k.steps[j].ends] == 1
	}
}

// weigh sets how much each stem tells: log of the steps by those that have it.
func (k *known) weigh() {
	in := map[string]float64{}
	for _, s := range k.steps {
		for stem, w := range s.words {
			in[stem] += min(1, w+0.2)
		}
	}
	for stem, n := range in {
		k.rare[stem] = math.Log(1 + float64(len(k.steps)+1)/(n+0.5))
		if plainVerbs[stem] {
			k.rare[stem] *= ofPlainVerb
		}
		k.stems = append(k.stems, stem)
	}
	slices.Sort(k.stems)
	for i := range k.steps {
		k.weighStep(&k.steps[i])
	}
}

// weighStep sums what a step's own words tell.
func (k *known) weighStep(s *stepWords) {
	named, count := 0.0, 0
	for _, stem := range sorted(s.words) {
		if s.words[stem] < 1 {
			continue
		}
		rare := k.rare[stem]
		s.total += rare
		switch inName := k.dishes[s.dish].name[stem]; {
		case inName && !k.verbs[stem]:
			named += rare
		case !inName:
			s.telling += rare
			if !k.verbs[stem] {
				s.things += rare
				count++
			}
		}
	}
	s.many = count > 1
	if s.things == 0 && named > 0 {
		s.things, s.onlyNamed = named, true
	}
}

// sorted are the keys of a map in their order, so that sums are the same at every run.
func sorted[K cmp.Ordered, V any](m map[K]V) []K {
	keys := make([]K, 0, len(m))
	for key := range m {
		keys = append(keys, key)
	}
	slices.Sort(keys)
	return keys
}

// speak sets how much each stem speaks for each dish: the more, the fewer
// dishes have it; twice as much when it is in the dish's name.
func (k *known) speak() {
	k.tells = map[string][]float64{}
	for _, stem := range k.stems {
		in, count := make([]float64, len(k.dishes)), 0
		if k.verbs[stem] {
			continue
		}
		for _, s := range k.steps {
			if s.words[stem] >= ofComponent && in[s.dish] == 0 {
				in[s.dish] = 1
				count++
			}
		}
		for d := range k.dishes {
			if k.dishes[d].name[stem] {
				if in[d] == 0 {
					count++
				}
				in[d] = 2
			}
		}
		for d := range in {
			in[d] *= math.Log(float64(len(k.dishes)) / float64(max(1, count)))
		}
		k.tells[stem] = in
	}
}
