package docx_test

import (
	"bytes"
	"encoding/xml"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"plait.example/internal/format/docx"
	"plait.example/internal/format/table"
)

func paper(t testing.TB, list []table.Block) []byte {
	t.Helper()
	data, err := docx.Write(docx.Paper{Title: "A & B", Author: "C", Footer: "Local rules decide.", Landscape: true, Blocks: list})
	if err != nil {
		t.Fatal(err)
	}
	return data
}

// What LibreOffice wrote is read, written by us and read again the same.
func TestWriteAndRead(t *testing.T) {
	for _, name := range []string{"plan.docx", "nested.docx", "changes.docx"} {
		want := blocks(t, written(t, name))
		for i, b := range want { // a written item is words with a tab after its number
			if b.Item != "" {
				want[i].Line = append(table.Line{{Text: b.Item + "\t"}}, b.Line...)
				want[i].Item = ""
				want[i].Line = table.Line{{Text: want[i].Line.Text()}}
			}
		}
		data := paper(t, blocks(t, written(t, name)))
		if diff := cmp.Diff(want, blocks(t, data)); diff != "" {
			t.Errorf("%s: %s", name, diff)
		}
		if !bytes.Equal(data, paper(t, blocks(t, written(t, name)))) {
			t.Error("not the same at every call")
		}
	}
}

// Every part is XML, whatever the words; headers repeat, and two tables in a
// row stay two.
func TestWrittenParts(t *testing.T) {
	one := &table.Table{Header: 1, Rows: [][]table.Cell{{{Lines: []table.Line{{{Text: "<a> & \"b\"\x00\uFFFF\tc\nd"}}}, Shade: "#ff0"}, {Span: 9, Down: 9}}, {{}, {}}}}
	data := paper(t, []table.Block{{Table: one}, {Table: one}, {Table: &table.Table{}}, {Line: table.Line{{Text: "]]>"}}, Item: "*"}})
	for name, text := range parts(t, data) {
		if err := xml.Unmarshal([]byte(text), new(struct{})); err != nil {
			t.Errorf("%s: %v", name, err)
		}
	}
	list := blocks(t, data)
	if len(list) != 3 || list[0].Table == nil || list[1].Table == nil || list[0].Table.Header != 1 || list[2].Line.Text() != "•\t]]>" {
		t.Fatalf("%+v", list)
	}
	if got := list[0].Table.Rows[0][0]; got.Text() != "<a> & \"b\"\tc\nd" || got.Shade != "FFFF00" {
		t.Errorf("%+v", got)
	}
	body := parts(t, data)["word/document.xml"]
	if !strings.Contains(body, `w:orient="landscape"`) || strings.Count(body, "<w:tblHeader/>") != 2 {
		t.Error(body)
	}
}
