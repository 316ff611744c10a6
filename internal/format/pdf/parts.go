package pdf

import (
	"math"
	"regexp"
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
			taken := above(&lines, t.top-1)
			text := Page{Lines: taken, around: p.Lines}.text(s)
			if text = strings.TrimSpace(text); text != "" {
				list = append(list, Part{Text: text, Inked: inked(taken)})
				open = nil
			}
			if open.goesOn(t) {
				continue
			}
			list = append(list, Part{Table: &t.table})
			open = t
		}
		if text := strings.TrimSpace(Page{Lines: lines, around: p.Lines}.text(s)); text != "" {
			list = append(list, Part{Text: text, Inked: inked(lines)})
			open = nil
		}
	}
	return list
}

// inked are lines with the colours of their letters.
func inked(lines []Line) (list []table.Line) {
	for _, l := range lines {
		list = append(list, l.inked)
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
	if len(rows) > 0 && cut(g.table.Rows, rows[0]) {
		g.join(rows[0])
		rows = rows[1:]
	}
	if (len(g.table.Rows)+len(rows))*len(g.table.Rows[0]) <= table.MaxCells {
		g.table.Rows = append(g.table.Rows, rows...)
	}
	return true
}

// join adds the rest of a row that the page's end cut in two. A cell that goes on
// over more rows of the next page does so in the table.
func (g *found) join(rest []table.Cell) {
	last := len(g.table.Rows) - 1
	for i, c := range rest {
		at := owner(g.table.Rows, last, i)
		cell := &g.table.Rows[at][i]
		cell.Lines = flow(cell.Lines, c.Lines)
		if c.Down > 1 {
			cell.Down = last - at + c.Down
		}
	}
}

// owner is the row of the cell that covers a place.
func owner(rows [][]table.Cell, row, column int) int {
	for at := row; at > 0; at-- {
		if c := rows[at][column]; c.Down > 0 {
			if at+c.Down > row {
				return at
			}
			break
		}
	}
	return row
}

// brokenWord is how a line ends whose last word goes on at its hyphen.
var brokenWord = regexp.MustCompile(`\pL-$`)

// joining is how a cell ends whose words go on.
var joining = regexp.MustCompile(`(?i)(?:[,;(&–-]|\b(?:for|the|a|an|and|or|to|in|into|of|at|with|on|from|by|about|until|my|then))$`)

// cut says whether a row is the rest of one that the page's end cut in two: what
// it says begins in small letters, or goes on with a cell that breaks off, and
// not in its first cell alone.
func cut(rows [][]table.Cell, row []table.Cell) bool {
	goes := false
	for i, c := range row {
		if len(c.Lines) == 0 {
			continue
		}
		first, _ := utf8.DecodeRuneInString(c.Text())
		before := rows[owner(rows, len(rows)-1, i)][i]
		switch {
		case unicode.IsLower(first):
			goes = goes || i > 0
		case i > 0 && joining.MatchString(strings.TrimSpace(before.Text())):
			goes = true
		case i > 0 && unicode.IsDigit(first) && len(before.Lines) > 0:
		default:
			return false
		}
	}
	return goes
}

// flow is lines of a cell whose last goes on with the first of others.
func flow(lines, more []table.Line) []table.Line {
	if len(lines) == 0 || len(more) == 0 || len(lines[len(lines)-1]) == 0 {
		return append(lines, more...)
	}
	line := slices.Clone(lines[len(lines)-1])
	if end := &line[len(line)-1]; !brokenWord.MatchString(end.Text) {
		end.Text += " "
	}
	for _, p := range more[0] {
		line = line.Join(p)
	}
	lines[len(lines)-1] = line
	return append(lines, more[1:]...)
}
