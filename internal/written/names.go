package written

import (
	"regexp"
	"slices"
	"strings"
)

// all are words for every dish.
var all = map[string]bool{
	"all": true, "all dishes": true, "both": true, "everything": true, "all three": true, "all 3": true, "general": true,
	"all of them": true, "both dishes": true,
}

// nothing are words for no dish.
var nothing = map[string]bool{"-": true, "–": true, "—": true, "n/a": true, "none": true, "x": true}

// EveryDish stands in a row's Dishes when it says that it is about all of them.
const EveryDish = "all"

// named reads the cell of a dish: its name, letter, number or initials, or
// several of them. What the key explains is given by its name.
func (r *reader) named(text string) []string {
	text = strings.Join(strings.Fields(text), " ")
	low := strings.ToLower(strings.Trim(text, " .:"))
	switch {
	case text == "" || nothing[low]:
		return nil
	case all[low]:
		return []string{EveryDish}
	}
	if n, ok := r.find(text); ok {
		return []string{n}
	}
	var found []string
	for _, part := range severalSplit.Split(text, -1) {
		n, ok := r.find(strings.TrimSpace(part))
		if !ok {
			return []string{text}
		}
		if !slices.Contains(found, n) {
			found = append(found, n)
		}
	}
	return found
}

var severalSplit = regexp.MustCompile(`\s*[/,&+;]\s*|\s+(?:and|then)\s+|\s+-\s+`)

// find is a dish by what is said: the name in the document's own key, or the words as they are.
func (r *reader) find(said string) (string, bool) {
	if len(said) == 0 {
		return "", false
	}
	if colour := colourWords[strings.ToLower(said)]; colour != "" {
		if n, ok := nearest(r.names, colour, inkOf); ok && n.Ink == colour {
			return n.Name, true
		}
	}
	bare := strings.TrimSpace(dishLabel.ReplaceAllString(said, ""))
	for _, n := range r.names {
		switch {
		case n.Name != "" && sameName(n.Name, said):
			return said, true
		case n.Letter != "" && strings.EqualFold(n.Letter, strings.Trim(bare, "()[].")):
			if r.explained(n) {
				return n.Name, true
			}
			return said, true
		case len(said) >= 2 && len(said) <= 4 && strings.EqualFold(initials(n.Name), said):
			return n.Name, true
		}
	}
	return "", false
}

var dishLabel = regexp.MustCompile(`(?i)^(?:dish|recipe|product|course)\s*(?:no\.?\s*)?`)

// explained says whether the document itself names the dish.
func (r *reader) explained(n Named) bool {
	for _, d := range r.plan.Dishes {
		if d.Name == n.Name {
			return n.Name != ""
		}
	}
	return false
}

func initials(name string) string {
	var b strings.Builder
	for _, w := range strings.Fields(name) {
		if !joining[strings.ToLower(w)] {
			b.WriteRune([]rune(w)[0])
		}
	}
	return b.String()
}

var joining = map[string]bool{"and": true, "with": true, "of": true, "a": true, "the": true, "&": true, "in": true, "on": true, "my": true}

// sameName says whether two names are of one dish: the same words, or all words
// of the shorter in the longer.
func sameName(a, b string) bool {
	wa, wb := nameWords(a), nameWords(b)
	if len(wa) > len(wb) {
		wa, wb = wb, wa
	}
	if len(wa) == 0 {
		return false
	}
	for _, w := range wa {
		found := false
		for _, v := range wb {
			found = found || v == w || len(w) >= 5 && strings.HasPrefix(v, w) || len(v) >= 5 && strings.HasPrefix(w, v)
		}
		if !found {
			return false
		}
	}
	return len(strings.Join(wa, "")) >= 3
}

func nameWords(s string) (words []string) {
	for _, w := range strings.FieldsFunc(strings.ToLower(s), func(r rune) bool {
		return (r < 'a' || r > 'z') && (r < '0' || r > '9') && r < 0x80
	}) {
		if !joining[w] {
			words = append(words, strings.TrimSuffix(w, "s"))
		}
	}
	return words
}

// isDish says whether a heading is the name of a known dish.
func (r *reader) isDish(text string) bool {
	for _, n := range r.names {
		if n.Name != "" && len(text) <= 60 && sameName(n.Name, text) {
			return true
		}
	}
	return false
}

// dishesIn finds the dish that a heading inside the plan names.
func (r *reader) dishesIn(text string) []string {
	if m := dishPattern.FindStringSubmatch(text); m != nil {
		return []string{strings.Trim(m[2], " .:")}
	}
	if len(text) > 80 {
		return nil
	}
	if n, ok := r.find(strings.Trim(text, " .:")); ok {
		return []string{n}
	}
	var found []string
	words := nameWords(text)
	for _, n := range r.names {
		if wanted := nameWords(n.Name); n.Name != "" && len(wanted) > 0 && len(words) <= len(wanted)+3 && containsAll(words, wanted) && !slices.Contains(found, n.Name) {
			found = append(found, n.Name)
		}
	}
	return found
}

func containsAll(words, wanted []string) bool {
	for _, w := range wanted {
		if !slices.Contains(words, w) {
			return false
		}
	}
	return true
}
