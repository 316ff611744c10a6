package format_test

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"plait.example/internal/format"
	"plait.example/internal/format/docx"
	"plait.example/internal/format/sheet"
	"plait.example/internal/format/table"
)

// drawn is blocks as text: a line a row, cells between bars, "^" for covered
// ones; inks, shades and signs before the words in angle brackets; shade, span
// and clock after the words of a cell.
func drawn(blocks []table.Block) string {
	var b strings.Builder
	for _, block := range blocks {
		if block.Table == nil {
			fmt.Fprintln(&b, strings.Join(strings.Fields(fmt.Sprint(strings.Repeat("#", block.Heading), " ", block.Item, " ", inked(block.Line))), " "))
			continue
		}
		fmt.Fprintf(&b, "table %s %d\n", block.Table.Name, block.Table.Header)
		for _, row := range block.Table.Rows {
			cells := make([]string, len(row))
			for i, c := range row {
				cells[i] = cellDrawn(c)
			}
			fmt.Fprintln(&b, strings.TrimSpace(strings.Join(cells, " | ")))
		}
	}
	return b.String()
}

func cellDrawn(c table.Cell) string {
	if c.Down == 0 {
		return "^"
	}
	lines := make([]string, len(c.Lines))
	for i, l := range c.Lines {
		lines[i] = inked(l)
	}
	s := strings.Join(lines, "/")
	if c.Shade != "" {
		s += " #" + c.Shade
	}
	if c.Span > 1 || c.Down > 1 {
		s += fmt.Sprintf(" %dx%d", c.Span, c.Down)
	}
	if c.Clock >= 0 {
		s += fmt.Sprintf(" @%d", c.Clock)
	}
	return strings.TrimSpace(s)
}

func inked(l table.Line) string {
	var b strings.Builder
	for _, p := range l {
		form := p.Ink
		if p.Shade != "" {
			form += "~" + p.Shade
		}
		if p.Struck {
			form += "-"
		}
		if form != "" {
			p.Text = "<" + form + " " + strings.TrimSpace(p.Text) + ">" + p.Text[len(strings.TrimRight(p.Text, " ")):]
		}
		b.WriteString(p.Text)
	}
	return b.String()
}

func readFile(t testing.TB, name string) format.Document {
	t.Helper()
	data, err := os.ReadFile(filepath.Join("testdata", "libreoffice", name))
	if err != nil {
		t.Fatal(err)
	}
	d, err := format.Read(name, data)
	if err != nil {
		t.Fatal(err)
	}
	return d
}

// What stands in the sources in testdata, by eye.
const (
	planDrawn = `# Time plan: Wednesday practical
Key: <~FFFF00 leek tart> <0070C0 bean stew> <~92D050 plum buns>
table  1
Time #D9D9D9 | Dish #D9D9D9 | What I will do #D9D9D9 | Check #D9D9D9
9:00 | Wash hands, apron on, hair back 2x1 | ^ |
9.05 #FFFF00 | T #FFFF00 | Rub in the pastry/Chill 20 mins | like crumbs
9:20 1x2 | S | <0070C0 Chop onion and carrot> | small dice
^ | B | Stone the plums #92D050 |
| T | Roll out and line the tin, <- blind bake> | no cracks
9:40 - 10:00 | T | Blind bake at 190°C | pale and dry
10:00 | Wash up #EEEEEE 3x1 | ^ | ^
After that:
1. Serve the stew
2. Serve the tart
table  0
Signed | Date
| 12 May
`
	nestedDrawn = `My plan for Friday
table  0
10:00 | Soup | Sweat the leeks
10:10 | Soup | Add stock, simmer
10:30 | Rolls | Shape and prove
`
	changesDrawn = `## Plan for lentil soup and rolls
table  1
When | For | Job
1:15 #9DC3E6 1x2 | Rolls #9DC3E6 | 1. Weigh the <~FFFF00 flour>/2. Knead  for ten minutes
^ | Soup | Rinse the lentils, slice the leek
1:35	(about) | <C00000 Sweat> the leek, <- fry>//Prove the rolls 2x1 | ^
Serve at 2:30.
`
	ruledDrawn = `A tart and a stew
table  0
Time #D9D9D9 | Dish #D9D9D9 | What to do #D9D9D9
9.05 #FFFF00 | Tart | Rub in the fat/Rest it
9.20 1x2 | Stew | <0070C0 Dice the onion and the carrot as small as it can be done, and heat the oil in the pan in the meantime so that it is hot>
^ | Tart #92D050 | Roll it out
9.50 | Rinse and dry #EEEEEE 2x1 | ^
The end
`
	timesDrawn = `table Plan 0
Plan of an invented pupil #FFE699 4x1 | ^ | ^ | ^
Time | Dish | Job | Takes
09:05 @545 | Tart #FFE699 | Rub in the <FF0000 fat> | 15 mins
1:20 PM @800 | Buns 1x2 | Knead/Prove | 0:40 @40
14:00 @840 | ^ | Shape |
|  |  |
|  |  |
|  |  |
12/05/2026 14:30 @870 | All | Serve | TRUE
table Shopping 0
Flour | 0.25
`
	// what is left of the sheet above in a file of separated values
	valuesDrawn = `table  0
Plan of an invented pupil |  |  |
Time | Dish | Job | Takes
09:05 | Tart | Rub in the fat | 15 mins
1:20 PM | Buns | Knead/Prove | 0:40
14:00 |  | Shape |
|  |  |
|  |  |
|  |  |
12/05/2026 14:30 | All | Serve | TRUE
`
)

// The documents were written by LibreOffice; see the README beside them.
func TestDocumentsOfAnotherProgram(t *testing.T) {
	for _, c := range []struct {
		name string
		kind format.Kind
		want string
	}{
		{"plan.html", format.WebPage, planDrawn},
		{"plan-saved.html", format.WebPage, planDrawn},
		{"plan.docx", format.Word, planDrawn},
		{"plan.odt", format.OpenText, planDrawn},
		{"nested.html", format.WebPage, nestedDrawn},
		{"nested.docx", format.Word, nestedDrawn},
		{"changes.fodt", format.OpenText, changesDrawn},
		{"changes.odt", format.OpenText, changesDrawn},
		{"changes.docx", format.Word, changesDrawn},
		{"ruled.html", format.WebPage, ruledDrawn},
		{"ruled.pdf", format.PDF, ruledDrawn},
		{"times.fods", format.OpenSheet, timesDrawn},
		{"times.ods", format.OpenSheet, timesDrawn},
		{"times.xlsx", format.Sheet, timesDrawn},
		{"times.csv", format.Separated, valuesDrawn},
	} {
		t.Run(c.name, func(t *testing.T) {
			d := readFile(t, c.name)
			if d.Kind != c.kind {
				t.Errorf("read as %s, want %s", d.Kind, c.kind)
			}
			if diff := cmp.Diff(c.want, drawn(d.Blocks)); diff != "" {
				t.Error(diff)
			}
			hidden := c.kind == format.Sheet || c.kind == format.OpenSheet
			if (len(d.Notes) > 0) != hidden {
				t.Errorf("notes of hidden rows: %q", d.Notes)
			}
		})
	}
}

// A workbook that openpyxl wrote (testdata/openpyxl/make.py). The theme's sixth
// colour is C0504D there; 40 % lighter it is D99694 by ECMA-376 part 1, 18.8.19.
// The formula has no saved value.
func TestWorkbookOfAnotherLibrary(t *testing.T) {
	d := readFile(t, "../openpyxl/plan.xlsx")
	want := `table Plan 1
Time | Dish | Job
9:05:00 @545 | T #FFE699 | <C00000- Rub in>
13:20:00 @800 | S #D99694 | Dice
2026-05-12 14:00:00 @840 | S |
00:40:00 @40 | B | 50%
Wash up 3x1 | ^ | ^
`
	if diff := cmp.Diff(want, drawn(d.Blocks)); diff != "" {
		t.Error(diff)
	}
	if len(d.Notes) != 1 || !strings.Contains(d.Notes[0], "without a saved value (1)") {
		t.Errorf("%q", d.Notes)
	}
}

// Whatever was read is a grid: rows are equally wide, spans stay inside, and
// what a cell covers is empty.
func checkGrid(t testing.TB, blocks []table.Block) {
	t.Helper()
	for _, b := range blocks {
		if b.Table == nil {
			if len(b.Line) == 0 {
				t.Error("a block that is neither a line of words nor a table")
			}
			continue
		}
		rows := b.Table.Rows
		if len(rows) == 0 || b.Table.Header < 0 || b.Table.Header > len(rows) {
			t.Fatalf("%d rows, header of %d", len(rows), b.Table.Header)
		}
		for i, row := range rows {
			if len(row) != len(rows[0]) {
				t.Fatalf("row %d has %d cells, the first %d", i, len(row), len(rows[0]))
			}
			for at, c := range row {
				if c.Down == 0 && (len(c.Lines) > 0 || c.Span != 1) || c.Span < 1 || at+c.Span > len(row) || i+c.Down > len(rows) || c.Clock < -1 || c.Clock >= 1440 {
					t.Fatalf("row %d, cell %d: %+v", i, at, c)
				}
				for r := i; r < i+c.Down; r++ {
					for k := at; k < at+c.Span; k++ {
						if (r != i || k != at) && rows[r][k].Down != 0 {
							t.Fatalf("row %d, cell %d covers row %d, cell %d, which is not empty", i, at, r, k)
						}
					}
				}
			}
		}
	}
}

func TestGrids(t *testing.T) {
	files, err := filepath.Glob("testdata/libreoffice/*.*")
	if err != nil || len(files) < 13 {
		t.Fatal(files, err)
	}
	for _, name := range files {
		if filepath.Ext(name) != ".md" {
			checkGrid(t, readFile(t, filepath.Base(name)).Blocks)
		}
	}
}

// A class of 24, each plan with 60 rows, in every kind in turn: what is read of
// it before a plan can be checked.
func BenchmarkClass(b *testing.B) {
	rows := make([][]table.Cell, 60)
	for i := range rows {
		for _, text := range []string{fmt.Sprintf("%d:%02d", 9+i/20, i%20*3), "T", "Rub the fat into the flour until it is like crumbs, then chill it", "no lumps left", "hands washed"} {
			rows[i] = append(rows[i], table.Cell{Lines: []table.Line{{{Text: text}}}, Span: 1, Down: 1, Clock: -1, Shade: "FFE699"})
		}
	}
	one := table.Table{Rows: rows, Header: 1}
	word, err := docx.Write(docx.Paper{Blocks: []table.Block{{Table: &one}}})
	if err != nil {
		b.Fatal(err)
	}
	book, err := sheet.Write([]sheet.Page{{Table: one}})
	if err != nil {
		b.Fatal(err)
	}
	page := "<table>"
	for _, row := range rows {
		page += "<tr>"
		for _, c := range row {
			page += `<td style="background:#ffe699">` + c.Text() + "</td>"
		}
	}
	for name, data := range map[string][]byte{"docx": word, "xlsx": book, "html": []byte(page)} {
		b.Run(name, func(b *testing.B) {
			for b.Loop() {
				for range 24 {
					d, err := format.Read("plan", data)
					if err != nil || len(d.Blocks) != 1 || len(d.Blocks[0].Table.Rows) != 60 {
						b.Fatal(err)
					}
				}
			}
		})
	}
}
