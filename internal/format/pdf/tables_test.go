package pdf_test

import (
	"bytes"
	"fmt"
	"strings"
	"testing"

	"codeberg.org/go-pdf/fpdf"
	"github.com/google/go-cmp/cmp"

	"plait.example/internal/format/pdf"
	"plait.example/internal/format/table"
)

// ruled prints a plan of n invented rows over pages, by a library that is not
// ours: borders, a shaded column, the header on each page, ink, a wide cell.
func ruled(t testing.TB, n int) []byte {
	t.Helper()
	p := fpdf.New("P", "mm", "A4", "")
	header := func() {
		p.SetFillColor(217, 217, 217)
		for i, text := range []string{"Time", "Dish", "Job"} {
			p.CellFormat([]float64{25, 20, 100}[i], 8, text, "1", 0, "L", true, 0, "")
		}
		p.Ln(8)
	}
	p.SetAutoPageBreak(false, 0)
	p.SetFont("Helvetica", "", 11)
	p.AddPage()
	p.CellFormat(100, 10, "My plan", "", 1, "L", false, 0, "")
	header()
	for i := range n {
		if p.GetY() > 270 {
			p.AddPage()
			header()
		}
		p.SetFillColor(255, 230, 153)
		p.CellFormat(25, 8, fmt.Sprintf("%d:%02d", 9+i/12, i%12*5), "1", 0, "L", true, 0, "")
		if i%10 == 9 {
			p.CellFormat(120, 8, "Wash up", "1", 1, "L", false, 0, "")
			continue
		}
		p.CellFormat(20, 8, "T", "1", 0, "C", false, 0, "")
		p.SetTextColor(192, 0, 0)
		p.CellFormat(100, 8, fmt.Sprintf("Job %d", i), "1", 1, "L", false, 0, "")
		p.SetTextColor(0, 0, 0)
	}
	p.CellFormat(100, 10, "Done", "", 1, "L", false, 0, "")
	var b bytes.Buffer
	if err := p.Output(&b); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

func TestTablesOverPages(t *testing.T) {
	d, err := pdf.Read(ruled(t, 60))
	if err != nil {
		t.Fatal(err)
	}
	parts := d.Parts()
	if len(d.Pages) != 2 || len(parts) != 3 || parts[0].Text != "My plan" || parts[1].Table == nil || parts[2].Text != "Done" {
		t.Fatalf("%d pages, %+v", len(d.Pages), parts)
	}
	in := parts[1].Table
	if len(in.Rows) != 61 || in.Header != 1 {
		t.Fatalf("%d rows, header of %d", len(in.Rows), in.Header)
	}
	for i, row := range in.Rows[1:] {
		job := table.Cell{Lines: []table.Line{{{Text: fmt.Sprintf("Job %d", i), Ink: "C00000"}}}, Span: 1, Down: 1, Clock: -1}
		dish := table.Cell{Lines: []table.Line{{{Text: "T"}}}, Span: 1, Down: 1, Clock: -1}
		if i%10 == 9 {
			dish = table.Cell{Lines: []table.Line{{{Text: "Wash up"}}}, Span: 2, Down: 1, Clock: -1}
			job = table.Cell{Span: 1, Clock: -1}
		}
		time := table.Cell{Lines: []table.Line{{{Text: fmt.Sprintf("%d:%02d", 9+i/12, i%12*5)}}}, Shade: "FFE699", Span: 1, Down: 1, Clock: -1}
		if diff := cmp.Diff([]table.Cell{time, dish, job}, row); diff != "" {
			t.Errorf("row %d: %s", i, diff)
		}
	}
}

// drawn is a document with one page of that description.
func drawn(t testing.TB, description string) []byte {
	t.Helper()
	return []byte("%PDF-1.4\n1 0 obj<</Type/Catalog/Pages 2 0 R>>endobj 2 0 obj<</Type/Pages/Kids[3 0 R]/Count 1>>endobj " +
		"3 0 obj<</Type/Page/Parent 2 0 R/MediaBox[0 0 600 800]/Contents 4 0 R/Resources<</Font<</F<</Type/Font/Subtype/Type1/BaseFont/Helvetica>>>>>>>>endobj " +
		fmt.Sprintf("4 0 obj<</Length %d>>stream\n%s\nendstream endobj\ntrailer<</Root 1 0 R>>", len(description), description))
}

func say(x, y float64, text string) string {
	return fmt.Sprintf("BT /F 10 Tf %g %g Td (%s) Tj ET\n", x, y, text)
}

// Rules as lines, as thin areas, as mitred borders; a cell over two rows; words
// without rules stay lines; columns that stand level are kept level.
func TestRules(t *testing.T) {
	cells := say(55, 710, "9:00") + say(155, 710, "Rub in") + say(155, 690, "Chill")
	want := [][]string{{"9:00", "Rub in"}, {"^", "Chill"}}
	for name, rules := range map[string]string{
		"lines": "50 725 m 300 725 l S 150 705 m 300 705 l S 50 685 m 300 685 l S 50 725 m 50 685 l S 150 725 m 150 685 l S 300 725 m 300 685 l S ",
		"areas": "0 g 50 725 250 .5 re 150 705 150 .5 re 50 685 250 .5 re f 50 685 .5 40 re f 150 685 .5 40 re f 300 685 .5 40 re f ",
		"boxes": "50 685 100 40 re S 150 705 150 20 re 150 685 150 20 re S ",
		"mitre": "50 725 m 300 725 l 299 724 l 51 724 l f 50 685 m 300 685 l 299 686 l 51 686 l f 50 725 m 50 685 l 51 686 l 51 724 l h f 300 725 m 300 685 l 299 686 l 299 724 l h f 150 724 1 -38 re f 150 705 150 1 re f ",
	} {
		d, err := pdf.Read(drawn(t, rules+cells))
		if err != nil {
			t.Fatal(err)
		}
		parts := d.Parts()
		if len(parts) != 1 || parts[0].Table == nil {
			t.Errorf("%s: %+v", name, parts)
			continue
		}
		var got [][]string
		for _, row := range parts[0].Table.Rows {
			var line []string
			for _, c := range row {
				if c.Down == 0 {
					line = append(line, "^")
				} else {
					line = append(line, c.Text())
				}
			}
			got = append(got, line)
		}
		if diff := cmp.Diff(want, got); diff != "" {
			t.Errorf("%s: %s", name, diff)
		}
	}
	bare, err := pdf.Read(drawn(t, cells))
	if err != nil {
		t.Fatal(err)
	}
	if parts := bare.Parts(); len(parts) != 1 || parts[0].Table != nil || !strings.Contains(parts[0].Text, "Chill") {
		t.Errorf("%+v", parts)
	}
	level := ""
	for i, row := range [][3]string{{"Time", "Dish", "Job"}, {"9:00", "Tart", "Rub in"}, {"9:20", "Stew", "Dice"}} {
		for k, text := range row {
			level += say([]float64{50, 150, 250}[k], 700-20*float64(i), text)
		}
	}
	d, err := pdf.Read(drawn(t, level))
	if err != nil {
		t.Fatal(err)
	}
	if parts := d.Parts(); len(parts) != 1 || parts[0].Table == nil || parts[0].Table.Rows[2][2].Text() != "Dice" {
		t.Errorf("%+v", parts)
	}
}

// A page of rules without end is read in one pass, as lines.
func TestManyRules(t *testing.T) {
	many := strings.Repeat("50 685 100 40 re S 1 2 m 300 2 l S ", 20_000)
	d, err := pdf.Read(drawn(t, many+say(55, 700, "Stir")))
	if err != nil {
		t.Fatal(err)
	}
	if parts := d.Parts(); len(parts) != 1 || parts[0].Text != "Stir" {
		t.Errorf("%+v", parts)
	}
}

func FuzzParts(f *testing.F) {
	f.Add("50 685 100 40 re S 150 705 150 20 re 150 685 150 20 re S 1 0 0 rg 150 705 150 20 re f " + say(155, 710, "Rub in"))
	f.Add("q .5 0 0 .5 10 10 cm 0 0 0 1 k 50 725 m 300 725 l 299 724 l h B* Q " + say(1, 1, "a"))
	f.Fuzz(func(t *testing.T, description string) {
		d, err := pdf.Read(drawn(t, description))
		if err != nil {
			return
		}
		for _, part := range d.Parts() {
			if part.Table == nil {
				continue
			}
			for _, row := range part.Table.Rows {
				if len(row) != len(part.Table.Rows[0]) {
					t.Fatalf("%+v", part.Table)
				}
			}
		}
	})
}
