package recipe

import (
	"strings"
	"sync"
)

// misspelt finds the verb that a word at the head of a sentence or after a
// joining word stands for with one slip: a letter wrong, missing, doubled or
// two changed round ("refrigirate", "simer", "sprinkel").
func misspelt(ts []token, i int) (verb, bool) {
	t, prev := ts[i], at(ts, i-1)
	if len(t.text) < 5 || i > 0 && !prev.is("and", "then", ",", ".", ";", "|") || inflected(t.text) || !plainLetters(t.text) {
		return verb{}, false
	}
	if n := at(ts, i+1); n.kind != word && n.kind != number || n.is("is", "are", "of", "was", "will", "should", "can") {
		return verb{}, false
	}
	for _, key := range slips(t.text) {
		if name, ok := slipIndex()[key]; ok && name[0] == t.text[0] && near(name, t.text) {
			return verbs[name], true
		}
	}
	return verb{}, false
}

// inflected says that a word is rather a form of another word, or the name of a thing, than a slip.
func inflected(w string) bool {
	for _, end := range []string{"s", "ed", "er", "ing", "ly", "y", "en"} {
		if strings.HasSuffix(w, end) {
			return true
		}
	}
	return verbByStem[stem(w)].name != ""
}

func plainLetters(s string) bool {
	for i := 0; i < len(s); i++ {
		if s[i] < 'a' || s[i] > 'z' {
			return false
		}
	}
	return true
}

// slips is a word and the words with one letter left out.
func slips(w string) []string {
	out := []string{w}
	for i := range w {
		out = append(out, w[:i]+w[i+1:])
	}
	return out
}

// slipIndex finds the longer verbs by themselves and by their letters but one.
var slipIndex = sync.OnceValue(func() map[string]string {
	m := map[string]string{}
	for _, g := range verbGroups {
		for _, name := range strings.Fields(g.words) {
			if len(name) < 6 || nounsToo[name] && name != "simmer" || !plainLetters(name) {
				continue
			}
			for _, key := range slips(name) {
				if _, ok := m[key]; !ok {
					m[key] = name
				}
			}
		}
	}
	return m
})

// near says that two words differ by one letter wrong, missing or too many, or by two neighbours changed round.
func near(a, b string) bool {
	if len(a) > len(b) {
		a, b = b, a
	}
	if len(b)-len(a) > 1 || a == b {
		return false
	}
	i := 0
	for i < len(a) && a[i] == b[i] {
		i++
	}
	switch {
	case len(a) < len(b):
		return a[i:] == b[i+1:]
	case a[i+1:] == b[i+1:]:
		return true
	}
	return i+1 < len(a) && a[i] == b[i+1] && a[i+1] == b[i] && a[i+2:] == b[i+2:]
}
