package recipe

// heatWord reads "a moderate oven", "very slow oven", "low temperature" (of an oven).
func heatWord(ts []token, i int) (heat, int) {
	t := at(ts, i)
	if t.kind != word {
		return heat{}, i
	}
	j, how := i, ""
	if t.is("very", "fairly", "moderately", "medium") && ovenWords[t.text+" "+at(ts, i+1).text] > 0 {
		how, j = t.text+" "+at(ts, i+1).text, i+2
	} else if ovenWords[t.text] > 0 {
		how, j = t.text, i+1
	} else {
		return heat{}, i
	}
	if at(ts, j).is("oven") && !at(ts, i-1).is("not") {
		return heat{celsius: ovenWords[how], oven: true, word: true}, j + 1
	}
	if at(ts, j).is("temperature", "heat") && has(ts, "bake", "roast", "oven") && !at(ts, i-1).is("over", "on") {
		return heat{celsius: ovenWords[how], oven: true, word: true}, j + 1
	}
	return heat{}, i
}

// ovenWords: words for an oven's heat, in degrees Celsius without fan.
// Handbooks' words with the gas marks that go with them; from memory.
var ovenWords = map[string]int{
	"very cool": 120, "very slow": 120, "very low": 120, "cool": 150, "slow": 150, "low": 150, "warm": 170, "moderate": 180, "medium": 180, "medium hot": 190,
	"fairly hot": 200, "moderately hot": 200, "hot": 220, "quick": 220, "very hot": 230, "very quick": 230,
}
