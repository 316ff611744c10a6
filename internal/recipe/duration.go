package recipe

import "math"

// duration is a stretch of time that the text states.
type duration struct {
	least, most int  // minutes
	from, to    int  // tokens
	open        bool // no most: "at least", "or longer"
	capped      bool // no least: "up to", "no more than"
	vague       bool // "a few", "several", "overnight"
	role        role
}

// role is what a stated time means in its sentence.
type role int

const (
	lasts      role = iota // the job lasts so long
	refersBack             // "after 45 minutes, add ...": speaks of the job before
	recurs                 // "every 10 minutes"
	ends                   // "10 minutes before the end", "for the last 5 minutes"
	describes              // "a 10-minute rest"
)

// timeUnits is minutes by unit.
var timeUnits = map[string]float64{
	"sec": 1.0 / 60, "secs": 1.0 / 60, "second": 1.0 / 60, "seconds": 1.0 / 60,
	"min": 1, "mins": 1, "minute": 1, "minutes": 1, "minuts": 1, "minutes'": 1, "mintues": 1,
	"h": 60, "hr": 60, "hrs": 60, "hour": 60, "hours": 60, "hour's": 60, "day": 1440, "days": 1440, "week": 10080, "weeks": 10080, "month": 43200, "months": 43200,
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

// readDuration reads one stretch of time that begins at token i.
func readDuration(ts []token, i int) (duration, int) {
	if d, next := wordyDuration(ts, i); next > i {
		return d, next
	}
	s, next := readSpan(ts, i)
	if next == i {
		return duration{}, i
	}
	if at(ts, next).is("-") && !at(ts, next).gap {
		next++ // "10-minute"
	}
	for at(ts, next).is("more", "further", "extra", "additional", "full", "whole", "good") || at(ts, next).is("or", "so") && at(ts, next+boolInt(at(ts, next).is("or"))).is("so") {
		next++ // "10 more minutes", "20 or so minutes"
	}
	unit, after := timeUnit(ts, next)
	if unit == 0 {
		return mixedUnits(ts, i)
	}
	low, high := s.low*unit, s.high*unit
	if unit == 60 {
		extra, end := minutesAfterHours(ts, after)
		low, high, after = low+extra, high+extra, end
	} else if half, end := andAHalf(ts, 0, after); end > after {
		low, high, after = low+half*unit, high+half*unit, end
	}
	if other, end := rangeTail(ts, after); end > after && other >= low {
		high, after = other, end // "20 minutes to half an hour"
	}
	return duration{least: minutes(low), most: minutes(high)}, after
}

// mixedUnits reads ranges whose first figure has another unit ("30 mins - 1 hour").
func mixedUnits(ts []token, i int) (duration, int) {
	v, next := readNumber(ts, i)
	unit, after := timeUnit(ts, next)
	if next == i || unit == 0 {
		return duration{}, i
	}
	low := v * unit
	if unit == 60 {
		extra, end := minutesAfterHours(ts, after)
		low, after = low+extra, end
	}
	return duration{least: minutes(low), most: minutes(low)}, after
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
	if t.text == "m" && !t.gap {
		return 0, i // metres
	}
	u := timeUnits[t.text]
	if u == 0 {
		return 0, i
	}
	if at(ts, i+1).text == "." && !at(ts, i+1).gap && len(t.text) <= 4 && !at(ts, i+2).upper && i+2 < len(ts) {
		return u, i + 2 // "min." inside a sentence
	}
	return u, i + 1
}

// minutesAfterHours reads the "30", "30 min", "and 15 minutes", "and a quarter" that may follow hours.
func minutesAfterHours(ts []token, i int) (float64, int) {
	j := i
	if at(ts, j).is("and", ",") {
		j++
	}
	if at(ts, j).is("a") && j > i {
		switch at(ts, j+1).text {
		case "half":
			return 30, j + 2
		case "quarter":
			return 15, j + 2
		}
		return 0, i
	}
	v, next := readNumber(ts, j)
	if next == j || v >= 60 {
		return 0, i
	}
	t := at(ts, next)
	if u := timeUnits[t.text]; u == 1 || t.text == "m" {
		return v, next + 1
	}
	if j == i && v == math.Trunc(v) && v >= 5 && (t.kind == sign || t.kind == word && !units[t.text]) && !t.is("g", "°", "c", "f", "-", "/") {
		return v, next // "1 hr 30"
	}
	return 0, i
}

// rangeTail reads "to half an hour" after a first time with its own unit.
func rangeTail(ts []token, i int) (float64, int) {
	if !at(ts, i).is("to", "-", "or") {
		return 0, i
	}
	d, next := readDuration(ts, i+1)
	if next == i+1 {
		return 0, i
	}
	return float64(d.most), next
}

// minutes rounds up, so that seconds count as a minute.
func minutes(v float64) int { return int(math.Ceil(v - 1e-9)) }

// qualify widens the stretch by the words around it and says what it means.
func qualify(ts []token, d *duration) {
	for back := d.from - 1; back >= 0 && back >= d.from-4; back-- {
		switch t := at(ts, back); {
		case t.is("about", "around", "approx", "approximately", "roughly", "another", "further", "the", "a", "~", "≈", "(", "more", "additional", "next", "first", "just", ".", "some", "only", "for", "extra", "full", "good"):
			if t.is("first") {
				d.role = ends
			}
			if t.is("last", "final") {
				d.role = ends
			}
			continue
		case t.is("last", "final", "remaining"):
			d.role = ends
			continue
		case t.is("least", "minimum"):
			d.open = true
		case t.is("to") && at(ts, back-1).is("up"), t.is("than") && at(ts, back-1).is("more") && at(ts, back-2).is("no"), t.is("maximum", "most", "within"):
			d.capped = true
		case t.is("keep", "keeps", "store", "stores", "lasts"):
			d.role = describes
		case t.is("after"):
			d.role = refersBack
		case t.is("every", "each"):
			d.role = recurs
		case t.is("at") && at(ts, d.to).is("to") && d.least == d.most:
			d.role = recurs
		}
		break
	}
	qualifyAfter(ts, d)
	if before := ts[max(0, d.from-9):d.from]; has(before, "each side", "per side", "either side") && d.role == lasts {
		d.least, d.most = 2*d.least, 2*d.most
	}
}

func qualifyAfter(ts []token, d *duration) {
	t, u := at(ts, d.to), at(ts, d.to+1)
	switch {
	case t.is("before") && u.is("the", "end", "serving", "it", "they") && has(ts[d.to:min(d.to+4, len(ts))], "end", "ready", "done", "serve", "time", "finish"):
		if !u.is("serving") {
			d.role = ends
		}
	case t.is("or") && u.is("longer", "more", "overnight"), t.is("plus", "+"), t.is("minimum"):
		d.open = true
		if u.is("overnight") {
			d.most, d.open = max(d.most, 720), false
		}
	case t.is("per", "a", "each", "on", "either") && sides(ts[d.to:min(d.to+4, len(ts))]):
		d.least, d.most = 2*d.least, 2*d.most
	case t.is("per") && !sides(ts[d.to:min(d.to+4, len(ts))]):
		d.vague = true
	}
}

// sides says "each side", "per side", "on both sides", "a side".
func sides(ts []token) bool {
	return has(ts, "side") && !has(ts, "one side", "first side", "other side") && (has(ts, "each", "per", "both", "either") || at(ts, 0).is("a"))
}

// wordyDuration reads times without digits: "half an hour", "a few minutes", "overnight".
func wordyDuration(ts []token, i int) (duration, int) {
	t := at(ts, i)
	if t.kind != word {
		return duration{}, i
	}
	for _, p := range wordyTimes {
		if t.stem == p.stems[0] && matchAt(ts, i, p.stems) {
			next := i + len(p.stems)
			low, high := p.low, p.high
			if p.hours {
				extra, end := minutesAfterHours(ts, next)
				low, high, next = low+int(extra), high+int(extra), end
			}
			if at(ts, next).is("or") && at(ts, next+1).is("two", "so") && low <= 60 {
				if at(ts, next+1).is("two") {
					high = 2 * low
				}
				next += 2
			}
			return duration{least: low, most: high, vague: p.vague}, next
		}
	}
	return duration{}, i
}

type wordyTime struct {
	stems        []string
	low, high    int
	vague, hours bool
}

// wordyTimes: what "a few" and "several" mean is common practice, no source.
var wordyTimes = wordyTable([]struct {
	phrase    string
	low, high int
	vague     bool
}{
	{"three quarters of an hour", 45, 45, false},
	{"three-quarters of an hour", 45, 45, false},
	{"quarter of an hour", 15, 15, false},
	{"a quarter hour", 15, 15, false},
	{"half an hour", 30, 30, false},
	{"half a minute", 1, 1, false},
	{"half hour", 30, 30, false},
	{"half-hour", 30, 30, false},
	{"one-half hour", 30, 30, false},
	{"half-an-hour", 30, 30, false},
	{"an hour", 60, 60, false},
	{"another hour", 60, 60, false},
	{"further hour", 60, 60, false},
	{"extra hour", 60, 60, false},
	{"another half hour", 30, 30, false},
	{"another half an hour", 30, 30, false},
	{"couple of hours", 120, 120, true},
	{"few hours", 120, 240, true},
	{"several hours", 240, 360, true},
	{"couple of minutes", 2, 2, true},
	{"couple minutes", 2, 2, true},
	{"few minutes", 2, 4, true},
	{"few more minutes", 2, 4, true},
	{"several minutes", 4, 6, true},
	{"some minutes", 3, 5, true},
	{"few seconds", 1, 1, true},
	{"couple seconds", 1, 1, true},
	{"a minute", 1, 1, false},
	{"a min", 1, 1, false},
	{"another minute", 1, 1, false},
	{"overnight", 480, 720, true},
	{"a day", 1440, 1440, true},
	{"short time", 3, 5, true},
})

func wordyTable(rows []struct {
	phrase    string
	low, high int
	vague     bool
},
) []wordyTime {
	var out []wordyTime
	for _, r := range rows {
		s := phraseStems(r.phrase)
		out = append(out, wordyTime{s, r.low, r.high, r.vague, r.phrase == "an hour"})
	}
	return out
}
