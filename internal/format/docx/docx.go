// Package docx reads a Word document (Office Open XML, ECMA-376) as paragraphs
// and tables: text with its styles, lists with their numbers as they print,
// merged cells, colours. Insertions that are still to be accepted are in,
// deletions are out. It opens no part but those it needs, follows no link,
// runs no macro and resolves no external entity. It knows nothing of what the
// text says.
package docx

import (
	"errors"

	"plait.example/internal/format/packed"
)

// Limits of a document that is read. What goes beyond is refused.
const (
	MaxBytes   = packed.MaxBytes
	MaxEntries = packed.MaxEntries
	MaxDepth   = packed.MaxDepth
)

// Refusals that a caller may want to tell apart.
var (
	ErrTooLarge = packed.ErrTooLarge
	ErrDamaged  = packed.ErrDamaged
	ErrNotWord  = errors.New("the file is not a Word document")
)

// Document is the body of a document, without headers, footers, footnotes and comments.
type Document struct {
	Blocks []Block
}

// Block is a paragraph or a table; the other is nil.
type Block struct {
	Paragraph *Paragraph
	Table     *Table
}

// Paragraph is a paragraph of text.
type Paragraph struct {
	Style   string // name of its style as the document gives it, such as "heading 1"; "" for the usual one
	Heading int    // 1 to 9 for headings, 1 for a title too; 0 for text
	List    *Item  // nil when it is no item of a list
	Shade   string // colour behind it, RRGGBB; "" for none
	Runs    []Run
	ink     string // that its style gives to its letters
	letters string // the shade behind them, likewise
	source  *packed.Element
}

// Item is a paragraph's place in a list.
type Item struct {
	Level  int    // from 0
	Marker string // "1.", "b)", "iv." as it prints; "-" for any sign
}

// Run is text in one form. Tabs are \t, line breaks inside the paragraph \n.
type Run struct {
	Text   string
	Colour string // of the letters, RRGGBB; "" for the usual one
	Shade  string // behind them, RRGGBB or the name of a highlighter such as "yellow"; "" for none
	Bold   bool
	Italic bool
	Struck bool // struck through
}

// Table is a table, row by row.
type Table struct {
	Rows []Row
	name string
}

// Row is a row of a table. The cells' spans add up to its width.
type Row struct {
	Header bool // repeated at the top of each page
	Cells  []Cell
	before int             // columns that the row leaves out on the left
	source *packed.Element // of which it was read
}

// Cell is a cell of a table.
type Cell struct {
	Span    int    // columns that it covers, at least 1
	Down    int    // rows that it covers, at least 1; 0 when a cell above covers this one
	Shade   string // colour behind it, RRGGBB; "" for none
	Blocks  []Block
	covered bool // vMerge goes on from above
	ticked  bool // a box in it is ticked
}

// Read reads a document. The error wraps ErrTooLarge, ErrNotWord or ErrDamaged.
func Read(data []byte) (Document, error) {
	p, err := open(data)
	if err != nil {
		return Document{}, err
	}
	main, err := p.mainPart()
	if err != nil {
		return Document{}, err
	}
	body := main.Child("body")
	if main.Name != "document" || body == nil {
		return Document{}, errWithoutBody
	}
	styles, err := p.styles()
	if err != nil {
		return Document{}, err
	}
	numbers, err := p.numbering()
	if err != nil {
		return Document{}, err
	}
	r := reader{styles: styles, numbers: numbers}
	return Document{Blocks: r.blocks(body)}, nil
}
