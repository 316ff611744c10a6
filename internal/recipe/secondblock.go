package recipe

// A text may go on, after a whole recipe, with a title, a list and a method
// again: a second recipe, or a part of the first dish that is told last
// ("Dumplings" below a stew). It is a part when the words tie the two: the first
// speaks of it, or its method speaks of the first.

// blockAhead is how many lines of a second block are looked at.
const blockAhead = 40

// ofSameDish says that the title at line i opens a part of the recipe at hand.
func (s *sorter) ofSameDish(i int) bool {
	l := s.lines[i]
	if s.cur.title == "" || len(l.ts) > 5 || l.heading > 0 && l.heading < s.cur.titleLevel || len(s.cur.items) == 0 {
		return false
	}
	name := lastNoun(l.ts)
	if name == "" || s.ownPortions(i) {
		return false
	}
	if s.firstNames(name) {
		return true
	}
	return s.blockNames(i, lastNoun(tokenize(s.cur.title, 0)))
}

// ownPortions says that the block below line i says how many it serves or makes, as a recipe of its own does.
func (s *sorter) ownPortions(i int) bool {
	seen := 0
	for k := i + 1; k < len(s.lines) && seen < 4; k++ {
		if s.lines[k].blank {
			continue
		}
		seen++
		ts := s.lines[k].ts
		if _, ok := portions(ts); ok && hasAny(ts[:min(len(ts), 2)], "serves", "servings", "serving", "feeds", "for") {
			return true
		}
	}
	return false
}

// firstNames says that the title or the method at hand speaks of a part by its
// name: "add the dumplings", "serve with the salsa".
func (s *sorter) firstNames(name string) bool {
	for _, t := range tokenize(s.cur.title, 0) {
		if t.stem == name {
			return true
		}
	}
	for _, it := range s.cur.items {
		for k, t := range it.ts {
			if t.kind == word && t.stem == name && (at(it.ts, k-1).is("the", "your", "with", "make", "prepared") || at(it.ts, k+1).is("(", "recipe", "below")) {
				return true
			}
		}
	}
	return false
}

// blockNames says that the method of the block below line i speaks of the first
// dish: "drop them into the stew".
func (s *sorter) blockNames(i int, dish string) bool {
	if dish == "" {
		return false
	}
	for k := i + 1; k < min(i+blockAhead, len(s.lines)); k++ {
		for n, t := range s.lines[k].ts {
			if t.kind == word && t.stem == dish && at(s.lines[k].ts, n-1).is("the", "your") && methodLike(s.lines[k]) {
				return true
			}
		}
	}
	return false
}

// lastNoun is the stem of the last word of a title before "for", "with" and the like; empty: none of some length.
func lastNoun(ts []token) string {
	last := ""
	for _, t := range ts {
		if last != "" && t.is("for", "with", "in", "on", "and", "&", "(", ",") {
			break
		}
		if t.kind == word && len(t.text) > 3 && !notFoods[t.text] {
			last = t.stem
		}
	}
	return last
}

// partBlock enters a part of the dish that has a list and a method of its own.
func (s *sorter) partBlock(l line) {
	s.part, s.comp, s.open, s.bare = ingredientPart, component(l), false, false
	s.block = s.comp
	s.heads = nil
}
