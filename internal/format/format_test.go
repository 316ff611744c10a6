package format_test

import (
	"archive/zip"
	"bytes"
	"errors"
	"strings"
	"testing"

	"codeberg.org/go-pdf/fpdf"

	"plait.example/internal/format"
	"plait.example/internal/format/docx"
	"plait.example/internal/format/opendoc"
	"plait.example/internal/format/pdf"
	"plait.example/internal/format/plain"
	"plait.example/internal/format/sheet"
)

func word(t testing.TB, text string) []byte {
	t.Helper()
	var b bytes.Buffer
	z := zip.NewWriter(&b)
	w, err := z.Create("word/document.xml")
	if err != nil {
		t.Fatal(err)
	}
	if _, err := w.Write([]byte(`<w:document xmlns:w="w"><w:body><w:p><w:r><w:t>` + text + `</w:t></w:r></w:p></w:body></w:document>`)); err != nil {
		t.Fatal(err)
	}
	if err := z.Close(); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

func printed(t testing.TB, text string) []byte {
	t.Helper()
	p := fpdf.New("P", "mm", "A4", "")
	p.AddPage()
	p.SetFont("Helvetica", "", 11)
	p.Cell(40, 10, text)
	var b bytes.Buffer
	if err := p.Output(&b); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

// The kind is told by the content; the names lie on purpose. Texts are invented.
func TestRead(t *testing.T) {
	for _, c := range []struct {
		name string
		data []byte
		kind format.Kind
	}{
		{"a.pdf", []byte("Stir well"), format.Text},
		{"b.txt", word(t, "Stir well"), format.Word},
		{"c.doc", []byte("<!DOCTYPE html><title>Soup</title><p>Stir well"), format.WebPage},
		{"d.docx", []byte("\xEF\xBB\xBF\n<!-- saved --><html><body>Stir well</body></html>"), format.WebPage},
		{"e", []byte("\xFF\xFE<\x00p\x00>\x00S\x00t\x00i\x00r\x00 \x00w\x00e\x00l\x00l\x00"), format.WebPage},
		{"f.html", printed(t, "Stir well"), format.PDF},
		{"g.txt", []byte("S\x00t\x00i\x00r\x00 \x00w\x00e\x00l\x00l\x00"), format.Text},
	} {
		d, err := format.Read(c.name, c.data)
		if err != nil || d.Kind != c.kind || d.Text != "Stir well" || (d.Word != nil) != (c.kind == format.Word) {
			t.Errorf("%s: %q %q %v, want a %s", c.name, d.Kind, d.Text, err, c.kind)
		}
	}
	less := "BMI < 20 is not a recipe, <b>nor</b> is this\n"
	if d, err := format.Read("h", []byte(less)); err != nil || d.Kind != format.Text || d.Text != less {
		t.Errorf("%q %v", d.Kind, err)
	}
	d, err := format.Read("i", []byte(`<html><script type="application/ld+json">{"@type":"Recipe","name":"Soup","recipeIngredient":["1 leek"]}</script>`))
	if err != nil || len(d.Recipes) != 1 || d.Recipes[0].Name != "Soup" {
		t.Errorf("%v %v", d.Recipes, err)
	}
}

// First bytes by the published signatures of the formats (PNG: ISO/IEC 15948, 5.2; others from memory).
func TestRefusals(t *testing.T) {
	for _, c := range []struct {
		data, says string
		want       error
	}{
		{"\x89PNG\r\n\x1a\n\x00", "text recognition", format.ErrKind},
		{"\xFF\xD8\xFF\xE0", "text recognition", format.ErrKind},
		{"\x00\x00\x00\x18ftypheic\x00", "text recognition", format.ErrKind},
		{"\xD0\xCF\x11\xE0\xA1\xB1\x1A\xE1\x00", "save it as .docx", format.ErrKind},
		{`{\rtf1\ansi Stir}`, "save it as .docx", format.ErrKind},
		{"From: saved\nMIME-Version: 1.0\nContent-Type: multipart/related; boundary=x\n\n", "HTML only", format.ErrKind},
		{"\x1F\x8B\x08", "unpack it", format.ErrKind},
		{"", "no words", format.ErrEmpty},
		{"<html><script>go()</script>", "no words", format.ErrEmpty},
		{string(word(t, " ")), "no words", format.ErrEmpty},
		{string(printed(t, "")), "empty or drawn", pdf.ErrNoText},
		{"stir\x00\x01", "zero bytes", plain.ErrNotText},
		{string(archive(t, "xl/workbook.bin", "x")), ".xlsb", format.ErrKind},
		{string(archive(t, "mimetype", "application/vnd.oasis.opendocument.presentation", "content.xml", "<c/>")), "OpenDocument", docx.ErrNotWord},
		{string(archive(t, "mimetype", "application/vnd.oasis.opendocument.text", "content.xml", "<c/>")), "save it as .odt", opendoc.ErrNotOpen},
		{string(archive(t, "xl/workbook.xml", "<c/>")), "save it as .xlsx", sheet.ErrNotSheet},
		{"PK\x03\x04 and no more", "unpacked", docx.ErrNotWord},
	} {
		d, err := format.Read("soup.txt", []byte(c.data))
		if !errors.Is(err, c.want) || !strings.Contains(err.Error(), c.says) || !strings.HasPrefix(err.Error(), "soup.txt: ") || d.Text != "" {
			t.Errorf("%.20q: %v, want %q", c.data, err, c.says)
		}
	}
}

func FuzzRead(f *testing.F) {
	f.Add(word(f, "Stir"))
	f.Add(printed(f, "Stir"))
	f.Add([]byte("<html><p>Stir"))
	f.Add([]byte("Stir"))
	f.Add([]byte("a,b,c\n1,2,3\n| a | b |\n| c | d |\nx\ty\nz\tw\n"))
	f.Add([]byte(`<?xml version="1.0"?><office:document xmlns:office="o"><body><text><p>Stir</p></text></body></office:document>`))
	f.Fuzz(func(t *testing.T, data []byte) {
		d, err := format.Read("a.csv", data)
		if err == nil && d.Text == "" && len(d.Recipes) == 0 || err != nil && len(d.Blocks) > 0 {
			t.Error("read as nothing without an error, or something with one", err)
		}
		checkGrid(t, d.Blocks)
	})
}
