package webpage

import (
	"fmt"
	"math"
	"strconv"
	"strings"
	"time"
)

// maxDuration is the longest duration that is read: a hundred years.
const maxDuration = 100 * 366 * 24 * time.Hour

// ParseDuration reads a duration of ISO 8601: P3DT4H, PT1H30M, P2W, PT0.5H, and
// the extended form P0000-00-01T02:30:00. Years and months other than zero are
// refused, because they have no fixed length; so are negative ones.
func ParseDuration(s string) (time.Duration, error) {
	wrong := func(what string) (time.Duration, error) {
		return 0, fmt.Errorf("%.40q is not a duration of ISO 8601: %s; an hour and a half is PT1H30M", s, what)
	}
	rest, ok := strings.CutPrefix(strings.TrimSpace(s), "P")
	if !ok {
		return wrong("it does not begin with P")
	}
	if len(rest) == len("0000-00-00T00:00:00") && rest[4] == '-' {
		return extended(rest, wrong)
	}
	date, clock, timed := strings.Cut(rest, "T")
	if timed && clock == "" || date == "" && clock == "" {
		return wrong("no amount follows")
	}
	var sum float64 // seconds
	for _, part := range []struct{ text, units string }{{date, "YMWD"}, {clock, "HMS"}} {
		seconds, what := amounts(part.text, part.units)
		if what != "" {
			return wrong(what)
		}
		sum += seconds
	}
	if sum > maxDuration.Seconds() {
		return wrong("it is longer than a hundred years")
	}
	return time.Duration(math.Round(sum * float64(time.Second))), nil
}

// seconds of each unit, of the date's and of the clock's.
var seconds = map[string]map[byte]float64{
	"YMWD": {'W': 7 * 86400, 'D': 86400},
	"HMS":  {'H': 3600, 'M': 60, 'S': 1},
}

// amounts sums numbers with their units, which come in the order given, each at
// most once; only the last may have a fraction. What says why it could not.
func amounts(text, units string) (sum float64, what string) {
	left, fraction := units, false
	for text != "" {
		n := strings.IndexFunc(text, func(r rune) bool { return (r < '0' || r > '9') && r != '.' && r != ',' })
		if n <= 0 {
			return 0, "a number or its unit is missing"
		}
		if fraction {
			return 0, "only the last number may have a fraction"
		}
		digits := strings.Replace(text[:n], ",", ".", 1)
		value, err := strconv.ParseFloat(digits, 64)
		if err != nil || digits[0] == '.' || digits[n-1] == '.' {
			return 0, fmt.Sprintf("%.20q is not a number", text[:n])
		}
		fraction = strings.Contains(digits, ".")
		at := strings.IndexByte(left, text[n])
		if at < 0 {
			return 0, fmt.Sprintf("%.1q stands in the wrong place", text[n:])
		}
		size := seconds[units][text[n]]
		if size == 0 && value != 0 {
			return 0, "years and months have no fixed length"
		}
		sum += value * size
		left, text = left[at+1:], text[n+1:]
	}
	return sum, ""
}

// extended reads 0000-00-01T02:30:00.
func extended(s string, wrong func(string) (time.Duration, error)) (time.Duration, error) {
	var n [6]int
	for i, at := range []struct{ from, to int }{{0, 4}, {5, 7}, {8, 10}, {11, 13}, {14, 16}, {17, 19}} {
		v, err := strconv.ParseUint(s[at.from:at.to], 10, 16)
		if err != nil {
			return wrong("the extended form is P0000-00-00T00:00:00")
		}
		n[i] = int(v)
	}
	if s[7] != '-' || s[10] != 'T' || s[13] != ':' || s[16] != ':' || n[1] > 12 || n[2] > 30 || n[3] > 24 || n[4] > 60 || n[5] > 60 {
		return wrong("the extended form is P0000-00-00T00:00:00")
	}
	if n[0] > 0 || n[1] > 0 {
		return wrong("years and months have no fixed length")
	}
	return time.Duration(n[2]*86400+n[3]*3600+n[4]*60+n[5]) * time.Second, nil
}
