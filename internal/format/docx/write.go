package docx

import (
	"archive/zip"
	"bytes"
	"encoding/xml"
	"fmt"
	"strconv"
	"strings"

	"plait.example/internal/format/table"
)

// Paper is a document to be written, on A4.
type Paper struct {
	Title     string // in its properties, not on the page
	Author    string
	Keywords  string // in its properties; "" for none
	Landscape bool
	Footer    string        // at the foot of each page; "" for none
	Points    float64       // size of the words; 0: 10.5
	Beside    *Drawing      // at the right edge of the first page; nil: none
	Blocks    []table.Block // in order; an Item of figures or letters is written as it is, others as a bullet
}

// Write makes a document, the same bytes at every call. Headings have the
// styles "heading 1" to "heading 6"; tables have borders, shaded cells, and
// their header rows on each page. The error is that of packing.
func Write(p Paper) ([]byte, error) {
	var b bytes.Buffer
	z := zip.NewWriter(&b)
	parts := []struct{ name, text string }{
		{"[Content_Types].xml", writtenTypes},
		{"_rels/.rels", writtenRels},
		{"docProps/core.xml", fmt.Sprintf(writtenCore, escaped(p.Title), escaped(p.Author), p.keywords())},
		{"word/document.xml", p.body()},
		{"word/styles.xml", writtenStyles(p.Points)},
		{"word/footer1.xml", `<w:ftr xmlns:w="` + transitional + `"><w:p><w:pPr><w:pStyle w:val="Footer"/></w:pPr>` + run(table.Piece{Text: p.Footer}) + `</w:p></w:ftr>`},
		{"word/_rels/document.xml.rels", writtenDocumentRels},
	}
	for _, part := range parts {
		if err := put(z, &zip.FileHeader{Name: part.name, Method: zip.Deflate}, []byte(xml.Header+part.text)); err != nil {
			return nil, err
		}
	}
	if err := z.Close(); err != nil {
		return nil, err
	}
	return b.Bytes(), nil
}

func (p Paper) keywords() string {
	if p.Keywords == "" {
		return ""
	}
	return `<cp:keywords>` + escaped(p.Keywords) + `</cp:keywords>`
}

// Widths of A4 between its margins of 18 mm, in twentieths of a point.
const (
	upright  = 9866
	sideways = 14798
)

func (p Paper) body() string {
	var b strings.Builder
	b.WriteString(`<w:document xmlns:w="` + transitional + `" xmlns:r="http://schemas.openxmlformats.org/officeDocument/2006/relationships"`)
	if p.Beside != nil {
		b.WriteString(drawingNames)
	}
	b.WriteString(`><w:body>`)
	width := upright
	if p.Landscape {
		width = sideways
	}
	if p.Beside != nil {
		b.WriteString(`<w:p><w:pPr><w:spacing w:before="0" w:after="0" w:line="20" w:lineRule="exact"/></w:pPr>` + p.Beside.run(width) + `</w:p>`)
	}
	for i, block := range p.Blocks {
		if block.Table == nil {
			paragraph(&b, block)
			continue
		}
		writeTable(&b, *block.Table, width)
		if i+1 == len(p.Blocks) || p.Blocks[i+1].Table != nil {
			b.WriteString(`<w:p/>`) // two tables that touch are one
		}
	}
	page := `<w:pgSz w:w="11906" w:h="16838"/>`
	if p.Landscape {
		page = `<w:pgSz w:w="16838" w:h="11906" w:orient="landscape"/>`
	}
	b.WriteString(`<w:sectPr><w:footerReference w:type="default" r:id="rId2"/>` + page +
		`<w:pgMar w:top="1020" w:right="1020" w:bottom="1020" w:left="1020" w:header="567" w:footer="567" w:gutter="0"/></w:sectPr></w:body></w:document>`)
	return b.String()
}

func paragraph(b *strings.Builder, block table.Block) {
	b.WriteString(`<w:p>`)
	switch {
	case block.Heading > 0:
		b.WriteString(`<w:pPr><w:pStyle w:val="Heading` + strconv.Itoa(min(block.Heading, 6)) + `"/></w:pPr>`)
	case block.Item != "":
		b.WriteString(`<w:pPr><w:pStyle w:val="Item"/></w:pPr>`)
		sign := block.Item
		if !strings.ContainsAny(sign, "0123456789abcdefghijklmnopqrstuvwxyz") {
			sign = "•"
		}
		b.WriteString(run(table.Piece{Text: sign + "\t"}))
	}
	for _, piece := range block.Line {
		b.WriteString(run(piece))
	}
	b.WriteString(`</w:p>`)
}

// run is words in one form.
func run(p table.Piece) string {
	var f strings.Builder
	for _, s := range []struct {
		on   bool
		text string
	}{
		{p.Bold, `<w:b/>`},
		{p.Italic, `<w:i/>`},
		{p.Struck, `<w:strike/>`},
		{table.Colour(p.Ink) != "", `<w:color w:val="` + table.Colour(p.Ink) + `"/>`},
		{table.Colour(p.Shade) != "", `<w:shd w:val="clear" w:color="auto" w:fill="` + table.Colour(p.Shade) + `"/>`},
	} {
		if s.on {
			f.WriteString(s.text)
		}
	}
	text := `<w:r>`
	if f.Len() > 0 {
		text += `<w:rPr>` + f.String() + `</w:rPr>`
	}
	for i, line := range strings.Split(p.Text, "\n") {
		if i > 0 {
			text += `<w:br/>`
		}
		for k, part := range strings.Split(line, "\t") {
			if k > 0 {
				text += `<w:tab/>`
			}
			if part != "" {
				text += `<w:t xml:space="preserve">` + escaped(part) + `</w:t>`
			}
		}
	}
	return text + `</w:r>`
}

func writeTable(b *strings.Builder, t table.Table, width int) {
	if len(t.Rows) == 0 || len(t.Rows[0]) == 0 {
		b.WriteString(`<w:p/>`)
		return
	}
	widths := shares(t, width)
	b.WriteString(`<w:tbl><w:tblPr><w:tblStyle w:val="Grid"/><w:tblW w:w="` + strconv.Itoa(width) + `" w:type="dxa"/><w:tblLayout w:type="fixed"/>`)
	if t.Name != "" {
		b.WriteString(`<w:tblCaption w:val="` + escaped(t.Name) + `"/>`)
	}
	b.WriteString(`</w:tblPr><w:tblGrid>`)
	for _, w := range widths {
		b.WriteString(`<w:gridCol w:w="` + strconv.Itoa(w) + `"/>`)
	}
	b.WriteString(`</w:tblGrid>`)
	below := make([]int, len(widths)) // rows that the cell above still takes
	for i, row := range t.Rows {
		b.WriteString(`<w:tr><w:trPr><w:cantSplit/>`)
		if i < t.Header {
			b.WriteString(`<w:tblHeader/>`)
		}
		b.WriteString(`</w:trPr>`)
		for at := 0; at < len(widths); {
			var c table.Cell
			if at < len(row) {
				c = row[at]
			}
			at += writeCell(b, c, widths[at:], below[at:])
		}
		b.WriteString(`</w:tr>`)
	}
	b.WriteString(`</w:tbl>`)
}

// writeCell writes a cell and gives the columns that it takes. below holds for
// each column how many rows the cell above still takes, and in its first column
// after the sign, how many columns.
func writeCell(b *strings.Builder, c table.Cell, widths, below []int) int {
	span, merge := max(1, min(c.Span, len(widths))), ""
	switch {
	case below[0] > 0:
		span, merge = 1, `<w:vMerge/>`
		for span < len(below) && below[span] < 0 {
			span++
		}
		c = table.Cell{Shade: c.Shade}
		if below[0]--; below[0] == 0 {
			clear(below[:span])
		}
	case c.Down > 1:
		merge = `<w:vMerge w:val="restart"/>`
		below[0] = c.Down - 1
		for i := 1; i < span; i++ {
			below[i] = -1
		}
	}
	sum := 0
	for _, w := range widths[:span] {
		sum += w
	}
	b.WriteString(`<w:tc><w:tcPr><w:tcW w:w="` + strconv.Itoa(sum) + `" w:type="dxa"/>`)
	if span > 1 {
		b.WriteString(`<w:gridSpan w:val="` + strconv.Itoa(span) + `"/>`)
	}
	b.WriteString(merge)
	if shade := table.Colour(c.Shade); shade != "" {
		b.WriteString(`<w:shd w:val="clear" w:color="auto" w:fill="` + shade + `"/>`)
	}
	b.WriteString(`</w:tcPr>`)
	for _, l := range c.Lines {
		paragraph(b, table.Block{Line: l})
	}
	if len(c.Lines) == 0 {
		b.WriteString(`<w:p/>`)
	}
	b.WriteString(`</w:tc>`)
	return span
}

// shares parts a width among columns by the words in them: none is narrower
// than its longest word, as far as there is room.
func shares(t table.Table, width int) []int {
	wants := make([]int, len(t.Rows[0]))
	sum := 0
	for at := range wants {
		wants[at] = 4
		for _, row := range t.Rows {
			if at >= len(row) || row[at].Span > 1 {
				continue
			}
			for _, l := range row[at].Lines {
				text := l.Text()
				wants[at] = max(wants[at], min(len([]rune(text)), 40))
				for _, word := range strings.Fields(text) {
					wants[at] = max(wants[at], min(len([]rune(word)), 60))
				}
			}
		}
		wants[at] += 2 // the cell's margins
		sum += wants[at]
	}
	left := width
	for at := range wants {
		wants[at] = width * wants[at] / sum
		left -= wants[at]
	}
	wants[len(wants)-1] += left
	return wants
}
