package picture

import (
	"strings"
	"unicode/utf8"
)

// Widths of letters in thousandths of their size, for choosing where lines
// break and how large a tag is. Source: the advance widths of Atkinson Hyperlegible Next, which a
// test reads again from the font. Letters that are in neither
// table count as rather wide.
const firstLetter = ' '

var regularWidths = [...]int{
	280, 286, 301, 651, 592, 919, 731, 160, 299, 299, 485, 606, 210, 362, 210, 387,
	648, 407, 548, 576, 614, 588, 598, 510, 615, 595, 210, 210, 553, 628, 553, 480,
	778, 626, 613, 645, 669, 569, 552, 694, 694, 392, 512, 631, 541, 824, 693, 714,
	592, 724, 614, 592, 558, 690, 593, 856, 623, 575, 607, 317, 387, 344, 552, 372,
	243, 525, 566, 485, 564, 538, 314, 558, 550, 252, 245, 492, 262, 845, 550, 548,
	566, 574, 349, 471, 326, 540, 461, 684, 481, 449, 460, 344, 237, 344, 555,
}

var boldWidths = [...]int{
	312, 303, 390, 765, 610, 969, 725, 210, 335, 335, 485, 595, 271, 373, 272, 440,
	659, 440, 579, 600, 624, 607, 626, 537, 624, 571, 272, 272, 569, 612, 569, 547,
	781, 678, 643, 658, 688, 597, 566, 718, 701, 424, 561, 663, 552, 858, 717, 746,
	629, 756, 650, 610, 607, 686, 644, 886, 685, 650, 618, 340, 440, 344, 582, 400,
	288, 552, 596, 510, 596, 563, 365, 593, 571, 300, 259, 555, 318, 882, 571, 576,
	596, 599, 376, 508, 376, 567, 530, 740, 539, 521, 505, 381, 254, 381, 537,
}

// otherWidths are those of letters beyond ASCII, regular and bold.
var otherWidths = map[rune][2]int{
	'\u00a0': {280, 312}, '°': {352, 394}, '·': {240, 294}, '…': {670, 780}, '–': {504, 501}, '½': {820, 852}, '¼': {816, 846}, '¾': {867, 921},
	'é': {538, 563}, 'è': {538, 563}, 'ê': {538, 563}, 'ë': {538, 563}, 'à': {525, 552}, 'â': {525, 552}, 'ç': {485, 510}, 'ñ': {550, 571},
	'ö': {548, 576}, 'ü': {540, 567}, 'î': {252, 300}, 'ô': {548, 576}, 'ï': {266, 314},
	'’': {236, 269}, '‘': {236, 269}, '“': {399, 479}, '”': {399, 479}, '×': {532, 536}, '£': {610, 634},
}

// letterWidth is the width of a letter in thousandths, and whether it is known.
func letterWidth(r rune, bold bool) (int, bool) {
	if i := int(r) - firstLetter; i >= 0 && i < len(regularWidths) {
		if bold {
			return boldWidths[i], true
		}
		return regularWidths[i], true
	}
	w, known := otherWidths[r]
	switch {
	case !known:
		return 580, false
	case bold:
		return w[1], true
	}
	return w[0], true
}

// textWidth is about how wide a text is, in pixels.
func textWidth(s string, size float64, bold bool) float64 {
	sum := 0
	for _, r := range s {
		w, _ := letterWidth(r, bold)
		sum += w
	}
	return float64(sum) * size / 1000
}

// measured says whether textWidth knows every letter of a text.
func measured(s string) bool {
	for _, r := range s {
		if _, known := letterWidth(r, false); !known {
			return false
		}
	}
	return true
}

// wrap breaks text into lines of at most width pixels and at most most lines;
// the last ends in "…" where words are left over. A word that is too long is broken.
func wrap(s string, size float64, bold bool, width float64, most int) []string {
	var lines []string
	line := ""
	words := glue(strings.Fields(s))
	for len(words) > 0 {
		word := words[0]
		longer := word
		if line != "" {
			longer = line + " " + word
		}
		if textWidth(longer, size, bold) <= width {
			line, words = longer, words[1:]
			continue
		}
		if line == "" {
			head, tail := breakWord(word, size, bold, width)
			line, words[0] = head, tail
		}
		lines = append(lines, line)
		line = ""
		if len(lines) == most {
			lines[most-1] = ellipsis(lines[most-1], size, bold, width)
			return lines
		}
	}
	if line != "" {
		lines = append(lines, line)
	}
	return lines
}

// units stay on the line of the number before them.
var units = map[string]bool{"°C": true, "min": true, "minutes": true, "minute": true, "cm": true, "mm": true, "g": true, "kg": true, "ml": true, "l": true}

// glue joins numbers with their units, and "gas" with its mark, by a space that does not break.
func glue(words []string) []string {
	var out []string
	for _, w := range words {
		if n := len(out) - 1; n >= 0 && (units[strings.TrimRight(w, ".,;:)")] && endsInDigit(out[n]) || out[n] == "gas" && w[0] >= '0' && w[0] <= '9') {
			out[n] += "\u00a0" + w
			continue
		}
		out = append(out, w)
	}
	return out
}

func endsInDigit(s string) bool { return s[len(s)-1] >= '0' && s[len(s)-1] <= '9' }

// breakWord cuts a word after as many letters as fit, at least one.
func breakWord(word string, size float64, bold bool, width float64) (head, tail string) {
	last := 0
	for i := range word {
		if i > 0 && textWidth(word[:i], size, bold) > width {
			break
		}
		last = i
	}
	if last == 0 {
		_, last = utf8.DecodeRuneInString(word)
	}
	return word[:last], word[last:]
}

func ellipsis(line string, size float64, bold bool, width float64) string {
	runes := []rune(line)
	for len(runes) > 0 && textWidth(string(runes)+"…", size, bold) > width {
		runes = runes[:len(runes)-1]
	}
	return strings.TrimRight(string(runes), " ,;.") + "…"
}

// clip cuts a text to at most n letters.
func clip(s string, n int) string {
	runes := []rune(s)
	if len(runes) <= n {
		return s
	}
	return strings.TrimSpace(string(runes[:n-1])) + "…"
}
