package docx

import (
	"fmt"
	"strings"

	"plait.example/internal/format/table"
)

// Drawing is a picture in lines and words, as shapes that stay sharp at any size.
// It stands at the right edge of the first page, and the words flow beside it.
type Drawing struct {
	Width, Height float64 // of its sheet, in units of its own; the origin is the upper left corner
	Wide          float64 // points that it takes on the page; its height follows
	Alt           string  // what it shows, in words
	Shapes        []Shape // back to front
}

// Shape is a path that is filled, stroked or both, or words.
type Shape struct {
	Path         []Move
	Fill, Stroke string // RRGGBB; "" none
	Line         float64
	Dashed       bool

	Text  string
	X, Y  float64 // the words' baseline
	Size  float64
	Bold  bool
	Ink   string // RRGGBB
	Align string // "left", "center" or "right" of X
}

// Move is a step of a path: to X, Y after 'M' and 'L'; by way of A and B after 'C'; 'Z' closes.
type Move struct {
	Op                   byte
	AX, AY, BX, BY, X, Y float64
}

// Namespaces of drawings (ECMA-376 part 1, 20; [MS-ODRAWXML] 2.2 for shapes in Word).
const (
	drawingNames = ` xmlns:mc="http://schemas.openxmlformats.org/markup-compatibility/2006"` +
		` xmlns:wp="http://schemas.openxmlformats.org/drawingml/2006/wordprocessingDrawing"` +
		` xmlns:a="http://schemas.openxmlformats.org/drawingml/2006/main"` +
		` xmlns:wpg="` + groupName + `" xmlns:wps="http://schemas.microsoft.com/office/word/2010/wordprocessingShape"`
	groupName = "http://schemas.microsoft.com/office/word/2010/wordprocessingGroup"
)

const perPoint = 12700 // English metric units

// run is the drawing as a run of the first paragraph, on a page that is so wide
// between its margins, in twentieths of a point. It is placed by figures and not
// by alignment, which some programs do not pass on to the words in it.
func (d Drawing) run(page int) string {
	if d.Width <= 0 || d.Height <= 0 || d.Wide <= 0 {
		return ""
	}
	scale := d.Wide / d.Width * perPoint
	wide, high := int(d.Width*scale), int(d.Height*scale)
	var b strings.Builder
	fmt.Fprintf(&b, `<w:r><mc:AlternateContent><mc:Choice Requires="wpg"><w:drawing><wp:anchor distT="0" distB="0" distL="%d" distR="0" simplePos="0" relativeHeight="1" behindDoc="0" locked="0" layoutInCell="1" allowOverlap="0">`+
		`<wp:simplePos x="0" y="0"/><wp:positionH relativeFrom="margin"><wp:posOffset>%d</wp:posOffset></wp:positionH><wp:positionV relativeFrom="margin"><wp:posOffset>0</wp:posOffset></wp:positionV>`+
		`<wp:extent cx="%d" cy="%d"/><wp:effectExtent l="0" t="0" r="0" b="0"/><wp:wrapSquare wrapText="bothSides"/><wp:docPr id="1" name="Drawing" descr="%s"/><wp:cNvGraphicFramePr/>`+
		`<a:graphic><a:graphicData uri="%s"><wpg:wgp><wpg:cNvGrpSpPr/><wpg:grpSpPr><a:xfrm><a:off x="0" y="0"/><a:ext cx="%d" cy="%d"/><a:chOff x="0" y="0"/><a:chExt cx="%d" cy="%d"/></a:xfrm></wpg:grpSpPr>`,
		12*perPoint, max(0, page*perPoint/20-wide), wide, high, escaped(d.Alt), groupName, wide, high, wide, high)
	for i, s := range d.Shapes {
		s.write(&b, i+2, scale)
	}
	b.WriteString(`</wpg:wgp></a:graphicData></a:graphic></wp:anchor></w:drawing></mc:Choice></mc:AlternateContent></w:r>`)
	return b.String()
}

func (s Shape) write(b *strings.Builder, id int, scale float64) {
	if s.Text != "" {
		s.words(b, id, scale)
		return
	}
	left, top, right, bottom := s.bounds()
	if len(s.Path) < 2 {
		return
	}
	w, h := int((right-left)*scale), int((bottom-top)*scale)
	fmt.Fprintf(b, `<wps:wsp><wps:cNvPr id="%d" name="s%d"/><wps:cNvSpPr/><wps:spPr>`, id, id)
	fmt.Fprintf(b, `<a:xfrm><a:off x="%d" y="%d"/><a:ext cx="%d" cy="%d"/></a:xfrm><a:custGeom><a:avLst/><a:gdLst/><a:ahLst/><a:cxnLst/><a:rect l="0" t="0" r="r" b="b"/><a:pathLst><a:path w="%d" h="%d">`,
		int(left*scale), int(top*scale), w, h, w, h)
	at := func(x, y float64) string {
		return fmt.Sprintf(`<a:pt x="%d" y="%d"/>`, int((x-left)*scale), int((y-top)*scale))
	}
	for _, m := range s.Path {
		switch m.Op {
		case 'M':
			b.WriteString(`<a:moveTo>` + at(m.X, m.Y) + `</a:moveTo>`)
		case 'L':
			b.WriteString(`<a:lnTo>` + at(m.X, m.Y) + `</a:lnTo>`)
		case 'C':
			b.WriteString(`<a:cubicBezTo>` + at(m.AX, m.AY) + at(m.BX, m.BY) + at(m.X, m.Y) + `</a:cubicBezTo>`)
		case 'Z':
			b.WriteString(`<a:close/>`)
		}
	}
	b.WriteString(`</a:path></a:pathLst></a:custGeom>` + solid(s.Fill))
	if stroke := table.Colour(s.Stroke); stroke != "" {
		fmt.Fprintf(b, `<a:ln w="%d">%s`, max(1, int(s.Line*scale)), solid(stroke))
		if s.Dashed {
			b.WriteString(`<a:prstDash val="sysDash"/>`)
		}
		b.WriteString(`</a:ln>`)
	} else {
		b.WriteString(`<a:ln><a:noFill/></a:ln>`)
	}
	b.WriteString(`</wps:spPr><wps:bodyPr/></wps:wsp>`)
}

func solid(colour string) string {
	if c := table.Colour(colour); c != "" {
		return `<a:solidFill><a:srgbClr val="` + c + `"/></a:solidFill>`
	}
	return `<a:noFill/>`
}

// bounds is the box around a path and the handles of its curves.
func (s Shape) bounds() (left, top, right, bottom float64) {
	first := true
	for _, m := range s.Path {
		points := [][2]float64{{m.X, m.Y}}
		if m.Op == 'C' {
			points = append(points, [2]float64{m.AX, m.AY}, [2]float64{m.BX, m.BY})
		}
		if m.Op == 'Z' {
			continue
		}
		for _, p := range points {
			if first {
				left, top, right, bottom, first = p[0], p[1], p[0], p[1], false
			}
			left, top, right, bottom = min(left, p[0]), min(top, p[1]), max(right, p[0]), max(bottom, p[1])
		}
	}
	return left, top, right, bottom
}

// words writes words in a box without edges that is wide enough for them.
func (s Shape) words(b *strings.Builder, id int, scale float64) {
	wide := (float64(len([]rune(s.Text)))*0.72 + 1) * s.Size // a letter is at most so much of its size
	left := s.X
	align := s.Align
	switch align {
	case "center":
		left -= wide / 2
	case "right":
		left -= wide
	default:
		align = "left"
	}
	top, high := s.Y-1.05*s.Size, 1.4*s.Size
	form := fmt.Sprintf(`<w:sz w:val="%d"/>`, max(4, int(2*s.Size*scale/perPoint+0.5)))
	if ink := table.Colour(s.Ink); ink != "" {
		form = `<w:color w:val="` + ink + `"/>` + form
	}
	if s.Bold {
		form = `<w:b/>` + form
	}
	fmt.Fprintf(b, `<wps:wsp><wps:cNvPr id="%d" name="s%d"/><wps:cNvSpPr txBox="1"/><wps:spPr><a:xfrm><a:off x="%d" y="%d"/><a:ext cx="%d" cy="%d"/></a:xfrm><a:prstGeom prst="rect"><a:avLst/></a:prstGeom><a:noFill/><a:ln><a:noFill/></a:ln></wps:spPr>`+
		`<wps:txbx><w:txbxContent><w:p><w:pPr><w:spacing w:before="0" w:after="0"/><w:jc w:val="%s"/></w:pPr><w:r><w:rPr>%s</w:rPr><w:t xml:space="preserve">%s</w:t></w:r></w:p></w:txbxContent></wps:txbx>`+
		`<wps:bodyPr rot="0" vert="horz" wrap="square" lIns="0" tIns="0" rIns="0" bIns="0" anchor="t" anchorCtr="0"><a:noAutofit/></wps:bodyPr></wps:wsp>`,
		id, id, int(left*scale), int(top*scale), int(wide*scale), int(high*scale), align, form, escaped(s.Text))
}
