package ingredient

import "strings"

// Marks are the flat fields in which the published sets of marked lines hold a line.
type Marks struct {
	Quantity, Unit, Name, Preparation, Comment string
}

// Marks gives the fields as the set of US lines has them: several amounts in the order of the line
// with spaces between, units singular, figures as decimals.
func (l Line) Marks() Marks {
	return Marks{
		Quantity: l.field(quantity), Unit: l.units(), Name: l.field(name),
		Preparation: l.field(preparation), Comment: l.field(comment),
	}
}

func (l Line) field(want label) string {
	var b strings.Builder
	last := -1
	for i, t := range l.tokens {
		inside := want != quantity && t.kind == sign && i > 0 && i+1 < len(l.tokens) && l.tokens[i-1].label == want && l.tokens[i+1].label == want
		if t.label != want && !inside {
			continue
		}
		if b.Len() > 0 && (t.gap || last != i-1) {
			b.WriteByte(' ')
		}
		b.WriteString(shown(t))
		last = i
	}
	return b.String()
}

// shown is a token as the set writes it.
func shown(t token) string {
	s := t.text
	if t.num != nil && (t.label == quantity || (t.text[0] >= '0' && t.text[0] <= '9')) {
		s = t.num.show()
	} else if t.kind == word {
		if u := singular(t.low); u != t.low && t.label == unit {
			s = u
		}
	}
	return s
}

// units lists the units in the order of the line, but the pack before its size: "1 16-ounce can"
// is "can ounce" in the set.
func (l Line) units() string {
	var out []string
	for i, t := range l.tokens {
		if t.label != unit {
			continue
		}
		u := singular(t.low)
		k := isUnit(u)
		if n := len(out); n == 1 && (k == pack || k == piece && u != "piece") && l.headEach(i) {
			out = append(out[:n-1], u, out[n-1])
			continue
		}
		out = append(out, u)
	}
	return strings.Join(out, " ")
}

// FormMarks gives the fields as the set of metric lines has them: filled into a form, so that the
// quantity is the figure that opens the line, the unit holds the pack size, the name runs to the
// first comma and the rest is the comment.
func (l Line) FormMarks() Marks {
	p := &parser{ts: append([]token{}, l.tokens...), text: l.text}
	var m Marks
	i := 0
	if t := p.at(0); t.num != nil {
		m.Quantity, i = t.num.show(), 1
		if p.at(i).is("x") {
			i++
		}
	}
	start := i
	for i < len(p.ts) && p.at(i).label == unit || i > start && p.at(i-1).label == unit && p.at(i).is("-") || p.at(i).num != nil && i == start && start > 0 && p.at(i).label == quantity {
		i++
	}
	if i > start {
		m.Unit = p.between(start, i)
	}
	end := i
	for depth := 0; end < len(p.ts) && (!p.at(end).is(",") || depth > 0); end++ {
		if p.at(end).is("(") {
			depth++
		} else if p.at(end).is(")") {
			depth--
		}
	}
	m.Name, m.Comment = p.between(i, end), p.between(end+1, len(p.ts))
	return m
}

func (p *parser) between(from, to int) string {
	if from >= to || from >= len(p.ts) {
		return ""
	}
	return strings.Trim(p.text[p.ts[from].from:p.ts[min(to, len(p.ts))-1].to], " ,;")
}

// headEach says whether the unit at token i is the pack whose size stands before it, at the head of the line.
func (l Line) headEach(i int) bool {
	before := l.tokens[i-1]
	return i < 7 && before.label == unit && (isUnit(before.low) == weight || isUnit(before.low) == volume || isUnit(before.low) == length) &&
		len(l.Amounts) > 1 && l.Amounts[1].Relation == Each
}
