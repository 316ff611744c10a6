package written

import (
	"strconv"
	"strings"
)

// clockWord is one time of day as written.
type clockWord struct {
	kind    kind
	written string
	number  int
	times   []option
}

// scanner takes a tidied text from the left.
type scanner struct{ rest string }

func (s *scanner) space() { s.rest = strings.TrimLeft(s.rest, " ") }

func (s *scanner) take(prefix string) bool {
	rest, ok := strings.CutPrefix(s.rest, prefix)
	if ok {
		s.rest = rest
	}
	return ok
}

// words takes one of the words, when a word ends there.
func (s *scanner) words(any ...string) bool {
	for _, w := range any {
		if rest, ok := strings.CutPrefix(s.rest, w); ok && (rest == "" || rest[0] < 'a' || rest[0] > 'z') {
			s.rest = rest
			return true
		}
	}
	return false
}

// dash takes what stands between the ends of a range.
func (s *scanner) dash() bool {
	mark := s.rest
	s.space()
	for _, d := range []string{"->", "→", "-", "~", ">"} {
		if s.take(d) {
			s.space()
			return true
		}
	}
	if s.words("to", "until", "till", "til", "and") {
		s.space()
		return true
	}
	s.rest = mark
	return false
}

// beside takes the space before a second clock time.
func (s *scanner) beside() bool {
	next := scanner{strings.TrimLeft(s.rest, " ")}
	if next.rest == s.rest {
		return false
	}
	w, ok := next.clock()
	if ok && w.kind == clock {
		s.space()
		return true
	}
	return false
}

// number takes 1 to most digits that no digit follows.
func (s *scanner) number(most int) (int, bool) {
	n := 0
	for n < len(s.rest) && s.rest[n] >= '0' && s.rest[n] <= '9' {
		n++
	}
	if n == 0 || n > most {
		return 0, false
	}
	value, err := strconv.Atoi(s.rest[:n])
	s.rest = s.rest[n:]
	return value, err == nil
}

// clock takes a time of day or digits that may be one.
func (s *scanner) clock() (clockWord, bool) {
	if w, ok := s.spoken(); ok {
		return w, true
	}
	mark := s.rest
	h, ok := s.number(4)
	if !ok {
		s.rest = mark
		return clockWord{}, false
	}
	written := mark[:len(mark)-len(s.rest)]
	if after := s.rest; len(written) <= 2 && (s.take(":") || s.take(".") || s.take("h")) {
		dot := after[0] == '.'
		minutes := s.rest
		m, ok := s.number(2)
		if seconds := s.rest; ok && (s.take(":") || s.take(".")) {
			if _, is := s.number(2); !is {
				s.rest = seconds
			}
		}
		if ok && h < 25 && m < 60 {
			return clockWord{clock, written, h, s.halfDay(h, m, dot && len(minutes)-len(strings.TrimLeft(minutes, "0123456789")) == 1)}, true
		}
		s.rest = after
	}
	w := clockWord{digits, written, h, nil}
	hour, minute := h, 0
	if len(written) >= 3 {
		hour, minute = h/100, h%100
	}
	if hour > 24 || minute > 59 {
		return w, true
	}
	half := s.half()
	w.times = hoursOf(hour, half, []option{{at: minute}})
	if half != "" || s.words("o'clock", " o'clock", " oclock", "hrs", "h", " hrs", " hours", " h") {
		w.kind = clock
	}
	return w, true
}

// half takes am or pm: its first letter.
func (s *scanner) half() string {
	mark := s.rest
	s.space()
	for _, w := range []string{"am", "pm", "a.m.", "p.m.", "a.m", "p.m", "noon", "a", "p"} {
		if s.words(w) {
			return w[:1]
		}
	}
	s.rest = mark
	return ""
}

// halfDay takes am or pm and gives what h:m can mean. Of one figure after a dot,
// "9.5" is 9.05, or what a sheet leaves of 9.50; "9.3" is sooner 9.30.
func (s *scanner) halfDay(h, m int, short bool) []option {
	half := s.half()
	if half == "" {
		s.words("hrs", "hr", "h", " hrs", " hr", " h")
	}
	minutes := []option{{at: m}}
	switch {
	case short && m == 5:
		minutes = []option{{at: 5, mended: true}, {at: 50, cost: 1, mended: true}}
	case short && m > 0 && m < 5:
		minutes = []option{{at: 10 * m, mended: true}, {at: m, cost: 1, mended: true}}
	}
	return hoursOf(h, half, minutes)
}

// hoursOf gives the meanings of an hour with its minutes.
func hoursOf(h int, half string, minutes []option) (all []option) {
	for _, m := range minutes {
		at := func(hour int, cost float64, mended bool) {
			all = append(all, option{hour*60 + m.at, m.cost + cost, m.mended || mended})
		}
		switch {
		case half == "p" && h < 12:
			at(h+12, 0, false)
		case half == "a" && h == 12:
			at(12, 0.5, true) // "12.05 am" is seldom past midnight
			at(24, 3, false)
		case half != "" && h <= 12:
			at(h, 0, false)
		case h == 0:
			at(0, 0, false)
			at(24, 0, false)
		case h < 12:
			at(h, 0, false)
			at(h+12, 0, true)
		case h == 12:
			at(12, 0, false)
			at(24, 0.5, true)
		default:
			at(h, 0, false)
		}
	}
	return all
}
