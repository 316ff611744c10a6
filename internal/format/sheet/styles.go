package sheet

import (
	"math"
	"strconv"

	"plait.example/internal/format/packed"
	"plait.example/internal/format/table"
)

// styles are how cells look, by the number that a cell gives.
type styles struct {
	theme   []string // colours by their numbers in cells
	palette []string
	looks   []look
}

// look is how a cell looks.
type look struct {
	font   table.Piece // without words
	shade  string
	number string // the format of its number
}

// themeOrder are the names of a theme's colours in the order of their numbers
// in cells, in which the first two pairs are swapped.
var themeOrder = []string{"lt1", "dk1", "lt2", "dk2", "accent1", "accent2", "accent3", "accent4", "accent5", "accent6", "hlink", "folHlink"}

// usualPalette are the indexed colours (ECMA-376 part 1, 18.8.27) from number 8;
// the eight before are the same as these.
var usualPalette = []string{
	"000000", "FFFFFF", "FF0000", "00FF00", "0000FF", "FFFF00", "FF00FF", "00FFFF", "800000", "008000", "000080", "808000", "800080", "008080", "C0C0C0", "808080",
	"9999FF", "993366", "FFFFCC", "CCFFFF", "660066", "FF8080", "0066CC", "CCCCFF", "000080", "FF00FF", "FFFF00", "00FFFF", "800080", "800000", "008080", "0000FF",
	"00CCFF", "CCFFFF", "CCFFCC", "FFFF99", "99CCFF", "FF99CC", "CC99FF", "FFCC99", "3366FF", "33CCCC", "99CC00", "FFCC00", "FF9900", "FF6600", "666699", "969696",
	"003366", "339966", "003300", "333300", "993300", "993366", "333399", "333333",
}

func stylesOf(theme, root *packed.Element) (s styles) {
	scheme := theme.Path("themeElements", "clrScheme")
	for _, name := range themeOrder {
		c := scheme.Child(name)
		value := c.Val("srgbClr")
		if value == "" {
			value = c.Child("sysClr").Attr("lastClr")
		}
		s.theme = append(s.theme, table.Colour(value))
	}
	s.palette = append(append(s.palette, usualPalette[:8]...), usualPalette...)
	for i, c := range root.Path("colors", "indexedColors").All() {
		if rgb := c.Attr("rgb"); i < len(s.palette) && len(rgb) == 8 {
			s.palette[i] = table.Colour(rgb[2:])
		}
	}
	formats := map[string]string{}
	for _, f := range root.Child("numFmts").All() {
		formats[f.Attr("numFmtId")] = f.Attr("formatCode")
	}
	fonts, fills := root.Child("fonts").All(), root.Child("fills").All()
	for _, xf := range root.Child("cellXfs").All() {
		var l look
		if n, err := strconv.Atoi(xf.Attr("fontId")); err == nil && n >= 0 && n < len(fonts) {
			l.font = s.font(fonts[n])
		}
		if n, err := strconv.Atoi(xf.Attr("fillId")); err == nil && n >= 0 && n < len(fills) {
			l.shade = s.fill(fills[n])
		}
		id := xf.Attr("numFmtId")
		if l.number = formats[id]; l.number == "" {
			l.number = usualFormats[id]
		}
		s.looks = append(s.looks, l)
	}
	return s
}

func (s styles) look(id string) look {
	if n, err := strconv.Atoi(id); err == nil && n >= 0 && n < len(s.looks) {
		return s.looks[n]
	}
	return look{}
}

// font is the form of letters.
func (s styles) font(e *packed.Element) table.Piece {
	return table.Piece{Ink: table.Ink(s.colour(e.Child("color"))), Bold: e.On("b"), Italic: e.On("i"), Struck: e.On("strike")}
}

// fill is the colour behind a cell.
func (s styles) fill(e *packed.Element) string {
	if g := e.Child("gradientFill"); g != nil {
		return table.Shade(s.colour(g.Path("stop", "color")))
	}
	p := e.Child("patternFill")
	switch p.Attr("patternType") {
	case "", "none", "gray125":
		return ""
	}
	return table.Shade(s.colour(p.Child("fgColor")))
}

func (s styles) colour(e *packed.Element) string {
	if rgb := e.Attr("rgb"); len(rgb) == 8 {
		return tinted(table.Colour(rgb[2:]), e.Attr("tint"))
	} else if len(rgb) == 6 {
		return table.Colour(rgb)
	}
	if n, err := strconv.Atoi(e.Attr("theme")); err == nil && n >= 0 && n < len(s.theme) {
		return tinted(s.theme[n], e.Attr("tint"))
	}
	if n, err := strconv.Atoi(e.Attr("indexed")); err == nil && n >= 0 && n < len(s.palette) {
		return s.palette[n]
	}
	return ""
}

// tinted is a colour made lighter (tint above 0, to 1) or darker (below, to -1)
// in its luminance (ECMA-376 part 1, 18.8.19).
func tinted(rgb, tint string) string {
	by, err := strconv.ParseFloat(tint, 64)
	n, err2 := strconv.ParseUint(rgb, 16, 32)
	if err != nil || err2 != nil || by == 0 || math.Abs(by) > 1 {
		return rgb
	}
	r, g, b := float64(n>>16)/255, float64(n>>8&255)/255, float64(n&255)/255
	high, low := max(r, g, b), min(r, g, b)
	light := (high + low) / 2
	to := light * (1 + by)
	if by > 0 {
		to = light*(1-by) + by
	}
	var out uint64
	for _, c := range []float64{r, g, b} {
		out = out<<8 | uint64(math.Round(255*relit(c, light, to)))
	}
	return table.Colour(strconv.FormatUint(1<<24|out, 16)[1:])
}

// relit is a channel when the luminance goes from one value to another with hue
// and saturation kept.
func relit(c, from, to float64) float64 {
	reach := func(l float64) float64 { return 1 - math.Abs(2*l-1) } // the widest that channels stand apart at a luminance
	if reach(from) == 0 {
		return to
	}
	return min(max(to+(c-from)*reach(to)/reach(from), 0), 1)
}
