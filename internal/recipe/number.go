package recipe

import "strings"

// numberWords are the numbers that recipes write as one word.
var numberWords = map[string]float64{
	"one": 1, "two": 2, "three": 3, "four": 4, "five": 5, "six": 6, "seven": 7, "eight": 8, "nine": 9, "ten": 10, "eleven": 11, "twelve": 12,
	"thirteen": 13, "fourteen": 14, "fifteen": 15, "sixteen": 16, "seventeen": 17, "eighteen": 18, "nineteen": 19, "twenty": 20, "thirty": 30, "forty": 40, "fourty": 40,
	"fifty": 50, "sixty": 60, "seventy": 70, "eighty": 80, "ninety": 90, "half": 0.5, "one-half": 0.5, "one-third": 1.0 / 3, "two-thirds": 2.0 / 3, "one-fourth": 0.25,
	"one-quarter": 0.25, "three-quarters": 0.75, "three-fourths": 0.75, "dozen": 12,
}

// span is a figure or a range; equal ends when there is one figure.
type span struct{ low, high float64 }

// readNumber reads "2", "1/2", "1 1/2", "1-1/2", "1½", "two", "two and a half".
// It returns the value and the index after it; equal to i when there is none.
func readNumber(ts []token, i int) (float64, int) {
	t := at(ts, i)
	switch {
	case t.kind == number:
		if v, next := readFraction(ts, i); next > i {
			return v, next
		}
		v, next := t.value, i+1
		j := next
		if at(ts, j).text == "-" && !at(ts, j).gap && !at(ts, j+1).gap {
			j++
		}
		if f, k := readFraction(ts, j); k > j && f < 1 && v == float64(int(v)) {
			return v + f, k
		}
		if n := at(ts, j); j == next && n.kind == number && n.value < 1 && n.gap {
			return v + n.value, j + 1 // "1 ½"
		}
		return andAHalf(ts, v, next)
	case t.kind == word:
		if v, ok := wordNumber(t.text); ok {
			if one := at(ts, i+1); tens[t.text] > 0 && one.kind == word && ones[one.text] > 0 {
				return v + ones[one.text], i + 2 // "forty five"
			}
			return andAHalf(ts, v, i+1)
		}
	}
	return 0, i
}

// readFraction reads a proper fraction with a kitchen's denominator.
func readFraction(ts []token, i int) (float64, int) {
	a, slash, b := at(ts, i), at(ts, i+1), at(ts, i+2)
	if a.kind != number || slash.text != "/" || b.kind != number || slash.gap || b.gap {
		return 0, i
	}
	switch b.value {
	case 2, 3, 4, 5, 6, 8, 10, 12, 16:
		if a.value < b.value && a.value > 0 && a.value == float64(int(a.value)) {
			return a.value / b.value, i + 3
		}
	}
	return 0, i
}

func andAHalf(ts []token, v float64, i int) (float64, int) {
	if at(ts, i).is("and") && at(ts, i+1).is("a") {
		switch at(ts, i+2).text {
		case "half":
			return v + 0.5, i + 3
		case "quarter":
			return v + 0.25, i + 3
		}
	}
	return v, i
}

// readSpan reads a number or a range: "8-10", "8 to 10", "8 or 10", "between 8 and 10".
func readSpan(ts []token, i int) (span, int) {
	between := at(ts, i).is("between")
	j := i
	if between {
		j++
	}
	a, next := readNumber(ts, j)
	if next == j {
		return span{}, i
	}
	link := at(ts, next)
	if link.is("-", "to", "or", "~", "–") || between && link.is("and") {
		if b, end := readNumber(ts, next+1); end > next+1 && b >= a {
			return span{a, b}, end
		}
	}
	return span{a, a}, next
}

// quote is the source's words for the tokens from i to end, on one line.
func quote(text string, ts []token, i, end int) string {
	if i >= end || i < 0 || end > len(ts) {
		return ""
	}
	return strings.Join(strings.Fields(text[ts[i].start:ts[end-1].end]), " ")
}
