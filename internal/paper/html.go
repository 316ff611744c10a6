package paper

import (
	"bytes"
	_ "embed"
	"encoding/base64"
	"fmt"
	"html/template"
	"regexp"
	"strings"

	"plait.example/internal/fonts"
	"plait.example/internal/picture"
	"plait.example/internal/timeplan"
)

//go:embed sheet.css
var sheetCSS string

//go:embed sheet.tmpl
var sheetTemplate string

var sheetPage = template.Must(template.New("sheet").Funcs(template.FuncMap{"mark": markSVG, "bind": bind}).Parse(sheetTemplate))

// htmlSheet is what the template reads.
type htmlSheet struct {
	view
	Name    string
	CSS     template.CSS
	Columns []template.CSS
	Heads   []string
	Span    int
	Bands   []htmlBand
	Plait   template.HTML
	Words   []string
}

type htmlBand struct {
	Title string
	Rows  []htmlRow
}

type htmlRow struct {
	Class string
	Cells []htmlCell
}

// htmlCell is one cell: time, dish and minutes have forms of their own.
type htmlCell struct {
	line
	Kind   string
	Pieces []piece
}

// HTML writes the plan as one page that stands alone: fonts, style and the
// plait are inside it, nothing is fetched. Printed on A4, the heading of the table
// is repeated, no row is split, and pages are numbered.
func HTML(p *timeplan.Plan, s Sheet) ([]byte, error) {
	l, v := layoutOf(s).withoutStrip(), viewOf(p)
	h := htmlSheet{
		view: v, Name: clean(s.Name), CSS: template.CSS(styleSheet(p, v, l)), Span: len(l.columns),
		Plait: plaitPages(p, l), Words: picture.Words(p),
	}
	total := 0.0
	for _, c := range l.columns {
		total += c.width
	}
	for _, c := range l.columns {
		h.Heads = append(h.Heads, c.head)
		h.Columns = append(h.Columns, template.CSS(fmt.Sprintf("width:%.2f%%", 100*c.width/total)))
	}
	for _, b := range v.Bands {
		band := htmlBand{Title: b.Title}
		for _, r := range b.Rows {
			band.Rows = append(band.Rows, htmlRowOf(l, r))
		}
		h.Bands = append(h.Bands, band)
	}
	var b bytes.Buffer
	if err := sheetPage.Execute(&b, h); err != nil {
		return nil, fmt.Errorf("paper: HTML of %q: %w", v.Title, err)
	}
	return b.Bytes(), nil
}

func htmlRowOf(l layout, r line) htmlRow {
	row := htmlRow{Class: inkClass(r.Mark)}
	for _, c := range l.columns {
		cell := htmlCell{line: r, Kind: map[part]string{partTime: "time", partDish: "dish", partMinutes: "minutes"}[c.part]}
		if cell.Kind == "" {
			cell.Pieces = l.pieces(r, c.part)
		}
		row.Cells = append(row.Cells, cell)
	}
	return row
}

// plaitPages is the plait cut into pictures that each fit a page, the lanes'
// names on top of each.
func plaitPages(p *timeplan.Plan, l layout) template.HTML {
	if len(p.Rows) == 0 {
		return ""
	}
	o := plaitOptions(l)
	drawing, g := picture.Draw(p, o), picture.Layout(p, o)
	names := laneNames(drawing, g)
	wide, high := 190.0, 245.0 // millimetres of a page
	if l.landscape {
		wide, high = 277, 158
	}
	var b strings.Builder
	for i, s := range cuts(g, high*drawing.Width/wide, names.Height) {
		o.ID = fmt.Sprintf("sheet-%d", i+1)
		if s.from > 0 {
			named := o
			named.ID += "-names"
			fmt.Fprintf(&b, `<div class="lanes">%s</div>`, names.SVG(named))
		}
		fmt.Fprintf(&b, `<div class="page">%s</div>`+"\n", viewBox(drawing.SVG(o), drawing.Width, s))
	}
	return template.HTML(b.String())
}

// viewBox shows a stretch of a picture only.
func viewBox(svg []byte, wide float64, s slice) []byte {
	root, rest, _ := bytes.Cut(svg, []byte(">"))
	root = sizePattern.ReplaceAll(root, fmt.Appendf(nil, `viewBox="0 %.2f %.2f %.2f"`, s.from, wide, s.until-s.from))
	return append(append(root, '>'), rest...)
}

// sizePattern is how the picture says its size.
var sizePattern = regexp.MustCompile(`viewBox="[^"]*" width="[^"]*" height="[^"]*"`)

// plaitOptions is how the plait is drawn for a sheet.
func plaitOptions(l layout) picture.Options {
	o := picture.Options{Width: 760, Rows: true, Print: true, Bare: true, Large: l.text > 15, ID: "sheet"}
	if l.landscape {
		o.Width = 1100
	}
	return o
}

func inkClass(m mark) string {
	if m.Index < 0 {
		return ""
	}
	return fmt.Sprintf("ink-%d", m.Index)
}

// styleSheet is the style sheet: fonts, page, sizes, the dishes' inks.
func styleSheet(p *timeplan.Plan, v view, l layout) string {
	var b strings.Builder
	face := func(f fonts.Face) {
		fmt.Fprintf(&b, `@font-face{font-family:"%s";font-weight:%d;src:url(data:font/woff2;base64,%s) format("woff2")}`+"\n",
			f.Family, f.Weight, base64.StdEncoding.EncodeToString(f.WOFF2()))
	}
	face(fonts.Regular)
	face(fonts.Bold)
	if needsFallback(p) {
		face(fonts.FallbackRegular)
	}
	page := "portrait"
	if l.landscape {
		page = "landscape"
	}
	fmt.Fprintf(&b, `@page{size:A4 %s;margin:10mm 10mm 13mm;@bottom-left{content:"%s";font:9pt "%s",sans-serif}@bottom-right{content:"page " counter(page) " of " counter(pages);font:9pt "%s",sans-serif}}`+"\n",
		page, cssString(fmt.Sprintf("%s (seed %d)", v.Title, p.Seed)), fonts.Family, fonts.Family)
	fmt.Fprintf(&b, ":root{--time:%gpt;--text:%gpt;--small:%gpt}\n", l.time, l.text, l.small)
	b.WriteString(sheetCSS)
	for i, k := range v.Key {
		fmt.Fprintf(&b, ".ink-%d .dish{background:%s}.ink-%d .due{border-color:%s;color:%s;background:%s}\n",
			i, k.Mark.Ink.Tint, i, k.Mark.Ink.Line, k.Mark.Ink.Text, k.Mark.Ink.Tint)
	}
	return b.String()
}

// cssString escapes a text for a string of a style sheet inside HTML.
func cssString(s string) string {
	var b strings.Builder
	for _, r := range s {
		if r == ' ' || r == '-' || r >= '0' && r <= '9' || r >= 'A' && r <= 'Z' || r >= 'a' && r <= 'z' {
			b.WriteRune(r)
		} else {
			fmt.Fprintf(&b, `\%06x`, r)
		}
	}
	return b.String()
}

// markSVG draws a dish's mark with its letter.
func markSVG(m mark) template.HTML {
	if m.Index < 0 {
		return ""
	}
	var b strings.Builder
	fmt.Fprintf(&b, `<svg class="mark" viewBox="-14 -14 28 28" role="img" aria-label="dish %s"><path d="`, template.HTMLEscapeString(m.Letter))
	for _, move := range picture.Outline(m.Ink.Shape, 0, 0, 10) {
		switch move.Op {
		case 'C':
			fmt.Fprintf(&b, "C%.2f %.2f %.2f %.2f %.2f %.2f", move.A.X, move.A.Y, move.B.X, move.B.Y, move.To.X, move.To.Y)
		case 'Z':
			b.WriteString("Z")
		default:
			fmt.Fprintf(&b, "%c%.2f %.2f", move.Op, move.To.X, move.To.Y)
		}
	}
	fmt.Fprintf(&b, `" fill="%s"/><text y="%.2f" text-anchor="middle" font-weight="700" font-size="%.1f" fill="%s">%s</text></svg>`,
		m.Ink.Line, picture.Drop(m.Ink.Shape)*10+4.6, letterSize(m)*10, m.Ink.On, template.HTMLEscapeString(m.Letter))
	return template.HTML(b.String())
}

// letterSize is the size of a mark's letter, in radii of its shape.
func letterSize(m mark) float64 {
	if n := len([]rune(m.Letter)); n > 1 {
		return 1.9 / float64(n)
	}
	return 1.25
}
