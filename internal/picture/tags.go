package picture

import (
	"cmp"
	"math"
	"slices"

	"plait.example/internal/colour"
	"plait.example/internal/practical"
)

// drawTags hangs a tag on every strand that waits: until when, and how many minutes.
func (f *frame) drawTags(d *Drawing) {
	var taken []box4
	for _, p := range f.tagged() {
		lines := f.tagLines(p)
		wide, tall := f.tagSize(lines)
		at := f.tagPlace(p, wide, tall, taken)
		taken = append(taken, at)
		ink := f.ink(p.thread.Dish)
		d.open("wait", "", f.pieceWords(p))
		d.add(Mark{Path: box(at.left, at.top, at.right, at.bottom, 4*f.u), Fill: colour.Paper, Stroke: ink.Line, Line: 1.2 * f.u})
		for i, s := range lines {
			d.words(s, (at.left+at.right)/2, at.top+(float64(i)*12+12)*f.u, tagText*f.u, ink.Text, s == f.clock(p.wait.Until) || i == 0 && len(s) > 5, Middle)
		}
		d.close()
	}
}

// tagged is the strands that wait, the shortest first: their tags have the
// least choice of places.
func (f *frame) tagged() (pieces []*piece) {
	for _, p := range f.pieces {
		if p.wait != nil && p.lane != nil && p.thread.To >= 0 {
			pieces = append(pieces, p)
		}
	}
	slices.SortStableFunc(pieces, func(a, b *piece) int {
		return cmp.Compare(a.route.bottom-a.route.top, b.route.bottom-b.route.top)
	})
	return pieces
}

const tagText = 10.5

// tagSize is how large a tag is.
func (f *frame) tagSize(lines []string) (wide, tall float64) {
	for _, s := range lines {
		wide = max(wide, textWidth(s, tagText*f.u, true))
	}
	return wide + 9*f.u, (float64(len(lines))*12 + 5) * f.u
}

func (f *frame) clock(t practical.TimeOfDay) string { return t.Write(f.plan.Hours) }

// tagLines is what a tag says. Where there is little room the word "until" has a line of its own.
func (f *frame) tagLines(p *piece) []string {
	lines := []string{"until " + f.clock(p.wait.Until)}
	if f.narrow() {
		lines = []string{"until", f.clock(p.wait.Until)}
	}
	lines = append(lines, shortMinutes(int(p.wait.Until-p.wait.From)))
	switch p.wait.Attention {
	case practical.Look:
		if p.wait.Every > 0 && !f.narrow() {
			lines = append(lines, "look every "+itoa(p.wait.Every))
		}
	case practical.Stay:
		if f.narrow() {
			return append(lines, "stay")
		}
		lines = append(lines, "stay with it")
	}
	return lines
}

// tagPlace finds the place along a strand where a tag covers least, the
// earliest of those that are as good.
func (f *frame) tagPlace(p *piece, wide, tall float64, taken []box4) box4 {
	h := f.handsLane()
	least, most := f.clockRight+4*f.u, h.left+4*f.u-wide
	if p.lane.rightOfHands() {
		least, most = h.right-4*f.u, f.plaitRight-wide
		if p.lane.place == practical.AtOven {
			most = p.lane.right - gutter*f.u - wide
		}
	}
	left := min(max(p.x-wide/2, least), max(most, least))
	from, to := p.route.top+2*f.u, p.route.bottom-tall-2*f.u
	if to < from {
		from = (p.route.top + p.route.bottom - tall) / 2
		to = from
	}
	best, lowest := box4{}, math.Inf(1)
	for y := from; y <= to+0.01; y += 3 * f.u {
		b := box4{left, y, left + wide, y + tall}
		cost := 0.0
		for _, t := range taken {
			cost += 40 * b.overlap(box4{t.left - 2, t.top - 2, t.right + 2, t.bottom + 2})
		}
		for _, i := range f.o.Breaks {
			if i >= 0 && i < len(f.rows) && b.top < f.rows[i].Top && b.bottom > f.rows[i].Top {
				cost += 10000
			}
		}
		for _, q := range f.pieces {
			if q != p {
				cost += covers(b, &q.route.flat)
			}
		}
		cost += (y - from) * 0.1 / f.u
		if cost < lowest-1e-6 {
			best, lowest = b, cost
		}
	}
	return best
}

// covers is how much of a strand a box hides; bends and ways across count more
// than a straight run, which the eye carries on.
func covers(b box4, f *flat) float64 {
	if f.right < b.left || f.left > b.right || f.bottom < b.top || f.top > b.bottom {
		return 0
	}
	cost := 0.0
	for i := 1; i < len(f.points); i++ {
		p, q := f.points[i-1], f.points[i]
		if max(p.X, q.X) < b.left || min(p.X, q.X) > b.right || max(p.Y, q.Y) < b.top || min(p.Y, q.Y) > b.bottom {
			continue
		}
		if p.X == q.X {
			cost += 1 * (min(max(p.Y, q.Y), b.bottom) - max(min(p.Y, q.Y), b.top))
			continue
		}
		cost += 60
	}
	return cost
}
