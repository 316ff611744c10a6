package match

import (
	"strings"

	"plait.example/internal/written"
)

// everyDish are the words by which a row says that it is about no dish alone.
var everyDish = func() map[string]bool {
	m := map[string]bool{}
	for _, w := range strings.Fields("all both everything every general misc other others me kitchen n/a na - -- none hygiene tidy set-up setup whole a+b a&b any x all-dishes dishes cleaning clean washing prep end start") {
		m[w] = true
	}
	return m
}()

// isEvery says whether a dish as said is all of them or none.
func isEvery(label string) bool {
	label = strings.ToLower(strings.TrimSpace(label))
	if everyDish[label] {
		return true
	}
	for _, w := range strings.FieldsFunc(label, func(r rune) bool { return r == ' ' || r == '/' || r == ',' || r == '&' || r == '+' }) {
		if !everyDish[w] && w != "dishes" && w != "of" && w != "them" && w != "the" && w != "three" && w != "two" {
			return false
		}
	}
	return true
}

// labelOf is the group that a row belongs to by its dish as said or its colour;
// empty: nothing is said.
func labelsOf(r written.Row) []string {
	if len(r.Dishes) > 0 {
		var list []string
		for _, d := range r.Dishes {
			list = append(list, strings.ToLower(strings.TrimSpace(d)))
		}
		return list
	}
	switch {
	case r.Ink != "" && !grey(r.Ink):
		return []string{"#" + r.Ink}
	case r.Shade != "" && !grey(r.Shade):
		return []string{"@" + r.Shade}
	}
	return nil
}

// grey says whether a colour RRGGBB has no hue: black letters, a shaded heading.
func grey(rgb string) bool {
	if len(rgb) != 6 {
		return true
	}
	low, high := byte(255), byte(0)
	for i := 0; i < 6; i += 2 {
		v := hex(rgb[i])<<4 | hex(rgb[i+1])
		low, high = min(low, v), max(high, v)
	}
	return high-low < 24
}

func hex(c byte) byte {
	switch {
	case c >= '0' && c <= '9':
		return c - '0'
	case c >= 'a' && c <= 'f':
		return c - 'a' + 10
	case c >= 'A' && c <= 'F':
		return c - 'A' + 10
	}
	return 0
}

// Weights of a dish's name against the evidence of the rows.
const (
	forName    = 6.0
	forLetter  = 2.5
	forInitial = 0.8
	forOrder   = 0.5
)

// resolve finds the practical's dish of each group of rows, jointly: no two
// groups share a dish while there are enough. -1: all or none.
func (k *known) resolve(plan written.Plan, pieces []piece, fit [][]float64) map[string]int {
	var labels []string
	index := map[string]int{}
	evidence := map[string][]float64{}
	for n, r := range plan.Rows {
		for _, l := range labelsOf(r) {
			if isEvery(l) {
				continue
			}
			if _, ok := index[l]; !ok {
				index[l] = len(labels)
				labels = append(labels, l)
				evidence[l] = k.named(plan, l, len(labels)-1)
			}
			share := 1 / float64(len(labelsOf(r)))
			for i := range pieces {
				if pieces[i].row == n && !pieces[i].chore {
					for d := range k.dishes {
						evidence[l][d] += share * max(0, k.bestIn(fit[i], d))
					}
				}
			}
		}
	}
	matrix := make([][]float64, len(labels))
	for i, l := range labels {
		matrix[i] = evidence[l]
	}
	result := map[string]int{}
	for i, d := range assign(matrix, len(k.dishes)) {
		result[labels[i]] = d
	}
	return result
}

// bestIn is the best of a piece's scores among a dish's steps.
func (k *known) bestIn(fit []float64, d int) float64 {
	best := -needed
	for j := k.dishes[d].from; j < k.dishes[d].to; j++ {
		best = max(best, fit[j])
	}
	return best
}

// named scores the dishes by what the label itself says.
func (k *known) named(plan written.Plan, label string, place int) []float64 {
	scores := make([]float64, len(k.dishes))
	names := []string{label}
	for _, n := range plan.Dishes {
		same := strings.EqualFold(n.Letter, label) && label != "" || strings.EqualFold(n.Name, label) || n.Ink != "" && "#"+n.Ink == label || n.Shade != "" && "@"+n.Shade == label
		if same && n.Name != "" {
			names = append(names, n.Name)
		}
	}
	for d, dw := range k.dishes {
		for _, name := range names {
			scores[d] = max(scores[d], forName*k.likeName(name, d))
		}
		short := strings.Trim(label, ".():- ")
		short = strings.TrimPrefix(short, "dish ")
		switch {
		case strings.EqualFold(short, dw.letter):
			scores[d] += forLetter
		case len(short) == 1 && dw.initial(short):
			scores[d] += forInitial
		}
		if place == d {
			scores[d] += forOrder
		}
	}
	return scores
}

func (d dishWords) initial(letter string) bool {
	for stem := range d.name {
		if strings.HasPrefix(stem, strings.ToLower(letter)) {
			return true
		}
	}
	return false
}

// likeName says how much of a name, 0 to 1, is the dish's: in its own name, or
// by words that only its steps have.
func (k *known) likeName(name string, d int) float64 {
	stems := k.mended(name)
	if len(stems) == 0 {
		return 0
	}
	sum := 0.0
	for _, stem := range sorted(stems) {
		if k.dishes[d].name[stem] {
			sum += 1 / float64(k.dishesNamed(stem))
		} else if in := k.dishesWith(stem); in[d] && len(in) == 1 {
			sum += 0.5
		}
	}
	return sum / float64(len(stems))
}

func (k *known) dishesNamed(stem string) (n int) {
	for _, d := range k.dishes {
		if d.name[stem] {
			n++
		}
	}
	return max(n, 1)
}

func (k *known) dishesWith(stem string) map[int]bool {
	in := map[int]bool{}
	for _, s := range k.steps {
		if s.words[stem] >= ofComponent {
			in[s.dish] = true
		}
	}
	return in
}
