package pdf

import (
	"cmp"
	"math"
	"slices"
	"sort"
	"strings"

	"plait.example/internal/format/table"
)

// Columns that stand level, without rules.
const (
	level   = 1.5 // how far apart words of a column begin, in points
	wideGap = 0.9 // the gap before a word that may begin a column, in parts of the letters' size
	least   = 3   // rows that a column needs, and columns that a table needs
	ownRow  = 1.6 // a line that stands this far from both neighbours, in sizes, is a row of its own

	maxLetters = 30_000 // of a page on which columns are looked for; a full one has some 6000
)

// word is letters of a row without a gap.
type word struct {
	pieces      []piece
	left, right float64
	gap         float64 // before it, in sizes; infinite before the first
}

// row is a line of a page across all columns.
type row struct {
	words      []word
	base, size float64
}

// levelTables finds tables on a page without rules by words that begin under
// one another, and gives the pieces that stand in none. Edges are those of bands of
// colour behind rows, from top to bottom; nil: there are none.
func levelTables(pieces []piece, edges []float64) (list []found, rest []piece) {
	if len(pieces) > maxLetters {
		return nil, pieces
	}
	rows := wordRows(slices.Clone(pieces))
	columns := columnsOf(rows)
	if len(columns) < least {
		return nil, pieces
	}
	for at := 0; at < len(rows); {
		to := at
		for to < len(rows) && rows[to].fits(columns) {
			to++
		}
		from, end := strip(rows, at, to, columns, edges)
		if t, is := levelTable(rows[from:end], columns, edges); is {
			for _, r := range rows[at:from] {
				rest = r.back(rest)
			}
			list = append(list, t)
			at = end
			continue
		}
		for stop := max(to, at+1); at < stop; at++ {
			rest = rows[at].back(rest)
		}
	}
	if len(list) == 0 {
		return nil, pieces
	}
	return list, rest
}

func (r row) back(rest []piece) []piece {
	for _, w := range r.words {
		rest = append(rest, w.pieces...)
	}
	return rest
}

// wordRows puts pieces in rows of words.
func wordRows(pieces []piece) (rows []row) {
	from := 0
	for _, to := range inRows(pieces) {
		var r row
		for _, p := range pieces[from:to] {
			if strings.TrimSpace(p.text) == "" {
				continue
			}
			gap := math.Inf(1)
			if n := len(r.words); n > 0 {
				gap = (p.left - r.words[n-1].right) / max(p.size, 1)
			}
			if gap < wordGap {
				last := &r.words[len(r.words)-1]
				last.pieces, last.right = append(last.pieces, p), max(last.right, p.right)
				continue
			}
			r.words = append(r.words, word{[]piece{p}, p.left, p.right, gap})
			r.base, r.size = p.base, max(r.size, p.size)
		}
		from = to
		if len(r.words) > 0 {
			rows = append(rows, r)
		}
	}
	return rows
}

// columnsOf are where words begin in several rows, with a gap before them.
func columnsOf(rows []row) (columns []float64) {
	var lefts []float64
	for _, r := range rows {
		for _, w := range r.words {
			if w.gap > wideGap {
				lefts = append(lefts, w.left)
			}
		}
	}
	slices.Sort(lefts)
	for i := 0; i < len(lefts); {
		k := i
		for k < len(lefts) && lefts[k]-lefts[i] < level {
			k++
		}
		if k-i >= least && (len(columns) == 0 || lefts[i]-columns[len(columns)-1] > 8) {
			columns = append(columns, lefts[i])
		}
		i = k
	}
	return columns
}

// split gives the words of a row to the columns; a word belongs to a column
// from where it begins at its edge to where another does.
func (r row) split(columns []float64) [][]word {
	cells := make([][]word, len(columns))
	at := 0
	for _, w := range r.words {
		for c := at; c < len(columns); c++ {
			if math.Abs(w.left-columns[c]) < level {
				at = c
			}
		}
		cells[at] = append(cells[at], w)
	}
	return cells
}

// fits says whether a row may be one of a table: its first column does not run
// into the second.
func (r row) fits(columns []float64) bool {
	cells := r.split(columns)
	if first := cells[0]; len(first) > 0 {
		return first[0].left > columns[0]-level && first[len(first)-1].right < columns[1]
	}
	return true
}

// touched is how many columns a row has words in.
func (r row) touched(columns []float64) (n int) {
	for _, c := range r.split(columns) {
		if len(c) > 0 {
			n++
		}
	}
	return n
}

// strip leaves out rows at both ends that have words in the first column alone,
// but for the first line of a band.
func strip(rows []row, from, to int, columns, edges []float64) (int, int) {
	banded := func(i int) bool {
		band := bandOf(edges, rows[i])
		return band > 0 && i+1 < to && bandOf(edges, rows[i+1]) == band
	}
	for from < to && rows[from].touched(columns) < 2 && !banded(from) {
		from++
	}
	for to > from && rows[to-1].touched(columns) < 2 && len(rows[to-1].split(columns)[0]) > 0 {
		to--
	}
	return from, to
}

// levelTable makes a table of rows, when enough of them have words in enough columns.
func levelTable(rows []row, columns, edges []float64) (t found, is bool) {
	if len(rows) < least {
		return t, false
	}
	wide := 0
	t.columns = columns
	t.area = area{columns[0], rows[len(rows)-1].base, math.Inf(1), rows[0].base + rows[0].size}
	var grid table.Grid
	for _, group := range grouped(rows, columns, edges) {
		grid.Row()
		cells := make([][]piece, len(columns))
		edges := make([]float64, len(columns))
		for _, r := range group {
			for c, words := range r.split(columns) {
				for _, w := range words {
					cells[c] = append(cells[c], w.pieces...)
					edges[c] = max(edges[c], w.right)
				}
			}
		}
		said := 0
		for c, pieces := range cells {
			right := edges[c] + 2
			if c+1 < len(columns) {
				right = max(right, columns[c+1]-3)
			}
			cell := table.Cell{Span: 1, Down: 1, Clock: -1}
			cell.Fill(linesIn(pieces, area{left: columns[c], right: right}))
			if len(cell.Lines) > 0 {
				said++
			}
			grid.Put(c, cell)
		}
		if said >= least {
			wide++
		}
	}
	var err error
	t.table.Rows, err = grid.Rows()
	return t, err == nil && wide >= least
}

// grouped puts lines that are one row of the table together: one begins where
// the first or second column has words; other lines go with the nearer of their
// neighbours. Where bands show the rows, they decide.
func grouped(rows []row, columns, edges []float64) (groups [][]row) {
	down := false // the line goes with the one below
	for i, r := range rows {
		if band := bandOf(edges, r); band > 0 {
			if i > 0 && bandOf(edges, rows[i-1]) == band {
				groups[len(groups)-1] = append(groups[len(groups)-1], r)
			} else {
				groups = append(groups, []row{r})
			}
			down = false
			continue
		}
		up, below := math.Inf(1), math.Inf(1)
		if i > 0 {
			up = rows[i-1].base - r.base
		}
		if i+1 < len(rows) {
			below = r.base - rows[i+1].base
		}
		cells := r.split(columns)
		begins := len(cells[0]) > 0 || len(cells[1]) > 0 || min(up, below) > ownRow*r.size
		joins := down || !begins && up <= below*1.05
		if joins && len(groups) > 0 {
			last := len(groups) - 1
			groups[last] = append(groups[last], r)
		} else {
			groups = append(groups, []row{r})
		}
		down = !begins && cmp.Compare(up, below*1.05) > 0 && !math.IsInf(below, 1)
	}
	return groups
}

// Bands of colour behind rows.
const (
	fewestBands = 3   // that show how a table is cut into rows
	tallest     = 200 // points that a row may take
	share       = 0.5 // of the words' width that a band covers
)

// bands are the edges of bands of colour behind rows that leave no more than a row
// between two of them, from top to bottom; nil when there are too few.
func (p *painter) bands(pieces []piece) (edges []float64) {
	if len(p.fills) > maxRules || len(pieces) == 0 {
		return nil
	}
	left, right := math.Inf(1), math.Inf(-1)
	for _, w := range pieces {
		left, right = min(left, w.left), max(right, w.right)
	}
	wide := map[[2]int]float64{} // of what is filled between two heights, in half points
	for _, f := range p.fills {
		if high := f.top - f.bottom; high > 6 && high < tallest {
			wide[[2]int{int(2 * f.top), int(2 * f.bottom)}] += f.right - f.left
		}
	}
	many := 0
	for at, w := range wide {
		if w >= share*(right-left) {
			many++
			edges = append(edges, float64(at[0])/2, float64(at[1])/2)
		}
	}
	if many < fewestBands {
		return nil
	}
	edges = steps(edges)
	slices.Reverse(edges)
	return edges
}

// bandOf is between which edges a row stands, from 1; 0: it is beyond them.
func bandOf(edges []float64, r row) int {
	middle := r.base + r.size/3
	n := sort.Search(len(edges), func(i int) bool { return edges[i] < middle })
	if n == len(edges) {
		return 0
	}
	return n
}
