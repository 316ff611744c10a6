package recipe

import "plait.example/internal/practical"

// verbless reads a sentence that states a time or sets the oven and has no
// verb: "15 mins in the oven", "10 more mins", "Oven on: 200C". False when it
// states neither, or when its time belongs to the wait before it.
func (s *splitter) verbless(ts []token) (clause, bool) {
	c := clause{to: len(ts), carried: true}
	c.heats = heats(ts)
	for _, d := range durations(ts) {
		if d.role == lasts {
			c.times = append(c.times, d)
		}
	}
	named := placeWords(ts)
	if len(c.times) == 0 {
		if goesIn(ts) {
			c.verb = verbs["add"]
			s.cx.interpret(ts, &c)
			return c, true
		}
		c.verb = verbs["preheat"]
		return c, ovenStated(&c) && hasAny(ts, "oven")
	}
	if s.belongsBefore(ts, named) || has(ts, "total", "ready in", "prep", "altogether", "in all", "leftover", "keeps", "in advance", "ahead", "each time") {
		return clause{}, false
	}
	c.verb = s.unsaidVerb(ts, named, ovenStated(&c))
	s.cx.interpret(ts, &c)
	return c, true
}

// belongsBefore says that a sentence only tells how long the job before it lasts: "About 20 minutes." "This takes 5 minutes."
func (s *splitter) belongsBefore(ts []token, named practical.Place) bool {
	if at(ts, 0).is("time", "takes") {
		return true
	}
	if (at(ts, 0).is("low", "high", "medium") || s.cx.place == practical.AtMicrowave && hasAny(ts, "low", "high", "medium", "power", "full")) && (s.cur == nil || s.cur.waiting() == nil) {
		return false // the setting of a cooker: "Low 8-9 hours"
	}
	if s.cur == nil || len(s.cur.clauses) == 0 || hasAny(ts, "more", "another", "further", "again", "back", "next") {
		return false
	}
	if w := s.cur.waiting(); w != nil {
		return w.said == nil && (named == "" || named == w.place)
	}
	return named == "" && s.cur.kind == handsJob && !s.timed() && s.cur.borrowed == nil
}

// unsaidVerb is the verb that a sentence without one leaves out.
func (s *splitter) unsaidVerb(ts []token, named practical.Place, oven bool) verb {
	for i, t := range ts {
		if t.kind != word || len(t.text) < 4 {
			continue
		}
		if t.is("wait") {
			return verbs["rest"]
		}
		if v, ok := verbs[t.text]; ok && (v.deed == waits || v.deed == fries || v.deed == cooks) {
			return v
		}
		if v, ok := verbByStem[t.stem]; ok && t.text[len(t.text)-3:] == "ing" && (v.deed == waits || v.deed == fries || v.deed == cooks || v.deed == works && i < 3) {
			return v
		}
	}
	if oven || s.cx.oven > 0 && has(ts, "back in") {
		return verbs["bake"]
	}
	if v, ok := verbOfPlace[named]; ok {
		return v
	}
	if v, ok := verbOfPlace[s.cx.place]; ok {
		return v
	}
	return verbs["leave"]
}

// verbOfPlace is what food does in a place when nothing else is said.
var verbOfPlace = map[practical.Place]verb{
	practical.AtOven: verbs["bake"], practical.AtHob: verbs["cook"], practical.AtFridge: verbs["chill"], practical.AtFreezer: verbs["freeze"],
	practical.AtWarm: verbs["prove"], practical.AtGrill: verbs["grill"], practical.AtMicrowave: verbs["microwave"], practical.AtSide: verbs["rest"],
}

// goesIn says that a sentence without a verb puts something in: "Chocolate and lime juice in", "1 teaspoon jam in each".
func goesIn(ts []token) bool {
	for i, t := range ts {
		if t.is("is", "are", "was", "were", "should", "it's", "its", "no", "not", "this", "be") {
			return false
		}
		if i > 0 && i < 8 && t.is("in") && ts[i-1].kind == word && !ts[i-1].isAdverb() && !ontoWords[ts[i-1].text] && (at(ts, i+1).kind == sign || i+1 == len(ts) || at(ts, i+1).is("each", "at", "next", "last", "first", "now", "too", "together")) {
			return true
		}
	}
	return false
}

// ovenFigure takes a figure that stands alone after the oven was turned on for its temperature: "Turn on the oven. 200."
func (s *splitter) ovenFigure(ts []token, from int) bool {
	if s.cur == nil || s.cur.kind != ovenJob || len(wordsOf(ts)) != 1 || ts[0].kind != number || ts[0].value < 100 || ts[0].value > 260 {
		return false
	}
	last := &s.cur.clauses[len(s.cur.clauses)-1]
	h := heat{celsius: int(ts[0].value), oven: true, from: from - last.shift, to: from + 1 - last.shift}
	last.heats = append(last.heats, h)
	s.cx.oven = h.celsius
	return true
}
