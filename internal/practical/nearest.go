package practical

import (
	"fmt"
	"strings"
)

// nearest is the known word closest to what was written, or "" when none is
// close: at most a third of its letters may be wrong.
func nearest(word string, known []string) string {
	best, least := "", 1+max(1, len(word)/3)
	for _, k := range known {
		if d := edits(strings.ToLower(word), k); d < least {
			best, least = k, d
		}
	}
	return best
}

// edits counts the letters to add, drop or change to make one word of the
// other (Levenshtein 1965), and a swap of neighbours as one.
func edits(a, b string) int {
	if len(a) > 40 || len(b) > 40 {
		return max(len(a), len(b))
	}
	before, last := make([]int, len(b)+1), make([]int, len(b)+1)
	for j := range last {
		last[j] = j
	}
	for i := range len(a) {
		row := make([]int, len(b)+1)
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

// oneOf is a hint that names the nearest of the allowed words, and all of them.
func oneOf(word string, known []string) string {
	all := "one of: " + strings.Join(known, ", ")
	if near := nearest(word, known); near != "" {
		return fmt.Sprintf("did you mean %q; %s", near, all)
	}
	return all
}
