package written

import "regexp"

// dayBefore is the name of a part of a plan that is not done on its day.
var dayBefore = regexp.MustCompile(`(?i)^\W*(?:\w+ ){0,4}?(?:day|night|evening|afternoon|lesson|week) before\W*(?:\([^)]*\))?\W*$|^\W*(?:the )?previous (?:day|night|evening|lesson)\W*$|^\W*(?:done |made |prepared )?in advance\W*$`)

// itsDay is a heading that comes back to the day itself.
var itsDay = regexp.MustCompile(`(?i)\b(?:the|of|exam|practical) day\b|\bpractical\b|\bexam\b|\btime plan\b|\border of work\b|\bset[ -]?up\b|\bhour\b`)

// dayOf reads a heading or line between the rows: those under "The day before"
// are not on the plan's clock.
func (r *reader) dayOf(text string) {
	switch {
	case len(text) > 60:
	case dayBefore.MatchString(text):
		r.earlier = true
	case itsDay.MatchString(text) || clockIn(text).kind == clock:
		r.earlier = false
	}
}

const nextDay = 24 * 60

// oneDay takes rows that seem to be of the day before for rows of the day when
// hardly any others are left.
func (r *reader) oneDay() {
	earlier, before := 0, -1
	for i := range r.entries {
		e := &r.entries[i]
		switch {
		case !e.earlier:
			before = -1
			continue
		case before == nextDay:
			e.earlier = false
			continue
		case e.stamp.kind == clock:
			at := usualHour(e.stamp)
			if at < before { // the clock begins again: it is the day itself
				e.earlier, before = false, nextDay
				continue
			}
			before = at
		}
		earlier++
	}
	if 2*earlier <= len(r.entries) {
		return
	}
	for i := range r.entries {
		r.entries[i].earlier = false
	}
}

// countsDown says whether the rows count to the end: "T-90", "T-20", "T-0".
func (r *reader) countsDown() bool {
	var numbers []int
	for _, e := range r.entries {
		switch e.stamp.kind {
		case offset:
			if e.stamp.number > 0 {
				return false
			}
			numbers = append(numbers, e.stamp.number)
		case clock, plus:
			return false
		case noStamp, digits, length, later, atStart, atSetUp, atFinish, following:
		}
	}
	return len(numbers) >= 3 && rises(numbers)
}

// finish is when the plan ends: as the document says, or the practical's.
func (r *reader) finish() (int, bool) {
	switch {
	case r.serves >= 0:
		return r.serves, true
	case r.o.Clock != nil:
		return int(r.o.Clock.Finish), true
	}
	return 0, false
}
