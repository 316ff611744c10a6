package recipe

import "plait.example/internal/practical"

// splitter cuts items into jobs.
type splitter struct {
	cx   *context
	it   *item
	ts   []token
	jobs []job
	cur  *job
}

// splitItem cuts one item of the method where the hands stop.
func splitItem(cx *context, it *item) []job {
	it.ts = presentTense(it.ts)
	s := &splitter{cx: cx, it: it, ts: it.ts}
	cx.lit = false
	if len(it.ts) > maxItem || it.ts[0].is("or", "alternatively") || len(it.ts) <= 4 && it.ts[0].is("enjoy") {
		return []job{{kind: idleJob, to: len(it.ts), it: it, first: true}}
	}
	sents := sentences(it.ts)
	steplike := it.numbered || len(sents) <= 3
	for n, r := range sents {
		s.sentence(r[0], r[1], n, steplike)
	}
	s.flush()
	for i := range s.jobs {
		j := &s.jobs[i]
		j.it, j.first, j.to = it, i == 0, len(it.ts)
		if i == 0 {
			j.from = 0
		}
		if i > 0 {
			s.jobs[i-1].to = j.from
		}
	}
	return joinSmall(s.jobs)
}

// sentence reads one sentence and adds its clauses.
func (s *splitter) sentence(from, to, n int, steplike bool) {
	from += label(s.ts[from:to], s.ts[from:])
	ts := s.ts[from:to]
	cs := clauses(ts)
	if keeping(ts) || s.cur != nil && s.cur.kind != idleJob && whatIf(ts) {
		s.remark(from, nil)
		return
	}
	shareFigures(ts, cs)
	ledBy(ts, cs, timeLed(ts)*boolInt(n == 0))
	cs = partTimes(ts, cs)
	var refers *duration
	for i := range cs {
		s.cx.interpret(ts, &cs[i])
		for k := range cs[i].times {
			if cs[i].times[k].role == refersBack && refers == nil && i == 0 && cs[0].times[k].from < 5 && !(tends[cs[0].verb.name] && cs[0].times[k].from > cs[0].at) {
				refers = &cs[i].times[k]
			}
		}
	}
	if len(cs) > 0 && (ts[0].is("to", "for") && at(ts, 1).is("serve", "serving")) && !cs[0].wait && !cs[0].verbIs("whip", "whisk", "make", "cook", "fry", "boil", "toast", "heat", "warm", "reheat", "mix", "melt", "grate") {
		cs[0].verb = verbs["serve"]
	}
	for i := range cs {
		if body := ts[cs[i].from:cs[i].to]; cs[i].verbIs("take", "send", "bring", "carry") && has(body, "to table", "to the table") {
			cs[i].verb, cs[i].wait = verbs["serve"], false
		}
	}
	s.checkedAt(ts, cs)
	spreadTime(ts, cs)
	for i := range cs {
		cs[i].from, cs[i].to, cs[i].at, cs[i].sentence, cs[i].shift = cs[i].from+from, cs[i].to+from, cs[i].at+from, n, from
	}
	if s.cur != nil && s.cur.kind == handsJob && allowsFor(ts, cs, from) {
		s.remark(from, ts)
		return
	}
	if parts := s.unsaidParts(ts, cs); len(parts) > 1 {
		for _, p := range parts {
			s.sentence(from+p[0], from+p[1], n, steplike)
		}
		return
	}
	if s.ovenFigure(ts, from) {
		return
	}
	if len(cs) == 0 {
		c, ok := s.verbless(ts)
		if !ok {
			s.remark(from, ts)
			return
		}
		cs = []clause{c}
		cs[0].from, cs[0].to, cs[0].at, cs[0].sentence, cs[0].shift = from, to, from, n, from
	}
	if refers != nil && s.lendsBack(*refers, from) {
		refers = nil
	}
	if s.cur != nil && s.cur.kind == handsJob && (!steplike || s.breaks(cs)) {
		s.flush()
	}
	for i := range cs {
		followed := i+1 < len(cs) && cs[i+1].wait && cs[i+1].place == practical.AtHob
		s.add(cs[i], followed)
		if i == 0 && refers != nil && s.cur != nil {
			s.cur.refers = refers
		}
	}
}

// breaks says whether a sentence must begin a new job: it is timed, or it moves between bench and hob.
func (s *splitter) breaks(cs []clause) bool {
	hob, curHob, timed := false, false, false
	for _, c := range cs {
		hob = hob || atHob(c)
		timed = timed || c.hands != nil
	}
	worked := false
	for _, c := range s.cur.clauses {
		curHob = curHob || atHob(c)
		worked = worked || c.verb.deed != minor && c.verb.deed != heatsUp
	}
	return timed || worked && hob != curHob && !onlyMinor(cs)
}

func atHob(c clause) bool {
	return c.place == practical.AtHob || c.verb.deed == fries || c.verb.deed == boils
}

// add puts a clause in the job it belongs to. followed says that a wait on the hob comes next in the sentence.
func (s *splitter) add(c clause, followed bool) {
	switch {
	case c.whole && s.cur != nil && s.cur.kind == handsJob && !s.timed() && s.lastSentence() == c.sentence:
		s.extend(c)
	case s.cur != nil && (c.other || s.attends(c, followed) || s.settles(c, followed)):
		s.extend(c)
	case c.verb.deed == heatsUp:
		if s.cur == nil || s.cur.kind != ovenJob {
			s.open(ovenJob, c)
			return
		}
		s.extend(c)
	case c.verb.deed == serves:
		if s.cur == nil || s.cur.kind != serveJob {
			s.open(serveJob, c)
			return
		}
		s.extend(c)
	case s.cur != nil && s.cur.kind == serveJob && !c.wait:
		s.extend(c)
	case c.wait || c.verb.deed == boils && !followed:
		s.addWait(c)
	case s.cur == nil || s.cur.kind != handsJob && s.cur.kind != idleJob || s.timed() || (c.hands != nil || c.verb.deed == fries) && s.worked(c.sentence), s.leavesHob(c):
		s.open(handsJob, c)
	default:
		if s.cur.kind == idleJob {
			s.cur.kind = handsJob
		}
		s.extend(c)
	}
}

// worked says whether the open job holds work of some minutes at the bench, said in the same sentence.
func (s *splitter) worked(sentence int) bool {
	for _, c := range s.cur.clauses {
		if c.to-c.at <= 1 || c.sentence != sentence || atHob(c) || c.verb.deed == minor || c.verb.deed == moves {
			continue
		}
		if t := s.it.techniqueFor(c.verb.name, s.ts[c.from:c.to]); t != nil && t.Learner.Likely >= 3 && t.Place != "hob" {
			return true
		}
	}
	return false
}

// timed says whether the open job already has minutes that the text states.
func (s *splitter) timed() bool {
	for _, c := range s.cur.clauses {
		if c.hands != nil {
			return true
		}
	}
	return false
}

func (s *splitter) lastSentence() int { return s.cur.clauses[len(s.cur.clauses)-1].sentence }

func (s *splitter) extend(c clause) { s.cur.clauses = append(s.cur.clauses, c) }

func (s *splitter) open(k jobKind, c clause) {
	from := c.from
	if s.cur != nil && s.cur.kind == idleJob {
		from = s.cur.from
		s.cur = nil
	}
	s.flush()
	s.cur = &job{kind: k, from: from, clauses: []clause{c}}
}

func (s *splitter) flush() {
	if s.cur == nil {
		return
	}
	j := *s.cur
	s.cur = nil
	if len(j.clauses) == 0 && j.kind == handsJob {
		j.kind = idleJob
	}
	if j.kind == handsJob && s.chores(j.clauses) {
		j.kind = choreJob
	}
	j.oven, j.ovenWhy = s.cx.oven, s.cx.ovenWhy
	s.jobs = append(s.jobs, j)
}

// shareFigures gives each clause the times and temperatures that stand in it.
func shareFigures(ts []token, cs []clause) {
	for _, d := range durations(ts) {
		if c := holder(cs, d.from); c != nil {
			c.times = append(c.times, d)
		}
	}
	for _, h := range heats(ts) {
		if c := holder(cs, h.from); c != nil {
			c.heats = append(c.heats, h)
		}
	}
}

func holder(cs []clause, i int) *clause {
	for k := range cs {
		if i >= cs[k].from && i < cs[k].to {
			return &cs[k]
		}
	}
	return nil
}
