package recipe

import "plait.example/internal/practical"

// titleParts says of each word of a title in which part of it the word stands:
// "Beef burgers in milk rolls with slaw" has three. The first is the dish.
func titleParts(title string) map[string]int {
	parts, n := map[string]int{}, 0
	for _, t := range tokenize(title, 0) {
		switch {
		case partsTitle(t):
			n++
		case t.kind == word:
			if _, ok := parts[t.stem]; !ok {
				parts[t.stem] = n
			}
		}
	}
	return parts
}

// partsTitle says that a word stands between parts of a title.
func partsTitle(t token) bool { return t.is("with", "and", "in", "on", "&", ",", "+") }

// compounds are the modifiers of ingredients whose last word is also the name of
// something made: "soy sauce", "curry paste".
func compounds(list []practical.Ingredient) map[string]map[string]bool {
	m := map[string]map[string]bool{}
	for _, ing := range list {
		ts := tokenize(ing.Name, 0)
		for i, t := range ts {
			if i == 0 || !t.is("sauce", "paste", "puree", "purée", "dressing", "syrup") || ts[i-1].kind != word || ts[i-1].is("white") {
				continue
			}
			if m[t.stem] == nil {
				m[t.stem] = map[string]bool{}
			}
			m[t.stem][ts[i-1].stem] = true
		}
	}
	return m
}

// bought says that token i is the last word of an ingredient, such as "soy
// sauce" or "pastry cream", and is not what that word alone would mean.
func (l *linker) bought(ts []token, i int) bool {
	return l.compounds[ts[i].stem][at(ts, i-1).stem] || ts[i].is("pastry") && at(ts, i+1).is("cream", "brush", "cutter", "cutters", "board")
}

// namesProduct says that a product of one word is named, and not only inside the name of something bought.
func (l *linker) namesProduct(ts []token, product string) bool {
	want := phraseStems(product)[0]
	for i, t := range ts {
		if t.kind == word && t.stem == want && !l.bought(ts, i) {
			return true
		}
	}
	return false
}

// learn gives the current thread the names that job i gives to what it makes:
// "shape into four burgers", "chill the slaw".
func (l *linker) learn(i int) {
	j, t := &l.jobs[i], l.threads[l.cur]
	if hasAny(j.ts, "make", "prepare", "making", "preparing", "start", "begin") {
		for s := range productStems {
			if beingMade(j.ts, s) {
				t.holds[s] = true
			}
		}
	}
	for k, w := range j.ts {
		if w.is("into", "in", "cut") {
			if n := l.pieces(j.ts[k+1:]); n != "" {
				t.holds[n], l.learned[n] = true, true
			}
		}
		if part, ok := l.titlePart[w.stem]; ok && w.kind == word && l.title[w.stem] && !l.foods[w.stem] && (at(j.ts, k-1).is("the", "your", "into") || part > 0) && l.heldBy(w.stem) == 0 {
			t.holds[w.stem], l.learned[w.stem] = true, true
		}
	}
	if w := j.waiting(); w != nil && !j.first {
		if n := restingNoun(j.it.ts[w.at:min(w.to, j.to)]); n != "" && !l.foods[n] && l.heldBy(n) == 0 {
			t.holds[n], l.learned[n] = true, true
		}
	}
}

// restingNoun is the stem of the noun in "chill the raita", "leave the compote to cool"; empty: none.
func restingNoun(ts []token) string {
	for k := 1; k < min(3, len(ts)); k++ {
		n := at(ts, k+1)
		if !at(ts, k).is("the") || n.kind != word || len(n.text) < 3 || placesNotFood[n.text] || notFoods[n.text] || n.is("mixture", "pan", "tin", "bowl", "lid", "heat") {
			continue
		}
		if next := at(ts, k+2); next.kind != word || ontoWords[next.text] || next.is("to", "aside", "while", "and", "well") {
			return n.stem
		}
	}
	return ""
}

// pieces is the stem of the noun in "four burgers", "six flat cakes"; empty: none.
func (l *linker) pieces(ts []token) string {
	if len(ts) < 2 || ts[0].kind != number && numberWords[ts[0].text] < 2 {
		return ""
	}
	for k := 1; k < min(4, len(ts)); k++ {
		t, next := ts[k], at(ts, k+1)
		if t.kind != word || timeUnits[t.text] > 0 || t.is("cm", "mm", "inch", "g", "kg", "ml", "batches", "bowls", "pans", "parts", "pieces", "halves", "quarters", "equal", "portions", "dishes", "slices", "places", "plates", "strips", "sections") && !t.is("equal") {
			return ""
		}
		if len(t.text) > 3 && t.text[len(t.text)-1] == 's' && (next.kind != word || ontoWords[next.text] || next.is("and", "or", "about", "then")) {
			return t.stem
		}
	}
	return ""
}

// speaksOfUnknown says that a job works on a thing the cook has made, such as
// "the pastry", that no thread is known to hold. It may come from any of them:
// too much order is safer than too little.
func (l *linker) speaksOfUnknown(j *job, names map[string]bool) bool {
	for n := range names {
		if made[n] && l.heldBy(n) == 0 && theWord(j.ts, n) && !beingMade(j.ts, n) && !l.becomes(j, n) {
			return true
		}
	}
	return false
}

// becomes says that a job speaks of what it makes itself: "stir until the sauce
// thickens", or, after the work in the same item, "leave the sauce to cool".
func (l *linker) becomes(j *job, n string) bool {
	if w := j.waiting(); w != nil && !hotPlace(w.place) && !j.first && meanwhile(j.ts) == "" && l.jobs[l.threads[l.cur].last].it == j.it {
		return true
	}
	until := false
	for _, t := range j.ts {
		until = until && t.kind == word || t.is("until", "till")
		if t.kind == word && t.stem == n {
			return until
		}
	}
	return false
}

// wholeDish says that a job speaks of the dish by its title: "the panna cottas".
func (l *linker) wholeDish(j *job) bool {
	for i, t := range j.ts {
		if t.kind == word && l.title[t.stem] && !l.foods[t.stem] && l.titlePart[t.stem] == 0 && !(l.several() && l.heldBy(t.stem) > 0) && (at(j.ts, i-1).is("the", "your") || at(j.ts, i-2).is("the") && l.title[at(j.ts, i-1).stem]) && (!isProduct(t.stem) || l.unheldDish(t.stem)) && !beingMade(j.ts, t.stem) {
			return true
		}
	}
	return false
}

// unheldDish says that a product is what the first of several parts of the title names, and no part is known by it yet.
func (l *linker) unheldDish(n string) bool {
	return l.several() && l.heldBy(n) == 0 && n == l.dish
}

// several says that the title names several parts of the dish.
func (l *linker) several() bool {
	for _, n := range l.titlePart {
		if n > 0 {
			return true
		}
	}
	return false
}

// refers is the threads that hold something the job names.
func (l *linker) refers(ts []token, names map[string]bool) []int {
	var out []int
	many := theWord(ts, stem("vegetables")) || theWord(ts, "veg") || theWord(ts, "fruit")
	for k, t := range l.threads {
		if many && t.ready {
			out = append(out, k)
			continue
		}
		for n := range t.holds {
			if names[n] && !l.shared[n] && (!common[n] || l.heldBy(n) == 1 && (onlyOnce[n] && theWord(ts, n) || preparedFood(ts, n))) {
				out = append(out, k)
				break
			}
		}
	}
	return out
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

// mainThread is the thread that is the dish itself when the title names several
// parts: the one that holds a food of the title's first part ("chickpea curry
// with rice") or, if all or none do, the only one that has been cooked; -1: it cannot be told.
func (l *linker) mainThread() int {
	if !l.several() {
		return -1
	}
	main := -1
	for k, t := range l.threads {
		for n, part := range l.titlePart {
			if part == 0 && t.holds[n] && l.foods[n] && !l.shared[n] {
				if main >= 0 && main != k {
					return -1
				}
				main = k
			}
		}
	}
	return main
}
