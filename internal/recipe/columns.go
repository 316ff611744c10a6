package recipe

import (
	"strings"

	"plait.example/internal/format"
	"plait.example/internal/format/table"
)

// textOf is a document's text. Where a table has the ingredients in one column and
// the method in another, under headings that say so, the columns are written one
// after the other: read along its rows, such a table mixes the two. A plain text
// is left as it is, so that what is found in it can be found in the file.
func textOf(d format.Document) string {
	if d.Kind == format.Text {
		return d.Text
	}
	found := false
	var b strings.Builder
	for _, block := range d.Blocks {
		switch {
		case block.Table == nil:
			writeLine(&b, block)
		default:
			head, at := columnHeads(block.Table)
			found = found || head >= 0
			writeTable(&b, block.Table, head, at)
		}
	}
	if !found {
		return d.Text
	}
	return strings.TrimSpace(b.String()) + "\n"
}

func writeLine(b *strings.Builder, block table.Block) {
	switch {
	case block.Heading > 0:
		b.WriteString("\n" + strings.Repeat("#", min(block.Heading, 6)) + " ")
	case block.Item != "":
		b.WriteString(block.Item + " ")
	}
	b.WriteString(block.Line.Text() + "\n")
}

// headRows is how far down a table the headings of its columns are looked for: a title may stand above them.
const headRows = 3

// columnHeads is the row that heads the columns of a recipe laid out in a table,
// and the column of its method; -1 when the table is none.
func columnHeads(t *table.Table) (row, method int) {
	for i, r := range t.Rows[:min(len(t.Rows), headRows)] {
		listed, told := -1, -1
		for k, c := range r {
			part, named := partOf(tokenize(strings.TrimRight(strings.TrimSpace(c.Text()), ":"), 0))
			switch {
			case !named || len(c.Lines) > 1:
			case part == ingredientPart && listed < 0:
				listed = k
			case part == methodPart && told < 0:
				told = k
			}
		}
		if listed >= 0 && told >= 0 && i+1 < len(t.Rows) {
			return i, told
		}
	}
	return -1, -1
}

// writeTable writes a table row by row; from its head row on, if it has one, first
// the other columns and then that of the method.
func writeTable(b *strings.Builder, t *table.Table, head, method int) {
	b.WriteString("\n")
	for i, r := range t.Rows {
		if head < 0 || i < head {
			writeCells(b, r, -1, -1)
		}
	}
	if head >= 0 {
		for _, r := range t.Rows[head:] {
			writeCells(b, r, -1, method)
		}
		b.WriteString("\n")
		for _, r := range t.Rows[head:] {
			writeCells(b, r, method, -1)
		}
	}
	b.WriteString("\n")
}

// writeCells writes the cells of a row, all, one alone or all but one (-1: no such
// wish): a single filled one in its own lines, several on one line with tabs between.
func writeCells(b *strings.Builder, r []table.Cell, only, but int) {
	var texts []string
	for k, c := range r {
		if text := strings.TrimSpace(c.Text()); text != "" && k != but && (only < 0 || k == only) {
			texts = append(texts, text)
		}
	}
	if len(texts) > 1 {
		for i := range texts {
			texts[i] = strings.Join(strings.Fields(texts[i]), " ")
		}
	}
	if len(texts) > 0 {
		b.WriteString(strings.Join(texts, "\t") + "\n")
	}
}
