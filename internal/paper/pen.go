package paper

import (
	"strconv"
	"strings"
	"time"

	"codeberg.org/go-pdf/fpdf"

	"plait.example/internal/fonts"
)

// Lengths are points, 72 to the inch; y runs down from the upper left corner.
const (
	mm     = 72 / 25.4
	margin = 10 * mm
)

// Inks of the sheet that are no dish's.
const (
	inkText  = "#1A1A1A"
	inkSoft  = "#4A4A4A"
	inkRule  = "#8A8A8A"
	inkPale  = "#F3F1EC"
	inkPaper = "#FFFFFF"
)

// pen writes on the pages of a PDF and keeps the tags of what it writes.
type pen struct {
	f             *fpdf.Fpdf
	width, height float64 // of a page
	loaded        map[fonts.Face]string
	tags          *tagger
}

// newPen opens a document without pages. Dates are fixed, so that the same
// plan gives the same bytes.
func newPen(l layout, title string) *pen {
	orientation := "P"
	if l.landscape {
		orientation = "L"
	}
	f := fpdf.New(orientation, "pt", "A4", "")
	f.SetAutoPageBreak(false, 0)
	f.SetMargins(0, 0, 0)
	f.SetCatalogSort(true)
	f.SetCreationDate(time.Unix(0, 0).UTC())
	f.SetModificationDate(time.Unix(0, 0).UTC())
	f.SetProducer("plait", false)
	f.SetTitle(title, true)
	f.SetLang("en-GB")
	w, h := f.GetPageSize()
	return &pen{f: f, width: w, height: h, loaded: map[fonts.Face]string{}, tags: newTagger()}
}

// font chooses a face, loading it when it is first asked for.
func (n *pen) font(face fonts.Face, size float64) {
	name, ok := n.loaded[face]
	if !ok {
		name = "face" + strconv.Itoa(len(n.loaded))
		n.f.AddUTF8FontFromBytes(name, "", face.TTF())
		n.loaded[face] = name
	}
	n.f.SetFont(name, "", size)
}

// span is a text in one weight.
type span struct {
	text string
	bold bool
}

// faceOf is the face that has the sign. Every text has been through printable,
// so that one of the two has it.
func faceOf(r rune, bold bool) fonts.Face {
	primary, fallback := fonts.Regular, fonts.FallbackRegular
	if bold {
		primary, fallback = fonts.Bold, fonts.FallbackBold
	}
	if primary.Has(r) {
		return primary
	}
	return fallback
}

// measure is how wide a text is.
func measure(s span, size float64) float64 {
	units := 0
	for _, r := range s.text {
		units += faceOf(r, s.bold).Advance(r)
	}
	return float64(units) * size / 1000
}

// write writes a text with its baseline at y and returns where it ends.
func (n *pen) write(x, y, size float64, ink string, s span) float64 {
	var run []rune
	var face fonts.Face
	flush := func() {
		if len(run) == 0 {
			return
		}
		n.font(face, size)
		n.f.SetTextColor(rgb(ink))
		n.f.Text(x, y, string(run))
		x += measure(span{string(run), s.bold}, size)
		run = nil
	}
	for _, r := range s.text {
		if next := faceOf(r, s.bold); next != face {
			flush()
			face = next
		}
		run = append(run, r)
	}
	flush()
	return x
}

// box fills a rectangle.
func (n *pen) box(x, y, w, h float64, ink string) {
	n.f.SetFillColor(rgb(ink))
	n.f.Rect(x, y, w, h, "F")
}

// rule draws a level line.
func (n *pen) rule(x, y, w, thick float64, ink string) {
	n.f.SetDrawColor(rgb(ink))
	n.f.SetLineWidth(thick)
	n.f.Line(x, y, x+w, y)
}

// rgb reads #RRGGBB; anything else is black.
func rgb(hex string) (r, g, b int) {
	v, err := strconv.ParseUint(strings.TrimPrefix(hex, "#"), 16, 32)
	if err != nil || len(hex) != 7 {
		return 0, 0, 0
	}
	return int(v >> 16), int(v >> 8 & 255), int(v & 255)
}
