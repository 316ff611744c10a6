package picture

import "plait.example/internal/colour"

// Outline is the outline of a dish's mark around (x, y), about as large as a
// circle of radius r. A letter's middle belongs at Drop below y.
func Outline(s colour.Shape, x, y, r float64) []Move {
	switch s {
	case colour.Square:
		a := r * 0.92
		return box(x-a, y-a, x+a, y+a, r*0.18)
	case colour.Triangle:
		return polygon(x, y, r, 0, -1.36, 1.38, 0.92, -1.38, 0.92)
	case colour.Diamond:
		return polygon(x, y, r, 0, -1.24, 1.24, 0, 0, 1.24, -1.24, 0)
	case colour.Hexagon:
		return polygon(x, y, r, -0.56, -0.96, 0.56, -0.96, 1.12, 0, 0.56, 0.96, -0.56, 0.96, -1.12, 0)
	case colour.Shield:
		return polygon(x, y, r, -0.98, -0.98, 0.98, -0.98, 0.98, 0.3, 0, 1.22, -0.98, 0.3)
	case colour.Cross:
		const a, b = 0.5, 1.16
		return polygon(x, y, r, -a, -b, a, -b, a, -a, b, -a, b, a, a, a, a, b, -a, b, -a, a, -b, a, -b, -a, -a, -a)
	case colour.Dome:
		k := r * 0.5523
		top, foot := y-r*1.0, y+r*0.9
		return []Move{
			moveTo(x-r, foot), lineTo(x-r, y), curveTo(x-r, y-k, x-k, top, x, top),
			curveTo(x+k, top, x+r, y-k, x+r, y), lineTo(x+r, foot), closed,
		}
	}
	return circle(x, y, r)
}

// Drop is how far below the middle of a shape its letter stands, in radii.
func Drop(s colour.Shape) float64 {
	switch s {
	case colour.Triangle:
		return 0.26
	case colour.Shield:
		return -0.1
	case colour.Dome:
		return 0.08
	}
	return 0
}

func circle(x, y, r float64) []Move { return box(x-r, y-r, x+r, y+r, r) }

// polygon joins corners given in radii around (x, y).
func polygon(x, y, r float64, corners ...float64) []Move {
	var path []Move
	for i := 0; i+1 < len(corners); i += 2 {
		path = append(path, lineTo(x+r*corners[i], y+r*corners[i+1]))
	}
	path[0].Op = 'M'
	return append(path, closed)
}

// badge draws a dish's mark with its letter.
func (f *frame) badge(d *Drawing, ink colour.DishInk, letter string, x, y, r float64) {
	shape := Outline(ink.Shape, x, y, r)
	d.add(Mark{Path: shape, Fill: ink.Line, Stroke: colour.Paper, Line: 1.6 * f.u})
	letter = clip(letter, 2)
	size := r * 1.3
	if ink.Shape == colour.Triangle || ink.Shape == colour.Cross {
		size = r * 1.2
	}
	if n := textWidth(letter, size, true); n > r*1.5 {
		size *= r * 1.5 / n
	}
	d.words(letter, x, y+Drop(ink.Shape)*r+size*0.345, size, ink.On, true, Middle)
}
