package picture

import "math"

// route is the way of a piece's strand, with what its straight run down the
// lane is.
type route struct {
	path        []Move
	top, bottom float64 // of the run down the lane
	flat        flat
}

// route gives every piece its way: down from its row's mark to the end of the work, across to its
// lane, down, and back across to the row that takes it up.
func (f *frame) route() {
	for _, p := range f.pieces {
		x0 := f.handsX(p.thread.From)
		y0, leave := f.rows[p.thread.From].Middle, f.ends[p.thread.From]
		x1, y1, arrive := x0, f.bottom, f.bottom
		if p.thread.To >= 0 {
			x1, y1, arrive = f.handsX(p.thread.To), f.rows[p.thread.To].Middle, f.rows[p.thread.To].Top
		}
		switch {
		case p.lane == nil:
			p.route = f.inHands(p, x0, y0, x1, y1)
		case p.thread.To < 0:
			p.route = f.away(p.x, x0, y0, leave, f.bottom)
		default:
			p.route = f.there(p.x, x0, y0, min(leave, max(arrive, y0+8*f.u)), x1, y1, arrive)
		}
		p.route.flat = flatten(p.route.path)
	}
}

// half is half the gap between the strand that leaves at a time and the one
// that comes at the same time; slant is how far a strand falls on its way across.
func (f *frame) half() float64  { return 4.4 * f.u }
func (f *frame) slant() float64 { return 1.6 * f.u }

// there is a way out to a lane at x and back.
func (f *frame) there(x, x0, y0, leave, x1, y1, arrive float64) route {
	out, back := leave-f.half(), arrive+f.half()
	if back < out+2*f.slant()+2 { // no time in between: a short hook
		back = out + 2*f.slant() + 2
	}
	r := min(9*f.u, (back-out-f.slant())/2)
	path := []Move{moveTo(x0, y0)}
	path = across(path, x0, out, x, out+f.slant(), min(9*f.u, max(out-y0, 1)), r)
	path = across(path, x, back-f.slant(), x1, back, r, min(9*f.u, max(y1-back, 1)))
	if y1 > path[len(path)-1].To.Y+0.05 {
		path = append(path, lineTo(x1, y1))
	}
	return route{path: path, top: out + f.slant() + r, bottom: back - f.slant() - r}
}

// away is a way out that does not come back.
func (f *frame) away(x, x0, y0, leave, bottom float64) route {
	out := leave - f.half()
	r := 9 * f.u
	path := across([]Move{moveTo(x0, y0)}, x0, out, x, out+f.slant(), min(r, max(out-y0, 1)), r)
	if end := path[len(path)-1].To.Y; bottom > end {
		path = append(path, lineTo(x, bottom))
	}
	return route{path: path, top: out + r, bottom: bottom}
}

// across adds a way from (x0, y0) to (x1, y1): down, round a corner of radius
// r0, across, round a corner of radius r1 and down again.
func across(path []Move, x0, y0, x1, y1, r0, r1 float64) []Move {
	side := 1.0
	if x1 < x0 {
		side = -1
	}
	if math.Abs(x1-x0) < r0+r1 { // no room for two corners: one gentle bend
		from, to := y0-r0, y1+r1
		middle := (from + to) / 2
		return append(path, lineTo(x0, from), curveTo(x0, middle, x1, middle, x1, to))
	}
	const k = 0.5523 // handles of a quarter circle
	slope := (y1 - y0) / (x1 - x0)
	ay, by := y0+side*r0*slope, y1-side*r1*slope
	return append(path,
		lineTo(x0, y0-r0),
		curveTo(x0, y0-r0*(1-k), x0+side*r0*(1-k), ay-side*r0*k*slope, x0+side*r0, ay),
		lineTo(x1-side*r1, by),
		curveTo(x1-side*r1*(1-k), by+side*r1*k*slope, x1, y1+r1*(1-k), x1, y1+r1))
}

// inHands is a way that stays in the hands: straight on, across to another
// cook, or round the marks that stand between.
func (f *frame) inHands(p *piece, x0, y0, x1, y1 float64) route {
	if math.Abs(x1-x0) > 1 {
		m := f.rows[p.thread.To].Top
		d := min(11*f.u, (y1-y0)/2)
		return route{path: []Move{moveTo(x0, y0), lineTo(x0, m-d), curveTo(x0, m, x1, m, x1, m+d), lineTo(x1, y1)}, top: y0, bottom: y1}
	}
	for i := p.thread.From + 1; i < p.thread.To; i++ {
		if f.columns[i] == f.columns[p.thread.From] {
			return f.there(x0+15*f.u, x0, y0, f.rows[p.thread.From].Bottom, x1, y1, f.rows[p.thread.To].Top)
		}
	}
	return route{path: []Move{moveTo(x0, y0), lineTo(x1, y1)}, top: y0, bottom: y1}
}
