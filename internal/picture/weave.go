package picture

import (
	"cmp"
	"math"
	"slices"
)

// flat is a path as short straight pieces, with the way gone at each point.
type flat struct {
	points                   []Point
	way                      []float64
	left, top, right, bottom float64
}

func flatten(path []Move) flat {
	f := flat{left: math.Inf(1), top: math.Inf(1), right: math.Inf(-1), bottom: math.Inf(-1)}
	for _, m := range path {
		if m.Op == 'Z' {
			continue
		}
		if m.Op != 'C' || len(f.points) == 0 {
			f.add(m.To)
			continue
		}
		const steps = 8
		from := f.points[len(f.points)-1]
		for i := 1; i <= steps; i++ {
			t := float64(i) / steps
			s := 1 - t
			a, b, c, d := s*s*s, 3*s*s*t, 3*s*t*t, t*t*t
			f.add(Point{
				a*from.X + b*m.A.X + c*m.B.X + d*m.To.X,
				a*from.Y + b*m.A.Y + c*m.B.Y + d*m.To.Y,
			})
		}
	}
	return f
}

func (f *flat) add(p Point) {
	way := 0.0
	if n := len(f.points); n > 0 {
		last := f.points[n-1]
		way = f.way[n-1] + math.Hypot(p.X-last.X, p.Y-last.Y)
	}
	f.points, f.way = append(f.points, p), append(f.way, way)
	f.left, f.right = min(f.left, p.X), max(f.right, p.X)
	f.top, f.bottom = min(f.top, p.Y), max(f.bottom, p.Y)
}

// length is the whole way.
func (f *flat) length() float64 { return f.way[len(f.way)-1] }

// part is the path between two ways gone.
func (f *flat) part(from, to float64) []Move {
	var path []Move
	for i := 1; i < len(f.points); i++ {
		if f.way[i] <= from || f.way[i-1] >= to || f.way[i] == f.way[i-1] {
			continue
		}
		if len(path) == 0 {
			p := f.between(i, from)
			path = append(path, moveTo(p.X, p.Y))
		}
		p := f.between(i, to)
		path = append(path, lineTo(p.X, p.Y))
	}
	return path
}

// between is the point at a way gone, held to the piece that ends at point i.
func (f *flat) between(i int, way float64) Point {
	t := min(1, max(0, (way-f.way[i-1])/(f.way[i]-f.way[i-1])))
	a, b := f.points[i-1], f.points[i]
	return Point{a.X + t*(b.X-a.X), a.Y + t*(b.Y-a.Y)}
}

// crossing is where two strands cross: their indices, and the way gone on each.
type crossing struct {
	a, b       int
	wayA, wayB float64
	at         Point
	aOver      bool
}

// mostCrossings bounds the work on plans that no kitchen could hold.
const mostCrossings = 4000

// crossings finds where strands cross and says which goes over: along each
// strand by turns, as far as its partners allow. clear is how near to its ends a strand is
// hidden by a mark.
func crossings(pieces []*piece, clear float64) []crossing {
	var found []crossing
	for i, p := range pieces {
		for j := i + 1; j < len(pieces) && len(found) < mostCrossings; j++ {
			a, b := &p.route.flat, &pieces[j].route.flat
			if a.right < b.left || b.right < a.left || a.bottom < b.top || b.bottom < a.top {
				continue
			}
			for _, c := range meet(a, b) {
				if c.wayA < clear || c.wayB < clear || c.wayA > a.length()-clear && p.thread.To >= 0 || c.wayB > b.length()-clear && pieces[j].thread.To >= 0 {
					continue
				}
				c.a, c.b = i, j
				found = append(found, c)
			}
		}
	}
	slices.SortStableFunc(found, func(x, y crossing) int {
		return cmp.Or(cmp.Compare(x.at.Y, y.at.Y), cmp.Compare(x.at.X, y.at.X))
	})
	last := map[int]int{} // 1: it went over last; -1: under
	for i := range found {
		c := &found[i]
		c.aOver = last[c.a] < last[c.b] || last[c.a] == last[c.b] && c.a > c.b
		last[c.a], last[c.b] = 1, -1
		if !c.aOver {
			last[c.a], last[c.b] = -1, 1
		}
	}
	return found
}

// meet finds where two paths cross. Pieces that run along each other do not.
func meet(a, b *flat) (found []crossing) {
	for i := 1; i < len(a.points); i++ {
		p, q := a.points[i-1], a.points[i]
		if max(p.X, q.X) < b.left || min(p.X, q.X) > b.right || max(p.Y, q.Y) < b.top || min(p.Y, q.Y) > b.bottom {
			continue
		}
		for j := 1; j < len(b.points); j++ {
			r, s := b.points[j-1], b.points[j]
			if max(p.X, q.X) < min(r.X, s.X) || max(r.X, s.X) < min(p.X, q.X) || max(p.Y, q.Y) < min(r.Y, s.Y) || max(r.Y, s.Y) < min(p.Y, q.Y) {
				continue
			}
			ax, ay, bx, by := q.X-p.X, q.Y-p.Y, s.X-r.X, s.Y-r.Y
			across := ax*by - ay*bx
			if math.Abs(across) < 0.08*math.Hypot(ax, ay)*math.Hypot(bx, by)+1e-9 {
				continue
			}
			t := ((r.X-p.X)*by - (r.Y-p.Y)*bx) / across
			v := ((r.X-p.X)*ay - (r.Y-p.Y)*ax) / across
			if t < 0 || t >= 1 || v < 0 || v >= 1 {
				continue
			}
			found = append(found, crossing{
				wayA: a.way[i-1] + t*(a.way[i]-a.way[i-1]),
				wayB: b.way[j-1] + v*(b.way[j]-b.way[j-1]),
				at:   Point{p.X + t*ax, p.Y + t*ay},
			})
		}
	}
	return found
}

// reach is how far a patch goes to either side of each crossing: far enough to
// part the strands, but not over the next crossing on the strand that goes over.
func reach(all []crossing, usual float64) []float64 {
	type place struct {
		way   float64
		which int
	}
	along := map[int][]place{}
	for i, c := range all {
		along[c.a] = append(along[c.a], place{c.wayA, i})
		along[c.b] = append(along[c.b], place{c.wayB, i})
	}
	out := make([]float64, len(all))
	for i, c := range all {
		out[i] = usual
		over, way := c.b, c.wayB
		if c.aOver {
			over, way = c.a, c.wayA
		}
		for _, p := range along[over] {
			if d := math.Abs(p.way - way); p.which != i && d < 2*usual {
				out[i] = min(out[i], max(d/2, usual/2.6))
			}
		}
	}
	return out
}
