package picture

import (
	"math"
	"strings"

	"plait.example/internal/colour"
	"plait.example/internal/practical"
	"plait.example/internal/timeplan"
)

// clockLine is a line across the plait at a time: the start, the finish.
type clockLine struct {
	y    float64
	text string
	warn bool
}

// keyItem is a dish in the key.
type keyItem struct {
	dish int
	x    float64
	name string
}

// down sets everything that stands one below another. The clock is stretched
// where little happens for long, but never as much as a ruler would: a row takes its words'
// lines or more, and grows with the square root of its minutes.
func (f *frame) down() {
	u := f.u
	y := 10 * u
	if !f.o.Bare {
		y = f.layKey(y)
	}
	f.head = y + 14*u
	if f.crowdedHeads() {
		f.head += 13 * u
	}
	y = f.head + 12*u
	f.top = y
	f.wrapRows()
	rows := f.plan.Rows
	startAt, finishAt := f.lineBefore(f.plan.Start), f.lineBefore(f.plan.Finish)
	if startAt > 0 {
		y = f.clockLine(y, "set-up from "+f.plan.SetUp.Write(f.plan.Hours), false)
	}
	for i := range rows {
		if i == startAt {
			y = f.clockLine(y, "clock starts "+f.plan.Start.Write(f.plan.Hours), false)
		}
		if i == finishAt && i > startAt {
			y = f.clockLine(y, f.finishWords(), f.late())
		}
		height := f.rowHeight(i)
		f.rows = append(f.rows, RowBox{Top: y, Middle: y + markDrop*u, Bottom: y + height})
		y += height
	}
	f.foot = y
	if len(rows) > 0 && (finishAt <= startAt || finishAt < 0) {
		y = f.clockLine(y, f.finishWords(), f.late())
	}
	f.bottom = y + 4*u
	f.signsTop = f.bottom + 52*u
	f.height = math.Ceil(f.bottom + 36*u)
	if f.crowdedHeads() {
		f.signsTop, f.height = f.signsTop+11*u, f.height+11*u
	}
	if lines := f.signLines(); lines > 0 && !f.o.Bare {
		f.height = math.Ceil(f.signsTop + 20*u*float64(lines) - 4*u)
	}
	f.ends = make([]float64, len(rows))
	for i := range rows {
		f.ends[i] = max(f.endOf(i), f.rows[i].Top+(rowHeight-3)*u)
	}
}

// lineBefore is the first row at or after a time, if rows stand before it;
// else -1.
func (f *frame) lineBefore(t practical.TimeOfDay) int {
	for i := range f.at {
		if f.at[i] >= int(t) {
			if i == 0 {
				return -1
			}
			return i
		}
	}
	return -1
}

func (f *frame) clockLine(y float64, text string, warn bool) float64 {
	f.clocks = append(f.clocks, clockLine{y + 13*f.u, text, warn})
	return y + 26*f.u
}

func (f *frame) late() bool { return f.plan.Over > 0 || f.plan.Finish > f.plan.Allowed }

// finishWords says when the plan ends and what is in hand.
func (f *frame) finishWords() string {
	p := f.plan
	s := "finish " + p.Finish.Write(p.Hours)
	switch spare := int(p.Allowed - p.Finish); {
	case p.Over > 0:
		return s + ", " + minutes(p.Over) + " over"
	case spare < 0:
		return s + ", " + minutes(-spare) + " over"
	case spare > 0:
		return s + ", " + minutes(spare) + " in hand"
	}
	return s
}

// wrapRows breaks the rows' words into lines.
func (f *frame) wrapRows() {
	n := len(f.plan.Rows)
	f.lines = make([][]string, n)
	if !f.withWords() {
		return
	}
	beside := 52 * f.u // minutes, and whose
	if f.second > 0 {
		beside = 98 * f.u
	}
	width := max(60, f.wordsRight-f.wordsLeft-beside)
	for i, r := range f.plan.Rows {
		f.lines[i] = wrap(rowWords(r), wordSize*f.u, false, width, 8)
	}
}

// rowWords is what a row says: its text, and its setting where the text names no temperature.
func rowWords(r timeplan.Row) string {
	if r.Setting == "" || strings.Contains(r.Text, "°C") {
		return r.Text
	}
	return strings.TrimRight(r.Text, ". ") + " (" + r.Setting + ")"
}

// rowHeight is the height of row i.
func (f *frame) rowHeight(i int) float64 {
	next := f.end[i]
	if i+1 < len(f.at) {
		next = f.at[i+1]
	}
	gap := float64(max(0, next-f.at[i]))
	least := rowHeight + 8*max(0, math.Sqrt(gap)-1)
	least = max(least, lineHeight*float64(len(f.lines[i]))+13)
	if i < len(f.o.Heights) && f.o.Heights[i] < 10000 {
		return max(least*f.u, f.o.Heights[i])
	}
	return least * f.u
}

// endOf is where row i's work ends: where the first later row begins that is
// not before its end, or between two rows.
func (f *frame) endOf(i int) float64 {
	for j := i + 1; j < len(f.rows); j++ {
		if f.at[j] < f.end[i] {
			continue
		}
		if f.at[j] == f.end[i] || f.at[j] == f.at[j-1] {
			return f.rows[j-1].Bottom
		}
		share := float64(f.end[i]-f.at[j-1]) / float64(f.at[j]-f.at[j-1])
		return f.rows[j-1].Top + share*(f.rows[j-1].Bottom-f.rows[j-1].Top)
	}
	return f.foot
}

// yAt is where a time stands on the drawing's clock.
func (f *frame) yAt(t practical.TimeOfDay) float64 { return f.yOf(int(t)) }

// yOf is yAt for minutes after midnight.
func (f *frame) yOf(t int) float64 {
	if len(f.rows) == 0 || t < f.at[0] {
		return f.top
	}
	last := 0
	for last+1 < len(f.at) && f.at[last+1] <= t {
		last++
	}
	next := f.end[last]
	if last+1 < len(f.at) {
		next = f.at[last+1]
	}
	box := f.rows[last]
	if next <= f.at[last] {
		return box.Top
	}
	return box.Top + min(1, float64(t-f.at[last])/float64(next-f.at[last]))*(box.Bottom-box.Top)
}

// layKey lays out the title and the key of dishes and returns where they end.
func (f *frame) layKey(y float64) float64 {
	u := f.u
	if f.plan.Title != "" {
		y += 24 * u
	}
	f.keyTop = y
	x := 16 * u
	var line []keyItem
	for i, d := range f.plan.Dishes {
		name := ellipsisTo(d.Name, 13*u, f.width-60*u)
		wide := 30*u + textWidth(name, 13*u, false)
		if len(line) > 0 && x+wide > f.width-10*u {
			f.key = append(f.key, line)
			line, x = nil, 16*u
		}
		line = append(line, keyItem{i, x, name})
		x += wide + 20*u
	}
	if len(line) > 0 {
		f.key = append(f.key, line)
	}
	return y + 26*u*float64(len(f.key)) + 4*u
}

// signLines is how many lines the key of signs takes.
func (f *frame) signLines() int {
	u := f.u
	lines, x := 0, math.Inf(1)
	for _, s := range f.signs(nil) {
		wide := 34*u + textWidth(s.name, smallSize*u, false)
		if x > 14*u && x+wide > f.width-6*u {
			x, lines = 14*u, lines+1
		}
		x += wide + 14*u
	}
	return lines
}

// crowdedHeads says whether the lanes' names need two lines.
func (f *frame) crowdedHeads() bool {
	last := -1.0
	for _, l := range f.lanes {
		half := textWidth(l.name, headSize*f.u, true)/2 + 2*f.u
		middle := (l.left + l.right) / 2
		if middle-half < last {
			return true
		}
		last = middle + half
	}
	return false
}

const headSize = 12.0

// Colours of the grounds under the strands. None is darker than colour.Ground,
// so the inks keep their contrast.
const (
	lit      = colour.Ground
	unlit    = "#F7F6F3"
	warmth   = "#FBEFE4"
	ramp     = "#FDF6EF"
	warmEdge = "#D8A877"
	restful  = "#EEF2F4"
)
