package act

import (
	_ "embed" // the tables of words
	"strings"
)

// misspelt are spellings that pupils use for short words, and for words that
// are words of their own elsewhere ("role out", "flower"). Invented for this
// table from common practice.
//
//go:embed misspelt.txt
var misspeltLines string

var misspelt = pairs(misspeltLines)

// foodLines are words of foods and dishes; englishLines are further words of
// everyday English, which are never taken for misspelt words of the kitchen.
// Both are from memory.
//
//go:embed foods.txt
var foodLines string

//go:embed english.txt
var englishLines string

// ingredients are what is put into something, and madeDishes what is made.
var ingredients, madeDishes = words(foodLists[0]), words(foodLists[1])

var foodLists = func() [2]string {
	_, list, _ := strings.Cut(foodLines, "\ningredients\n")
	first, second, _ := strings.Cut(list, "\ndishes\n")
	return [2]string{first, second}
}()

var plainEnglish = exactly(englishLines)

func pairs(text string) map[string]string {
	m := map[string]string{}
	for _, p := range strings.Fields(text) {
		if from, to, ok := strings.Cut(p, "="); ok && from != to {
			m[from] = to
		}
	}
	return m
}

// mend is the word of the kitchen that a written word stands for, or the word
// itself. Words of everyday English are left as they are; of others, those of
// five letters or more are read as the one nearest word of the kitchen: one
// letter may be wrong, from eight letters on two.
func (k Known) mend(w string) string {
	if to, ok := misspelt[w]; ok {
		return to
	}
	if len(w) < 5 || k[w] || known(w) {
		return w
	}
	if near, ok := nearest(w, longWords[w[0]]); ok {
		return near
	}
	return w
}

// known says whether a word, as it is or by its stem, needs no mending.
func known(w string) bool {
	s := stem(w)
	return vocabulary[w] || vocabulary[s] || everyday[w] || everyday[s] || phraseWords[w] || plainEnglish[w] || ingredients[w] || madeDishes[w]
}

// nearest is the single nearest of the words within the allowance; its first
// letter is the same, or the first two are swapped.
func nearest(w string, list []string) (string, bool) {
	allow := 1
	if len(w) >= 8 {
		allow = 2
	}
	best, least, twice := "", allow+1, false
	for _, k := range list {
		if k[0] != w[0] && (len(k) < 2 || k[0] != w[1] || k[1] != w[0]) || len(k)-len(w) > allow || len(w)-len(k) > allow {
			continue
		}
		switch d := edits(w, k); {
		case d > allow:
		case d < least, d == least && twice && usual(k):
			best, least, twice = k, d, false
		case d == least && (usual(k) || !usual(best)):
			twice = usual(k) == usual(best)
			best = k
		}
	}
	return best, best != "" && !twice
}

// usual says whether a word is a verb of cooking: of words equally near it is the one that is meant.
func usual(w string) bool {
	v := lexicon[stem(w)]
	return v.name != "" && v.kind != Other || w == "stirring"
}

// edits counts the letters to add, drop or change to make one word of the
// other (Levenshtein 1965), a swap of neighbours counting one.
func edits(a, b string) int {
	if len(a) > 30 || len(b) > 30 {
		return max(len(a), len(b))
	}
	var before, last, row [32]int
	for j := range len(b) + 1 {
		last[j] = j
	}
	for i := range len(a) {
		row[0] = i + 1
		for j := range len(b) {
			cost := 1
			if a[i] == b[j] {
				cost = 0
			}
			row[j+1] = min(row[j]+1, last[j+1]+1, last[j]+cost)
			if i > 0 && j > 0 && a[i] == b[j-1] && a[i-1] == b[j] {
				row[j+1] = min(row[j+1], before[j-1]+1)
			}
		}
		before, last = last, row
	}
	return last[len(b)]
}
