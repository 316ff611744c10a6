package recipe

import (
	"bytes"
	"encoding/csv"
)

// Write is the table as a file that ParseTable reads back the same and a
// spreadsheet opens: values parted by commas in UTF-8 with the mark that
// spreadsheets look for, lines ended as they end them.
func (t *Table) Write() []byte {
	var b bytes.Buffer
	b.WriteString("\xEF\xBB\xBF")
	w := csv.NewWriter(&b)
	w.UseCRLF = true
	cells := make([]string, len(columns))
	for i, c := range columns {
		cells[i] = c.name
	}
	_ = w.Write(cells) // a bytes.Buffer takes all
	for i := range t.Techniques {
		for k, c := range columns {
			cells[k] = c.write(&t.Techniques[i])
		}
		_ = w.Write(cells)
	}
	w.Flush()
	return b.Bytes()
}
