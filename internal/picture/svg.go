package picture

import (
	"bytes"
	"fmt"
	"math"
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"

	"plait.example/internal/colour"
)

const fontFamily = "'Atkinson Hyperlegible Next', Andika, Verdana, sans-serif"

// SVG writes the drawing. Only presentation attributes are used, so that it
// stands under a content security policy that allows no inline style.
func (d *Drawing) SVG(o Options) []byte {
	w := &svg{see: func(hex string) string { return hex }}
	if o.Grey {
		w.see = colour.Grey
	}
	id := "plait"
	if s := plainID(o.ID); s != "" {
		id += "-" + s
	}
	fmt.Fprintf(&w.b, `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 %s %s" width="%s" height="%s" role="img" aria-labelledby="%s-title %s-desc" font-family="%s" fill="none" stroke-linejoin="round">`+"\n",
		short(d.Width), short(d.Height), short(d.Width), short(d.Height), id, id, fontFamily)
	fmt.Fprintf(&w.b, "<title id=\"%s-title\">%s</title>\n<desc id=\"%s-desc\">%s</desc>\n", id, escape(d.Title), id, escape(d.Desc))
	for _, m := range d.Marks {
		w.mark(m)
	}
	w.b.WriteString("</svg>\n")
	return w.b.Bytes()
}

type svg struct {
	b   bytes.Buffer
	see func(string) string
}

func (w *svg) mark(m Mark) {
	switch m.Kind {
	case Open:
		w.b.WriteString("<g")
		w.attribute("class", m.Class)
		w.attribute("data-row", m.Row)
		w.b.WriteString(">")
		if m.Text != "" {
			fmt.Fprintf(&w.b, "<title>%s</title>", escape(m.Text))
		}
		w.b.WriteString("\n")
	case Close:
		w.b.WriteString("</g>\n")
	case Text:
		w.text(m)
	case Figure:
		w.shape(m)
	}
}

func (w *svg) attribute(name, value string) {
	if value != "" {
		fmt.Fprintf(&w.b, ` %s="%s"`, name, escape(value))
	}
}

func (w *svg) paint(name, hex string) {
	if hex != "" {
		w.attribute(name, w.see(hex))
	}
}

func (w *svg) shape(m Mark) {
	w.b.WriteString(`<path d="`)
	w.path(m.Path)
	w.b.WriteString(`"`)
	w.paint("fill", m.Fill)
	if m.Stroke != "" {
		w.paint("stroke", m.Stroke)
		w.attribute("stroke-width", short(m.Line))
	}
	if len(m.Dash) > 0 {
		parts := make([]string, len(m.Dash))
		for i, v := range m.Dash {
			parts[i] = short(v)
		}
		w.attribute("stroke-dasharray", strings.Join(parts, " "))
		if m.DashFrom != 0 {
			w.attribute("stroke-dashoffset", short(m.DashFrom))
		}
	}
	if m.Round {
		w.attribute("stroke-linecap", "round")
	}
	w.b.WriteString("/>\n")
}

func (w *svg) path(moves []Move) {
	for i, m := range moves {
		if i > 0 && m.Op == 'M' {
			w.b.WriteByte(' ')
		}
		w.b.WriteByte(m.Op)
		switch m.Op {
		case 'Z':
		case 'C':
			w.numbers(m.A.X, m.A.Y, m.B.X, m.B.Y, m.To.X, m.To.Y)
		default:
			w.numbers(m.To.X, m.To.Y)
		}
	}
}

func (w *svg) text(m Mark) {
	if m.Text == "" {
		return
	}
	fmt.Fprintf(&w.b, `<text x="%s" y="%s" font-size="%s"`, short(m.X), short(m.Y), short(m.Size))
	w.paint("fill", m.Fill)
	if m.Bold {
		w.attribute("font-weight", "700")
	}
	if m.Anchor != "" && m.Anchor != Start {
		w.attribute("text-anchor", string(m.Anchor))
	}
	if len(m.Text) > 3 && measured(m.Text) {
		// Where the font is not at hand, another is fitted into its room.
		w.attribute("textLength", short(textWidth(m.Text, m.Size, m.Bold)))
		w.attribute("lengthAdjust", "spacingAndGlyphs")
	}
	if m.Turn != 0 {
		w.attribute("transform", fmt.Sprintf("rotate(%s %s %s)", short(m.Turn), short(m.X), short(m.Y)))
	}
	fmt.Fprintf(&w.b, ">%s</text>\n", escape(m.Text))
}

// numbers writes numbers with spaces between.
func (w *svg) numbers(all ...float64) {
	for i, v := range all {
		if i > 0 {
			w.b.WriteByte(' ')
		}
		w.b.Write(appendShort(w.b.AvailableBuffer(), v))
	}
}

// short writes a number to one decimal, without a needless zero.
func short(v float64) string { return string(appendShort(nil, v)) }

func appendShort(b []byte, v float64) []byte {
	tenths := math.Round(v * 10)
	if math.IsNaN(tenths) || math.Abs(tenths) > 1e15 {
		return append(b, '0')
	}
	n := int64(tenths)
	if n < 0 {
		b, n = append(b, '-'), -n
	}
	b = strconv.AppendInt(b, n/10, 10)
	if n%10 != 0 {
		b = append(b, '.', byte('0'+n%10))
	}
	return b
}

// escape makes text safe inside elements and quoted attributes. What XML 1.0
// cannot hold, and what turns the direction of writing, is left out.
func escape(s string) string {
	if !strings.ContainsFunc(s, unsafe) {
		return s
	}
	var b strings.Builder
	for _, r := range s {
		switch {
		case r == '&':
			b.WriteString("&amp;")
		case r == '<':
			b.WriteString("&lt;")
		case r == '>':
			b.WriteString("&gt;")
		case r == '"':
			b.WriteString("&#34;")
		case r == '\'':
			b.WriteString("&#39;")
		case r == '\n' || r == '\t' || r == '\r':
			b.WriteByte(' ')
		case r == utf8.RuneError || unicode.IsControl(r) || unicode.Is(unicode.Bidi_Control, r) || r == 0xFFFE || r == 0xFFFF:
		default:
			b.WriteRune(r)
		}
	}
	return b.String()
}

// unsafe says whether a letter is one that escape may change.
func unsafe(r rune) bool {
	return r < ' ' || r > 0x7E || strings.ContainsRune("&<>\"'", r)
}

// plainID keeps what an id can hold without quoting.
func plainID(s string) string {
	return strings.Map(func(r rune) rune {
		if r == '-' || r < 128 && (unicode.IsLetter(r) || unicode.IsDigit(r)) {
			return r
		}
		return -1
	}, s)
}
