package recipe

import (
	"strings"
	"sync"
)

var phraseCache sync.Map

// phraseStems is the phrase as stems. Phrases come from the tables, so there
// are few of them, and each is stemmed once.
func phraseStems(phrase string) []string {
	if s, ok := phraseCache.Load(phrase); ok {
		return s.([]string)
	}
	var out []string
	for _, w := range strings.Fields(phrase) {
		out = append(out, stem(w))
	}
	phraseCache.Store(phrase, out)
	return out
}

func set(words string) map[string]bool {
	m := map[string]bool{}
	for _, w := range strings.Fields(words) {
		m[w] = true
	}
	return m
}

func fieldsOf(s string) []string { return strings.Fields(s) }
