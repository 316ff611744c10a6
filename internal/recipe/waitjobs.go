package recipe

import (
	"plait.example/internal/practical"
)

// addWait begins a job with a wait, and takes over the moves that lead up to it.
func (s *splitter) addWait(c clause) {
	weak := c.verb.deed == boils && !c.wait
	if s.completes(c) {
		s.cur.weak = s.cur.weak && weak
		s.extend(c)
		s.cur.waitAt = len(s.cur.clauses)
		return
	}
	all, from := s.takeLeads(c)
	s.flush()
	all = append(all, c)
	if from < 0 {
		from = all[0].from
	}
	if last := &all[len(all)-1]; weak {
		last.wait, last.look, last.every = true, practical.Look, 3
	}
	s.cur = &job{kind: waitJob, from: from, clauses: all, waitAt: len(all), weak: weak, oven: s.cx.oven, ovenWhy: s.cx.ovenWhy}
}

// completes says whether a wait goes on with the one that is open: a simmer
// after coming to the boil, or a time for a wait in the same place.
func (s *splitter) completes(c clause) bool {
	if s.cur == nil || s.cur.kind != waitJob {
		return false
	}
	if s.cur.weak && c.place == practical.AtHob && c.verb.deed != boils {
		return s.lastSentence() >= c.sentence-1
	}
	w := s.cur.waiting()
	return w.said == nil && c.said != nil && w.place == c.place && s.lastSentence() == c.sentence
}

// takeLeads takes the clauses that lead up to the wait from the open job. When
// nothing of the job is left it gives the token at which that began, else -1.
func (s *splitter) takeLeads(c clause) ([]clause, int) {
	if s.cur == nil || s.cur.kind != handsJob && s.cur.kind != idleJob {
		return nil, -1
	}
	n := len(s.cur.clauses)
	for n > 0 && s.leadsTo(s.cur.clauses[n-1], c) {
		n--
	}
	leads := append([]clause(nil), s.cur.clauses[n:]...)
	s.cur.clauses = s.cur.clauses[:n]
	if n > 0 || s.cur.refers != nil {
		return leads, -1
	}
	from := s.cur.from
	s.cur = nil
	return leads, from
}

// leadsTo says whether a clause only brings the food to the wait that follows it in its sentence.
func (s *splitter) leadsTo(c, wait clause) bool {
	if c.sentence != wait.sentence || c.hands != nil {
		return false
	}
	if wait.place == practical.AtOven && wait.verbIs("check", "test") && tends[c.verb.name] {
		return true // "turn after 20 minutes, check at 45"
	}
	if wait.look == practical.Stay && wait.place == practical.AtHob {
		return true // the hands do not stop
	}
	if c.verbIs("put", "pour", "place", "tip", "transfer", "turn", "arrange", "lay", "pop", "spoon") && wait.place != practical.AtSide && (wait.place == practical.AtHob || s.fillsVessel(c, wait.place)) {
		return false // food goes into the pan or the tin before that is left
	}
	if c.verb.deed == lets && c.place == practical.AtHob && wait.place == practical.AtSide {
		return false
	}
	if body := s.ts[c.from:c.to]; c.verbIs("pour", "spoon", "tip", "arrange", "lay", "turn") && wait.place != practical.AtHob && placeWords(body) != wait.place && hasAny(body, "over", "onto", "on", "in", "into") {
		return false // food goes on food, before that is left
	}
	return c.verb.deed == moves || c.verb.deed == boils || c.verb.deed == lets || c.verb.deed == heatsUp ||
		(c.verbIs("tip", "seal") || c.verbIs("turn") && hasAny(s.ts[c.from:c.to], "into", "out", "down", "up", "off")) && wait.place != practical.AtHob && wait.place != practical.AtSide
}

// fillsVessel says that a clause puts food into a tin or the like and not yet in the place where it waits.
func (s *splitter) fillsVessel(c clause, place practical.Place) bool {
	body := s.ts[c.from:c.to]
	return placeWords(body) != place && (c.verbIs("pour") || hasAny(body, "tin", "tins", "tray", "trays", "sheet", "sheets", "dish", "dishes", "bowl", "case", "cases", "mould", "moulds", "basin", "basins", "molds", "ramekin", "ramekins", "basin", "pan", "casserole", "glasses", "container", "tub"))
}

// leavesHob says that the work goes on at the bench, with what was done at the
// hob in the same sentence: "melt the butter, stir it into the crumbs and press
// them into the tin". The ring is free then.
func (s *splitter) leavesHob(c clause) bool {
	if s.cur.kind != handsJob || len(s.cur.clauses) == 0 {
		return false
	}
	last := s.cur.clauses[len(s.cur.clauses)-1]
	if s.timed() || last.sentence != c.sentence || !heatsFood(last) || c.place == practical.AtHob || c.verb.deed != works {
		return false
	}
	body := s.ts[c.at:c.to]
	return c.verbIs("press", "roll", "knead", "shape", "line", "spread", "rub", "brush") || hasAny(body, "crumbs", "bowl", "tin", "jug", "biscuits", "flour", "board", "mixer", "processor")
}

// heatsFood says that a clause melts, heats or fries.
func heatsFood(c clause) bool {
	return atHob(c) || c.verbIs("melt", "heat", "warm", "fry", "toast")
}
