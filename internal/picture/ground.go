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
	d.fill(box(0, 0, f.width, f.height, 0), ground)
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
	for _, text := range settingTexts(s) {
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
		x, size := (l.left+l.right)/2, headSize*f.u
		colourOf, bold := colour.Soft, false
		if l.place == practical.AtHands {
			colourOf, bold = colour.Dark, true
		}
		up := 0.0
		if crowded && i%2 == 1 {
			up = 13 * f.u
		}
		d.words(l.name, x, f.head-up, size, colourOf, bold, Middle)
		d.words(l.name, x, f.bottom+22*f.u+up*0.9, size, colourOf, bold, Middle)
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

// drawLineWords says what the lines are: beside the plait where there is room, else on it.
func (f *frame) drawLineWords(d *Drawing) {
	u := f.u
	for _, c := range f.clocks {
		x := f.wordsLeft
		if !f.withWords() {
			x = 8 * u
			n := textWidth(c.text, 12*u, true)
			d.fill(box(0, c.y-8*u, x+n+6*u, c.y+8*u, 0), ground)
		}
		d.words(c.text, x, c.y+4.2*u, 12*u, c.ink(), true, Start)
	}
}

func (c clockLine) ink() string {
	if c.warn {
		return colour.Warning
	}
	return colour.Dark
}
