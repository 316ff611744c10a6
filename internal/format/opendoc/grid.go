package opendoc

import (
	"cmp"
	"fmt"
	"regexp"
	"strconv"
	"strings"

	"plait.example/internal/format/packed"
	"plait.example/internal/format/table"
)

// maxBlank is how many empty rows that follow one another are kept; sheets
// repeat them to the edge of the plane.
const maxBlank = 100

// maxColumns is how many kinds of columns are told apart.
const maxColumns = 1024

// layer lays a table out.
type layer struct {
	*reader
	sheet   bool
	grid    table.Grid
	table   table.Table
	columns []columns
	rows    int
	width   int           // columns of a sheet up to the last that says something
	all     []table.Block // what the cells hold, in order
	inside  []*table.Table
	hidden  struct{ rows, columns int }
}

// columns are some that follow one another, with the style of their cells.
type columns struct {
	until int
	cells string
}

// table reads a table of a text or a sheet; one that only places other things
// in a text comes as these.
func (r *reader) table(e *packed.Element, sheet bool) ([]table.Block, error) {
	in := layer{reader: r, sheet: sheet}
	if sheet {
		in.table.Name = e.Attr("name")
		in.width = width(e)
	}
	if err := in.part(e, false); err != nil {
		return nil, err
	}
	rows, err := in.grid.Rows()
	if err != nil {
		return nil, err
	}
	if in.table.Rows = rows; sheet {
		in.table.Rows = table.Trim(rows)
	}
	in.note()
	switch {
	case len(in.table.Rows) == 0:
		return nil, nil
	case !sheet && in.table.Frames(in.inside):
		return in.all, nil
	}
	in.table.Header = min(in.table.Header, len(in.table.Rows))
	return []table.Block{{Table: &in.table}}, nil
}

// width is how many columns of a sheet say something or stand before those that do.
func width(e *packed.Element) (most int) {
	column := 0
	for _, c := range e.Children {
		switch {
		case c.Name == "table-cell" || c.Name == "covered-table-cell":
			if column += repeated(c, "number-columns-repeated"); len(c.Children) > 0 {
				most = max(most, column)
			}
		case strings.HasPrefix(c.Name, "table-"):
			most = max(most, width(c))
		}
	}
	return most
}

// note tells of rows and columns that are not seen on the screen.
func (in *layer) note() {
	if n := in.hidden; in.sheet && (n.rows > 0 || n.columns > 0) {
		in.notes = append(in.notes, fmt.Sprintf("sheet %q has hidden rows (%d) or columns (%d); they were read all the same", in.table.Name, n.rows, n.columns))
	}
}

// part reads the columns and rows of a table or of a part of it.
func (in *layer) part(e *packed.Element, head bool) error {
	for _, c := range e.Children {
		var err error
		switch c.Name {
		case "table-column":
			in.addColumns(c)
		case "table-row":
			err = in.row(c, head)
		case "table-header-rows":
			err = in.part(c, true)
		case "table-rows", "table-row-group", "table-columns", "table-column-group", "table-header-columns":
			err = in.part(c, head)
		}
		if err != nil {
			return err
		}
	}
	return nil
}

func (in *layer) addColumns(e *packed.Element) {
	last := 0
	if n := len(in.columns); n > 0 {
		last = in.columns[n-1].until
	}
	n := repeated(e, "number-columns-repeated")
	if len(in.columns) < maxColumns {
		in.columns = append(in.columns, columns{last + n, e.Attr("default-cell-style-name")})
	}
	if v := e.Attr("visibility"); (v == "collapse" || v == "filter") && n <= maxBlank {
		in.hidden.columns += n
	}
}

// repeated is a count from 1, bounded.
func repeated(e *packed.Element, attribute string) int {
	n, err := strconv.Atoi(e.Attr(attribute))
	if err != nil || n < 1 {
		return 1
	}
	return min(n, 1<<20)
}

func (in *layer) row(e *packed.Element, head bool) error {
	n := repeated(e, "number-rows-repeated")
	says := false
	for _, c := range e.Children {
		says = says || len(c.Children) > 0
	}
	if !says {
		n = min(n, maxBlank)
	}
	if v := e.Attr("visibility"); says && (v == "collapse" || v == "filter") {
		in.hidden.rows += n
	}
	cells, err := in.cells(e)
	if err != nil {
		return err
	}
	for range n {
		in.grid.Row()
		if head && in.table.Header == in.rows {
			in.table.Header++
		}
		in.rows++
		for _, c := range cells {
			for at := c.from; at < c.to && in.grid.Err() == nil; at++ {
				in.grid.Put(at, in.shaded(c, at, e))
			}
		}
		if err := in.grid.Err(); err != nil {
			return err
		}
	}
	return nil
}

// several is a cell and the columns in which a row has it.
type several struct {
	cell     table.Cell
	style    string
	from, to int
}

// cells are those of a row; covered ones only take their columns.
func (in *layer) cells(row *packed.Element) (list []several, err error) {
	column := 0
	for _, e := range row.Children {
		if e.Name != "table-cell" && e.Name != "covered-table-cell" {
			continue
		}
		n := repeated(e, "number-columns-repeated")
		if in.sheet {
			n = min(n, in.width-column) // the plane beyond what is written says nothing
		}
		if e.Name == "table-cell" && n > 0 {
			c := several{style: e.Attr("style-name"), from: column, to: column + n}
			if c.style == "" {
				c.style = row.Attr("default-cell-style-name")
			}
			if c.cell, err = in.cell(e, in.styleAt(c.style, column)); err != nil {
				return nil, err
			}
			if in.sheet {
				c.cell.Span = min(c.cell.Span, in.width-column)
			}
			list = append(list, c)
		}
		column += n
	}
	return list, nil
}

// styleAt is the style of a cell in a column, which has one for those without.
func (in *layer) styleAt(own string, column int) string {
	if own != "" {
		return own
	}
	for _, c := range in.columns {
		if column < c.until {
			return c.cells
		}
	}
	return ""
}

// shaded is a cell in one of its columns, with the shade that it has there.
func (in *layer) shaded(c several, column int, row *packed.Element) table.Cell {
	one := c.cell
	one.Shade = cmp.Or(in.styles.shade("table-cell", in.styleAt(c.style, column)), in.styles.shade("table-row", row.Attr("style-name")))
	return one
}

func (in *layer) cell(e *packed.Element, name string) (table.Cell, error) {
	look := in.styles.of("table-cell", name)
	c := table.Cell{Span: repeated(e, "number-columns-spanned"), Down: repeated(e, "number-rows-spanned"), Clock: clock(e)}
	if len(e.Children) == 0 {
		return c, nil
	}
	base, box := in.base, in.box
	in.base, in.box = look, false
	if !in.sheet {
		in.base = style{}
	}
	blocks, err := in.blocks(e)
	c.Checked = in.box || e.Attr("value-type") == "boolean" && e.Attr("boolean-value") == "true"
	in.base, in.box = base, box
	in.all = append(in.all, blocks...)
	for _, b := range blocks {
		if b.Table != nil {
			in.inside = append(in.inside, b.Table)
		}
	}
	c.Fill(table.Flat(blocks))
	return c, err
}

var (
	duration = regexp.MustCompile(`^PT(\d{1,4})H(?:(\d{1,2})M)?`)
	moment   = regexp.MustCompile(`^[0-9-]+T(\d\d):(\d\d)`)
)

// clock is the time of a cell that holds one, in minutes since midnight, -1 otherwise.
func clock(e *packed.Element) int {
	var m []string
	switch e.Attr("value-type") {
	case "time":
		m = duration.FindStringSubmatch(e.Attr("time-value"))
	case "date":
		m = moment.FindStringSubmatch(e.Attr("date-value"))
	}
	if m == nil {
		return -1
	}
	hours, _ := strconv.Atoi(m[1])
	minutes, _ := strconv.Atoi(m[2])
	if hours > 23 || minutes > 59 {
		return -1
	}
	return hours*60 + minutes
}

// sheets are the tables of a spreadsheet that say something.
func (r *reader) sheets(e *packed.Element) (blocks []table.Block, err error) {
	for _, c := range e.Children {
		if c.Name != "table" {
			continue
		}
		more, err := r.table(c, true)
		if err != nil {
			return nil, err
		}
		blocks = append(blocks, more...)
	}
	return blocks, nil
}
