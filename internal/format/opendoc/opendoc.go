// Package opendoc reads OpenDocument texts and spreadsheets (ISO/IEC 26300) as
// lines and tables: colours, merged cells, lists, times. Insertions that are
// still to be accepted are in, deletions are out; of a formula the value that
// was saved is read. It opens no part but those it needs, follows no link and
// runs no macro. It knows nothing of what the text says.
package opendoc

import (
	"bytes"
	"errors"
	"fmt"

	"plait.example/internal/format/packed"
	"plait.example/internal/format/table"
)

// Refusals that a caller may want to tell apart.
var (
	ErrNotOpen = errors.New("the file is not an OpenDocument text or spreadsheet")
	ErrLocked  = errors.New("the document has a password")
)

// Document is a text or a spreadsheet.
type Document struct {
	Blocks []table.Block
	Sheets bool     // it is a spreadsheet: a table for each sheet that says something
	Notes  []string // what a reader should know of how it was read, such as hidden rows
}

// Read reads a document. The error wraps packed.ErrTooLarge, packed.ErrDamaged,
// table.ErrTooLarge, ErrNotOpen or ErrLocked.
func Read(data []byte) (Document, error) {
	content, common, err := parts(data)
	if err != nil {
		return Document{}, err
	}
	body := content.Child("body")
	r := &reader{styles: stylesOf(common, content), ticked: ticked(body)}
	var d Document
	switch {
	case body.Child("text") != nil:
		d.Blocks, err = r.blocks(body.Child("text"))
	case body.Child("spreadsheet") != nil:
		d.Sheets = true
		d.Blocks, err = r.sheets(body.Child("spreadsheet"))
	default:
		err = fmt.Errorf("%w; save it as .odt, .ods, .docx or .xlsx", ErrNotOpen)
	}
	if err != nil {
		return Document{}, err
	}
	d.Notes = r.notes
	return d, nil
}

// parts are a document's content and its common styles, which may be in a part
// of their own.
func parts(data []byte) (content, common *packed.Element, err error) {
	if Flat(data) {
		if len(data) > packed.MaxPart {
			return nil, nil, fmt.Errorf("%w: %d bytes, and at most %d are read; cut it into several", packed.ErrTooLarge, len(data), packed.MaxPart)
		}
		content, err = packed.Parse(data, "p", "h")
		if err != nil && !errors.Is(err, packed.ErrTooLarge) {
			err = fmt.Errorf("%w (%w); open it in the program that made it and save it again", packed.ErrDamaged, err)
		}
		return content, nil, err
	}
	p, err := packed.Open(data)
	if err != nil {
		return nil, nil, err
	}
	if manifest, err := p.Bytes("META-INF/manifest.xml"); err == nil && bytes.Contains(manifest, []byte("encryption-data")) {
		return nil, nil, fmt.Errorf("%w; open it and save it without one", ErrLocked)
	}
	if content, err = p.Part("content.xml", "p", "h"); err != nil {
		return nil, nil, err
	}
	common, err = p.Part("styles.xml")
	return content, common, err
}

// Flat says whether a file is a document in one piece of XML (.fodt, .fods).
func Flat(data []byte) bool {
	head := data[:min(len(data), 1024)]
	return bytes.Contains(head, []byte("<office:document ")) && bytes.HasPrefix(bytes.TrimLeft(bytes.TrimPrefix(head, []byte("\xEF\xBB\xBF")), " \r\n\t"), []byte("<"))
}

// ticked are the boxes of a form that are ticked, by their identifiers.
func ticked(in *packed.Element) map[string]bool {
	boxes := map[string]bool{}
	var look func(*packed.Element)
	look = func(in *packed.Element) {
		for _, e := range in.Children {
			if e.Name == "checkbox" && (e.Attr("current-state") == "checked" || e.Attr("current-state") == "" && e.Attr("state") == "checked") {
				boxes[e.Attr("id")] = true
			}
			if e.Name == "forms" || e.Name == "form" {
				look(e)
			}
		}
	}
	for _, part := range []string{"text", "spreadsheet"} {
		if e := in.Child(part); e != nil {
			look(e)
			for _, t := range e.Children {
				if t.Name == "table" {
					look(t)
				}
			}
		}
	}
	return boxes
}
