package table

import (
	"strconv"
	"strings"
)

// Colour is a colour as RRGGBB in capitals, "" when it is none. A leading # may
// be there, and three digits are doubled.
func Colour(s string) string {
	s = strings.TrimPrefix(s, "#")
	if len(s) == 3 {
		s = string([]byte{s[0], s[0], s[1], s[1], s[2], s[2]})
	}
	if _, err := strconv.ParseUint(s, 16, 32); len(s) != 6 || err != nil {
		return ""
	}
	return strings.ToUpper(s)
}

// Ink is a colour of letters: black is the usual one, "".
func Ink(s string) string {
	if s = Colour(s); s == "000000" {
		return ""
	}
	return s
}

// Shade is a colour behind words: white is none.
func Shade(s string) string {
	if s = Colour(s); s == "FFFFFF" {
		return ""
	}
	return s
}

// longPiece is the length in bytes from which a piece is not joined with the
// next, so that a line of a million pieces is read in one pass.
const longPiece = 4096

// Join adds a piece to a line, to its last piece where the ink is the same.
func (l Line) Join(p Piece) Line {
	if p.Text == "" {
		return l
	}
	if n := len(l); n > 0 && len(l[n-1].Text) < longPiece {
		last := l[n-1]
		if last.Text = p.Text; last == p {
			l[n-1].Text += p.Text
			return l
		}
	}
	return append(l, p)
}

// Lines parts a line at the line ends in it; white space at both ends of each goes.
func Lines(l Line) []Line {
	lines := []Line{nil}
	for _, p := range l {
		for i, text := range strings.Split(p.Text, "\n") {
			if i > 0 {
				lines = append(lines, nil)
			}
			p.Text = text
			lines[len(lines)-1] = lines[len(lines)-1].Join(p)
		}
	}
	for i, l := range lines {
		lines[i] = l.trim()
	}
	return lines
}

const blanks = " \t\r\u00A0\u200B\uFEFF"

// trim takes white space from both ends.
func (l Line) trim() Line {
	for len(l) > 0 {
		if l[0].Text = strings.TrimLeft(l[0].Text, blanks); l[0].Text != "" {
			break
		}
		l = l[1:]
	}
	for n := len(l); n > 0; n = len(l) {
		if l[n-1].Text = strings.TrimRight(l[n-1].Text, blanks); l[n-1].Text != "" {
			break
		}
		l = l[:n-1]
	}
	return l
}

// Fill gives a cell its lines. Blank ones at the end go, and those at the
// beginning when the words take one line; others may keep words level with
// those of the next cell.
func (c *Cell) Fill(lines []Line) {
	for len(lines) > 0 && lines[len(lines)-1].Text() == "" {
		lines = lines[:len(lines)-1]
	}
	for len(lines) > 1 && lines[0].Text() == "" && worded(lines) == 1 {
		lines = lines[1:]
	}
	c.Lines = lines
	if len(lines) == 0 {
		c.Lines = nil
	}
	for _, l := range lines {
		c.Checked = c.Checked || strings.ContainsAny(l.Text(), "☑☒✓✔✅🗹🗸")
	}
}

func worded(lines []Line) (n int) {
	for _, l := range lines {
		if l.Text() != "" {
			n++
		}
	}
	return n
}

// flat is a table inside a cell as lines: one a row, tabs between its cells.
func (t Table) flat() []Line {
	var lines []Line
	for _, row := range t.Rows {
		var line Line
		for i, c := range row {
			if i > 0 && len(line) > 0 && len(c.Lines) > 0 {
				line = line.Join(Piece{Text: "\t"})
			}
			for k, l := range c.Lines {
				if k > 0 {
					line = line.Join(Piece{Text: " "})
				}
				for _, p := range l {
					line = line.Join(p)
				}
			}
		}
		lines = append(lines, line)
	}
	return lines
}

// Frames says whether a table is there to place other things on the page: a
// table inside it has more rows than itself, or it is one cell of many lines.
func (t Table) Frames(inside []*Table) bool {
	for _, in := range inside {
		if len(in.Rows) > len(t.Rows) && len(in.Rows[0]) > 1 {
			return true
		}
	}
	return len(t.Rows) == 1 && len(t.Rows[0]) == 1 && len(t.Rows[0][0].Lines) > 3
}

// Flat is blocks as lines, for the inside of a cell: a table has one a row.
// Bullets go; the numbers of items stay.
func Flat(blocks []Block) (lines []Line) {
	for _, b := range blocks {
		if b.Table != nil {
			lines = append(lines, b.Table.flat()...)
			continue
		}
		line := b.Line
		if strings.ContainsAny(b.Item, "0123456789abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ") && len(line) > 0 {
			line = Line{{Text: b.Item + " "}}
			for _, p := range b.Line {
				line = line.Join(p)
			}
		}
		lines = append(lines, line)
	}
	return lines
}
