package recipe

import "plait.example/internal/practical"

// jobKind is what a stretch of the method is to the plan.
type jobKind int

const (
	handsJob jobKind = iota
	waitJob
	ovenJob  // only turns the oven on
	choreJob // only washes up, puts an apron on, evaluates: rows of the plan
	serveJob // serves
	idleJob  // no verb was found
)

// job is a stretch of an item that becomes a step.
type job struct {
	kind     jobKind
	from, to int // tokens of the item
	it       *item
	clauses  []clause
	waitAt   int  // 1 + the clause that waits; 0: none
	weak     bool // only comes to the boil: a simmer that follows takes it in
	first    bool // first job of its item
	refers   *duration
	ts       []token // the item's tokens from from to to
	oven     int     // the oven's temperature here
	ovenWhy  string
	borrowed *duration // the wait's minutes, said in the next item
	lender   *item
	turns    int // how often the said minutes are gone through; 0: once
	pieces   int // pieces a turn; 0: not said
	follows  int // 1 + the job that "after 20 minutes" speaks of; 0: none
}

// waiting is the clause of the job that waits; nil: none.
func (j *job) waiting() *clause {
	if j.waitAt == 0 {
		return nil
	}
	return &j.clauses[j.waitAt-1]
}

// around is the words of a job's item for one that only comes to the boil, else the job's own.
func (j *job) around() []token {
	if j.weak {
		return j.it.ts[max(0, j.from-20):j.to]
	}
	return j.ts
}

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
	if s.cur != nil && s.cur.kind == handsJob && allowsFor(ts, cs) {
		s.remark(from, ts)
		return
	}
	if parts := s.unsaidParts(ts, cs); len(parts) > 1 {
		for _, p := range parts {
			s.sentence(from+p[0], from+p[1], n, steplike)
		}
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
		if c.sentence != sentence || atHob(c) || c.verb.deed == minor || c.verb.deed == moves {
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
