package pdf

import (
	"math"
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"plait.example/internal/format/table"
)

// Parts is the document as stretches of text and tables, from top to bottom:
// those that rules show, or on a page without rules columns that stand level. A table that goes on at the top of the next page is one.
func (d Document) Parts() (list []Part) {
	s := d.sizes()
	var open *found // the last table, as long as nothing came after it
	for _, p := range d.Pages {
		lines := p.between
		for i := range p.tables {
			t := &p.tables[i]
			text := Page{Lines: above(&lines, t.top-1), around: p.Lines}.text(s)
			if text = strings.TrimSpace(text); text != "" {
				list = append(list, Part{Text: text})
				open = nil
			}
			if open.goesOn(t) {
				continue
			}
			list = append(list, Part{Table: &t.table})
			open = t
		}
		if text := strings.TrimSpace(Page{Lines: lines, around: p.Lines}.text(s)); text != "" {
			list = append(list, Part{Text: text})
			open = nil
		}
	}
	return list
}

// above takes the lines that stand above a height.
func above(lines *[]Line, height float64) []Line {
	n := 0
	for n < len(*lines) && (*lines)[n].Base > height {
		n++
	}
	taken := (*lines)[:n]
	*lines = (*lines)[n:]
	return taken
}

// goesOn adds the rows of a table with the same columns, but for a header that
// is said again, and says whether it has.
func (g *found) goesOn(next *found) bool {
	if g == nil || len(g.columns) != len(next.columns) || len(g.table.Rows[0]) != len(next.table.Rows[0]) {
		return false
	}
	for i, x := range g.columns {
		if math.Abs(x-next.columns[i]) > near {
			return false
		}
	}
	rows := next.table.Rows
	if slices.EqualFunc(g.table.Rows[0], rows[0], func(a, b table.Cell) bool { return a.Text() == b.Text() }) {
		rows = rows[1:]
		g.table.Header = 1
	}
	if last := g.table.Rows[len(g.table.Rows)-1]; len(rows) > 0 && cut(rows[0]) {
		for i, c := range rows[0] {
			last[i].Lines = flow(last[i].Lines, c.Lines)
		}
		rows = rows[1:]
	}
	if (len(g.table.Rows)+len(rows))*len(g.table.Rows[0]) <= table.MaxCells {
		g.table.Rows = append(g.table.Rows, rows...)
	}
	return true
}

// cut says whether a row is the rest of one that the page's end cut in two: it
// has no words in its first cell, and those that it has begin in small letters.
func cut(row []table.Cell) bool {
	said := false
	for i, c := range row {
		if len(c.Lines) == 0 {
			continue
		}
		first, _ := utf8.DecodeRuneInString(c.Text())
		if said = true; i == 0 || !unicode.IsLower(first) {
			return false
		}
	}
	return said
}

// flow is lines of a cell whose last goes on with the first of others.
func flow(lines, more []table.Line) []table.Line {
	if len(lines) == 0 || len(more) == 0 || len(lines[len(lines)-1]) == 0 {
		return append(lines, more...)
	}
	line := slices.Clone(lines[len(lines)-1])
	line[len(line)-1].Text += " "
	for _, p := range more[0] {
		line = line.Join(p)
	}
	lines[len(lines)-1] = line
	return append(lines, more[1:]...)
}
