package docx_test

import (
	"archive/zip"
	"bytes"
	"encoding/binary"
	"errors"
	"hash/crc32"
	"slices"
	"strings"
	"testing"
	"unicode/utf8"

	"plait.example/internal/format/docx"
	"plait.example/internal/format/table"
)

// lying packs content and states another unpacked size in the table of contents.
func lying(t *testing.T, name, content string, stated uint32) []byte {
	t.Helper()
	data := pack(t, name, content)
	at := bytes.LastIndex(data, []byte("PK\x01\x02")) // central directory header, APPNOTE 4.3.12: size at 24
	binary.LittleEndian.PutUint32(data[at+24:], stated)
	return data
}

func TestRefusals(t *testing.T) {
	many := make([]string, 0, 2*(docx.MaxEntries+1))
	for range docx.MaxEntries + 1 {
		many = append(many, "a", "")
	}
	word := func(xml string) []byte { return pack(t, "word/document.xml", xml) }
	for _, c := range []struct {
		name string
		data []byte
		want error
		says string
	}{
		{"file size", make([]byte, docx.MaxBytes+1), docx.ErrTooLarge, "at most"},
		{"empty", nil, docx.ErrNotWord, "save it as .docx"},
		{"no zip", []byte("Dear all"), docx.ErrNotWord, "unpacked"},
		{"zip bomb", word(head + strings.Repeat(" ", 4<<20) + foot), docx.ErrTooLarge, "times its size"},
		{"bomb beside the text", pack(t, "word/document.xml", head+foot, "word/media/a.bmp", strings.Repeat("\x00", 3<<20)), docx.ErrTooLarge, "times its size"},
		{"unpacks too far", stored(t, 3, 40<<20), docx.ErrTooLarge, "unpacks to more"},
		{"lying size", lying(t, "word/document.xml", head+p(strings.Repeat("lie ", 1<<18))+foot, 100), docx.ErrDamaged, "document.xml"},
		{"entries", pack(t, many...), docx.ErrTooLarge, "files are packed"},
		{"document type", word(`<?xml version="1.0"?><!DOCTYPE d [<!ENTITY a "aaaa"><!ENTITY b SYSTEM "file:///etc/hostname">]>` + head[55:] + p("&b;") + foot), docx.ErrDamaged, "document type"},
		{"unknown entity", word(head + p("&b;") + foot), docx.ErrDamaged, "entity"},
		{"deep", word(head + strings.Repeat("<w:sdt>", docx.MaxDepth) + strings.Repeat("</w:sdt>", docx.MaxDepth) + foot), docx.ErrTooLarge, "deep"},
		{"cut off", word(head + p("x")), docx.ErrDamaged, "document.xml"},
		{"no body", word(`<w:document xmlns:w="w"/>`), docx.ErrDamaged, "no body"},
		{"spreadsheet", pack(t, "xl/workbook.xml", "<workbook/>"), docx.ErrNotWord, "spreadsheet"},
		{"slides", pack(t, "ppt/presentation.xml", "<p/>"), docx.ErrNotWord, "slides"},
		{"OpenDocument", pack(t, "mimetype", "application/vnd.oasis.opendocument.text", "content.xml", "<c/>"), docx.ErrNotWord, "OpenDocument"},
		{"other archive", pack(t, "holiday.jpg", "x"), docx.ErrNotWord, "archive"},
	} {
		t.Run(c.name, func(t *testing.T) {
			d, err := docx.Read(c.data)
			if !errors.Is(err, c.want) || !strings.Contains(err.Error(), c.says) || len(d.Blocks) > 0 {
				t.Errorf("%v, want %v with %q", err, c.want, c.says)
			}
		})
	}
}

// stored is a zip file whose table of contents states n files of that size, as
// bombs do whose files share their bytes.
func stored(t *testing.T, n int, size uint64) []byte {
	t.Helper()
	var b bytes.Buffer
	z := zip.NewWriter(&b)
	for range n {
		h := &zip.FileHeader{Name: "word/document.xml", Method: zip.Store, CRC32: crc32.ChecksumIEEE(nil), UncompressedSize64: size, CompressedSize64: size}
		if _, err := z.CreateRaw(h); err != nil {
			t.Fatal(err)
		}
	}
	if err := z.Close(); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

// Tables in tables, runs without end: read in one pass, not once a level.
func TestDocumentsThatGrow(t *testing.T) {
	const deep = 60
	nest := strings.Repeat(`<w:tbl><w:tr><w:tc>`, deep) + p("core") + strings.Repeat(`</w:tc></w:tr></w:tbl>`, deep)
	if got := read(t, nest).Text(); got != "core" {
		t.Errorf("%q", got)
	}
	if got := read(t, `<w:p>`+strings.Repeat(`<w:r><w:t>a<!-- -->b</w:t></w:r>`, 20_000)+`</w:p>`).Text(); len(got) != 40_000 {
		t.Errorf("%d letters", len(got))
	}
}

func FuzzRead(f *testing.F) {
	f.Add(document(f, whole()))
	f.Add(pack(f, "word/document.xml", head+scones+foot))
	f.Add([]byte("PK\x03\x04"))
	f.Fuzz(func(t *testing.T, data []byte) {
		d, err := docx.Read(data)
		if err != nil && len(d.Blocks) > 0 || !utf8.ValidString(d.Text()) {
			t.Errorf("%v %q", err, d.Text())
		}
	})
}

// The body's XML itself, since most changes to a zip file only break the zip.
func FuzzBody(f *testing.F) {
	f.Add(whole(), look, counts)
	f.Add(`<w:p><w:pPr><w:rPr><w:del/></w:rPr></w:pPr></w:p><w:tbl><w:tr><w:tc><w:tcPr><w:vMerge/></w:tcPr></w:tc></w:tr></w:tbl>`, "<styles/>", "<numbering/>")
	f.Fuzz(func(t *testing.T, body, styles, numbers string) {
		d, err := docx.Read(pack(t, "word/document.xml", head+body+foot, "word/styles.xml", styles, "word/numbering.xml", numbers))
		if err != nil && len(d.Blocks) > 0 || !utf8.ValidString(d.Text()) {
			t.Errorf("%v %q", err, d.Text())
		}
		list, err := d.Tables()
		for _, b := range list {
			if err != nil || b.Table != nil && slices.ContainsFunc(b.Table.Rows, func(row []table.Cell) bool { return len(row) != len(b.Table.Rows[0]) }) {
				t.Errorf("%v %+v", err, b.Table)
			}
		}
	})
}
