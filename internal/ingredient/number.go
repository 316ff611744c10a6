package ingredient

import (
	"math"
	"strconv"
	"strings"
)

// number is a figure of a line: 1/2, 1.5, 2-3. High equals low when no range was written.
type number struct {
	low, high float64
	words     string // as written when the marked sets keep the words: "half", "few", "2 dozen"
}

// numberWords are figures written out. They count only where a measure may stand.
var numberWords = map[string]float64{
	"one": 1, "two": 2, "three": 3, "four": 4, "five": 5, "six": 6, "seven": 7, "eight": 8, "nine": 9, "ten": 10, "eleven": 11, "twelve": 12,
	"fifteen": 15, "sixteen": 16, "eighteen": 18, "twenty": 20, "half": 0.5, "quarter": 0.25,
}

func plain(v float64) *number { return &number{low: v, high: v} }

// show writes the figure as the marked sets do: decimals of at most three places, a range with a hyphen.
func (n *number) show() string {
	if n.words != "" {
		return n.words
	}
	if n.high > n.low {
		return decimal(n.low) + "-" + decimal(n.high)
	}
	return decimal(n.low)
}

func decimal(v float64) string {
	return strconv.FormatFloat(math.Round(v*1000)/1000, 'f', -1, 64)
}

// most bounds figures: nothing in a kitchen is larger, and no sum overflows.
const most = 1e7

// readNumber reads "2", "1.5", "1,5", "1/2", "1 1/2" or "1-1/2" at the start of s and gives its
// length in bytes; 0 when there is none.
func readNumber(s string) (float64, int) {
	whole, n := digits(s)
	if n == 0 {
		return 0, 0
	}
	rest := s[n:]
	if v, m := over(rest, whole); m > 0 {
		return v, n + m
	}
	if m := decimals(rest); m > 0 {
		v, err := strconv.ParseFloat(strings.Replace(s[:n+m], ",", ".", 1), 64)
		if err == nil && v < most {
			return v, n + m
		}
	}
	for len(rest) >= 4 && rest[0] == ',' && isDigits(rest[1:4]) && (len(rest) == 4 || !isDigit(rest[4])) {
		whole, n, rest = math.Min(whole*1000+atof(rest[1:4]), most), n+4, rest[4:] // 1,000
	}
	gap := len(rest) - len(strings.TrimLeft(rest, " "))
	if gap == 0 && strings.HasPrefix(rest, "-") {
		gap = 1
	}
	if gap > 0 {
		if top, m := digits(rest[gap:]); m > 0 {
			if v, k := over(rest[gap+m:], top); k > 0 && v < 1 {
				return whole + v, n + gap + m + k
			}
		}
	}
	return whole, n
}

func digits(s string) (float64, int) {
	n := 0
	for n < len(s) && isDigit(s[n]) {
		n++
	}
	if n == 0 {
		return 0, 0
	}
	return math.Min(atof(s[:n]), most), n
}

// over reads "/4" after the top of a fraction.
func over(s string, top float64) (float64, int) {
	if len(s) < 2 || s[0] != '/' {
		return 0, 0
	}
	under, n := digits(s[1:])
	if n == 0 || n > 3 || under == 0 {
		return 0, 0
	}
	return top / under, n + 1
}

// decimals gives the length of ".25" or, on the continent, ",5" (never three digits: 1,000).
func decimals(s string) int {
	if len(s) < 2 || (s[0] != '.' && s[0] != ',') || !isDigit(s[1]) {
		return 0
	}
	_, n := digits(s[1:])
	if s[0] == ',' && n > 2 {
		return 0
	}
	return n + 1
}

func isDigit(b byte) bool { return b >= '0' && b <= '9' }

func isDigits(s string) bool {
	for i := range len(s) {
		if !isDigit(s[i]) {
			return false
		}
	}
	return s != ""
}

func atof(s string) float64 {
	v, err := strconv.ParseFloat(s, 64)
	if err != nil {
		return most
	}
	return v
}
