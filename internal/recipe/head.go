package recipe

import (
	"fmt"
	"strings"
)

// heading is what the head of a recipe says of its baking: "Oven temperature: 190 °C", "Cooking time: 25-30 mins".
type heading struct {
	celsius  int
	ovenWhy  string
	above    bool // the line being read stands above the list of ingredients
	cook     *duration
	cookLine []token
	makes    int // pieces that the recipe makes; 0: not said
}

// meta takes lines such as "Serves 4" and "Prep time: 20 min".
func (s *sorter) meta(l line, ahead section) bool {
	if l.marker == numbered || len(l.ts) > 16 || len(l.ts) == 0 {
		return false
	}
	n, ok := portions(l.ts)
	if !ok {
		n, ok = portionsWithin(l.ts)
	}
	if ok {
		if s.cur.serves == 0 {
			s.cur.serves = n
		}
		if hasAny(l.ts[:min(len(l.ts), 3)], "makes", "yield", "yields") && s.cur.head.makes == 0 {
			s.cur.head.makes = n
		}
		if words := wordCount(l.ts); words > 1 {
			s.cur.unread = append(s.cur.unread, l.text)
		}
		return true
	}
	ts := l.ts
	for len(ts) > 0 && ts[0].kind != word {
		ts = ts[1:]
	}
	s.cur.head.above = s.part == front && ahead == ingredientPart
	if s.part != methodPart && s.cur.head.read(l.text, ts) {
		s.cur.unread = append(s.cur.unread, l.text)
		return true
	}
	if len(ts) > 1 && ts[0].is("prep", "cook", "preparation", "cooking", "total", "rest", "chill") && ts[1].is(":") && len(durations(ts)) > 0 {
		s.cur.unread = append(s.cur.unread, l.text)
		return true
	}
	i := find(ts[:min(len(ts), 4)], "time")
	if i < 0 || i > 2 || !has(ts[:i+1], "prep", "preparation", "cook", "total", "rest", "bake", "chill", "proving", "prove", "cooking", "oven") || len(durations(ts)) == 0 {
		return false
	}
	s.cur.unread = append(s.cur.unread, l.text)
	return true
}

// portions reads "Serves 4", "Servings: 6-8", "Makes 12 buns", "For 4 people".
func portions(ts []token) (int, bool) {
	for len(ts) > 0 && ts[0].kind == sign {
		ts = ts[1:]
	}
	if len(ts) < 2 {
		return 0, false
	}
	i := 1
	switch {
	case ts[0].is("serves", "servings", "serving", "makes", "yield", "yields", "portions", "serve", "feeds"):
	case ts[0].is("cuts", "cut") && ts[1].is("into"):
	case ts[0].is("for", "enough") && has(ts, "people", "person", "portions", "servings"):
	default:
		if v, next := readNumber(ts, 0); next > 0 && at(ts, next).is("servings", "portions", "squares", "slices", "helpings") && len(ts) == next+1 {
			return int(v), true
		}
		return 0, false
	}
	for at(ts, i).is(":", "about", "approx", "around", "up", "to", "size", "-", ".", "into", "for", "enough") {
		i++
	}
	if n := cutInto(ts[i:]); n > 0 {
		return n, true
	}
	v, next := readSpan(ts, i)
	if n := at(ts, i); v.low < 1 && n.kind == number {
		v.low = n.value // "2/3" portions
	}
	if next == i || v.low < 1 || v.low > 500 || timeUnits[at(ts, next).text] > 0 || v.low == 1 && hasAny(ts[next:], wholes...) {
		return 0, false
	}
	return int(v.low), true
}

// portionsWithin reads portions that stand further on in a line of the head:
// "Prep: 10 mins | Serves 4", "Recipe serves 6".
func portionsWithin(ts []token) (int, bool) {
	if startsWithVerb(ts) || !hasAny(ts[:1], "prep", "cook", "preparation", "cooking", "time", "total", "recipe", "quantity", "difficulty", "skill", "level", "ready", "takes", "this", "course", "category") {
		return 0, false
	}
	for i := 1; i+1 < len(ts); i++ {
		if ts[i].is("serves", "feeds", "servings", "portions", "makes", "yield") && (ts[i-1].kind == sign || i <= 2) {
			return portions(ts[i:])
		}
	}
	return 0, false
}

// cutInto is the portions of one thing that is cut: "1 loaf (10 slices)", "1
// cake, serves 8", "one 9-inch pie, about 8 servings"; 0: not said.
func cutInto(ts []token) int {
	if !hasAny(ts, wholes...) && !hasAny(ts, "loaves", "cakes", "pies", "tarts", "litres", "g", "kg", "ml", "cups") {
		return 0
	}
	for i, t := range ts {
		v, next := readSpan(ts, i)
		if i > 0 && t.kind == number && next > i && v.low >= 2 && v.low <= 500 && at(ts, next).is("slices", "portions", "servings", "pieces", "squares", "wedges", "people", "helpings") {
			return int(v.low)
		}
		if t.is("serves", "feeds", "serving", "into") {
			if v, next := readSpan(ts, i+1); next > i+1 && v.low >= 2 && v.low <= 500 {
				return int(v.low)
			}
		}
	}
	return 0
}

// wholes are things of which one is more than a portion: "Makes 1 loaf" says nothing of how many it serves.
var wholes = []string{"loaf", "cake", "pie", "tart", "batch", "jar", "pan", "tray", "dish", "bowl", "litre", "quart", "pint"}

// titlePortions takes "(serves 4)", ". Makes 12." off the end of a title.
func titlePortions(title string) (string, int) {
	ts := tokenize(title, 0)
	for i := 1; i+1 < len(ts); i++ {
		if !ts[i].is("serves", "makes", "feeds") {
			continue
		}
		n, ok := portions(ts[i:])
		if rest := trimTitle(title[:ts[i].start]); ok && rest != "" && wordCount(ts[i:]) <= 2 {
			return rest, n
		}
	}
	return portionsAtEnd(title)
}

func trimTitle(s string) string { return strings.TrimRight(s, " .,(-–:[") }

// onlyHeatsOven says that a line turns the oven on and does nothing else:
// "Preheat the oven to 200C/fan 180C/gas 6."
func onlyHeatsOven(ts []token) bool {
	return at(ts, 0).is("preheat", "pre-heat", "heat", "set", "turn") && has(ts[:min(len(ts), 5)], "oven") &&
		wordCount(ts) <= 10 && !has(ts, "and", "then")
}

// read takes a line such as "Oven temperature: 190 °C or gas mark 5" or "Cooking time: 25-30 mins".
func (h *heading) read(text string, ts []token) bool {
	start := ts[:min(len(ts), 3)]
	if hs := heats(ts); len(hs) > 0 && (hasAny(start, "oven", "temperature", "temp") && !startsWithVerb(ts) || h.above && onlyHeatsOven(ts)) {
		if h.celsius == 0 {
			h.celsius, h.ovenWhy = hs[0].celsius, fmt.Sprintf("'%s': said at the head", text)
		}
		return true
	}
	if ds := durations(ts); len(ds) == 1 && at(ts, 0).is("time") && wordCount(ts) <= 5 && h.cook == nil && ds[0].from <= 3 {
		h.cook, h.cookLine = &ds[0], ts
		return true
	}
	if ds := durations(ts); len(ds) == 1 && hasAny(start, "cooking", "cook", "baking", "bake", "oven") && hasAny(start, "time", "for", ":") && has(start, "time") {
		if h.cook == nil {
			h.cook, h.cookLine = &ds[0], ts
		}
		return true
	}
	return false
}
