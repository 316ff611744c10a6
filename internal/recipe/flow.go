package recipe

import (
	"fmt"
	"strings"

	"plait.example/internal/practical"
)

// thread is a part of the dish on its own way: the dough, the sauce.
type thread struct {
	last      int             // its last job
	holds     map[string]bool // stems of foods and products in it
	component string
	beside    int  // the job that waited when this thread began; -1: none
	waiting   bool // its last job is a long wait
}

// knownFoods is the stems of the words that name ingredients.
func knownFoods(list []practical.Ingredient) map[string]bool {
	m := map[string]bool{}
	for _, ing := range list {
		for _, t := range tokenize(ing.Name, 0) {
			if t.kind == word && len(t.text) > 2 && !notFoods[t.text] {
				m[t.stem] = true
			}
		}
	}
	return m
}

// titleWords is the stems of the words that name the dish.
func titleWords(title string) map[string]bool {
	m := map[string]bool{}
	for _, t := range tokenize(title, 0) {
		if t.kind == word && len(t.text) > 3 && !notFoods[t.text] && verbs[t.text].name == "" {
			m[t.stem] = true
		}
	}
	return m
}

// sharedFoods is the stems that several lines of the list have: which one is meant cannot be told.
func sharedFoods(list []practical.Ingredient) map[string]bool {
	seen, shared := map[string]bool{}, map[string]bool{}
	for _, ing := range list {
		for s := range knownFoods([]practical.Ingredient{ing}) {
			shared[s] = shared[s] || seen[s]
			seen[s] = true
		}
	}
	return shared
}

// notFoods are words in names of ingredients that say nothing about which food it is.
var notFoods = set(`and or for the with fresh dried ground large small medium plain whole white black red green brown yellow hot cold warm extra virgin unsalted salted free range self raising caster
	granulated chopped sliced diced grated cut into pieces finely thinly optional few can tin good quality ripe from all purpose baby mixed little more plus about your any choice style
	easy quick best homemade simple style boneless skinless lean fat cooked raw low-fat salt pepper water oil icing powder seeds leaves juice olive vegetable sunflower baking`)

// products are words for what the cook has made.
var products = []string{
	"dough", "pastry", "sauce", "filling", "mixture", "mix", "batter", "topping", "base", "custard", "cream", "icing", "marinade", "dressing", "stuffing", "soup", "syrup", "puree", "paste", "glaze", "salad", "salsa",
	"meringue", "sponge", "cake", "crumble", "crust", "filling", "rice", "pasta", "potatoes", "mash", "gravy", "stock", "ganache", "buttercream", "patties", "burgers", "meatballs", "balls", "bechamel", "béchamel", "ragu", "curry", "bread", "rolls", "biscuits", "jelly", "coulis", "pesto", "broth", "semolina", "noodles",
}

// isProduct says whether a stem is that of a product, such as a sauce, which may be only a part of the dish.
func isProduct(s string) bool {
	for _, p := range products {
		if stem(p) == s {
			return true
		}
	}
	return false
}

// link gives the steps their order.
func link(jobs []job, r *Recipe, foods map[string]bool, serving int) {
	l := &linker{jobs: jobs, r: r, foods: foods, shared: sharedFoods(r.Ingredients), title: titleWords(r.Title), serving: serving, cur: -1}
	for i := range jobs {
		l.take(i)
	}
	l.gaps()
}

type linker struct {
	jobs    []job
	r       *Recipe
	foods   map[string]bool
	shared  map[string]bool // foods that stand in several lines of the list
	title   map[string]bool // words of the title
	threads []*thread
	cur     int // the thread that words without a name speak of
	serving int
	ovens   []int // jobs that turn the oven on and have no baking yet
}

// names is the foods and products that a job names, by stem.
func (l *linker) names(i int) map[string]bool {
	m := map[string]bool{}
	ts := l.jobs[i].ts
	for k, t := range ts {
		if t.kind == word && l.foods[t.stem] && !at(ts, k+1).is("board", "knife") {
			m[t.stem] = true
		}
	}
	for _, p := range products {
		if has(ts, p) {
			m[stem(p)] = true
		}
	}
	return m
}

// take finds which threads a job continues, joins them, and writes its After.
func (l *linker) take(i int) {
	j := &l.jobs[i]
	if j.kind == ovenJob {
		l.ovens = append(l.ovens, i)
		return
	}
	names := l.names(i)
	touched, why := l.touched(i, names)
	if i == l.serving {
		touched = nil
		for k := range l.threads {
			touched = append(touched, k)
		}
	}
	s := &l.r.Steps[i]
	for _, k := range touched {
		s.After = append(s.After, practical.After{Step: l.r.Steps[l.threads[k].last].ID})
	}
	if why != "" {
		s.Why = append(s.Why, why)
	}
	if j.wait != nil && j.wait.place == practical.AtOven {
		for _, o := range l.ovens {
			s.After = append(s.After, practical.After{Step: l.r.Steps[o].ID})
		}
		l.ovens = nil
	}
	was := -1
	if l.cur >= 0 && !inList(touched, l.cur) {
		was = l.threads[l.cur].last
	}
	l.merge(i, touched, names)
	l.threads[l.cur].beside = was
}

// merge makes one thread of those that job i continues.
func (l *linker) merge(i int, touched []int, names map[string]bool) {
	t := &thread{last: i, holds: names, component: l.jobs[i].it.component, beside: -1, waiting: longWait(l.jobs[i])}
	for _, c := range tokenize(t.component, 0) {
		if c.kind == word && len(c.text) > 2 && !notFoods[c.text] {
			t.holds[c.stem] = true
		}
	}
	if t.holds["dough"] || t.holds[stem("pastry")] {
		t.holds["dough"], t.holds[stem("pastry")] = true, true
	}
	gone := map[int]bool{}
	for _, k := range touched {
		gone[k] = true
		for n := range l.threads[k].holds {
			t.holds[n] = true
		}
	}
	var rest []*thread
	for k, old := range l.threads {
		if !gone[k] {
			rest = append(rest, old)
		}
	}
	l.threads = append(rest, t)
	l.cur = len(l.threads) - 1
}

// longWait says that a job leaves time for something else.
func longWait(j job) bool {
	if j.wait == nil || j.wait.look == practical.Stay {
		return false
	}
	if j.wait.said != nil {
		return j.wait.said.least >= 8
	}
	return usualWait(*j.wait, j.around()).least >= 8
}

// touched is the threads that job i continues, with the reason when it is not simply the step before.
func (l *linker) touched(i int, names map[string]bool) ([]int, string) {
	if len(l.threads) == 0 {
		return nil, ""
	}
	j := &l.jobs[i]
	refs := l.refers(j.ts, names)
	if k := l.inOven(j); k >= 0 && !inList(refs, k) {
		refs = append(refs, k)
	}
	if l.wholeDish(j) {
		refs = nil
		for k := range l.threads {
			refs = append(refs, k)
		}
		return refs, ""
	}
	cur := l.threads[l.cur]
	switch parallel, why := l.startsBeside(i, cur, refs, names); {
	case parallel:
		var others []int
		for _, k := range refs {
			if k != l.cur {
				others = append(others, k)
			}
		}
		return others, why
	case len(refs) > 0 && !inList(refs, l.cur) && l.named(j.ts, refs):
		if len(l.threads) > 1 && !leans(j) {
			return refs, ""
		}
	}
	if !inList(refs, l.cur) {
		if k := l.holding(cur.beside); j.first && len(refs) == 0 && k >= 0 && goesToHeat(j) && !leans(j) {
			refs = append(refs, k) // back to what waited
		}
		refs = append(refs, l.cur)
	}
	return refs, ""
}

// wholeDish says that a job speaks of the dish by its title: "the panna cottas".
func (l *linker) wholeDish(j *job) bool {
	for i, t := range j.ts {
		if t.kind == word && l.title[t.stem] && !l.foods[t.stem] && (at(j.ts, i-1).is("the", "your") || at(j.ts, i-2).is("the") && l.title[at(j.ts, i-1).stem]) && !isProduct(t.stem) {
			return true
		}
	}
	return false
}

// holding is the thread whose last job is i; -1: none.
func (l *linker) holding(i int) int {
	for k, t := range l.threads {
		if i >= 0 && t.last == i {
			return k
		}
	}
	return -1
}

// goesToHeat says that a job cooks something.
func goesToHeat(j *job) bool {
	if j.wait != nil && hotPlace(j.wait.place) {
		return true
	}
	for _, c := range j.clauses {
		if atHob(c) {
			return true
		}
	}
	return false
}

// inOven is the thread whose food a job takes out of the oven; -1: none.
func (l *linker) inOven(j *job) int {
	if !has(j.ts, "out of the oven", "from the oven", "from oven", "out of oven") {
		return -1
	}
	for k := len(l.threads) - 1; k >= 0; k-- {
		if w := l.jobs[l.threads[k].last].wait; w != nil && w.place == practical.AtOven {
			return k
		}
	}
	return -1
}

// refers is the threads that hold something the job names.
func (l *linker) refers(ts []token, names map[string]bool) []int {
	var out []int
	for k, t := range l.threads {
		for n := range t.holds {
			if names[n] && !l.shared[n] && (!common[n] || onlyOnce[n] && theWord(ts, n) && l.heldBy(n) == 1) {
				out = append(out, k)
				break
			}
		}
	}
	return out
}

// common are words that do not tell threads apart.
var common = set("mixtur mix salt pepper water oil butter flour sugar egg cream milk")

// onlyOnce are common foods that tell a thread when it alone holds them and the text says "the".
var onlyOnce = set("egg cream milk")

// theWord says that the food stands with "the" before it.
func theWord(ts []token, food string) bool {
	for i, t := range ts {
		if t.stem == food && at(ts, i-1).is("the") {
			return true
		}
	}
	return false
}

// heldBy counts the threads that hold a food.
func (l *linker) heldBy(food string) int {
	n := 0
	for _, t := range l.threads {
		n += boolInt(t.holds[food])
	}
	return n
}

// named says that one of the threads is spoken of with "the": the dough, the sauce.
func (l *linker) named(ts []token, refs []int) bool {
	for i, t := range ts {
		if !t.is("the", "your", "each", "both", "remaining") {
			continue
		}
		for d := 1; d <= 3; d++ {
			n := at(ts, i+d)
			for _, k := range refs {
				if n.kind == word && l.threads[k].holds[n.stem] && (!common[n.stem] || onlyOnce[n.stem]) {
					return true
				}
			}
		}
	}
	return false
}

// laidOver says that food goes over something: not "over a medium heat".
func laidOver(ts []token) bool {
	for i, t := range ts {
		if t.is("over") && !at(ts, i+1).is("medium", "low", "high", "a", "gentle", "moderate", "very", "medium-high", "medium-low") && !has(ts[i:min(i+4, len(ts))], "heat", "flame") {
			return true
		}
	}
	return false
}

// leans says that a job's words need the step before: "it", "add", "the mixture".
func leans(j *job) bool {
	if hasAny(j.ts, "it", "them", "mixture") || laidOver(j.ts) || has(j.ts, "add to", "add it to", "add them to", "the pan", "the pot", "the saucepan", "the skillet", "the wok", "paella pan", "the dish", "the casserole", "oven dish") {
		return true
	}
	for i, c := range j.clauses {
		if c.sentence == j.clauses[0].sentence && (c.verbIs("add", "uncover", "cover", "return", "increase", "lower", "reduce") || i == 0 && (c.verb.deed == minor || c.verbIs("stir", "pour", "top", "fold", "remove", "drain", "serve", "spread", "take"))) {
			return true
		}
	}
	return false
}

func inList(list []int, x int) bool {
	for _, v := range list {
		if v == x {
			return true
		}
	}
	return false
}

// startsBeside says whether a job can be done beside the thread before it.
func (l *linker) startsBeside(i int, cur *thread, refs []int, names map[string]bool) (bool, string) {
	j := &l.jobs[i]
	prev := &l.jobs[cur.last]
	switch w := meanwhile(j.ts); {
	case w != "":
		return true, "'" + w + "': beside what waits"
	case j.first && j.it.component != "" && prev.it.component != j.it.component && !refersTo(refs, l.cur):
		return true, fmt.Sprintf("a part of its own: %s", strings.ToLower(j.it.component))
	case i == l.serving || j.wait != nil && len(j.clauses) == 1:
		return false, ""
	case freshBowl(j.ts):
		return !refersTo(refs, l.cur) || cur.waiting, "a bowl or pan of its own"
	case makes(j) && cur.waiting && !leans(j):
		return true, "begins something new while the step before waits"
	case cur.waiting && j.first && j.kind == handsJob && has(j.ts, "set aside") && !leans(j) && j.clauses[0].verbIs("combine", "mix", "whisk", "blend", "chop", "peel", "slice"):
		return true, "made and set aside, while the step before waits"
	case cur.waiting && longWait(*prev) && j.first && freshOnly(l, j, names) && !leans(j):
		return true, "only new ingredients, while the step before waits"
	}
	return false, ""
}

func refersTo(refs []int, k int) bool { return inList(refs, k) }

// meanwhile is the word that says a job runs beside another.
func meanwhile(ts []token) string {
	for i, t := range ts {
		switch {
		case t.is("meanwhile"), t.is("meantime"):
			return t.text
		case t.is("while", "whilst") && i <= 1 && !has(ts[i:min(i+5, len(ts))], "still", "stirring", "whisking", "beating", "you"):
			return t.text
		case t.is("while", "whilst") && hasAny(ts[i:min(i+8, len(ts))], "cooking", "baking", "simmering", "chilling", "proving", "rising", "resting", "cooling", "cooks", "bakes", "simmers", "chills", "cools", "rests", "rises", "frying", "boiling", "boils", "wait", "waiting", "soaking"):
			return t.text
		}
	}
	return ""
}

func hasAny(ts []token, words ...string) bool {
	for _, t := range ts {
		if t.is(words...) {
			return true
		}
	}
	return false
}

// freshBowl says "in another bowl", "in a separate pan".
func freshBowl(ts []token) bool {
	return has(ts, "another bowl", "separate bowl", "second bowl", "another pan", "separate pan", "second pan", "another saucepan", "different bowl", "a clean bowl", "separate saucepan", "another pot", "separate shallow dish", "small bowl", "medium bowl", "separate large bowl", "another large bowl")
}

// makes says that a job begins with making something: "make the sauce", "for the topping".
func makes(j *job) bool {
	ts := j.ts
	for len(ts) > 0 && (adverbs[ts[0].text] || ts[0].is("to", ",")) {
		ts = ts[1:]
	}
	return len(ts) > 2 && (ts[0].is("make", "prepare") || ts[0].is("for") && ts[1].is("the"))
}

// freshOnly says that a job names ingredients, and none that is already in use.
func freshOnly(l *linker, j *job, names map[string]bool) bool {
	fresh := 0
	for _, t := range j.ts {
		if t.kind == word && l.title[t.stem] && !l.foods[t.stem] {
			return false // the dish itself
		}
	}
	for n := range names {
		held := false
		for _, t := range l.threads {
			held = held || t.holds[n]
		}
		if held && !common[n] {
			return false
		}
		if l.foods[n] && !held {
			fresh++
		}
	}
	return fresh > 0
}

// gaps writes the gaps that food sets: cooling before icing, pastry resting, meat resting.
func (l *linker) gaps() {
	index := map[string]int{}
	for i, s := range l.r.Steps {
		index[s.ID] = i
	}
	for i := range l.r.Steps {
		s := &l.r.Steps[i]
		for k := range s.After {
			p := index[s.After[k].Step]
			if i == l.serving {
				continue
			}
			if least, why := gapBetween(&l.jobs[p], &l.jobs[i]); least > 0 {
				s.After[k].Least = least
				s.Why = append(s.Why, why)
				s.Doubt = max(s.Doubt, 0.3)
			}
		}
	}
}

// gapBetween is the least minutes that food asks for between two jobs, 0 for none. Common practice, no source.
func gapBetween(p, j *job) (int, string) {
	baked := p.wait != nil && p.wait.place == practical.AtOven
	switch {
	case p.wait != nil && hotPlace(p.wait.place) && whenCold(j.ts):
		return 30, "'when cold': at least 30 minutes to cool, common practice"
	case (baked && hasAny(j.ts, "icing", "frosting", "buttercream", "fill", "sandwich", "ganache") || baked && has(j.ts, "whipped cream")) && !has(j.ts, "cool"):
		return 30, "cool at least 30 minutes before icing or filling: common practice"
	case baked && has(j.ts, "carve") || baked && namesRawMeat(p.ts) && has(j.ts, "slice"):
		return 10, "rest meat before carving: common practice"
	case p.wait == nil && has(p.ts, "pastry", "rub in", "breadcrumbs") && has(p.ts, "dough", "pastry", "together") && rolls(j) && has(p.ts, "butter", "fat", "margarine", "lard"):
		return 15, "let pastry rest at least 15 minutes before rolling: common practice"
	}
	return 0, ""
}

func rolls(j *job) bool {
	for _, c := range j.clauses {
		if c.verbIs("roll") {
			return true
		}
	}
	return false
}

// whenCold says that a job begins "when cold", "once cooled".
func whenCold(ts []token) bool {
	return at(ts, 0).is("when", "once", "after") && has(ts[:min(len(ts), 6)], "cold", "cool", "completely cool")
}
