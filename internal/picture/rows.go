package picture

import (
	"strings"

	"plait.example/internal/colour"
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
	if r.Minutes > 0 {
		d.words(shortMinutes(r.Minutes), f.wordsRight, y, smallSize*u, colour.Soft, false, End)
	}
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
			d.stroke(path, ink.Line, 5*u)
			pattern(d, ink.Pattern, path, 5*u, 0)
			f.badge(d, ink, f.plan.Dishes[item.dish].Letter, item.x+9*u, y, markSize*u)
			d.words(item.name, item.x+29*u, y+4.6*u, 13*u, ink.Text, false, Start)
		}
	}
}

// ellipsisTo is the text, or as much of it as fits.
func ellipsisTo(s string, size, width float64) string {
	if lines := wrap(s, size, true, width, 1); len(lines) > 0 {
		return lines[0]
	}
	return ""
}
