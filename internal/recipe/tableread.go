package recipe

import (
	"bytes"
	"encoding/csv"
	"errors"
	"fmt"
	"slices"
	"strings"
	"unicode/utf8"

	"golang.org/x/text/encoding/charmap"
	"golang.org/x/text/encoding/unicode"

	"plait.example/internal/practical"
)

// How large a technique table may be.
const (
	mostTable = 2 << 20 // bytes
	mostRows  = 2000
)

// ParseTable reads a technique table as a spreadsheet saves it: values parted by
// commas, semicolons or tabs, in UTF-8, UTF-16 or the Windows encoding of western
// Europe. The first row names the columns, in any order. Every fault carries the
// row as Line and the column as Column, both from 1 as a spreadsheet counts, and
// the column's name as Field. A table with faults is nil.
func ParseTable(name string, data []byte) (*Table, practical.Faults) {
	rows, fault := tableRows(data)
	if fault != nil {
		fault.File, fault.Code = name, practical.Invalid
		return nil, practical.Faults{*fault}
	}
	r := &tableReader{file: name, seen: map[string]int{}}
	r.head(rows[0])
	if len(r.faults) > 0 {
		return nil, r.faults
	}
	t := &Table{}
	for i, cells := range rows[1:] {
		if strings.TrimSpace(strings.Join(cells, "")) != "" {
			t.Techniques = append(t.Techniques, r.row(i+2, cells))
		}
	}
	if len(t.Techniques) == 0 && len(r.faults) == 0 {
		r.fault(2, 1, "", "the table has no techniques", "put one in each row below the names of the columns")
	}
	if len(r.faults) > 0 {
		return nil, r.faults
	}
	t.index()
	return t, nil
}

// tableRows cuts the file into rows of cells. There is at least one row.
func tableRows(data []byte) ([][]string, *practical.Fault) {
	switch {
	case len(data) > mostTable:
		return nil, &practical.Fault{Message: fmt.Sprintf("the table is larger than %d MB", mostTable>>20), Hint: "send the table alone"}
	case bytes.HasPrefix(data, []byte("PK")), bytes.HasPrefix(data, []byte{0xD0, 0xCF, 0x11, 0xE0}):
		return nil, &practical.Fault{Message: "this is a workbook, not a table of plain values", Hint: "in the spreadsheet choose Save as, then CSV"}
	}
	written, err := decoded(data)
	if err != nil || strings.ContainsRune(written, 0) {
		return nil, &practical.Fault{Message: "this is not a table of text", Hint: "in the spreadsheet choose Save as, then CSV"}
	}
	if strings.TrimSpace(written) == "" {
		return nil, &practical.Fault{Message: "the table is empty", Hint: "download the table, change it, and send it back"}
	}
	c := csv.NewReader(strings.NewReader(written))
	c.Comma, c.FieldsPerRecord = separator(written), -1
	rows, err := c.ReadAll()
	if wrong, is := errors.AsType[*csv.ParseError](err); is {
		return nil, &practical.Fault{Line: wrong.StartLine, Column: wrong.Column, Message: "a quotation mark is out of place in this line", Hint: "save the table from a spreadsheet, which sets them right"}
	}
	if err != nil {
		return nil, &practical.Fault{Message: "the table could not be read: " + err.Error(), Hint: "save the table from a spreadsheet as CSV"}
	}
	if len(rows) > mostRows {
		return nil, &practical.Fault{Line: mostRows, Message: fmt.Sprintf("the table has more than %d rows", mostRows), Hint: "keep fewer techniques"}
	}
	return rows, nil
}

// decoded is the file's text, whichever way it was written.
func decoded(data []byte) (string, error) {
	if bytes.HasPrefix(data, []byte{0xFF, 0xFE}) || bytes.HasPrefix(data, []byte{0xFE, 0xFF}) {
		wide, err := unicode.UTF16(unicode.LittleEndian, unicode.ExpectBOM).NewDecoder().Bytes(data)
		return string(wide), err
	}
	data = bytes.TrimPrefix(data, []byte("\xEF\xBB\xBF"))
	if !utf8.Valid(data) {
		western, err := charmap.Windows1252.NewDecoder().Bytes(data)
		return string(western), err
	}
	return string(data), nil
}

// separator is what parts the names in the first line.
func separator(written string) rune {
	first, _, _ := strings.Cut(written, "\n")
	best := ','
	for _, sign := range ";\t" {
		if strings.Count(first, string(sign)) > strings.Count(first, string(best)) {
			best = sign
		}
	}
	return best
}

// tableReader collects the faults of a table.
type tableReader struct {
	file   string
	cols   []*column      // by place in the row; nil: an empty column
	seen   map[string]int // ids, by row
	faults practical.Faults
}

// fault notes what is wrong with a cell; row and col count from 1.
func (r *tableReader) fault(row, col int, field, message, hint string) {
	r.faults = append(r.faults, practical.Fault{File: r.file, Line: row, Column: col, Field: field, Message: message, Hint: hint, Code: practical.Invalid})
}

// head reads the names of the columns.
func (r *tableReader) head(cells []string) {
	found := map[string]bool{}
	for i, cell := range cells {
		name := strings.ToLower(strings.TrimSpace(cell))
		var col *column
		for k := range columns {
			if columns[k].name == name {
				col = &columns[k]
			}
		}
		switch {
		case name == "":
		case col == nil:
			r.fault(1, i+1, name, quoted(cell)+" is no column of the table", "remove it, or name it as one of: "+columnNames())
		case found[name]:
			r.fault(1, i+1, name, "the column "+quoted(name)+" is there twice", "keep one of them")
		}
		found[name] = true
		r.cols = append(r.cols, col)
	}
	for _, c := range columns {
		if c.required && !found[c.name] {
			r.fault(1, 1, c.name, "the column "+quoted(c.name)+" is missing", "add it: "+c.about)
		}
	}
}

func columnNames() string {
	names := make([]string, len(columns))
	for i, c := range columns {
		names[i] = c.name
	}
	return strings.Join(names, ", ")
}

// row reads one technique.
func (r *tableReader) row(n int, cells []string) Technique {
	var t Technique
	at := map[string]int{}
	before := len(r.faults)
	for i, col := range r.cols {
		if col == nil {
			continue
		}
		at[col.name] = i + 1
		cell := ""
		if i < len(cells) {
			cell = strings.TrimSpace(cells[i])
		}
		if cell == "" && col.required {
			r.fault(n, i+1, col.name, "this cell is empty", "give "+col.about)
		} else if f := col.read(&t, cell); f != nil {
			r.fault(n, i+1, col.name, f.Message, f.Hint)
		}
	}
	for i := len(r.cols); i < len(cells); i++ {
		if strings.TrimSpace(cells[i]) != "" {
			r.fault(n, i+1, "", quoted(cells[i])+" stands beyond the last column", "move it into one of the columns")
		}
	}
	if t.Skilled == (practical.Estimate{}) {
		t.Skilled = t.Learner
	}
	if len(r.faults) == before {
		r.whole(n, &t, at)
	}
	return t
}

// whole judges what cells of a row say together.
func (r *tableReader) whole(n int, t *Technique, at map[string]int) {
	inOrder := func(e practical.Estimate, who string) {
		if e.Low > e.Likely || e.Likely > e.High {
			col := who + " likely"
			r.fault(n, max(at[col], 1), col, fmt.Sprintf("%d, %d, %d are not in order", e.Low, e.Likely, e.High), "write low, then likely, then high")
		}
	}
	inOrder(t.Learner, "learner")
	inOrder(t.Skilled, "skilled")
	if t.Wait.Most != 0 && t.Wait.Least > t.Wait.Most {
		r.fault(n, max(at["wait most"], 1), "wait most", fmt.Sprintf("at most %d is less than at least %d", t.Wait.Most, t.Wait.Least), "write the greater number")
	}
	if first, twice := r.seen[t.ID]; twice {
		r.fault(n, at["id"], "id", fmt.Sprintf("%s is in row %d already", quoted(t.ID), first), "give the row an id of its own")
	}
	r.seen[t.ID] = n
	r.words(n, "words", t.Match, at)
	r.words(n, "recipe words", t.Whole, at)
}

// words judges the words that call for a technique.
func (r *tableReader) words(n int, col, said string, at map[string]int) {
	for _, terms := range readTerms(said) {
		for _, one := range slices.Concat(terms...) {
			if strings.TrimPrefix(one, "!") == "" {
				r.fault(n, max(at[col], 1), col, quoted(said)+" has an empty place", "write a word on each side of + and /")
				return
			}
		}
	}
}
