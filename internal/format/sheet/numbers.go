package sheet

import (
	"math"
	"strconv"
	"strings"
	"time"
)

// show is what a number shows in a format, and the minutes since midnight when
// it shows a time of day or less than a day of hours; -1 otherwise.
func show(value float64, code string, from1904 bool) (text string, clock int) {
	if code == "" || math.IsNaN(value) || math.IsInf(value, 0) || math.Abs(value) > 1e15 {
		return plainNumber(value), -1
	}
	list := sections(code)
	at := list[0]
	switch {
	case value < 0 && len(list) > 1:
		at, value = list[1], -value
	case value == 0 && len(list) > 2:
		at = list[2]
	}
	for _, t := range at {
		if t.kind == moment || t.kind == elapsed {
			return showTime(value, at, from1904)
		}
	}
	return showNumber(value, at), -1
}

// plainNumber is a number with up to eleven figures, as a cell without a format
// shows it.
func plainNumber(value float64) string {
	rounded, err := strconv.ParseFloat(strconv.FormatFloat(value, 'g', 11, 64), 64)
	if err != nil || math.Abs(value) >= 1e15 {
		return strconv.FormatFloat(value, 'g', 6, 64)
	}
	return strconv.FormatFloat(rounded, 'f', -1, 64)
}

// lastDay is the day number of 31 December 9999.
const lastDay = 2958465

// showTime is a date, a time or a length of time. Days count from the end of
// 1899 or from 1904 (ECMA-376 part 1, 18.17.4.1).
func showTime(value float64, at []token, from1904 bool) (string, int) {
	if value < 0 || value > lastDay+1 {
		return plainNumber(value), -1
	}
	seconds := int64(math.Round(value * 86400))
	first := time.Date(1899, 12, 30, 0, 0, 0, 0, time.UTC)
	if from1904 {
		first = time.Date(1904, 1, 1, 0, 0, 0, 0, time.UTC)
	} else if value < 60 { // the year 1900 is taken for a leap year
		first = first.AddDate(0, 0, 1)
	}
	when := first.AddDate(0, 0, int(seconds/86400)).Add(time.Duration(seconds%86400) * time.Second)
	half, hours, lasts := false, false, false
	for _, t := range at {
		half = half || t.kind == halfDays
		hours = hours || t.kind == moment && (t.text[0] == 'h' || t.text[0] == 's') || t.kind == halfDays
		lasts = lasts || t.kind == elapsed
	}
	var b strings.Builder
	for i, t := range at {
		switch t.kind {
		case moment:
			b.WriteString(part(t.text, when, half, minutes(at, i)))
		case elapsed:
			unit := map[byte]int64{'h': 3600, 'm': 60, 's': 1}[t.text[0]]
			b.WriteString(padded(seconds/unit, len(t.text)))
		case halfDays:
			b.WriteString(noon(when, t.text))
		case '#', '?', '0', '@', general:
		default:
			b.WriteString(t.text)
		}
	}
	clock := int(seconds % 86400 / 60)
	if !hours && !lasts || lasts && seconds >= 86400 {
		clock = -1
	}
	return strings.TrimSpace(b.String()), clock
}

func noon(when time.Time, signs string) string {
	half := len(signs) / 2
	if when.Hour() < 12 {
		return signs[:half]
	}
	return signs[half:]
}

// minutes says whether an m stands for minutes: after hours or before seconds.
func minutes(at []token, i int) bool {
	for k := i - 1; k >= 0; k-- {
		if at[k].kind == moment || at[k].kind == elapsed {
			if at[k].text[0] == 'h' {
				return true
			}
			break
		}
	}
	for k := i + 1; k < len(at); k++ {
		if at[k].kind == moment || at[k].kind == elapsed {
			return at[k].text[0] == 's'
		}
	}
	return false
}

// part is a part of a date or time.
func part(text string, when time.Time, half, minutes bool) string {
	n := len(text)
	switch text[0] {
	case 'y':
		if n <= 2 {
			return when.Format("06")
		}
		return when.Format("2006")
	case 'd':
		return []string{"", strconv.Itoa(when.Day()), when.Format("02"), when.Format("Mon"), when.Format("Monday")}[min(n, 4)]
	case 'h':
		hour := when.Hour()
		if half {
			hour = (hour+11)%12 + 1
		}
		return padded(int64(hour), n)
	case 's':
		return padded(int64(when.Second()), n)
	}
	if minutes {
		return padded(int64(when.Minute()), n)
	}
	return []string{"", strconv.Itoa(int(when.Month())), when.Format("01"), when.Format("Jan"), when.Format("January"), when.Format("Jan")[:1]}[min(n, 5)]
}

func padded(n int64, width int) string {
	s := strconv.FormatInt(n, 10)
	return strings.Repeat("0", max(0, min(width, 9)-len(s))) + s
}

// shape is how a code writes a number.
type shape struct {
	whole, least   int // places before the point, and how many of them are always there
	decimals, kept int // places after it, and how many of them are always there
	thousands      bool
	scale          float64
	point          int  // index of the point, or where it would be
	special        bool // a fraction or a power of ten
	digits         bool
}

func shapeOf(at []token) shape {
	s := shape{scale: 1, point: len(at)}
	for i, t := range at {
		switch t.kind {
		case '0', '#', '?':
			s.digits = true
			if s.point < i {
				s.decimals++
				if t.kind == '0' {
					s.kept = s.decimals
				}
				continue
			}
			s.whole++
			if t.kind == '0' || s.least > 0 {
				s.least++
			}
		case '.':
			s.point = min(s.point, i)
		case '%':
			s.scale *= 100
		case ',':
			if i+1 < len(at) && strings.IndexByte("0#?", at[i+1].kind) >= 0 {
				s.thousands = s.thousands || s.digits && s.point > i
			} else if s.digits {
				s.scale /= 1000
			}
		case '/', exponent:
			s.special = true
		}
	}
	return s
}

// showNumber is a number in the places of a code, with its words around it.
func showNumber(value float64, at []token) string {
	s := shapeOf(at)
	if !s.digits || s.special {
		return worded(value, at, s)
	}
	figures := strconv.FormatFloat(math.Abs(value)*s.scale, 'f', min(s.decimals, 15), 64)
	whole, fraction, _ := strings.Cut(figures, ".")
	for len(fraction) > s.kept && fraction[len(fraction)-1] == '0' {
		fraction = fraction[:len(fraction)-1]
	}
	if whole = strings.TrimLeft(whole, "0"); len(whole) < s.least {
		whole = strings.Repeat("0", s.least-len(whole)) + whole
	}
	var b strings.Builder
	if value < 0 && strings.Trim(figures, "0.") != "" {
		b.WriteByte('-')
	}
	seen, done := 0, false
	for i, t := range at {
		switch t.kind {
		case '0', '#', '?':
			if i > s.point {
				if !done {
					b.WriteString(fraction)
				}
				done = true
				continue
			}
			left := s.whole - seen // places that are still to come, with this one
			seen++
			take := len(whole) - left + 1
			if take > 0 {
				b.WriteString(grouped(whole[:take], left-1, s.thousands))
				whole = whole[take:]
			}
		case '.':
			if fraction != "" || s.kept > 0 {
				b.WriteByte('.')
			}
		case ',':
		case general:
			b.WriteString(plainNumber(value))
		default:
			b.WriteString(t.text)
		}
	}
	return strings.TrimSpace(b.String())
}

// grouped puts a comma where thousands end; after is how many figures follow.
func grouped(figures string, after int, thousands bool) string {
	if !thousands {
		return figures
	}
	var b strings.Builder
	for i := range len(figures) {
		b.WriteByte(figures[i])
		if rest := len(figures) - i - 1 + after; rest > 0 && rest%3 == 0 {
			b.WriteByte(',')
		}
	}
	return b.String()
}

// worded is a number whose code has no places for figures, or is a fraction or
// a power of ten; these are shown as usual.
func worded(value float64, at []token, s shape) string {
	var b strings.Builder
	shown := false
	for _, t := range at {
		switch t.kind {
		case literal:
			b.WriteString(t.text)
		case general, '@', '0', '#', '?':
			if !shown {
				b.WriteString(special(value, at, s))
			}
			shown = true
		case '%':
			b.WriteByte('%')
		}
	}
	return strings.TrimSpace(b.String())
}

func special(value float64, at []token, s shape) string {
	after := 0
	for i, t := range at {
		if t.kind == exponent {
			return strings.ToUpper(strconv.FormatFloat(value, 'e', min(s.decimals, 6), 64))
		}
		if t.kind == '/' {
			for _, d := range at[i+1:] {
				if d.kind == '?' || d.kind == '#' || d.kind == '0' {
					after++
				}
			}
			return mixed(value, after)
		}
	}
	return plainNumber(value)
}

// mixed is a number as a whole and a fraction whose lower part has so many figures.
func mixed(value float64, figures int) string {
	sign := ""
	if value < 0 {
		sign, value = "-", -value
	}
	whole, rest := math.Modf(value)
	most := int(math.Pow10(min(max(figures, 1), 3))) - 1
	up, down, off := 0, 1, rest
	for d := 1; d <= most; d++ {
		n := math.Round(rest * float64(d))
		if miss := math.Abs(rest - n/float64(d)); miss < off-1e-12 {
			up, down, off = int(n), d, miss
		}
	}
	if up == down {
		whole, up = whole+1, 0
	}
	switch {
	case up == 0:
		return sign + strconv.FormatFloat(whole, 'f', 0, 64)
	case whole == 0:
		return sign + strconv.Itoa(up) + "/" + strconv.Itoa(down)
	}
	return sign + strconv.FormatFloat(whole, 'f', 0, 64) + " " + strconv.Itoa(up) + "/" + strconv.Itoa(down)
}

// clockOf is the time of day of a moment written by ISO 8601, -1 without one.
func clockOf(value string) int {
	_, at, has := strings.Cut(value, "T")
	if !has {
		at = value
	}
	when, err := time.Parse("15:04", at[:min(len(at), 5)])
	if err != nil {
		return -1
	}
	return when.Hour()*60 + when.Minute()
}
