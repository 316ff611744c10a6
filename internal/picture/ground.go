package picture

import (
	"math"
	"strings"

	"plait.example/internal/colour"
	"plait.example/internal/practical"
	"plait.example/internal/timeplan"
)

// drawGround lays the paper, the hands' lane, rest breaks and guide lines.
func (f *frame) drawGround(d *Drawing) {
	u := f.u
	d.fill(box(0, 0, f.width, f.height, 0), f.ground)
	h := f.handsLane()
	start := f.top
	for _, c := range f.clocks {
		if strings.HasPrefix(c.text, "clock starts") {
			start = c.y
		}
	}
	pad := 6 * u
	if start > f.top {
		d.add(Mark{Path: box(h.left, f.top-pad, h.right, start, 8*u), Fill: unlit})
	}
	d.fill(box(h.left, max(f.top-pad, start), h.right, f.foot+pad, 8*u), lit)
	if f.second > 0 { // between the two cooks
		x := f.columnX(float64(f.second) - 0.5)
		d.stroke([]Move{moveTo(x, f.top), lineTo(x, f.foot)}, colour.Hair, 1.2*u, 1.2*u, 4*u)
	}
	for _, r := range f.rests() {
		d.fill(box(6*u, r.Top+1, f.width-6*u, r.Bottom-1, 6*u), restful)
	}
	for _, r := range f.rows {
		d.stroke([]Move{moveTo(f.clockRight+6*u, r.Middle), lineTo(f.plaitRight+8*u, r.Middle)}, colour.Hair, 0.6)
	}
}

// laneOfSetting is the lane of the oven that a setting is about.
func (f *frame) laneOfSetting(s timeplan.Setting) *lane {
	var first *lane
	for _, l := range f.lanes {
		if l.place != practical.AtOven {
			continue
		}
		if l.oven == s.Oven {
			return l
		}
		if first == nil {
			first = l
		}
	}
	return first
}

// drawOvens draws what each oven stands at: a ramp while it heats or cools, a
// band while it holds, and the setting in words along it.
func (f *frame) drawOvens(d *Drawing) {
	for _, s := range f.plan.Ovens {
		l := f.laneOfSetting(s)
		if l == nil {
			continue
		}
		turned, hot, until := f.yAt(s.Turned), f.yAt(s.Hot), f.yAt(s.Until)
		hot = max(hot, turned)
		if until <= hot {
			continue
		}
		d.open("oven", "", "oven "+s.Words+": turned "+s.Turned.Write(f.plan.Hours)+", hot "+s.Hot.Write(f.plan.Hours)+", until "+s.Until.Write(f.plan.Hours))
		left, right := l.left+2*f.u, l.right-2*f.u
		if hot > turned+1 {
			d.fill([]Move{moveTo(right-3*f.u, turned), lineTo(right, turned), lineTo(right, hot), lineTo(left, hot), closed}, ramp)
			d.stroke([]Move{moveTo(right-3*f.u, turned), lineTo(left, hot)}, warmEdge, 1*f.u, 1.5*f.u, 2.5*f.u)
		}
		d.fill(box(left, hot, right, until, 0), f.warmth())
		d.stroke([]Move{moveTo(right, turned), lineTo(right, until)}, warmEdge, 1.6*f.u)
		d.stroke([]Move{moveTo(left, hot), lineTo(right, hot)}, warmEdge, 1*f.u)
		f.settingWords(d, s, right-5*f.u, hot, until)
		d.close()
	}
}

// settingWords writes a setting along its band, as much of it as fits, where the
// fewest strands run over it.
func (f *frame) settingWords(d *Drawing, s timeplan.Setting, x, top, bottom float64) {
	size := 11.5 * f.u
	for i, text := range settingTexts(s) {
		if i == 0 && textWidth(text, size, true) > bottom-top-8*f.u {
			size = 10.5 * f.u
		}
		n := textWidth(text, size, true)
		if n > bottom-top-8*f.u {
			continue
		}
		best, lowest := top+6*f.u, math.Inf(1)
		for y := best; y+n <= bottom-2*f.u; y += 6 * f.u {
			cost := (y - top) * 0.02
			for _, p := range f.pieces {
				cost += covers(box4{x - size, y - 2, x, y + n + 2}, &p.route.flat)
			}
			if cost < lowest {
				best, lowest = y, cost
			}
		}
		d.add(Mark{Kind: Text, Text: text, X: x - size*0.75 + 1, Y: best, Size: size, Fill: settingInk, Bold: true, Turn: 90})
		return
	}
}

// warmth is the ground of a hot oven; paler on paper, to save toner.
func (f *frame) warmth() string {
	if f.o.Print {
		return ramp
	}
	return warmth
}

const settingInk = "#6B3A12"

// settingTexts is a setting at length and shorter.
func settingTexts(s timeplan.Setting) []string {
	parts := strings.Split(s.Words, ", ")
	var out []string
	for n := len(parts); n > 0; n-- {
		out = append(out, strings.Join(parts[:n], " · "))
	}
	return out
}

// drawHeads names the lanes above the plait and again below it.
func (f *frame) drawHeads(d *Drawing) {
	crowded := f.crowdedHeads()
	for i, l := range f.lanes {
		up := 0.0
		if crowded && i%2 == 1 {
			up = 13 * f.u
		}
		for _, y := range []float64{f.head - up, f.bottom + 22*f.u + up*0.9} {
			switch {
			case l.place != practical.AtHands:
				d.words(l.name, (l.left+l.right)/2, y, headSize*f.u, colour.Soft, false, Middle)
			case f.second > 0:
				last := float64(f.hands - 1)
				d.words("cook 1", f.columnX(float64(f.second-1)/2), y, 11*f.u, colour.Dark, true, Middle)
				d.words("cook 2", f.columnX((float64(f.second)+last)/2), y, 11*f.u, colour.Dark, true, Middle)
			default:
				d.words(l.name, (l.left+l.right)/2, y, headSize*f.u, colour.Dark, true, Middle)
			}
		}
	}
}

// drawLines draws the start and the finish across the plait.
func (f *frame) drawLines(d *Drawing) {
	u := f.u
	for _, c := range f.clocks {
		right := f.width - 12*u
		if f.withWords() {
			n := textWidth(c.text, 12*u, true)
			d.stroke([]Move{moveTo(8*u, c.y), lineTo(f.wordsLeft-8*u, c.y)}, c.ink(), 1.2*u)
			d.stroke([]Move{moveTo(f.wordsLeft+n+8*u, c.y), lineTo(right, c.y)}, c.ink(), 1.2*u)
			continue
		}
		d.stroke([]Move{moveTo(8*u, c.y), lineTo(right, c.y)}, c.ink(), 1.2*u)
	}
}

// drawLineWords says what the lines are: beside the plait where there is room,
// else on it, where the fewest strands are hidden.
func (f *frame) drawLineWords(d *Drawing) {
	u := f.u
	for _, c := range f.clocks {
		x := f.wordsLeft
		if !f.withWords() {
			var b box4
			x, b = f.linePlace(c)
			d.fill(box(b.left, b.top, b.right, b.bottom, 0), f.ground)
		}
		d.words(c.text, x, c.y+4.2*u, 12*u, c.ink(), true, Start)
	}
}

// linePlace finds the place for a line's words, the leftmost of those that are as good.
func (f *frame) linePlace(c clockLine) (x float64, b box4) {
	u := f.u
	wide := textWidth(c.text, 12*u, true)
	lowest := math.Inf(1)
	for at := 8 * u; at == 8*u || at+wide+8*u < f.width; at += 6 * u {
		here := box4{at - 6*u, c.y - 8*u, at + wide + 6*u, c.y + 8*u}
		cost := at * 0.001
		for _, p := range f.pieces {
			cost += covers(here, &p.route.flat)
		}
		if cost < lowest-1e-9 {
			x, b, lowest = at, here, cost
		}
	}
	b.left, b.right = max(b.left, 0), min(b.right, f.width)
	return x, b
}

func (c clockLine) ink() string {
	if c.warn {
		return colour.Warning
	}
	return colour.Dark
}
