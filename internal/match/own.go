package match

import (
	"strings"

	"plait.example/internal/written"
)

// ownLetters gives letters to the dishes of a plan that has no practical: its
// own where it has them, else A, B, C in the order of appearance.
func ownLetters(plan written.Plan) [][]string {
	o := owned{plan: plan, letters: map[string]string{}, taken: map[string]bool{}, next: 'A'}
	for _, n := range plan.Dishes {
		if len(n.Letter) == 1 {
			o.taken[strings.ToUpper(n.Letter)] = true
		}
	}
	for _, n := range plan.Dishes {
		o.letter(strings.ToLower(strings.TrimSpace(n.Name)))
	}
	var all [][]string
	for _, r := range plan.Rows {
		var list []string
		for _, label := range labelsOf(r) {
			if isEvery(label) {
				continue
			}
			if l := o.letter(label); l != "" {
				list = append(list, l)
			}
		}
		all = append(all, list)
	}
	return all
}

// owned are the letters given so far.
type owned struct {
	plan    written.Plan
	letters map[string]string // by label
	taken   map[string]bool
	next    rune
}

// letter is the letter of a label; empty when all twenty-six are taken.
func (o *owned) letter(label string) string {
	if l := o.letters[label]; l != "" {
		return l
	}
	l := ""
	if len(label) == 1 && label >= "a" && label <= "z" {
		l = strings.ToUpper(label)
	}
	for _, n := range o.plan.Dishes {
		if len(n.Letter) == 1 && (strings.EqualFold(n.Name, label) || strings.EqualFold(n.Letter, label) || "#"+n.Ink == label || "@"+n.Shade == label) {
			l = strings.ToUpper(n.Letter)
		}
	}
	for ; l == "" && o.next <= 'Z'; o.next++ {
		if s := string(o.next); !o.taken[s] {
			l = s
		}
	}
	if l != "" {
		o.letters[label], o.taken[l] = l, true
	}
	return l
}
