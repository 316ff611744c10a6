package picture

import (
	"strings"

	"plait.example/internal/colour"
	"plait.example/internal/practical"
	"plait.example/internal/timeplan"
)

// drawRows writes the clock time of every row and, where there is room, its words.
func (f *frame) drawRows(d *Drawing) {
	u := f.u
	size := wordSize * u
	colon := f.clockRight - textWidth("00", size, true) - 1
	for i, r := range f.plan.Rows {
		y := f.rows[i].Middle + 4.7*u
		again := i > 0 && f.plan.Rows[i-1].Clock == r.Clock
		ink := colour.Dark
		if again {
			ink = colour.Soft
		}
		hours, mins, _ := strings.Cut(r.Clock.Write(f.plan.Hours), ":")
		d.words(hours+":", colon, y, size, ink, !again, End)
		d.words(mins, colon, y, size, ink, !again, Start)
		if r.Pinned {
			f.pin(d, 8*u, f.rows[i].Middle)
		}
		if f.withWords() {
			f.rowText(d, i, r, y)
		}
	}
}

// rowText writes a row's words in its dish's ink, and its minutes.
func (f *frame) rowText(d *Drawing, i int, r timeplan.Row, y float64) {
	u := f.u
	ink := colour.Dark
	switch {
	case r.Dish != "":
		ink = f.ink(r.Dish).Text
	case r.Action == timeplan.WashUp || r.Action == timeplan.Rest:
		ink = colour.Soft
	}
	d.open("words", r.ID, "")
	for n, line := range f.lines[i] {
		d.words(line, f.wordsLeft, y+float64(n)*lineHeight*u, wordSize*u, ink, false, Start)
	}
	said := ""
	if r.Minutes > 0 {
		said = shortMinutes(r.Minutes)
	}
	if f.second > 0 && r.Action != timeplan.Rest {
		said = strings.TrimSuffix("cook "+itoa(cookOf(r))+" · "+said, " · ")
	}
	d.words(said, f.wordsRight, y, smallSize*u, colour.Soft, false, End)
	d.close()
}

// pin marks a row that is held to its time.
func (f *frame) pin(d *Drawing, x, y float64) {
	u := f.u
	d.add(Mark{Path: []Move{moveTo(x, y), lineTo(x, y+6*u)}, Stroke: colour.Soft, Line: 1.4 * u, Round: true})
	d.fill(circle(x, y-2*u, 3.2*u), colour.Soft)
}

// drawKey writes the title and names the dishes with their marks.
func (f *frame) drawKey(d *Drawing) {
	u := f.u
	if f.plan.Title != "" {
		d.words(ellipsisTo(f.plan.Title, 17*u, f.width-28*u), 14*u, 27*u, 17*u, colour.Dark, true, Start)
	}
	for n, line := range f.key {
		y := f.keyTop + (float64(n)*26+14)*u
		for _, item := range line {
			ink := colour.Ink(item.dish)
			path := []Move{moveTo(item.x-6*u, y), lineTo(item.x+24*u, y)}
			d.stroke(path, ink.Line, 6*u)
			f.pattern(d, ink.Pattern, path, 6*u, 0)
			f.badge(d, ink, f.plan.Dishes[item.dish].Letter, item.x+9*u, y, markSize*u)
			d.words(item.name, item.x+29*u, y+4.6*u, 13*u, ink.Text, false, Start)
		}
	}
}

// sign is an entry of the key of signs.
type sign struct {
	name string
	draw func(x, y float64)
}

// drawSigns explains, below the plait, the signs that it holds.
func (f *frame) drawSigns(d *Drawing) {
	u := f.u
	x, y := 14*u, f.signsTop
	for _, s := range f.signs(d) {
		wide := 34*u + textWidth(s.name, smallSize*u, false)
		if x > 14*u && x+wide > f.width-6*u {
			x, y = 14*u, y+20*u
		}
		s.draw(x+12*u, y)
		d.words(s.name, x+29*u, y+4*u, smallSize*u, colour.Soft, false, Start)
		x += wide + 14*u
	}
}

// signs are the signs that the plan holds.
func (f *frame) signs(d *Drawing) (signs []sign) {
	u := f.u
	strand := func(line float64) func(x, y float64) {
		return func(x, y float64) { d.stroke([]Move{moveTo(x-12*u, y), lineTo(x+12*u, y)}, colour.Soft, line*u) }
	}
	seen := map[string]bool{}
	note := func(name string, draw func(x, y float64)) {
		if !seen[name] {
			seen[name] = true
			signs = append(signs, sign{name, draw})
		}
	}
	for _, p := range f.pieces {
		if p.wait != nil && p.lane != nil {
			note("waits", strand(6))
		}
	}
	for _, p := range f.pieces {
		if p.wait == nil && p.lane != nil && p.thread.To >= 0 {
			note("stands ready", strand(4.4))
		}
	}
	for _, p := range f.pieces {
		if p.wait != nil && p.wait.Every > 0 && p.lane != nil {
			note("look at it", func(x, y float64) {
				strand(6)(x, y)
				d.stroke([]Move{moveTo(x, y-6*u), lineTo(x, y+6*u)}, colour.Soft, 2.2*u)
			})
		}
	}
	for _, p := range f.pieces {
		if p.wait != nil && p.wait.Attention == practical.Stay && p.thread.To >= 0 {
			note("stay with it", func(x, y float64) {
				d.add(Mark{Path: box(x-10*u, y-7*u, x+10*u, y+7*u, 5*u), Stroke: colour.Soft, Line: 1.2 * u, Dash: []float64{3 * u, 3 * u}})
			})
		}
	}
	for _, r := range f.plan.Rows {
		switch {
		case r.Pinned:
			note("pinned", func(x, y float64) { f.pin(d, x, y) })
		case r.Dish != "":
		case r.Action == timeplan.WashUp:
			note("wash up, wipe down", func(x, y float64) { f.washMark(d, x, y) })
		case r.Action == timeplan.TurnTo:
			note("turn the oven", func(x, y float64) { f.knob(d, x, y) })
		}
	}
	return signs
}

// ellipsisTo is the text, or as much of it as fits.
func ellipsisTo(s string, size, width float64) string {
	if lines := wrap(s, size, true, width, 1); len(lines) > 0 {
		return lines[0]
	}
	return ""
}
