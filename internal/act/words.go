package act

// Word is a word of a row as the kitchen spells it.
type Word struct {
	Text, Stem string
	Start, End int  // bytes of the text
	Verb       bool // it names what is done more often than a thing
}

// WordsOf are the words of a text that say something: mended, without those such as "the" and "for".
func WordsOf(text string) (list []Word) {
	for _, t := range scan(text) {
		if t.kind != word {
			continue
		}
		w := mend(t.text)
		if s := stem(w); !notObjects[w] && !notObjects[s] {
			v := lexicon[w]
			if v.name == "" {
				v = lexicon[s]
			}
			list = append(list, Word{w, s, t.start, t.end, v.name != "" && v.noun != mostly})
		}
	}
	return list
}

// Nearest is the one word of the list that a misspelt word most likely is: one
// letter may be wrong, from eight letters on two. False when none or several are near.
func Nearest(w string, list []string) (string, bool) {
	if len(w) < 5 {
		return "", false
	}
	return nearest(w, list)
}
