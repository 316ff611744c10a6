package table

import (
	"errors"
	"fmt"
)

// MaxCells is how many places a table may have; a larger one is refused, since
// a few words of markup can claim a plane of cells.
const MaxCells = 200_000

// ErrTooLarge is wrapped by the refusal of a table.
var ErrTooLarge = errors.New("the table is too large")

// Grid lays cells out in rows and columns.
type Grid struct {
	rows  [][]Cell // a place that is still free has Span 0
	below []reach  // cells that reach into rows that have not begun
	count int
	width int
	next  int // no place before it is free in the row that has begun
	err   error
}

// reach is a cell that goes on below.
type reach struct{ column, span, rows int }

// covered is a place that another cell covers.
var covered = Cell{Span: 1, Clock: -1}

// Row begins the next row.
func (g *Grid) Row() {
	g.rows = append(g.rows, nil)
	if g.count++; g.count > MaxCells {
		g.refuse()
	}
	var on []reach
	for _, r := range g.below {
		g.cover(r.column, r.span)
		if r.rows--; r.rows > 0 {
			on = append(on, r)
		}
	}
	g.below, g.next = on, 0
}

func (g *Grid) refuse() {
	if g.err == nil {
		g.err = fmt.Errorf("%w: it takes more than %d cells; copy the part that matters into a new document", ErrTooLarge, MaxCells)
	}
}

// Err is why the table is refused, nil as long as it is not.
func (g *Grid) Err() error { return g.err }

// cover takes places of the row that has begun; those that are taken stay.
func (g *Grid) cover(column, span int) {
	for at := column; at < column+span && g.free(at); at++ {
		g.rows[len(g.rows)-1][at] = covered
	}
}

// free makes the row reach to a column, and says whether the place is free.
func (g *Grid) free(column int) bool {
	last := len(g.rows) - 1
	if more := column + 1 - len(g.rows[last]); more > 0 {
		if g.count += more; g.count > MaxCells {
			g.refuse()
		}
		if g.err != nil {
			return false
		}
		g.rows[last] = append(g.rows[last], make([]Cell, more)...)
		g.width = max(g.width, column+1)
	}
	return g.err == nil && g.rows[last][column].Span == 0
}

// Put puts a cell at a column of the row that has begun. What would stand on
// another cell is left out.
func (g *Grid) Put(column int, c Cell) {
	if len(g.rows) == 0 {
		g.Row()
	}
	if column < 0 || !g.free(column) {
		return
	}
	c.Span, c.Down = max(c.Span, 1), max(c.Down, 1)
	span := 1
	for span < c.Span && g.free(column+span) {
		span++
	}
	c.Span = span
	row := g.rows[len(g.rows)-1]
	row[column] = c
	for at := column + 1; at < column+span; at++ {
		row[at] = covered
	}
	if c.Down > 1 {
		g.below = append(g.below, reach{column, span, c.Down - 1})
	}
}

// Next puts a cell at the first free place of the row (HTML Standard, 4.9.12).
func (g *Grid) Next(c Cell) {
	if len(g.rows) == 0 {
		g.Row()
	}
	for g.next < len(g.rows[len(g.rows)-1]) && !g.free(g.next) && g.err == nil {
		g.next++
	}
	g.Put(g.next, c)
}

// Rows are the rows laid out, all as wide as the widest, without the columns in
// which no cell begins. The error wraps ErrTooLarge.
func (g *Grid) Rows() ([][]Cell, error) {
	if len(g.rows)*g.width > MaxCells {
		g.refuse()
	}
	if g.err != nil {
		return nil, g.err
	}
	begins := make([]bool, g.width)
	for i, row := range g.rows {
		for len(row) < g.width {
			row = append(row, Cell{})
		}
		for at := range row {
			if row[at].Span == 0 {
				row[at] = Cell{Span: 1, Down: 1, Clock: -1}
			}
			row[at].Down = min(row[at].Down, len(g.rows)-i)
			begins[at] = begins[at] || row[at].Down > 0
		}
		g.rows[i] = row
	}
	return narrow(g.rows, begins), nil
}

// narrow leaves out the columns in which no cell begins.
func narrow(rows [][]Cell, begins []bool) [][]Cell {
	for i, row := range rows {
		kept := row[:0]
		for at, c := range row {
			if !begins[at] {
				continue
			}
			span := 0
			for k := at; k < at+c.Span; k++ {
				if begins[k] {
					span++
				}
			}
			c.Span = span
			kept = append(kept, c)
		}
		rows[i] = kept
	}
	return rows
}
