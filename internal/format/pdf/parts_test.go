package pdf_test

import (
	"bytes"
	"compress/zlib"
	"errors"
	"fmt"
	"image"
	imagepng "image/png"
	"strings"
	"testing"

	"plait.example/internal/format/pdf"
)

func png(t testing.TB) []byte {
	t.Helper()
	var b bytes.Buffer
	if err := imagepng.Encode(&b, image.NewGray(image.Rect(0, 0, 8, 8))); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

// page is a file of one page with the standard Helvetica and more objects.
func page(contents string, more ...string) string {
	return "%PDF-1.7\n1 0 obj << /Type /Catalog /Pages 2 0 R >> endobj\n2 0 obj << /Type /Pages /Kids [3 0 R] /Count 1 >> endobj\n" +
		"3 0 obj << /Type /Page /Parent 2 0 R /Contents 4 0 R /Resources << /Font << /F 5 0 R /G 6 0 R >> /XObject << /X 7 0 R >> >> >> endobj\n" +
		"4 0 obj << /Length " + fmt.Sprint(len(contents)) + " >> stream\n" + contents + "\nendstream endobj\n" +
		"5 0 obj << /Type /Font /Subtype /Type1 /BaseFont /Helvetica /Encoding /WinAnsiEncoding >> endobj\n" + strings.Join(more, "\n")
}

func object(n int, dict, data string) string {
	return fmt.Sprintf("%d 0 obj << %s /Length %d >> stream\n%s\nendstream endobj", n, dict, len(data), data)
}

func deflate(s string) string {
	var b bytes.Buffer
	z := zlib.NewWriter(&b)
	_, _ = z.Write([]byte(s))
	_ = z.Close()
	return b.String()
}

// The operators are those of ISO 32000-1, 9.4; the strings of 7.3.4.
func TestPageDescriptions(t *testing.T) {
	for _, c := range []struct{ name, contents, want string }{
		{"strings", `BT /F 12 Tf 10 700 Td (a\(b\)\101(c)\
d) Tj ET`, "a(b)A(c)d"},
		{"hexadecimal", "BT /F 12 Tf 10 700 Td <53 746 9 72> Tj ET", "Stir"},
		{"gap in TJ", "BT /F 12 Tf 10 700 Td [(Rub)-300(i)20(n)] TJ ET", "Rub in"},
		{"gap far apart", "BT /F 12 Tf 10 700 Td [(200 g)-4000(flour)] TJ ET", "200 g\tflour"},
		{"lines", `BT /F 12 Tf 14 TL 10 700 Td (Boil) Tj T* (Stir) Tj (Cool) ' 0 0 (Eat) " ET`, "Boil\nStir\nCool\nEat"},
		{"letters one by one", "BT /F 10 Tf 1 0 0 1 10 700 Tm (S) Tj 1 0 0 1 16.67 700 Tm (o) Tj 1 0 0 1 25.01 700 Tm (u) Tj ET", "So u"},
		{"scaled by the matrix", "q 0.5 0 0 0.5 0 0 cm BT /F 24 Tf 20 1400 Td (Boil) Tj 100 0 Td (it) Tj ET Q", "Boil\tit"},
		{"raised", "BT /F 12 Tf 10 700 Td (1) Tj /F 7 Tf 4 Ts (1) Tj 0 Ts (/) Tj (2) Tj ET", "11/2"},
		{"drawn spaces", "BT /F 12 Tf 10 700 Td (Rub ) Tj (in ) Tj (now) Tj ET", "Rub in now"},
		{"form", "/X Do", "inside"},
		{"inline picture", "BI /W 2 /H 1 ID (\xff\x00( EI BT /F 12 Tf 10 700 Td (after) Tj ET", "after"},
		{"differences", "BT /G 12 Tf 10 700 Td (A\x01\x02\x03\x04B) Tj ET", "A½°éfiB"},
		{"unbalanced", "Q Q ET BT /F 12 Tf 10 700 Td (fine) Tj ) ] >> Q", "fine"},
		{"sideways", "BT /F 12 Tf 0 1 -1 0 300 300 Tm (up the side) Tj 1 0 0 1 10 700 Tm (along) Tj ET", "along"},
	} {
		t.Run(c.name, func(t *testing.T) {
			form := object(7, "/Type /XObject /Subtype /Form /Matrix [1 0 0 1 10 600]", "BT /F 12 Tf (inside) Tj ET /X Do")
			other := "6 0 obj << /Type /Font /Subtype /Type1 /BaseFont /Own /Encoding << /Differences [1 /onehalf /degree /eacute /f_i] >> >> endobj"
			d, err := pdf.Read([]byte(page(c.contents, other, form)))
			if err != nil || d.Text() != c.want {
				t.Errorf("%q %v, want %q", d.Text(), err, c.want)
			}
		})
	}
}

// Filters of ISO 32000-1, 7.4, on a drawing of one word; more in filter_test.go.
func TestFilters(t *testing.T) {
	draw := "BT /F 12 Tf 10 700 Td (Stir) Tj ET"
	for _, c := range []struct{ name, dict, data, want string }{
		{"deflate", "/Filter /FlateDecode", deflate(draw), "Stir"},
		{"deflate cut off", "/Filter /FlateDecode", deflate(draw + strings.Repeat(" n", 500))[:45], "Stir"},
		{"hexadecimal", "/Filter [/ASCIIHexDecode]", fmt.Sprintf("%x>", draw), "Stir"},
		{"run length", "/Filter /RL", string(rune(len(draw)-1)) + draw + "\x80", "Stir"},
		{"two filters", "/Filter [/AHx /Fl]", fmt.Sprintf("%x>", deflate(draw)), "Stir"},
		{"predictor", "/Filter /Fl /DecodeParms << /Predictor 12 /Columns 34 >>", deflate("\x00" + draw), "Stir"},
	} {
		t.Run(c.name, func(t *testing.T) {
			file := strings.Replace(page("unused"), "4 0 obj", "44 0 obj", 1) + object(4, c.dict, c.data)
			d, err := pdf.Read([]byte(file))
			if err != nil || d.Text() != c.want {
				t.Errorf("%q %v", d.Text(), err)
			}
		})
	}
}

// A composite font's codes mean what its map says (example of ISO 32000-1, 9.10.3, shortened).
func TestComposite(t *testing.T) {
	cmap := "1 begincodespacerange <0000> <FFFF> endcodespacerange 2 beginbfrange <0000> <005E> <0020> <005F> <0061> [<00660066> <00660069> <00660066006C>] endbfrange 1 beginbfchar <3A51> <D840DC3E> endbfchar"
	font := "6 0 obj << /Type /Font /Subtype /Type0 /Encoding /Identity-H /ToUnicode 8 0 R /DescendantFonts [9 0 R] >> endobj 9 0 obj << /Subtype /CIDFontType2 /DW 500 /W [0 [300] 95 97 600] >> endobj "
	text := "BT /G 12 Tf 10 700 Td <0033 0000 0034 005F 0061 3A51> Tj ET"
	d, err := pdf.Read([]byte(page(text, font, object(8, "", cmap))))
	if err != nil || d.Text() != "S Tffffl\U0002003E" {
		t.Errorf("%q %v", d.Text(), err)
	}
	_, err = pdf.Read([]byte(page(text, strings.Replace(font, "/ToUnicode 8 0 R", "", 1))))
	if !errors.Is(err, pdf.ErrNoText) || !strings.Contains(err.Error(), "which letters") {
		t.Errorf("%v", err)
	}
}

// Files made to choke a reader end with an error or what text they have, soon.
func TestHostile(t *testing.T) {
	zeros := deflate(strings.Repeat("\x00", 60<<20))
	for _, c := range []struct {
		name, file string
		want       error
	}{
		{"bomb", strings.Replace(page(""), "/Contents 4 0 R", "/Contents [8 0 R 8 0 R 8 0 R]", 1) + object(8, "/Filter /FlateDecode", zeros), pdf.ErrTooLarge},
		{"bomb of filters", page("/X Do") + object(7, "/Filter /Fl", deflate(strings.Repeat("(x) Tj ", 12_000_000/2))), pdf.ErrTooLarge},
		{"forms in forms", formsInForms(), pdf.ErrTooLarge},
		{"a form in itself", page("/X Do") + object(7, "", strings.Repeat("/X Do ", 1000)), pdf.ErrNoText},
		{"pages in a ring", "%PDF-1.7\n1 0 obj << /Type /Catalog /Pages 2 0 R >> endobj 2 0 obj << /Kids [2 0 R 2 0 R] >> endobj", pdf.ErrDamaged},
		{"references in a ring", "%PDF-1.7\n1 0 obj << /Type /Catalog /Pages 2 0 R >> endobj 2 0 obj 3 0 R endobj 3 0 obj 2 0 R endobj", pdf.ErrDamaged},
		{"brackets", "%PDF-1.7\n1 0 obj " + strings.Repeat("[", 1<<20), pdf.ErrDamaged},
		{"string without end", "%PDF-1.7\n" + strings.Repeat("1 0 obj (", 1<<18), pdf.ErrDamaged},
		{"huge codes", page("BT /G 1 Tf (x) Tj ET", "6 0 obj << /Subtype /Type0 /ToUnicode 8 0 R /DescendantFonts [<< /W [0 4000000000 1] >>] >> endobj "+object(8, "", "<00000000> <ffffffff> <0000> endbfrange")), pdf.ErrNoText},
		{"object stream that lies", "%PDF-1.7\n" + object(1, "/Type /ObjStm /N 999999999 /First -5", "1 0 2 0"), pdf.ErrDamaged},
	} {
		t.Run(c.name, func(t *testing.T) {
			if _, err := pdf.Read([]byte(c.file)); !errors.Is(err, c.want) {
				t.Errorf("%v, want %v", err, c.want)
			}
		})
	}
}

// formsInForms draws a form that draws the next ten times, and so on: ten to the tenth steps.
func formsInForms() string {
	file := page("/X Do") + object(7, "/Resources << /XObject << /X 20 0 R >> >>", "/X Do")
	for n := 20; n < 30; n++ {
		file += "\n" + object(n, fmt.Sprintf("/Resources << /XObject << /X %d 0 R >> >>", n+1), strings.Repeat("/X Do 1 2 3 4 5 6 7 8 n ", 10))
	}
	return file
}
