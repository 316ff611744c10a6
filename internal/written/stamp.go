package written

import (
	"regexp"
	"strconv"
	"strings"
)

// A stamp is a time as a cell or the head of a line gives it, before the rows
// around it have said what it means.
type stamp struct {
	kind    kind
	times   []option // what a clock time can mean, or the start of a range
	until   []option // the end of a range; empty: none
	number  int      // of digits alone, an offset or a length: minutes as written
	last    int      // of a range of digits alone: its end; -1: no range
	minutes int      // a length beside a clock time; 0: none
}

// kind is what sort of words a stamp is.
type kind int

// The kinds.
const (
	noStamp   kind = iota
	clock          // 9:05, 9.05 am, quarter past nine
	digits         // 905, 9, 0-10: the column says which
	length         // 5 mins
	offset         // 10 mins in: from the start
	plus           // +20: from the start or from the row before
	later          // 10 minutes later: from the row before
	atStart        // "start"
	atSetUp        // "set-up", "before"
	atFinish       // "end"
	following      // "next", "then", a ditto mark
)

// option is one meaning of a written clock time.
type option struct {
	at     int     // minutes after midnight
	cost   float64 // how unusual it is to write it so
	mended bool    // something else is written
}

// readStamp reads all of the text as a time. It fails when anything is left over.
func readStamp(text string) (stamp, bool) {
	if len(text) > longestStamp || !beginsTime(text) || !allTimeWords(text) {
		return stamp{}, false
	}
	if word, is := wordStamps[strings.Trim(strings.ToLower(strings.TrimSpace(text)), " .:-()")]; is {
		return stamp{kind: word, last: -1}, true
	}
	if m := minutesOnly.FindStringSubmatch(text); m != nil {
		return minuteStamp(m[1]), true
	}
	s, mended := tidy(text)
	if s == "" {
		return stamp{}, false
	}
	for _, read := range []func(*scanner) (stamp, bool){readOffset, readLength, readClock} {
		scan := scanner{rest: s}
		st, ok := read(&scan)
		if scan.space(); ok && scan.rest == "" {
			if mended {
				st.mend()
			}
			return st, true
		}
	}
	return stamp{}, false
}

// minutesOnly is ".05" under "9.00".
var minutesOnly = regexp.MustCompile(`^\s*[.:]\s*([0-5]\d)\s*$`)

// minuteStamp is so many minutes past any hour at which people cook.
func minuteStamp(digits string) stamp {
	st := stamp{kind: clock, last: -1}
	for h := 7; h < 23; h++ {
		st.times = append(st.times, option{at: 60*h + number(digits), cost: 0.1})
	}
	return st
}

var pastPattern = regexp.MustCompile(`(?i)^\s*(half|a quarter|quarter|five|ten|twenty[ -]five|twenty|[1-5]?\d)(?: minutes?| mins?)? (past|to)\W*$`)

// pastOnly is "ten past" or "quarter to" under "9 o'clock".
func pastOnly(text string) (stamp, bool) {
	m := pastPattern.FindStringSubmatch(text)
	if m == nil {
		return stamp{}, false
	}
	minutes := valueOf(strings.ToLower(m[1]))
	if strings.EqualFold(m[2], "to") {
		minutes = 60 - minutes
	}
	return minuteStamp(strconv.Itoa(minutes)), minutes < 60
}

var wordStamps = map[string]kind{
	"start": atStart, "start time": atStart, "begin": atStart,
	"set up": atSetUp, "set-up": atSetUp, "setup": atSetUp, "before": atSetUp, "before start": atSetUp, "beforehand": atSetUp, "prep": atSetUp,
	"end": atFinish, "finish": atFinish,
	"next": following, "then": following, "\"": following, "''": following, "”": following, "〃": following, "ditto": following, "same": following, "same time": following,
}

func (s *stamp) mend() {
	for i := range s.times {
		s.times[i].mended = true
	}
}

// readOffset reads "+20 min", "T+20", "T-10", "10 mins in", "after 10 mins", "10 minutes later".
func readOffset(s *scanner) (stamp, bool) {
	sign := 1
	before := s.words("start", "t")
	s.space()
	switch {
	case s.take("+"):
	case before && s.take("-"):
		sign = -1
	case before:
		return stamp{}, false
	case s.words("after"):
		n, ok := s.lengthOf(true)
		return stamp{kind: later, number: n, last: -1}, ok
	default:
		n, ok := s.lengthOf(true)
		s.space()
		switch {
		case ok && s.words("later", "after"):
			return stamp{kind: later, number: n, last: -1}, true
		case ok && s.words("before serving", "before service", "before the end", "before", "to go"):
			return stamp{kind: offset, number: -n, last: -1}, true
		case ok && s.words("in", "into", "from start", "from the start"):
			return stamp{kind: offset, number: n, last: -1}, true
		}
		return stamp{}, false
	}
	n, ok := s.lengthOf(false)
	if before {
		return stamp{kind: offset, number: sign * n, last: -1}, ok
	}
	return stamp{kind: plus, number: n, last: -1}, ok
}

// readLength reads "5 mins", "5-10 mins", "1 hr 15", "half an hour".
func readLength(s *scanner) (stamp, bool) {
	mark := s.rest
	if n, ok := s.number(3); ok && s.dash() {
		if m, ok := s.lengthOf(true); ok && m > n {
			return stamp{kind: length, number: n, last: m}, true
		}
	}
	s.rest = mark
	n, ok := s.lengthOf(true)
	return stamp{kind: length, number: n, last: -1}, ok
}

// readClock reads a clock time or digits alone, a range of them, and a length after it.
func readClock(s *scanner) (stamp, bool) {
	st := stamp{last: -1}
	first, ok := s.clock()
	if !ok {
		return st, false
	}
	st.kind, st.times, st.number = first.kind, first.times, first.number
	mark := s.rest
	if first.kind == clock && s.take("/") {
		if second, ok := s.clock(); ok && second.kind == clock {
			st.close(first, second)
			mark = s.rest
		}
		s.rest = mark
	} else if s.dash() || s.beside() {
		if _, is := (&scanner{s.rest}).lengthOf(true); is {
			s.rest = mark
		} else if second, ok := s.clock(); ok {
			st.close(first, second)
			mark = s.rest
		} else {
			s.rest = mark
		}
	}
	s.space()
	s.take("(")
	s.take("-")
	s.take(",")
	s.space()
	s.words("for", "approx", "about", "takes")
	s.space()
	if n, ok := s.lengthOf(true); ok {
		st.minutes = n
		s.take(")")
	} else {
		s.rest = mark
	}
	return st, true
}

// close gives the stamp its end.
func (st *stamp) close(first, second clockWord) {
	switch {
	case first.kind == digits && second.kind == digits && len(first.written) < 3:
		st.last = second.number
		st.until = second.times
	case second.kind == digits && len(second.written) <= 2 && len(first.times) > 0:
		minute := first.times[0].at % 60
		if second.number > minute && second.number < 60 {
			for _, o := range first.times {
				st.until = append(st.until, option{at: o.at - minute + second.number})
			}
		}
		st.until = append(st.until, second.times...)
	default:
		st.until = second.times
	}
	if first.kind == digits && second.kind == clock && len(first.times) > 0 {
		st.kind = clock
	}
}
