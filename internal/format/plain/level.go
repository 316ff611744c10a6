package plain

import (
	"regexp"
	"strings"
	"unicode"
	"unicode/utf8"

	"plait.example/internal/format/table"
)

// level is a table whose columns are level with one another by spaces. Lines in
// two columns, such as "9:05 - 9:20  Rub in", stay lines. It gives where the
// table ends and how far was looked.
func level(lines []string, at int) (t table.Table, next, seen int) {
	first := fields(lines[at])
	if len(first) < 3 || len(first) > 64 {
		return t, at, at
	}
	rows := [][]field{first}
	for seen = at + 1; seen < len(lines) && strings.TrimSpace(lines[seen]) != "" && !inner(lines[seen]); seen++ {
		rows = append(rows, fields(lines[seen]))
	}
	if next = seen; len(rows) < 2 || len(rows)*len(first) > table.MaxCells {
		return t, at, seen
	}
	starts := columns(rows)
	if len(starts) < 3 {
		t, next = same(rows, at)
		return t, next, seen
	}
	var list [][]string
	for _, row := range rows {
		cells := make([]string, len(starts))
		for _, f := range row {
			k := len(starts) - 1
			for k > 0 && starts[k] > f.from {
				k--
			}
			cells[k] = strings.TrimSpace(cells[k] + "  " + f.text)
		}
		list = onward(list, cells)
	}
	if len(list) < 2 {
		return t, at, seen
	}
	return tableOf(list), next, seen
}

// columns are where the columns of rows begin: the first row's fields, where
// before each of them every row has two blank places.
func columns(rows [][]field) (starts []int) {
	for _, head := range rows[0] {
		from := head.from
		for _, row := range rows {
			for _, f := range row {
				if f.from > head.from-2 && f.from < from { // a figure of two digits above one of one
					from = f.from
				}
			}
		}
		clear := true
		for _, row := range rows {
			for _, f := range row {
				clear = clear && (f.to <= from-1 || f.from >= from)
			}
		}
		if clear || len(starts) == 0 {
			starts = append(starts, from)
		}
	}
	return starts
}

// onward adds a row; a line with one field in small letters goes on with the
// cell above.
func onward(list [][]string, cells []string) [][]string {
	said, where := 0, 0
	for i, c := range cells {
		if c != "" {
			said++
			where = i
		}
	}
	first, _ := utf8.DecodeRuneInString(cells[where])
	if last := len(list) - 1; said == 1 && where > 0 && last >= 0 && unicode.IsLower(first) {
		list[last][where] += " " + cells[where]
		return list
	}
	return append(list, cells)
}

// same is the table of the rows at the beginning that have as many fields as
// the first, however they stand.
func same(rows [][]field, at int) (t table.Table, next int) {
	var list [][]string
	for _, row := range rows {
		if len(row) != len(rows[0]) {
			break
		}
		var cells []string
		for _, f := range row {
			cells = append(cells, f.text)
		}
		list = append(list, cells)
	}
	if len(list) < 2 {
		return t, at
	}
	return tableOf(list), at + len(list)
}

var gap = regexp.MustCompile(`\S+(?: \S+)*`)

// field is words of a line that no two spaces part, and the column they begin at.
type field struct {
	text     string
	from, to int
}

func fields(text string) (list []field) {
	text = strings.ReplaceAll(strings.TrimRightFunc(text, unicode.IsSpace), "\u00A0", " ")
	column, last := 0, 0
	for _, at := range gap.FindAllStringIndex(text, -1) {
		column += utf8.RuneCountInString(text[last:at[0]])
		f := field{text: text[at[0]:at[1]], from: column}
		column += utf8.RuneCountInString(f.text)
		f.to, last = column, at[1]
		list = append(list, f)
	}
	return list
}
