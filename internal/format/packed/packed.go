// Package packed opens files that are zip archives of XML parts, as Word
// documents, spreadsheets and OpenDocument files are, within limits against
// files made to choke a reader. It resolves no external entity and opens no
// part that it is not asked for. It knows nothing of what the parts hold.
package packed

import (
	"archive/zip"
	"bytes"
	"errors"
	"fmt"
	"io"
	"path"
	"strings"
)

// Limits of a file that is read. What goes beyond is refused.
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
	ErrDamaged  = errors.New("the document is damaged")
	ErrNotZip   = errors.New("the file is no archive")
)

// Pack is an archive by the names of the files in it.
type Pack struct {
	files map[string]*zip.File
	order []*zip.File
}

// Open looks at the table of contents alone. The sizes that it states may lie;
// reading has limits of its own. The error wraps ErrTooLarge or ErrNotZip.
func Open(data []byte) (Pack, error) {
	if len(data) > MaxBytes {
		return Pack{}, fmt.Errorf("%w: %d bytes, and at most %d are read; take pictures out or copy the text into a new document", ErrTooLarge, len(data), MaxBytes)
	}
	z, err := zip.NewReader(bytes.NewReader(data), int64(len(data)))
	if err != nil {
		return Pack{}, fmt.Errorf("%w: it cannot be unpacked (%w)", ErrNotZip, err)
	}
	if len(z.File) > MaxEntries {
		return Pack{}, fmt.Errorf("%w: %d files are packed in it, and at most %d are usual; copy the text into a new document", ErrTooLarge, len(z.File), MaxEntries)
	}
	p := Pack{map[string]*zip.File{}, z.File}
	var sum uint64
	for _, f := range z.File {
		if sum += f.UncompressedSize64; f.UncompressedSize64 > MaxUnpacked || sum > MaxUnpacked {
			return Pack{}, fmt.Errorf("%w: it unpacks to more than %d bytes; copy the text into a new document", ErrTooLarge, MaxUnpacked)
		}
		if f.UncompressedSize64 > 1<<20 && f.UncompressedSize64/MaxRatio > f.CompressedSize64 {
			return Pack{}, fmt.Errorf("%w: %.60q unpacks to more than %d times its size, as files do that are made to choke a reader; copy the text into a new document", ErrTooLarge, f.Name, MaxRatio)
		}
		if name := strings.TrimPrefix(f.Name, "/"); p.files[name] == nil {
			p.files[name] = f
		}
	}
	return p, nil
}

// Has says whether a file of that name is packed.
func (p Pack) Has(name string) bool { return p.files[name] != nil }

// Files are all that is packed, in the archive's order.
func (p Pack) Files() []*zip.File { return p.order }

// Bytes is a part as it was before packing, nil when there is none of that
// name. The error wraps ErrTooLarge or ErrDamaged.
func (p Pack) Bytes(name string) ([]byte, error) {
	f := p.files[name]
	if f == nil {
		return nil, nil
	}
	r, err := f.Open()
	if err != nil {
		return nil, damaged(name, err)
	}
	defer r.Close()
	data, err := io.ReadAll(io.LimitReader(r, MaxPart+1))
	if len(data) > MaxPart {
		return nil, fmt.Errorf("%w: part %.60q unpacks to more than %d bytes; cut the document into several", ErrTooLarge, name, MaxPart)
	}
	if err != nil {
		return nil, damaged(name, err)
	}
	return data, nil
}

// Part is the XML of a part, nil when there is none of that name. Character
// data are kept inside the elements named, and what stands in these. The error
// wraps ErrTooLarge or ErrDamaged.
func (p Pack) Part(name string, texts ...string) (*Element, error) {
	data, err := p.Bytes(name)
	if data == nil || err != nil {
		return nil, err
	}
	root, err := Parse(data, texts...)
	if err != nil && !errors.Is(err, ErrTooLarge) {
		err = damaged(name, err)
	}
	return root, err
}

func damaged(name string, err error) error {
	return fmt.Errorf("%w: part %.60q (%w); open it in the program that made it and save it again", ErrDamaged, name, err)
}

// Main is the name of the part that the package's relationships give as its
// document (ECMA-376 part 2, 9.3), or the usual one.
func (p Pack) Main(usual string) (string, error) {
	rels, err := p.Part("_rels/.rels")
	if err != nil || rels == nil {
		return usual, err
	}
	for _, r := range rels.Children {
		if strings.HasSuffix(r.Attr("Type"), "/officeDocument") && r.Attr("TargetMode") != "External" {
			usual = strings.TrimPrefix(path.Clean("/"+r.Attr("Target")), "/")
		}
	}
	return usual, nil
}

// Related are the relationships of a part by their identifiers: type (the last
// word of its address) and target, as a part's name. Those to the outside are
// left out.
func (p Pack) Related(part string) (map[string]Relation, error) {
	dir, base := path.Split(part)
	rels, err := p.Part(dir + "_rels/" + base + ".rels")
	if err != nil || rels == nil {
		return nil, err
	}
	all := map[string]Relation{}
	for _, r := range rels.Children {
		if r.Attr("TargetMode") == "External" {
			continue
		}
		target := r.Attr("Target")
		if !strings.HasPrefix(target, "/") {
			target = "/" + dir + target
		}
		all[r.Attr("Id")] = Relation{path.Base(r.Attr("Type")), strings.TrimPrefix(path.Clean(target), "/")}
	}
	return all, nil
}

// Relation is what a part points to.
type Relation struct{ Type, Part string }
