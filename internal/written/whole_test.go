package written_test

import (
	"fmt"
	"slices"
	"strings"
	"testing"
	"unicode"

	"pgregory.net/rapid"

	"plait.example/internal/format/table"
	"plait.example/internal/practical"
	"plait.example/internal/written"
)

// wordsOf are a text's words: runs of letters and figures.
func wordsOf(text string) []string {
	return strings.FieldsFunc(strings.ToLower(text), func(r rune) bool { return !unicode.IsLetter(r) && !unicode.IsNumber(r) })
}

// said is everything that a plan says.
func said(p written.Plan) string {
	parts := append(slices.Clone(p.Other), p.Unread...)
	parts = append(parts, p.Candidate)
	for _, d := range p.Dishes {
		parts = append(parts, d.Name, d.Letter)
	}
	for _, r := range p.Rows {
		parts = append(parts, r.Written, r.Text, r.Points)
		parts = append(append(parts, r.Dishes...), r.Besides...)
	}
	return strings.Join(parts, "\n")
}

// blocksWords are all words of a document.
func blocksWords(blocks []table.Block) (words []string) {
	for _, b := range blocks {
		words = append(words, wordsOf(b.Line.Text())...)
		if strings.ContainsAny(b.Item, "0123456789abc") {
			words = append(words, wordsOf(b.Item)...)
		}
		if b.Table == nil {
			continue
		}
		words = append(words, wordsOf(b.Table.Name)...)
		for _, row := range b.Table.Rows {
			for _, c := range row {
				words = append(words, wordsOf(c.Text())...)
			}
		}
	}
	return words
}

func missing(blocks []table.Block, p written.Plan) (lost []string) {
	have := map[string]bool{}
	for _, w := range wordsOf(said(p)) {
		have[w] = true
	}
	for _, w := range blocksWords(blocks) {
		if !have[w] {
			lost = append(lost, w)
		}
	}
	return lost
}

// cells are what random tables are made of: times, headings, dishes, words; "%d"
// becomes a number that stands nowhere else.
var cells = []string{
	"9.05", "9.10-9.20", "10:30", "1.05", "5 mins", "+20", "905", "12.50", "9.05 wash hands n%d", "9.5", "Start", "0", "10", "",
	"Time", "Dish", "What I do", "Method n%d", "Special points", "Finished", "Minutes", "Task", "How long", "Amount", "Notes",
	"Quiche", "Q", "All", "Curry n%d", "Q & C", "Dish 1: Pie n%d", "ditto", "\"", "Name: Amy n%d", "Key: n%d", "Menu", "Set-up n%d", "First hour",
	"wash up n%d", "rub in the fat n%d", "bake at 180 n%d for 20 mins", "serve n%d\n9.40 then n%d", "9.00\n9.10\n9.20", "a n%d\nb n%d\nc n%d", "x", "-", "25:99 n%d",
	"Rub in n%d (9.05)", "Curry n%d ...... 9.40", "Quiche 9.30 roll out n%d", "Time: 9.10", "Task: chop n%d", "Dish: Pie n%d", "Safety: claw grip n%d",
	"[ ] 9.20 chop n%d", "🔴 9.30 stir n%d", "🔴 = Curry n%d", "The day before", "On the day n%d", "T-20", "Step 2 (9.05): stir n%d", "and goes on n%d", "(note n%d)",
	"00-20", "quarter past", "9.00/9.15", "9 o'clock",
}

func randomLines(t *rapid.T, n *int, text string) (lines []table.Line) {
	for _, l := range strings.Split(text, "\n") {
		for strings.Contains(l, "%d") {
			l = strings.Replace(l, "%d", fmt.Sprint(*n), 1)
			*n++
		}
		var line table.Line
		for i, w := range strings.SplitAfter(l, " ") {
			p := table.Piece{Text: w, Struck: rapid.IntRange(0, 14).Draw(t, "struck") == 14}
			if i == 0 || rapid.IntRange(0, 5).Draw(t, "inked") == 5 {
				p.Ink = rapid.SampledFrom([]string{"", "", "", "C00000", "0070C0", "00B050"}).Draw(t, "ink")
			} else if len(line) > 0 {
				p.Ink = line[len(line)-1].Ink
			}
			line = line.Join(p)
		}
		lines = append(lines, line)
	}
	return lines
}

func randomTable(t *rapid.T, n *int) *table.Table {
	var g table.Grid
	width := rapid.IntRange(1, 6).Draw(t, "width")
	for r := range rapid.IntRange(1, 9).Draw(t, "rows") {
		g.Row()
		for c := range width {
			cell := table.Cell{Span: 1, Down: 1, Clock: -1}
			if rapid.IntRange(0, 9).Draw(t, "merged") == 9 {
				cell.Span, cell.Down = rapid.IntRange(1, width).Draw(t, "span"), rapid.IntRange(1, 3).Draw(t, "down")
			}
			cell.Shade = rapid.SampledFrom([]string{"", "", "", "FFE699", "BDD7EE"}).Draw(t, "shade")
			text := rapid.SampledFrom(cells).Draw(t, "cell")
			if c == 0 && r > 0 && rapid.Bool().Draw(t, "timed") {
				text = fmt.Sprintf("9.%02d", 5*r)
			}
			cell.Fill(randomLines(t, n, text))
			if rapid.IntRange(0, 20).Draw(t, "clock") == 20 {
				cell.Clock = rapid.IntRange(0, 1439).Draw(t, "minutes")
				cell.Fill([]table.Line{{{Text: practical.TimeOfDay(cell.Clock).String()}}})
			}
			g.Next(cell)
		}
	}
	rows, err := g.Rows()
	if err != nil {
		t.Fatal(err)
	}
	return &table.Table{Rows: rows, Header: rapid.IntRange(0, 1).Draw(t, "header")}
}

func randomDocument(t *rapid.T) (blocks []table.Block) {
	n := 1000
	for range rapid.IntRange(1, 6).Draw(t, "blocks") {
		if rapid.Bool().Draw(t, "table") {
			blocks = append(blocks, table.Block{Table: randomTable(t, &n)})
			continue
		}
		for _, l := range randomLines(t, &n, rapid.SampledFrom(cells).Draw(t, "line")) {
			b := table.Block{Line: l, Heading: rapid.IntRange(0, 1).Draw(t, "heading")}
			if b.Heading == 0 {
				b.Item = rapid.SampledFrom([]string{"", "", "-", "3."}).Draw(t, "item")
			}
			blocks = append(blocks, b)
		}
	}
	return blocks
}

// Every word of the document is in a row, a dish, or among what is no row or was
// not understood; and nothing makes the reader fail.
func TestNothingDropped(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		blocks := randomDocument(t)
		o := written.Options{}
		if rapid.Bool().Draw(t, "known") {
			o = written.Options{Clock: morning, Dishes: []written.Named{{Name: "Quiche", Letter: "Q"}, {Name: "Curry", Letter: "C"}}}
		}
		p := written.Read("plan", blocks, o)
		if lost := missing(blocks, p); len(lost) > 0 {
			t.Fatalf("lost %q of %s\nplan: %+v", lost, show(blocks), p)
		}
		again := written.Read("plan", blocks, o)
		if fmt.Sprintf("%+v", p) != fmt.Sprintf("%+v", again) {
			t.Fatal("the same document is read in two ways")
		}
		for i, r := range p.Rows {
			if r.Number != i+1 || r.At < 0 || r.Clock == written.NoClock && r.HasUntil {
				t.Fatalf("row %+v", r)
			}
		}
	})
}

func show(blocks []table.Block) string {
	var b strings.Builder
	for _, block := range blocks {
		if block.Table == nil {
			fmt.Fprintf(&b, "\nline %q %q", block.Line.Text(), block.Item)
			continue
		}
		for _, row := range block.Table.Rows {
			b.WriteString("\n")
			for _, c := range row {
				fmt.Fprintf(&b, "| %q %q %dx%d %d ", c.Text(), struckIn(c), c.Span, c.Down, c.Clock)
			}
		}
	}
	return b.String()
}

func struckIn(c table.Cell) (words string) {
	for _, l := range c.Lines {
		for _, p := range l {
			if p.Struck {
				words += p.Text
			}
		}
	}
	return words
}
