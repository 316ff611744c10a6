package recipe

import (
	"strings"

	"plait.example/internal/ingredient"
)

// standAlone says that each part of a line reads as an ingredient of its own:
// "6 slices bread, 1/2 inch thick" is one.
func standAlone(text string, parts [][]token) bool {
	for _, p := range parts {
		if !ingredient.Parse(text[p[0].start:p[len(p)-1].end]).StandsAlone() {
			return false
		}
	}
	return true
}

// apart gives the ingredients of a line that runs several together, as pupils
// type them: "Pastry: 125 g plain flour, 60 g butter, 2-3 tbsp cold water". A
// comma parts two only where a figure follows it, and the line is left whole
// unless two parts begin with figures and each reads as an ingredient of its own; the words before a colon name the component.
// In a list of two columns each wide gap parts a line.
func (l listed) apart(text string, columns bool) []listed {
	if ts := atGaps(l.line.ts); columns && len(ts) > 1 {
		return l.parts(text, ts, l.component)
	}
	ts, component := l.line.ts, l.component
	for i, t := range ts {
		if t.is(":") && i > 0 && i <= 4 && wordCount(ts[:i]) == i {
			component = strings.Trim(text[ts[0].start:ts[i-1].end], " *_")
			ts = ts[i+1:]
			break
		}
	}
	parts := atFigures(ts)
	if len(parts) < 2 || parts[0][0].kind != number || semicolons(ts) < 2 && !standAlone(text, parts) {
		return []listed{l}
	}
	return l.parts(text, parts, component)
}

// parts makes a line of the list of each part of a line.
func (l listed) parts(text string, parts [][]token, component string) []listed {
	var out []listed
	for _, p := range parts {
		part := l.line
		part.ts, part.start, part.end = p, p[0].start, p[len(p)-1].end
		part.text = text[part.start:part.end]
		out = append(out, listed{part, component})
	}
	return out
}

// columnGap is the spaces between two columns of a list that was typed side by side.
const columnGap = 4

// atFigures parts tokens at commas, semicolons and wide gaps that a figure follows, outside brackets.
func atFigures(ts []token) (parts [][]token) {
	begin, depth := 0, 0
	for i, t := range ts {
		switch {
		case t.is("("):
			depth++
		case t.is(")"):
			depth--
		case depth == 0 && i > begin && (t.is(",", ";") && at(ts, i+1).kind == number || t.is(";") && i+1 < len(ts)):
			parts = append(parts, ts[begin:i])
			begin = i + 1
		case depth == 0 && i > begin && t.kind == number && t.start-ts[i-1].end >= columnGap:
			parts = append(parts, ts[begin:i]) // two columns
			begin = i
		}
	}
	if begin < len(ts) {
		parts = append(parts, ts[begin:])
	}
	return parts
}

// inColumns says that a list was typed or printed in two columns, side by side:
// several of its lines, and at least half, have a wide gap with words after it.
func inColumns(list []listed) bool {
	wide := 0
	for _, l := range list {
		wide += boolInt(len(atGaps(l.line.ts)) == 2)
	}
	return wide >= 3 && 2*wide >= len(list)
}

// atGaps parts tokens at wide gaps.
func atGaps(ts []token) (parts [][]token) {
	begin := 0
	for i := 1; i < len(ts); i++ {
		if ts[i].start-ts[i-1].end >= columnGap {
			parts = append(parts, ts[begin:i])
			begin = i
		}
	}
	return append(parts, ts[begin:])
}

func semicolons(ts []token) (n int) {
	for _, t := range ts {
		n += boolInt(t.is(";"))
	}
	return n
}
