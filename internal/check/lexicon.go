package check

import (
	"strings"
	"unicode"
)

// lexicon is a list of words and phrases to look for. A word that ends in "*"
// stands for every word that begins so.
type lexicon struct {
	exact map[string][][]string // phrases by their first word
	stems [][]string            // phrases whose first word ends in "*"
}

// lex reads phrases that stand apart by commas or line ends.
func lex(list string) *lexicon {
	l := &lexicon{exact: map[string][][]string{}}
	for _, p := range strings.FieldsFunc(list, func(r rune) bool { return r == ',' || r == '\n' }) {
		words := strings.Fields(p)
		switch {
		case len(words) == 0:
		case strings.HasSuffix(words[0], "*"):
			l.stems = append(l.stems, words)
		default:
			l.exact[words[0]] = append(l.exact[words[0]], words)
		}
	}
	return l
}

// in says whether any of the phrases stands in the words.
func (l *lexicon) in(words []string) bool { return l.find(words) >= 0 }

// find is the index of the first word that begins one of the phrases; -1: none.
func (l *lexicon) find(words []string) int {
	for i, w := range words {
		for _, p := range l.exact[w] {
			if begins(words[i:], p) {
				return i
			}
		}
		for _, p := range l.stems {
			if begins(words[i:], p) {
				return i
			}
		}
	}
	return -1
}

func begins(words, phrase []string) bool {
	if len(words) < len(phrase) {
		return false
	}
	for i, p := range phrase {
		if stem, open := strings.CutSuffix(p, "*"); open {
			if !strings.HasPrefix(words[i], stem) {
				return false
			}
		} else if words[i] != p {
			return false
		}
	}
	return true
}

// wordsOf cuts a text into words of small letters and numbers, without accents.
func wordsOf(text string) []string {
	return strings.FieldsFunc(plain(text), func(r rune) bool { return !unicode.IsLetter(r) && !unicode.IsDigit(r) })
}

var accents = strings.NewReplacer("é", "e", "è", "e", "ê", "e", "û", "u", "ù", "u", "â", "a", "à", "a", "î", "i", "ï", "i", "ô", "o", "ç", "c", "ñ", "n", "yoghurt", "yogurt", "'", "", "’", "", "‘", "")

func plain(text string) string { return accents.Replace(strings.ToLower(text)) }
