package ingredient

import (
	"fmt"
	"slices"
	"strings"
)

// Grams weighs a line by British measures. See Measures.Weigh.
func Grams(l Line) (grams float64, how string, ok bool) { return British.Weigh(l) }

// Weigh gives the weight of a line in grams and says in words how it was found: stated, from a volume
// by the food's density, or from a count by the weight of one. Of a range it takes the middle. ok is
// false when no weight can be given; how then says why.
func (m Measures) Weigh(l Line) (grams float64, how string, ok bool) {
	first := l.First()
	if first.Low <= 0 {
		return 0, "no quantity is given", false
	}
	ways := []func(Line) (float64, string, bool){m.stated, m.byVolume, m.byPiece}
	for _, way := range ways {
		if grams, how, ok = way(l); ok {
			if extra, why, plus := m.plus(l); plus {
				return grams + extra, how + " plus " + why, true
			}
			return grams, how, true
		}
	}
	return 0, m.whyNot(l), false
}

func middle(a Amount) float64 { return (a.Low + a.High) / 2 }

// stated finds a weight that the line says itself, alone or for each piece.
func (m Measures) stated(l Line) (float64, string, bool) {
	for _, a := range l.Amounts {
		g, known := GramsIn(a.Unit)
		if !known || a.Low <= 0 {
			continue
		}
		each := shownAmount(a)
		switch a.Relation {
		case Main, Same:
			if g == 1 {
				return middle(a), each + " as stated", true
			}
			return middle(a) * g, fmt.Sprintf("%s at %s g", each, decimal(g)), true
		case Each:
			if _, volume := m.MillilitresIn(l.First().Unit); volume {
				continue
			}
			n := middle(l.First())
			return n * middle(a) * g, fmt.Sprintf("%s times %s", decimal(n), each), true
		}
	}
	return 0, "", false
}

// shownAmount is an amount with its unit in full: "2 tablespoons".
func shownAmount(a Amount) string {
	u := UnitName(a.Unit)
	if a.High > 1 {
		u += "s"
	}
	return showRange(a) + " " + u
}

func showRange(a Amount) string {
	if a.High > a.Low {
		return decimal(a.Low) + " to " + decimal(a.High)
	}
	return decimal(a.Low)
}

// volume is the millilitres of the first amount that has them.
func (m Measures) volume(l Line) (float64, string, bool) {
	for _, a := range l.Amounts {
		ml, known := m.MillilitresIn(a.Unit)
		if !known || a.Low <= 0 {
			continue
		}
		switch a.Relation {
		case Main, Same:
			return middle(a) * ml, fmt.Sprintf("%s is %s ml", shownAmount(a), round(middle(a)*ml)), true
		case Each:
			n := middle(l.First())
			return n * middle(a) * ml, fmt.Sprintf("%s times %s is %s ml", decimal(n), shownAmount(a), round(n*middle(a)*ml)), true
		}
	}
	return 0, "", false
}

func round(v float64) string {
	if v >= 20 {
		return fmt.Sprintf("%.0f", v)
	}
	return fmt.Sprintf("%.3g", v)
}

func (m Measures) byVolume(l Line) (float64, string, bool) {
	ml, how, ok := m.volume(l)
	if !ok {
		return 0, "", false
	}
	f, exact := foods().find(l.asEaten())
	if f == nil || len(f.volumes) == 0 {
		return 0, "", false
	}
	s := f.state(l)
	return ml * s.grams, fmt.Sprintf("%s; %s g a ml for %s", how, decimal(s.grams), f.said(s, exact)), true
}

// asEaten is the name, with "cooked" before it when the line says so: cooked rice lies otherwise in the
// cup than raw.
func (l Line) asEaten() string {
	if slices.Contains(strings.Fields(strings.ToLower(strings.ReplaceAll(l.Preparation, ",", " "))), "cooked") {
		name := "cooked " + l.Name
		if _, exact := foods().find(name); exact {
			return name
		}
	}
	return l.Name
}

// state picks how the food lies in the cup by the words of the line; else the plain one; brown sugar
// is packed, as recipes mean it (common practice, no source).
func (f *food) state(l Line) lying {
	said := stems(l.Preparation + " " + l.Name + " " + l.Comment)
	best, high := f.volumes[0], 0
	for _, s := range f.volumes {
		if len(s.words) > 0 && strings.Join(s.words, " ") == "packed" && f.head["sugar"] && high == 0 && !slices.Contains(said, "unpacked") {
			best = s
		}
		n := 0
		for _, w := range s.words {
			if slices.Contains(said, w) || slices.Contains(said, likewise[w]) {
				n++
			}
		}
		if n > high {
			best, high = s, n
		}
	}
	return best
}

// likewise are words of the line that lie in the cup as a word of the tables does.
var likewise = map[string]string{"shredded": "grated", "diced": "cubed", "cube": "diced", "chopped": "diced", "sliced": "slice", "ground": "powder", "slice": "sliced"}

func (f *food) said(s lying, exact bool) string {
	name := "\"" + f.name + "\""
	if len(s.words) > 0 {
		name += ", " + strings.Join(s.words, " ")
	}
	if !exact {
		return name + " (the nearest food in the tables)"
	}
	return name
}

// byPiece weighs things that are counted: "2 onions", "3 cloves garlic", "1 large egg".
func (m Measures) byPiece(l Line) (float64, string, bool) {
	a := l.First()
	if _, ok := m.MillilitresIn(a.Unit); ok || vague[a.Unit] || (a.Unit == "" && strings.TrimSpace(l.Name) == "") {
		return 0, "", false
	}
	name := l.Name
	if a.Unit == "" && strings.TrimSuffix(strings.ToLower(name), "s") == "pepper" {
		name = "red pepper" // what is counted is no spice
	}
	f, exact := foods().find(name)
	if f == nil || f.otherwise(l) {
		return 0, "", false
	}
	if f.code == "01123" {
		f, a = m.egg(f, a)
	}
	g, what := f.piece(a, l.Name)
	if g == 0 {
		return 0, "", false
	}
	return middle(a) * g, fmt.Sprintf("%s at %s g (%s), %s", showRange(a), decimal(g), what, f.said(lying{}, exact)), true
}

// otherwise says that the tables know the food only as something else is sold, so
// that one of it does not weigh what one of the line does: canned prawns.
func (f *food) otherwise(l Line) bool {
	said := stems(l.Raw)
	for _, w := range []string{"canned", "dried", "cooked", "dehydrated"} {
		if f.words[w] && !slices.Contains(said, w) && !(w == "canned" && sold[l.First().Unit]) {
			return true
		}
	}
	return false
}

// vague are units that have no agreed size.
var vague = words(`pinch dash handful knob splash drop drizzle glug sprinkle sprinkling dollop squeeze twist grinding shake few glass mug bowl thumb`)

// egg is an egg as the country grades it. A recipe that gives no size means a medium one here and a
// large one in the United States (common practice, no source).
func (m Measures) egg(f *food, a Amount) (*food, Amount) {
	if m == British {
		return foods().byCode["egg-uk"], a
	}
	if a.Size == "" {
		a.Size = "large"
	}
	return f, a
}

// piece gives the grams in one piece: of the unit, of the size, of the part that the name says, or a medium one.
func (f *food) piece(a Amount, name string) (float64, string) {
	for _, k := range f.pieceKeys(a, name) {
		if g := f.pieces[k]; k != "" && g > 0 {
			return g, k
		}
		if k == "stalk" || k == "stick" || k == "rib" {
			for _, other := range []string{"stalk", "stick"} {
				if g := f.pieces[other]; g > 0 && (other == k || f.head["celery"]) {
					return g, other
				}
			}
		}
	}
	return 0, ""
}

var shortSizes = map[string]string{"extra": "extra large", "lrg": "large", "lge": "large", "lg": "large", "med": "medium", "sm": "small"}

// pieceKeys are what the tables may call one piece, the surest first.
func (f *food) pieceKeys(a Amount, name string) []string {
	size, _, _ := strings.Cut(a.Size, "-")
	if full, short := shortSizes[size]; short {
		size = full
	}
	keys := []string{strings.TrimSpace(size + " " + a.Unit), a.Unit}
	if a.Unit == "rasher" || a.Unit == "slice" {
		keys = append(keys, "slice raw", "slice")
	}
	if a.Unit == "can" || a.Unit == "tin" {
		keys = append(keys, "can", "can drained")
	}
	if a.Unit != "" {
		return keys
	}
	keys = []string{size}
	said := query(name)
	for i := len(said) - 1; i >= 0; i-- {
		keys = append(keys, said[i], said[i]+" with skin", said[i]+" without skin", said[i]+" tomato") // "cherry", "thigh with skin", "plum tomato"
	}
	keys = append(keys, strings.Join(said, ""), "medium", "fruit", "whole")
	heads := len(keys)
	for w := range f.head {
		if f.pieces[w] > 0 {
			keys = append(keys, w)
		}
	}
	slices.Sort(keys[heads:])
	return append(keys, "large")
}

// plus adds what stands on top at the head of the line: "1 cup plus 2 tablespoons".
func (m Measures) plus(l Line) (float64, string, bool) {
	for i, a := range l.Amounts {
		if a.Relation != Plus || i > 0 && l.Amounts[i-1].Relation == Same { // "1 kg / 2 lb 4 oz"
			continue
		}
		a.Relation = Main
		rest := l
		rest.Amounts = []Amount{a}
		if g, how, ok := m.Weigh(rest); ok {
			return g, how, true
		}
	}
	return 0, "", false
}

func (m Measures) whyNot(l Line) string {
	a := l.First()
	f, _ := foods().find(l.Name)
	_, volume := m.MillilitresIn(a.Unit)
	switch {
	case vague[a.Unit]:
		return fmt.Sprintf("a %s has no agreed weight", a.Unit)
	case f == nil:
		return fmt.Sprintf("no food in the tables is called %q", l.Name)
	case volume:
		return fmt.Sprintf("the tables give no density for \"%s\"", f.name)
	case a.Unit == "":
		return fmt.Sprintf("the tables do not say what one of \"%s\" weighs", f.name)
	}
	return fmt.Sprintf("the tables do not say what a %s of \"%s\" weighs", a.Unit, f.name)
}
