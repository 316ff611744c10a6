package recipe

import "plait.example/internal/ingredient"

// Old books, letters and cards give their amounts inside the method: "Take half
// a pound of flour, ...", "rub 4 oz of butter into the flour". Where a recipe
// has no list, its foods are taken from there; the method keeps its words.

// takesFirst says that the first sentence of a method only names what to take:
// "Take four slices of bread, two ounces of butter and a pint of milk."
func takesFirst(ts []token) bool {
	if at(ts, 0).is("you", "you'll") && hasAny(ts[:min(4, len(ts))], "want", "have", "bring", "use") {
		return len(clauses(ts)) <= 1
	}
	return at(ts, 0).is("take", "get", "buy", "have", "bring") && len(clauses(ts)) <= 1 && !has(ts, "boil", "simmer", "to room", "together")
}

// mostFoods is the most foods that are taken from a method.
const mostFoods = 40

// foodsInProse finds amounts with their foods in the method of a draft without a list.
func (d *draft) foodsInProse(text string) {
	seen := map[string]bool{}
	for _, l := range d.ingredients {
		if ing, ok := readIngredient(l.line); ok {
			seen[ing.Name] = true
		}
	}
	for _, it := range d.items {
		for i := 0; i < len(it.ts) && len(d.ingredients) < mostFoods; i++ {
			next := amountOfFood(text, it.ts, i)
			if next == i {
				continue
			}
			l := line{start: it.ts[i].start, end: it.ts[next-1].end, ts: it.ts[i:next]}
			l.text = text[l.start:l.end]
			if ing, ok := readIngredient(l); ok && !seen[ing.Name] {
				seen[ing.Name] = true
				d.ingredients = append(d.ingredients, listed{line: l})
			}
			i = next - 1
		}
	}
}

// amountOfFood is the token after an amount and its food that begin at i; i when none do.
func amountOfFood(text string, ts []token, i int) int {
	prev := at(ts, i-1)
	if prev.kind == number || prev.is("every", "each", "per", "no", "-", "/", "mark", "gas", "step") {
		return i
	}
	_, j := readSpan(ts, i)
	article := j == i && ts[i].is("a", "an")
	if article {
		j = i + 1
	}
	if j == i {
		return i
	}
	for at(ts, j).is("large", "small", "good", "heaped", "level", "rounded", "quarter", "of", "a", "an", "half", "generous", "scant") && j < i+5 {
		j++
	}
	unit := units[at(ts, j).text] && !at(ts, j).is("inch", "inches", "cm", "mm", "m", "slice", "pieces", "piece", "sheet", "sheets", "pan", "pots", "pot", "head", "leaf", "leaves", "fillet", "glass", "ring", "strip", "strips", "bowl", "box", "bag", "balls", "ball", "dash", "drop", "drops") || at(ts, j).is("cupful", "teacupful", "breakfastcupful", "wineglassful", "gill", "cupfuls", "teacup")
	if article && !unit {
		return i
	}
	end := foodEnd(ts, j+boolInt(unit), unit)
	if end == j+boolInt(unit) {
		return i
	}
	if unit {
		return end
	}
	if prev.is("into", "in", "at", "about", "for", "the", "other", "last", "first", "to", "by", "until", "another", "further") {
		return i // "cut into 8 wedges"
	}
	read := ingredient.Parse(text[ts[i].start:ts[end-1].end])
	if _, _, known := ingredient.Grams(read); !known {
		return i
	}
	return end
}

// foodEnd is the token after the name of a food that begins at j, after "of" and "the" when a unit stands before it.
func foodEnd(ts []token, j int, unit bool) int {
	from := j
	if unit && at(ts, j).is(".") && !at(ts, j).gap {
		j++ // "oz."
	}
	if unit && at(ts, j).is("of") {
		j++
		if at(ts, j).is("the", "your", "it", "this") {
			return from
		}
	}
	start := j
	for j < len(ts) && j < start+5 {
		t := ts[j]
		if t.kind != word || ontoWords[t.text] || timeUnits[t.text] > 0 || t.is("and", "or", "to", "the", "which", "that", "is", "are", "then", "when", "of", "more", "times", "than", "minutes", "if", "as", "your", "together", "well") || j > start && (t.isAdverb() || verbs[t.text].name != "" && !nounsToo[t.text]) {
			break
		}
		j++
	}
	if j == start {
		return from
	}
	return j
}
