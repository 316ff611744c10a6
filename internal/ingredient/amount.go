package ingredient

import (
	"slices"
	"strings"
)

// parser labels the tokens of a line and gathers its amounts.
type parser struct {
	ts      []token
	text    string
	amounts []Amount
	rescued bool // the name was found among other words
}

func (p *parser) at(i int) token {
	if i < 0 || i >= len(p.ts) {
		return token{kind: sign}
	}
	return p.ts[i]
}

func (p *parser) mark(from, to int, l label) {
	for i := from; i < to && i < len(p.ts); i++ {
		if p.ts[i].kind != sign || p.ts[i].is("&", "+") {
			p.ts[i].label = l
		}
	}
}

// measure is a figure with its sizes and its unit, as token indices.
type measure struct {
	num         int // -1: none
	sizes       []int
	units       []int
	each        *measure // the pack size that stands between
	between     []int    // words of preparation before the unit: "1 packed cup"
	from, to    int
	approximate bool
}

func (m measure) hasUnit() bool { return len(m.units) > 0 }

// sort is what the measure's unit measures.
func (p *parser) sort(m measure) unitKind {
	if !m.hasUnit() {
		return notUnit
	}
	return isUnit(p.ts[m.units[len(m.units)-1]].low)
}

// readMeasure reads "2 cups", "about 1 1/2 pounds", "2 x 400 g tins", "1 (14-ounce) can", "3 large
// cloves", "1 5-pound". ok is false when no figure stands at i.
func (p *parser) readMeasure(i int) (measure, bool) {
	m := measure{from: i, num: -1}
	for approximate[p.at(i).low] {
		m.approximate, i = true, i+1
	}
	i, ok := p.readFigure(i, &m)
	if !ok {
		return m, false
	}
	if p.at(i).is("or") && p.at(i+1).is("more", "so", "less") && isUnit(p.at(i+2).low) != notUnit {
		p.mark(i, i+2, comment) // "8 or more slices"
		i += 2
	}
	if p.at(i).is("x", "*") && (p.at(i+1).num != nil || p.at(i+1).kind == word) {
		i++
	}
	i = p.readBetween(i, &m)
	i = p.readEach(i, &m)
	i = p.readUnit(i, &m)
	m.to = i
	return m, true
}

// readFigure reads the figure itself: digits, or a word where a word may count.
func (p *parser) readFigure(i int, m *measure) (int, bool) {
	t := p.at(i)
	if t.num != nil {
		m.num = i
		return i + 1, true
	}
	v, known := numberWords[t.low]
	nextUnit := isUnit(p.at(i+1).low) != notUnit
	switch {
	case t.kind != word:
		return i, false
	case t.is("half", "quarter"):
		if p.at(i+1).is("and", "pint") {
			return i, false
		}
		p.ts[i].num, m.num = &number{low: v, high: v, words: t.low}, i
		for i++; p.at(i).is("a", "an", "of", "the"); i++ {
		}
		return i, true
	case known:
		p.ts[i].num, m.num = plain(v), i
		return i + 1, true
	case t.is("a", "an") && p.at(i+1).is("dozen"):
		p.ts[i+1].num, m.num = &number{low: 12, high: 12, words: "dozen"}, i+1
		return i + 2, true
	case t.is("a", "an") && p.at(i+1).is("few"):
		return p.readFigure(i+1, m)
	case t.is("few") && p.at(i+1).kind == word:
		p.ts[i].num, m.num = &number{low: 3, high: 3, words: "few"}, i
		return i + 1, true
	case t.is("dozen"):
		p.ts[i].num, m.num = &number{low: 12, high: 12, words: "dozen"}, i
		return i + 1, true
	case t.is("a", "an") && p.at(i+1).is("whole", "good", "little", "single") && isUnit(p.at(i+2).low) != notUnit:
		return i + 2, true
	case t.is("a", "an") && p.at(i+1).num != nil && isUnit(p.at(i+2).low) != notUnit && isUnit(p.at(i+3).low) == pack:
		return i + 1, true // "a 400 g tin"
	case t.is("a", "an", "several") && (nextUnit || (sizes[p.at(i+1).low] && isUnit(p.at(i+2).low) != notUnit)):
		return i + 1, true
	}
	return i, false
}

// readEach reads the size of one pack: "400 g" of "2 x 400 g tins", "(14-ounce)" of "1 (14-ounce) can".
func (p *parser) readEach(i int, m *measure) int {
	j, bracket := i, false
	if p.at(j).is("(") {
		j, bracket = j+1, true
	}
	if p.at(j).num == nil && !approximate[p.at(j).low] {
		return i
	}
	each := measure{from: j}
	for approximate[p.at(j).low] {
		each.approximate, j = true, j+1
	}
	if p.at(j).num == nil {
		return i
	}
	each.num, j = j, j+1
	if p.at(j).is("-") {
		j++
	}
	k := isUnit(p.at(j).low)
	if k != weight && k != volume && k != length {
		return i
	}
	each.units = []int{j}
	j++
	if p.at(j).is("oz", "ounce", "ounces") && k == volume {
		each.units, j = append(each.units, j), j+1
	}
	if bracket {
		if !p.at(j).is(")") || isUnit(p.at(j+1).low) == notUnit && !p.packAfter(j+1) {
			return i
		}
		j++
	}
	if p.at(j).is("-") && !p.at(j).gap {
		j++
	}
	each.to, m.each = j, &each
	return j
}

// readBetween reads words that stand before the unit: "2 loosely packed cups", "1 trimmed 3-ounce
// piece", "4 center-cut pieces of".
func (p *parser) readBetween(i int, m *measure) int {
	j := i
	for j < i+3 && (p.isDone(j) || adverbs[p.at(j).low] && !p.at(j).is("very")) {
		j++
	}
	if j == i && p.at(j).kind == word && isUnit(p.at(j).low) == notUnit && p.packAfter2(j+1) && p.at(j+2).is("of") && !sizes[p.at(j).low] {
		j++
		if !attributes[p.at(i).low] && wordLength(p.at(i).low) == len(p.at(i).low) && !hyphened(p.at(i).low) {
			m.sizes = append(m.sizes, i)
			return j
		}
	}
	figure := p.at(j).num != nil && (p.at(j+1).is("-") || isUnit(p.at(j+1).low) != notUnit)
	if j == i || !figure && (isUnit(p.at(j).low) == notUnit || p.notMeasure(j)) {
		return i
	}
	for k := i; k < j; k++ {
		m.between = append(m.between, k)
	}
	return j
}

func hyphened(w string) bool { return strings.Contains(w, "-") }

func (p *parser) packAfter(i int) bool {
	k := isUnit(p.at(i).low)
	return k == pack || k == piece || (sizes[p.at(i).low] && p.packAfter2(i+1))
}

func (p *parser) packAfter2(i int) bool {
	k := isUnit(p.at(i).low)
	return k == pack || k == piece
}

// readUnit reads sizes and the unit: "large cloves", "small can", "heaping teaspoon", "fluid ounces".
func (p *parser) readUnit(i int, m *measure) int {
	start := i
	if p.at(i).is("-") && !p.at(i).gap && m.each == nil {
		i++
	}
	if p.at(i).is("very", "good", "nice") && (isUnit(p.at(i+1).low) != notUnit || sizes[p.at(i+1).low]) {
		m.sizes = append(m.sizes, i)
		i++
	}
	for sizes[p.at(i).low] || (len(m.sizes) > 0 && p.at(i).is("to", "or") && sizes[p.at(i+1).low]) {
		m.sizes = append(m.sizes, i)
		i++
	}
	if p.at(i).is("fluid", "fl") && p.at(i+1).is("ounce", "ounces", "oz") {
		m.units = []int{i, i + 1}
		return p.skipOf(i + 2)
	}
	if p.at(i).is("of") && p.at(i+1).is("a", "an") && isUnit(p.at(i+2).low) != notUnit {
		i += 2 // "3/4 of a cup"
	}
	t := p.at(i)
	if t.kind == word && isUnit(t.low) != notUnit && !p.notMeasure(i) {
		m.units = []int{i}
		i++
		if p.at(i).is("piece", "pieces", "stick", "sticks", "knob", "chunk") && isUnit(t.low) == length {
			m.units = append(m.units, i)
			i++
		}
		return p.skipOf(i)
	}
	for len(m.sizes) > 0 && spoonSizes[p.at(m.sizes[len(m.sizes)-1]).low] {
		i, m.sizes = m.sizes[len(m.sizes)-1], m.sizes[:len(m.sizes)-1]
	}
	if len(m.sizes) == 0 && i != start && !p.at(start).is("-") {
		return start
	}
	return i
}

// notMeasure tells a unit word that names the food: "1 stick cinnamon" measures, "4 leaves" of
// "4 leaves of arugula" and "1 can opener" do not.
func (p *parser) notMeasure(i int) bool {
	s := singular(p.at(i).low)
	return inName[s]
}

func (p *parser) skipOf(i int) int {
	if p.at(i).is("of") {
		return i + 1
	}
	return i
}

// take labels a measure's tokens and keeps it as an amount. Words that are neither figure, size nor
// unit are a comment.
func (p *parser) take(m measure, r Relation) {
	for i := m.from; i < m.to; i++ {
		if !p.ts[i].is("x") {
			p.mark(i, i+1, comment)
		}
	}
	p.keep(m, r)
	p.label(m)
}

func (p *parser) label(m measure) {
	if m.num >= 0 {
		p.ts[m.num].label = quantity
	}
	for _, i := range m.between {
		p.ts[i].label = preparation
		if hyphened(p.ts[i].low) && !p.isDone(i) {
			p.ts[i].label = name
		}
	}
	for _, i := range slices.Concat(m.sizes, m.units) {
		p.ts[i].label = unit
	}
	if m.each != nil {
		p.label(*m.each)
	}
}

// keep adds the amount without labelling it: what stands in an alternative stays in the comment.
func (p *parser) keep(m measure, r Relation) {
	a := Amount{Relation: r, Rough: m.approximate, token: m.num, unitToken: -1}
	if m.hasUnit() {
		a.unitToken = m.units[len(m.units)-1]
	}
	if m.num >= 0 {
		n := p.ts[m.num].num
		a.Low, a.High, a.Words = n.low, n.high, n.words
	} else {
		a.Low, a.High, a.Words = 1, 1, "a"
	}
	a.Size, a.Unit = p.join(m.sizes, false), p.join(m.units, true)
	p.amounts = append(p.amounts, a)
	if m.each == nil {
		return
	}
	if k := p.sort(m); (k == weight || k == volume) && a.Unit != "spoon" { // "1 x 15 ml spoon"
		p.keep(*m.each, Same) // "1 1/2 (355 ml) cups"
	} else {
		p.keep(*m.each, Each)
	}
}

func (p *parser) join(tokens []int, one bool) string {
	s := ""
	for k, i := range tokens {
		if k > 0 {
			s += " "
		}
		if one {
			s += singular(p.ts[i].low)
		} else {
			s += p.ts[i].low
		}
	}
	return s
}
