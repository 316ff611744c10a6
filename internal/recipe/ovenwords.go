package recipe

import "plait.example/internal/practical"

// heatWord reads "a moderate oven", "very slow oven", "low temperature" (of an oven).
func heatWord(ts []token, i int) (heat, int) {
	t := at(ts, i)
	if t.kind != word {
		return heat{}, i
	}
	j := i + 1
	celsius := ovenWord(t.text)
	if t.is("very", "fairly", "moderately", "medium") {
		if c := ovenWord(t.text + " " + at(ts, j).text); c > 0 {
			celsius, j = c, j+1
		}
	}
	switch {
	case celsius == 0:
	case at(ts, j).is("oven") && !at(ts, i-1).is("not"),
		at(ts, j).is("temperature", "heat") && has(ts, "bake", "roast", "oven") && !at(ts, i-1).is("over", "on"):
		return heat{celsius: celsius, oven: true, word: true}, j + 1
	}
	return heat{}, i
}

// ovenWord is the handbook's temperature for a word for an oven's heat, 0 for other words.
func ovenWord(words string) int {
	if same := ovenWordsAlike[words]; same != "" {
		words = same
	}
	c, _ := practical.CelsiusOfWords(words)
	return c
}

// ovenWordsAlike are older words for the handbook's; from memory.
var ovenWordsAlike = map[string]string{
	"slow": "cool", "low": "cool", "very slow": "very cool", "very low": "very cool", "medium": "moderate", "medium hot": "fairly hot",
	"moderately hot": "fairly hot", "quick": "hot", "very quick": "very hot",
}
