package table

// Trim leaves out the empty rows and columns at the end of a sheet, whose plane
// goes on beyond what was written. Spans that reach there are cut.
func Trim(rows [][]Cell) [][]Cell {
	last, width := 0, 0
	for i, row := range rows {
		for at, c := range row {
			if len(c.Lines) > 0 {
				last, width = i+1, max(width, at+1)
			}
		}
	}
	rows = rows[:last]
	for i, row := range rows {
		row = row[:width]
		for at := range row {
			row[at].Span = min(row[at].Span, width-at)
			row[at].Down = min(row[at].Down, last-i)
		}
		rows[i] = row
	}
	return rows
}
