package ingredient

import "strings"

// nameSegment labels a segment that holds the name. It says whether a name was found.
func (p *parser) nameSegment(from, to int) bool {
	named := false
	for i := from; i < to; {
		t := p.at(i)
		if t.is("(") {
			i = p.group(i, to)
			continue
		}
		if t.label != none {
			i++ // the amount after the name
			continue
		}
		if t.kind == sign && (!named || !t.is("&", "/", "+")) {
			i++
			continue
		}
		if j := p.doneAt(i, to, named); j > i && named && p.at(i-1).is("or") && !adverbs[t.low] {
			p.mark(i, j, name) // "olive oil or melted butter"
			i = j
			continue
		} else if j > i {
			p.mark(i, j, preparation)
			i = j
			continue
		}
		if !named {
			if j := p.asideAt(i, to); j > i {
				p.mark(i, j, comment)
				i = j
				continue
			}
		}
		if p.opensNote(i, to, named) {
			p.tailSegment(i, to)
			return named
		}
		p.ts[i].label = name
		named = true
		i++
	}
	return named
}

// doneAt gives the end of a run of words of preparation that begins at i: "peeled and finely
// chopped". After the name such a run takes the rest of the segment.
func (p *parser) doneAt(i, to int, named bool) int {
	j := p.doneRun(i, to)
	if j == i {
		return i
	}
	if !named {
		return j
	}
	for k := j; k < to; k++ {
		if t := p.at(k); t.is("(") || p.opensNote(k, to, true) || t.is("in", "into", "lengthwise", "crosswise") {
			break
		} else if t.kind == word {
			return j // more of the name follows
		}
	}
	p.tailSegment(i, to)
	return to
}

func (p *parser) doneRun(i, to int) int {
	j := i
	for j < to {
		k := j
		for k < to && (adverbs[p.at(k).low] || (p.at(k).is("fresh") && p.at(k+1).is("grated", "ground", "squeezed"))) {
			k++
		}
		switch {
		case k+1 < to && p.at(k).is("hard", "soft") && p.at(k+1).is("boiled", "cooked"):
			j = k + 2
		case k < to && (p.isDone(k) || (k > j && p.at(k).is("ground", "baked", "dried", "smoked", "fried", "roasted")) || p.at(k).is("ground") && p.isDone(k+1)):
			j = k + 1
		case k > j && k < to && strings.HasSuffix(p.at(k).low, "ed") && !p.at(j).is("well", "not", "very", "hard", "soft"):
			j = k + 1
		default:
			return j
		}
		for k = j; k < to && (p.at(k).is("and", "or", ",", "/", "but") || adverbs[p.at(k).low]); k++ {
		}
		if k > j && k < to && p.isDone(k) {
			j = k
		}
	}
	return j
}

// asideAt gives the end of words before the name that say something else than its kind.
func (p *parser) asideAt(i, to int) int {
	t := p.at(i)
	if state[t.low] || aside[t.low] {
		j := i + 1
		if p.at(j).is("or", "and", "to", "and/or") && (state[p.at(j+1).low] || aside[p.at(j+1).low]) && j+2 < to && p.at(j+2).kind == word && !opens[p.at(j+2).low] && !p.at(j+2).is("shrimp", "prawns") {
			return j + 2
		}
	}
	switch {
	case t.is("kosher") && p.at(i+1).is("for"):
		return i + 3
	case t.num != nil && p.at(i+1).is("-") && p.at(i+2).kind == word:
		return i + 3 // "1-inch-thick"
	case i+1 >= to || p.at(i+1).kind != word || opens[p.at(i+1).low]:
		return i
	case aside[t.low] && !(t.is("extra") && p.at(i+1).is("virgin")):
		return i + 1
	case t.is("of"):
		return i + 1
	case p.hasMeasure() && (sizes[t.low] || t.is("medium-large")) && !spoonSizes[t.low] && !p.at(i+1).is("shrimp", "shrimps", "eggs", "egg", "prawns", "lump"):
		return i + 1
	}
	return i
}

// hasMeasure says whether the line opened with a real unit, not only a count.
func (p *parser) hasMeasure() bool {
	return len(p.amounts) > 0 && p.amounts[0].Unit != ""
}

// opensNote says whether the word at i ends the name of this segment.
func (p *parser) opensNote(i, to int, named bool) bool {
	t, n := p.at(i), p.at(i+1)
	switch {
	case t.is("or"):
		return n.num != nil || approximate[n.low] || n.is("a", "an", "more", "to", "as", "less", "enough", "half", "one", "two", "your", "use") || !named
	case t.is("and"):
		return n.num != nil || n.is("more", "additional", "extra", "zest", "a")
	case t.is("at"):
		return n.is("room", "least")
	case t.is("in", "into"):
		return named && (n.num != nil || n.is("their", "its", "thin", "half", "large", "small", "thick", "chunks", "pieces", "slices", "strips", "quarters", "one"))
	case t.is("about", "approximately", "approx"):
		return true
	case t.is("each", "total", "all", "that", "preferably", "optional"):
		return named
	case t.is("to"):
		return true
	case t.is("more", "extra", "not", "not", "but"):
		return named && i+1 < to || (named && t.is("more", "extra"))
	case t.is("-", "/", "*", ":", "&", "."):
		return false
	case t.is("with"), t.is("made") && n.is("with", "from", "by", "of"):
		return named
	}
	return opens[t.low] && (named || t.is("for", "to", "if", "plus"))
}

// group labels a bracket inside a segment and gives the index after it.
func (p *parser) group(i, to int) int {
	if j := p.bracket(i); j > i {
		return j
	}
	end := min(p.closing(i), to)
	p.mark(i+1, end, p.clue(i+1, end))
	p.alternatives(i+1, end)
	return min(end+1, max(to, i+1))
}

// unitAtEnd takes the unit that follows what it counts: "2 garlic cloves", "thyme sprigs".
func (p *parser) unitAtEnd() {
	if len(p.amounts) > 0 && p.amounts[0].Unit != "" {
		return
	}
	last, count := -1, 0
	for i, t := range p.ts {
		if t.label == name {
			last, count = i, count+1
		} else if count > 0 && (t.is(",", "(") || t.label != none) {
			break
		}
	}
	if last < 0 || count < 2 || !after[singular(p.ts[last].low)] {
		return
	}
	if p.at(last-1).is("or", "and", "with") || (p.at(last).is("stick", "sticks") && !p.at(last-1).is("celery") && !strings.HasPrefix(p.at(last-1).low, "cin")) {
		return
	}
	p.ts[last].label = unit
	if len(p.amounts) == 0 {
		p.amounts = append(p.amounts, Amount{token: -1, unitToken: -1})
	}
	p.amounts[0].Unit = singular(p.ts[last].low)
}

// rescueName gives a line without a name the first words that are not a figure.
func (p *parser) rescueName() {
	for _, t := range p.ts {
		if t.label == name {
			return
		}
	}
	for _, l := range []label{preparation, comment, unit} {
		found := false
		for i, t := range p.ts {
			if t.label == l && t.kind == word && !t.is("of", "or", "and", "a") {
				if l == unit && len(p.amounts) > 0 && p.amounts[0].unitToken == i {
					p.amounts[0].Unit, p.amounts[0].unitToken = "", -1 // "8 cloves" are the spice
				}
				p.ts[i].label, found = name, true
			} else if found && t.label != none {
				break
			} else if found && t.is(",", "(") {
				break
			}
		}
		if found {
			p.rescued = true
			return
		}
	}
}
