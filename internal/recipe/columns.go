package recipe

import (
	"strconv"
	"strings"

	"plait.example/internal/format"
	"plait.example/internal/format/table"
)

// textOf is a document's text. Where a table holds the method in a column of its
// own, under a heading that says so, its columns are written one after the other:
// read along its rows, such a table mixes list and method, or steps with their
// numbers and times. A plain text is left as it is, so that what is found in it can
// be found in the file.
func textOf(d format.Document) string {
	if d.Kind == format.Text {
		return d.Text
	}
	found := false
	var b strings.Builder
	for _, block := range d.Blocks {
		if block.Table == nil {
			writeLine(&b, block)
			continue
		}
		c := columnsOf(block.Table)
		found = found || c.head >= 0
		c.write(&b)
	}
	if !found {
		return strings.ToValidUTF8(d.Text, "\uFFFD")
	}
	return strings.ToValidUTF8(strings.TrimSpace(b.String()), "\uFFFD") + "\n"
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

// laidOut is a table with what its columns are for. A column that is not there is -1.
type laidOut struct {
	rows                [][]table.Cell
	head                int // the row of headings; -1: the table is none of a recipe
	method, order, time int
	others              []int // the list, whatever its columns
}

// columnsOf finds the headings of a table's columns.
func columnsOf(t *table.Table) laidOut {
	c := laidOut{rows: t.Rows, head: -1}
	for i, r := range t.Rows[:min(len(t.Rows), headRows)] {
		if at := headings(r); at.method >= 0 && (len(at.others) > 0 || at.order >= 0 || at.time >= 0) && i+1 < len(t.Rows) {
			at.rows, at.head = t.Rows, i
			return at
		}
	}
	return c
}

// headings says what the cells of a row head.
func headings(r []table.Cell) laidOut {
	c := laidOut{method: -1, order: -1, time: -1}
	for k, cell := range r {
		name := strings.ToLower(strings.Trim(strings.TrimSpace(cell.Text()), ":. "))
		ts := tokenize(name, 0)
		part, named := partOf(ts)
		switch {
		case len(ts) > 4 || len(cell.Lines) > 1:
			return laidOut{method: -1} // a heading is short: this row is none
		case (name == "step" || name == "no" || name == "number" || name == "#" || name == "order") && c.order < 0:
			c.order = k
		case hasAny(ts, "time", "timing", "timings", "minutes", "mins", "long") && c.time < 0:
			c.time = k
		case named && part == methodPart && c.method < 0:
			c.method = k
		case named && part == ingredientPart, hasAny(ts, "quantity", "amount", "ingredient", "ingredients", "weight"):
			c.others = append(c.others, k)
		}
	}
	return c
}

// write writes the rows above the headings as they stand, then the list, then the
// method, each row of it with the time that stands beside it.
func (c laidOut) write(b *strings.Builder) {
	b.WriteString("\n")
	above := c.rows
	if c.head >= 0 {
		above = c.rows[:c.head]
	}
	for _, r := range above {
		writeCells(b, r, nil)
	}
	if c.head < 0 {
		b.WriteString("\n")
		return
	}
	if len(c.others) > 0 {
		b.WriteString("Ingredients\n")
		for _, r := range c.rows[c.head+1:] {
			writeCells(b, r, c.others)
		}
		b.WriteString("\n")
	}
	b.WriteString("Method\n")
	n := 0
	for _, r := range c.rows[c.head+1:] {
		c.writeStep(b, r, &n)
	}
	b.WriteString("\n")
}

// writeStep writes the method's cell of a row: numbered when the table numbers its steps.
func (c laidOut) writeStep(b *strings.Builder, r []table.Cell, n *int) {
	text := cellText(r, c.method)
	if text == "" {
		return
	}
	if c.order >= 0 || c.time >= 0 {
		*n++
		text = strconv.Itoa(*n) + ". " + strings.Join(strings.Fields(text), " ")
	}
	if time := cellText(r, c.time); time != "" {
		if _, err := strconv.Atoi(time); err == nil {
			time += " minutes"
		}
		text += " (" + time + ")"
	}
	b.WriteString(text + "\n")
}

func cellText(r []table.Cell, k int) string {
	if k < 0 || k >= len(r) {
		return ""
	}
	return strings.TrimSpace(r[k].Text())
}

// writeCells writes the cells of a row, all of them when none are named: a single
// filled one in its own lines, several on one line with tabs between.
func writeCells(b *strings.Builder, r []table.Cell, named []int) {
	if named == nil {
		for k := range r {
			named = append(named, k)
		}
	}
	var texts []string
	for _, k := range named {
		if text := cellText(r, k); text != "" {
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
