package picture

import (
	"math"

	"plait.example/internal/colour"
	"plait.example/internal/timeplan"
)

// drawStrands draws every piece, then each crossing anew with one strand over the other.
func (f *frame) drawStrands(d *Drawing) {
	for _, p := range f.pieces {
		d.open("strand", f.plan.Rows[p.thread.From].ID, f.pieceWords(p))
		f.strand(d, p, p.route.path, 0)
		f.looks(d, p)
		d.close()
	}
	all := crossings(f.pieces, 9*f.u)
	reaches := reach(all, 7*f.u)
	d.open("crossings", "", "")
	for i, c := range all {
		p, way := f.pieces[c.b], c.wayB
		if c.aOver {
			p, way = f.pieces[c.a], c.wayA
		}
		from := max(0, way-reaches[i])
		// The strand is drawn a little farther than the gap beside it, so that
		// no seam shows.
		d.stroke(p.route.flat.part(from, way+reaches[i]), f.groundAt(c.at), p.line+3*f.u)
		from = max(0, from-1.5*f.u)
		f.strand(d, p, p.route.flat.part(from, way+reaches[i]+1.5*f.u), from)
	}
	d.close()
}

// strand draws a line of the dish's ink with its pattern. from is how far along the
// strand the path begins, so that the pattern goes on.
func (f *frame) strand(d *Drawing, p *piece, path []Move, from float64) {
	ink := f.ink(p.thread.Dish)
	d.stroke(path, ink.Line, p.line)
	f.pattern(d, ink.Pattern, path, p.line, from)
}

// pattern draws the pale core of a strand.
func (f *frame) pattern(d *Drawing, pat colour.Pattern, path []Move, line, from float64) {
	if pat.Width == 0 {
		return
	}
	m := Mark{Path: path, Stroke: f.ground, Line: pat.Width * line, Round: pat.Round}
	if pat.Width >= 1 {
		m.Line = line + 0.6 // no coloured edge is left beside a bar
	}
	total := 0.0
	for _, v := range pat.Dash {
		// A dash of no length with round ends is a dot; some writers drop it.
		m.Dash = append(m.Dash, max(v*line, 0.1))
		total += max(v*line, 0.1)
	}
	if total > 0 {
		m.DashFrom = math.Mod(from, total)
	}
	d.add(m)
}

// looks draws a small bar across a strand at each time when its food needs a look.
func (f *frame) looks(d *Drawing, p *piece) {
	if p.wait == nil || p.wait.Every <= 0 || p.lane == nil {
		return
	}
	ink := f.ink(p.thread.Dish)
	for n, t := 0, int(p.wait.From)+p.wait.Every; t < int(p.wait.Until) && n < 60; n, t = n+1, t+p.wait.Every {
		y := f.yOf(t)
		if y < p.route.top || y > p.route.bottom {
			continue
		}
		d.stroke([]Move{moveTo(p.x-6*f.u, y), lineTo(p.x+6*f.u, y)}, ink.Line, 2.2*f.u)
	}
}

// groundAt is the colour of the ground at a place.
func (f *frame) groundAt(at Point) string {
	for _, r := range f.rests() {
		if at.Y > r.Top && at.Y < r.Bottom {
			return restful
		}
	}
	for _, l := range f.lanes {
		if at.X < l.left || at.X > l.right {
			continue
		}
		for _, s := range f.plan.Ovens {
			if f.laneOfSetting(s) == l && at.Y > f.yAt(s.Hot) && at.Y < f.yAt(s.Until) {
				return f.warmth()
			}
		}
	}
	if h := f.handsLane(); at.X > h.left && at.X < h.right {
		return lit
	}
	return f.ground
}

// rests is where the rest breaks stand.
func (f *frame) rests() (boxes []RowBox) {
	for i, r := range f.plan.Rows {
		if r.Action == timeplan.Rest {
			boxes = append(boxes, f.rows[i])
		}
	}
	return boxes
}
