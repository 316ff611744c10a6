package paper

// Room inside a cell, in points.
const (
	padX = 4.5
	padY = 4.0
)

// laidCell is one laid-out cell of a row.
type laidCell struct {
	column column
	x      float64
	lines  []setLine
}

// laidRow is a row ready to be put on a page.
type laidRow struct {
	line   line
	index  int // of the plan's row
	cells  []laidCell
	height float64
}

// laidBand is a band's title and its rows, ready to be put on pages.
type laidBand struct {
	title  []setLine
	height float64 // of the title
	rows   []laidRow
}

// table writes the bands and their rows under a heading that is repeated on
// every page. A row that does not fit in the rest of a page goes on the next.
func (d *document) table() {
	if len(d.view.Bands) == 0 {
		return
	}
	bands := d.layBands()
	d.strip = d.fitStrip(bands)
	if d.strip == nil && d.layout.strip > 0 {
		d.layout = d.layout.withoutStrip()
		bands = d.layBands()
	}
	if d.strip != nil {
		d.strip.figure = d.root.add("Figure")
		d.strip.figure.alt = plaitWords(d.plan)
	}
	t := d.root.add("Table")
	first := true
	for _, b := range bands {
		for i, row := range b.rows {
			need := row.height
			if i == 0 {
				need += b.height
			}
			switch {
			case first && d.y+d.headHeight()+need <= d.bottom():
				d.head(t, true)
			case first || d.y+need > d.bottom():
				d.endStrip()
				d.page()
				d.head(t, first)
			}
			first = false
			if i == 0 {
				d.band(t, b)
			}
			d.row(t, row)
		}
	}
	d.endStrip()
}

// layBands sets every row.
func (d *document) layBands() []laidBand {
	var all []laidBand
	index := 0
	for _, b := range d.view.Bands {
		title := setText([]span{{b.Title, true}}, d.layout.text*0.95, d.tableWide()-2*padX)
		laid := laidBand{title: title, height: heightOf(title) + 2*padY}
		for _, r := range b.Rows {
			row := d.lay(r)
			row.index = index
			laid.rows = append(laid.rows, row)
			index++
		}
		all = append(all, laid)
	}
	return all
}

// tableLeft and tableWide are where the table stands: beside the strip, if there is one.
func (d *document) tableLeft() float64 { return d.left() + d.layout.strip*mm }
func (d *document) tableWide() float64 { return d.wide() - d.layout.strip*mm }

func (d *document) headHeight() float64 { return d.layout.small*leading + 2*padY }

// head writes the table's heading: once as heading cells, on later pages as decoration.
func (d *document) head(t *tag, tagged bool) {
	h := d.headHeight()
	d.aside(func() { d.box(d.left(), d.y, d.wide(), h, inkText) })
	x := d.tableLeft()
	var row *tag
	if tagged {
		row = t.add("TR")
	}
	for _, c := range d.layout.columns {
		wide := c.width * mm
		s := span{c.head, true}
		at := x + padX
		if c.part == partMinutes || c.part == partTime {
			at = x + wide - padX - measure(s, d.layout.small)
		}
		write := func() { d.write(at, d.y+padY+d.layout.small*0.98, d.layout.small, inkPaper, s) }
		if tagged {
			cell := row.add("TH")
			cell.scope = "Column"
			d.in(cell, write)
		} else {
			d.aside(write)
		}
		x += wide
	}
	d.y += h
	d.beginStrip()
}

// band writes the line that says what the rows under it are.
func (d *document) band(t *tag, b laidBand) {
	d.aside(func() {
		d.box(d.tableLeft(), d.y, d.tableWide(), b.height, inkPale)
		d.rule(d.tableLeft(), d.y+b.height, d.tableWide(), 1, inkText)
	})
	cell := t.add("TR").add("TH")
	cell.scope, cell.span = "Row", len(d.layout.columns)
	d.in(cell, func() { d.put(b.title, d.tableLeft()+padX, d.y+padY, mark{Index: -1}) })
	d.y += b.height
}

// lay sets the cells of a row and finds its height.
func (d *document) lay(r line) laidRow {
	row := laidRow{line: r, height: 2*padY + d.markSize() + 2}
	x := d.tableLeft()
	for _, c := range d.layout.columns {
		wide := c.width * mm
		cell := laidCell{column: c, x: x}
		switch c.part {
		case partTime:
			cell.lines = d.timeLines(r)
		case partDish:
			row.height = max(row.height, heightOf(d.tagLines(r, wide))+2*padY)
		case partMinutes:
		default:
			cell.lines = d.layout.setPieces(d.layout.pieces(r, c.part), r.Mark, wide-2*padX)
		}
		row.height = max(row.height, heightOf(cell.lines)+2*padY)
		row.cells = append(row.cells, cell)
		x += wide
	}
	return row
}

// markSize is the height of a dish's mark.
func (d *document) markSize() float64 { return d.layout.text * 1.5 }

// timeLines is the clock time, big, with the cook and the pin under it.
func (d *document) timeLines(r line) []setLine {
	lines := setText([]span{{r.Time, true}}, d.layout.time, 1000)
	if r.Cook != "" {
		lines = append(lines, setText([]span{{r.Cook, false}}, d.layout.small, 1000)...)
	}
	if r.Pinned {
		lines = append(lines, setText([]span{{"pinned", false}}, d.layout.small, 1000)...)
	}
	return lines
}

// row writes a row; one that is taller than a page goes on over the next ones.
func (d *document) row(t *tag, row laidRow) {
	tr := t.add("TR")
	cells := make([]*tag, len(row.cells))
	for i, c := range row.cells {
		kind := "TD"
		if c.column.part == partTime {
			kind = "TH"
		}
		cells[i] = tr.add(kind)
		if kind == "TH" {
			cells[i].scope = "Row"
		}
	}
	d.alongStrip(row)
	parts := d.split(row)
	for i, part := range parts {
		if i > 0 {
			d.page()
			d.head(t, false)
		}
		d.boxes = append(d.boxes, rowBox{d.f.PageNo(), d.y, d.y + part.height, i + 1, len(parts)})
		d.putRow(part, cells)
		d.y += part.height
	}
}

// split cuts a row that is taller than a page into rows that are not.
func (d *document) split(row laidRow) []laidRow {
	most := d.bottom() - margin - d.headHeight()
	if row.height <= most {
		return []laidRow{row}
	}
	var parts []laidRow
	rest := row
	for rest.height > d.bottom()-d.y || len(parts) == 0 {
		room := most - 2*padY
		if len(parts) == 0 {
			room = d.bottom() - d.y - 2*padY
		}
		now, later := rest, rest
		now.cells, later.cells = nil, nil
		now.height, later.height = 0, 0
		for _, c := range rest.cells {
			a, b := c, c
			n := 0
			for used := 0.0; n < len(c.lines) && used+c.lines[n].height() <= room; n++ {
				used += c.lines[n].height()
			}
			a.lines, b.lines = c.lines[:n], c.lines[n:]
			now.height = max(now.height, heightOf(a.lines)+2*padY)
			later.height = max(later.height, heightOf(b.lines)+2*padY)
			now.cells, later.cells = append(now.cells, a), append(later.cells, b)
		}
		parts = append(parts, now)
		if later.height <= 2*padY {
			return parts
		}
		later.line.Minutes, later.line.Tag = "", "more"
		rest = later
		if later.height <= most {
			break
		}
	}
	return append(parts, rest)
}

func (d *document) putRow(row laidRow, tags []*tag) {
	r := row.line
	for i, c := range row.cells {
		wide := c.column.width * mm
		switch c.column.part {
		case partTime:
			d.putTime(tags[i], c, wide)
		case partDish:
			d.putDish(tags[i], r, c, wide, row.height)
		case partMinutes:
			s := span{r.Minutes, false}
			d.in(tags[i], func() {
				d.write(c.x+wide-padX-measure(s, d.layout.text), d.y+padY+d.layout.text*0.98, d.layout.text, inkText, s)
			})
		default:
			d.in(tags[i], func() { d.put(c.lines, c.x+padX, d.y+padY, r.Mark) })
		}
	}
	d.aside(func() { d.rule(d.tableLeft(), d.y+row.height, d.tableWide(), 0.6, inkRule) })
}

// putTime writes the clock time to the right, so that hours stand under hours.
func (d *document) putTime(t *tag, c laidCell, wide float64) {
	d.in(t, func() {
		y := d.y + padY
		for _, l := range c.lines {
			d.put([]setLine{l}, c.x+wide-padX-l.width, y, mark{Index: -1})
			y += l.height()
		}
	})
}

// tagLines is the row's tag beside the mark, or "all".
func (d *document) tagLines(r line, wide float64) []setLine {
	words := r.Tag
	if words == "" && r.Mark.Index < 0 {
		words = "all"
	}
	return setText([]span{{words, true}}, d.layout.small, wide-padX-d.markWide(r.Mark)-1)
}

// markWide is the room that a mark takes beside the tag.
func (d *document) markWide(m mark) float64 {
	if m.Index < 0 {
		return 0
	}
	return d.markSize() + 4
}

// putDish draws the mark on its dish's tint, with the row's tag beside it.
func (d *document) putDish(t *tag, r line, c laidCell, wide, high float64) {
	if r.Mark.Index >= 0 {
		d.aside(func() { d.box(c.x, d.y, wide, high, r.Mark.Ink.Tint) })
	}
	lines := d.tagLines(r, wide)
	d.in(t, func() {
		d.mark(r.Mark, c.x+padX+d.markSize()/2, d.y+padY+d.markSize()/2+1, d.markSize()/2.35)
		y := d.y + padY + max(0, (d.markSize()-heightOf(lines))/2)
		d.put(lines, c.x+padX+d.markWide(r.Mark), y, mark{Index: -1})
	})
}
