// Package format reads a file that a person brings, whatever it is: plain text,
// a Word document, a spreadsheet, an OpenDocument, a saved web page, a PDF. It
// goes by what is in the file and not by its name, which only helps to tell a
// text from a table of values. Its rooms know files as text, blocks and tables; none of them
// knows food.
package format

import (
	"bytes"
	"errors"
	"fmt"
	"regexp"
	"strings"

	"plait.example/internal/format/docx"
	"plait.example/internal/format/opendoc"
	"plait.example/internal/format/table"
	"plait.example/internal/format/webpage"
)

// Kind is what sort of file it was.
type Kind string

// The kinds that are read.
const (
	Text    Kind = "text"
	Word    Kind = "Word document"
	WebPage Kind = "web page"
	PDF     Kind = "PDF"

	Sheet     Kind = "spreadsheet"               // .xlsx
	Separated Kind = "table of separated values" // .csv and .tsv
	OpenText  Kind = "OpenDocument text"         // .odt
	OpenSheet Kind = "OpenDocument spreadsheet"  // .ods
)

// Refusals that a caller may want to tell apart; those of the packages below pass through as they are.
var (
	ErrKind  = errors.New("this kind of file is not read")
	ErrEmpty = errors.New("the file says nothing")

	ErrUnread = errors.New("the file cannot be read")
)

// Document is what a file says.
type Document struct {
	Kind     Kind
	Title    string           // of a web page
	Encoding string           // of a text
	Text     string           // all of it, in lines: "# " before headings, "- " or "1. " before list items, tabs between cells
	Recipes  []webpage.Recipe // those that a web page describes in its data
	Word     *docx.Document   // a Word document's blocks
	Blocks   []table.Block    // lines and tables in the order of the document, of every kind; blank lines are left out
	Notes    []string         // what a reader should know of how it was read, such as hidden rows of a sheet
}

// Read reads a file. The error begins with its name and says what was wrong and
// what would be right.
func Read(name string, data []byte) (d Document, err error) {
	defer func() {
		// A guard for a fault of ours: a broken file must stop nothing but itself.
		if r := recover(); r != nil {
			d, err = Document{}, fmt.Errorf("%s: %w (%v); save it anew or copy its text into a text file", name, ErrUnread, r)
		}
	}()
	d, err = read(name, data)
	if err == nil && strings.TrimSpace(d.Text) == "" && len(d.Recipes) == 0 {
		err = fmt.Errorf("%w: no words were found in this %s; copy the text into a text file", ErrEmpty, d.Kind)
	}
	if err != nil {
		return Document{}, fmt.Errorf("%s: %w", name, err)
	}
	return d, nil
}

func read(name string, data []byte) (d Document, err error) {
	switch d.Kind = sniff(data); d.Kind {
	case PDF:
		err = d.readPDF(data)
	case Word:
		err = d.readWord(data)
	case Sheet:
		err = d.readSheet(data)
	case OpenText, OpenSheet:
		err = d.readOpen(data)
	case WebPage:
		err = d.readPage(data)
	case Text:
		err = d.readText(name, data)
	default:
		err = fmt.Errorf("%w: it is %s", ErrKind, d.Kind)
	}
	return d, err
}

// others are files that people bring and that are not read, by their first
// bytes, with what would be right.
var others = []struct{ begins, is string }{
	{"\xD0\xCF\x11\xE0\xA1\xB1\x1A\xE1", "a Word document of the old kind (.doc) or one with a password; open it and save it as .docx without one"},
	{"{\\rtf", "in rich text format; open it and save it as .docx"},
	{"\x89PNG", picture},
	{"\xFF\xD8\xFF", picture},
	{"GIF8", picture},
	{"II*\x00", picture},
	{"MM\x00*", picture},
	{"BM", picture},
	{"\x1F\x8B\x08", archive},
	{"7z\xBC\xAF", archive},
	{"Rar!", archive},
	{"%!PS", "PostScript; print it to a PDF"},
}

const (
	picture = "a picture; type the text, or read the picture with text recognition first"
	archive = "an archive; unpack it and give the file inside"
)

var (
	element  = regexp.MustCompile(`(?is)^\s*(?:<\?xml[^>]*>\s*)?(?:<!--.*?-->\s*)*<(?:!doctype html|html|head|body|script|style|meta|title|link|main|article|section|header|div|span|p|h[1-6]|table|ul|ol)[\s>/]`)
	archived = regexp.MustCompile(`(?i)(?:^|\n)content-type:\s*multipart/related`)
)

// sniff tells the kind by the file's first bytes. A kind that is not read comes
// back as its description.
func sniff(data []byte) Kind {
	head := data[:min(len(data), 4096)]
	if bytes.Contains(head[:min(len(head), 1024)], []byte("%PDF-")) {
		return PDF
	}
	if bytes.HasPrefix(head, []byte("PK\x03\x04")) || bytes.HasPrefix(head, []byte("PK\x05\x06")) {
		return packKind(data)
	}
	if opendoc.Flat(head) {
		return OpenText
	}
	for _, o := range others {
		if bytes.HasPrefix(head, []byte(o.begins)) && (len(o.begins) > 2 || bytes.IndexByte(head, 0) >= 0) {
			return Kind(o.is)
		}
	}
	if len(head) > 12 && (string(head[8:12]) == "WEBP" || string(head[4:8]) == "ftyp") {
		return picture
	}
	letters := bytes.ReplaceAll(head, []byte{0}, nil) // UTF-16
	for _, mark := range []string{"\xEF\xBB\xBF", "\xFF\xFE", "\xFE\xFF"} {
		letters = bytes.TrimPrefix(letters, []byte(mark))
	}
	if archived.Match(letters) {
		return "a web page saved as one archive (.mhtml); save it as \"web page, HTML only\""
	}
	if element.Match(letters) {
		return WebPage
	}
	return Text
}
