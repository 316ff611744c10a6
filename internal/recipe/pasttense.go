package recipe

import "strings"

// People also tell what they did: "We melted the butter and stirred in the
// flour". Such verbs are read in their plain form.

// pastForms are the plain forms of past tenses that do not end in -ed, or that a stem does not give.
var pastForms = map[string]string{
	"put": "put", "cut": "cut", "let": "let", "left": "leave", "took": "take", "made": "make", "beat": "beat", "brought": "bring", "ground": "grind", "froze": "freeze",
	"stood": "stand", "kept": "keep", "gave": "give", "spread": "spread", "set": "set", "shook": "shake", "ate": "eat", "broke": "break", "threw": "throw", "stuck": "stick",
	"lay": "lay", "laid": "lay", "slid": "slide", "split": "split", "wrung": "wring", "hung": "hang", "tore": "tear", "rolled": "roll", "iced": "ice", "diced": "dice",
	"fried": "fry", "dried": "dry", "whipped": "whip", "chopped": "chop", "dropped": "drop", "popped": "pop", "tipped": "tip", "patted": "pat", "topped": "top", "stirred": "stir",
	"served": "serve", "sliced": "slice", "placed": "place", "used": "use", "baked": "bake", "simmered": "simmer", "turned": "turn", "melted": "melt", "started": "start", "wrapped": "wrap",
	"drew": "draw", "bound": "bind", "wound": "wind", "wet": "wet", "rose": "rise", "did": "do", "began": "begin", "switched": "switch",
}

// plainForm is the plain form of a verb in the past tense; empty: the word is none.
func plainForm(t token) string {
	if t.kind != word {
		return ""
	}
	if p := pastForms[t.text]; p != "" {
		return p
	}
	if !strings.HasSuffix(t.text, "ed") || len(t.text) < 5 {
		return ""
	}
	for _, cut := range []string{"d", "ed"} {
		if v, ok := verbs[strings.TrimSuffix(t.text, cut)]; ok {
			return v.name
		}
	}
	if n := len(t.text); t.text[n-3] == t.text[n-4] { // "strapped"
		if v, ok := verbs[t.text[:n-3]]; ok {
			return v.name
		}
	}
	return verbByStem[t.stem].name
}

// told says whether "we" or "I" did something in these words, and more often than "we" or "I" do it.
func told(ts []token) bool {
	past, now := 0, 0
	for i, t := range ts {
		if !t.is("we", "i", "she", "he", "they") {
			continue
		}
		k := i + 1
		for at(ts, k).isAdverb() {
			k++
		}
		n := at(ts, k)
		_, plain := verbs[n.text]
		switch {
		case n.is("cut", "put", "let", "set", "beat", "spread", "split", "wet"):
		case plain && !strings.HasSuffix(n.text, "ed"):
			now++
		case plainForm(n) != "" && !n.is("used", "did"):
			past++
		}
	}
	return past > now
}

// presentTense puts the verbs of a text that tells what was done in their plain form.
func presentTense(ts []token) []token {
	if !told(ts) {
		return ts
	}
	out := append([]token(nil), ts...)
	for i := range out {
		plain := plainForm(out[i])
		if plain == "" || !didIt(ts, i) {
			continue
		}
		out[i].text, out[i].stem = plain, stem(plain)
	}
	return out
}

// didIt says that the past form at i tells what was done, and does not describe a food.
func didIt(ts []token, i int) bool {
	k := i - 1
	for at(ts, k).isAdverb() && !at(ts, k).is("then") {
		k--
	}
	prev, next := at(ts, k), at(ts, i+1)
	switch {
	case prev.is("we", "i", "she", "he", "then"):
		return true
	case prev.is("and", ",", ";", ".", "but"), k < 0:
		return next.kind == word && (verbalNext[next.text] || ontoWords[next.text]) || next.kind != word && i > 0 && at(ts, i-1).is("and")
	}
	return false
}
