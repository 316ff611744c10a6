package paper

import (
	"regexp"
	"strings"
)

// setLine is one line of a cell, ready to be written.
type setLine struct {
	spans []span
	size  float64
	ink   string
	style style
	width float64
	chip  *setLine // stands to the right of the line's end
}

// add lengthens the line, in one piece with what is before it in the same weight.
func (l *setLine) add(s span) {
	if last := len(l.spans) - 1; last >= 0 && l.spans[last].bold == s.bold {
		l.spans[last].text += s.text
		return
	}
	l.spans = append(l.spans, s)
}

// leading is the distance of lines, in type sizes.
const leading = 1.24

func (l setLine) height() float64 {
	h := l.size * leading
	if l.style == styleDue {
		h += 5
	}
	if l.chip != nil {
		h = max(h, l.chip.height())
	}
	return h
}

// figurePattern finds a figure with its unit or its fuel, which a line never parts.
var figurePattern = regexp.MustCompile(`(\d) (mm|cm|g|kg|ml|min|minutes?)\b|(\d) °C|(fan|gas|at) (\d)`)

// bind joins figures with what belongs to them by spaces that do not break.
func bind(s string) string {
	return figurePattern.ReplaceAllStringFunc(s, func(m string) string { return strings.ReplaceAll(m, " ", "\u00a0") })
}

// setText breaks a text into lines of at most width points. A line that ends
// between words keeps the space, so that the words stay apart for those who
// read the text and not the page.
func setText(spans []span, size, width float64) []setLine {
	var lines []setLine
	line := setLine{size: size, ink: inkText}
	flush := func(end string) {
		line.add(span{end, line.spans[len(line.spans)-1].bold})
		lines = append(lines, line)
		line = setLine{size: size, ink: inkText}
	}
	for _, s := range spans {
		if s.text == "" {
			continue
		}
		for _, word := range strings.Split(bind(printable(s.text)), " ") {
			gap := ""
			if len(line.spans) > 0 && word != "" {
				gap = " "
			}
			if w := measure(span{gap + word, s.bold}, size); line.width+w > width && len(line.spans) > 0 {
				flush(" ")
				gap = ""
			}
			for _, part := range breakWord(word, s.bold, size, width) {
				w := measure(span{gap + part, s.bold}, size)
				if line.width+w > width && len(line.spans) > 0 {
					flush("")
				}
				line.add(span{gap + part, s.bold})
				line.width += w
				gap = ""
			}
		}
	}
	if len(line.spans) > 0 {
		flush("")
	}
	return lines
}

// breakWord cuts a word that is wider than a line.
func breakWord(word string, bold bool, size, width float64) []string {
	if measure(span{word, bold}, size) <= width {
		return []string{word}
	}
	var parts []string
	part, used := "", 0.0
	for _, r := range word {
		w := measure(span{string(r), bold}, size)
		if used+w > width && part != "" {
			parts, part, used = append(parts, part), "", 0
		}
		part += string(r)
		used += w
	}
	return append(parts, part)
}

// The room around a chip's words, and the room that the bar of a safety note takes.
const (
	chipPad   = 5.0
	safetyBar = 6.0
)

// setPieces sets a cell's pieces under each other; a chip goes beside the last
// line before it where there is room.
func (l layout) setPieces(pieces []piece, m mark, width float64) []setLine {
	var all []setLine
	for _, p := range pieces {
		size, ink, room := l.small, inkText, width
		switch p.Style {
		case styleText:
			size = l.text
		case styleDue:
			size, room = l.text*1.06, width-2*chipPad
		case styleSince:
			ink = inkSoft
		case styleSafety:
			room -= safetyBar
		}
		bold := p.Style == styleDue || p.Style == styleSetting
		lines := setText([]span{{p.Label, true}, {p.Text, bold}}, size, room)
		for i := range lines {
			lines[i].style, lines[i].ink = p.Style, ink
			if p.Style == styleDue && m.Index >= 0 {
				lines[i].ink = m.Ink.Text
			}
		}
		beside := p.Style == styleDue || p.Style == styleSince
		if last := len(all) - 1; beside && last >= 0 && len(lines) == 1 && all[last].width+lines[0].width+2*chipPad+8 <= width {
			all[last].chip = &lines[0]
			continue
		}
		all = append(all, lines...)
	}
	return all
}

// heightOf is the height of lines under each other.
func heightOf(lines []setLine) float64 {
	h := 0.0
	for _, l := range lines {
		h += l.height()
	}
	return h
}

// put writes lines under each other from y on.
func (n *pen) put(lines []setLine, x, y float64, m mark) {
	for _, l := range lines {
		h := l.height()
		n.putLine(l, x, y, h, m)
		y += h
	}
}

func (n *pen) putLine(l setLine, x, y, h float64, m mark) {
	base := y + (h-l.size*leading)/2 + l.size*0.98
	switch l.style {
	case styleDue:
		border, tint := inkText, inkPaper
		if m.Index >= 0 {
			border, tint = m.Ink.Line, m.Ink.Tint
		}
		n.f.SetFillColor(rgb(tint))
		n.f.SetDrawColor(rgb(border))
		n.f.SetLineWidth(1.3)
		n.f.RoundedRect(x, y+1.5, l.width+2*chipPad, h-3, 4, "1234", "FD")
		x += chipPad
	case styleSafety:
		n.box(x, y, 2.2, h, inkText)
		x += safetyBar
	}
	for _, s := range l.spans {
		x = n.write(x, base, l.size, l.ink, s)
	}
	if l.chip != nil {
		n.putLine(*l.chip, x+8, y, h, m)
	}
}
