package plain

import (
	"regexp"
	"strings"

	"plait.example/internal/format/table"
)

var (
	boxes  = strings.NewReplacer("│", "|", "┃", "|", "║", "|", "¦", "|")
	border = regexp.MustCompile(`^[\s|+:=\-─━═┌┐└┘├┤┬┴┼╔╗╚╝╠╣╦╩╬┏┓┗┛┣┫┳┻╋╒╕╘╛╞╡╤╧╪]*[-=─━═]{2,}[\s|+:=\-─━═┌┐└┘├┤┬┴┼╔╗╚╝╠╣╦╩╬┏┓┗┛┣┫┳┻╋╒╕╘╛╞╡╤╧╪]*$`)
)

// group is the lines of cells between two borders.
type group struct {
	rows   [][]string
	double bool // the border under it is of equals signs
}

// barred is a table whose cells stand between bars, where it ends, and how far
// was looked.
func barred(lines []string, at int) (t table.Table, next, seen int) {
	groups := []group{{}}
	count := 0
	for seen = at; seen < len(lines); seen++ {
		text := strings.TrimSpace(boxes.Replace(lines[seen]))
		last := &groups[len(groups)-1]
		if border.MatchString(text) {
			if len(last.rows) > 0 {
				last.double = strings.ContainsAny(text, "=═")
				groups = append(groups, group{})
			} else if seen > at {
				break
			}
			continue
		}
		if !strings.Contains(strings.Trim(text, "|"), "|") && (len(text) < 3 || text[0] != '|' || text[len(text)-1] != '|') {
			break
		}
		last.rows = append(last.rows, bars(text))
		count++
	}
	list, header := drawn(groups)
	if columns, share := regular(append(list, []string{""})); count < 2 || columns < 2 || share < 0.5 {
		return table.Table{}, at, seen
	}
	t = tableOf(list)
	t.Header = header
	return t, seen, seen
}

// drawn are the rows of a table and how many of them are its header: a border
// under every row joins the lines between two of them; one border under the
// first row, or a double one, parts the header from the rest.
func drawn(groups []group) (list [][]string, header int) {
	if last := len(groups) - 1; len(groups[last].rows) == 0 {
		groups = groups[:last]
	}
	for i, g := range groups {
		if len(groups) < 3 {
			list = append(list, g.rows...)
		} else {
			list = append(list, joined(g.rows))
		}
		if i == 0 && len(groups) > 1 && (g.double || len(groups) == 2 && len(g.rows) == 1) {
			header = len(list)
		}
	}
	return list, header
}

// joined is one row of several lines.
func joined(rows [][]string) (row []string) {
	for _, r := range rows {
		for i, c := range r {
			if i == len(row) {
				row = append(row, "")
			}
			row[i] = strings.Trim(row[i]+"\n"+c, "\n")
		}
	}
	return row
}

// bars parts a row at its bars; one after a backslash is a sign of the text.
func bars(text string) (cells []string) {
	text = strings.TrimPrefix(text, "|")
	if strings.HasSuffix(text, "|") && !strings.HasSuffix(text, `\|`) {
		text = text[:len(text)-1]
	}
	var cell strings.Builder
	for i := 0; i < len(text); i++ {
		switch {
		case text[i] == '\\' && i+1 < len(text) && text[i+1] == '|':
			cell.WriteByte('|')
			i++
		case text[i] == '|':
			cells = append(cells, strings.TrimSpace(cell.String()))
			cell.Reset()
		default:
			cell.WriteByte(text[i])
		}
	}
	return append(cells, strings.TrimSpace(cell.String()))
}
