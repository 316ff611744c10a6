package ingredient

import "strings"

// read labels every token of the line: first the amount at its head, then the name with what stands
// around it, then what follows the commas.
func (p *parser) read() {
	i := p.head()
	for i < len(p.ts) && p.at(i).is(",", ":") {
		i++
	}
	segments := p.segments(i)
	named, ended := false, false
	for k, s := range segments {
		switch {
		case !ended && !named:
			named = p.nameSegment(s[0], s[1])
		case !ended && p.goesOn(segments, k):
			p.nameSegment(s[0], s[1])
		default:
			ended = true
			p.tailSegment(s[0], s[1])
		}
		if named && !p.goesOn(segments, k+1) {
			ended = true
		}
	}
	p.unitAtEnd()
	p.rescueName()
}

// head reads the amount that opens the line and gives the index of what follows.
func (p *parser) head() int {
	if i, ok := p.partOf(); ok {
		return i
	}
	m, ok := p.readMeasure(p.optionalFirst())
	if !ok {
		return p.withoutFigure()
	}
	p.take(m, Main)
	i := m.to
	for {
		j := p.second(i)
		if j == i {
			break
		}
		i = j
	}
	i = p.packOf(m, i)
	if p.at(i).is("of") {
		p.ts[i].label = comment
		i++
	}
	return i
}

// optionalFirst steps over "(optional)" at the head of the line.
func (p *parser) optionalFirst() int {
	if p.at(0).is("(") && p.at(1).is("optional") && p.at(2).is(")") {
		p.mark(1, 2, comment)
		return 3
	}
	return 0
}

// withoutFigure reads a line that does not open with a figure: "pinch of salt", "oil 2 tbsp", "an onion".
func (p *parser) withoutFigure() int {
	if i := p.bareUnit(); i > 0 {
		return i
	}
	if p.at(0).is("a", "an") && p.at(1).kind == word && !p.at(1).is("little", "bit", "lot", "few", "couple") {
		p.take(measure{from: 0, num: -1, to: 1}, Main)
		return 1
	}
	p.amountLast()
	return 0
}

// amountLast takes an amount that stands after the name: "oil 2 tbsp", "onions 2 medium-sized, minced".
func (p *parser) amountLast() {
	for i := 1; i < len(p.ts); i++ {
		t := p.at(i)
		if opens[t.low] && !t.is("-", ":") && !(t.is("/") && p.at(i+1).num == nil) || t.is("(", ",", "or", "and", "in", "into", "at") {
			return
		}
		if t.num == nil {
			continue
		}
		if p.at(i - 1).is("/") {
			return
		}
		m, _ := p.readMeasure(i)
		packed := isUnit(p.at(m.to).low) == pack && p.at(m.to+1).kind == sign && m.hasUnit()
		if packed {
			m.to++ // "chopped tomatoes 400g tin"
		}
		if end := p.at(m.to); end.kind == word || end.num != nil || (p.at(i).is("-") && !m.hasUnit()) {
			return
		}
		p.take(m, Main)
		if packed {
			p.amounts[0].Pack = singular(p.at(m.to - 1).low)
			p.ts[m.to-1].label = unit
		}
		return
	}
}

// bareUnit reads "pinch of salt" and "handful mint leaves".
func (p *parser) bareUnit() int {
	i := 0
	for approximate[p.at(i).low] || p.at(i).is("good", "large", "small", "big", "little") {
		i++
	}
	if !bare[singular(p.at(i).low)] || len(p.ts) <= i+1 || p.at(i+1).kind == sign {
		return 0
	}
	m := measure{from: 0, num: -1, units: []int{i}, to: p.skipOf(i + 1)}
	for j := range i {
		m.sizes = append(m.sizes, j)
	}
	p.take(m, Main)
	return m.to
}

// second reads another measure that stands beside the first: "/ 450 g", "plus 2 tablespoons",
// "(about 3 cups)", ", plus 2 teaspoons,".
func (p *parser) second(i int) int {
	t := p.at(i)
	comma := t.is(",")
	if comma {
		t = p.at(i + 1)
	}
	switch {
	case p.at(i).is("("):
		return p.bracket(i)
	case p.at(i).num != nil && len(p.amounts) > 0 && p.at(i+1).is("oz", "ounce", "ounces") && UnitName(p.amounts[len(p.amounts)-1].Unit) == "pound":
		if m, ok := p.readMeasure(i); ok && m.hasUnit() {
			p.take(m, Plus) // "2 lb 4 oz"
			return m.to
		}
	case p.at(i).is("/") && p.at(i+1).num != nil && p.at(i+2).is("in"):
		p.take(measure{from: i + 1, num: i + 1, units: []int{i + 2}, to: i + 3}, Same) // "5cm/2in piece"
		return i + 3
	case p.at(i).is("/", "|") && (p.at(i+1).num != nil || approximate[p.at(i+1).low]):
		if m, ok := p.readMeasure(i + 1); ok && m.hasUnit() {
			r := Same
			if n := len(p.amounts); n > 0 && p.amounts[n-1].Relation == Each {
				r = Each // "2 x 400g/14oz tins"
			}
			p.take(m, r)
			return m.to
		}
	case t.is("or") && p.at(i+1).num != nil && !comma:
		m, _ := p.readMeasure(i + 1)
		if !m.hasUnit() && len(m.sizes) == 0 {
			return i
		}
		p.ts[i].label = comment
		p.take(m, Or) // "8 large or 10 medium"
		return m.to
	case t.is("plus", "+", "and", "&"):
		j := i + 1
		if comma {
			j++
		}
		m, ok := p.readMeasure(j)
		if !ok || !m.hasUnit() || m.num < 0 {
			return i
		}
		p.mark(i, m.to, comment)
		p.keep(m, Plus)
		if comma && p.at(m.to).is(",") {
			return m.to + 1
		}
		return m.to
	}
	return i
}

// bracket reads a bracket at i that holds only a measure, and gives the index after it; i when it
// holds something else.
func (p *parser) bracket(i int) int {
	end := p.closing(i)
	if m, ok := p.readMeasure(i + 1); ok && p.measures(m, end) {
		p.take(m, p.sameOrEach(m, end))
		if j := p.second(m.to); j > m.to && j <= end {
			m.to = j // "(680 g / 1 1/2 lb)"
		}
		p.mark(m.to, end, p.clue(m.to, end))
		return end + 1
	}
	return i
}

// sameOrEach tells "(6 ounces each)" and "4 (6-ounce) fillets" from "(about 12 ounces)".
func (p *parser) sameOrEach(m measure, end int) Relation {
	if p.at(m.to).is("each", "apiece") || p.at(m.from-1).is("each", "weighing") || m.num >= 0 && p.at(m.num+1).is("-") {
		return Each
	}
	for i := m.to; i < end; i++ {
		if p.at(i).is("each", "apiece") {
			return Each
		}
	}
	return Same
}

// measures says whether a measure is a second one of the same food, with no more than a few words
// before end: "(about 12 ounces total)", not "(1 stick plus 1 tablespoon)" or "(20 chops)".
func (p *parser) measures(m measure, end int) bool {
	k := p.sort(m)
	dozen := m.num >= 0 && p.ts[m.num].num.words != "" && m.to == end
	if m.num < 0 || m.to > end || (k == notUnit && !dozen) || k == length || end-m.to > 4 && !p.at(m.to).is(",") {
		return false
	}
	for i := m.to; i < end; i++ {
		if p.at(i).is("plus", "or", "+") {
			return false
		}
	}
	return true
}

// closing finds the bracket that closes the one at i; the end of the line when none does.
func (p *parser) closing(i int) int {
	depth := 0
	for j := i; j < len(p.ts); j++ {
		if p.ts[j].is("(") {
			depth++
		} else if p.ts[j].is(")") {
			if depth--; depth == 0 {
				return j
			}
		}
	}
	return len(p.ts)
}

// partOf reads "juice of 1 lemon", "grated zest of half an orange", "leaves from 1 sprig thyme".
func (p *parser) partOf() (int, bool) {
	i := 0
	for i < len(p.ts) && i < 7 && p.at(i).kind == word && parts[p.at(i).low] && !p.at(i).is("of", "from") {
		i++
	}
	if i == 0 || !p.at(i).is("of", "from") {
		return 0, false
	}
	j := i + 1
	if approximate[p.at(j).low] {
		j++
	}
	m, ok := p.readMeasure(j)
	if !ok {
		if !p.at(j).is("a", "an") {
			return 0, false
		}
		m = measure{from: j, num: -1, to: j + 1}
	}
	p.mark(0, i, preparation)
	p.mark(i, j, comment)
	p.take(m, Main)
	return m.to, true
}

// segments cuts the tokens from i at the commas and semicolons outside brackets.
func (p *parser) segments(i int) [][2]int {
	var out [][2]int
	start := i
	for j := i; j < len(p.ts); j++ {
		switch {
		case p.ts[j].is("("):
			if j = p.closing(j); j >= len(p.ts) {
				j = len(p.ts) - 1
			}
		case p.ts[j].is(",", ";") || p.stops(j) || (p.ts[j].is("-") && p.ts[j].gap && p.at(j+1).gap):
			if j > start {
				out = append(out, [2]int{start, j})
			}
			start = j + 1
		}
	}
	if start < len(p.ts) {
		out = append(out, [2]int{start, len(p.ts)})
	}
	return out
}

// stops says whether a full stop ends a sentence at j.
func (p *parser) stops(j int) bool {
	return j < len(p.ts) && p.ts[j].is(".") && (j+1 == len(p.ts) || p.ts[j+1].gap)
}

// goesOn says whether segment k still belongs to the name: "red, yellow or orange peppers".
func (p *parser) goesOn(segments [][2]int, k int) bool {
	if k == 0 || k >= len(segments) {
		return false
	}
	before, s := segments[k-1], segments[k]
	if p.stops(before[1]) {
		return false
	}
	if p.onlyAttributes(before) && (!p.startsNote(s[0]) || p.at(s[0]).is("or", "and")) {
		return true
	}
	first := segments[0]
	if before[1]-before[0] > 3 || first[1]-first[0] > 3 || p.startsNote(s[0]) {
		return false
	}
	for j := k; j < len(segments); j++ {
		a, b := segments[j][0], segments[j][1]
		if p.startsNote(a) {
			return false
		}
		for i := a + 1; i+1 < b; i++ {
			if p.at(i).is("or", "and") && p.at(i+1).num == nil {
				return !p.hasDone(a, b)
			}
		}
		if b-a > 2 {
			return false
		}
	}
	return false
}

func (p *parser) onlyAttributes(s [2]int) bool {
	for i := s[0]; i < s[1]; i++ {
		if w := p.at(i).low; !attributes[w] && !(hyphened(w) && attributive(w)) {
			return false
		}
	}
	return s[1] > s[0]
}

// attributive says whether a word with a hyphen stands before a name: "dry-roasted", "fat-free".
func attributive(w string) bool {
	for _, end := range []string{"ed", "-in", "-on", "-free", "-less", "-cut", "-fat", "-style", "-size", "-grain"} {
		if strings.HasSuffix(w, end) {
			return true
		}
	}
	return false
}

func (p *parser) startsNote(i int) bool {
	t := p.at(i)
	return t.num != nil || opens[t.low] || p.isDone(i) || adverbs[t.low] || aside[t.low] || t.is("at", "in", "cut", "(") || approximate[t.low]
}

func (p *parser) hasDone(from, to int) bool {
	for i := from; i < to; i++ {
		if p.isDone(i) {
			return true
		}
	}
	return false
}

// isDone says whether the word at i tells what is done to the food, not which product it is.
func (p *parser) isDone(i int) bool {
	t := p.at(i)
	if t.kind != word || !done[t.low] {
		return false
	}
	following, ok := product[t.low]
	return !ok || !words(following)[p.at(i+1).low]
}
