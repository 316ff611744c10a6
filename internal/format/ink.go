package format

import (
	"strings"
	"unicode"

	"plait.example/internal/format/table"
)

// ink is the letters of a text in their order, without gaps, with their colours.
type ink struct {
	letters []rune
	colours []string // of each letter; "" is the usual
	at      int
	any     bool
}

func inkOf(lines []table.Line) (k ink) {
	for _, l := range lines {
		for _, p := range l {
			for _, r := range p.Text {
				if !unicode.IsSpace(r) {
					k.letters, k.colours = append(k.letters, r), append(k.colours, p.Ink)
				}
			}
		}
		for _, p := range l {
			k.any = k.any || p.Ink != ""
		}
	}
	return k
}

// ahead is how many letters may stand between two that follow one another in
// blocks made of the text, which have lost marks of lists and gained others.
const ahead = 12

// next is the colour of the next letter.
func (k *ink) next(r rune) string {
	for i := k.at; i < min(len(k.letters), k.at+ahead); i++ {
		if k.letters[i] == r {
			k.at = i + 1
			return k.colours[i]
		}
	}
	return ""
}

// paint gives blocks that were made of the text its colours.
func (k ink) paint(blocks []table.Block) {
	if !k.any {
		return
	}
	for i := range blocks {
		blocks[i].Line = k.line(blocks[i].Line)
		if t := blocks[i].Table; t != nil {
			for _, row := range t.Rows {
				for c := range row {
					for n := range row[c].Lines {
						row[c].Lines[n] = k.line(row[c].Lines[n])
					}
				}
			}
		}
	}
}

func (k *ink) line(l table.Line) (painted table.Line) {
	for _, p := range l {
		var b strings.Builder
		colour := p.Ink
		flush := func() {
			if b.Len() > 0 {
				one := p
				one.Text, one.Ink = b.String(), colour
				painted = painted.Join(one)
				b.Reset()
			}
		}
		for _, r := range p.Text {
			if !unicode.IsSpace(r) {
				if c := k.next(r); c != colour {
					flush()
					colour = c
				}
			}
			b.WriteRune(r)
		}
		flush()
	}
	return painted
}
