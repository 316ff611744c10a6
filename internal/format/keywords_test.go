package format_test

import (
	"bytes"
	"testing"

	"codeberg.org/go-pdf/fpdf"

	"plait.example/internal/format"
	"plait.example/internal/format/docx"
	"plait.example/internal/format/sheet"
	"plait.example/internal/format/table"
)

func TestKeywords(t *testing.T) {
	word, err := docx.Write(docx.Paper{Title: "T", Keywords: "eggs & ham"})
	if err != nil {
		t.Fatal(err)
	}
	book, err := sheet.Write([]sheet.Page{{Table: table.Table{Name: "T"}}}, "eggs", "ham")
	if err != nil {
		t.Fatal(err)
	}
	plain, err := docx.Write(docx.Paper{Title: "T"})
	if err != nil {
		t.Fatal(err)
	}
	var printed bytes.Buffer
	p := fpdf.New("P", "mm", "A4", "") // a library that is not ours
	p.SetKeywords("eggs ham", false)
	p.AddPage()
	if err := p.Output(&printed); err != nil {
		t.Fatal(err)
	}
	for name, c := range map[string]struct {
		data []byte
		want string
	}{
		"word": {word, "eggs & ham"}, "workbook": {book, "eggs ham"}, "pdf": {printed.Bytes(), "eggs ham"},
		"page": {[]byte(`<!DOCTYPE html><html><head><meta name="keywords" content="eggs &amp; ham">`), "eggs & ham"},
		"none": {plain, ""}, "text": {[]byte("keywords: eggs"), ""}, "broken": {[]byte("PK\x03\x04"), ""},
	} {
		if got := format.Keywords(c.data); got != c.want {
			t.Errorf("%s: %q, want %q", name, got, c.want)
		}
	}
}
