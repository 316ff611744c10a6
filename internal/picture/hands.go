package picture

import (
	"plait.example/internal/colour"
	"plait.example/internal/practical"
	"plait.example/internal/timeplan"
)

const markSize = 9.6 // radius of a row's mark

// drawHands draws how long the hands are at each row.
func (f *frame) drawHands(d *Drawing) {
	half := 14 * f.u
	for i, r := range f.plan.Rows {
		if r.Action == timeplan.Rest || f.end[i] == f.at[i] {
			continue
		}
		ink := f.ink(r.Dish)
		fill, edge := ink.Tint, colour.Mix(colour.Paper, ink.Line, 0.38)
		if r.Dish == "" {
			fill, edge = colour.Paper, colour.Hair
		}
		if f.o.Print {
			fill = colour.Paper
		}
		x := f.handsX(i)
		d.add(Mark{Path: box(x-half, f.rows[i].Top+1, x+half, max(f.ends[i], f.rows[i].Top+20)-1, 7*f.u), Fill: fill, Stroke: edge, Line: 0.8 * f.u})
	}
}

// drawWatches draws, in the hands' lane, the waits that must not be left: the
// hands are empty, but not free.
func (f *frame) drawWatches(d *Drawing) {
	half := 14 * f.u
	for _, p := range f.pieces {
		if p.wait == nil || p.wait.Attention != practical.Stay || p.thread.To < 0 {
			continue
		}
		from, until := f.ends[p.thread.From], f.rows[p.thread.To].Top
		if until < from+8*f.u {
			continue
		}
		ink, x := f.ink(p.thread.Dish), f.handsX(p.thread.From)
		d.open("watch", f.plan.Rows[p.thread.From].ID, f.pieceWords(p))
		d.add(Mark{
			Path: box(x-half, from+1, x+half, until-1, 7*f.u), Fill: ink.Tint,
			Stroke: ink.Line, Line: 1.2 * f.u, Dash: []float64{3 * f.u, 3 * f.u},
		})
		d.close()
	}
}

// drawNodes draws the rows' marks in the hands' lane, and the served dishes' at the foot.
func (f *frame) drawNodes(d *Drawing) {
	for i, r := range f.plan.Rows {
		x, y := f.handsX(i), f.rows[i].Middle
		d.open("row", r.ID, rowTitle(f.plan, r))
		switch {
		case r.Action == timeplan.Rest:
			f.restMark(d, f.rows[i])
		case r.Dish != "":
			f.badge(d, f.ink(r.Dish), r.Dish, x, y, markSize*f.u)
		case r.Action == timeplan.WashUp:
			f.washMark(d, x, y)
		case r.Action == timeplan.TurnTo:
			f.dial(d, r, x, y)
		default:
			d.add(Mark{Path: circle(x, y, 5*f.u), Fill: colour.Paper, Stroke: colour.Soft, Line: 2.4 * f.u})
		}
		d.close()
	}
	for _, p := range f.pieces {
		if p.thread.To < 0 {
			f.badge(d, f.ink(p.thread.Dish), p.thread.Dish, p.x, f.bottom, markSize*0.8*f.u)
		}
	}
}

// washMark is a basin with water in it.
func (f *frame) washMark(d *Drawing, x, y float64) {
	u := f.u
	d.fill(box(x-11*u, y-4*u, x+11*u, y+4*u, 4*u), colour.Soft)
	d.add(Mark{Path: []Move{
		moveTo(x-6*u, y), curveTo(x-4*u, y-3*u, x-2*u, y-3*u, x, y), curveTo(x+2*u, y+3*u, x+4*u, y+3*u, x+6*u, y),
	}, Stroke: colour.Paper, Line: 1.3 * u, Round: true})
}

// dial is the knob of an oven.
func (f *frame) dial(d *Drawing, r timeplan.Row, x, y float64) {
	u := f.u
	if l := f.laneOfSetting(timeplan.Setting{Oven: r.Oven}); l != nil {
		d.stroke([]Move{moveTo(x, y), lineTo(l.right-3*u, y)}, warmEdge, 1.6*u, 1.5*u, 3*u)
	}
	f.knob(d, x, y)
}

func (f *frame) knob(d *Drawing, x, y float64) {
	u := f.u
	d.add(Mark{Path: circle(x, y, 7*u), Fill: colour.Paper, Stroke: colour.Soft, Line: 2.2 * u})
	d.add(Mark{Path: []Move{moveTo(x, y), lineTo(x+3.4*u, y-3.8*u)}, Stroke: colour.Soft, Line: 2.2 * u, Round: true})
}

// restMark is two quiet bars.
func (f *frame) restMark(d *Drawing, b RowBox) {
	h, u := f.handsLane(), f.u
	x := (h.left + h.right) / 2
	for _, dx := range []float64{-4, 4} {
		d.fill(box(x+dx*u-1.7*u, b.Middle-6*u, x+dx*u+1.7*u, b.Middle+6*u, 1.7*u), colour.Soft)
	}
}

// clash is two rows in one cook's hands at once.
type clash struct{ a, b int }

// clashes finds rows of one cook that overlap.
func clashes(p *timeplan.Plan) (found []clash) {
	busy := [3]int{-1, -1, -1} // of each cook, the row that ends last
	for i, r := range p.Rows {
		if r.Minutes <= 0 || r.Action == timeplan.Rest {
			continue
		}
		c := cookOf(r)
		if j := busy[c]; j >= 0 && p.Rows[j].End() > r.At {
			found = append(found, clash{j, i})
		}
		if j := busy[c]; j < 0 || r.End() > p.Rows[j].End() {
			busy[c] = i
		}
	}
	return found
}

// drawClashes rings what overlaps in the hands' lane; rings that touch are one.
func (f *frame) drawClashes(d *Drawing) {
	h, u := f.handsLane(), f.u
	var rings []box4
	for _, c := range clashes(f.plan) {
		top := f.rows[c.b].Top
		bottom := max(min(f.ends[c.a], f.ends[c.b]), top+24*u)
		d.open("clash", f.plan.Rows[c.b].ID, clashWords(f.plan, c))
		d.close()
		if n := len(rings); n > 0 && top <= rings[n-1].bottom+4*u {
			rings[n-1].bottom = max(rings[n-1].bottom, bottom)
			continue
		}
		rings = append(rings, box4{h.left + 1.5*u, top, h.right - 1.5*u, bottom})
	}
	for _, r := range rings {
		d.stroke(box(r.left, r.top, r.right, r.bottom, 7*u), colour.Warning, 2.2*u)
		f.clashSign(d, r)
	}
}

// clashSign hangs the word on a ring.
func (f *frame) clashSign(d *Drawing, r box4) {
	u := f.u
	const text = "! clash"
	wide := textWidth(text, 11*u, true) + 12*u
	x := min(r.right-10*u, f.width-wide-4*u)
	d.add(Mark{Path: box(x, r.top-9*u, x+wide, r.top+8*u, 4*u), Fill: colour.Warning, Stroke: colour.Paper, Line: 1.4 * u})
	d.words(text, x+wide/2, r.top+3.6*u, 11*u, colour.Paper, true, Middle)
}
