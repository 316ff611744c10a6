package paper

import (
	"bytes"
	_ "embed"
	"encoding/base64"
	"fmt"
	"html/template"
	"strings"

	"plait.example/internal/colour"
	"plait.example/internal/fonts"
	"plait.example/internal/picture"
	"plait.example/internal/timeplan"
)

// Note is one page for one person: some points, each with the rows it is about,
// and beside them the plait of their plan.
type Note struct {
	Title  string
	Name   string   // whose it is; empty leaves a line to write on
	Lead   []string // sentences under the title
	Points []NotePoint
	Foot   []string
	Plait  *timeplan.Plan // nil: none
	Mark   string         // keyword in the document's properties; may be empty
}

// NotePoint is a point of a note.
type NotePoint struct {
	Rows []string // the person's own rows, quoted
	Ask  string
	Why  string // smaller, after it; may be empty
}

// key is the dishes of the plait.
func (n Note) key() (all []dishKey) {
	if n.Plait == nil {
		return nil
	}
	for i, d := range n.Plait.Dishes {
		all = append(all, dishKey{mark{Index: i, Letter: clean(d.Letter), Ink: colour.Ink(i)}, clean(d.Name), ""})
	}
	return all
}

// drawn says whether there is a plait to draw.
func (n Note) drawn() bool { return n.Plait != nil && len(n.Plait.Rows) > 0 }

// NotePDF writes the note on one sheet of A4: type is set as large as lets all of
// it stand there, from 12 points down to 7. Fonts are embedded, the structure is tagged, and the
// same note gives the same bytes.
func NotePDF(n Note) ([]byte, error) { return fitted(n).output() }

// fitted is the note in the largest type with which its words stand on the page.
func fitted(n Note) *noteDocument {
	for size := 12.0; ; size -= 0.5 {
		if d := setNote(n, size); d.y <= d.bottom() || size <= 7 {
			return d
		}
	}
}

// noteDocument is a note in the making.
type noteDocument struct {
	*document
	note   Note
	size   float64
	column float64 // width of the words
}

// setNote sets the note in one size of type; y is where its words end.
func setNote(n Note, size float64) *noteDocument {
	l := layoutOf(Sheet{})
	d := &noteDocument{document: &document{pen: newPen(l, printable(n.Title)), layout: l}, note: n, size: size}
	if n.Mark != "" {
		d.f.SetKeywords(n.Mark, false)
	}
	d.root = d.tags.root
	d.page()
	d.column = d.wide()
	if n.drawn() {
		d.column = d.wide() * 0.54
	}
	d.words("H1", d.note.Title, size*1.5, true, 0)
	d.y += size * 0.4
	name := n.Name
	if name == "" {
		name = strings.Repeat("_", 28)
	}
	d.words("P", name, size*1.1, true, 0)
	d.y += size * 0.4
	for _, s := range n.Lead {
		d.words("P", s, size, false, 0)
	}
	for i, p := range n.Points {
		d.point(i+1, p)
	}
	d.y += size * 0.8
	for _, s := range n.Foot {
		d.words("P", s, size*0.8, false, 0)
	}
	d.keyLines()
	if n.drawn() {
		d.beside()
	}
	return d
}

// words writes a text in the column, never on a further page.
func (d *noteDocument) words(kind, text string, size float64, strong bool, in float64) {
	lines := setText([]span{{clean(text), strong}}, size, d.column-in)
	d.in(d.root.add(kind), func() { d.put(lines, d.left()+in, d.y, mark{Index: -1}) })
	d.y += heightOf(lines)
}

func (d *noteDocument) point(number int, p NotePoint) {
	d.y += d.size * 0.8
	in := d.size * 1.6
	top := d.y
	for _, row := range p.Rows {
		d.words("BlockQuote", row, d.size*0.95, false, in)
	}
	d.y += d.size * 0.15
	d.words("P", fmt.Sprintf("%d. %s", number, p.Ask), d.size*1.08, true, in)
	if p.Why != "" {
		d.words("P", p.Why, d.size*0.9, false, in)
	}
	d.aside(func() { d.box(d.left(), top+2, 2.5, d.y-top-2, inkRule) })
}

func (d *noteDocument) keyLines() {
	for _, k := range d.note.key() {
		lines := setText([]span{{k.Mark.Letter + "\u00a0 " + k.Name, false}}, d.size*0.9, d.column-22)
		h := max(heightOf(lines), 19)
		d.aside(func() { d.mark(k.Mark, d.left()+9, d.y+9.5, 7) })
		d.in(d.root.add("P"), func() { d.put(lines, d.left()+22, d.y+(h-heightOf(lines))/2, mark{Index: -1}) })
		d.y += h
	}
}

// beside draws the plait to the right of the words, whole.
func (d *noteDocument) beside() {
	left := d.left() + d.column + 14
	wide, high := d.right()-left, d.height-2*margin
	drawing := picture.Draw(d.note.Plait, plaitFor(d.note.Plait, wide, high))
	scale := min(wide/drawing.Width, high/drawing.Height)
	figure := d.root.add("Figure")
	figure.alt = plaitWords(d.note.Plait)
	d.in(figure, func() { d.drawing(drawing, left, margin, scale, 0, 0, drawing.Height) })
}

// plaitFor is how the plait is drawn to fill a place of a page: the longer the
// plan, the wider, since it is made smaller as a whole.
func plaitFor(p *timeplan.Plan, wide, high float64) picture.Options {
	o := picture.Options{Width: 340, Print: true, Bare: true, ID: "note"}
	if g := picture.Layout(p, o); g.Height > 0 {
		o.Width = int(max(340, wide*g.Height/high))
	}
	return o
}

//go:embed note.tmpl
var noteTemplate string

var notePage = template.Must(template.New("note").Funcs(template.FuncMap{"mark": markSVG, "bind": bind}).Parse(noteTemplate))

// NoteHTML writes the note as one page that stands alone: fonts, style and the
// plait are inside it, nothing is fetched. Its type is as large as NotePDF's, so that
// it prints on one sheet too.
func NoteHTML(n Note) ([]byte, error) {
	v := struct {
		Note
		Key   []dishKey
		CSS   template.CSS
		Drawn template.HTML
		Words []string
	}{Note: n, Key: n.key()}
	size := min(fitted(n).size, 11.5) // a browser sets words a little wider
	v.CSS = template.CSS(faceCSS() + fmt.Sprintf(":root{--time:17pt;--text:%gpt;--small:%gpt}\n", size, max(7, size-1.5)) + sheetCSS + noteCSS)
	if n.drawn() {
		v.Drawn = template.HTML(picture.Plait(n.Plait, plaitFor(n.Plait, 250, 780)))
		v.Words = picture.Words(n.Plait)
	}
	var b bytes.Buffer
	if err := notePage.Execute(&b, v); err != nil {
		return nil, fmt.Errorf("paper: HTML of %q: %w", n.Title, err)
	}
	return b.Bytes(), nil
}

//go:embed note.css
var noteCSS string

// faceCSS embeds the faces that a note is set in.
func faceCSS() string {
	var b strings.Builder
	for _, f := range []fonts.Face{fonts.Regular, fonts.Bold} {
		fmt.Fprintf(&b, `@font-face{font-family:"%s";font-weight:%d;src:url(data:font/woff2;base64,%s) format("woff2")}`+"\n",
			f.Family, f.Weight, base64.StdEncoding.EncodeToString(f.WOFF2()))
	}
	return b.String()
}
