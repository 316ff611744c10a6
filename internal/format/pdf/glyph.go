package pdf

import (
	"strconv"
	"strings"

	"golang.org/x/text/unicode/norm"
)

// glyphText is the text of a glyph's name, as far as the Adobe Glyph List For New
// Fonts and its rules say it: letters, accented letters, "uni00BD", "f_i",
// "a.alt". The signs below are those of the Latin character set (ISO 32000-1,
// annex D.2) and the fractions. "" when it is not known.
func glyphText(n name) string {
	s, _, _ := strings.Cut(string(n), ".")
	if parts := strings.Split(s, "_"); len(parts) > 1 && len(parts) < 6 {
		var b strings.Builder
		for _, p := range parts {
			b.WriteString(glyphText(name(p)))
		}
		return b.String()
	}
	if len(s) == 1 && s[0] >= 'A' {
		return s
	}
	if sign, known := signs[s]; known {
		return sign
	}
	for _, prefix := range []string{"uni", "u"} {
		if digits, has := strings.CutPrefix(s, prefix); has && len(digits) >= 4 && len(digits) <= 6 {
			if v, err := strconv.ParseUint(digits, 16, 32); err == nil {
				return clean(string(rune(v)))
			}
		}
	}
	if len(s) > 1 {
		if mark, known := accents[s[1:]]; known {
			return norm.NFC.String(s[:1] + mark)
		}
	}
	return ""
}

var accents = map[string]string{
	"acute": "\u0301", "grave": "\u0300", "circumflex": "\u0302", "dieresis": "\u0308", "tilde": "\u0303", "ring": "\u030A", "cedilla": "\u0327",
	"caron": "\u030C", "macron": "\u0304", "breve": "\u0306", "ogonek": "\u0328", "dotaccent": "\u0307", "hungarumlaut": "\u030B",
}

var signs = pairs("exclam ! quotedbl \" numbersign # dollar $ percent % ampersand & quotesingle ' quoteright ’ quoteleft ‘ parenleft ( parenright ) " +
	"asterisk * plus + comma , hyphen - minus − period . slash / zero 0 one 1 two 2 three 3 four 4 five 5 six 6 seven 7 eight 8 nine 9 colon : semicolon ; " +
	"less < equal = greater > question ? at @ bracketleft [ backslash \\ bracketright ] asciicircum ^ underscore _ grave ` braceleft { bar | braceright } asciitilde ~ " +
	"exclamdown ¡ cent ¢ sterling £ currency ¤ yen ¥ brokenbar ¦ section § copyright © ordfeminine ª guillemotleft « logicalnot ¬ registered ® degree ° plusminus ± " +
	"mu µ paragraph ¶ periodcentered · ordmasculine º guillemotright » onequarter ¼ onehalf ½ threequarters ¾ onethird ⅓ twothirds ⅔ oneeighth ⅛ threeeighths ⅜ " +
	"fiveeighths ⅝ seveneighths ⅞ questiondown ¿ AE Æ Eth Ð multiply × Oslash Ø Thorn Þ germandbls ß ae æ eth ð divide ÷ oslash ø thorn þ dotlessi ı " +
	"Lslash Ł lslash ł OE Œ oe œ florin ƒ endash – emdash — quotesinglbase ‚ quotedblleft “ quotedblright ” quotedblbase „ dagger † daggerdbl ‡ bullet • ellipsis … " +
	"perthousand ‰ guilsinglleft ‹ guilsinglright › fraction ⁄ Euro € trademark ™ lessequal ≤ greaterequal ≥ approxequal ≈ notequal ≠ ff ff fi fi fl fl ffi ffi ffl ffl " +
	"onesuperior ¹ twosuperior ² threesuperior ³ zerosuperior ⁰ foursuperior ⁴ heart ♥ checkbox ☐ H22073 □ filledbox ■ openbullet ◦")

// pairs is a map from the words of a list that alternate with values.
func pairs(list string) map[string]string {
	m := map[string]string{"space": " ", "nbspace": " "}
	words := strings.Fields(list)
	for i := 0; i+1 < len(words); i += 2 {
		m[words[i]] = words[i+1]
	}
	return m
}
