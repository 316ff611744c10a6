package docx_test

import (
	"archive/zip"
	"bytes"
	"encoding/xml"
	"errors"
	"io"
	"strings"
	"testing"

	"plait.example/internal/format/docx"
	"plait.example/internal/format/table"
)

// part is a part of a written document.
func part(t *testing.T, data []byte, name string) string {
	t.Helper()
	z, err := zip.NewReader(bytes.NewReader(data), int64(len(data)))
	if err != nil {
		t.Fatal(err)
	}
	f, err := z.Open(name)
	if err != nil {
		t.Fatal(err)
	}
	text, err := io.ReadAll(f)
	if err := errors.Join(err, f.Close()); err != nil {
		t.Fatal(err)
	}
	return string(text)
}

// That LibreOffice shows it at its place was looked at by eye.
func TestWriteDrawing(t *testing.T) {
	d := &docx.Drawing{Width: 100, Height: 200, Wide: 150, Alt: "a line & a word", Shapes: []docx.Shape{
		{Path: []docx.Move{{Op: 'M', X: 10, Y: 10}, {Op: 'C', AX: 10, AY: 60, BX: 90, BY: 60, X: 90, Y: 90}, {Op: 'Z'}}, Fill: "#C00000", Stroke: "0070C0", Line: 2, Dashed: true},
		{Path: []docx.Move{{Op: 'M', X: 10, Y: 10}}},
		{Text: "fish <3", X: 50, Y: 50, Size: 8, Bold: true, Ink: "#002060", Align: "center"},
	}}
	data, err := docx.Write(docx.Paper{Beside: d, Blocks: []table.Block{{Line: table.Line{{Text: "Words beside"}}}}})
	if err != nil {
		t.Fatal(err)
	}
	text := part(t, data, "word/document.xml")
	decoder := xml.NewDecoder(strings.NewReader(text))
	for {
		if _, err := decoder.Token(); errors.Is(err, io.EOF) {
			break
		} else if err != nil {
			t.Fatalf("%v in %s", err, text)
		}
	}
	for _, want := range []string{
		`<wp:extent cx="1905000" cy="3810000"/>`, // 150 by 300 points of 12700 units
		`descr="a line &amp; a word"`, `<a:srgbClr val="C00000"/>`, `<a:prstDash val="sysDash"/>`, `fish &lt;3`, `<w:jc w:val="center"/>`, `<w:color w:val="002060"/>`,
		`<a:moveTo><a:pt x="0" y="0"/></a:moveTo><a:cubicBezTo><a:pt x="0" y="952500"/>`, // 50 units below, at 19050 each
	} {
		if !strings.Contains(text, want) {
			t.Errorf("%s is not in\n%s", want, text)
		}
	}
	if strings.Count(text, "<wps:wsp>") != 2 {
		t.Error("a path of one point is drawn")
	}
	read, err := docx.Read(data)
	if err != nil || !strings.Contains(read.Text(), "Words beside") {
		t.Errorf("it is read as %q (%v)", read.Text(), err)
	}
}
