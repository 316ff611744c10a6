package act

import (
	"strings"
	"unicode"
	"unicode/utf8"

	"github.com/kljensen/snowball/english"
)

// token is a word, a number or a sign of the row.
type token struct {
	kind       tokenKind
	text       string // lower case, spelling mended, apostrophes and hyphens made plain
	stem       string // of a word
	value      float64
	start, end int  // bytes of the row
	purpose    bool // a phrase that begins with "to"
}

type tokenKind int

const (
	word tokenKind = iota
	number
	sign
)

var fractions = map[rune]float64{'½': 0.5, '¼': 0.25, '¾': 0.75, '⅓': 1.0 / 3, '⅔': 2.0 / 3}

// tokenize cuts a row into tokens, mends the spelling and joins set phrases.
func tokenize(s string, k Known) []token {
	ts := scan(s)
	for i, t := range ts {
		if t.kind == word {
			ts[i].text = k.mend(t.text)
			ts[i].stem = stem(ts[i].text)
		}
	}
	return joinPhrases(pointed(kneaded(ts)))
}

// pointed reads an arrow to a place as "into": "biscuits → glasses", "mousse -> fridge".
func pointed(ts []token) (list []token) {
	for i := 0; i < len(ts); i++ {
		t := ts[i]
		if n := at(ts, i+1); t.is("-", "=") && n.is(">") && n.start == t.end {
			t = token{kind: sign, text: "→", start: t.start, end: n.end}
			i++
		}
		list = append(list, t)
		if !t.is("→", ">") || len(list) < 2 {
			continue
		}
		k := i + 1
		for k < i+3 && at(ts, k).is("the", "a", "hot", "cold", "big", "small", "wire", "cooling", "large", "boiling", "warm", "serving") {
			k++
		}
		if places := at(ts, k); places.kind == word && pointedAt[places.text] {
			list = append(list, token{kind: word, text: "into", stem: "into", start: t.end, end: t.end})
		}
	}
	return list
}

var pointedAt = exactly("fridge freezer oven glass glasses bowl bowls pan wok tin tins tray trays plate plates water ramekins moulds mould case cases dish pot sieve jug mixer processor")

// kneaded reads "need the dough" as kneading.
func kneaded(ts []token) []token {
	for i, t := range ts {
		if next := at(ts, i+1); t.is("need") && (next.is("dough", "bread") || next.is("the", "for", "my") && at(ts, i+2).is("dough", "bread")) {
			ts[i].text, ts[i].stem = "knead", stem("knead")
		}
	}
	return ts
}

func scan(s string) (ts []token) {
	for i := 0; i < len(s); {
		r, n := utf8.DecodeRuneInString(s[i:])
		t, end := token{kind: sign, text: plainSign(r)}, i+n
		switch {
		case unicode.IsSpace(r) && r != '\n' || r == '\u200b' || r == '\ufeff':
			i = end
			continue
		case r >= '0' && r <= '9':
			t, end = scanNumber(s, i)
		case fractions[r] != 0:
			t = token{kind: number, text: s[i:end], value: fractions[r]}
		case unicode.IsLetter(r) && r != 'º':
			t, end = scanWord(s, i)
		}
		t.start, t.end = i, end
		ts = append(ts, t)
		i = end
	}
	return ts
}

// scanNumber reads digits with a decimal part; a leading nought of a fraction
// such as "1/2" is left to the readers of heats and minutes.
func scanNumber(s string, i int) (token, int) {
	end, value, unit := i, 0.0, 0.0
	for ; end < len(s); end++ {
		switch c := s[end]; {
		case c >= '0' && c <= '9':
			value = min(value*10+float64(c-'0'), 1e9)
			unit *= 10
		case c == '.' && unit == 0 && end+1 < len(s) && s[end+1] >= '0' && s[end+1] <= '9':
			unit = 1
		default:
			if unit > 1 {
				value /= unit
			}
			return token{kind: number, text: s[i:end], value: value}, end
		}
	}
	if unit > 1 {
		value /= unit
	}
	return token{kind: number, text: s[i:end], value: value}, end
}

// scanWord reads letters with inner apostrophes and hyphens; accents are dropped.
func scanWord(s string, i int) (token, int) {
	var b strings.Builder
	end := i
	for end < len(s) {
		r, n := utf8.DecodeRuneInString(s[end:])
		if unicode.IsLetter(r) && fractions[r] == 0 {
			b.WriteString(unaccented(unicode.ToLower(r)))
			end += n
			continue
		}
		next, _ := utf8.DecodeRuneInString(s[end+n:])
		plain := plainSign(r)
		if plain != "'" && plain != "-" || !unicode.IsLetter(next) || r == '–' || r == '—' {
			break
		}
		b.WriteString(plain)
		end += n
	}
	return token{kind: word, text: b.String()}, end
}

func unaccented(r rune) string {
	if r < utf8.RuneSelf {
		return string(r)
	}
	if i := strings.IndexRune("àáâäãåçèéêëìíîïñòóôöõùúûüý", r); i >= 0 {
		plain := "aaaaaaceeeeiiiinooooouuuuy"
		return string(plain[utf8.RuneCountInString("àáâäãåçèéêëìíîïñòóôöõùúûüý"[:i])])
	}
	return string(r)
}

func plainSign(r rune) string {
	switch r {
	case '’', '‘', '`', '´', 'ʼ':
		return "'"
	case '–', '—', '‑', '‐', '−', '―':
		return "-"
	case 'º', '˚', '℃', '∘', '◦', '°':
		return "°"
	case '✅', '✔', '✓', '☑', '❌', '☐':
		return "•"
	case '➡', '➔', '⇒', '➜', '⟶':
		return "→"
	case '⁄', '∕':
		return "/"
	}
	return string(r)
}

// irregular are forms that a stemmer by suffix does not join.
var irregular = map[string]string{
	"knives": "knife", "leaves": "leaf", "loaves": "loaf", "halves": "halv", "halved": "halv", "halving": "halv", "halve": "halv", "risen": "rise", "rose": "rise", "rising": "rise",
	"beaten": "beat", "frozen": "freez", "froze": "freez", "left": "leav", "shaken": "shake", "taken": "take", "took": "take", "made": "make", "making": "make",
	"got": "get", "gotten": "get", "kept": "keep", "brought": "bring", "ground": "grind", "cut": "cut", "did": "do", "done": "done", "went": "go", "gone": "go", "goes": "go", "going": "go",
	"laid": "lay", "spread": "spread", "began": "begin", "begun": "begin", "held": "hold", "broke": "break", "broken": "break", "let": "let", "potatoes": "potato", "tomatoes": "tomato",
	"sauteed": "saut", "saute": "saut", "sauteing": "saut", "yolks": "yolk", "dice": "dice", "diced": "dice", "dicing": "dice", "proving": "prove", "proofing": "proof", "proven": "prove",
	"setting": "set", "batter": "batter", "butter": "butter", "buttered": "butter", "buttering": "butter", "patties": "patti", "icing": "ice", "iced": "ice", "ices": "ice", "ice": "ice", "melted": "melt",
	"chilli": "chilli", "chilies": "chilli", "chillies": "chilli", "chili": "chilli", "salmon": "salmon", "does": "do", "shook": "shake", "froth": "froth", "choux": "choux",
	"lining": "line", "lined": "line", "using": "use", "used": "use", "piping": "pipe", "piped": "pipe", "glazing": "glaze", "glazed": "glaze", "coring": "core", "cored": "core",
	"marinading": "marinad", "filling": "fill", "dressing": "dress", "topping": "top", "lit": "light", "peas": "pea",
	"frying": "fri", "fried": "fri", "fry": "fri", "fries": "fri", "drying": "dri", "dry": "dri", "tidying": "tidi", "serving": "serv",
}

// stem is the word without its endings.
func stem(w string) string {
	if s, ok := irregular[w]; ok {
		return s
	}
	return english.Stem(w, false)
}

// is says whether the token is one of the words.
func (t token) is(words ...string) bool {
	for _, w := range words {
		if t.kind != number && t.text == w {
			return true
		}
	}
	return false
}

// in says whether the token is a word of the set, by its text or its stem.
func (t token) in(s set) bool { return t.kind == word && (s[t.text] || s[t.stem]) }

// at is token i, or a sign without text beyond the ends.
func at(ts []token, i int) token {
	if i < 0 || i >= len(ts) {
		return token{kind: sign}
	}
	return ts[i]
}

// set is a set of words.
type set map[string]bool

// words makes a set of the words and of their stems.
func words(lists ...string) set {
	s := set{}
	for _, l := range lists {
		for _, w := range strings.Fields(l) {
			s[w] = true
			s[stem(w)] = true
		}
	}
	return s
}

// exactly makes a set of the words as they are.
func exactly(list string) set {
	s := set{}
	for _, w := range strings.Fields(list) {
		s[w] = true
	}
	return s
}
