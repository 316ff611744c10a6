// Package opendoc reads OpenDocument texts and spreadsheets (ISO/IEC 26300) as
// lines and tables: colours, merged cells, lists, times. Insertions that are
// still to be accepted are in, deletions are out; of a formula the value that
// was saved is read. It opens no part but those it needs, follows no link and
// runs no macro. It knows nothing of what the text says.
package opendoc

import (
	"errors"
	"fmt"
	"strings"

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
	p, err := packed.Open(data)
	if err != nil {
		return Document{}, err
	}
	if manifest, err := p.Bytes("META-INF/manifest.xml"); err == nil && strings.Contains(string(manifest), "encryption-data") {
		return Document{}, fmt.Errorf("%w; open it and save it without one", ErrLocked)
	}
	content, err := p.Part("content.xml", "p", "h")
	if err != nil {
		return Document{}, err
	}
	common, err := p.Part("styles.xml")
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
