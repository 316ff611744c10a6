package recipe

import "strings"

// partTimes parts a clause that states two times one after the other: "for 10
// minutes with the lid on, 5 minutes without". Times that are alternatives, or
// stand in brackets, or count together ("plus 20 minutes") stay in one.
func partTimes(ts []token, cs []clause) []clause {
	var out []clause
	for _, c := range cs {
		for {
			cut := secondTime(ts, &c)
			if cut < 0 {
				break
			}
			first, second := c, clause{from: cut, at: cut, to: c.to, verb: c.verb, carried: true}
			first.to = cut
			first.times, second.times = partFigures(c.times, cut, func(d duration) int { return d.from })
			first.heats, second.heats = partFigures(c.heats, cut, func(h heat) int { return h.from })
			out = append(out, first)
			c = second
		}
		out = append(out, c)
	}
	return out
}

func partFigures[T any](all []T, cut int, from func(T) int) (before, after []T) {
	for _, x := range all {
		if from(x) < cut {
			before = append(before, x)
		} else {
			after = append(after, x)
		}
	}
	return before, after
}

// secondTime is the token at which a clause's second time begins a stretch of its own; -1: nowhere.
func secondTime(ts []token, c *clause) int {
	if d := c.verb.deed; d != waits && d != cooks && d != fries && d != lets && d != boils {
		return -1
	}
	last := -1
	for k, d := range c.times {
		if d.role != lasts {
			continue
		}
		if at(ts, d.to).is("absolute", "minimum", "maximum", "tops") {
			continue // "24 hours, 4 hours at the least"
		}
		if last >= 0 && d.from > c.at {
			a := c.times[last]
			if cut := parting(ts, a.to, d.from); cut > c.at && !joinedTimes(ts, a, d) {
				return cut
			}
			return -1
		}
		last = k
	}
	return -1
}

// spreadTime marks a time in brackets that ends a sentence of work: "dice the
// carrots, slice the onion (10 min)" takes ten minutes in all.
func spreadTime(ts []token, cs []clause) {
	if len(cs) < 2 {
		return
	}
	c := &cs[len(cs)-1]
	if c.hands == nil || c.wait || c.verb.deed == fries || c.verb.deed == cooks || !at(ts, c.hands.from-1).is("(") && !at(ts, c.hands.from-2).is("(") {
		return
	}
	for _, t := range ts[c.hands.to:] {
		if t.kind != sign {
			return
		}
	}
	c.whole = true
}

// parting is the token after the time that ends at i at which the next stretch begins, before j; -1: they belong together.
func parting(ts []token, i, j int) int {
	cut := -1
	for k := i; k < j; k++ {
		switch t := ts[k]; {
		case t.is("(", "or", "if", "plus", "until", "per", "every", "each", "preferably", "ideally", "but"):
			return -1
		case t.is("then", "and"):
			cut = k
		case t.is(",", ";") && cut < 0:
			cut = k + 1
		}
	}
	return cut
}

// unusedTimes is a reason for each time in a job's words that went into none of
// its figures: another way of doing it, or a time that was not understood.
func unusedTimes(text string, j *job, why []string) []string {
	var out []string
	for _, d := range durations(j.ts) {
		if d.role != lasts {
			continue
		}
		words := quote(text, j.ts, d.from, d.to)
		if all := strings.Join(why, "\n"); !strings.Contains(all, "'"+words) && !strings.Contains(all, " "+words) {
			out = append(out, "'"+words+"' stands here too and is not in the figures: look whether it should be")
		}
	}
	return out
}
