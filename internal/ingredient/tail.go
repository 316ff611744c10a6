package ingredient

import "strings"

// tailSegment labels a segment after the name: another measure, a preparation or a comment.
func (p *parser) tailSegment(from, to int) {
	i := from
	if m, ok := p.tailMeasure(i, to); ok {
		p.take(m, p.sameOrEach(m, to))
		p.mark(from, m.from, comment)
		p.rest(m.to, to)
		return
	}
	p.rest(from, to)
}

// tailMeasure reads "about 1 1/2 pounds", "each 4 to 6 ounces", "2 cups".
func (p *parser) tailMeasure(i, to int) (measure, bool) {
	for p.at(i).is("each", "or", "weighing") && approximate[p.at(i+1).low] || p.at(i).is("each", "weighing", "total") {
		i++
	}
	m, ok := p.readMeasure(i)
	if !ok || m.num < 0 || m.to > to {
		return m, false
	}
	k := p.sort(m)
	if k != weight && k != volume && k != piece && k != pack {
		return m, false
	}
	return m, m.approximate || p.at(i-1).is("each", "weighing") || m.to >= to || p.at(m.to).is("(", "total", "each", "in") || to-m.to <= 2
}

// rest labels what is left of a segment, with its brackets, by the clue of its words.
func (p *parser) rest(from, to int) {
	for i := from; i < to; {
		if p.at(i).is("(") {
			i = p.group(i, to)
			continue
		}
		j := i
		for j < to && !p.at(j).is("(") {
			j++
		}
		cut := i
		for cut < j && (cut == i || !p.cutsNote(cut)) {
			cut++
		}
		p.mark(i, cut, p.clue(i, cut))
		p.mark(cut, j, comment)
		p.alternatives(i, j)
		i = j
	}
}

// cutsNote says whether a comment begins inside a preparation: "sliced for garnish".
func (p *parser) cutsNote(i int) bool {
	return p.at(i).is("for", "plus", "or", "optional", "if") && (!p.at(i).is("or") || p.at(i+1).num != nil || p.at(i+1).is("a", "to"))
}

// clue says whether words are a preparation or a comment.
func (p *parser) clue(from, to int) label {
	first := p.at(from)
	if opens[first.low] && !first.is("not") || first.is("or") {
		return comment
	}
	if first.is("at", "room") {
		return preparation
	}
	for i := from; i < to; i++ {
		t := p.at(i)
		if done[t.low] || t.is("into") || (t.kind == word && strings.HasSuffix(t.low, "ed") && !t.is("red", "seed", "need", "desired", "needed", "preferred", "available")) {
			return preparation
		}
		if t.is("for", "to", "if") {
			break
		}
	}
	return comment
}

// alternatives keeps the amounts that stand in a comment: "or 1 teaspoon dried", "plus 2 tablespoons".
func (p *parser) alternatives(from, to int) {
	r := Or
	for i := from; i+1 < to; i++ {
		switch t := p.at(i); {
		case t.is("plus", "+"):
			r = More
		case t.is("or"):
			r = Or
		default:
			continue
		}
		if m, ok := p.readMeasure(i + 1); ok && m.num >= 0 && m.to <= to {
			p.keep(m, r)
		}
	}
}
