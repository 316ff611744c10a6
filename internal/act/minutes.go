package act

import "math"

// minutesAt is a length of time with the bytes that say it.
type minutesAt struct {
	least, most int
	start, end  int
}

// maxMinutes is the longest time that a row can say: two days.
const maxMinutes = 2880

// minutesOf reads the lengths of time in a row: "for 20 mins", "20-25 min",
// "half an hour", "1 hr 30", "bake 20".
func minutesOf(ts []token) (all []minutesAt) {
	for i := 0; i < len(ts); {
		m, end := minutesHere(ts, i)
		if end == i {
			i++
			continue
		}
		m.start, m.end = ts[i].start, ts[end-1].end
		all = append(all, m)
		i = end
	}
	return all
}

var lengths = map[string]int{"halfhour": 30, "quarterhour": 15, "threequarterhour": 45, "onehour": 60, "hourhalf": 90}

var numerals = map[string]float64{
	"one": 1, "two": 2, "three": 3, "four": 4, "five": 5, "six": 6, "seven": 7, "eight": 8, "nine": 9, "ten": 10, "twelve": 12, "fifteen": 15,
	"twenty": 20, "thirty": 30, "forty": 40, "sixty": 60, "couple": 2, "few": 3,
}

var (
	minuteWords = exactly("min mins minute minutes m minuets")
	hourWords   = exactly("hour hours hr hrs h")
)

func minutesHere(ts []token, i int) (minutesAt, int) {
	if n := lengths[ts[i].text]; n > 0 && ts[i].kind == word {
		return minutesAt{least: n, most: n}, i + 1
	}
	low, j := amount(ts, i)
	if j == i {
		return minutesAt{}, i
	}
	high := low
	if at(ts, j).is("-", "to", "or", "/") {
		if v, k := amount(ts, j+1); k > j+1 && v > low {
			high, j = v, k
		}
	}
	if at(ts, j).is("more", "further", "extra", "of") {
		j++
	}
	switch t := at(ts, j); {
	case t.kind == word && minuteWords[t.text]:
		return whole(low, high), j + 1
	case t.kind == word && hourWords[t.text]:
		low, high, j = low*60, high*60, j+1
		if at(ts, j).is("and") {
			j++
		}
		if more, k := amount(ts, j); k > j && low == high && more < 60 && !at(ts, k).in(foodUnits) {
			low, high, j = low+more, high+more, k
			if minuteWords[at(ts, k).text] {
				j++
			}
		} else if at(ts, j-1).is("and") {
			j--
		}
		return whole(low, high), j
	case bare(ts, i, j, low):
		return whole(low, high), j
	}
	return minutesAt{}, i
}

func whole(low, high float64) minutesAt {
	return minutesAt{least: int(math.Round(min(low, maxMinutes))), most: int(math.Round(min(high, maxMinutes)))}
}

// amount reads "20", "1 1/2", "1½", "twenty".
func amount(ts []token, i int) (float64, int) {
	t := at(ts, i)
	if t.kind == word && numerals[t.text] > 0 {
		if t.text == "couple" && at(ts, i+1).is("of") {
			return 2, i + 2
		}
		return numerals[t.text], i + 1
	}
	if t.kind != number {
		return 0, i
	}
	v, j := t.value, i+1
	if at(ts, j).is("/") && v == 1 && at(ts, j+1).kind == number && at(ts, j+1).value <= 4 && at(ts, j+1).value > 1 {
		return v / at(ts, j+1).value, j + 2
	}
	if n := at(ts, j); n.kind == number && n.value < 1 {
		return v + n.value, j + 1
	}
	if n := at(ts, j); n.kind == number && n.value == 1 && at(ts, j+1).is("/") && at(ts, j+2).kind == number && at(ts, j+2).value > 0 {
		return v + 1/at(ts, j+2).value, j + 3
	}
	return v, j
}

var (
	foodUnits = words("g kg ml l cm mm degrees c f ° portions tbsp tsp eggs oz % fan gas pieces times cups sided people balls circles rounds layers batches x per each of")
	waitVerbs = words("bake roast simmer boil rest chill cool prove fry cook oven fridge for grill freezer marinate leave steam poach")
)

// bare says whether a number alone is minutes: "bake 20", "simmer for 15, then".
func bare(ts []token, i, j int, v float64) bool {
	if v < 1 || v > 120 || v != math.Trunc(v) || ts[i].kind != number || at(ts, i+1).is("/") {
		return false
	}
	next := at(ts, j)
	closed := next.kind == sign && !next.is("°", "%", "/", "-", "'") || next.is("and", "then", "until", "while", "at")
	return closed && (v >= 2 && at(ts, i-1).in(waitVerbs) || cookedFor(ts, i, v) || v >= 5 && afterHeat(ts, i))
}

// afterHeat says whether a number alone stands after a comma and a heat: "logs
// in gas 4, 25", "in 180C, 20".
func afterHeat(ts []token, i int) bool {
	if !at(ts, i-1).is(",", "-", "/") {
		return false
	}
	last := at(ts, i-2)
	return last.is("c", "fan", "degrees", "°") || last.kind == number && at(ts, i-3).is("gas", "mark", "gm")
}

// cookedFor says whether a number alone ends a piece that begins with a verb of
// cooking: "fry onion and pepper 5, garlic 1".
func cookedFor(ts []token, i int, v float64) bool {
	if p := at(ts, i-1); p.kind != word || p.is("gas", "mark", "gm", "x", "fan", "number", "no", "of", "into", "in", "to", "at") {
		return false
	}
	listed := false // numbers stand before it in the list
	for k := i - 1; k >= max(0, i-14); k-- {
		switch {
		case ts[k].kind == sign && !ts[k].is("&", "+", ","), ts[k].kind == number && !at(ts, k+1).is(",", "then", "and") && !minuteWords[at(ts, k+1).text]:
			return false
		case ts[k].in(cookVerbs):
			return v >= 2 || listed
		}
		listed = listed || ts[k].kind == number
	}
	return false
}

var cookVerbs = words("fry simmer boil sweat soften brown sear poach steam knead roast bake")

// longestTurn is the minutes up to which lengths in one act of frying are
// those of its foods in turn.
const longestTurn = 15

// sumOf is the sum of the times whose words begin in the bytes from start up to
// end, where each is short; else the first.
func sumOf(all []minutesAt, start, end int) (least, most int) {
	for _, m := range all {
		if m.start >= start && m.start < end {
			if m.most > longestTurn {
				return minutesIn(all, start, end)
			}
			least, most = least+m.least, most+m.most
		}
	}
	return least, most
}

// minutesIn is the time whose words begin in the bytes from start up to end.
func minutesIn(all []minutesAt, start, end int) (least, most int) {
	for _, m := range all {
		if m.start >= start && m.start < end {
			if least == 0 {
				return m.least, m.most
			}
		}
	}
	return 0, 0
}
