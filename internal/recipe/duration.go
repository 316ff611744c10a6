package recipe

import (
	"math"
	"strings"
)

// duration is a stretch of time that the text states.
type duration struct {
	least, most int // minutes
	exact       stretch
	from, to    int     // tokens
	open        bool    // no most: "at least", "or longer"
	capped      bool    // no least: "up to", "no more than"
	vague       bool    // "a few", "several", "overnight"
	rest        bool    // "the remaining 10 minutes"
	perGrams    float64 // the minutes are for so many grams of the food; 0: they are not
	rate        stretch // those minutes alone, without what is added to them
	reason      string  // how the minutes were worked out; empty: they stand in the text
	role        role
}

// role is what a stated time means in its sentence.
type role int

const (
	lasts      role = iota // the job lasts so long
	refersBack             // "after 45 minutes, add ...": speaks of the job before
	recurs                 // "every 10 minutes"
	ends                   // "10 minutes before the end", "for the last 5 minutes"
	describes              // "keeps 3 days"
)

// stretch is minutes as the text gives them, before rounding.
type stretch struct {
	low, high float64
	vague     bool
}

// durations finds every time that the tokens state, in order.
func durations(ts []token) []duration {
	var out []duration
	for i := 0; i < len(ts); {
		d, next := readDuration(ts, i)
		if next == i {
			i++
			continue
		}
		d.from, d.to = i, next
		qualify(ts, &d)
		out = append(out, d)
		i = d.to
	}
	return out
}

// readDuration reads one stretch of time, or a range, that begins at token i.
func readDuration(ts []token, i int) (duration, int) {
	if !mayBeginTime(ts, i) {
		return duration{}, i
	}
	between := at(ts, i).is("between")
	s, next := readStretch(ts, i)
	if next == i && between {
		s, next = readStretch(ts, i+1)
		next -= boolInt(next == i+1)
	}
	if next == i {
		s, next = elliptical(ts, i)
	}
	if next == i {
		return duration{}, i
	}
	if other, end := rangeTail(ts, next, between); end > next && other.high >= s.low {
		s.high, next = max(s.high, other.high), end // "20 minutes to half an hour"
	}
	d := duration{vague: s.vague}
	if least, end := atLeast(ts, i, next); end > next {
		s.low, next = least.low, end // "overnight, or for at least 8 hours"
	}
	d.last(s)
	return d, next
}

// last sets how long the time is.
func (d *duration) last(s stretch) {
	d.exact, d.least, d.most = s, minutes(s.low), minutes(s.high)
}

// times is the time gone through n times.
func (d *duration) times(n int) {
	d.last(stretch{d.exact.low * float64(n), d.exact.high * float64(n), d.exact.vague})
}

// plus is the time and another after it.
func (d *duration) plus(other duration) {
	d.last(stretch{d.exact.low + other.exact.low, d.exact.high + other.exact.high, d.exact.vague})
}

// mayBeginTime is a quick look whether a time can begin at token i.
func mayBeginTime(ts []token, i int) bool {
	t := at(ts, i)
	switch t.kind {
	case number:
		return true
	case word:
		_, figure := wordNumber(t.text)
		return figure || t.is("a", "an", "between", "couple", "few", "several", "some", "overnight", "over-night", "quarter", "three", "half", "short") || timeUnits[t.text] > 0 || strings.Contains(t.text, "-")
	}
	return false
}

// readStretch reads a time without a range of two units: "1 hr 20", "half an hour", "5-7 min".
func readStretch(ts []token, i int) (stretch, int) {
	if s, next := namedStretch(ts, i); next > i {
		return s, next
	}
	if s, next := clockStretch(ts, i); next > i {
		return s, next
	}
	q, next := readQuantity(ts, i)
	if next == i {
		if !oneOfUnit(ts, i) {
			return stretch{}, i
		}
		q = stretch{low: 1, high: 1}
	}
	next = fillers(ts, next)
	unit, after := timeUnit(ts, next)
	if unit == 0 {
		return stretch{}, i
	}
	s := stretch{q.low * unit, q.high * unit, q.vague}
	more, end := smaller(ts, after, unit)
	return stretch{s.low + more.low, s.high + more.high, s.vague}, end
}

// oneOfUnit says that the unit at i stands for one of it: "another hour", "every minute".
func oneOfUnit(ts []token, i int) bool {
	t := at(ts, i)
	return t.kind == word && timeUnits[t.text] >= 1 && !strings.HasSuffix(t.text, "s") &&
		at(ts, i-1).is("another", "further", "extra", "additional", "every", "each", "last", "final", "first", "good", "full", "whole") && (timeUnits[t.text] < 1440 || at(ts, i-1).is("another", "every", "full", "whole"))
}

// clockStretch reads "1:30 hours".
func clockStretch(ts []token, i int) (stretch, int) {
	h, m := at(ts, i), at(ts, i+2)
	if h.kind != number || !at(ts, i+1).is(":") || m.kind != number || m.gap || m.value >= 60 {
		return stretch{}, i
	}
	if unit, after := timeUnit(ts, i+3); unit == 60 {
		v := h.value*60 + m.value
		return stretch{low: v, high: v}, after
	}
	return stretch{}, i
}

// readQuantity reads how many of a unit: a figure, a range, "a", "half an", "a couple of", "3 x 10".
func readQuantity(ts []token, i int) (stretch, int) {
	if s, next := looseQuantity(ts, i); next > i {
		return s, next
	}
	if s, next := fractionOf(ts, i); next > i {
		return s, next
	}
	s, next := readSpan(ts, i)
	if next == i {
		return stretch{}, i
	}
	if at(ts, next).is("x") && s.low <= 6 {
		if other, end := readSpan(ts, next+1); end > next+1 {
			return stretch{low: s.low * other.low, high: s.high * other.high}, end // "3 x 10 minutes"
		}
	}
	if link := at(ts, next); link.is("/", "until", "till") && s.low == s.high {
		if high, end := readNumber(ts, next+1); end > next+1 && high > s.low && high <= 4*s.low {
			return stretch{low: s.low, high: high}, end // "10/15 minutes"
		}
	}
	return stretch{low: s.low, high: s.high}, next
}

// looseQuantity reads "a", "a couple of", "a few more", "several".
func looseQuantity(ts []token, i int) (stretch, int) {
	j := i
	if at(ts, j).is("a", "an") {
		j++
	}
	q := stretch{low: 1, high: 1}
	switch t := at(ts, j); {
	case t.is("couple"):
		q = stretch{2, 2, true}
	case t.is("few"):
		q = stretch{2, 4, true}
	case t.is("several"):
		q = stretch{4, 6, true}
	case t.is("some") && timeUnits[at(ts, j+1).text] > 0:
		q = stretch{3, 5, true}
	case j > i && fillers(ts, j) > j || j > i && timeUnits[t.text] >= 1:
		return q, j // "a good hour"
	default:
		return stretch{}, i
	}
	j++
	if at(ts, j).is("of") {
		j++
	}
	return q, j
}

// fractionOf reads "half an", "three quarters of an", "3/4 of an", "half to three quarters of an".
func fractionOf(ts []token, i int) (stretch, int) {
	low, j := fraction(ts, i)
	if j == i {
		return stretch{}, i
	}
	high := low
	if at(ts, j).is("to", "-", "or") {
		if v, k := fraction(ts, j+1); k > j+1 && v > low {
			high, j = v, k
		}
	}
	end := j
	if at(ts, end).is("of") {
		end++
	}
	if at(ts, end).is("a", "an", "-") || end > j {
		end += boolInt(at(ts, end).is("a", "an", "-"))
		return stretch{low: low, high: high}, end
	}
	if timeUnits[at(ts, j).text] > 0 {
		return stretch{low: low, high: high}, j
	}
	return stretch{}, i
}

// fraction reads a part of one: "half", "a quarter", "three quarters", "3/4", "½".
func fraction(ts []token, i int) (float64, int) {
	j := i
	if at(ts, j).is("a") {
		j++
	}
	switch {
	case at(ts, j).is("half"):
		return 0.5, j + 1
	case at(ts, j).is("quarter"):
		return 0.25, j + 1
	case at(ts, j).is("three") && at(ts, j+1).is("quarters", "quarter"):
		return 0.75, j + 2
	}
	if v, next := readNumber(ts, i); next > i && v < 1 {
		return v, next
	}
	return 0, i
}

// fillers passes over what may stand between figure and unit: "10 more minutes", "20 or so", "20-minute", "20+", "10ish".
func fillers(ts []token, i int) int {
	for {
		t := at(ts, i)
		switch {
		case t.is("-") && (!t.gap || timeUnits[at(ts, i+1).text] > 0), t.is("+"), t.is("ish"):
			i++
		case t.is("more", "further", "extra", "additional", "full", "whole", "good", "solid", "odd", "short"):
			i++
		case t.is("or") && at(ts, i+1).is("so", "more"):
			i += 2
		case t.is("so") && at(ts, i-1).kind == number:
			i++
		default:
			return i
		}
	}
}

// smaller reads what may follow a unit: "1 hr 20", "an hour and a half", "1 hour 20 to 30 minutes", "1 minute 30 seconds".
func smaller(ts []token, i int, unit float64) (stretch, int) {
	if unit != 60 && unit != 1 {
		return stretch{}, i
	}
	if half, end := andAHalf(ts, 0, i); end > i {
		return stretch{low: half * unit, high: half * unit}, end
	}
	j := i
	if at(ts, j).is("and", ",", "&") {
		j++
	}
	q, next := readSpan(ts, j)
	if next == j || q.high >= 60 {
		return stretch{}, i
	}
	u, after := timeUnit(ts, next)
	if at(ts, next).is("m") {
		u, after = 1, next+1
	}
	if u > 0 && u < unit && (j == i || u == 1 || at(ts, j-1).is("and")) {
		return stretch{low: q.low * u, high: q.high * u}, after
	}
	if v, end := readNumber(ts, j); unit == 60 && bareMinutes(ts, v, end, j > i) {
		return stretch{low: v, high: v}, end
	}
	return stretch{}, i
}

// bareMinutes says that a figure after hours stands for minutes without saying so: "1 hr 30", "1 hour and 30".
func bareMinutes(ts []token, v float64, next int, joined bool) bool {
	t := at(ts, next)
	if v != math.Trunc(v) || v < 5 || joined && math.Mod(v, 5) != 0 {
		return false
	}
	if t.is("-", "to") {
		_, end := readStretch(ts, next+1)
		return end > next+1 // "1 hr 10 - 1 hr 20"
	}
	return (t.kind == sign || t.kind == word && !units[t.text] && !joined || next >= len(ts)) && !t.is("g", "°", "c", "f", "/", "degrees")
}

// minutes rounds up, so that seconds count as a minute.
func minutes(v float64) int { return int(math.Ceil(v - 1e-9)) }
