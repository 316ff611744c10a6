package recipe

import (
	"plait.example/internal/practical"
)

// keeping says that a sentence is about storing what is made: it speaks of weeks or months.
func keeping(ts []token) bool {
	for _, d := range durations(ts) {
		if d.least >= 7*24*60 {
			return true
		}
	}
	return false
}

// whatIf says that a sentence only tells what to do if something is not right: "if it is too thin, boil it longer".
func whatIf(ts []token) bool {
	if ts[0].is("careful") || ts[0].is("be") && at(ts, 1).is("careful", "very", "aware") || ts[0].is("take") && at(ts, 1).is("care") {
		return true
	}
	return ts[0].is("if") && hasAny(ts, "too", "necessary", "needed", "not", "seems", "looks", "starts", "sticky", "dry", "thick", "thin", "prefer", "happens", "becomes", "required", "getting", "don't", "begins") && !hasAny(ts, "using")
}

// attends says whether a clause only tends what already waits: "turn halfway", "stir from time to time", "baste after 20 minutes".
func (s *splitter) attends(c clause, followed bool) bool {
	if s.cur.kind != waitJob || c.wait || c.hands != nil {
		return false
	}
	w := s.cur.waiting()
	back := 0 // minutes into the wait at which the food is seen to
	if len(c.times) > 0 && c.times[0].role != recurs {
		if back = c.times[0].least; !s.within(c, w) {
			return false
		}
	}
	body := s.ts[c.from:c.to]
	if !followed && s.takesOut(c, body) {
		return true
	}
	if c.verb.name == "give" && tendsBefore(body, min(len(body), 5)) {
		c.verb = verbs["stir"] // "give it a stir every 5 minutes"
	}
	if !tends[c.verb.name] || !stirsSometimes(body) && !has(body, "once", "twice", "every", "side", "midway") && len(c.times) == 0 {
		return false
	}
	if w.look == practical.Leave || w.look == "" {
		w.look, w.every = practical.Look, 0
	}
	if c.every > 0 {
		w.every = c.every
	}
	if w.every == 0 {
		said := 0
		if w.said != nil {
			said = w.said.least
		}
		w.every = max(c.every, back)
		if w.every == 0 {
			w.every = max(often(body, said), 1)
		}
	}
	return true
}

// within says that a clause that tends food after some minutes speaks of the wait w: "turn after 20 minutes" of an hour.
func (s *splitter) within(c clause, w *clause) bool {
	d := c.times[0]
	return tends[c.verb.name] && (d.role == refersBack || d.role == describes) && d.from+c.shift > c.at && w.said != nil && d.least < w.said.least && hotPlace(w.place) && s.lastSentence() >= c.sentence-1
}

// settles says whether a clause stands between coming to the boil and the simmer that follows: "cover", "turn down the heat".
func (s *splitter) settles(c clause, followed bool) bool {
	if !s.cur.weak || !followed || c.wait || c.sentence > s.lastSentence()+1 {
		return false
	}
	return c.verb.deed == moves && !c.verbIs("pour", "put", "place", "transfer") || c.verbIs("turn", "skim", "stir")
}

// takesOut says whether a clause only ends the wait: "remove from the oven", "turn off the heat", "reduce to a simmer".
func (s *splitter) takesOut(c clause, body []token) bool {
	if c.sentence > s.lastSentence()+1 {
		return false
	}
	place := s.cur.waiting().place
	switch {
	case c.verbIs("remove", "take", "lift") && hotPlace(place):
		return has(body, "from the oven", "from oven", "out of the oven", "from the heat", "from heat", "off the heat", "from the stove", "from stove", "out of oven", "from the grill", "from the hob") && !has(body, "foil", "lid", "beans", "paper")
	case c.verbIs("turn", "switch"):
		return has(body, "off", "down") && has(body, "heat", "gas", "oven", "hob", "ring", "grill", "stove")
	case place == practical.AtHob && c.verbIs("reduce", "lower"):
		return s.cur.weak || has(body, "heat")
	}
	return false
}

// chores says whether clauses only wash hands, put an apron on, wash up, tidy or evaluate.
func (s *splitter) chores(cs []clause) bool {
	for _, c := range cs {
		body := s.ts[c.from:c.to]
		switch {
		case c.verb.name == "evaluate":
		case c.verbIs("put") && !hasAny(body, "away", "apron", "aprons", "hair"):
			return false // "put the apples in the dishes"
		case c.verbIs("wash", "clear", "clean", "tidy", "dry", "put", "collect", "tie", "wipe") && hasAny(body, "hands", "apron", "aprons", "equipment", "hair", "surfaces", "worktop", "bench", "dishes", "away", "up", "down") &&
			!has(body, "dry the", "pick up", "vegetables", "chicken", "potatoes", "fruit"):
		default:
			return false
		}
	}
	return len(cs) > 0
}

// checkedAt finds how long food stays in the oven where the text only says when
// it is looked at: "Turn over after 20 minutes, check at 45".
func (s *splitter) checkedAt(ts []token, cs []clause) {
	if len(cs) == 0 || s.cx.place != practical.AtOven || s.cur != nil && s.cur.waiting() != nil {
		return
	}
	c := &cs[len(cs)-1]
	if c.wait || c.hands != nil || !c.verbIs("check", "test") || len(c.times) == 0 || c.times[0].role == lasts || c.times[0].role == recurs {
		return
	}
	d := c.times[0]
	d.open, d.vague = true, true
	c.wait, c.place, c.said, c.look = true, practical.AtOven, &d, practical.Leave
	for _, before := range cs[:len(cs)-1] {
		if tends[before.verb.name] && len(before.times) > 0 {
			c.look, c.every = practical.Look, max(before.times[0].least, 1)
		}
	}
}
