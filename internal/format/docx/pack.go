package docx

import (
	"errors"
	"fmt"
	"strings"

	"plait.example/internal/format/packed"
)

var errWithoutBody = fmt.Errorf("%w: its main part has no body; open it in a word processor and save it as .docx again", ErrDamaged)

// pack is the archive that a document is.
type pack struct{ packed.Pack }

// open looks at the archive's table of contents.
func open(data []byte) (pack, error) {
	p, err := packed.Open(data)
	if errors.Is(err, packed.ErrNotZip) {
		err = fmt.Errorf("%w: %w; save it as .docx", ErrNotWord, err)
	}
	return pack{p}, err
}

// part is the XML of a part, with the text that runs hold.
func (p pack) part(name string) (*packed.Element, error) { return p.Part(name, "t") }

// mainName is the name of the part with the document's text.
func (p pack) mainName() (string, error) {
	name, err := p.Main("word/document.xml")
	if err != nil {
		return "", err
	}
	if !p.Has(name) || strings.HasPrefix(name, "xl/") || strings.HasPrefix(name, "ppt/") {
		return "", fmt.Errorf("%w: %s; save the text as .docx", ErrNotWord, p.whatElse())
	}
	return name, nil
}

// mainPart is the document's text, which the package's relationships name.
func (p pack) mainPart() (*packed.Element, error) {
	name, err := p.mainName()
	if err != nil {
		return nil, err
	}
	return p.part(name)
}

// whatElse names what a zip file without a Word document is.
func (p pack) whatElse() string {
	switch {
	case p.Has("xl/workbook.xml"):
		return "it is a spreadsheet"
	case p.Has("ppt/presentation.xml"):
		return "it is a set of slides"
	case p.Has("mimetype") && p.Has("content.xml"):
		return "it is in the OpenDocument format"
	}
	return "it is an archive without a text in it"
}
