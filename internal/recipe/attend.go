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

// attends says whether a clause only tends what already waits: "turn halfway", "stir from time to time".
func (s *splitter) attends(c clause, followed bool) bool {
	if s.cur.kind != waitJob || c.wait || c.hands != nil || len(c.times) > 0 && c.times[0].role != recurs {
		return false
	}
	body := s.ts[c.from:c.to]
	if !followed && s.takesOut(c, body) {
		return true
	}
	if c.verbIs("stir", "turn", "baste", "shake", "toss", "flip", "skim", "check", "top", "rotate") && (stirsSometimes(body) || has(body, "once", "every", "side") || len(c.times) > 0) {
		if s.cur.waiting().look == practical.Leave || s.cur.waiting().look == "" {
			s.cur.waiting().look = practical.Look
		}
		if s.cur.waiting().every == 0 {
			s.cur.waiting().every = max(c.every, 5)
			if said := s.cur.waiting().said; said != nil && has(body, "halfway", "half way", "once") {
				s.cur.waiting().every = max(1, said.least/2)
			}
		}
		return true
	}
	return false
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
