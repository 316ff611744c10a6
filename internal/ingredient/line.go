// Package ingredient reads a line of a recipe's list of ingredients, "2 x 400 g tins chopped
// tomatoes, drained", into its parts, weighs it and scales it.
//
// It owns the words of such lines, the units of the kitchen and the weights of foods by measure.
// It must not know of recipes, steps, plans or files. It reads by rules and tables only: the same
// line gives the same parts every time.
package ingredient

import "strings"

// Relation says how an amount stands to the amount before it.
type Relation int

// The relations.
const (
	Main Relation = iota // the first amount of the line
	Each                 // the size of one of them: "2 x 400 g tins", "1 (14-ounce) can"
	Same                 // the same amount measured another way: "1 1/2 pounds (about 3 cups)"
	Plus                 // on top: "1 cup plus 2 tablespoons"
	More                 // a further amount in a comment: "plus 2 tablespoons for the tin"
	Or                   // of an alternative: "or 1 teaspoon dried"
)

// Amount is a figure and what it counts.
type Amount struct {
	Low, High float64 // 0 and 0: no figure ("salt"); High equals Low when no range was written
	Words     string  // as written when it was not a plain figure: "half", "few", "2 dozen", "a"
	Unit      string  // a singular as written, lower case: "tablespoon", "g", "tin"; "" when things are counted
	Pack      string  // the container, a singular, when it stands after the size of one and no number does: "400 g tin of beans"
	Size      string  // "large", "heaping", "thin"
	Relation  Relation
	Rough     bool // "about", "approximately"
	token     int  // of the figure; -1: none
	unitToken int  // the last word of the unit; -1: none
}

// Line is a line of the list in its parts. Every word of Raw is in one of them, unless it is a
// figure or a unit.
type Line struct {
	Raw         string
	Amounts     []Amount
	Name        string // kind words kept: "unsalted butter"
	Preparation string // done to the food: "finely chopped"
	Comment     string // the rest: "to taste", "or 1 teaspoon dried"
	Optional    bool
	rescued     bool // the name is words that were read as something else
	tokens      []token
	text        string // Raw after unify
}

// First is the amount that counts: the first, or none.
func (l Line) First() Amount {
	if len(l.Amounts) == 0 {
		return Amount{}
	}
	return l.Amounts[0]
}

// Note is the preparation and the comment, as one text.
func (l Line) Note() string {
	if l.Preparation == "" || l.Comment == "" {
		return l.Preparation + l.Comment
	}
	return l.Preparation + ", " + l.Comment
}

// Parse reads a line. It never fails: a line that is not understood is all name.
func Parse(line string) Line {
	text := oneForL(oldAmounts(cells(unify(strings.TrimLeft(line, " \t-*•·–—")))))
	p := &parser{ts: scan(text), text: text}
	p.read()
	l := Line{Raw: line, Amounts: p.amounts, tokens: p.ts, text: text, Optional: p.optional(), rescued: p.rescued}
	l.Name = p.collect(name, " ")
	l.Preparation = p.collect(preparation, ", ")
	l.Comment = p.collect(comment, ", ")
	return l
}

// cells joins the cells of a row of a table: "| 300 g | chicken thighs | diced |". Two that both begin
// with a figure are the same amount twice and stay apart.
func cells(text string) string {
	if !strings.Contains(text, "|") {
		return text
	}
	var filled []string
	for c := range strings.SplitSeq(text, "|") {
		if c = strings.TrimSpace(c); c != "" {
			filled = append(filled, c)
		}
	}
	if len(filled) < 2 || isDigit(filled[0][0]) && isDigit(filled[1][0]) {
		return text
	}
	joined := filled[0] + " " + filled[1]
	for _, c := range filled[2:] {
		joined += ", " + c
	}
	return joined
}

// oneForL puts a 1 where the reading of a picture has left a letter or a stroke that looks like one:
// "l egg", "| onion", "I x 400 g tin". A capital I may be a person, so after it a measure has to stand.
func oneForL(text string) string {
	if len(text) < 3 || text[1] != ' ' || strings.IndexByte("lI|", text[0]) < 0 {
		return text
	}
	next, _, _ := strings.Cut(strings.ToLower(text[2:]), " ")
	if text[0] == 'I' && next != "x" && !sizes[next] && isUnit(next) == notUnit && !isDigit(next[0]) {
		return text
	}
	return "1" + text[1:]
}

// collect joins the runs of tokens that carry a label. A run keeps the signs inside it.
func (p *parser) collect(want label, between string) string {
	var runs []string
	for i := 0; i < len(p.ts); i++ {
		if p.ts[i].label != want {
			continue
		}
		j := i
		for k := i; k < len(p.ts) && (p.ts[k].label == want || p.ts[k].label == none); k++ {
			if p.ts[k].label == want {
				j = k
			}
		}
		if run := p.run(i, j); run != "" {
			runs = append(runs, run)
		}
		i = j
	}
	return strings.Join(runs, between)
}

// run is the text from token i to token j, with the brackets and the quotes that belong to it.
func (p *parser) run(i, j int) string {
	from, to := p.ts[i].from, p.ts[j].to
	s := p.text[from:to]
	if closes := strings.IndexByte(s, ')'); closes >= 0 && !strings.Contains(s[:closes], "(") && i > 0 && p.ts[i-1].is("(") {
		s = "(" + s
	}
	if strings.Count(s, "(") > strings.Count(s, ")") && j+1 < len(p.ts) && p.ts[j+1].is(")") {
		s += ")"
	}
	if strings.Count(s, "(") != strings.Count(s, ")") {
		s = strings.NewReplacer("(", "", ")", "").Replace(s)
	}
	if strings.Count(s, `"`)%2 == 1 && i > 0 && p.ts[i-1].is(`"`) {
		s = `"` + s
	}
	return strings.Trim(s, " ,;")
}

func (p *parser) optional() bool {
	for i, t := range p.ts {
		if t.is("optional") || (t.is("if") && i+1 < len(p.ts) && p.ts[i+1].is("desired", "liked", "wanted", "you")) {
			return true
		}
	}
	return false
}
