package picture

import (
	"plait.example/internal/colour"
	"plait.example/internal/timeplan"
)

// frame is where everything stands: the drawing less its marks.
type frame struct {
	plan *timeplan.Plan
	o    Options
	u    float64 // the unit: 1 for letters of the usual size

	ground string // colour of the sheet

	width, height float64
	wordsLeft     float64 // left edge of the rows' words; 0 where they are not drawn
	wordsRight    float64
	clockRight    float64 // where the clock times end
	plaitRight    float64

	key    [][]keyItem // lines of the key of dishes
	keyTop float64
	head   float64 // baseline of the lanes' names above the plait
	top    float64 // the plait begins
	foot   float64 // the last row ends
	bottom float64 // the served strands end

	signsTop float64 // the key of signs, first line

	at, end []int // minutes after midnight of each row, never falling
	rows    []RowBox
	ends    []float64 // where each row's work ends
	lines   [][]string
	clocks  []clockLine
	columns []int // of each row, in the hands' lane
	hands   int   // how many columns the hands' lane has
	second  int   // the second cook's first column; 0 where only one cook has rows

	lanes  []*lane
	pieces []*piece
	dish   map[string]int
}

// box4 is a rectangle on the sheet.
type box4 struct{ left, top, right, bottom float64 }

func (a box4) overlap(b box4) float64 {
	w := min(a.right, b.right) - max(a.left, b.left)
	h := min(a.bottom, b.bottom) - max(a.top, b.top)
	if w <= 0 || h <= 0 {
		return 0
	}
	return w * h
}

const (
	rowHeight  = 30.0 // least height of a row: a line of words, and room for two strands to pass between two marks
	markDrop   = 14.0 // from a row's top to its mark
	lineHeight = 17.0
	wordSize   = 13.5
	smallSize  = 11.5
	wordsFrom  = 560 // least width with the rows' words
	ground     = colour.Paper
)

func newFrame(p *timeplan.Plan, o Options) *frame {
	f := &frame{plan: p, o: o, u: 1, dish: map[string]int{}}
	f.ground = sheetColour(o.Ground)
	if o.Large {
		f.u = 1.33
	}
	f.width = float64(min(max(o.Width, 280), 4000))
	if o.Width <= 0 {
		f.width = 760
	}
	for i, d := range p.Dishes {
		if _, known := f.dish[d.Letter]; !known {
			f.dish[d.Letter] = i
		}
	}
	f.readClock()
	f.chooseColumns()
	f.choosePieces()
	f.subLanes()
	f.across()
	f.chooseThickness()
	f.down()
	f.route()
	return f
}

// sheetColour is the colour asked for where the inks keep their contrast on
// it, else white.
func sheetColour(hex string) string {
	if c, ok := colour.Parse(hex); ok {
		if least, _ := colour.Parse(colour.Ground); c.Luminance() >= least.Luminance() {
			return c.Hex()
		}
	}
	return colour.Paper
}

// narrow says that there is room for little more than strands and letters.
func (f *frame) narrow() bool { return f.width < 480*f.u }

// withWords says whether the rows' words are drawn.
func (f *frame) withWords() bool { return f.o.Rows && f.width >= wordsFrom }

// ink is the ink of a dish by its letter; a dish that the plan does not list
// has neutral ink.
func (f *frame) ink(letter string) colour.DishInk {
	if i, known := f.dish[letter]; known {
		return colour.Ink(i)
	}
	return colour.DishInk{Name: "grey", Line: colour.Soft, On: colour.Paper, Text: colour.Dark, Tint: "#F3F2F0", Shape: colour.Circle}
}

// readClock notes when each row begins and ends. The clock never falls, even
// where a plan's does, and no row lasts longer than a day.
func (f *frame) readClock() {
	const day = 24 * 60
	last := 0
	for _, r := range f.plan.Rows {
		last = min(max(last, int(r.At)), 4*day)
		f.at = append(f.at, last)
		f.end = append(f.end, last+min(max(r.Minutes, 0), day))
	}
}

// chooseColumns gives each row its column in the hands' lane: a cook has one,
// and as many more as rows of that cook overlap.
func (f *frame) chooseColumns() {
	f.columns = make([]int, len(f.plan.Rows))
	next := 0
	for cook := 1; cook <= 2; cook++ {
		var free []int // when each column is free again
		for i, r := range f.plan.Rows {
			if r.Action == timeplan.Rest || cookOf(r) != cook {
				continue
			}
			c := 0
			for c < len(free) && free[c] > f.at[i] {
				c++
			}
			if c == len(free) {
				free = append(free, 0)
			}
			free[c] = max(free[c], f.end[i])
			f.columns[i] = next + min(c, 3)
		}
		if cook == 2 && len(free) > 0 {
			f.second = next
		}
		next += min(len(free), 4)
	}
	f.hands = max(1, next)
}

// cookOf is 1 or 2.
func cookOf(r timeplan.Row) int {
	if r.Cook == 2 {
		return 2
	}
	return 1
}
