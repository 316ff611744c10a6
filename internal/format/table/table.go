// Package table holds tables as documents show them: rows of cells of inked
// words. It knows no file format and nothing of what the words say.
package table

import "strings"

// Table is a grid as a person sees it: every row has the same number of cells,
// one for each column of the grid. A cell that spans others stands at their
// upper left corner, and those that it covers are there, empty, with Down 0.
type Table struct {
	Rows   [][]Cell
	Header int    // leading rows that are repeated as header, 0 if not marked
	Name   string // of the sheet, or the caption
}

// Cell is one place of the grid.
type Cell struct {
	Lines   []Line
	Shade   string // RRGGBB behind the cell, "" none
	Span    int    // columns that it takes, at least 1
	Down    int    // rows that it takes, at least 1; 0: another cell covers this one, which has no lines
	Clock   int    // minutes since midnight when the cell is a spreadsheet's time; -1 otherwise
	Checked bool   // it is a box, or holds one, that is ticked
}

// Line is a line of text in pieces.
type Line []Piece

// Piece is words in one ink.
type Piece struct {
	Text, Ink, Shade     string // colours are RRGGBB in capitals, "" for none or the usual
	Bold, Italic, Struck bool
}

// Block is a line of text or a table, in the order of the document.
type Block struct {
	Line    Line
	Heading int    // 1 to 9; 0: it is no heading
	Item    string // number or bullet of a list item, "" when it is none
	Table   *Table // nil: a line
}

// Text is the cell's lines, joined by line ends.
func (c Cell) Text() string {
	lines := make([]string, len(c.Lines))
	for i, l := range c.Lines {
		lines[i] = l.Text()
	}
	return strings.Join(lines, "\n")
}

// Text is the line's words without their ink, the struck ones too.
func (l Line) Text() string {
	if len(l) == 1 {
		return l[0].Text
	}
	var b strings.Builder
	for _, p := range l {
		b.WriteString(p.Text)
	}
	return b.String()
}
