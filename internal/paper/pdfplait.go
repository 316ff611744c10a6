package paper

import (
	"strings"

	"plait.example/internal/picture"
	"plait.example/internal/timeplan"
)

// path draws one shape of a drawing; to turns its points into the page's.
func (n *pen) path(m picture.Mark, to func(picture.Point) (float64, float64), scale float64) {
	for _, move := range m.Path {
		x, y := to(move.To)
		switch move.Op {
		case 'M':
			n.f.MoveTo(x, y)
		case 'L':
			n.f.LineTo(x, y)
		case 'C':
			ax, ay := to(move.A)
			bx, by := to(move.B)
			n.f.CurveBezierCubicTo(ax, ay, bx, by, x, y)
		case 'Z':
			n.f.ClosePath()
		}
	}
	style := ""
	if m.Fill != "" {
		n.f.SetFillColor(rgb(m.Fill))
		style = "F"
	}
	if m.Stroke != "" {
		n.f.SetDrawColor(rgb(m.Stroke))
		n.f.SetLineWidth(m.Line * scale)
		var dash []float64
		for _, v := range m.Dash {
			dash = append(dash, v*scale)
		}
		n.f.SetDashPattern(dash, m.DashFrom*scale)
		ends := "butt"
		if m.Round {
			ends = "round"
		}
		n.f.SetLineCapStyle(ends)
		style += "D"
	}
	n.f.DrawPath(style)
	if len(m.Dash) > 0 {
		n.f.SetDashPattern(nil, 0)
	}
}

// words writes one text of a drawing.
func (n *pen) words(m picture.Mark, to func(picture.Point) (float64, float64), scale float64) {
	s := span{printable(m.Text), m.Bold}
	size := m.Size * scale
	x, y := to(picture.Point{X: m.X, Y: m.Y})
	turned := m.Turn != 0
	if turned {
		n.f.TransformBegin()
		n.f.TransformRotate(-m.Turn, x, y)
	}
	switch m.Anchor {
	case picture.Middle:
		x -= measure(s, size) / 2
	case picture.End:
		x -= measure(s, size)
	}
	n.write(x, y, size, m.Fill, s)
	if turned {
		n.f.TransformEnd()
	}
}

// drawing draws the part of a drawing to the right of left and between two
// heights, its upper left corner at (x, y).
func (n *pen) drawing(d *picture.Drawing, x, y, scale, left, from, until float64) {
	to := func(p picture.Point) (float64, float64) { return x + (p.X-left)*scale, y + (p.Y-from)*scale }
	n.f.ClipRect(x, y, (d.Width-left)*scale, (until-from)*scale, false)
	for _, m := range d.Marks {
		switch m.Kind {
		case picture.Figure:
			n.path(m, to, scale)
		case picture.Text:
			if moved, ok := within(m, left); ok {
				x, y := to(picture.Point{X: left, Y: moved.Y - moved.Size})
				n.box(x, y, (measure(span{moved.Text, moved.Bold}, moved.Size)+6)*scale, moved.Size*1.3*scale, inkPaper)
				m = moved
			}
			n.words(m, to, scale)
		}
	}
	n.f.ClipEnd()
}

// within moves a text that the left edge would cut to stand inside it, and says whether it did.
func within(m picture.Mark, left float64) (picture.Mark, bool) {
	from, wide := m.X, measure(span{printable(m.Text), m.Bold}, m.Size)
	switch m.Anchor {
	case picture.Middle:
		from -= wide / 2
	case picture.End:
		from -= wide
	}
	if m.Turn != 0 || from >= left || from+wide <= left {
		return m, false
	}
	m.X += left - from + 2
	return m, true
}

// plait draws the plait on pages of its own, cut between rows, with the places' names
// on top of each.
func (d *document) plait() {
	if len(d.plan.Rows) == 0 || d.strip != nil {
		return
	}
	o := plaitOptions(d.layout)
	drawing, g := picture.Draw(d.plan, o), picture.Layout(d.plan, o)
	names, scale := laneNames(drawing, g), d.wide()/drawing.Width
	figure := d.root.add("Figure")
	figure.alt = plaitWords(d.plan)
	for _, s := range cuts(g, (d.height-2*margin-footRoom-24)/scale, names.Height) {
		d.page()
		d.aside(func() {
			d.put(setText([]span{{"The plait: time runs down, each dish is a strand", true}}, 13, d.wide()), d.left(), d.y, mark{Index: -1})
		})
		d.y += 24
		d.in(figure, func() {
			if s.from > 0 {
				d.drawing(names, d.left(), d.y, scale, 0, 0, names.Height)
				d.y += names.Height * scale
			}
			d.drawing(drawing, d.left(), d.y, scale, 0, s.from, s.until)
		})
	}
}

// laneNames is the part of a drawing that names the lanes, for the head of a
// further page.
func laneNames(d *picture.Drawing, g picture.Geometry) *picture.Drawing {
	lanes := map[string]bool{}
	for _, l := range g.Lanes {
		lanes[l.Name] = true
	}
	names := &picture.Drawing{Width: d.Width}
	for _, m := range d.Marks {
		if m.Kind == picture.Text && m.Y < g.Rows[0].Top && lanes[m.Text] {
			names.Marks = append(names.Marks, m)
			names.Height = max(names.Height, m.Y+m.Size)
		}
	}
	return names
}

// plaitWords is the plait's text alternative.
func plaitWords(p *timeplan.Plan) string { return strings.Join(picture.Words(p), " ") }

// slice is a stretch of a drawing.
type slice struct{ from, until float64 }

// cuts cuts a drawing between rows into stretches of at most high. The first
// begins with the names of the lanes; the others begin with the last row of
// the one before, so that what stands across the cut is whole on one of them,
// and leave room for the names.
func cuts(g picture.Geometry, high, names float64) []slice {
	all := []slice{{0, g.Rows[0].Top}}
	for i := range g.Rows {
		end := g.Height
		if i+1 < len(g.Rows) {
			end = g.Rows[i+1].Top
		}
		s := &all[len(all)-1]
		room := high
		if s.from > 0 {
			room -= names
		}
		if i > 0 && end-s.from > room {
			all = append(all, slice{g.Rows[i-1].Top, end})
			continue
		}
		s.until = end
	}
	return all
}
