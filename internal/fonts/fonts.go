// Package fonts carries the open fonts of screen and paper, with their
// licences: Atkinson Hyperlegible Next for everything, Andika for the signs that
// it lacks (thirds, eighths, arrows, boxes to tick). It knows nothing of what is written with them.
package fonts

import (
	"embed"
	"io/fs"
)

//go:embed files
var files embed.FS

// Family and Fallback are the names by which style sheets and pictures ask for the fonts.
const (
	Family   = "Atkinson Hyperlegible Next"
	Fallback = "Andika"
)

// Face is one cut of a family.
type Face struct {
	Family string
	Weight int // 400 or 700
	Italic bool
	file   string // base name
	table  *table
}

// The faces.
var (
	Regular         = face(Family, 400, false, "AtkinsonHyperlegibleNext-Regular")
	Bold            = face(Family, 700, false, "AtkinsonHyperlegibleNext-Bold")
	Italic          = face(Family, 400, true, "AtkinsonHyperlegibleNext-Italic")
	FallbackRegular = face(Fallback, 400, false, "Andika-Regular")
	FallbackBold    = face(Fallback, 700, false, "Andika-Bold")
)

// Faces is every face, the family's before the fallback's.
func Faces() []Face { return []Face{Regular, Bold, Italic, FallbackRegular, FallbackBold} }

// FS is the folder of font files and licences: NAME.woff2, NAME.ttf, FAMILY-OFL.txt.
func FS() fs.FS {
	sub, err := fs.Sub(files, "files")
	if err != nil {
		panic("fonts: " + err.Error()) // a broken build
	}
	return sub
}

// TTF is the face as TrueType, for PDF. Callers must not change it.
func (f Face) TTF() []byte { return read(f.file + ".ttf") }

// WOFF2 is the face compressed for screens. Callers must not change it.
func (f Face) WOFF2() []byte { return read(f.file + ".woff2") }

// File is the name of the WOFF2 file in FS.
func (f Face) File() string { return f.file + ".woff2" }

// Has says whether the face has a sign for r.
func (f Face) Has(r rune) bool { return f.table.get(f.TTF).glyph(r) != 0 }

// Advance is how far r moves the pen, in thousandths of the type size; 0 when
// the face lacks r.
func (f Face) Advance(r rune) int { return f.table.get(f.TTF).advance(r) }

func face(family string, weight int, italic bool, file string) Face {
	return Face{family, weight, italic, file, new(table)}
}

func read(name string) []byte {
	b, err := files.ReadFile("files/" + name)
	if err != nil {
		panic("fonts: " + err.Error()) // a broken build
	}
	return b
}
