package pdf

import (
	"math"

	"plait.example/internal/format/table"
)

// Sizes of what is drawn, in points.
const (
	thin     = 2.6    // what is no thicker is a rule
	maxRules = 2000   // rules and areas of a page; a drawing has more, and no table is looked for in it
	maxPath  = 20_000 // points of one path
)

// area is a rectangle on the page.
type area struct{ left, bottom, right, top float64 }

// fill is an area in a colour.
type fill struct {
	area
	shade string // RRGGBB
}

// painter keeps the rules and filled areas of a page, by which tables show.
type painter struct {
	path   [][]point // the parts of the path that is being made
	points int
	curved bool
	lying  []area // rules from left to right
	stands []area // rules from top to bottom
	fills  []fill
}

type point struct{ x, y float64 }

// paint runs an operator of Annex A that makes or paints a path or sets the
// colour of fills. Colours are those of the device (8.6.4); others are read by
// the number of their parts.
func (in *interpreter) paint(op keyword, args []any) {
	switch op {
	case "m":
		in.begin(in.at(args))
	case "l":
		in.line(in.at(args))
	case "re":
		x, y, w, h := in.number(args, 3), in.number(args, 2), in.number(args, 1), in.number(args, 0)
		in.begin(in.place(x, y))
		in.line(in.place(x+w, y))
		in.line(in.place(x+w, y+h))
		in.line(in.place(x, y+h))
		in.line(in.place(x, y))
	case "h":
		if n := len(in.painter.path); n > 0 {
			in.line(in.painter.path[n-1][0])
		}
	case "c", "v", "y":
		in.painter.curved = true
	case "f", "F", "f*":
		in.painted(true, false)
	case "S", "s":
		in.painted(false, true)
	case "B", "B*", "b", "b*":
		in.painted(true, true)
	case "n":
		in.painted(false, false)
	case "g", "rg", "k", "sc", "scn":
		if shade := in.colour(args); shade != "" {
			in.state.ink = shade
		}
	case "cs":
		in.state.ink = ""
	}
}

// place is where a point stands on the page.
func (in *interpreter) place(x, y float64) point {
	m := matrix{1, 0, 0, 1, x, y}.times(in.state.ctm)
	return point{m[4], m[5]}
}

func (in *interpreter) at(args []any) point {
	return in.place(in.number(args, 1), in.number(args, 0))
}

func (in *interpreter) begin(p point) {
	if in.painter.points++; in.painter.points < maxPath {
		in.painter.path = append(in.painter.path, []point{p})
	}
}

func (in *interpreter) line(p point) {
	n := len(in.painter.path)
	if in.painter.points++; n > 0 && in.painter.points < maxPath {
		in.painter.path[n-1] = append(in.painter.path[n-1], p)
	}
}

// painted ends the path and keeps what is upright in it.
func (in *interpreter) painted(filled, stroked bool) {
	p := &in.painter
	for _, points := range p.path {
		if p.curved || len(p.lying)+len(p.stands)+len(p.fills) > maxRules {
			break
		}
		if filled {
			in.filled(points)
		}
		if !stroked {
			continue
		}
		for i := 1; i < len(points); i++ {
			p.rule(around(points[i-1 : i+1]))
		}
	}
	p.path, p.points, p.curved = p.path[:0], 0, false
}

func around(points []point) area {
	a := area{points[0].x, points[0].y, points[0].x, points[0].y}
	for _, p := range points {
		a = area{min(a.left, p.x), min(a.bottom, p.y), max(a.right, p.x), max(a.top, p.y)}
	}
	return a
}

// filled keeps an upright rectangle as a rule when it is thin, else as an area.
func (in *interpreter) filled(points []point) {
	for i := 1; i < len(points); i++ {
		wide, high := math.Abs(points[i].x-points[i-1].x), math.Abs(points[i].y-points[i-1].y)
		if wide > 0.5 && high > 0.5 && max(wide, high) > thin { // borders may be mitred
			return
		}
	}
	a := around(points)
	if !in.painter.rule(a) && a.right-a.left > thin && a.top-a.bottom > thin {
		in.painter.fills = append(in.painter.fills, fill{a, in.state.ink})
	}
}

// rule keeps an area that is as thin as a rule, and says whether it is.
func (p *painter) rule(a area) bool {
	wide, high := a.right-a.left, a.top-a.bottom
	switch {
	case math.IsNaN(wide+high) || math.IsInf(wide+high, 0):
		return true
	case high <= thin && wide > 2*thin:
		p.lying = append(p.lying, a)
	case wide <= thin && high > thin:
		p.stands = append(p.stands, a)
	default:
		return wide <= thin && high <= thin
	}
	return true
}

// colour is RRGGBB of the operands, "" when there are none; black is "000000".
func (in *interpreter) colour(args []any) string {
	var parts []float64
	for _, a := range args {
		if f, is := a.(float64); is {
			parts = append(parts, min(max(f, 0), 1))
		}
	}
	switch len(parts) {
	case 1:
		return shadeOf(parts[0], parts[0], parts[0])
	case 3:
		return shadeOf(parts[0], parts[1], parts[2])
	case 4:
		return shadeOf((1-parts[0])*(1-parts[3]), (1-parts[1])*(1-parts[3]), (1-parts[2])*(1-parts[3]))
	}
	return ""
}

func shadeOf(r, g, b float64) string {
	const digits = "0123456789ABCDEF"
	var s [6]byte
	for i, v := range []float64{r, g, b} {
		n := int(math.Round(v * 255))
		s[2*i], s[2*i+1] = digits[n>>4], digits[n&15]
	}
	return table.Colour(string(s[:]))
}
