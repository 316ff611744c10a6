package plain

import (
	"strings"

	"plait.example/internal/format/table"
)

// longQuote is how many lines a quoted field goes on at most; a quote that is
// not closed within them is a sign like others.
const longQuote = 40

// separators that are tried, the likelier first.
var separators = []byte{'\t', ';', ',', '|'}

// Separated reads a text of records whose fields are parted by tabs, semicolons,
// commas or bars, as spreadsheets save them (RFC 4180); quoted fields may hold
// separators and line ends. It says no when the text does not look like one:
// nearly all records must have the same number of fields, which at a sign that
// prose has too means three or more. With sure, as by the file's name, two do.
// Nothing in a field is computed, whatever sign it begins with.
func Separated(text string, sure bool) (t table.Table, is bool) {
	text = unify(text)
	if said, rest, has := strings.Cut(text, "\n"); has && len(said) == 5 && strings.HasPrefix(strings.ToLower(said), "sep=") {
		return tableOf(records(rest, said[4])), true
	}
	best := 0
	var found [][]string
	for _, separator := range separators {
		if separator == '|' && !sure { // a table between bars, which Blocks reads
			continue
		}
		list := records(text, separator)
		columns, share := regular(list)
		least := 3
		if sure || separator == '\t' {
			least = 2
		}
		if len(list) < 2 && !sure || separator == ',' && !sure && len(list) < 3 || columns < least || share < 0.8 && !sure || share < 0.5 {
			continue
		}
		if worth := columns * int(100*share); worth > best {
			best, found = worth, list
		}
	}
	if found == nil {
		return t, false
	}
	return tableOf(found), true
}

// unify ends every line with a line feed.
func unify(text string) string {
	return strings.ReplaceAll(strings.ReplaceAll(text, "\r\n", "\n"), "\r", "\n")
}

// regular is the number of fields that most records have, and their share of
// all. Empty fields at the end do not count as missing.
func regular(list [][]string) (columns int, share float64) {
	many := map[int]int{}
	said := 0
	for _, record := range list {
		if len(record) > 1 || strings.TrimSpace(record[0]) != "" {
			many[len(record)]++
			said++
		}
	}
	for n, times := range many {
		if times > many[columns] || times == many[columns] && n > columns {
			columns = n
		}
	}
	return columns, float64(many[columns]) / float64(max(said, 1))
}

// records parts a text.
func records(text string, separator byte) (list [][]string) {
	var record []string
	open := 0 // quotes before are signs like others
	for at := 0; at < len(text); {
		field, next, is := "", 0, false
		if text[at] == '"' && at >= open {
			if field, next, is = quoted(text, at, separator); !is {
				open = next
			}
		}
		if !is {
			next = at
			for next < len(text) && text[next] != separator && text[next] != '\n' {
				next++
			}
			field = text[at:next]
		}
		record = append(record, field)
		if next >= len(text) || text[next] == '\n' {
			list = append(list, record)
			record = nil
		} else if next+1 == len(text) {
			record = append(record, "")
		}
		at = next + 1
	}
	if record != nil {
		list = append(list, record)
	}
	return list
}

// quoted is the field that begins at a quote, and where it ends; when no field
// does, how far was looked for its end.
func quoted(text string, at int, separator byte) (field string, end int, is bool) {
	var b strings.Builder
	i := at + 1
	for lines := 0; i < len(text); i++ {
		switch {
		case text[i] == '\n' && lines == longQuote:
			return "", i, false
		case text[i] == '\n':
			lines++
		case text[i] != '"':
		case i+1 < len(text) && text[i+1] == '"':
			i++
		case i+1 == len(text) || text[i+1] == separator || text[i+1] == '\n':
			return b.String(), i + 1, true
		default:
			return "", at + 1, false
		}
		b.WriteByte(text[i])
	}
	return "", i, false
}

// tableOf lays records out.
func tableOf(list [][]string) (t table.Table) {
	width, count := 0, 0
	for _, record := range list {
		width = max(width, len(record))
	}
	for _, record := range list {
		if count += width; count > table.MaxCells {
			break
		}
		row := make([]table.Cell, width)
		for i := range row {
			row[i] = table.Cell{Span: 1, Down: 1, Clock: -1}
			if i < len(record) {
				row[i].Fill(table.Lines(table.Line{{Text: record[i]}}))
			}
		}
		t.Rows = append(t.Rows, row)
	}
	return t
}
