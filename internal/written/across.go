package written

import (
	"strings"

	"plait.example/internal/format/table"
)

// across is a table in which time runs to the right.
type across struct {
	name  int          // the column of dishes; -1: none
	times map[int]bool // rows of times
}

// acrossOf says whether times stand across the top and words under them.
func acrossOf(g *grid) (across, bool) {
	a := across{times: map[int]bool{}}
	for r := range g.rows {
		filled, stamps := g.filled(r), 0
		for _, c := range filled {
			if isTime(g.cell(r, c)) {
				stamps++
			}
		}
		if stamps >= 3 && stamps >= len(filled)-1 {
			a.times[r] = true
		}
	}
	if len(a.times) == 0 || len(a.times) > len(g.rows)/2 {
		return a, false
	}
	worded, timed := 0, 0
	for r := range g.rows {
		if a.times[r] {
			if isTime(g.cell(r, 0)) {
				a.name = -1
			}
			continue
		}
		for _, c := range g.filled(r) {
			if isTime(g.cell(r, c)) {
				timed++
			} else if c > 0 {
				worded++
			}
		}
	}
	return a, worded > timed
}

// isTime says whether a cell is a time of day, or one from the start.
func isTime(c table.Cell) bool {
	if c.Clock >= 0 && len(c.Lines) > 0 {
		return true
	}
	st, is := readStamp(strings.ReplaceAll(plain(c), "\n", " "))
	return is && (st.kind == clock || st.kind == digits && len(st.times) > 0 && st.number >= 600 || st.kind == offset || st.kind == plus)
}

// readAcross reads such a table: a row for each cell, in the order of the clock.
func (r *reader) readAcross(g *grid, a across, index int) {
	b := band{tableReader: tableReader{r: r, g: g, index: index, l: layout{runs: clockMode}}, across: a, times: -1}
	for row := range g.rows {
		switch {
		case a.times[row]:
			b.read(row)
			b.times = row
		case b.times < 0:
			r.other(g.line(row))
		}
	}
	b.read(len(g.rows))
}

// band is the rows under one row of times.
type band struct {
	tableReader
	across
	times int
	used  map[int]bool // rows whose name stands in an entry
}

func (b *band) read(end int) {
	if b.times < 0 {
		return
	}
	b.used = map[int]bool{}
	for c := range b.g.width {
		b.column(c, end)
	}
	for row := b.times + 1; row < end; row++ {
		if !b.used[row] {
			b.r.other(b.g.cell(row, b.name).Text())
		}
	}
}

// column reads the cells under one time.
func (b *band) column(c, end int) {
	head, _ := b.g.over(b.times, c)
	here := b.g.cell(b.times, c).Down > 0
	st, timed := stampOf(head)
	timed = timed && c != b.name && plain(head) != ""
	if !timed && here {
		b.r.other(head.Text())
	}
	first := true
	for row := b.times + 1; row < end && c != b.name; row++ {
		cell := b.g.cell(row, c)
		heading := b.g.words(row, b.name)
		switch {
		case plain(cell) == "" || !timed:
			b.r.other(cell.Text())
		case roleOf(heading) == pointsRole && !first:
			last := &b.r.entries[len(b.r.entries)-1]
			last.points = append(last.points, plain(cell))
			last.beside(struck(cell.Lines))
		default:
			if end, is := stampOf(b.last(c, cell)); is && cell.Span > 1 && len(st.until) > 0 && len(end.until) > 0 {
				longer := st
				longer.until = end.until
				b.entry(row, cell, longer, head, heading)
			} else {
				b.entry(row, cell, st, head, heading)
			}
			first = false
		}
	}
	if first && timed && here {
		b.r.other(head.Text())
	}
}

// last is the time over the last column that a cell covers.
func (b *band) last(c int, cell table.Cell) table.Cell {
	head, _ := b.g.over(b.times, c+max(cell.Span, 1)-1)
	return head
}

func (b *band) entry(row int, cell table.Cell, st stamp, head table.Cell, heading string) {
	e := entry{table: b.index, line: row, mode: clockMode, lines: cell.Lines, stamp: st, written: strings.ReplaceAll(plain(head), "\n", " ")}
	if st.kind == offset || st.kind == plus {
		e.mode = runMode
	}
	if !shared.MatchString(heading) && roleOf(heading) != pointsRole {
		if e.dishes = b.r.named(heading); len(e.dishes) > 0 && e.dishes[0] != EveryDish && struck(b.g.cell(row, b.name).Lines) == "" {
			b.used[row] = true
		}
	}
	e.beside(struck(head.Lines))
	b.colour(&e, cell)
	b.r.entries = append(b.r.entries, e)
}

// onItsSide turns a table whose headings stand one below another, at the left of
// their rows, and whose times run to the right; nil when it is none. Works is its
// row of what is done.
func onItsSide(t *table.Table) (turned *table.Table, works int) {
	roles, timed, width := map[role]bool{}, false, 0
	for r, row := range t.Rows {
		width = max(width, len(row))
		if len(row) == 0 {
			return nil, 0
		}
		role := roleOf(plain(row[0]))
		if role == noRole || roles[role] && role != pointsRole {
			return nil, 0
		}
		roles[role] = true
		if role == textRole {
			works = r
		}
		for c, cell := range row {
			if cell.Span != 1 || cell.Down > 1 {
				return nil, 0
			}
			timed = timed || c > 0 && role == timeRole && isTime(cell)
		}
	}
	if !timed || !roles[textRole] || len(roles) < 3 || width < 4 {
		return nil, 0
	}
	turned = &table.Table{Name: t.Name, Header: 1, Rows: make([][]table.Cell, width)}
	for c := range turned.Rows {
		for _, row := range t.Rows {
			cell := table.Cell{Span: 1, Down: 1, Clock: -1}
			if c < len(row) {
				cell = row[c]
			}
			turned.Rows[c] = append(turned.Rows[c], cell)
		}
	}
	return turned, works
}

// sideways reads a table that has been turned; its rows stand in the row of what
// is done.
func (r *reader) sideways(read func(dish []string), dish []string, works int) {
	from := len(r.entries)
	read(dish)
	for i := from; i < len(r.entries); i++ {
		r.entries[i].line = works
	}
}
