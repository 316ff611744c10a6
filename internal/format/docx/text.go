package docx

import (
	"regexp"
	"strings"
)

var blankLines = regexp.MustCompile(`\n{3,}`)

// Text is the document in lines: "# " before headings, the marker before items
// of lists, tabs between the cells of a row. A table that places text on the
// page, with lists or several paragraphs in its cells, gives its cells one after
// another.
func (d Document) Text() string {
	var b strings.Builder
	lines(&b, d.Blocks)
	return strings.TrimSpace(blankLines.ReplaceAllString(b.String(), "\n\n"))
}

func lines(b *strings.Builder, blocks []Block) {
	item := false
	for _, block := range blocks {
		switch {
		case block.empty():
			b.WriteByte('\n')
			item = false
		case block.Table != nil:
			b.WriteByte('\n')
			block.Table.write(b)
			b.WriteByte('\n')
			item = false
		default:
			p := block.Paragraph
			if (p.List == nil || !item) && (p.Heading > 0 || (p.List == nil) == item) {
				b.WriteByte('\n')
			}
			p.write(b)
			item = p.List != nil
		}
	}
}

func (p *Paragraph) write(b *strings.Builder) {
	text := strings.Trim(p.Text(), "\n ")
	switch {
	case p.Heading > 0:
		b.WriteString(strings.Repeat("#", min(p.Heading, 6)) + " " + strings.Join(strings.Fields(text), " ") + "\n")
		return
	case p.List != nil && p.List.Marker != "":
		b.WriteString(strings.Repeat("  ", p.List.Level) + p.List.Marker + " ")
	}
	b.WriteString(text + "\n")
}

func (t *Table) write(b *strings.Builder) {
	if t.places() {
		for _, r := range t.Rows {
			for _, c := range r.Cells {
				lines(b, c.Blocks)
				b.WriteByte('\n')
			}
		}
		return
	}
	for _, r := range t.Rows {
		if line := r.line(); line != "" {
			b.WriteString(line + "\n")
		}
	}
}

// places says whether a table places text on the page.
func (t *Table) places() bool {
	for _, r := range t.Rows {
		for _, c := range r.Cells {
			paragraphs := 0
			for _, block := range c.Blocks {
				if block.Table != nil && !block.empty() || block.Paragraph != nil && (block.Paragraph.List != nil || block.Paragraph.Heading > 0) {
					return true
				}
				if !block.empty() {
					paragraphs++
				}
			}
			if paragraphs > 3 {
				return true
			}
		}
	}
	return false
}

// line is a row on one line; covered cells are empty, and empty ones at its end go.
func (r Row) line() string {
	cells := make([]string, 0, len(r.Cells))
	for _, c := range r.Cells {
		var b strings.Builder
		lines(&b, c.Blocks)
		cells = append(cells, strings.Join(strings.Fields(b.String()), " "))
	}
	return strings.TrimRight(strings.Join(cells, "\t"), "\t ")
}
