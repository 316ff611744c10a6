package written

import (
	"regexp"
	"strings"
	"unicode"

	"plait.example/internal/format/table"
)

// grid is a table with the place of the cell that covers each of its places.
type grid struct {
	rows  [][]table.Cell
	owner [][][2]int // row and column of the cell that stands there
	width int
	head  int // leading rows that the document repeats as header
}

func newGrid(t *table.Table) *grid {
	g := &grid{rows: t.Rows, head: t.Header}
	for _, row := range t.Rows {
		g.width = max(g.width, len(row))
	}
	g.owner = make([][][2]int, len(t.Rows))
	for r := range g.owner {
		g.owner[r] = make([][2]int, g.width)
		for c := range g.owner[r] {
			g.owner[r][c] = [2]int{r, c}
		}
	}
	for r, row := range t.Rows {
		for c, cell := range row {
			if cell.Down > 0 {
				g.cover(r, c, cell)
			}
		}
	}
	return g
}

func (g *grid) cover(r, c int, cell table.Cell) {
	for i := r; i < min(r+cell.Down, len(g.rows)); i++ {
		for k := c; k < min(c+max(cell.Span, 1), g.width); k++ {
			g.owner[i][k] = [2]int{r, c}
		}
	}
}

// cell is the cell that begins at a place; a place without has an empty one.
func (g *grid) cell(r, c int) table.Cell {
	if r < 0 || r >= len(g.rows) || c < 0 || c >= len(g.rows[r]) {
		return table.Cell{Clock: -1}
	}
	return g.rows[r][c]
}

// over is the cell that stands over a place, and whether it begins in that row.
func (g *grid) over(r, c int) (cell table.Cell, here bool) {
	if c < 0 || c >= g.width {
		return table.Cell{Clock: -1}, true
	}
	at := g.owner[r][c]
	return g.cell(at[0], at[1]), at[0] == r
}

// words is what stands in the cell that begins at a place, without what is struck out.
func (g *grid) words(r, c int) string { return plain(g.cell(r, c)) }

// plain is a cell's text on lines, without what is struck out.
func plain(c table.Cell) string {
	lines := make([]string, 0, len(c.Lines))
	for _, l := range c.Lines {
		lines = append(lines, strings.TrimSpace(kept(l)))
	}
	return strings.TrimSpace(strings.Join(lines, "\n"))
}

// kept is a line without what is struck out.
func kept(l table.Line) string {
	var b strings.Builder
	for _, p := range l {
		if !p.Struck {
			b.WriteString(p.Text)
		}
	}
	return b.String()
}

// struck is what is struck out in a cell.
func struck(lines []table.Line) string {
	var parts []string
	for _, l := range lines {
		for _, p := range l {
			if p.Struck && strings.TrimSpace(p.Text) != "" {
				parts = append(parts, strings.TrimSpace(p.Text))
			}
		}
	}
	return strings.Join(parts, " ")
}

// filled are the columns of a row in which a cell with words begins.
func (g *grid) filled(r int) (columns []int) {
	for c := range g.rows[r] {
		if g.words(r, c) != "" {
			columns = append(columns, c)
		}
	}
	return columns
}

// line is a row as one line, for what is no row of the plan; everything that
// begins in it is there.
func (g *grid) line(r int) string {
	var parts []string
	for _, c := range g.rows[r] {
		if t := strings.TrimSpace(c.Text()); t != "" {
			parts = append(parts, t)
		}
	}
	return strings.Join(parts, " | ")
}

// same says whether two rows hold the same words.
func (g *grid) same(a, b int) bool {
	for c := range g.width {
		if !strings.EqualFold(g.words(a, c), g.words(b, c)) {
			return false
		}
	}
	return true
}

// bold says whether all the words of a cell are bold.
func bold(c table.Cell) bool {
	any := false
	for _, l := range c.Lines {
		for _, p := range l {
			if strings.TrimSpace(p.Text) != "" {
				if !p.Bold {
					return false
				}
				any = true
			}
		}
	}
	return any
}

// stampOf reads a cell as a time: a spreadsheet's own, or its words.
func stampOf(c table.Cell) (stamp, bool) {
	if c.Clock >= 0 && len(c.Lines) > 0 {
		return stamp{kind: clock, times: hoursOf(c.Clock/60, "", []option{{at: c.Clock % 60}}), last: -1}, true
	}
	text := plain(c)
	if st, ok := readStamp(strings.ReplaceAll(text, "\n", " ")); ok {
		return st, true
	}
	if st, ok := pastOnly(text); ok {
		return st, true
	}
	st, _, ok := leading(text, true)
	return st, ok
}

// leading reads the time at the head of a text and gives what follows it. Only
// in a column of times may it be a length or digits alone.
func leading(text string, inColumn bool) (st stamp, rest string, ok bool) {
	if !beginsTime(text) {
		return stamp{}, text, false
	}
	cuts := cutsOf(text)
	for i := len(cuts) - 1; i >= 0; i-- {
		head, tail := text[:cuts[i]], text[cuts[i]:]
		st, ok = readStamp(head)
		if !ok || !inColumn && st.kind != clock && !compact(st, head) {
			continue
		}
		if (!inColumn || st.kind == digits) && measured.MatchString(strings.ToLower(tail)) {
			continue
		}
		return st, strings.TrimLeft(tail, " \t\u00A0\n-–—:;,.)]|~>→*•"), true
	}
	return stamp{}, text, false
}

// measured are units: a number before them is no time.
var measured = regexp.MustCompile(`^\s*(?:g|kg|ml|l|litres?|oz|lb|tsp|tbsp|°|º|deg|degrees|c|f|fan|x|%|eggs?|tins?|cm|mm|inch|p)\b|^\s*[°º%]`)

// compact says whether the digits are a time without a sign between, such as 0905.
func compact(st stamp, head string) bool {
	return st.kind == digits && len(st.times) > 0 && st.number >= 600 && len(strings.Trim(head, " \t-–—:;,.()[]|")) >= 3
}

// cutsOf are the places at which a time at the head of the text may end.
func cutsOf(text string) (cuts []int) {
	var before rune
	for i, r := range text {
		if i > longestStamp {
			return cuts
		}
		figure := r >= '0' && r <= '9'
		switch {
		case i == 0 || figure && strings.ContainsRune(":.;", before):
		case strings.ContainsRune(" \t\n\u00A0-–—:;,)]|~>→*•", r), before == '.', strings.ContainsRune("-–—:)|", before),
			unicode.IsLetter(r) && before >= '0' && before <= '9':
			cuts = append(cuts, i)
		}
		before = r
	}
	return append(cuts, len(text))
}
