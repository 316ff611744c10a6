package act

import (
	"slices"
	"strings"
)

// Word is a word of a row as the kitchen spells it.
type Word struct {
	Text, Stem string
	Start, End int  // bytes of the text
	Verb       bool // it names what is done more often than a thing
}

// WordsOf are the words of a text that say something: mended, without those such as "the" and "for".
func WordsOf(text string) (list []Word) { return Known(nil).WordsOf(text) }

// Known are words, in small letters, that are right as they are written,
// whatever words of the kitchen they are near to: those of the recipes at hand.
type Known map[string]bool

// Spell is the word of the kitchen that a word in small letters stands for, or
// the word itself.
func (k Known) Spell(w string) string { return k.mend(w) }

// KnownOf are the words of the texts.
func KnownOf(texts ...string) Known {
	k := Known{}
	for _, text := range texts {
		for _, t := range split(scan(text)) {
			if t.kind == word {
				k[t.text], k[stem(t.text)] = true, true
			}
		}
	}
	return k
}

// WordsOf is WordsOf for a text in which some words are known to be right.
func (k Known) WordsOf(text string) (list []Word) {
	for _, t := range split(scan(text)) {
		if t.kind != word {
			continue
		}
		w := k.mend(t.text)
		if s := stem(w); tells(w, s) {
			v := lexicon[w]
			if v.name == "" {
				v = lexicon[s]
			}
			list = append(list, Word{w, s, t.start, t.end, v.name != "" && v.noun != mostly})
		}
	}
	return list
}

// split parts words with a hyphen, and "stirfry", into the words they are made of.
func split(ts []token) (list []token) {
	for _, t := range ts {
		cut := strings.Index(t.text, "-")
		if t.kind == word && cut < 0 && strings.HasSuffix(t.text, "fry") {
			cut = len(t.text) - len("fry")
		}
		if t.kind != word || cut <= 0 || t.end-t.start != len(t.text) || misspelt[t.text] != "" {
			list = append(list, t)
			continue
		}
		first, second := t, t
		first.text, second.text = t.text[:cut], strings.TrimPrefix(t.text[cut:], "-")
		first.end = t.start + cut
		second.start = t.end - len(second.text)
		list = append(list, first, second)
	}
	return list
}

// tells says whether a word is more than a joining word: verbs such as "cool"
// and "rest" tell, though they name no object.
func tells(w, stem string) bool {
	if v := lexicon[w]; v.name == w && !helping[w] {
		return true
	}
	return !notObjects[w] && !notObjects[stem]
}

// helping are verbs that say nothing of what is done.
var helping = exactly("do need use get have go keep let")

// Nearest is the one word of the list that a misspelt word most likely is: one
// letter may be wrong, from eight letters on two. False when none or several are near.
func Nearest(w string, list []string) (string, bool) {
	if len(w) < 5 {
		return "", false
	}
	return nearest(w, list)
}

// IsVerb says whether a stem is that of a verb of the kitchen which is not more often a noun.
func IsVerb(stem string) bool {
	v := lexicon[stem]
	return v.name != "" && v.noun == never
}

// Spares says whether a sentence tells what is left out or changed if the cook
// is late: "if late leave the mint".
func Spares(sentence string) bool {
	r := &reader{ts: tokenize(strings.TrimLeft(sentence, " (-•*"), nil)}
	return len(r.ts) > 0 && r.speaksOfLate(0)
}

// Forbids says whether a text says what is not to be done: "do not open the oven".
func Forbids(text string) bool {
	return slices.ContainsFunc(scan(text), func(t token) bool { return negations[t.text] && t.kind == word && !t.is("no", "nothing", "without") })
}
