package feedback

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"plait.example/internal/format/docx"
	"plait.example/internal/format/table"
	"plait.example/internal/paper"
	"plait.example/internal/picture"
)

// Word is a pupil's page as a Word document, with the plait as shapes beside the
// words, and what clashes in it in words as well.
func Word(n paper.Note) ([]byte, error) {
	var blocks []table.Block
	say := func(heading int, text string, bold bool) {
		blocks = append(blocks, table.Block{Heading: heading, Line: table.Line{{Text: text, Bold: bold}}})
	}
	say(1, n.Title, false)
	say(0, "Name: "+n.Name, true)
	for _, s := range n.Lead {
		say(0, s, false)
	}
	for i, p := range n.Points {
		say(4, fmt.Sprintf("%d. %s", i+1, p.Ask), false)
		for _, row := range p.Rows[:min(len(p.Rows), wordRows)] {
			blocks = append(blocks, table.Block{Line: table.Line{{Text: row, Italic: true}}})
		}
		if p.Why != "" {
			say(0, p.Why, false)
		}
	}
	if clashes := clashWords(n); len(clashes) > 0 {
		say(4, "Two things in your hands at once", false)
		for _, c := range clashes {
			blocks = append(blocks, table.Block{Item: "-", Line: table.Line{{Text: c}}})
		}
	}
	if n.Plait != nil {
		for _, d := range n.Plait.Dishes {
			say(0, d.Letter+": "+d.Name, false)
		}
	}
	for _, s := range n.Foot {
		say(0, s, false)
	}
	return docx.Write(docx.Paper{Title: n.Title, Keywords: n.Mark, Blocks: blocks, Beside: drawing(n), Points: pointsFor(blocks)})
}

// pointsFor is the size of type with which so many words stand on one page beside
// the plait: a line there has about 46 letters of 10.5 points, a page 50 lines.
func pointsFor(blocks []table.Block) float64 {
	const usual, least, letters, page = 10.5, 7.0, 46.0, 50.0
	for points := usual; points > least; points -= 0.5 {
		lines := 0.0
		for _, b := range blocks {
			lines += math.Ceil(float64(len([]rune(b.Line.Text())))*points/usual/letters) + 0.35
			if b.Heading > 0 {
				lines += 0.7
			}
		}
		if lines*points/usual <= page {
			return points
		}
	}
	return least
}

// wordRows keeps the page one page: its type has one size.
const wordRows = 2

// Points of an A4 page that the plait takes beside the words.
const (
	plaitWide = 225.0
	plaitHigh = 700.0
)

// drawing is the plait as shapes of a Word document; nil: there is none.
func drawing(n paper.Note) *docx.Drawing {
	if n.Plait == nil || len(n.Plait.Rows) == 0 {
		return nil
	}
	o := picture.Options{Width: 340, Print: true, Bare: true}
	if g := picture.Layout(n.Plait, o); g.Height/340 > plaitHigh/plaitWide {
		o.Width = int(g.Height * plaitWide / plaitHigh)
	}
	p := picture.Draw(n.Plait, o)
	d := &docx.Drawing{Width: p.Width, Height: p.Height, Wide: min(plaitWide, plaitHigh*p.Width/p.Height), Alt: strings.Join(picture.Words(n.Plait), " ")}
	for _, m := range p.Marks {
		switch m.Kind {
		case picture.Figure:
			s := docx.Shape{Fill: m.Fill, Stroke: m.Stroke, Line: m.Line, Dashed: len(m.Dash) > 0}
			for _, v := range m.Path {
				s.Path = append(s.Path, docx.Move{Op: v.Op, AX: v.A.X, AY: v.A.Y, BX: v.B.X, BY: v.B.Y, X: v.To.X, Y: v.To.Y})
			}
			d.Shapes = append(d.Shapes, s)
		case picture.Text:
			align := map[picture.Anchor]string{picture.Middle: "center", picture.End: "right"}[m.Anchor]
			d.Shapes = append(d.Shapes, docx.Shape{Text: m.Text, X: m.X, Y: m.Y, Size: m.Size, Bold: m.Bold, Ink: m.Fill, Align: align})
		}
	}
	return d
}

// mostClashes keeps the page one page.
const mostClashes = 4

func clashWords(n paper.Note) []string {
	if n.Plait == nil {
		return nil
	}
	words := slices.DeleteFunc(picture.Words(n.Plait), func(s string) bool { return !strings.Contains(strings.ToLower(s), "clash") })
	return words[:min(len(words), mostClashes)]
}

// Commented is the pupil's own Word document with the questions as comments at
// their rows, those about the whole plan at its first row. Nothing else in it changes.
func Commented(data []byte, p Plan, s Setting) ([]byte, error) {
	if !s.Shows() {
		return nil, fmt.Errorf("with the setting %s nothing is shown to the learner", s)
	}
	var notes []docx.Note
	for _, f := range asked(p.Findings) {
		n := docx.Note{Table: -1, Row: -1, Author: "plait", Text: f.Question}
		if r, ok := p.row(f.Row); ok {
			n.Table, n.Row = r.Table, r.Line
		} else if len(p.Matched.Rows) > 0 {
			n.Table, n.Row = p.Matched.Rows[0].Table, p.Matched.Rows[0].Line
		}
		if s == Worked {
			n.Text += "\n" + f.Evidence
		}
		if !slices.Contains(notes, n) {
			notes = append(notes, n)
		}
	}
	return docx.Comment(data, notes)
}
