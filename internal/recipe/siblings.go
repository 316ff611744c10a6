package recipe

import "strings"

// componentWords name parts of a dish: a heading of them among others is no recipe's title.
var componentWords = set(`dough filling topping icing base sauce pastry crust glaze marinade dressing stuffing custard ganache buttercream frosting gravy garnish syrup mixture batter sponge
	meringue streusel decoration salsa drizzle coating rub method ingredients notes tips`)

// nestedTitle says that the heading at line i is the title of the first of several
// recipes under one heading of the whole document ("Year 9 recipes"): another
// heading of its level follows, each has a list and a method of its own under
// headings that say so, and neither names a part of a dish.
func (s *sorter) nestedTitle(i int) bool {
	l := s.lines[i]
	if s.part != front || l.heading == 0 || s.cur.titleLevel == 0 || l.heading <= s.cur.titleLevel || len(s.cur.items)+len(s.cur.ingredients) > 0 {
		return false
	}
	next := s.nextOfLevel(i)
	return next < len(s.lines) && s.wholeRecipe(i, next) && s.wholeRecipe(next, s.nextOfLevel(next))
}

// nextOfLevel is the next line that is a heading of the level of line i or above; the end when none is.
func (s *sorter) nextOfLevel(i int) int {
	for j := i + 1; j < len(s.lines); j++ {
		if h := s.lines[j].heading; h > 0 && h <= s.lines[i].heading {
			return j
		}
	}
	return len(s.lines)
}

// wholeRecipe says that lines from a heading up to another hold a list and then a method, each under its name.
func (s *sorter) wholeRecipe(from, to int) bool {
	title := s.lines[from]
	if _, section := partOf(title.ts); section || strings.HasPrefix(strings.ToLower(title.text), "for ") {
		return false
	}
	for _, t := range title.ts {
		if componentWords[t.text] {
			return false
		}
	}
	listed, told := false, false
	for _, l := range s.lines[from+1 : to] {
		if part, ok := partOf(l.ts); ok && isHeading(l) {
			listed = listed || part == ingredientPart
			told = told || listed && part == methodPart
		}
	}
	return listed && told
}

// aheadOfList is how many lines below one of a list tell whether the list goes on.
const aheadOfList = 4

// listGoesOn says that after line i the list of ingredients goes on: of the next
// lines at least two, and more than half, begin with an amount and tell nothing to do.
func (s *sorter) listGoesOn(i int) bool {
	if l := s.lines[i]; len(clauses(l.ts)) >= 2 && startsWithVerb(l.ts) && strings.HasSuffix(l.text, ".") && s.lines[min(i+1, len(s.lines)-1)].blank {
		return false // a paragraph of work, and below it the list of another part
	}
	seen, listed := 0, 0
	for k := i + 1; k < len(s.lines) && seen < aheadOfList; k++ {
		l := s.lines[k]
		if l.blank {
			continue
		}
		seen++
		listed += boolInt(ingredientLike(l) && !methodLike(l) && (at(l.ts, 0).kind == number || units[at(l.ts, 0).text]))
	}
	return listed >= 2 && 2*listed > seen
}
