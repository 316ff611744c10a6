package recipe

import (
	"slices"

	"plait.example/internal/practical"
)

// A part of the dish may begin without a word that says so: an item begins with
// ingredients that nothing has used yet. It then needs nothing before it. But
// what was left must come back: the text must name it later ("the rolls", "the
// mash"). Where it does not, the two were one part after all, and the order of
// the text is kept.

// left notes that job i leaves the current thread for a part of its own.
func (l *linker) left(i int) {
	l.threads[l.cur].owes = append(l.threads[l.cur].owes, i)
	l.start = i
}

// mustJoin says that a part was left before and then not named: the next job takes it up.
func (l *linker) mustJoin(t *thread) bool {
	return slices.ContainsFunc(t.from, func(i int) bool { return l.barred[i] })
}

// withDish adds to the parts that a serving names those that were left, when it
// names as many parts of the title that no part is known by: "serve the pie with
// the peas", "serve the curry with the raita".
func (l *linker) withDish(i int, touched, refs []int) []int {
	if i != l.serving || !l.several() {
		return refs
	}
	var left []int
	for _, k := range touched {
		if len(l.threads[k].owes) > 0 && !inList(refs, k) {
			left = append(left, k)
		}
	}
	if len(left) > len(l.unheldParts(l.jobs[i].ts)) {
		return refs // it may be any of them
	}
	return append(slices.Clone(refs), left...)
}

// unheldParts is the parts of the title that the words name and that no thread is known by.
func (l *linker) unheldParts(ts []token) map[int]bool {
	parts := map[int]bool{}
	for k, t := range ts {
		if part, ok := l.titlePart[t.stem]; ok && t.kind == word && (at(ts, k-1).is("the", "and", "with") || at(ts, k-2).is("the")) && l.heldBy(t.stem) == 0 && !l.foods[t.stem] {
			parts[part] = true
		}
	}
	return parts
}

// settle finds the parts that come back without being named.
func (l *linker) settle(touched, refs []int) {
	if l.cur >= 0 && !inList(touched, l.cur) && l.start < 0 {
		t := l.threads[l.cur]
		t.owes = append(t.owes, t.from...)
	}
	for _, k := range touched {
		if !inList(refs, k) && !l.mustJoin(l.threads[k]) {
			l.unexplained = append(l.unexplained, l.threads[k].owes...)
		}
	}
}

// settleEnd finds the parts that never come back, when no serving joins them.
func (l *linker) settleEnd() {
	if len(l.threads) > 1 {
		for _, t := range l.threads {
			l.unexplained = append(l.unexplained, t.owes...)
		}
	}
}

// startsOwn says that a job begins a part of its own out of ingredients that nothing has used.
func (l *linker) startsOwn(i int, cur *thread, names map[string]bool) bool {
	j := &l.jobs[i]
	if l.barred[i] || i == l.serving || j.follows > 0 || j.kind != handsJob && j.kind != waitJob || len(j.clauses) == 0 {
		return false
	}
	if !j.first && !l.opensSentence(j) {
		return false
	}
	return !cur.vague && l.holdsOwn(cur) && l.allFresh(j, names) && l.freshObject(j) && !l.leansBack(j) && !l.samePan(j, cur)
}

// opensPart says that a job begins with "for the sauce" or "to make the sauce",
// when the list has a part of that name, and nothing of it has been made.
func (l *linker) opensPart(j *job, cur *thread) bool {
	ts := j.ts
	switch {
	case !j.first && !l.opensSentence(j):
		return false
	case at(ts, 0).is("for") && at(ts, 1).is("the", "your"):
		ts = ts[2:]
	case at(ts, 0).is("to") && at(ts, 1).is("make", "prepare") && at(ts, 2).is("the", "your"):
		ts = ts[3:]
	default:
		return false
	}
	for _, t := range ts[:min(3, len(ts))] {
		if t.kind != word {
			return false
		}
		if l.heldBy(t.stem) == 0 && l.isComponent(t.stem) && !l.samePan(j, cur) {
			return true
		}
	}
	return false
}

// isComponent says that a part of the list of ingredients has this word in its name.
func (l *linker) isComponent(s string) bool {
	return slices.ContainsFunc(l.r.Ingredients, func(ing practical.Ingredient) bool {
		return slices.ContainsFunc(tokenize(ing.Component, 0), func(t token) bool { return t.stem == s })
	})
}

// opensSentence says that a job begins at the beginning of a sentence.
func (l *linker) opensSentence(j *job) bool {
	return j.from > 0 && j.it.ts[j.from-1].is(".", ";", "!")
}

// holdsOwn says that a thread holds a food of its own: a pan of oil or water is none.
func (l *linker) holdsOwn(t *thread) bool {
	for n := range t.holds {
		if !common[n] {
			return true
		}
	}
	return false
}

// allFresh says that a job names ingredients, and nothing that is in use or has been made.
func (l *linker) allFresh(j *job, names map[string]bool) bool {
	fresh := false
	for n := range names {
		held := l.heldBy(n) > 0
		switch {
		case held && !common[n] && !l.shared[n]:
			return false
		case !held && l.foods[n]:
			fresh = true
		case !held && made[n] && theWord(j.ts, n):
			return false
		}
	}
	for _, t := range j.ts {
		if t.kind == word && l.title[t.stem] && !l.foods[t.stem] && l.titlePart[t.stem] == 0 && theWord(j.ts, t.stem) {
			return false // the dish itself
		}
	}
	return fresh
}

// ontoWords show where food goes.
var ontoWords = set("in into to onto on over with through under around from between among across at for until by inside")

// freshObject says that the first verb works on an ingredient: "fry the mince", not "fry in the oil" nor "stir in the flour".
func (l *linker) freshObject(j *job) bool {
	c := j.clauses[0]
	if contains(joining, c.verb.name) || c.verb.deed == serves || c.verb.deed == minor || c.verb.deed == lets {
		return false
	}
	for _, t := range j.it.ts[min(c.at+1, j.to):j.to] {
		if t.kind == word && l.foods[t.food()] {
			return true
		}
		if ontoWords[t.text] || t.is("it", "them", "until", ".", ";") {
			return false
		}
	}
	return false
}

// joining are verbs whose object goes to what is there already.
var joining = []string{"add", "uncover", "cover", "return", "increase", "lower", "reduce", "top", "fold", "glaze", "brush", "sprinkle", "dust", "drizzle", "scatter", "remove", "turn", "finish", "decorate", "spread", "arrange", "layer", "fill", "dot", "incorporate", "finish", "throw", "tip", "trickle", "crumble", "swirl", "dollop", "use"}

// placesNotFood may stand after "into the" and be no part of the dish.
var placesNotFood = set("oven fridge freezer grill heat hob boil middle microwave processor mixer board table sieve rack centre center blender liquidiser top bottom end ends edges edge outside inside side sides core bone stove worktop colander machine hands fingers surface refrigerator food outer large small coarse fine same")

// leansBack says that a job goes on with what came before it: "it", "the mixture", "into the bowl", "stir in".
func (l *linker) leansBack(j *job) bool {
	if hasAny(j.ts, "mixture", "everything", "remaining", "reserved", "same", "juices") || has(j.ts, "rest of the", "on top", "the pan", "the tin", "the pot") {
		return true
	}
	own := false
	for i, t := range j.ts {
		switch {
		case t.is("it", "them", "this", "these", "both") && !own:
			return true
		case t.kind == word && l.foods[t.food()]:
			own = true
		case ontoWords[t.text] && at(j.ts, i+1).is("the", "your") && !l.ownOrPlace(j.ts[i+2:]):
			return true
		}
	}
	for k, c := range j.clauses {
		if k > 0 && c.at < c.to && joinsIn(j.it.ts[c.at:min(c.to, j.to)], l.foods) {
			return true
		}
	}
	return false
}

// leansStill says that a job which names another part needs the step before all
// the same. "Them" after the part's name is that part, and "drain the potatoes" works on it alone.
func (l *linker) leansStill(j *job, refs []int) bool {
	if !j.first && !l.opensSentence(j) && meanwhile(j.ts) == "" {
		return true // "and beat in the sugar"
	}
	k := l.firstNamed(j.ts, refs)
	if k < 0 || k > 4 || l.foods[j.ts[k].food()] && !theWord(j.ts[:k+1], j.ts[k].stem) || slices.ContainsFunc(j.ts[:k], func(t token) bool { return ontoWords[t.text] }) {
		return leans(j)
	}
	rest := *j
	rest.ts = nil
	for i, t := range j.ts {
		if i <= k || !t.is("it", "them") {
			rest.ts = append(rest.ts, t)
		}
	}
	if c := j.clauses[0]; !c.verbIs("add", "return", "fold", "stir", "pour", "top", "spread", "serve", "sprinkle", "cover") && c.verb.deed != minor {
		rest.clauses = slices.Clone(j.clauses)
		rest.clauses[0].verb = verbs["chop"] // a verb that asks for nothing before it
	}
	return leans(&rest)
}

// firstNamed is the first token that names something of the threads; -1: none.
func (l *linker) firstNamed(ts []token, refs []int) int {
	for i, t := range ts {
		for _, k := range refs {
			if t.kind == word && l.threads[k].holds[t.stem] {
				return i
			}
		}
	}
	return -1
}

// fillsBare says that something is filled, and the words do not say with what: it may be any part made so far.
func fillsBare(j *job) bool {
	for _, c := range j.clauses {
		if c.verbIs("fill", "stuff") {
			return !has(upToSign(j.it.ts[c.at:j.to]), "with", "on", "in", "into")
		}
	}
	return false
}

// ownOrPlace says that the words after "into the" are an ingredient, or a place and no part of the dish.
func (l *linker) ownOrPlace(ts []token) bool {
	for _, t := range ts[:min(3, len(ts))] {
		if t.kind == word && (l.foods[t.food()] || common[t.stem] || placesNotFood[t.text]) {
			return true
		}
	}
	return false
}

// joinsIn says that a clause ends in a bare "stir in", "add", "fold them in", "pour over".
func joinsIn(ts []token, foods map[string]bool) bool {
	for k, t := range ts {
		if k > 0 && t.kind == word && foods[t.food()] {
			return false
		}
		if k > 0 && t.is("in", "over", "on") && (at(ts, k+1).kind != word || at(ts, k+1).is("and", "then")) {
			return true
		}
	}
	return ts[0].is("add", "incorporate") && !has(ts, "to a", "into a")
}

// samePan says that a job may well use the pan that the thread's food is in:
// both are at the ring and no other pan is spoken of.
func (l *linker) samePan(j *job, cur *thread) bool {
	if has(j.ts, "a pan", "a saucepan", "a frying pan", "a large pan", "a small pan", "another pan", "a wok", "a pot") {
		return false
	}
	fried := false
	for _, c := range l.jobs[cur.last].clauses {
		fried = fried || atHob(c)
	}
	if w := l.jobs[cur.last].waiting(); !fried || w != nil && w.verbIs("boil", "steam", "poach", "parboil", "blanch") || has(l.jobs[cur.last].ts, "drain") {
		return false
	}
	for _, c := range j.clauses {
		if atHob(c) && !c.verbIs("boil", "steam", "poach", "parboil", "blanch") {
			return true
		}
	}
	return false
}

// stands is the place of a thread's last wait; empty when it did not wait last.
func (l *linker) stands(k int) practical.Place {
	if w := l.jobs[l.threads[k].last].waiting(); w != nil {
		return w.place
	}
	return ""
}
