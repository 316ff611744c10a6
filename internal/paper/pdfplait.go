package paper

import (
	"strings"

	"plait.example/internal/picture"
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

// drawing draws the part of a drawing between two heights, its upper left corner at (x, y).
func (n *pen) drawing(d *picture.Drawing, x, y, scale, from, until float64) {
	to := func(p picture.Point) (float64, float64) { return x + p.X*scale, y + (p.Y-from)*scale }
	n.f.ClipRect(x, y, d.Width*scale, (until-from)*scale, false)
	for _, m := range d.Marks {
		switch m.Kind {
		case picture.Figure:
			n.path(m, to, scale)
		case picture.Text:
			n.words(m, to, scale)
		}
	}
	n.f.ClipEnd()
}

// plait draws the plait on pages of its own, cut between rows, with the places' names
// on top of each.
func (d *document) plait() {
	if len(d.plan.Rows) == 0 {
		return
	}
	o := plaitOptions(d.layout)
	drawing, g := picture.Draw(d.plan, o), picture.Layout(d.plan, o)
	scale := d.wide() / drawing.Width
	figure := d.root.add("Figure")
	figure.alt = strings.Join(picture.Words(d.plan), " ")
	for _, s := range cuts(g, (d.height-2*margin-footRoom-24)/scale) {
		d.page()
		d.aside(func() {
			d.put(setText([]span{{"The plait: time runs down, each dish is a strand", true}}, 13, d.wide()), d.left(), d.y, mark{Index: -1})
		})
		d.y += 24
		head := g.Rows[0].Top
		d.in(figure, func() {
			if s.from > 0 {
				d.drawing(drawing, d.left(), d.y, scale, 0, head)
				d.y += head * scale
			}
			d.drawing(drawing, d.left(), d.y, scale, s.from, s.until)
		})
	}
}

// slice is a stretch of a drawing.
type slice struct{ from, until float64 }

// cuts cuts a drawing between rows into stretches of at most high; the
// first begins with the names of the places, which the others repeat.
func cuts(g picture.Geometry, high float64) []slice {
	head := g.Rows[0].Top
	all := []slice{{0, 0}}
	for i, r := range g.Rows {
		end := r.Bottom
		if i+1 < len(g.Rows) {
			end = g.Rows[i+1].Top
		} else {
			end = g.Height
		}
		s := &all[len(all)-1]
		room := high
		if s.from > 0 {
			room -= head
		}
		if i > 0 && end-s.from > room && s.until > s.from {
			all = append(all, slice{s.until, end})
			continue
		}
		s.until = end
	}
	return all
}
