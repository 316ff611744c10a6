package written

import (
	"strings"
)

// across is a table in which time runs to the right.
type across struct {
	name  int          // the column of dishes
	times map[int]bool // rows of times
}

// acrossOf says whether times stand across the top and words under them.
func acrossOf(g *grid) (across, bool) {
	a := across{times: map[int]bool{}}
	for r := range g.rows {
		filled, stamps := g.filled(r), 0
		for i, c := range filled {
			if st, is := readStamp(strings.ReplaceAll(g.words(r, c), "\n", " ")); is && i+1 > 0 && (st.kind == clock || st.kind == digits && len(st.times) > 0 && st.number >= 600 || st.kind == offset || st.kind == plus) || g.cell(r, c).Clock >= 0 {
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
	worded := 0
	for r := range g.rows {
		if !a.times[r] && len(g.filled(r)) >= 2 {
			worded++
		}
	}
	return a, worded > 0
}

// readAcross reads such a table: a row for each cell, in the order of the clock.
func (r *reader) readAcross(g *grid, a across, index int) {
	t := tableReader{r: r, g: g, index: index, l: layout{runs: clockMode}}
	band := -1
	for row := range g.rows {
		switch {
		case a.times[row]:
			r.band(&t, a, band, row)
			band = row
		case band < 0:
			r.other(g.line(row))
		}
	}
	r.band(&t, a, band, len(g.rows))
}

// band reads the rows under one row of times.
func (r *reader) band(t *tableReader, a across, times, end int) {
	if times < 0 {
		return
	}
	g := t.g
	if _, is := stampOf(g.cell(times, a.name)); !is {
		r.other(g.words(times, a.name))
	}
	for row := times + 1; row < end; row++ {
		if heading := g.words(row, a.name); heading != "" && (shared.MatchString(heading) || roleOf(heading) == pointsRole) {
			r.other(heading)
		}
	}
	for c := range g.width {
		head := g.cell(times, c)
		st, is := stampOf(head)
		if head.Down == 0 {
			continue
		}
		first := true
		for row := times + 1; row < end; row++ {
			cell := g.cell(row, c)
			text := plain(cell)
			heading := g.words(row, a.name)
			switch {
			case text == "" || c == a.name && !is:
			case roleOf(heading) == pointsRole && !first:
				last := &r.entries[len(r.entries)-1]
				last.points = append(last.points, text)
			case !is:
				r.other(text)
			default:
				e := entry{table: t.index, line: row, mode: clockMode, lines: cell.Lines, stamp: st, written: strings.ReplaceAll(plain(head), "\n", " ")}
				if st.kind == offset || st.kind == plus {
					e.mode = runMode
				}
				if !shared.MatchString(heading) {
					e.dishes = r.named(heading)
				}
				t.colour(&e, cell)
				e.beside(struck(cell.Lines))
				r.entries = append(r.entries, e)
				first = false
			}
		}
		if first && is {
			r.other(plain(head))
		}
	}
	r.unnamed(g, a, times, end)
}

// unnamed keeps the names of dishes under which nothing stands.
func (r *reader) unnamed(g *grid, a across, times, end int) {
	for row := times + 1; row < end; row++ {
		if filled := g.filled(row); len(filled) == 1 && filled[0] == a.name {
			r.other(g.words(row, a.name))
		}
	}
}
