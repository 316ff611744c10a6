package ingredient

import (
	"slices"
	"strings"
)

// harmless are words of a name that do not change what a measure of the food weighs.
var harmless = words(`fresh good quality best organic large medium small fine finely unsalted salted ripe plain pure free-range free range raw cold warm hot whole ordinary
	white red yellow brown green dark light golden sweet dry dried virgin extra extra-virgin english italian young new baby kosher coarse sea table ground freshly chopped
	sliced grated minced diced crushed peeled dutch-process unsweetened full-fat low-fat skimmed semi-skimmed runny clear soft cooking baking leaf leave
	boneless skinless local british your favourite strong mild mature vine fat`)

// changes are words of a table's name that make it another food when the line does not say them.
var changes = words(`canned dried frozen dehydrated cooked sweetened syrup juice powder pickled smoked salted oil candied cured flake concentrate baby imitation whipped dressing soup
	flour butter seed leaf peel mix instant evaporated condensed toasted roasted bran germ paste puree puffed chip cake bread vegetarian meatless fat light lowfat nonfat duck turkey goat sheep soy
	substitute spread liver kidney brain drink mixed sauce chocolate`)

// general are last words of a name that alone name no food: "tamarind paste" is not like "almond paste".
var general = words(`sauce paste powder juice seed leaf oil cake mix syrup extract puree flake water root stick chip butter nut bean spread cheese steak fillet chop roast`)

// find gives the food that a name means, or nil. exact is false when words of the name had to be
// left out.
func (t table) find(name string) (f *food, exact bool) {
	q := query(name)
	if len(q) == 0 {
		return nil, false
	}
	for from := range q {
		f := t.called[strings.Join(q[from:], " ")]
		if f == nil {
			continue
		}
		if allHarmless(q[:from]) {
			return f, true
		}
		if g := t.best(q); g != nil {
			return g, true
		}
		return f, false
	}
	if g := t.best(q); g != nil {
		return g, true
	}
	if g := t.spice(q); g != nil {
		return g, true
	}
	return t.nearest(q), false
}

// forms are the last words of a spice's name that say how it is sold.
var forms = words(`powder pod seed leaf stick pearl ground`)

// spice gives the spice of "turmeric powder" and "cardamom pods": the table knows it without its last word.
func (t table) spice(q []string) *food {
	last := len(q) - 1
	if last < 1 || !forms[q[last]] {
		return nil
	}
	f := t.called[strings.Join(q[:last], " ")]
	if f == nil {
		f = t.best(q[:last])
	}
	if f == nil || !strings.HasPrefix(f.name, "Spices") {
		return nil
	}
	return f
}

// longest is the most words of a name that are looked at, its last ones.
const longest = 10

// query is the words of the name up to an alternative.
func query(name string) []string {
	name = strings.ToLower(name)
	for first, rest, more := strings.Cut(name, ","); more; first, rest, more = strings.Cut(name, ",") {
		if name = rest; !allHarmless(stems(first)) {
			name = first // "leeks, the white part"; but "skinless, boneless chicken"
			break
		}
	}
	name, _, _ = strings.Cut(name, "(")
	for _, stop := range []string{" or ", " and ", " with ", " in ", " for ", " such ", " like "} {
		name, _, _ = strings.Cut(name, stop)
	}
	all := stems(strings.ReplaceAll(name, " of ", " "))
	return all[max(0, len(all)-longest):]
}

func allHarmless(q []string) bool {
	for _, w := range q {
		if !harmless[w] {
			return false
		}
	}
	return true
}

// best is the food whose name has every word of the query that matters, its last word at the head.
func (t table) best(q []string) *food {
	last := q[len(q)-1]
	var best *food
	low := 0.0
	for _, f := range t.byWord[last] {
		if !f.head[last] {
			continue
		}
		cost, ok := f.cost(q)
		if ok && (best == nil || cost < low) {
			best, low = f, cost
		}
	}
	return best
}

// cost is how much of a food's name the query did not say. ok is false when the query says something
// that the food is not.
func (f *food) cost(q []string) (float64, bool) {
	cost := 0.0
	for _, w := range q {
		if !f.words[w] {
			if !harmless[w] {
				return 0, false
			}
			cost += 0.3
		}
	}
	for w := range f.words {
		switch {
		case slices.Contains(q, w) || w == "raw" || w == "fresh" || w == "all":
		case changes[w]:
			cost += 3
		case f.head[w]:
			cost++
		default:
			cost += 0.1
		}
	}
	if !f.words["raw"] && !f.words["fresh"] {
		cost += 0.2
	}
	return cost, true
}

// nearest drops words from the front of the query until a food fits: "purple sprouting broccoli".
func (t table) nearest(q []string) *food {
	for from := 1; from < len(q) && !(from == len(q)-1 && general[q[from]]); from++ {
		if f := t.called[strings.Join(q[from:], " ")]; f != nil {
			return f
		}
		if f := t.best(q[from:]); f != nil {
			return f
		}
	}
	return nil
}
