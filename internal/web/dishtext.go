package web

import (
	"slices"
	"strings"

	"plait.example/internal/practical"
)

// Piece is a stretch of a recipe's text; Step is the step that was read from it.
type Piece struct {
	Text, Step string
	Link       string
	Here       bool // of the step that is open
	Doubtful   bool
	Line       int // 1 to 4: how it is underlined, so that neighbours differ without their colours
}

// marked cuts a recipe's text where its steps were read from it: each step's
// words are looked for after those of the step before, in any spacing. Markup of
// links and emphasis is left as it stands.
func marked(action, text string, steps []practical.Step, open string) []Piece {
	if strings.TrimSpace(text) == "" {
		return nil
	}
	words := spans(text)
	var pieces []Piece
	done, from, lines := 0, 0, 0 // bytes shown; words used; steps marked
	for _, step := range steps {
		first, last := locate(text, words, from, step.Text)
		if first < 0 {
			continue
		}
		if start := words[first][0]; start > done {
			pieces = append(pieces, Piece{Text: text[done:start]})
		}
		pieces = append(pieces, Piece{
			Text: text[words[first][0]:words[last][1]], Step: step.ID, Link: stepLink(action, step.ID), Here: step.ID == open,
			Doubtful: doubtful(step), Line: 1 + lines%4,
		})
		lines++
		done, from = words[last][1], last+1
	}
	return append(pieces, Piece{Text: text[done:]})
}

// spans is where each word of a text begins and ends.
func spans(text string) [][2]int {
	var found [][2]int
	for at := 0; at < len(text); {
		rest := strings.TrimLeft(text[at:], " \t\n\r")
		at = len(text) - len(rest)
		if rest == "" {
			break
		}
		length := strings.IndexAny(rest, " \t\n\r")
		if length < 0 {
			length = len(rest)
		}
		found = append(found, [2]int{at, at + length})
		at += length
	}
	return found
}

// locate finds the words of a step among those of the text from one on: its
// first three words in a row, and its end as far as it agrees.
func locate(text string, all [][2]int, from int, step string) (first, last int) {
	want := strings.Fields(step)
	if len(want) == 0 {
		return -1, -1
	}
	key := want[:min(3, len(want))]
	for i := from; i+len(key) <= len(all); i++ {
		if !slices.EqualFunc(all[i:i+len(key)], key, func(s [2]int, w string) bool { return plain(text[s[0]:s[1]]) == plain(w) }) {
			continue
		}
		n := len(key)
		for n < len(want) && i+n < len(all) && plain(text[all[i+n][0]:all[i+n][1]]) == plain(want[n]) {
			n++
		}
		return i, i + n - 1
	}
	return -1, -1
}

// plain is a word without case and the marks around it.
func plain(word string) string { return strings.ToLower(strings.Trim(word, ".,;:()!?\"'“”‘’")) }
