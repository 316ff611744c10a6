package ingredient

import "strings"

// counted is the token of the noun that amount i counts: "eggs" of "2 large eggs, beaten", "fillets"
// of "2 fillets of cod"; -1 when the amount measures by a unit, or is not the one before the name.
func (l Line) counted(i int) int {
	a := l.Amounts[i]
	if a.Relation != Main || a.Unit != "" || a.token < 0 {
		return -1
	}
	at := -1
	for k := a.token + 1; k < len(l.tokens); k++ {
		t := l.tokens[k]
		switch {
		case t.label == name && t.is("of", "from", "with", "in", "or", "and", "&", "/") && at >= 0:
			return at
		case t.label == name && t.kind == word:
			at = k
		case at >= 0:
			return at
		}
	}
	return at
}

// mass are foods that are counted without an ending: two broccoli, two garlic.
var mass = words(`broccoli garlic fennel celery celeriac spinach asparagus couscous cress watercress squid salmon trout cod haddock tuna fish beef pork lamb veal
	rice pasta bread water milk cream butter oil flour sugar salt choi ginger kale rocket okra molasses hummus houmous swiss stock`)

// irregular are nouns whose plural no rule gives, singular and plural.
var irregular = map[string]string{
	"leaf": "leaves", "loaf": "loaves", "half": "halves", "calf": "calves", "knife": "knives", "potato": "potatoes", "tomato": "tomatoes", "mango": "mangoes", "chilli": "chillies", "chili": "chilies",
	"goose": "geese", "foot": "feet", "tooth": "teeth", "thief": "thieves", "shelf": "shelves",
}

var regular = func() map[string]string {
	out := map[string]string{"mangos": "mango", "chillis": "chilli"}
	for one, many := range irregular {
		out[many] = one
	}
	return out
}()

// nounFor is a counted noun in the number that a figure asks for. Written in capitals, or a word
// that takes no ending, it stays. The rules of spelling are those of English: "cherries", "peaches".
func nounFor(noun string, n float64) string {
	low := strings.ToLower(noun)
	if mass[low] || len(low) < 3 || noun != low && noun[1:] != low[1:] || strings.HasSuffix(low, "ss") {
		return noun
	}
	if n > 1 {
		return noun[:1] + plural(low)[1:]
	}
	return noun[:1] + one(low)[1:]
}

func plural(low string) string {
	if many, known := irregular[low]; known {
		return many
	}
	switch {
	case strings.HasSuffix(low, "s"):
		return low
	case strings.HasSuffix(low, "ch"), strings.HasSuffix(low, "sh"), strings.HasSuffix(low, "x"), strings.HasSuffix(low, "z"):
		return low + "es"
	case strings.HasSuffix(low, "y") && !strings.ContainsAny(low[len(low)-2:len(low)-1], "aeiou"):
		return low[:len(low)-1] + "ies"
	}
	return low + "s"
}

func one(low string) string {
	if single, known := regular[low]; known {
		return single
	}
	switch {
	case strings.HasSuffix(low, "ies") && len(low) > 4:
		return low[:len(low)-3] + "y"
	case strings.HasSuffix(low, "ches"), strings.HasSuffix(low, "shes"), strings.HasSuffix(low, "xes"), strings.HasSuffix(low, "zes"):
		return low[:len(low)-2]
	case strings.HasSuffix(low, "us"), strings.HasSuffix(low, "is"):
		return low
	}
	return strings.TrimSuffix(low, "s")
}
