package docx_test

import (
	"errors"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"plait.example/internal/format/table"
)

// rows are a document's first table, cells by their text, "^" where covered.
func rows(t testing.TB, body string) [][]string {
	t.Helper()
	for _, b := range blocks(t, document(t, body)) {
		if b.Table != nil {
			return texts(*b.Table)
		}
	}
	t.Fatal("no table")
	return nil
}

func texts(in table.Table) (list [][]string) {
	for _, row := range in.Rows {
		var line []string
		for _, c := range row {
			text := c.Text()
			if c.Down == 0 {
				text = "^"
			}
			line = append(line, text)
		}
		list = append(list, line)
	}
	return list
}

func tr(cells ...string) string { return `<w:tr>` + strings.Join(cells, "") + `</w:tr>` }

func tc(format, content string) string {
	return `<w:tc><w:tcPr>` + format + `</w:tcPr>` + content + `</w:tc>`
}

// Rows as a person sees them. Texts are invented; the elements are those of
// ECMA-376 part 1, section 17.4.
func TestRowsAsSeen(t *testing.T) {
	control := func(in string) string { return `<w:sdt><w:sdtPr/><w:sdtContent>` + in + `</w:sdtContent></w:sdt>` }
	for _, c := range []struct {
		name, body string
		want       [][]string
	}{
		{"columns that no cell begins in", tr(tc(`<w:gridSpan w:val="2"/>`, p("9:00")), tc(``, p("Rub in"))) + tr(tc(`<w:gridSpan w:val="2"/>`, p("9:10")), tc(``, p("Chill"))), [][]string{{"9:00", "Rub in"}, {"9:10", "Chill"}}},
		{"cells that do not stand under one another", tr(tc(``, p("9:00")), tc(`<w:gridSpan w:val="2"/>`, p("Rub in"))) + tr(tc(`<w:gridSpan w:val="2"/>`, p("9:10")), tc(``, p("Chill"))), [][]string{{"9:00", "Rub in", "^"}, {"9:10", "^", "Chill"}}},
		{"a row that begins further right", tr(tc(``, p("9:00")), tc(``, p("Rub in"))) + `<w:tr><w:trPr><w:gridBefore w:val="1"/></w:trPr>` + tc(``, p("Chill")) + `</w:tr>`, [][]string{{"9:00", "Rub in"}, {"", "Chill"}}},
		{"a short row", tr(tc(``, p("9:00")), tc(``, p("Rub in"))) + tr(tc(``, p("9:10"))), [][]string{{"9:00", "Rub in"}, {"9:10", ""}}},
		{"merged across and down", tr(tc(`<w:gridSpan w:val="2"/><w:vMerge w:val="restart"/>`, p("All")), tc(``, p("a"))) + tr(tc(`<w:gridSpan w:val="2"/><w:vMerge/>`, p("")), tc(``, p("b"))) + tr(tc(``, p("1")), tc(``, p("2")), tc(``, p("3"))), [][]string{{"All", "^", "a"}, {"^", "^", "b"}, {"1", "2", "3"}}},
		{"rows and cells in controls", control(tr(tc(``, p("9:00")), control(tc(``, control(p("Rub in")))))) + tr(tc(``, p("9:10")), tc(``, p("Chill"))), [][]string{{"9:00", "Rub in"}, {"9:10", "Chill"}}},
		{"a row that is deleted, one inserted", `<w:tr><w:trPr><w:del/></w:trPr>` + tc(``, p("gone")) + `</w:tr><w:tr><w:trPr><w:ins/></w:trPr>` + tc(``, `<w:p><w:ins><w:r><w:t>new</w:t></w:r></w:ins></w:p>`) + `</w:tr>`, [][]string{{"new"}}},
		{"a deleted cell", tr(tc(``, p("9:00")), tc(`<w:cellDel/>`, p("gone")), tc(``, p("Stir"))), [][]string{{"9:00", "Stir"}}},
		{"a table in a cell", tr(tc(``, p("9:00")), tc(``, p("Both:")+`<w:tbl>`+tr(tc(``, p("T")), tc(``, p("roll")))+`</w:tbl>`+p(""))) + tr(tc(``, p("9:10")), tc(``, p("Chill"))), [][]string{{"9:00", "Both:\nT\troll"}, {"9:10", "Chill"}}},
		{"lines of a cell", tr(tc(``, p("")+p("a")+p("")+p("b")+p("")), tc(``, p("")+p("c"))), [][]string{{"\na\n\nb", "c"}}},
		{"numbers and bullets", tr(tc(``, item("1", "0", "Weigh")+item("1", "0", "Sift")+item("2", "0", "Salt"))), [][]string{{"1. Weigh\n2. Sift\nSalt"}}},
		{"a row without cells", tr() + tr(tc(``, p("a"))), [][]string{{""}, {"a"}}},
	} {
		t.Run(c.name, func(t *testing.T) {
			if diff := cmp.Diff(c.want, rows(t, `<w:tbl>`+c.body+`</w:tbl>`)); diff != "" {
				t.Error(diff)
			}
		})
	}
}

// A table that frames others comes apart into them, in order.
func TestFrames(t *testing.T) {
	plan := `<w:tbl>` + tr(tc(``, p("9:00")), tc(``, p("Rub in"))) + tr(tc(``, p("9:10")), tc(``, p("Chill"))) + `</w:tbl>`
	var got []string
	for _, b := range blocks(t, document(t, `<w:tbl>`+tr(tc(``, p("Key: T tart")+plan+p("")), tc(``, p("Notes")))+`</w:tbl>`+p("End"))) {
		if b.Table != nil {
			got = append(got, "table")
		} else {
			got = append(got, b.Line.Text())
		}
	}
	if diff := cmp.Diff([]string{"Key: T tart", "table", "Notes", "End"}, got); diff != "" {
		t.Error(diff)
	}
}

// Colours by the run, its style, its paragraph's style, the paragraph; boxes.
func TestInksAndBoxes(t *testing.T) {
	look := `<w:styles><w:style w:type="character" w:styleId="Hot"><w:name w:val="Hot"/><w:rPr><w:color w:val="C00000"/></w:rPr></w:style>
<w:style w:type="character" w:styleId="Hotter"><w:name w:val="Hotter"/><w:basedOn w:val="Hot"/></w:style>
<w:style w:type="paragraph" w:styleId="Cold"><w:name w:val="Cold"/><w:rPr><w:color w:val="0070C0"/></w:rPr></w:style></w:styles>`
	run := func(format, text string) string {
		return `<w:r><w:rPr>` + format + `</w:rPr><w:t>` + text + `</w:t></w:r>`
	}
	body := `<w:p><w:pPr><w:pStyle w:val="Cold"/><w:shd w:fill="EEEEEE"/></w:pPr>` + run(`<w:rStyle w:val="Hotter"/>`, "a") + run(``, "b") + run(`<w:color w:val="00B050"/><w:highlight w:val="darkYellow"/>`, "c") + run(`<w:color w:val="000000"/>`, "d") + `</w:p>` +
		`<w:tbl>` + tr(tc(``, `<w:sdt><w:sdtPr><w14:checkbox xmlns:w14="w14"><w14:checked w14:val="1"/></w14:checkbox></w:sdtPr><w:sdtContent><w:p/></w:sdtContent></w:sdt>`), tc(``, p("☑ done")), tc(``, p("☐ not")),
		tc(``, `<w:p><w:r><w:fldChar w:fldCharType="begin"><w:ffData><w:checkBox><w:default w:val="0"/><w:checked/></w:checkBox></w:ffData></w:fldChar></w:r></w:p>`),
		tc(``, `<w:p><w:sdt><w:sdtPr><w14:checkbox xmlns:w14="w14"><w14:checked w14:val="0"/></w14:checkbox></w:sdtPr><w:sdtContent><w:r><w:t>no</w:t></w:r></w:sdtContent></w:sdt></w:p>`)) + `</w:tbl>`
	list := blocks(t, pack(t, "word/document.xml", head+body+foot, "word/styles.xml", look))
	want := table.Line{
		{Text: "a", Ink: "C00000", Shade: "EEEEEE"},
		{Text: "b", Ink: "0070C0", Shade: "EEEEEE"},
		{Text: "c", Ink: "00B050", Shade: "808000"},
		{Text: "d", Shade: "EEEEEE"},
	}
	if diff := cmp.Diff(want, list[0].Line); diff != "" {
		t.Error(diff)
	}
	var boxes []bool
	for _, c := range list[1].Table.Rows[0] {
		boxes = append(boxes, c.Checked)
	}
	if diff := cmp.Diff([]bool{true, true, false, true, false}, boxes); diff != "" {
		t.Error(diff)
	}
}

// Shadings by ECMA-376 part 1, 17.18.78: a fill, a pattern that covers all, one
// that covers a fifth.
func TestShades(t *testing.T) {
	row := ""
	for _, shd := range []string{`w:val="clear" w:color="auto" w:fill="FFE599"`, `w:val="solid" w:color="FFFF00" w:fill="auto"`, `w:val="pct20" w:color="auto" w:fill="auto"`, `w:val="pct50" w:color="FF0000" w:fill="0000FF"`, `w:val="nil"`, `w:val="clear" w:fill="FFFFFF"`} {
		row += tc(`<w:shd `+shd+`/>`, p("a"))
	}
	var got []string
	for _, c := range blocks(t, document(t, `<w:tbl>`+tr(row)+`</w:tbl>`))[0].Table.Rows[0] {
		got = append(got, c.Shade)
	}
	if diff := cmp.Diff([]string{"FFE599", "FFFF00", "CCCCCC", "800080", "", ""}, got); diff != "" {
		t.Error(diff)
	}
}

// A few words of markup cannot claim a plane of cells.
func TestTableTooLarge(t *testing.T) {
	wide := tr(strings.Repeat(tc(`<w:gridSpan w:val="63"/>`, p("a")), 400))
	d := read(t, `<w:tbl>`+wide+strings.Repeat(tr(tc(``, p("b"))), 2000)+`</w:tbl>`)
	if _, err := d.Tables(); !errors.Is(err, table.ErrTooLarge) {
		t.Error(err)
	}
}
