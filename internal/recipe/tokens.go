package recipe

import (
	"strings"
	"sync"
	"sync/atomic"
	"unicode"
	"unicode/utf8"

	"github.com/kljensen/snowball/english"
)

// token is a word, a number or a sign of the text.
type token struct {
	kind       tokenKind
	text       string  // lower case; apostrophes and hyphens made plain
	stem       string  // of a word
	value      float64 // of a number
	start, end int     // bytes in the source
	upper      bool    // begins with a capital letter
	gap        bool    // white space stands before it
	taught     bool    // a verb of the technique table in use that the reader does not know by itself
}

type tokenKind int

const (
	word tokenKind = iota
	number
	sign
)

// fractions are the vulgar fractions of Unicode.
var fractions = map[rune]float64{
	'½': 1.0 / 2, '⅓': 1.0 / 3, '⅔': 2.0 / 3, '¼': 1.0 / 4, '¾': 3.0 / 4, '⅕': 1.0 / 5, '⅖': 2.0 / 5, '⅗': 3.0 / 5,
	'⅘': 4.0 / 5, '⅙': 1.0 / 6, '⅚': 5.0 / 6, '⅐': 1.0 / 7, '⅛': 1.0 / 8, '⅜': 3.0 / 8, '⅝': 5.0 / 8, '⅞': 7.0 / 8, '⅑': 1.0 / 9, '⅒': 1.0 / 10,
}

// tokenize cuts s into tokens; base is added to the byte offsets.
func tokenize(s string, base int) []token {
	var ts []token
	gap := false
	for i := 0; i < len(s); {
		r, n := utf8.DecodeRuneInString(s[i:])
		var t token
		end := i + n
		if stop := skipLink(s, i); stop > i {
			ts, gap, i = append(ts, token{kind: sign, text: "]", start: base + i, end: base + stop}), false, stop
			continue
		}
		switch {
		case unicode.IsSpace(r) || r == '\uFEFF' || r == '\u200B' || r == '\\':
			gap, i = true, i+n
			continue
		case r >= '0' && r <= '9':
			t, end = scanNumber(s, i)
		case fractions[r] != 0:
			t = token{kind: number, value: fractions[r], text: s[i:end]}
		case plainSign(r) == "°":
			t = token{kind: sign, text: "°"}
		case unicode.IsLetter(r):
			t, end = scanWord(s, i)
		default:
			t = token{kind: sign, text: plainSign(r)}
		}
		t.start, t.end, t.gap = base+i, base+end, gap
		ts = append(ts, t)
		gap, i = false, end
	}
	return ts
}

// maxLink is the longest address of a link that is passed over, in bytes.
const maxLink = 2000

// skipLink is the end of the address of a link that begins at i, else i.
func skipLink(s string, i int) int {
	rest := s[i:]
	if strings.HasPrefix(rest, "](") {
		if j := strings.IndexAny(rest[:min(len(rest), maxLink)], ")\n"); j > 0 && rest[j] == ')' {
			return i + j + 1
		}
	}
	if strings.HasPrefix(rest, "https://") || strings.HasPrefix(rest, "http://") {
		if j := strings.IndexAny(rest, " \t\r\n)]"); j > 0 {
			return i + j
		}
		return len(s)
	}
	return i
}

// scanNumber reads digits with a decimal part, "1,000" and "1½".
func scanNumber(s string, i int) (token, int) {
	digits := func(j int) int {
		for j < len(s) && s[j] >= '0' && s[j] <= '9' {
			j++
		}
		return j
	}
	end := digits(i)
	v := parseDigits(s[i:end])
	if end+1 < len(s) && (s[end] == '.' || s[end] == ',') {
		stop := digits(end + 1)
		switch n := stop - end - 1; {
		case n == 0:
		case s[end] == ',' && n == 3:
			v, end = v*1000+parseDigits(s[end+1:stop]), stop
		case n <= 4:
			f := parseDigits(s[end+1 : stop])
			for ; n > 0; n-- {
				f /= 10
			}
			v, end = v+f, stop
		}
	}
	if r, n := utf8.DecodeRuneInString(s[end:]); fractions[r] != 0 {
		v, end = v+fractions[r], end+n
	}
	return token{kind: number, value: v, text: s[i:end]}, end
}

// parseDigits is the value of a run of digits, held at a million.
func parseDigits(s string) float64 {
	v := 0.0
	for _, c := range s {
		v = min(v*10+float64(c-'0'), 1e6)
	}
	return v
}

// scanWord reads letters with inner apostrophes and hyphens.
func scanWord(s string, i int) (token, int) {
	first, _ := utf8.DecodeRuneInString(s[i:])
	end := i
	var b strings.Builder
	for end < len(s) {
		r, n := utf8.DecodeRuneInString(s[end:])
		if unicode.IsLetter(r) || unicode.Is(unicode.Mn, r) {
			b.WriteRune(unicode.ToLower(r))
			end += n
			continue
		}
		next, _ := utf8.DecodeRuneInString(s[end+n:])
		plain := plainSign(r)
		if (plain != "'" && (plain != "-" || r == '–' || r == '—')) || !unicode.IsLetter(next) || fractions[next] != 0 {
			break
		}
		b.WriteString(plain)
		end += n
	}
	text := b.String()
	if w, ok := joined[text]; ok {
		text = w
	}
	return token{kind: word, text: text, stem: stem(text), upper: unicode.IsUpper(first)}, end
}

// joined are words written another way than they are here, with a hyphen or without an apostrophe.
var joined = map[string]string{
	"pre-heat": "preheat", "pre-heated": "preheated", "re-heat": "reheat", "sauté": "saute", "sautéed": "sauteed", "sautee": "saute", "sauteé": "saute",
	"stirfry": "stir-fry", "deep-fat-fry": "deep-fry", "micro-wave": "microwave", "de-seed": "deseed", "purée": "puree", "flambé": "flambe",
	"un-covered": "uncovered", "marinade": "marinade", "marinating": "marinating", "pan-fry": "pan-fry", "med": "medium",
	"dont": "don't", "doesnt": "doesn't", "cant": "can't", "wont": "won't", "youll": "you'll", "b4": "before",
}

func plainSign(r rune) string {
	switch r {
	case '’', '‘', '`', '´', 'ʼ', '′':
		return "'"
	case '–', '—', '‑', '‐', '−', '―':
		return "-"
	case 'º', '˚', '∘', '◦', 'ᵒ', '⁰':
		return "°"
	case '⁄', '∕':
		return "/"
	case '×', '✕':
		return "x"
	}
	return string(r)
}

// irregular are forms that a stemmer by suffix cannot join.
var irregular = map[string]string{
	"knives": "knife", "leaves": "leaf", "loaves": "loaf", "halves": "half", "risen": "rise", "rose": "rise", "beaten": "beat", "frozen": "freez",
	"froze": "freez", "cooking": "cook", "left": "leav", "shaken": "shake", "taken": "take", "put": "put", "dough": "dough", "potatoes": "potato",
	"tomatoes": "tomato", "mangoes": "mango", "sauteed": "saut", "saute": "saut", "sauteing": "saut", "sautéing": "saut", "yolks": "yolk", "whites": "white", "anchovies": "anchovi",
	"berries": "berri", "proving": "prove", "proofing": "proof", "dice": "dice", "diced": "dice", "setting": "set", "batter": "batter", "butter": "butter",
	"patties": "patti", "melted": "melt", "noodles": "noodl", "does": "does",
}

// stem is the word without its endings.
func stem(w string) string {
	if s, ok := irregular[w]; ok {
		return s
	}
	if s, ok := stemmed.Load(w); ok {
		return s.(string)
	}
	s := english.Stem(w, false)
	if len(w) <= 20 && stemmedWords.Add(1) <= mostStemmed {
		stemmed.Store(w, s)
	}
	return s
}

// mostStemmed is how many words are kept with their stems: the same ones come again and again.
const mostStemmed = 20_000

var (
	stemmed      sync.Map // word to stem
	stemmedWords atomic.Int64
)

// is says whether the token is one of the words (by text).
func (t token) is(words ...string) bool {
	for _, w := range words {
		if t.text == w {
			return true
		}
	}
	return false
}

// at is token i, or an empty one beyond the ends.
func at(ts []token, i int) token {
	if i < 0 || i >= len(ts) {
		return token{kind: sign}
	}
	return ts[i]
}

// has says whether any token has the stem of one of the words; words of
// several parts must stand together.
func has(ts []token, phrases ...string) bool {
	for _, p := range phrases {
		if find(ts, p) >= 0 {
			return true
		}
	}
	return false
}

// find is the index of the first place where the phrase stands, by stems; -1: nowhere.
func find(ts []token, phrase string) int {
	if len(ts) == 0 {
		return -1
	}
	want := phraseStems(phrase)
	first := want[0]
	for i := 0; i+len(want) <= len(ts); i++ {
		if t := &ts[i]; t.stem != first && t.text != first {
			continue
		}
		if matchAt(ts, i, want) {
			return i
		}
	}
	return -1
}

func matchAt(ts []token, i int, want []string) bool {
	for j, w := range want {
		t := at(ts, i+j)
		if t.kind == word && t.stem != w || t.kind != word && t.text != w {
			return false
		}
	}
	return true
}
