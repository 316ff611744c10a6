// Package docx reads a Word document (Office Open XML, ECMA-376) as paragraphs
// and tables: text with its styles, lists with their numbers as they print,
// merged cells, colours. Insertions that are still to be accepted are in,
// deletions are out. It opens no part but those it needs, follows no link,
// runs no macro and resolves no external entity. It knows nothing of what the
// text says.
package docx

import "errors"

// Limits of a document that is read. What goes beyond is refused.
const (
	MaxBytes    = 20 << 20  // of the file
	MaxUnpacked = 100 << 20 // of all that is packed in it
	MaxPart     = 24 << 20  // of one of the parts that are read, unpacked
	MaxEntries  = 5000      // files packed in it
	MaxRatio    = 200       // unpacked to packed, of a packed file above a megabyte
	MaxElements = 1_000_000 // of XML in a part
	MaxDepth    = 300       // elements of XML inside one another
)

// Refusals that a caller may want to tell apart.
var (
	ErrTooLarge = errors.New("the document is too large")
	ErrNotWord  = errors.New("the file is not a Word document")
	ErrDamaged  = errors.New("the document is damaged")
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
}

// Row is a row of a table. The cells' spans add up to its width.
type Row struct {
	Header bool // repeated at the top of each page
	Cells  []Cell
}

// Cell is a cell of a table.
type Cell struct {
	Span    int    // columns that it covers, at least 1
	Down    int    // rows that it covers, at least 1; 0 when a cell above covers this one
	Shade   string // colour behind it, RRGGBB; "" for none
	Blocks  []Block
	covered bool // vMerge goes on from above
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
	body := main.child("body")
	if main.name != "document" || body == nil {
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
