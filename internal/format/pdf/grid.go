package pdf

import (
	"cmp"
	"math"
	"slices"
	"sort"

	"plait.example/internal/format/table"
)

// near is how far apart rules may end that belong together, in points.
const near = 3.5

// Part is a stretch of a page: a table that rules show, or the text between two
// of them in lines as in Document.Text.
type Part struct {
	Text  string
	Inked []table.Line // the letters of Text in their order, with their colours
	Table *table.Table
}

// found is a table on a page.
type found struct {
	area
	columns []float64 // where they part, from left to right
	rows    []float64 // where they part, from top to bottom
	table   table.Table
}

// tables finds the tables of a page by its rules, and gives the pieces of text
// that stand in none.
func (p *painter) tables(pieces []piece) (list []found, rest []piece) {
	if len(p.lying)+len(p.stands)+len(p.fills) > maxRules {
		return nil, pieces
	}
	inside := map[int][]piece{}
	list = p.grids()
	for _, w := range pieces {
		at := slices.IndexFunc(list, func(g found) bool { return g.holds((w.left+w.right)/2, w.base+w.size/4) })
		if at < 0 {
			rest = append(rest, w)
			continue
		}
		inside[at] = append(inside[at], w)
	}
	kept := list[:0]
	for i, g := range list {
		if g.fill(p, inside[i]) {
			kept = append(kept, g)
		} else {
			rest = append(rest, inside[i]...)
		}
	}
	slices.SortStableFunc(kept, func(a, b found) int { return cmp.Compare(b.top, a.top) })
	return kept, rest
}

func (a area) holds(x, y float64) bool {
	return x > a.left-1 && x < a.right+1 && y > a.bottom-1 && y < a.top+1
}

// touches says whether two rules meet.
func (a area) touches(b area) bool {
	return a.left < b.right+near && b.left < a.right+near && a.bottom < b.top+near && b.bottom < a.top+near
}

// grids are the sets of rules that hang together and part at least two rows and
// two columns.
func (p *painter) grids() (list []found) {
	rules := slices.Concat(p.lying, p.stands)
	sort.SliceStable(rules, func(i, k int) bool { return rules[i].top > rules[k].top })
	set := make([]int, len(rules)) // 0: in none yet
	for i := range rules {
		if set[i] != 0 {
			continue
		}
		set[i] = i + 1
		var xs, ys []float64
		hull := rules[i]
		for todo := []int{i}; len(todo) > 0; {
			at := rules[todo[len(todo)-1]]
			todo = todo[:len(todo)-1]
			hull = area{min(hull.left, at.left), min(hull.bottom, at.bottom), max(hull.right, at.right), max(hull.top, at.top)}
			if at.right-at.left > at.top-at.bottom {
				ys = append(ys, (at.top+at.bottom)/2)
			} else {
				xs = append(xs, (at.left+at.right)/2)
			}
			for k := range rules {
				if set[k] == 0 && at.touches(rules[k]) {
					set[k] = i + 1
					todo = append(todo, k)
				}
			}
		}
		g := found{area: hull, columns: steps(xs), rows: steps(ys)}
		slices.Reverse(g.rows)
		if len(g.columns) >= 3 && len(g.rows) >= 3 && len(g.columns)*len(g.rows) <= maxRules {
			list = append(list, g)
		}
	}
	return list
}

// steps are positions without those that stand near one before.
func steps(all []float64) (list []float64) {
	slices.Sort(all)
	for _, v := range all {
		if len(list) == 0 || v-list[len(list)-1] > near {
			list = append(list, v)
		}
	}
	return list
}

// fill puts words into the cells. It says no when fewer than two of them have any.
func (g *found) fill(p *painter, pieces []piece) bool {
	columns, rows := len(g.columns)-1, len(g.rows)-1
	words := map[[2]int][]piece{}
	for _, w := range pieces {
		r := slot(g.rows, -1, w.base+w.size/4)
		c := slot(g.columns, 1, (w.left+w.right)/2)
		words[[2]int{r, c}] = append(words[[2]int{r, c}], w)
	}
	taken := map[[2]int]bool{}
	var grid table.Grid
	said := 0
	for r := range rows {
		grid.Row()
		for c := range columns {
			if taken[[2]int{r, c}] {
				continue
			}
			span, down := g.reach(p, r, c)
			var own []piece
			for y := r; y < r+down; y++ {
				for x := c; x < c+span; x++ {
					taken[[2]int{y, x}] = true
					own = append(own, words[[2]int{y, x}]...)
				}
			}
			place := area{g.columns[c], g.rows[r+down], g.columns[c+span], g.rows[r]}
			cell := table.Cell{Span: span, Down: down, Clock: -1, Shade: p.shade(place)}
			cell.Fill(linesIn(own, place))
			if len(cell.Lines) > 0 {
				said++
			}
			grid.Put(c, cell)
		}
	}
	var err error
	g.table.Rows, err = grid.Rows()
	return err == nil && said > 1
}

// slot is the step in which a position lies; sign is -1 where steps go down.
func slot(steps []float64, sign float64, at float64) int {
	for i := 1; i < len(steps)-1; i++ {
		if sign*at < sign*steps[i] {
			return i - 1
		}
	}
	return len(steps) - 2
}

// reach is how far a cell goes to the right and down until a rule ends it.
func (g *found) reach(p *painter, r, c int) (span, down int) {
	span, down = 1, 1
	middle := func(r int) float64 { return (g.rows[r] + g.rows[r+1]) / 2 }
	for c+span < len(g.columns)-1 && !ends(p.stands, g.columns[c+span], middle(r), true) {
		span++
	}
	for r+down < len(g.rows)-1 {
		for x := c; x < c+span; x++ {
			if ends(p.lying, (g.columns[x]+g.columns[x+1])/2, g.rows[r+down], false) {
				return span, down
			}
		}
		down++
	}
	return span, down
}

// ends says whether a rule goes through a point.
func ends(rules []area, x, y float64, stands bool) bool {
	for _, a := range rules {
		if stands && math.Abs((a.left+a.right)/2-x) <= near && y < a.top && y > a.bottom || !stands && math.Abs((a.top+a.bottom)/2-y) <= near && x > a.left && x < a.right {
			return true
		}
	}
	return false
}

// shade is the colour behind a place: the last that was filled there.
func (p *painter) shade(place area) string {
	x, y := (place.left+place.right)/2, (place.bottom+place.top)/2
	for i := len(p.fills) - 1; i >= 0; i-- {
		if f := p.fills[i]; f.holds(x, y) && f.right-f.left > 0.6*(place.right-place.left) && f.top-f.bottom > 0.6*(place.top-place.bottom) {
			return table.Shade(f.shade)
		}
	}
	return ""
}

// linesIn are the lines of a cell. A line whose next word had no room goes on
// with the next.
func linesIn(pieces []piece, place area) []table.Line {
	var list []table.Line
	var last Line
	for i, l := range visual(pieces) {
		if i > 0 && last.Right+0.25*last.Size+l.first > place.right-0.6*last.Size {
			list = flow(list, []table.Line{l.inked})
		} else {
			list = append(list, l.inked)
		}
		last = l
	}
	return list
}
