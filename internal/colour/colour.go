// Package colour owns the inks of the dishes and the arithmetic that justifies
// them: contrast, colour difference, and how eyes that lack a cone and grey
// photocopiers see. It knows nothing of dishes, plans or drawing, and imports none of our other rooms.
//
// Colours are written #RRGGBB. A string that is not one counts as black.
package colour

import (
	"fmt"
	"math"
	"strconv"
)

// RGB is a colour in linear sRGB, each part 0 to 1.
type RGB struct{ R, G, B float64 }

// Parse reads #RRGGBB and says whether it was one.
func Parse(hex string) (RGB, bool) {
	if len(hex) != 7 || hex[0] != '#' {
		return RGB{}, false
	}
	n, err := strconv.ParseUint(hex[1:], 16, 32)
	if err != nil {
		return RGB{}, false
	}
	part := func(shift uint) float64 { return linear(float64(n>>shift&255) / 255) }
	return RGB{part(16), part(8), part(0)}, true
}

// Hex writes the colour as #RRGGBB, each part clipped to 0 to 1 and rounded to 8 bits.
func (c RGB) Hex() string {
	part := func(v float64) int {
		return int(math.Round(255 * curve(min(max(v, 0), 1))))
	}
	return fmt.Sprintf("#%02X%02X%02X", part(c.R), part(c.G), part(c.B))
}

// Luminance is the relative luminance of WCAG 2.2, 0 black to 1 white.
func (c RGB) Luminance() float64 { return 0.2126*c.R + 0.7152*c.G + 0.0722*c.B }

// Contrast is the contrast ratio of WCAG 2.2, 1 to 21, whichever of the two is
// the lighter. Text needs 4.5 (criterion 1.4.3), lines and shapes 3 (1.4.11).
func Contrast(a, b string) float64 {
	ca, _ := Parse(a)
	cb, _ := Parse(b)
	la, lb := ca.Luminance(), cb.Luminance()
	return (max(la, lb) + 0.05) / (min(la, lb) + 0.05)
}

// Grey is the colour as a grey photocopier sees it: a grey of the same luminance.
func Grey(hex string) string {
	c, _ := Parse(hex)
	l := c.Luminance()
	return RGB{l, l, l}.Hex()
}

// Mix is a with a share of b, 0 to 1, in linear light.
func Mix(a, b string, share float64) string {
	ca, _ := Parse(a)
	cb, _ := Parse(b)
	mix := func(x, y float64) float64 { return x + (y-x)*share }
	return RGB{mix(ca.R, cb.R), mix(ca.G, cb.G), mix(ca.B, cb.B)}.Hex()
}

// linear undoes the transfer curve of sRGB (IEC 61966-2-1); curve applies it.
func linear(v float64) float64 {
	if v <= 0.04045 {
		return v / 12.92
	}
	return math.Pow((v+0.055)/1.055, 2.4)
}

func curve(v float64) float64 {
	if v <= 0.0031308 {
		return v * 12.92
	}
	return 1.055*math.Pow(v, 1/2.4) - 0.055
}
