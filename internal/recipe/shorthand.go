package recipe

// Notes leave out verbs: "onion 8 min, garlic 2 min", "lid on, low 10 min, off 5
// min". And lists of times stand before the jobs: "10 min: Mix the flour".

// settings are words for how a ring or a pan is set.
var settings = set("low lowest medium high full gentle gas heat flame lid on off the still under very then at for about another more further with without simmer covered uncovered it a to")

// setStretch says that after the comma before token i a stretch of its own
// begins, without a verb: "low 10 min", "off the heat 5 min", "2 more mins". off says that it ends the heat.
func setStretch(ts []token, i int) (off, ok bool) {
	if !at(ts, i-1).is(",", ";", "+") {
		return false, false
	}
	named := false
	for j := i; j < min(i+7, len(ts)); j++ {
		if d, next := readDuration(ts, j); next > j && d.most > 0 {
			named = named || at(ts, next-2).is("more", "further") || at(ts, j-1).is("another", "further")
			return off, named && !at(ts, next).is("if", "per", "each", "or", "for", "before", "a", "on")
		}
		if !settings[ts[j].text] {
			return false, false
		}
		off = off || ts[j].is("off") && !at(ts, j-1).is("lid")
		named = named || ts[j].is("low", "lowest", "high", "full", "off", "lid", "gentle")
	}
	return false, false
}

// partsByTimes cuts a sentence without a verb that states several times, one for each
// thing between commas: "cumin seeds 1 min, onion 8 min, garlic 2 min".
func partsByTimes(ts []token, times []duration) [][2]int {
	var out [][2]int
	from := 0
	for k, d := range times {
		last := k+1 == len(times)
		if !last && (!at(ts, d.to).is(",", ";", ".", "+") || at(ts, d.to+1).is("or", "if", "then")) {
			return nil
		}
		if d.from == from || ts[from].kind == number {
			return nil // a second time of the same thing
		}
		to := d.to + 1
		if last {
			to = len(ts)
		}
		out = append(out, [2]int{from, to})
		from = to
	}
	return out
}

// ledBy gives the time that stands before a line to the clause that it is for:
// the one that leaves the food somewhere and states no time, else to all the work.
func ledBy(ts []token, cs []clause, n int) {
	if n == 0 || len(cs) == 0 {
		return
	}
	first := &cs[0]
	k := -1
	for i, d := range first.times {
		if d.to <= n && d.role == lasts {
			k = i
		}
	}
	if k < 0 {
		return
	}
	d := first.times[k]
	first.times = append(append([]duration(nil), first.times[:k]...), first.times[k+1:]...)
	d.to = min(d.to, n)
	for i := range cs {
		c := &cs[i]
		if deed := c.verb.deed; len(c.times) == 0 && (deed == waits || deed == lets || deed == cooks) {
			c.times = append(c.times, d)
			return
		}
	}
	last := &cs[len(cs)-1]
	if len(last.times) == 0 {
		last.times, last.whole = append(last.times, d), true
	}
}

// unsaidParts is the parts of a sentence without a verb that states several times; nil: it has fewer.
func (s *splitter) unsaidParts(ts []token, cs []clause) [][2]int {
	if len(cs) > 0 {
		return nil
	}
	var times []duration
	for _, d := range durations(ts) {
		if d.role == lasts {
			times = append(times, d)
		}
	}
	if len(times) < 2 {
		return nil
	}
	return partsByTimes(ts, times)
}

// allowsFor says that a sentence only tells how long the work before it takes:
// "Allow 40 minutes.", "Give yourself a good hour". The clauses count their tokens from shift.
func allowsFor(ts []token, cs []clause, shift int) bool {
	if len(cs) != 1 || !cs[0].verbIs("allow", "give") || len(cs[0].times) != 1 {
		return false
	}
	verb := cs[0].at - shift + 1
	between := ts[min(verb, len(ts)):max(min(verb, len(ts)), min(cs[0].times[0].from, len(ts)))]
	for _, t := range between {
		if !t.is("yourself", "about", "around", "at", "least", "up", "to", "roughly", "a", "good", "plenty", "of", "time", ":", ",", "for", "this") {
			return false
		}
	}
	rest := ts[min(cs[0].times[0].to, len(ts)):]
	return !hasAny(rest, "cool", "rest", "rise", "stand", "set", "soak")
}

// waitsForTime says that a clause cooks something and states no time before
// token i: the time that follows is its own ("fry in the butter, lid on, 8 minutes").
func waitsForTime(ts []token, c clause, i int) bool {
	if d := c.verb.deed; d != waits && d != fries && d != cooks {
		return false
	}
	return len(durations(ts[c.at:i])) == 0
}
