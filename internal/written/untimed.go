package written

import (
	"regexp"
	"strings"

	"plait.example/internal/format/table"
)

// untimed reads a plan that gives no times at all: a table with what is done, or
// the items of a list.
func (r *reader) untimed(blocks []table.Block) {
	index, found := -1, false
	var others []func()
	for i, b := range blocks {
		switch {
		case b.Table != nil:
			index++
			g := newGrid(b.Table)
			if l := layoutOf(g, r.isDish); l.worksOnly() {
				r.readTable(g, l, index, nil)
				found = true
				continue
			}
			others = append(others, func() { r.otherTable(b.Table) })
		default:
			others = append(others, func() { r.untimedLine(b, i, found) })
		}
	}
	for _, o := range others {
		o()
	}
}

// worksOnly says whether a table is a plan without times.
func (l *layout) worksOnly() bool {
	for _, k := range l.columns {
		if k.role == needRole {
			return false
		}
	}
	return len(l.text) > 0 && len(l.heads) > 0 && l.columns[l.text[0]].role == textRole && l.columns[l.text[0]].texts > 1
}

// untimedLine makes a row of an item of a list, when no table is a plan.
func (r *reader) untimedLine(b table.Block, i int, found bool) {
	text := lineText(b)
	numbered := itemNumber.FindString(text)
	if found || b.Heading > 0 || b.Item == "" && numbered == "" {
		r.other(text)
		return
	}
	e := entry{table: -1, line: i, lines: []table.Line{b.Line}}
	if b.Item == "" {
		e.lines = cutLines(e.lines, len(numbered))
		e.beside(numbered)
	} else {
		e.beside(strings.TrimSuffix(text, strings.TrimSpace(b.Line.Text())))
	}
	t := tableReader{r: r}
	t.colour(&e, table.Cell{})
	t.add(e)
}

var itemNumber = regexp.MustCompile(`^\d{1,2}[.)]\s+`)
