package format

import (
	"testing"

	"github.com/google/go-cmp/cmp"

	"plait.example/internal/format/table"
)

// Blocks that were made of a text get its colours back, though marks of lists are
// gone and words stand in cells.
func TestInk(t *testing.T) {
	lines := []table.Line{{{Text: "• red ", Ink: "FF0000"}, {Text: "= quiche"}}, {{Text: "9.00"}, {Text: "\tmake pastry", Ink: "FF0000"}}}
	cell := func(text string) table.Cell { return table.Cell{Lines: []table.Line{{{Text: text}}}} }
	blocks := []table.Block{
		{Item: "-", Line: table.Line{{Text: "red = quiche"}}},
		{Table: &table.Table{Rows: [][]table.Cell{{cell("9.00"), cell("make pastry")}}}},
	}
	inkOf(lines).paint(blocks)
	if diff := cmp.Diff(table.Line{{Text: "red ", Ink: "FF0000"}, {Text: "= quiche"}}, blocks[0].Line); diff != "" {
		t.Error(diff)
	}
	row := blocks[1].Table.Rows[0]
	if row[0].Lines[0][0].Ink != "" || row[1].Lines[0][0].Ink != "FF0000" || len(row[1].Lines[0]) != 1 {
		t.Errorf("%+v", row)
	}
}
