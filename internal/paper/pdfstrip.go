package paper

import (
	"plait.example/internal/picture"
)

// strip is the plait beside the table, on the table's clock: row by row the
// drawing is as high as the table's row.
type strip struct {
	drawing  *picture.Drawing
	geometry picture.Geometry
	figure   *tag
	scale    float64 // points a pixel
	left     float64 // pixels cut off: the drawing's own clock times
	first    int     // index of the first row on the page; -1: none yet
	top      float64 // where that row begins
	last     int
}

const (
	stripPixels = 320 // width of the drawing
	stripGap    = 4.0 // points between strip and table
)

// fitStrip draws the plait to the rows' heights and makes the rows as high as
// the plait needs. There is no strip where the sheet has no room for one, or a
// row is taller than a page.
func (d *document) fitStrip(bands []laidBand) *strip {
	if d.layout.strip == 0 {
		return nil
	}
	o := picture.Options{Width: stripPixels, Print: true, Bare: true, Heights: make([]float64, len(d.plan.Rows))}
	s := &strip{first: -1}
	g := picture.Layout(d.plan, o)
	if len(g.Lanes) > 0 {
		s.left = max(0, g.Lanes[0].Left-10)
	}
	s.scale = (d.layout.strip*mm - stripGap) / (g.Width - s.left)
	most := d.bottom() - margin - d.headHeight()
	for _, b := range bands {
		for _, r := range b.rows {
			if r.height+b.height > most {
				return nil
			}
			o.Heights[r.index] = r.height / s.scale
		}
	}
	g = picture.Layout(d.plan, o)
	for i, b := range bands { // a band's title stands in the room of the row before it
		if i > 0 {
			before := b.rows[0].index - 1
			gap := g.Rows[before+1].Top - g.Rows[before].Bottom
			o.Heights[before] += max(0, b.height/s.scale-gap)
		}
	}
	s.drawing, s.geometry = picture.Draw(d.plan, o), picture.Layout(d.plan, o)
	for i, b := range bands {
		for k := range b.rows {
			r := &b.rows[k]
			r.height = s.height(r.index)
			if k == len(b.rows)-1 && i+1 < len(bands) {
				r.height -= bands[i+1].height
			}
		}
	}
	return s
}

// height is from the row's top to the next row's, in points.
func (s *strip) height(row int) float64 {
	r := s.geometry.Rows
	if row+1 < len(r) {
		return (r[row+1].Top - r[row].Top) * s.scale
	}
	return (r[row].Bottom - r[row].Top) * s.scale
}

// beginStrip writes the places' names into the table's heading.
func (d *document) beginStrip() {
	if d.strip == nil {
		return
	}
	d.strip.first = -1
	size := d.layout.small * 0.8 * d.strip.squeeze(d.layout.small*0.8)
	d.aside(func() {
		for _, lane := range d.strip.geometry.Lanes {
			s := span{printable(lane.Name), lane.Name == "hands"}
			middle := d.left() + ((lane.Left+lane.Right)/2-d.strip.left)*d.strip.scale
			d.write(middle-measure(s, size)/2, d.y-padY-1, size, inkPaper, s)
		}
	})
}

// squeeze is by how much the places' names must be smaller than size so that
// none touches the next.
func (s *strip) squeeze(size float64) float64 {
	by := 1.0
	lanes := s.geometry.Lanes
	for i := 1; i < len(lanes); i++ {
		apart := (lanes[i].Left + lanes[i].Right - lanes[i-1].Left - lanes[i-1].Right) / 2 * s.scale
		need := (measure(span{lanes[i-1].Name, true}, size)+measure(span{lanes[i].Name, true}, size))/2 + 3
		by = min(by, apart/need)
	}
	return max(by, 0.5)
}

// alongStrip notes that a row has been reached.
func (d *document) alongStrip(row laidRow) {
	if d.strip == nil {
		return
	}
	if d.strip.first < 0 {
		d.strip.first, d.strip.top = row.index, d.y
	}
	d.strip.last = row.index
}

// endStrip draws the plait beside the rows of the page.
func (d *document) endStrip() {
	s := d.strip
	if s == nil || s.first < 0 {
		return
	}
	rows := s.geometry.Rows
	from, until := rows[s.first].Top, rows[s.last].Top+s.height(s.last)/s.scale
	if tail := (s.geometry.Height - until) * s.scale; s.last+1 == len(rows) && d.y+tail < d.bottom() {
		until = s.geometry.Height // the line of the finish
		d.y += tail
	}
	d.in(s.figure, func() {
		d.drawing(s.drawing, d.left(), s.top, s.scale, s.left, from, until)
	})
	s.first = -1
}
