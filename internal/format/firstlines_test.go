package format

import (
	"testing"

	"github.com/google/go-cmp/cmp"

	"plait.example/internal/format/table"
)

// Lines and rows are counted together, and a cell that reaches over the end is cut there.
func TestFirstLines(t *testing.T) {
	cell := func(down int) table.Cell { return table.Cell{Span: 1, Down: down, Clock: -1} }
	three := &table.Table{Rows: [][]table.Cell{{cell(3)}, {cell(0)}, {cell(0)}}}
	blocks := []table.Block{{Item: "a"}, {Table: three}, {Item: "b"}}
	for most, want := range map[int]struct {
		blocks []table.Block
		left   int
	}{
		9: {blocks, 0},
		4: {blocks[:2], 1},
		3: {[]table.Block{{Item: "a"}, {Table: &table.Table{Rows: [][]table.Cell{{cell(2)}, {cell(0)}}}}}, 2},
		1: {blocks[:1], 4},
		0: {nil, 5},
	} {
		first, left := FirstLines(blocks, most)
		if diff := cmp.Diff(want.blocks, first); diff != "" || left != want.left {
			t.Errorf("%d: %d left, want %d\n%s", most, left, want.left, diff)
		}
	}
	if three.Rows[0][0].Down != 3 {
		t.Error("the document itself was changed")
	}
}
