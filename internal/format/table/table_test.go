package table_test

import (
	"errors"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"plait.example/internal/format/table"
)

func words(text string) table.Cell {
	c := table.Cell{Span: 1, Down: 1, Clock: -1}
	c.Fill(table.Lines(table.Line{{Text: text}}))
	return c
}

func sized(text string, span, down int) table.Cell {
	c := words(text)
	c.Span, c.Down = span, down
	return c
}

// texts are the rows by their words, "^" where a place is covered.
func texts(rows [][]table.Cell) (list []string) {
	for _, row := range rows {
		var cells []string
		for _, c := range row {
			if c.Down == 0 {
				cells = append(cells, "^")
			} else {
				cells = append(cells, c.Text())
			}
		}
		list = append(list, strings.Join(cells, "|"))
	}
	return list
}

// The example of the HTML Standard, 4.9.12.2 (a table with a cell over two rows
// and one over two columns), and what it says of cells that overlap and reach
// below the last row. Words are invented.
func TestGrid(t *testing.T) {
	for name, c := range map[string]struct {
		rows [][]table.Cell
		want []string
	}{
		"spans":             {[][]table.Cell{{sized("a", 1, 2), words("b")}, {words("c")}, {sized("d", 2, 1)}}, []string{"a|b", "^|c", "d|^"}},
		"beyond the end":    {[][]table.Cell{{sized("a", 1, 9), words("b")}, {words("c")}}, []string{"a|b", "^|c"}},
		"short rows":        {[][]table.Cell{{words("a")}, {words("b"), words("c")}, {}}, []string{"a|", "b|c", "|"}},
		"one runs into one": {[][]table.Cell{{words("a"), sized("b", 1, 2)}, {sized("c", 2, 1), words("d")}}, []string{"a|b|", "c|^|d"}},
		"nothing begins":    {[][]table.Cell{{sized("a", 3, 1), words("b")}, {sized("c", 3, 1), words("d")}}, []string{"a|b", "c|d"}},
	} {
		var g table.Grid
		for _, row := range c.rows {
			g.Row()
			for _, cell := range row {
				g.Next(cell)
			}
		}
		rows, err := g.Rows()
		if diff := cmp.Diff(c.want, texts(rows)); diff != "" || err != nil {
			t.Errorf("%s: %v %s", name, err, diff)
		}
	}
}

// However cells are put: equal rows, spans inside, each place covered once.
func TestGridsAreWhole(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		var g table.Grid
		many := 0
		for range rapid.IntRange(1, 6).Draw(t, "rows") {
			g.Row()
			for range rapid.IntRange(0, 5).Draw(t, "cells") {
				many++
				c := sized("x", rapid.IntRange(0, 4).Draw(t, "span"), rapid.IntRange(0, 4).Draw(t, "down"))
				if rapid.Bool().Draw(t, "next") {
					g.Next(c)
				} else {
					g.Put(rapid.IntRange(-1, 7).Draw(t, "column"), c)
				}
			}
		}
		rows, err := g.Rows()
		if err != nil {
			t.Fatal(err)
		}
		area, said := 0, 0
		for i, row := range rows {
			if len(row) != len(rows[0]) {
				t.Fatal("rows of unlike widths")
			}
			for at, c := range row {
				if at+c.Span > len(row) || i+c.Down > len(rows) || c.Span < 1 {
					t.Fatalf("row %d, cell %d: %d by %d", i, at, c.Span, c.Down)
				}
				area += c.Span * c.Down
				said += len(c.Lines)
			}
		}
		if len(rows) > 0 && area != len(rows)*len(rows[0]) || said > many {
			t.Fatalf("cells cover %d places of %d by %d", area, len(rows), len(rows[0]))
		}
	})
}

func TestTooLarge(t *testing.T) {
	for name, fill := range map[string]func(*table.Grid){
		"wide": func(g *table.Grid) { g.Row(); g.Put(table.MaxCells, words("a")) },
		"long": func(g *table.Grid) {
			for range table.MaxCells + 1 {
				g.Row()
			}
		},
		"both": func(g *table.Grid) {
			g.Row()
			g.Put(999, words("a"))
			for range 300 {
				g.Row()
			}
		},
		"spans": func(g *table.Grid) {
			for range 1000 {
				g.Row()
				g.Next(sized("a", 1000, 65534))
			}
		},
	} {
		var g table.Grid
		fill(&g)
		if _, err := g.Rows(); !errors.Is(err, table.ErrTooLarge) || !strings.Contains(err.Error(), "200000") {
			t.Errorf("%s: %v", name, err)
		}
	}
}

func TestTrim(t *testing.T) {
	var g table.Grid
	g.Row()
	g.Put(0, sized("a", 4, 4))
	g.Row()
	g.Put(5, words(""))
	g.Row()
	g.Row()
	rows, err := g.Rows()
	if err != nil {
		t.Fatal(err)
	}
	if rows = table.Trim(rows); len(rows) != 1 || len(rows[0]) != 1 || rows[0][0].Span != 1 || rows[0][0].Down != 1 {
		t.Errorf("%+v", rows)
	}
}

func TestWords(t *testing.T) {
	for in, want := range map[string]string{"#ff0": "FFFF00", "c00000": "C00000", "": "", "auto": "", "-1ff00": "", "+12345": "", "12345": ""} {
		if got := table.Colour(in); got != want {
			t.Errorf("%q: %q, want %q", in, got, want)
		}
	}
	if table.Ink("000000")+table.Shade("#fff") != "" || table.Ink("FFFFFF") == "" || table.Shade("000000") == "" {
		t.Error("black ink and white paper are the usual ones, and only these")
	}
	line := table.Line{{Text: " a"}, {Text: " \n"}, {Text: "b ", Bold: true}, {Text: "\u00A0", Ink: "FF0000"}}
	if diff := cmp.Diff([]table.Line{{{Text: "a"}}, {{Text: "b", Bold: true}}}, table.Lines(line)); diff != "" {
		t.Error(diff)
	}
	for in, want := range map[string]string{"\n\na\n\n": "a", "\na\n\nb\n": "\na\n\nb", "": "", "\n\n": ""} {
		if got := words(in).Text(); got != want {
			t.Errorf("%q: %q, want %q", in, got, want)
		}
	}
	if !words("Oven on ☑").Checked || words("☐ oven on").Checked {
		t.Error("a ticked box in the words")
	}
}

// A line in which two pieces of the same ink touch is one piece; what is long
// is not copied for each.
func TestJoin(t *testing.T) {
	var l table.Line
	for range 20_000 {
		l = l.Join(table.Piece{Text: "ab"})
	}
	if n := len(l.Text()); n != 40_000 || len(l) > 20 || slices.Contains(l, table.Piece{}) {
		t.Errorf("%d letters in %d pieces", n, len(l))
	}
}
