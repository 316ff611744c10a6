package recipe

// lendsBack gives the time of "After a minute, add ..." to the last thing done
// before it in the same item, when that has none, and ends the job there.
func (s *splitter) lendsBack(d duration, from int) bool {
	if at(s.ts, from+d.to).is("of") {
		return false // "after 20 minutes of cooking": that of a wait before
	}
	if s.cur == nil || s.cur.kind != handsJob || s.timed() || s.cur.borrowed != nil || len(s.cur.clauses) == 0 {
		return false
	}
	d.from, d.to = d.from+from, d.to+from
	if n := len(s.cur.clauses); n > 1 {
		last := s.cur.clauses[n-1]
		s.cur.clauses = s.cur.clauses[:n-1]
		s.flush()
		s.cur = &job{kind: handsJob, from: last.from, clauses: []clause{last}}
	}
	s.cur.borrowed, s.cur.lender = &d, s.it
	s.flush()
	return true
}

// label is the number of tokens of a heading that opens an item: "Poach the eggs: Gently slide ...".
// item is the tokens from the sentence to the end of the item.
func label(ts, item []token) int {
	for i := 1; i < min(len(ts), 14); i++ {
		if ts[i].is(",", ".", ";") {
			return 0
		}
		if !ts[i].is(":") {
			continue
		}
		k := i + 1
		for at(ts, k).is("*", "_") {
			k++
		}
		if k < len(ts) && ts[k].upper && !losesFigure(item, i) && !ts[0].is("meanwhile", "while", "whilst", "meantime") {
			return k
		}
		return 0
	}
	return 0
}

// losesFigure says that a heading of i tokens states a time or a heat that the words after it do not repeat.
func losesFigure(ts []token, i int) bool {
	later := durations(ts[i:])
	for _, d := range durations(ts[:i]) {
		if len(later) == 0 || later[0].least != d.least || later[0].most != d.most {
			return true
		}
	}
	return len(heats(ts[:i])) > 0
}

// remark adds a sentence without a verb to the job before it. A time in it may be that job's.
func (s *splitter) remark(from int, ts []token) {
	for _, h := range heats(ts) {
		if h.oven {
			s.cx.oven = h.celsius
		}
	}
	if s.cur == nil {
		s.cur = &job{kind: idleJob, from: from}
		return
	}
	if s.cur.kind == idleJob {
		return
	}
	for _, d := range durations(ts) {
		if d.role == lasts && s.cur.waiting() != nil && s.cur.waiting().said == nil && !has(ts, "if", "keep", "store") {
			d.from, d.to = d.from+from-s.cur.waiting().shift, d.to+from-s.cur.waiting().shift
			s.cur.waiting().said = &d
			return
		}
		if d.role == lasts && s.cur.kind == handsJob && !s.timed() && s.cur.borrowed == nil && !has(ts, "if", "keep", "store") {
			d.from, d.to = d.from+from, d.to+from
			s.cur.borrowed, s.cur.lender = &d, s.it
			return
		}
	}
}
