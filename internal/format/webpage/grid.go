package webpage

import (
	"strconv"

	"plait.example/internal/format/table"
)

// Spans by the HTML Standard, 4.9.12: columns above a thousand count as one,
// rows are no more than 65534, and no rows means all that follow.
const (
	maxSpan = 1000
	maxDown = 65534
)

// layer lays a table of a page out.
type layer struct {
	*reader
	grid   table.Grid
	table  table.Table
	all    []table.Block // what the cells hold, in order
	inside []*table.Table
	rows   int
	cells  int // of the row that is being read
	heads  bool
}

// table reads a table; one that only places other things comes as these.
func (r *reader) table(n *node, l look) {
	in := layer{reader: r}
	in.part(n, l, false)
	rows, err := in.grid.Rows()
	if r.err == nil {
		r.err = err
	}
	if in.table.Rows = rows; r.err != nil || in.rows == 0 && in.cells == 0 {
		return
	}
	if in.table.Frames(in.inside) {
		r.blocks = append(r.blocks, in.all...)
		return
	}
	r.blocks = append(r.blocks, table.Block{Table: &in.table})
}

// part reads the rows of a table or of a part of it.
func (in *layer) part(n *node, l look, head bool) {
	in.path = append(in.path, n)
	defer func() { in.path = in.path[:len(in.path)-1] }()
	for _, c := range n.children {
		at := in.look(c, l)
		if c.tag == "" || hidden(c) || at.hidden {
			continue
		}
		switch c.tag {
		case "caption":
			in.table.Name = oneLine(textOf(c))
		case "tr":
			in.row(c, at, head)
		case "td", "th":
			in.cell(c, at)
		case "colgroup", "col", "table":
		default:
			in.part(c, at, head || c.tag == "thead")
		}
	}
}

func (in *layer) row(n *node, l look, head bool) {
	in.grid.Row()
	in.cells, in.heads = 0, true
	in.part(n, l, head)
	if in.cells > 0 && (head || in.heads && in.cells > 1) && in.table.Header == in.rows {
		in.table.Header++
	}
	in.rows++
}

func (in *layer) cell(n *node, l look) {
	in.cells++
	in.heads = in.heads && n.tag == "th"
	sub := &reader{sheet: in.sheet, path: in.path, cell: true}
	sub.inside(n, l)
	sub.flush()
	if in.err == nil {
		in.err = sub.err
	}
	for _, b := range sub.blocks {
		if b.Table != nil {
			in.inside = append(in.inside, b.Table)
		}
		if b.Table != nil || len(b.Line) > 0 {
			in.all = append(in.all, b)
		}
	}
	c := table.Cell{Shade: l.cells, Span: span(n, "colspan", maxSpan), Down: span(n, "rowspan", maxDown), Clock: -1, Checked: sub.ticked}
	if n.attribute("rowspan") == "0" {
		c.Down = maxDown
	}
	if c.Span == maxSpan+1 {
		c.Span = 1
	}
	c.Fill(table.Flat(sub.blocks))
	in.grid.Next(c)
}

// span is a number of rows or columns, from 1 to one above the most.
func span(n *node, attribute string, most int) int {
	count, err := strconv.Atoi(n.attribute(attribute))
	if err != nil || count < 1 {
		return 1
	}
	return min(count, most+1)
}
