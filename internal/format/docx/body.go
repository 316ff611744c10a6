package docx

import (
	"cmp"
	"fmt"
	"slices"
	"strconv"
	"strings"

	"plait.example/internal/format/packed"
)

// reader turns a body's XML into blocks. What a paragraph holds that is no text
// of its line (a text box) comes after it.
type reader struct {
	styles  styles
	numbers *numbering
	boxes   []*packed.Element // text boxes of the paragraph that is being read
	ticked  bool              // a box in the cell that is being read is ticked
	joined  *Paragraph        // its mark is deleted: the next paragraph goes on with it
}

// dropped are elements whose content is not in the text: deletions, where moved
// text was, the codes of fields, properties, old copies of what stands beside them.
var dropped = map[string]bool{
	"del": true, "moveFrom": true, "instrText": true, "delText": true, "delInstrText": true, "pPr": true, "rPr": true, "sdtPr": true, "sdtEndPr": true,
	"Fallback": true, "rubyPr": true, "rt": true, "tblPr": true, "tblGrid": true, "trPr": true, "tcPr": true, "sectPr": true, "altChunk": true,
}

// blocks reads the paragraphs and tables inside an element, in content controls
// and the like too.
func (r *reader) blocks(in *packed.Element) (list []Block) {
	for _, e := range in.Children {
		switch {
		case e.Name == "sdtPr":
			r.ticked = r.ticked || e.Child("checkbox").On("checked")
		case dropped[e.Name]:
		case e.Name == "p":
			list = r.paragraph(list, e)
		case e.Name == "tbl":
			if t := r.table(e); len(t.Rows) > 0 {
				list = append(list, Block{Table: &t})
			}
			r.joined = nil
		default:
			list = append(list, r.blocks(e)...)
		}
	}
	return list
}

func (r *reader) paragraph(list []Block, e *packed.Element) []Block {
	format := e.Child("pPr")
	outer := r.boxes
	r.boxes = nil
	p := r.joined
	if p == nil {
		p = &Paragraph{source: e}
		list = append(list, Block{Paragraph: p})
	}
	r.runs(p, e)
	r.joined = nil
	if format.Path("rPr", "del") != nil || format.Path("rPr", "moveFrom") != nil {
		r.joined = p
	}
	if p.Style == "" && p.List == nil && len(p.Runs) > 0 {
		r.form(p, format)
	}
	boxes := r.boxes
	r.boxes = outer
	for _, box := range boxes {
		list = append(list, r.blocks(box)...)
	}
	return list
}

// form gives a paragraph its style, heading and list. Only those with text
// count in a list, as what is deleted does not.
func (r *reader) form(p *Paragraph, format *packed.Element) {
	id := format.Val("pStyle")
	if p.Style = r.styles[id].name; p.Style == "" {
		p.Style = id
	}
	if id == "" {
		p.Style = ""
	}
	p.Heading = r.styles.heading(id)
	if n, err := strconv.Atoi(format.Val("outlineLvl")); err == nil && p.Heading == 0 && n >= 0 && n < 9 {
		p.Heading = n + 1
	}
	p.Shade = shade(format.Child("shd"))
	p.ink, p.letters = r.styles.colours(id)
	numID, level := r.styles.list(id)
	if own := format.Child("numPr"); own != nil {
		if s := own.Val("numId"); s != "" {
			numID = s
		}
		if n, err := strconv.Atoi(own.Val("ilvl")); err == nil {
			level = n
		}
	}
	p.List = r.numbers.next(numID, level)
}

// runs reads the text inside a paragraph.
func (r *reader) runs(p *Paragraph, in *packed.Element) {
	for _, e := range in.Children {
		switch {
		case e.Name == "sdtPr":
			r.ticked = r.ticked || e.Child("checkbox").On("checked")
		case dropped[e.Name]:
		case e.Name == "r":
			r.run(p, e)
		case e.Name == "txbxContent":
			r.boxes = append(r.boxes, e)
		case e.Name == "f" && e.Child("num") != nil && e.Child("den") != nil: // a fraction of an equation
			r.runs(p, e.Child("num"))
			p.Runs = append(p.Runs, Run{Text: "/"})
			r.runs(p, e.Child("den"))
		default:
			r.runs(p, e)
		}
	}
}

// longRun is the length in bytes from which a run is not joined with the next,
// so that a paragraph of a million runs is read in one pass.
const longRun = 4096

func (r *reader) run(p *Paragraph, e *packed.Element) {
	format := e.Child("rPr")
	if format.On("vanish") {
		return
	}
	run := inked(format)
	ink, shade := r.styles.colours(format.Val("rStyle"))
	run.Colour, run.Shade = cmp.Or(run.Colour, ink), cmp.Or(run.Shade, shade)
	var text strings.Builder
	r.characters(&text, e)
	if run.Text = text.String(); run.Text == "" {
		return
	}
	if n := len(p.Runs); n > 0 && len(p.Runs[n-1].Text) < longRun {
		last := p.Runs[n-1]
		if last.Text = run.Text; last == run {
			p.Runs[n-1].Text += run.Text
			return
		}
	}
	p.Runs = append(p.Runs, run)
}

// inked is the form of a run without its text.
func inked(format *packed.Element) Run {
	run := Run{
		Colour: colour(format.Val("color")), Shade: shade(format.Child("shd")),
		Bold: format.On("b"), Italic: format.On("i"), Struck: format.On("strike") || format.On("dstrike"),
	}
	if light := format.Val("highlight"); light != "" && light != "none" {
		run.Shade = light
	}
	return run
}

// characters writes what a run says.
func (r *reader) characters(b *strings.Builder, in *packed.Element) {
	for _, e := range in.Children {
		switch e.Name {
		case "t":
			b.WriteString(e.Content())
		case "tab", "ptab":
			b.WriteByte('\t')
		case "br", "cr":
			b.WriteByte('\n')
		case "noBreakHyphen":
			b.WriteByte('-')
		case "sym":
			b.WriteString(symbol(e))
		case "checkBox": // of a form of the old kind
			r.ticked = r.ticked || e.On("checked") || e.Child("checked") == nil && e.On("default")
		case "txbxContent":
			r.boxes = append(r.boxes, e)
		default:
			if !dropped[e.Name] {
				r.characters(b, e)
			}
		}
	}
}

// symbol is a character of a font that has its own: the signs that stand in
// recipes, by the table of the Symbol font; nothing for others.
func symbol(e *packed.Element) string {
	code, err := strconv.ParseUint(e.Attr("char"), 16, 32)
	if err != nil {
		return ""
	}
	if strings.EqualFold(e.Attr("font"), "wingdings") {
		return map[uint64]string{0xFC: "✓", 0xFE: "☑", 0xFD: "☒", 0xA8: "☐", 0x6F: "☐", 0xE0: "→"}[code&0xFF]
	}
	if !strings.EqualFold(e.Attr("font"), "symbol") {
		if code < 0xE000 && code >= 0x20 {
			return string(rune(code))
		}
		return ""
	}
	return map[uint64]string{0xB0: "°", 0xB1: "±", 0xB4: "×", 0xB7: "·", 0xA4: "⁄", 0xA3: "≤", 0xB3: "≥", 0xBB: "≈"}[code&0xFF]
}

// colour is RRGGBB in capitals, "" for automatic ones.
func colour(s string) string {
	_, err := strconv.ParseUint(s, 16, 32)
	if len(s) != 6 || err != nil {
		return ""
	}
	return strings.ToUpper(s)
}

// maxColumns is how many columns a table has at most in Word.
const maxColumns = 63

func (r *reader) table(e *packed.Element) (t Table) {
	t.name = e.Child("tblPr").Val("tblCaption")
	for _, row := range flat(e, "tr") {
		format := row.Child("trPr")
		if format.Child("del") != nil {
			continue
		}
		r.joined = nil
		one := Row{Header: format.On("tblHeader"), source: row}
		if n, err := strconv.Atoi(format.Val("gridBefore")); err == nil && n > 0 && n <= maxColumns {
			one.before = n
		}
		for _, c := range flat(row, "tc") {
			if c.Path("tcPr", "cellDel") == nil {
				one.Cells = append(one.Cells, r.cell(c))
			}
		}
		t.Rows = append(t.Rows, one)
	}
	down(t.Rows)
	return t
}

// flat is the children of a name, also those in content controls and insertions.
func flat(in *packed.Element, name string) (list []*packed.Element) {
	for _, e := range in.Children {
		switch {
		case e.Name == name:
			list = append(list, e)
		case !dropped[e.Name] && e.Name != "tbl" && e.Name != "p":
			list = append(list, flat(e, name)...)
		}
	}
	return list
}

// shade is the colour of a shading: its fill, its pattern's colour when that
// covers all, or so many parts in a hundred of it (ECMA-376 part 1, 17.18.78).
func shade(shd *packed.Element) string {
	fill, ink := colour(shd.Attr("fill")), colour(shd.Attr("color"))
	share := 0
	if n, is := strings.CutPrefix(shd.Attr("val"), "pct"); is {
		share, _ = strconv.Atoi(n)
	} else if shd.Attr("val") == "solid" {
		share = 100
	}
	if share <= 0 || share > 100 {
		return fill
	}
	over, err := strconv.ParseInt(ink, 16, 64)
	if err != nil {
		over = 0 // automatic: black
	}
	under, err := strconv.ParseInt(fill, 16, 64)
	if err != nil {
		under = 0xFFFFFF
	}
	mixed := int64(0)
	for _, shift := range []int{16, 8, 0} {
		a, b := over>>shift&255, under>>shift&255
		mixed |= (a*int64(share) + b*int64(100-share) + 50) / 100 << shift
	}
	return fmt.Sprintf("%06X", mixed)
}

func (r *reader) cell(e *packed.Element) Cell {
	outer := r.ticked
	r.ticked = false
	defer func() { r.ticked = outer }()
	format := e.Child("tcPr")
	c := Cell{Span: 1, Down: 1, Shade: shade(format.Child("shd"))}
	if n, err := strconv.Atoi(format.Val("gridSpan")); err == nil && n > 1 && n <= maxColumns {
		c.Span = n
	}
	if merge := format.Child("vMerge"); merge != nil && merge.Attr("val") != "restart" {
		c.covered, c.Down = true, 0
	}
	r.joined = nil
	c.Blocks = r.blocks(e)
	c.ticked = r.ticked
	r.joined = nil
	return c
}

// down counts the rows that cells cover: a cell that goes on from above belongs
// to the one that begins in the same column there.
func down(rows []Row) {
	above := map[int]*Cell{} // by first column, in the row before
	for i := range rows {
		now, column := map[int]*Cell{}, rows[i].before
		for k := range rows[i].Cells {
			c := &rows[i].Cells[k]
			if origin := above[column]; c.covered && origin != nil {
				origin.Down++
				now[column] = origin
			} else {
				c.covered, c.Down = false, 1
				now[column] = c
			}
			column += c.Span
		}
		above = now
	}
}

// Text is the paragraph's words.
func (p *Paragraph) Text() string {
	var b strings.Builder
	for _, r := range p.Runs {
		b.WriteString(r.Text)
	}
	return b.String()
}

// empty says whether a block says nothing.
func (b Block) empty() bool {
	if b.Paragraph != nil {
		return !slices.ContainsFunc(b.Paragraph.Runs, func(r Run) bool { return strings.TrimSpace(r.Text) != "" })
	}
	for _, row := range b.Table.Rows {
		for _, c := range row.Cells {
			if slices.ContainsFunc(c.Blocks, func(b Block) bool { return !b.empty() }) {
				return false
			}
		}
	}
	return true
}
