package format

import (
	"fmt"
	"path"
	"slices"
	"strings"

	"plait.example/internal/format/docx"
	"plait.example/internal/format/opendoc"
	"plait.example/internal/format/packed"
	"plait.example/internal/format/pdf"
	"plait.example/internal/format/plain"
	"plait.example/internal/format/sheet"
	"plait.example/internal/format/table"
	"plait.example/internal/format/webpage"
)

// packKind tells the files apart that are zip archives. An archive that is none
// of them is left to the reader of Word documents, who says so.
func packKind(data []byte) Kind {
	p, err := packed.Open(data)
	if err != nil {
		return Word
	}
	name, err := p.Main("")
	if err != nil {
		return Word
	}
	switch {
	case p.Has("xl/workbook.bin"):
		return "a spreadsheet of the binary kind (.xlsb); open it and save it as .xlsx"
	case p.Has("word/document.xml") || strings.HasPrefix(name, "word/"):
		return Word
	case p.Has("xl/workbook.xml") || strings.HasPrefix(name, "xl/"):
		return Sheet
	}
	mime, _ := p.Bytes("mimetype")
	switch of, is := strings.CutPrefix(string(mime), "application/vnd.oasis.opendocument."); {
	case is && strings.HasPrefix(of, "text"):
		return OpenText
	case is && strings.HasPrefix(of, "spreadsheet"):
		return OpenSheet
	}
	return Word
}

func (d *Document) readWord(data []byte) error {
	w, err := docx.Read(data)
	if err != nil {
		return err
	}
	d.Word, d.Text = &w, w.Text()
	d.Blocks, err = w.Tables()
	return err
}

func (d *Document) readPDF(data []byte) error {
	p, err := pdf.Read(data)
	if err != nil {
		return err
	}
	d.Text = p.Text()
	for _, part := range p.Parts() {
		if part.Table != nil {
			d.Blocks = append(d.Blocks, table.Block{Table: part.Table})
			continue
		}
		more, err := plain.Blocks(part.Text)
		if err != nil {
			return err
		}
		inkOf(part.Inked).paint(more)
		d.Blocks = append(d.Blocks, more...)
	}
	return nil
}

func (d *Document) readPage(data []byte) error {
	p, err := webpage.Read(data)
	d.Title, d.Text, d.Recipes, d.Blocks = p.Title, p.Text, p.Recipes, p.Blocks
	return err
}

func (d *Document) readSheet(data []byte) error {
	w, err := sheet.Read(data)
	for i := range w.Tables {
		d.Blocks = append(d.Blocks, table.Block{Table: &w.Tables[i]})
	}
	d.Notes, d.Text = w.Notes, said(d.Blocks)
	return err
}

func (d *Document) readOpen(data []byte) error {
	o, err := opendoc.Read(data)
	if o.Sheets {
		d.Kind = OpenSheet
	}
	d.Blocks, d.Notes = o.Blocks, o.Notes
	d.Blocks = slices.DeleteFunc(d.Blocks, func(b table.Block) bool { return b.Table == nil && len(b.Line) == 0 })
	d.Text = said(d.Blocks)
	return err
}

// readText reads plain text; the file's name helps to tell one that was saved
// as a table of values.
func (d *Document) readText(name string, data []byte) (err error) {
	if d.Text, d.Encoding, err = plain.Decode(data); err != nil {
		return err
	}
	ending := strings.ToLower(path.Ext(name))
	if t, is := plain.Separated(d.Text, ending == ".csv" || ending == ".tsv" || ending == ".tab"); is {
		d.Kind, d.Blocks = Separated, []table.Block{{Table: &t}}
		d.Text = said(d.Blocks)
		return nil
	}
	d.Blocks, err = plain.Blocks(d.Text)
	return err
}

// said is blocks in lines.
func said(blocks []table.Block) string {
	var b strings.Builder
	for _, block := range blocks {
		if block.Table == nil {
			text := strings.Join(strings.Fields(block.Line.Text()), " ")
			if block.Heading > 0 {
				text = "\n" + strings.Repeat("#", min(block.Heading, 6)) + " " + text
			} else if block.Item != "" {
				text = block.Item + " " + text
			}
			fmt.Fprintln(&b, text)
			continue
		}
		b.WriteByte('\n')
		for _, row := range block.Table.Rows {
			cells := make([]string, len(row))
			for i, c := range row {
				cells[i] = strings.Join(strings.Fields(c.Text()), " ")
			}
			if line := strings.TrimRight(strings.Join(cells, "\t"), "\t "); line != "" {
				fmt.Fprintln(&b, line)
			}
		}
		b.WriteByte('\n')
	}
	return strings.TrimSpace(b.String())
}
