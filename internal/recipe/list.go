package recipe

import (
	"strings"
	"unicode"

	"plait.example/internal/practical"
)

// readList reads the lines of the ingredient list. A line such as "For the sauce"
// in the list itself names the component of those after it; a sentence among them
// is no ingredient, and goes to Unread.
func (d *draft) readList(text string, r *Recipe) {
	listed := len(d.ingredients) > 0
	d.listsInProse(text)
	if !listed {
		d.foodsInProse(text)
	}
	r.Unread = d.unread
	columns := inColumns(d.ingredients)
	heading, under := "", "" // a component named in the list, and the one of the lines' own heading
	var named []string       // headings, as they are written
	for i, l := range d.ingredients {
		if l.component != under {
			heading, under = "", l.component
		}
		name := componentLine(l.line)
		if name == "" && i+1 < len(d.ingredients) {
			name = loneComponent(l.line, d.ingredients[i+1].line)
		}
		if name != "" {
			heading = name
			named = append(named, l.line.text)
			continue
		}
		named = append(named, l.component)
		for _, part := range l.apart(text, columns) {
			ing, ok := readIngredient(part.line)
			switch {
			case !ok:
				if strings.IndexFunc(part.line.text, unicode.IsLetter) >= 0 {
					r.Unread = append(r.Unread, part.line.text)
				}
			case isRemark(ing, part.line):
				r.Unread = append(r.Unread, part.line.text)
			default:
				ing.Component = part.component
				if heading != "" && part.component == under {
					ing.Component = heading
				}
				r.Ingredients = append(r.Ingredients, ing)
			}
		}
	}
	for _, n := range named {
		if n != "" && !headsAny(n, r.Ingredients) && !contains(r.Unread, n) {
			r.Unread = append(r.Unread, n)
		}
	}
}

// headsAny says that one of the ingredients stands under a heading.
func headsAny(heading string, all []practical.Ingredient) bool {
	for _, ing := range all {
		if ing.Component != "" && strings.Contains(heading, ing.Component) {
			return true
		}
	}
	return false
}

// componentLine is the component that a line of the list only names: "For the sauce:", "For the base".
func componentLine(l line) string {
	ts := l.ts
	if len(ts) < 2 || len(ts) > 6 || !ts[0].is("for") || hasAny(ts, "dusting", "frying", "greasing", "serving", "brushing", "decoration", "garnish", "rolling", "coating", "glazing") {
		return ""
	}
	for i, t := range ts {
		if t.kind != word && !(i == len(ts)-1 && t.is(":")) {
			return ""
		}
	}
	if !ts[1].is("the") && !ts[len(ts)-1].is(":") {
		return ""
	}
	return component(l)
}

// purposes are lines that say what those below them are for.
var purposes = set("to-serve to-garnish to-decorate to-finish to-accompany to-coat to-glaze to-assemble to-top")

// partWords are words that alone on a line of a list name a part of the dish, and
// elsewhere may stand in the name of a dish.
var partWords = set("crumble fruit cake biscuit vegetables meatballs burgers coating custard")

// loneComponent is the component that a line names alone, "To serve" or "Filling",
// where a line that follows it begins with a figure or the words can be nothing else.
func loneComponent(l, next line) string {
	name := strings.Trim(l.text, " :*_.")
	words := strings.ToLower(name)
	if purposes[strings.ReplaceAll(words, " ", "-")] {
		return name
	}
	_, figure := readNumber(next.ts, 0)
	if len(wordsOf(l.ts)) == 1 && (componentWords[words] || partWords[words]) && figure > 0 {
		return name
	}
	return ""
}

// isRemark says that a line of the list is no ingredient: a sentence about the dish,
// without a figure, of some length, closed by a full stop, with a word that only
// sentences have; what to bring besides food; the head of a table; a line of kit or notes with its name before it.
func isRemark(ing practical.Ingredient, l line) bool {
	if len(l.ts) > 2 && l.ts[1].is(":") {
		if part, named := partOf(l.ts[:1]); named && part == notePart {
			return true // "Equipment: a bowl, a sieve"
		}
	}
	if ing.Quantity == 0 && wordCount(l.ts) <= 6 && hasAny(l.ts, "quantity", "amount", "ingredient", "ingredients") {
		return true // the head of a table
	}
	if ing.Quantity == 0 && hasAny(l.ts, "container", "tupperware", "apron", "lunchbox") || hasAny(l.ts, "lidded") {
		return true
	}
	return ing.Quantity == 0 && wordCount(l.ts) >= 8 && strings.HasSuffix(strings.TrimRight(l.text, " *_)"), ".") &&
		hasAny(l.ts, "is", "are", "it", "i", "i've", "you", "we", "was", "were", "can", "should", "will", "this", "these", "doesn't", "don't", "how")
}
