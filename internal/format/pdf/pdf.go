// Package pdf reads the text of a PDF file (ISO 32000-1) by pages and lines, in
// the order in which it is to be read. It reads damaged files too, by looking
// for their objects instead of trusting their tables. It runs no script, opens
// no attachment and follows no link. It knows nothing of what the text says.
package pdf

import (
	"bytes"
	"errors"
	"fmt"

	"plait.example/internal/format/table"
)

// Limits of a file that is read. What goes beyond is refused.
const (
	MaxBytes    = 20 << 20
	MaxPages    = 300
	MaxObjects  = 300_000
	MaxUnpacked = 100 << 20  // of all streams that are read, together
	MaxGlyphs   = 2_000_000  // characters drawn
	maxSteps    = 10_000_000 // operators and operands of page descriptions
)

// Refusals that a caller may want to tell apart.
var (
	ErrTooLarge = errors.New("the PDF is too large")
	ErrNotPDF   = errors.New("the file is not a PDF")
	ErrDamaged  = errors.New("the PDF is damaged")
	ErrLocked   = errors.New("the PDF is encrypted")
	ErrNoText   = errors.New("the PDF holds no text that can be read")
)

// Document is the text of a file.
type Document struct {
	Pages []Page
}

// Page is the lines of a page in the order of reading.
type Page struct {
	Lines   []Line
	tables  []found // from top to bottom
	between []Line  // those that stand in no table
	around  []Line  // of a part of a page: all lines of the page
}

// Line is a line of text. Lengths are in points (1/72 inch), from the page's
// lower left corner; parts of a line that stand apart are parted by tabs.
type Line struct {
	Text        string
	Left, Right float64
	Base        float64 // height of the base line
	Size        float64 // of most of its letters
	first       float64 // width of its first word
	inked       table.Line
}

// Read reads a file. The error wraps one of ErrTooLarge, ErrNotPDF, ErrDamaged,
// ErrLocked and ErrNoText.
func Read(data []byte) (d Document, err error) {
	if len(data) > MaxBytes {
		return d, fmt.Errorf("%w: %d bytes, and at most %d are read; print the pages that matter alone to a new PDF", ErrTooLarge, len(data), MaxBytes)
	}
	if !bytes.Contains(data[:min(len(data), 1024)], []byte("%PDF-")) {
		return d, fmt.Errorf("%w: it does not begin with %%PDF; save or print it as PDF again", ErrNotPDF)
	}
	defer func() {
		// A guard for a fault of ours: a broken file must not end the program.
		if r := recover(); r != nil {
			d, err = Document{}, fmt.Errorf("%w: it cannot be read (%v); open it and print it to a new PDF", ErrDamaged, r)
		}
	}()
	f, err := load(data)
	if err != nil {
		return d, err
	}
	return f.document()
}

func (f *file) document() (d Document, err error) {
	pages := f.pages()
	if len(pages) == 0 {
		return d, fmt.Errorf("%w: it has no pages; open it and print it to a new PDF", ErrDamaged)
	}
	if len(pages) > MaxPages {
		return d, fmt.Errorf("%w: more than %d pages; print the pages that matter alone to a new PDF", ErrTooLarge, MaxPages)
	}
	in := interpreter{file: f, fonts: map[any]*font{}, drawing: map[*stream]bool{}}
	for _, p := range pages {
		d.Pages = append(d.Pages, in.page(p))
		if in.err != nil {
			return Document{}, in.err
		}
	}
	if f.unpacked > MaxUnpacked {
		return Document{}, errUnpacked
	}
	if err := in.verdict(); err != nil {
		return Document{}, err
	}
	return d, nil
}

var errUnpacked = fmt.Errorf("%w: it unpacks to more than %d bytes; print the pages that matter alone to a new PDF", ErrTooLarge, MaxUnpacked)
