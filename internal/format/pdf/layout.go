package pdf

import (
	"cmp"
	"math"
	"slices"
	"strings"
	"unicode/utf8"

	"plait.example/internal/format/table"
)

// Gaps, in parts of the letters' size.
const (
	wordGap   = 0.17 // from here on letters belong to two words
	tabGap    = 1.5  // from here on words stand apart, as in a table
	sameLine  = 0.45 // base lines nearer than this are one
	backwards = 1.0  // a letter that begins so far left of the last begins a line
)

// layout puts pieces in lines. Programs draw text in the order of reading, with
// columns one after the other, so their order stands; only when it jumps up the
// page all the time the lines are sorted by place.
func layout(pieces []piece) []Line {
	lines := gather(pieces)
	jumps := 0
	for i := 1; i < len(lines); i++ {
		if lines[i].Base > lines[i-1].Base+lines[i].Size*sameLine {
			jumps++
		}
	}
	if jumps > 4 && jumps*3 > len(lines) {
		slices.SortStableFunc(pieces, func(a, b piece) int {
			if row := math.Floor(b.base/4) - math.Floor(a.base/4); row != 0 {
				return int(row)
			}
			return int(math.Copysign(math.Ceil(math.Abs(a.left-b.left)), a.left-b.left))
		})
		lines = gather(pieces)
	}
	return lines
}

// visual puts pieces in lines by their place on the page.
func visual(pieces []piece) []Line {
	inRows(pieces)
	return gather(pieces)
}

// inRows sorts pieces from top to bottom and in a row from left to right, and
// gives where rows end.
func inRows(pieces []piece) (ends []int) {
	slices.SortStableFunc(pieces, func(a, b piece) int { return cmp.Compare(b.base, a.base) })
	for from := 0; from < len(pieces); {
		to := from + 1
		for to < len(pieces) && pieces[from].base-pieces[to].base < sameLine*max(pieces[from].size, pieces[to].size) {
			to++
		}
		slices.SortStableFunc(pieces[from:to], func(a, b piece) int { return cmp.Compare(a.left, b.left) })
		from = to
		ends = append(ends, to)
	}
	return ends
}

// gather joins pieces that follow one another on one base line.
func gather(pieces []piece) (lines []Line) {
	var b builder
	for _, p := range pieces {
		if b.open && !b.continues(p) {
			lines = b.close(lines)
		}
		b.add(p)
	}
	return b.close(lines)
}

// longLine is the length in bytes at which a line is cut off.
const longLine = 1 << 16

// builder is a line that is being put together.
type builder struct {
	open bool
	text strings.Builder
	gap  byte // what parts the next piece from the last: a space, a tab, or nothing (0)
	line Line
	last piece
	size map[float64]int // letters of each size
}

// continues says whether a piece goes on with the line: on its base line, or
// raised or lowered by less than its letters are high.
func (b *builder) continues(p piece) bool {
	size := max(p.size, b.last.size)
	near := math.Abs(p.base-b.last.base) < sameLine*size || math.Abs(p.base-b.line.Base) < sameLine*size
	return near && p.left > b.last.right-backwards*size
}

func (b *builder) add(p piece) {
	if strings.TrimSpace(p.text) == "" {
		if b.open { // a space that is drawn: the gap to the next letter tells how wide
			b.gap = ' '
			b.last.right = max(b.last.right, p.right)
		}
		return
	}
	if !b.open {
		*b = builder{open: true, size: map[float64]int{}, line: Line{Left: p.left, Right: p.right, Base: p.base}, last: p}
	} else if gap := p.left - b.last.right; gap > tabGap*p.size {
		b.gap = '\t'
	} else if gap > wordGap*p.size && b.gap == 0 {
		b.gap = ' '
	}
	if b.text.Len() < longLine {
		if b.gap != 0 {
			b.text.WriteByte(b.gap)
		}
		b.text.WriteString(p.text)
		b.line.inked = b.line.inked.Join(table.Piece{Text: b.gapped(p.text), Ink: table.Ink(p.ink)})
	}
	b.gap = 0
	b.size[math.Round(p.size*10)/10] += utf8.RuneCountInString(p.text)
	b.line.Left, b.line.Right = min(b.line.Left, p.left), max(b.line.Right, p.right)
	b.last = p
}

// gapped is a piece's text with the gap before it.
func (b *builder) gapped(text string) string {
	if b.gap != 0 {
		return string(b.gap) + text
	}
	return text
}

// close ends the line and adds it to the list.
func (b *builder) close(lines []Line) []Line {
	if !b.open {
		return lines
	}
	l := b.line
	l.Text = strings.TrimSpace(b.text.String())
	most := 0
	for size, n := range b.size {
		if n > most || n == most && size > l.Size {
			most, l.Size = n, size
		}
	}
	word, _, _ := strings.Cut(l.Text, " ")
	if n := utf8.RuneCountInString(l.Text); n > 0 {
		l.first = (l.Right - l.Left) * float64(utf8.RuneCountInString(word)) / float64(n)
	}
	b.open = false
	return append(lines, l)
}
