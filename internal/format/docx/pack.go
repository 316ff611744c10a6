package docx

import (
	"archive/zip"
	"bytes"
	"errors"
	"fmt"
	"io"
	"path"
	"strings"
)

var errWithoutBody = fmt.Errorf("%w: its main part has no body; open it in a word processor and save it as .docx again", ErrDamaged)

// pack is the zip file that a document is.
type pack struct{ files map[string]*zip.File }

// open looks at the table of contents alone. The sizes that it states may lie;
// reading has limits of its own.
func open(data []byte) (pack, error) {
	if len(data) > MaxBytes {
		return pack{}, fmt.Errorf("%w: %d bytes, and at most %d are read; take pictures out or copy the text into a new document", ErrTooLarge, len(data), MaxBytes)
	}
	z, err := zip.NewReader(bytes.NewReader(data), int64(len(data)))
	if err != nil {
		return pack{}, fmt.Errorf("%w: it cannot be unpacked (%w); save it as .docx", ErrNotWord, err)
	}
	if len(z.File) > MaxEntries {
		return pack{}, fmt.Errorf("%w: %d files are packed in it, and at most %d are usual; copy the text into a new document", ErrTooLarge, len(z.File), MaxEntries)
	}
	p := pack{map[string]*zip.File{}}
	var sum uint64
	for _, f := range z.File {
		if sum += f.UncompressedSize64; f.UncompressedSize64 > MaxUnpacked || sum > MaxUnpacked {
			return pack{}, fmt.Errorf("%w: it unpacks to more than %d bytes; copy the text into a new document", ErrTooLarge, MaxUnpacked)
		}
		if f.UncompressedSize64 > 1<<20 && f.UncompressedSize64/MaxRatio > f.CompressedSize64 {
			return pack{}, fmt.Errorf("%w: %.60q unpacks to more than %d times its size, as files do that are made to choke a reader; copy the text into a new document", ErrTooLarge, f.Name, MaxRatio)
		}
		if name := strings.TrimPrefix(f.Name, "/"); p.files[name] == nil {
			p.files[name] = f
		}
	}
	return p, nil
}

// part is the XML of a part, nil when there is none of that name.
func (p pack) part(name string) (*element, error) {
	f := p.files[name]
	if f == nil {
		return nil, nil
	}
	damaged := func(err error) (*element, error) {
		if errors.Is(err, ErrTooLarge) {
			return nil, err
		}
		return nil, fmt.Errorf("%w: part %.60q (%w); open it in a word processor and save it again", ErrDamaged, name, err)
	}
	r, err := f.Open()
	if err != nil {
		return damaged(err)
	}
	defer r.Close()
	data, err := io.ReadAll(io.LimitReader(r, MaxPart+1))
	if len(data) > MaxPart {
		return nil, fmt.Errorf("%w: part %.60q unpacks to more than %d bytes; cut the document into several", ErrTooLarge, name, MaxPart)
	}
	if err != nil {
		return damaged(err)
	}
	root, err := parse(data)
	if err != nil {
		return damaged(err)
	}
	return root, nil
}

// mainPart is the document's text, which the package's relationships name.
func (p pack) mainPart() (*element, error) {
	name := "word/document.xml"
	rels, err := p.part("_rels/.rels")
	if err != nil {
		return nil, err
	}
	if rels != nil {
		for _, r := range rels.children {
			if strings.HasSuffix(r.attr("Type"), "/officeDocument") && r.attr("TargetMode") != "External" {
				name = strings.TrimPrefix(path.Clean("/"+r.attr("Target")), "/")
			}
		}
	}
	if p.files[name] == nil || strings.HasPrefix(name, "xl/") || strings.HasPrefix(name, "ppt/") {
		return nil, fmt.Errorf("%w: %s; save the text as .docx", ErrNotWord, p.whatElse())
	}
	return p.part(name)
}

// whatElse names what a zip file without a Word document is.
func (p pack) whatElse() string {
	switch {
	case p.files["xl/workbook.xml"] != nil:
		return "it is a spreadsheet"
	case p.files["ppt/presentation.xml"] != nil:
		return "it is a set of slides"
	case p.files["mimetype"] != nil && p.files["content.xml"] != nil:
		return "it is in the OpenDocument format"
	}
	return "it is an archive without a text in it"
}
