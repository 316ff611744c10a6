package plain

import (
	"regexp"
	"strings"

	"plait.example/internal/format/table"
)

// Blocks is a text as lines, with the tables that stand in it: rows parted by
// tabs, by bars, or in three or more columns level with one another by spaces.
// Blank lines are left out. The error wraps table.ErrTooLarge.
func Blocks(text string) ([]table.Block, error) {
	lines := strings.Split(unify(text), "\n")
	var blocks []table.Block
	var noBars, noLevel int // up to these lines there is none
	for at := 0; at < len(lines); {
		t, next := tabbed(lines, at)
		if next == at && at >= noBars {
			var seen int
			t, next, seen = barred(lines, at)
			noBars = doubt(at, seen)
		}
		if next == at && at >= noLevel {
			var seen int
			t, next, seen = level(lines, at)
			noLevel = doubt(at, seen)
		}
		if next > at {
			if len(t.Rows) > 0 && len(t.Rows)*len(t.Rows[0]) > table.MaxCells {
				return nil, table.ErrTooLarge
			}
			blocks = append(blocks, table.Block{Table: &t})
			at = next
			continue
		}
		if b, says := line(lines[at]); says {
			blocks = append(blocks, b)
		}
		at++
	}
	return blocks, nil
}

// doubt is the line before which a table is not looked for again, when one
// that begins here was looked for up to a line: what goes on for long and is no
// table is not read anew from each of its lines.
func doubt(at, seen int) int {
	if seen-at > 100 {
		return seen
	}
	return at
}

var bullet = regexp.MustCompile(`^\s*[-•*·▪■●○◦–]\s+`)

// line is a line of text; a bullet before it is its item's sign.
func line(text string) (b table.Block, says bool) {
	if mark := bullet.FindString(text); mark != "" && len(mark) < len(text) {
		b.Item = "-"
		text = text[len(mark):]
	}
	if hashes := len(text) - len(strings.TrimLeft(text, "#")); hashes > 0 && hashes <= 6 && strings.HasPrefix(text[hashes:], " ") {
		b.Heading = hashes
		text = text[hashes:]
	}
	b.Line = table.Lines(table.Line{{Text: text}})[0]
	return b, len(b.Line) > 0
}

// inner says whether a line has tabs between words.
func inner(text string) bool {
	return strings.Contains(strings.Trim(text, " \t"), "\t") || leading(text)
}

// leading says whether a line begins with an empty field.
func leading(text string) bool {
	return strings.HasPrefix(text, "\t") && strings.TrimSpace(text) != ""
}

// tabbed is a table of lines with tabs that begins at a line, and where it ends.
// One blank line between rows does not end it.
func tabbed(lines []string, at int) (t table.Table, next int) {
	if !inner(lines[at]) || leading(lines[at]) {
		return t, at
	}
	end, rows := at, 0
	for i := at; i < len(lines); i++ {
		if inner(lines[i]) {
			_, more := wrapped(lines, i)
			i = more - 1
			end = more
			rows++
			continue
		}
		if strings.TrimSpace(lines[i]) != "" || i+1 >= len(lines) || !inner(lines[i+1]) {
			break
		}
	}
	if rows < 2 {
		return t, at
	}
	var list [][]string
	for i := at; i < end; {
		row, more := wrapped(lines, i)
		if strings.TrimSpace(row) != "" {
			list = append(list, records(row, '\t')[0])
		}
		i = more
	}
	return tableOf(list), end
}

// wrapped is a row with the lines on which a quoted field of it goes on, and
// the line after.
func wrapped(lines []string, at int) (row string, next int) {
	row = lines[at]
	open := strings.HasPrefix(row, `"`) || strings.Contains(row, "\t\"")
	if !open || strings.Count(row, `"`)%2 == 0 {
		return row, at + 1
	}
	quotes := strings.Count(row, `"`)
	for i := at + 1; i < len(lines) && i < at+longQuote; i++ {
		if quotes += strings.Count(lines[i], `"`); quotes%2 == 0 {
			whole := strings.Join(lines[at:i+1], "\n")
			if len(records(whole, '\t')) == 1 {
				return whole, i + 1
			}
			break
		}
	}
	return row, at + 1
}
