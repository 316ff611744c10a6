package picture

// Drawing is a plait as marks on a sheet, back to front.
type Drawing struct {
	Width, Height float64 // CSS pixels; the origin is the upper left corner
	Title, Desc   string
	Marks         []Mark
}

// Kind is what sort of mark it is.
type Kind int

// The kinds of marks.
const (
	Figure Kind = iota // Path, filled or stroked or both
	Text               // Text at X, Y (the baseline)
	Open               // begins a group with a Class, a Row id and a Text for its title
	Close              // ends it
)

// Mark is one thing drawn.
type Mark struct {
	Kind Kind

	Path     []Move
	Fill     string // #RRGGBB; empty: none
	Stroke   string // #RRGGBB; empty: none
	Line     float64
	Dash     []float64 // in pixels
	DashFrom float64   // how far into the dashes the line begins
	Round    bool      // line ends round

	Text   string
	X, Y   float64
	Size   float64
	Bold   bool
	Anchor Anchor
	Turn   float64 // degrees clockwise around X, Y

	Class string
	Row   string // id of the plan's row
}

// Anchor is which part of a text stands at its X.
type Anchor string

// The anchors.
const (
	Start  Anchor = "start"
	Middle Anchor = "middle"
	End    Anchor = "end"
)

// Point is a place on the sheet.
type Point struct{ X, Y float64 }

// Move is a step of a path: To after "M" and "L"; by way of A and B to To after "C"; "Z" closes.
type Move struct {
	Op       byte
	A, B, To Point
}

func moveTo(x, y float64) Move { return Move{Op: 'M', To: Point{x, y}} }
func lineTo(x, y float64) Move { return Move{Op: 'L', To: Point{x, y}} }
func curveTo(ax, ay, bx, by, x, y float64) Move {
	return Move{Op: 'C', A: Point{ax, ay}, B: Point{bx, by}, To: Point{x, y}}
}

var closed = Move{Op: 'Z'}

func (d *Drawing) add(m Mark) { d.Marks = append(d.Marks, m) }

func (d *Drawing) open(class, row, title string) {
	d.add(Mark{Kind: Open, Class: class, Row: row, Text: title})
}

func (d *Drawing) close() { d.add(Mark{Kind: Close}) }

// fill draws a filled shape.
func (d *Drawing) fill(path []Move, colour string) { d.add(Mark{Path: path, Fill: colour}) }

// stroke draws a line.
func (d *Drawing) stroke(path []Move, colour string, line float64, dash ...float64) {
	d.add(Mark{Path: path, Stroke: colour, Line: line, Dash: dash})
}

// words writes text with its baseline at y.
func (d *Drawing) words(text string, x, y, size float64, colour string, bold bool, anchor Anchor) {
	d.add(Mark{Kind: Text, Text: text, X: x, Y: y, Size: size, Fill: colour, Bold: bold, Anchor: anchor})
}

// box is a rectangle with rounded corners.
func box(left, top, right, bottom, r float64) []Move {
	r = max(0, min(r, (right-left)/2, (bottom-top)/2))
	k := r * 0.448 // from the corner to the handle of a quarter circle
	if r == 0 {
		return []Move{moveTo(left, top), lineTo(right, top), lineTo(right, bottom), lineTo(left, bottom), closed}
	}
	return []Move{
		moveTo(left+r, top), lineTo(right-r, top), curveTo(right-k, top, right, top+k, right, top+r),
		lineTo(right, bottom-r), curveTo(right, bottom-k, right-k, bottom, right-r, bottom),
		lineTo(left+r, bottom), curveTo(left+k, bottom, left, bottom-k, left, bottom-r),
		lineTo(left, top+r), curveTo(left, top+k, left+k, top, left+r, top), closed,
	}
}
