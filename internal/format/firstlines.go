package format

import (
	"slices"

	"plait.example/internal/format/table"
)

// FirstLines are the first blocks of a document, with at most so many lines and
// rows of tables together, and how many there are more.
func FirstLines(blocks []table.Block, most int) (first []table.Block, left int) {
	for _, b := range blocks {
		n := 1
		if b.Table != nil {
			n = len(b.Table.Rows)
		}
		if take := min(n, most); take == n {
			first = append(first, b)
		} else if left += n - take; take > 0 {
			first = append(first, table.Block{Table: firstRows(*b.Table, take)})
		}
		most -= min(n, most)
	}
	return first, left
}

// firstRows is a table with its first rows alone.
func firstRows(t table.Table, most int) *table.Table {
	t.Rows = slices.Clone(t.Rows[:most])
	for r, row := range t.Rows {
		t.Rows[r] = slices.Clone(row)
		for c := range row {
			t.Rows[r][c].Down = min(row[c].Down, most-r)
		}
	}
	return &t
}
