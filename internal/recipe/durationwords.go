package recipe

import "strings"

// timeUnits is minutes by unit, the usual slips of the pen among them.
var timeUnits = map[string]float64{
	"sec": 1.0 / 60, "secs": 1.0 / 60, "second": 1.0 / 60, "seconds": 1.0 / 60,
	"min": 1, "mins": 1, "minute": 1, "minutes": 1, "minutes'": 1, "minute's": 1, "mintue": 1, "mintues": 1, "mintes": 1, "mns": 1, "mn": 1,
	"minuts": 1, "minuets": 1, "minuet": 1, "minites": 1, "minite": 1, "miniutes": 1, "minuites": 1, "minuite": 1, "minuties": 1, "minuetes": 1, "minut": 1, "minues": 1,
	"h": 60, "hr": 60, "hrs": 60, "hour": 60, "hours": 60, "hour's": 60, "hours'": 60, "horus": 60, "huor": 60, "huors": 60, "hous": 60,
	"day": 1440, "days": 1440, "week": 10080, "weeks": 10080, "month": 43200, "months": 43200,
}

// timeUnit reads a unit of time.
func timeUnit(ts []token, i int) (float64, int) {
	t := at(ts, i)
	if t.kind == sign && t.text == "'" && !t.gap {
		return 1, i + 1
	}
	if t.kind != word {
		return 0, i
	}
	if t.text == "s" && !t.gap && at(ts, i-1).kind == number && at(ts, i-1).value >= 5 && at(ts, i-1).value <= 90 {
		return 1.0 / 60, i + 1 // "30s"
	}
	if t.text == "m" && !t.gap && at(ts, i-1).kind == number && at(ts, i-1).value >= 2 && (i+1 >= len(ts) || at(ts, i+1).kind == sign || at(ts, i+1).is("until", "or", "more", "each", "then", "and")) && !at(ts, i+1).is("/") {
		return 1, i + 1 // "for a further 20-30m"
	}
	u := timeUnits[t.text]
	if u == 0 && len(t.text) > 3 && t.text[0] == 'm' {
		u = timeUnits[strings.ReplaceAll(t.text, "l", "i")] // "mlnutes", read off a picture
	}
	if u == 0 {
		return 0, i
	}
	if at(ts, i+1).text == "." && !at(ts, i+1).gap && len(t.text) <= 4 && i+2 < len(ts) && (!at(ts, i+2).upper || at(ts, i+2).kind == sign) {
		return u, i + 2 // "min." inside a sentence
	}
	return u, i + 1
}

// namedStretch reads times that have a name: "overnight", "the whole day".
func namedStretch(ts []token, i int) (stretch, int) {
	switch t := at(ts, i); {
	case t.is("overnight", "over-night"):
		return stretch{480, 720, true}, i + 1
	case t.is("half-an-hour", "half-hour"):
		return stretch{low: 30, high: 30}, i + 1
	case t.is("quarter-hour"):
		return stretch{low: 15, high: 15}, i + 1
	case t.is("short") && at(ts, i+1).is("time", "while"):
		return stretch{3, 5, true}, i + 2
	case t.is("few") && timeUnits[at(ts, i+1).text] == 60:
		return stretch{120, 240, true}, i + 2
	case t.kind == word:
		if figure, unit, ok := strings.Cut(t.text, "-"); ok && timeUnits[unit] > 0 {
			if v, ok := wordNumber(figure); ok {
				return stretch{low: v * timeUnits[unit], high: v * timeUnits[unit]}, i + 1 // "ten-minute"
			}
		}
	}
	return stretch{}, i
}

// tens and ones make the numbers that are written as two words.
var (
	tens = map[string]float64{"twenty": 20, "thirty": 30, "forty": 40, "fourty": 40, "fifty": 50, "sixty": 60, "seventy": 70, "eighty": 80, "ninety": 90}
	ones = map[string]float64{"one": 1, "two": 2, "three": 3, "four": 4, "five": 5, "six": 6, "seven": 7, "eight": 8, "nine": 9}
)

// wordNumber is the value of a number word, hyphenated ones among them.
func wordNumber(w string) (float64, bool) {
	if v, ok := numberWords[w]; ok {
		return v, true
	}
	if ten, one, ok := strings.Cut(w, "-"); ok && tens[ten] > 0 && ones[one] > 0 {
		return tens[ten] + ones[one], true
	}
	v, ok := tens[w]
	return v, ok
}
