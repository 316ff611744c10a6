package ingredient

import (
	"html"
	"regexp"
	"strings"
	"unicode"
	"unicode/utf8"
)

// kind is what a token is made of.
type kind int

const (
	word kind = iota
	figure
	sign
)

// label is the field of the line that a token belongs to.
type label int

const (
	none label = iota
	quantity
	unit
	name
	preparation
	comment
)

// token is a word, a figure or a sign of the line.
type token struct {
	kind     kind
	text     string // as written, after unify
	low      string // lower case
	num      *number
	from, to int  // bytes in the unified line
	gap      bool // a space stands before it
	label    label
}

func (t token) is(words ...string) bool {
	for _, w := range words {
		if t.low == w {
			return true
		}
	}
	return false
}

// fractions are the single signs that stand for a fraction.
var fractions = map[rune]string{
	'½': "1/2", '⅓': "1/3", '⅔': "2/3", '¼': "1/4", '¾': "3/4", '⅕': "1/5", '⅖': "2/5", '⅗': "3/5", '⅘': "4/5",
	'⅙': "1/6", '⅚': "5/6", '⅐': "1/7", '⅛': "1/8", '⅜': "3/8", '⅝': "5/8", '⅞': "7/8", '⅑': "1/9", '⅒': "1/10",
}

var signs = strings.NewReplacer("–", "-", "—", " - ", "−", "-", "‐", "-", "‑", "-", "⁄", "/", "∕", "/", "×", "x", "’", "'", "‘", "'", "“", `"`, "”", `"`,
	"\u00a0", " ", "\u2009", " ", "\u202f", " ", "\t", " ", "\n", " ", "\r", " ", "•", " ", "[", "(", "]", ")", "*", " ", "__", "")

// link is a link of Markdown: its words stay, its address goes.
var link = regexp.MustCompile(`\[([^\[\]]*)\]\([^()]*\)`)

// unify gives one sign for each meaning: fractions as figures, one kind of dash, quote, bracket and
// space. Bytes that are no text are dropped.
func unify(line string) string {
	line = strings.ToValidUTF8(line, "")
	if strings.Contains(line, "&") {
		line = html.UnescapeString(line)
	}
	line = link.ReplaceAllString(line, "$1")
	var b strings.Builder
	last := ' '
	for _, r := range line {
		if f, ok := fractions[r]; ok {
			if unicode.IsDigit(last) {
				b.WriteByte(' ')
			}
			b.WriteString(f)
			last = '0'
			continue
		}
		b.WriteRune(r)
		last = r
	}
	return strings.Join(strings.Fields(signs.Replace(b.String())), " ")
}

// scan cuts a unified line into tokens.
func scan(s string) []token {
	var out []token
	for i := 0; i < len(s); {
		if s[i] == ' ' {
			i++
			continue
		}
		gap := i == 0 || s[i-1] == ' '
		t := next(s[i:])
		t.from, t.to, t.gap = i, i+len(t.text), gap
		i = t.to
		out = append(out, splitNumberWord(t)...)
	}
	return joinRanges(out)
}

func next(s string) token {
	if isDigit(s[0]) && !strings.HasPrefix(s, "00") {
		v, n := readNumber(s)
		if v > 0 && (s[n:] == "" || s[n] != '%') {
			return token{kind: figure, text: s[:n], low: s[:n], num: plain(v)}
		}
		if v > 0 {
			n++ // "70% chocolate"
		}
		return token{kind: word, text: s[:n], low: s[:n]}
	}
	n := wordLength(s)
	if n == 0 {
		_, n = utf8.DecodeRuneInString(s)
		return token{kind: sign, text: s[:n], low: s[:n]}
	}
	return token{kind: word, text: s[:n], low: strings.ToLower(strings.TrimSuffix(s[:n], "."))}
}

// wordLength takes letters, and inside a word apostrophes, hyphens and figures; a full stop at its
// end when it may be an abbreviation ("tbsp.").
func wordLength(s string) int {
	if len(s) > 1 && (s[0] == 'x' || s[0] == 'X') && isDigit(s[1]) {
		return 1 // "2x400 g"
	}
	n := 0
	for n < len(s) {
		r, size := utf8.DecodeRuneInString(s[n:])
		switch {
		case unicode.IsLetter(r) || unicode.IsMark(r) || r == '%' || r == '°':
		case isDigit(s[n]) && (n > 0 || strings.HasPrefix(s, "00")):
		case (r == '\'' || r == '-' || r == '&') && n > 0 && letterAt(s, n+size):
		case r == '\'' && n > 1 && s[n-1] == 's':
		case r == '.' && initials(s[:n]) && (initialAt(s[n+size:]) || n > 2):
			// "S.R. flour"
		case r == '.' && n > 0 && abbreviated(s[:n], s[n+size:]):
			return n + size
		default:
			return n
		}
		n += size
	}
	return n
}

// initials says whether a word so far is capitals with full stops between: "S", "S.R".
func initials(s string) bool {
	for i := range len(s) {
		if i%2 == 0 && (s[i] < 'A' || s[i] > 'Z') || i%2 == 1 && s[i] != '.' {
			return false
		}
	}
	return len(s)%2 == 1
}

// initialAt says whether a capital with a full stop begins s.
func initialAt(s string) bool { return len(s) > 1 && s[0] >= 'A' && s[0] <= 'Z' && s[1] == '.' }

// abbreviated says whether the full stop after a word belongs to it: "tbsp.", "St.", not "milk.".
func abbreviated(w, rest string) bool {
	w = strings.ToLower(w)
	return isUnit(w) != notUnit || abbreviations[w] && strings.TrimSpace(rest) != ""
}

func letterAt(s string, i int) bool {
	if i >= len(s) {
		return false
	}
	r, _ := utf8.DecodeRuneInString(s[i:])
	return unicode.IsLetter(r)
}

// splitNumberWord takes "six-ounce" apart; "five-spice" and "half-and-half" stay whole.
func splitNumberWord(t token) []token {
	first, rest, ok := strings.Cut(t.low, "-")
	v, isNumber := numberWords[first]
	if t.kind != word || !ok || !isNumber || isUnit(rest) == notUnit {
		return []token{t}
	}
	cut := len(first)
	return []token{
		{kind: figure, text: t.text[:cut], low: first, num: plain(v), from: t.from, to: t.from + cut, gap: t.gap},
		{kind: sign, text: "-", low: "-", from: t.from + cut, to: t.from + cut + 1},
		{kind: word, text: t.text[cut+1:], low: rest, from: t.from + cut + 1, to: t.to},
	}
}

// joinRanges makes one figure of "2-3", "2 to 3", "1 or 2", "4- to 6-" and of "2 dozen".
func joinRanges(ts []token) []token {
	var out []token
	for i := 0; i < len(ts); i++ {
		t := ts[i]
		if t.num != nil {
			if j := rangeEnd(ts, i); j > 0 {
				t.num = &number{low: t.num.low, high: ts[j].num.low}
				t.text, t.low, t.to, i = t.num.show(), t.num.show(), ts[j].to, j
			}
			if i+1 < len(ts) && ts[i+1].is("dozen") {
				t.num = &number{low: t.num.low * 12, high: t.num.high * 12, words: t.num.show() + " dozen"}
				t.text, t.low, t.to, i = t.num.words, t.num.words, ts[i+1].to, i+1
			}
		}
		out = append(out, t)
	}
	return out
}

// rangeEnd gives the index of the upper figure of a range that begins at i, or 0.
func rangeEnd(ts []token, i int) int {
	j, hyphen := i+1, false
	if j < len(ts) && ts[j].is("-") {
		j, hyphen = j+1, true
	}
	joined := false
	if j < len(ts) && ts[j].is("to", "or") {
		j, joined = j+1, true
	}
	if (!hyphen && !joined) || j >= len(ts) || ts[j].num == nil || ts[j].num.low <= ts[i].num.low {
		return 0
	}
	return j
}
