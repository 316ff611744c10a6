package network

import (
	"cmp"
	"fmt"
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"plait.example/internal/practical"
	"plait.example/internal/timeplan"
)

// told are the demands of these names as a reader meets them: each sentence
// once, the shortest first.
func (n *network) told(names []string) (list []timeplan.Demand) {
	for _, name := range names {
		d := n.demands[name]
		if !slices.ContainsFunc(list, func(other timeplan.Demand) bool { return other.Text == d.Text }) {
			list = append(list, d)
		}
	}
	slices.SortStableFunc(list, func(a, b timeplan.Demand) int {
		return cmp.Compare(utf8.RuneCountInString(a.Text), utf8.RuneCountInString(b.Text))
	})
	return list
}

// kitWord is what a piece of a kind of kit is called.
func kitWord(kit practical.Kit) string { return strings.ReplaceAll(string(kit), "-", " ") }

// counted is so many of something: "1 ring", "2 oven shelves".
func counted(number int, word string) string {
	switch {
	case number == 1:
		return "1 " + word
	case strings.HasSuffix(word, "shelf"):
		return fmt.Sprintf("%d %sves", number, strings.TrimSuffix(word, "f"))
	}
	return fmt.Sprintf("%d %ss", number, word)
}

// stepWords names a step in a demand: its own words, cut, and its name.
func stepWords(s *practical.Step) string {
	const most = 36
	words := []rune(strings.TrimRight(sentence(s.Text), " .,;:"))
	if len(words) == 0 {
		return "step " + s.ID
	}
	if len(words) > most {
		words = append(words[:most-1], '…')
	}
	return fmt.Sprintf("%q (%s)", string(words), s.ID)
}

// jobWords names a row in a demand.
func (n *network) jobWords(a int) string {
	j := n.jobs[a]
	switch j.part {
	case partHands:
		return stepWords(j.step)
	case partPutIn:
		return "putting in " + n.food(n.steps[j.step.ID])
	case partTakeOut:
		return "taking out " + n.food(n.steps[j.step.ID])
	case partServe:
		return "serving " + n.practical.Dishes[j.dish].Name
	}
	return strings.ReplaceAll(j.row, "/", " ")
}

// clockWords is a time as the practical writes times.
func (n *network) clockWords(t practical.TimeOfDay) string { return t.Write(n.practical.Clock.Hours) }

// sentence makes a row of a piece of a method: without the "and" or "then" that
// tied it to the piece before, and with a capital.
func sentence(text string) string {
	text = strings.TrimSpace(text)
	for {
		shorter := text
		for _, word := range []string{"and ", "then ", "or ", ", ", "; "} {
			shorter = cutPrefixFold(shorter, word)
		}
		if shorter == text {
			break
		}
		text = strings.TrimSpace(shorter)
	}
	first, size := utf8.DecodeRuneInString(text)
	if size == 0 || first == utf8.RuneError {
		return text
	}
	return string(unicode.ToUpper(first)) + text[size:]
}

// said are words that a serve row has already.
var said = map[string]bool{"and": true, "then": true, "serve": true, "served": true, "hot": true, "cold": true}

// presentation is how a dish is served, without what the row has said already.
func presentation(how string) string {
	words := strings.Fields(strings.TrimRight(how, ". "))
	for len(words) > 0 && said[strings.ToLower(strings.Trim(words[0], ",:;"))] {
		words = words[1:]
	}
	return strings.Join(words, " ")
}

func cutPrefixFold(s, prefix string) string {
	if len(s) >= len(prefix) && strings.EqualFold(s[:len(prefix)], prefix) {
		return s[len(prefix):]
	}
	return s
}
