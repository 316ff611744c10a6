package recipe

import (
	"strings"

	"plait.example/internal/practical"
)

// readList reads the lines of the ingredient list. A line such as "For the sauce"
// in the list itself names the component of those after it; a sentence among them
// is no ingredient, and goes to Unread.
func (d *draft) readList(text string, r *Recipe) {
	d.listsInProse(text)
	r.Unread = d.unread
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
		for _, part := range l.apart(text) {
			ing, ok := readIngredient(part.line)
			switch {
			case !ok:
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

// loneComponent is the component that a line names alone, "To serve" or "Filling",
// where a line that follows it begins with a figure or the words can be nothing else.
func loneComponent(l, next line) string {
	words := strings.ToLower(strings.Trim(l.text, " :*_."))
	if purposes[strings.ReplaceAll(words, " ", "-")] {
		return words
	}
	_, figure := readNumber(next.ts, 0)
	if len(wordsOf(l.ts)) == 1 && componentWords[words] && figure > 0 {
		return words
	}
	return ""
}

// isRemark says that a line of the list is a sentence about the dish: without a
// figure, of some length, closed by a full stop, with a word that only sentences have.
func isRemark(ing practical.Ingredient, l line) bool {
	return ing.Quantity == 0 && wordCount(l.ts) >= 8 && strings.HasSuffix(strings.TrimRight(l.text, " *_)"), ".") &&
		hasAny(l.ts, "is", "are", "it", "i", "i've", "you", "we", "was", "were", "can", "should", "will", "this", "these", "doesn't", "don't", "how")
}
