package pdf_test

import (
	"bytes"
	"errors"
	"os"
	"strings"
	"testing"

	"codeberg.org/go-pdf/fpdf"
	"github.com/google/go-cmp/cmp"

	"plait.example/internal/format/pdf"
)

// draw makes a PDF with another's library.
func draw(t testing.TB, write func(p *fpdf.Fpdf)) []byte {
	t.Helper()
	p := fpdf.New("P", "mm", "A4", "")
	p.AddPage()
	p.SetFont("Helvetica", "", 11)
	write(p)
	var b bytes.Buffer
	if err := p.Output(&b); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

// recipe is an invented recipe as a word processor would lay it out.
func recipe(p *fpdf.Fpdf) {
	tr := p.UnicodeTranslatorFromDescriptor("")
	p.SetFont("Helvetica", "B", 20)
	p.Cell(0, 12, tr("Leek & cheese tart"))
	p.Ln(14)
	p.SetFont("Helvetica", "", 11)
	for _, row := range [][2]string{{"200 g", "plain flour"}, {"½ tsp", "salt"}} {
		p.CellFormat(30, 6, tr(row[0]), "1", 0, "", false, 0, "")
		p.CellFormat(60, 6, tr(row[1]), "1", 1, "", false, 0, "")
	}
	p.Ln(8)
	p.MultiCell(0, 6, tr("1. Rub the butter into the flour until it looks like breadcrumbs, then add just enough cold water to bring it together and chill the dough for 20 minutes.\n"+
		"2. Bake at 180°C – fan 160°C – for 40 minutes.\n"), "", "L", false)
}

func read(t testing.TB, data []byte) pdf.Document {
	t.Helper()
	d, err := pdf.Read(data)
	if err != nil {
		t.Fatal(err)
	}
	return d
}

func TestText(t *testing.T) {
	want := "# Leek & cheese tart\n\n200 g\tplain flour\n½ tsp\tsalt\n\n" +
		"1. Rub the butter into the flour until it looks like breadcrumbs, then add just enough cold water to bring it together and chill the dough for 20 minutes.\n" +
		"2. Bake at 180°C – fan 160°C – for 40 minutes."
	if d := cmp.Diff(want, read(t, draw(t, recipe)).Text()); d != "" {
		t.Error(d)
	}
}

// testdata/tart.pdf was printed by Chromium from an invented page: composite
// fonts, object streams, columns.
func TestPrintedByABrowser(t *testing.T) {
	data, err := os.ReadFile("testdata/tart.pdf")
	if err != nil {
		t.Fatal(err)
	}
	want, err := os.ReadFile("testdata/tart.txt")
	if err != nil {
		t.Fatal(err)
	}
	if d := cmp.Diff(string(want), read(t, data).Text()+"\n"); d != "" {
		t.Error(d)
	}
}

func TestPages(t *testing.T) {
	d := read(t, draw(t, func(p *fpdf.Fpdf) {
		p.Cell(40, 10, "first")
		p.AddPage()
		p.Cell(40, 10, "second")
	}))
	if len(d.Pages) != 2 || d.Text() != "first\n\nsecond" {
		t.Errorf("%d pages, %q", len(d.Pages), d.Text())
	}
	l := d.Pages[0].Lines[0]
	// 10 mm margins and 1 mm cell padding, in points of 25.4/72 mm.
	if l.Left < 31 || l.Left > 32 || l.Size != 11 || l.Right <= l.Left || l.Base < 790 || l.Base > 805 {
		t.Errorf("%+v", l)
	}
}

// What is drawn beyond the page's edge is on no page.
func TestBeyondTheEdge(t *testing.T) {
	d := read(t, draw(t, func(p *fpdf.Fpdf) {
		p.Text(20, 20, "on the page")
		p.Text(20, 400, "below it")
		p.Text(-90, 20, "beside it")
	}))
	if d.Text() != "on the page" {
		t.Errorf("%q", d.Text())
	}
}

func TestNoText(t *testing.T) {
	picture := draw(t, func(p *fpdf.Fpdf) {
		p.RegisterImageOptionsReader("a", fpdf.ImageOptions{ImageType: "png"}, bytes.NewReader(png(t)))
		p.ImageOptions("a", 10, 10, 50, 50, false, fpdf.ImageOptions{}, 0, "")
	})
	empty := draw(t, func(p *fpdf.Fpdf) { p.Line(10, 10, 20, 20) })
	for says, data := range map[string][]byte{"only pictures": picture, "empty or drawn": empty} {
		if _, err := pdf.Read(data); !errors.Is(err, pdf.ErrNoText) || !strings.Contains(err.Error(), says) {
			t.Errorf("%v, want %q", err, says)
		}
	}
}

func TestRefusals(t *testing.T) {
	locked := draw(t, func(p *fpdf.Fpdf) { p.SetProtection(fpdf.CnProtectPrint, "a", "b"); p.Cell(40, 10, "x") })
	many := draw(t, func(p *fpdf.Fpdf) {
		for range pdf.MaxPages {
			p.AddPage()
		}
	})
	for _, c := range []struct {
		name string
		data []byte
		want error
		says string
	}{
		{"size", make([]byte, pdf.MaxBytes+1), pdf.ErrTooLarge, "at most"},
		{"empty", nil, pdf.ErrNotPDF, "begin with %PDF"},
		{"text", []byte("Dear all"), pdf.ErrNotPDF, "begin with %PDF"},
		{"locked", locked, pdf.ErrLocked, "password"},
		{"pages", many, pdf.ErrTooLarge, "pages"},
		{"head alone", []byte("%PDF-1.7\n"), pdf.ErrDamaged, "no objects"},
		{"no pages", []byte("%PDF-1.7\n1 0 obj << /Type /Catalog >> endobj"), pdf.ErrDamaged, "no pages"},
	} {
		t.Run(c.name, func(t *testing.T) {
			d, err := pdf.Read(c.data)
			if !errors.Is(err, c.want) || !strings.Contains(err.Error(), c.says) || len(d.Pages) > 0 {
				t.Errorf("%v, want %v with %q", err, c.want, c.says)
			}
		})
	}
}

// A file whose tables of objects are wrong or cut off is read all the same.
func TestDamagedTables(t *testing.T) {
	whole := draw(t, recipe)
	want := read(t, whole).Text()
	cut := whole[:bytes.LastIndex(whole, []byte("xref"))]
	shifted := append([]byte("%PDF-1.4\n% mail header in front\n"), whole...)
	for name, data := range map[string][]byte{"cut off": cut, "shifted": shifted} {
		if d := cmp.Diff(want, read(t, data).Text()); d != "" {
			t.Errorf("%s: %s", name, d)
		}
	}
}

func FuzzRead(f *testing.F) {
	f.Add(draw(f, recipe))
	if data, err := os.ReadFile("testdata/tart.pdf"); err == nil {
		f.Add(data)
	}
	f.Add([]byte(page("BT /F 12 Tf 10 700 Td [(Rub) -300 (in)] TJ T* (x) ' ET q 1 0 0 1 5 5 cm /X Do Q BI /W 1 ID a EI")))
	f.Fuzz(func(t *testing.T, data []byte) {
		if d, err := pdf.Read(data); err != nil && len(d.Pages) > 0 || strings.ContainsRune(d.Text(), 0) {
			t.Errorf("%v %q", err, d.Text())
		}
	})
}

func BenchmarkRead(b *testing.B) {
	data := draw(b, recipe)
	b.SetBytes(int64(len(data)))
	for b.Loop() {
		if d, err := pdf.Read(data); err != nil || !strings.HasPrefix(d.Text(), "# Leek") {
			b.Fatal(err)
		}
	}
}
