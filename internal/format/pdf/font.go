package pdf

import (
	"strings"

	"golang.org/x/text/encoding/charmap"
)

// font tells what the codes of a string say and how wide they are.
type font struct {
	wide    bool        // codes of two bytes, or as the map says
	simple  [256]string // text of each code of a simple font
	unicode *cmap       // nil when the font has none
	widths  map[int]float64
	usual   float64 // width of codes that are not in widths
	known   bool    // whether a wide font's codes have a meaning at all
}

// glyph is one code of a string: its text, its width in units of the font's
// size, and whether it is the code that word spacing is added to.
type glyph struct {
	text  string
	width float64
	space bool
}

// unknown stands for a code that has no text.
const unknown = "\uFFFD"

func (f *file) font(o any) *font {
	d := f.dict(o)
	t := &font{widths: map[int]float64{}, usual: 0.5}
	if s, is := f.resolve(d["ToUnicode"]).(*stream); is {
		t.unicode = f.toUnicode(s)
	}
	if f.name(d["Subtype"]) == "Type0" {
		f.composite(t, d)
		return t
	}
	f.encode(t, d)
	f.simpleWidths(t, d)
	return t
}

// encode fills in the text of a simple font's codes: base encoding, differences, ToUnicode above both.
func (f *file) encode(t *font, d dict) {
	encoding := f.resolve(d["Encoding"])
	base, is := encoding.(name)
	if !is {
		base = f.name(f.get(encoding, "BaseEncoding"))
	}
	symbolic := int(f.number(f.get(d["FontDescriptor"], "Flags")))&4 != 0
	for i := range t.simple {
		t.simple[i] = baseText(base, byte(i), symbolic)
	}
	code := 0
	for _, o := range f.array(f.get(encoding, "Differences")) {
		switch o := f.resolve(o).(type) {
		case float64:
			code = int(o)
		case name:
			if text := glyphText(o); code >= 0 && code < 256 && text != "" {
				t.simple[code] = text
			}
			code++
		}
	}
	if t.unicode != nil {
		for code, text := range t.unicode.text {
			if len(code) == 1 && text != "" {
				t.simple[code[0]] = text
			} else if len(code) == 2 && code[0] == 0 && text != "" { // written wrongly by some programs
				t.simple[code[1]] = text
			}
		}
	}
}

// baseText is the text of a code in a base encoding; without one it is the
// standard encoding, of which what lies beyond ASCII is read as Windows-1252.
func baseText(base name, code byte, symbolic bool) string {
	if base == "MacRomanEncoding" {
		return clean(string(charmap.Macintosh.DecodeByte(code)))
	}
	if base == "" && !symbolic {
		switch code {
		case 0x27:
			return "’"
		case 0x60:
			return "‘"
		case 0xAE:
			return "fi"
		case 0xAF:
			return "fl"
		}
	}
	if code == 0x95 {
		return "•"
	}
	return clean(string(charmap.Windows1252.DecodeByte(code)))
}

func (f *file) simpleWidths(t *font, d dict) {
	scale := 0.001
	if f.name(d["Subtype"]) == "Type3" {
		if m := f.array(d["FontMatrix"]); len(m) == 6 {
			scale = f.number(m[0])
		}
	}
	first := int(f.number(d["FirstChar"]))
	widths := f.array(d["Widths"])
	for i, w := range widths[:min(len(widths), 256)] {
		t.widths[first+i] = f.number(w) * scale
	}
	if missing := f.number(f.get(d["FontDescriptor"], "MissingWidth")); missing > 0 {
		t.usual = missing * scale
	}
	if len(widths) == 0 {
		standardWidths(t, string(f.name(d["BaseFont"])))
	}
}

// helvetica is the widths of codes 32 to 126 in the standard font of that name
// (Adobe's font metrics, from memory). The other proportional standard fonts
// are near enough to tell a gap between words from one between letters.
var helvetica = [95]int{
	278, 278, 355, 556, 556, 889, 667, 191, 333, 333, 389, 584, 278, 333, 278, 278, 556, 556, 556, 556, 556, 556, 556, 556, 556, 556, 278, 278, 584, 584, 584, 556,
	1015, 667, 667, 722, 722, 667, 611, 778, 722, 278, 500, 667, 556, 833, 722, 778, 667, 778, 722, 667, 611, 722, 667, 944, 667, 667, 611, 278, 278, 278, 469, 556,
	333, 556, 556, 500, 556, 556, 278, 556, 556, 222, 222, 500, 222, 833, 556, 556, 556, 556, 333, 500, 278, 556, 500, 722, 500, 500, 500, 334, 260, 334, 584,
}

func standardWidths(t *font, base string) {
	if strings.Contains(base, "Courier") {
		t.usual = 0.6
		return
	}
	factor := 0.001
	if strings.Contains(base, "Times") {
		factor = 0.0009
	}
	t.usual = 556 * factor
	for i, w := range helvetica {
		t.widths[32+i] = float64(w) * factor
	}
}

// composite reads a font whose codes have several bytes (9.7).
func (f *file) composite(t *font, d dict) {
	t.wide, t.usual = true, 1
	if kids := f.array(d["DescendantFonts"]); len(kids) > 0 {
		below := f.dict(kids[0])
		if w, is := f.resolve(below["DW"]).(float64); is {
			t.usual = w / 1000
		}
		f.wideWidths(t, f.array(below["W"]))
	}
	t.known = t.unicode != nil && len(t.unicode.text) > 0
}

// wideWidths reads "first [w w w]" and "first last w" (9.7.4.3).
func (f *file) wideWidths(t *font, w array) {
	for i := 0; i+1 < len(w) && len(t.widths) < maxMappings; {
		first := int(f.number(w[i]))
		if list, is := f.resolve(w[i+1]).(array); is {
			for k, v := range list[:min(len(list), maxMappings)] {
				t.widths[first+k] = f.number(v) / 1000
			}
			i += 2
			continue
		}
		if i+2 >= len(w) {
			return
		}
		last := int(f.number(w[i+1]))
		for code := first; code <= last && code < first+maxMappings && len(t.widths) < maxMappings; code++ {
			t.widths[code] = f.number(w[i+2]) / 1000
		}
		i += 3
	}
}

// glyphs is a string's codes.
func (t *font) glyphs(s string) (list []glyph) {
	if !t.wide {
		list = make([]glyph, len(s))
		for i := range len(s) {
			list[i] = glyph{t.simple[s[i]], t.width(int(s[i])), s[i] == ' '}
		}
		return list
	}
	for len(s) > 0 {
		n := min(t.length(s), len(s))
		code, g := 0, glyph{text: unknown, space: s[:n] == " "}
		for i := range n {
			code = code<<8 | int(s[i])
		}
		g.width = t.width(code)
		if t.unicode != nil {
			if text, has := t.unicode.text[s[:n]]; has {
				g.text = text
			}
		}
		list = append(list, g)
		s = s[n:]
	}
	return list
}

// length is how many bytes the next code has.
func (t *font) length(s string) int {
	if t.unicode == nil || t.unicode.bytes[2] || !t.unicode.bytes[1] && !t.unicode.bytes[3] && !t.unicode.bytes[4] {
		return 2
	}
	for n := 1; n < len(t.unicode.bytes) && n <= len(s); n++ {
		if _, has := t.unicode.text[s[:n]]; has && t.unicode.bytes[n] {
			return n
		}
	}
	return 1
}

func (t *font) width(code int) float64 {
	if w, has := t.widths[code]; has {
		return w
	}
	return t.usual
}
