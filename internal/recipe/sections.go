package recipe

import "strings"

// section is a part of a recipe.
type section int

const (
	front section = iota
	ingredientPart
	methodPart
	notePart
)

// headings that name a section, by the words they begin with.
var sectionWords = []struct {
	words string
	part  section
}{
	{"ingredient", ingredientPart},
	{"you will need", ingredientPart},
	{"you'll need", ingredientPart},
	{"what you need", ingredientPart},
	{"what you will need", ingredientPart},
	{"shopping list", ingredientPart},
	{"need", ingredientPart},
	{"method", methodPart},
	{"direction", methodPart},
	{"instruction", methodPart},
	{"step", methodPart},
	{"procedure", methodPart},
	{"preparation", methodPart},
	{"making", methodPart},
	{"how to make", methodPart},
	{"what to do", methodPart},
	{"what we will do", methodPart},
	{"what we'll do", methodPart},
	{"do", methodPart},
	{"how i", methodPart},
	{"let's cook", methodPart},
	{"the method", methodPart},
	{"here's how", methodPart},
	{"what you do", methodPart},
	{"cooking instruction", methodPart},
	{"cooking method", methodPart},
	{"how to", methodPart},
	{"to make it", methodPart},
	{"note", notePart},
	{"cook's note", notePart},
	{"tip", notePart},
	{"cook's tip", notePart},
	{"top tip", notePart},
	{"recipe tip", notePart},
	{"chef's tip", notePart},
	{"handy tip", notePart},
	{"to store", notePart},
	{"to freeze", notePart},
	{"related recipe", notePart},
	{"comment", notePart},
	{"review", notePart},
	{"storage", notePart},
	{"variation", notePart},
	{"scaling", notePart},
	{"nutrition", notePart},
	{"equipment", notePart},
	{"history", notePart},
	{"side note", notePart},
	{"serving suggestion", notePart},
	{"allerg", notePart},
	{"source", notePart},
	{"skill", notePart},
	{"utensil", notePart},
	{"special equipment", notePart},
	{"kit", notePart},
	{"contribution", notePart},
}

// partOf is the section that a heading's words name.
func partOf(ts []token) (section, bool) {
	if len(ts) == 0 || len(ts) > 8 || at(ts, 1).is("time", "times") || ts[0].is("makes", "make") {
		return front, false
	}
	for _, s := range sectionWords {
		if find(ts[:min(len(ts), len(phraseStems(s.words)))], s.words) == 0 {
			return s.part, true
		}
	}
	if has(ts[:min(len(ts), 4)], "direction", "instruction") {
		return methodPart, true // "Cooking directions"
	}
	return front, false
}

// wholeSectionName says that a line is one of the names of a section and nothing more: "What to do".
func wholeSectionName(ts []token) bool {
	for _, s := range sectionWords {
		if len(phraseStems(s.words)) == len(ts) && find(ts, s.words) == 0 {
			return true
		}
	}
	return false
}

// isHeading says whether the line names a section or a component.
func isHeading(l line) bool {
	if l.blank || l.bare {
		return false
	}
	if l.heading > 0 {
		return true
	}
	n := len(l.ts)
	if n == 0 || n > 9 {
		return false
	}
	colon := strings.HasSuffix(l.text, ":")
	if _, ok := partOf(l.ts); ok && l.marker == noMarker && (colon || n <= 2 || n <= 7 && portionsOfList(l.ts) > 0 || wholeSectionName(l.ts) || n <= 5 && at(l.ts, 1).is("|") || n <= 4 && l.text == strings.ToUpper(l.text)) {
		return true
	}
	if colon && n <= 8 && l.ts[0].kind == word {
		return true
	}
	return n <= 6 && l.marker == noMarker && l.ts[0].kind == word && (l.ts[0].is("for") && (at(l.ts, 1).is("the") || n <= 3 && at(l.ts, 1).kind == word && !at(l.ts, 1).is("a", "an", "about")) && !strings.HasSuffix(l.text, ".") || capitals(l.text))
}

// capitals says whether a line of some length has no small letter.
func capitals(s string) bool { return len(s) > 3 && s == strings.ToUpper(s) && s != strings.ToLower(s) }

// component is a heading's words without "For the" and the colon.
func component(l line) string {
	s := strings.Trim(strings.TrimSpace(l.text), ":*_ ")
	low := strings.ToLower(s)
	for _, p := range []string{"for the ", "for ", "to make the ", "to make ", "ingredients for the ", "ingredients for ", "the "} {
		if strings.HasPrefix(low, p) && len(s) > len(p) && isLetterStart(s[len(p):]) {
			return s[len(p):]
		}
	}
	return s
}

func isLetterStart(s string) bool {
	return s != "" && (s[0] >= 'a' && s[0] <= 'z' || s[0] >= 'A' && s[0] <= 'Z' || s[0] >= 0x80)
}

// ingredientLike says whether a line without a heading above it looks like one of an ingredient list.
func ingredientLike(l line) bool {
	ts := l.ts
	if len(ts) > 30 && l.marker != numbered {
		return severalAmounts(ts)
	}
	if len(ts) < 2 || l.marker == numbered || isHeading(l) {
		return false
	}
	i := 0
	for at(ts, i).is("about", "approx", "~", "≈", "a", "an", "half", "(", "optional", ")", "|") {
		i++
	}
	if timeLed(ts) > 0 {
		return false
	}
	_, next := readNumber(ts, i)
	if next == i && startsWithVerb(ts) && len(ts) >= 8 && len(clauses(ts)) > 0 {
		return false
	}
	if next == i && !units[at(ts, i).text] && i == 0 {
		return l.marker == bullet && len(ts) <= 8 && !methodLike(l) || amountBehind(ts)
	}
	if u := timeUnits[at(ts, next).text]; u > 0 {
		return false
	}
	return !strings.HasSuffix(l.text, ".") || len(ts) < 10
}

// methodLike says whether a line looks like one of a method.
func methodLike(l line) bool {
	if isHeading(l) || len(l.ts) < 3 {
		return false
	}
	if l.marker == numbered && !(at(l.ts, 0).kind == number) || timeLed(l.ts) > 0 {
		return true
	}
	_, isNumber := readNumber(l.ts, 0)
	if isNumber > 0 {
		return false
	}
	v := len(clauses(presentTense(l.ts)))
	full := strings.HasSuffix(l.text, ".") || strings.HasSuffix(l.text, ";")
	return v > 0 && (full && len(l.ts) >= 4 || len(l.ts) >= 9) || len(l.ts) > 16 && v > 0 || jobWithoutStop(l.ts)
}

// timeLed is the number of tokens of a time at the head of a line that tells
// what is done in it: "10 min: Mix the flour", "(5 mins) Peel ..."; 0: none.
func timeLed(ts []token) int {
	open := boolInt(at(ts, 0).is("(", "["))
	d, next := readDuration(ts, open)
	if next == open || d.most == 0 {
		return 0
	}
	if !at(ts, next).is(":", "-", ")", "]", "|") {
		return 0
	}
	next++
	if next >= len(ts) || len(clauses(ts[next:])) == 0 {
		return 0
	}
	return next
}

// severalAmounts says that a line runs a whole list together: "25 g butter; 1 onion; 150 g rice".
func severalAmounts(ts []token) bool {
	parts := parted(ts)
	if len(parts) == 0 || !beginsAmount(parts[0], 0) {
		return false
	}
	figures := 0
	for _, p := range parts {
		_, next := readNumber(p, 0)
		figures += boolInt(next > 0 && timeUnits[at(p, next).text] == 0)
	}
	return len(parts) >= 3 && 3*figures >= 2*len(parts) && len(clauses(ts)) <= 1
}
