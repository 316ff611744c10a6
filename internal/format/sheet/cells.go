package sheet

import (
	"fmt"
	"maps"
	"regexp"
	"slices"
	"strconv"
	"strings"

	"plait.example/internal/format/packed"
	"plait.example/internal/format/table"
)

// Limits of a sheet: its edges (ECMA-376 leaves them to programs; these are
// usual), and how many empty rows that follow one another are kept.
const (
	lastColumn = 16384
	lastRow    = 1048576
	maxBlank   = 100
	maxMerges  = 20_000
)

// place is a row and a column, from 0.
type place struct{ row, column int }

// plane is a sheet's cells before they are laid out.
type plane struct {
	cells         map[int]map[int]table.Cell
	last, width   int // the last row, and one after the last column, that say something
	hidden        map[int]bool
	hiddenColumns []place // from and to
}

func (b *book) table(name string, root *packed.Element) (t table.Table, err error) {
	p := plane{cells: map[int]map[int]table.Cell{}, last: -1, hidden: map[int]bool{}}
	for _, c := range root.Child("cols").All() {
		from, err := strconv.Atoi(c.Attr("min"))
		to, err2 := strconv.Atoi(c.Attr("max"))
		if err != nil || err2 != nil || !yes(c.Attr("hidden")) {
			continue
		}
		p.hiddenColumns = append(p.hiddenColumns, place{from - 1, to - 1})
	}
	b.fill(&p, root.Child("sheetData"))
	t.Name = name
	if pane := root.Path("sheetViews", "sheetView", "pane"); strings.HasPrefix(pane.Attr("state"), "frozen") {
		if n, err := strconv.Atoi(pane.Attr("ySplit")); err == nil && n > 0 && n < 20 {
			t.Header = n
		}
	}
	b.tell(name, &p)
	rows, err := p.lay(merges(root.Child("mergeCells")))
	if t.Rows = table.Trim(rows); err != nil {
		return table.Table{}, err
	}
	return t, nil
}

func yes(s string) bool { return s == "1" || s == "true" }

// fill reads the rows of a sheet. Rows and cells say where they stand, or
// follow the one before.
func (b *book) fill(p *plane, data *packed.Element) {
	row := -1
	for _, r := range data.All() {
		if r.Name != "row" {
			continue
		}
		row++
		if n, err := strconv.Atoi(r.Attr("r")); err == nil && n >= 1 {
			row = n - 1
		}
		if row >= lastRow {
			continue
		}
		column := -1
		for _, c := range r.Children {
			column++
			if at, is := where(c.Attr("r")); is {
				column = at.column
			}
			if c.Name != "c" || column >= lastColumn {
				continue
			}
			cell := b.cell(c)
			if len(cell.Lines) == 0 && cell.Shade == "" {
				continue
			}
			if p.cells[row] == nil {
				p.cells[row] = map[int]table.Cell{}
			}
			p.cells[row][column] = cell
			if len(cell.Lines) > 0 {
				p.last, p.width = max(p.last, row), max(p.width, column+1)
				p.hidden[row] = p.hidden[row] || yes(r.Attr("hidden"))
			}
		}
	}
}

// tell notes what is not seen on the screen and was read.
func (b *book) tell(name string, p *plane) {
	var rows []string
	for _, row := range slices.Sorted(maps.Keys(p.hidden)) {
		if p.hidden[row] && len(rows) < 20 {
			rows = append(rows, strconv.Itoa(row+1))
		}
	}
	if len(rows) > 0 {
		b.notes = append(b.notes, fmt.Sprintf("sheet %q: hidden rows (%s) were read all the same", name, strings.Join(rows, ", ")))
	}
	if b.unsaved > 0 {
		b.notes = append(b.notes, fmt.Sprintf("sheet %q: formulas without a saved value (%d) are read as empty; open it in a spreadsheet program and save it", name, b.unsaved))
		b.unsaved = 0
	}
	for _, c := range p.hiddenColumns {
		if c.row < p.width {
			b.notes = append(b.notes, fmt.Sprintf("sheet %q: hidden columns (from %d to %d) were read all the same", name, c.row+1, min(c.column+1, p.width)))
		}
	}
}

// lay lays the cells out. Long empty stretches between rows are cut short.
func (p *plane) lay(merged map[place]place) ([][]table.Cell, error) {
	for from := range merged { // empty ones cover places too
		if _, there := p.cells[from.row][from.column]; !there && from.row <= p.last && from.column < p.width {
			if p.cells[from.row] == nil {
				p.cells[from.row] = map[int]table.Cell{}
			}
			p.cells[from.row][from.column] = table.Cell{Span: 1, Down: 1, Clock: -1}
		}
	}
	var g table.Grid
	before := -1
	for _, row := range slices.Sorted(maps.Keys(p.cells)) {
		if row > p.last {
			break
		}
		for range min(row-before-1, maxBlank) {
			g.Row()
		}
		g.Row()
		before = row
		for _, column := range slices.Sorted(maps.Keys(p.cells[row])) {
			if column >= p.width {
				break
			}
			c := p.cells[row][column]
			if to, is := merged[place{row, column}]; is {
				c.Span, c.Down = min(to.column, p.width-1)-column+1, min(to.row, p.last)-row+1
			}
			g.Put(column, c)
		}
		if g.Err() != nil {
			break
		}
	}
	return g.Rows()
}

// merges are the cells that cover others: upper left corner to lower right one.
func merges(e *packed.Element) map[place]place {
	all := map[place]place{}
	for _, m := range e.All() {
		first, last, _ := strings.Cut(m.Attr("ref"), ":")
		from, is := where(first)
		to, is2 := where(last)
		if is && is2 && to.row >= from.row && to.column >= from.column && len(all) < maxMerges {
			all[from] = to
		}
	}
	return all
}

var reference = regexp.MustCompile(`^\$?([A-Za-z]{1,3})\$?([0-9]{1,7})$`)

// where reads a reference such as B12.
func where(ref string) (at place, is bool) {
	m := reference.FindStringSubmatch(ref)
	if m == nil {
		return at, false
	}
	column := 0
	for _, letter := range strings.ToUpper(m[1]) {
		column = column*26 + int(letter-'A') + 1
	}
	row, err := strconv.Atoi(m[2])
	return place{row - 1, column - 1}, err == nil && row >= 1
}

// cell is what a cell shows.
func (b *book) cell(e *packed.Element) table.Cell {
	l := b.look(e.Attr("s"))
	c := table.Cell{Shade: l.shade, Span: 1, Down: 1, Clock: -1}
	value := e.Child("v").Content()
	if value == "" && e.Child("f") != nil {
		b.unsaved++
	}
	piece := l.font
	var line table.Line
	switch e.Attr("t") {
	case "s":
		if n, err := strconv.Atoi(strings.TrimSpace(value)); err == nil && n >= 0 && n < len(b.strings) {
			line = b.strings[n]
		}
	case "inlineStr":
		line = b.rich(e.Child("is"))
	case "str", "e":
		piece.Text = plainText(value)
	case "b":
		piece.Text, c.Checked = "FALSE", false
		if yes(value) {
			piece.Text, c.Checked = "TRUE", true
		}
	case "d":
		piece.Text = value
		c.Clock = clockOf(value)
	default:
		n, err := strconv.ParseFloat(strings.TrimSpace(value), 64)
		if err != nil {
			piece.Text = value
			break
		}
		piece.Text, c.Clock = show(n, l.number, b.from1904)
	}
	if piece.Text != "" {
		line = table.Line{piece}
	}
	c.Fill(table.Lines(over(line, l.font)))
	return c
}

// over gives the pieces of a text what they leave open of the cell's font.
func over(line table.Line, font table.Piece) table.Line {
	if font == (table.Piece{}) {
		return line
	}
	out := make(table.Line, len(line))
	for i, p := range line {
		if p == (table.Piece{Text: p.Text}) {
			p.Ink, p.Bold, p.Italic, p.Struck = font.Ink, font.Bold, font.Italic, font.Struck
		}
		out[i] = p
	}
	return out
}

// rich is a text in one or several forms.
func (b *book) rich(e *packed.Element) (line table.Line) {
	for _, c := range e.All() {
		switch c.Name {
		case "t":
			line = line.Join(table.Piece{Text: plainText(c.Content())})
		case "r":
			p := b.font(c.Child("rPr"))
			p.Text = plainText(c.Child("t").Content())
			line = line.Join(p)
		}
	}
	return line
}

var coded = regexp.MustCompile(`_x[0-9A-Fa-f]{4}_`)

// plainText undoes the codes of characters that XML cannot hold (ECMA-376 part
// 1, 22.9.2.19) and drops those that nobody sees.
func plainText(s string) string {
	if strings.Contains(s, "_x") {
		s = coded.ReplaceAllStringFunc(s, func(code string) string {
			n, err := strconv.ParseUint(code[2:6], 16, 16)
			if err != nil || n == '\r' || n < ' ' && n != '\n' && n != '\t' || n >= 0xD800 && n < 0xE000 {
				return ""
			}
			return string(rune(n))
		})
	}
	return strings.ReplaceAll(s, "\r\n", "\n")
}

// titles are how many rows at its top each sheet prints on every page.
func titles(main *packed.Element) map[string]int {
	all := map[string]int{}
	for _, d := range main.Child("definedNames").All() {
		if m := printed.FindStringSubmatch(d.Content()); m != nil && d.Attr("name") == "_xlnm.Print_Titles" {
			if n, err := strconv.Atoi(m[1]); err == nil && n < 20 {
				all[d.Attr("localSheetId")] = n
			}
		}
	}
	return all
}

var printed = regexp.MustCompile(`!\$1:\$([0-9]{1,2})(?:,|$)`)
