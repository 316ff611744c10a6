package sheet_test

import (
	"archive/zip"
	"bytes"
	"errors"
	"fmt"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/xuri/excelize/v2"

	"plait.example/internal/format/packed"
	"plait.example/internal/format/sheet"
	"plait.example/internal/format/table"
)

// pack is a zip file of names and contents, in pairs.
func pack(t testing.TB, files ...string) []byte {
	t.Helper()
	var b bytes.Buffer
	z := zip.NewWriter(&b)
	for i := 0; i < len(files); i += 2 {
		w, err := z.Create(files[i])
		if err != nil {
			t.Fatal(err)
		}
		if _, err := w.Write([]byte(files[i+1])); err != nil {
			t.Fatal(err)
		}
	}
	if err := z.Close(); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

const (
	main  = `<workbook xmlns:r="r"><workbookPr/><sheets><sheet name="Plan" sheetId="1" r:id="rId1"/></sheets></workbook>`
	rels  = `<Relationships><Relationship Id="rId1" Type="x/worksheet" Target="worksheets/sheet1.xml"/><Relationship Id="rId2" Type="x/styles" Target="/xl/styles.xml"/><Relationship Id="rId3" Type="x/sharedStrings" Target="sharedStrings.xml"/><Relationship Id="rId4" Type="x/theme" Target="theme/theme1.xml"/></Relationships>`
	texts = `<sst><si><t>Tart</t><rPh><t>no</t></rPh></si><si><r><t xml:space="preserve">Rub in </t></r><r><rPr><b/><strike/><color rgb="FFC00000"/></rPr><t>now_x000A_chill</t></r></si></sst>`
	theme = `<a:theme xmlns:a="a"><a:themeElements><a:clrScheme><a:dk1><a:sysClr val="windowText" lastClr="000000"/></a:dk1><a:lt1><a:sysClr val="window" lastClr="FFFFFF"/></a:lt1><a:dk2><a:srgbClr val="44546A"/></a:dk2><a:lt2><a:srgbClr val="E7E6E6"/></a:lt2><a:accent1><a:srgbClr val="4472C4"/></a:accent1><a:accent2><a:srgbClr val="ED7D31"/></a:accent2></a:clrScheme></a:themeElements></a:theme>`
	look  = `<styleSheet><numFmts><numFmt numFmtId="164" formatCode="0&quot; mins&quot;"/></numFmts><fonts><font/><font><b/><color theme="5"/></font></fonts>
<fills><fill><patternFill patternType="none"/></fill><fill><patternFill patternType="solid"><fgColor theme="4" tint="0.5999938962981048"/></patternFill></fill><fill><patternFill patternType="solid"><fgColor indexed="13"/></patternFill></fill><fill><gradientFill><stop position="0"><color rgb="FF00B0F0"/></stop></gradientFill></fill><fill><patternFill patternType="solid"><fgColor theme="0" tint="-0.249977111117893"/></patternFill></fill></fills>
<cellXfs><xf numFmtId="0" fontId="0" fillId="0"/><xf numFmtId="20" fontId="1" fillId="1"/><xf numFmtId="164" fontId="0" fillId="2"/><xf numFmtId="0" fontId="0" fillId="3"/><xf numFmtId="0" fontId="0" fillId="4"/></cellXfs></styleSheet>`
)

func book(t testing.TB, inside string) []byte {
	t.Helper()
	return pack(t, "xl/workbook.xml", main, "xl/_rels/workbook.xml.rels", rels, "xl/worksheets/sheet1.xml", `<worksheet>`+inside+`</worksheet>`,
		"xl/styles.xml", look, "xl/sharedStrings.xml", texts, "xl/theme/theme1.xml", theme)
}

func read(t testing.TB, data []byte) sheet.Workbook {
	t.Helper()
	w, err := sheet.Read(data)
	if err != nil {
		t.Fatal(err)
	}
	return w
}

// cells are rows by their words, shades and clocks.
func cells(rows [][]table.Cell) (list []string) {
	for _, row := range rows {
		var line []string
		for _, c := range row {
			s := strings.ReplaceAll(c.Text(), "\n", "/")
			if c.Shade != "" {
				s += "#" + c.Shade
			}
			if c.Clock >= 0 {
				s += fmt.Sprint("@", c.Clock)
			}
			if c.Checked {
				s += "+"
			}
			if c.Down == 0 {
				s = "^"
			}
			line = append(line, s)
		}
		list = append(list, strings.Join(line, "|"))
	}
	return list
}

// A sheet of every type of cell (ECMA-376 part 1, 18.3.1.4 and 18.18.11). Words
// are invented. The tints are by the formula of 18.8.19: 60 % lighter than
// 4472C4 (programs that count in whole steps show B4C6E7, from memory), and 25 %
// darker than white.
func TestRead(t *testing.T) {
	w := read(t, book(t, `<sheetViews><sheetView><pane ySplit="1" state="frozen"/></sheetView></sheetViews><cols><col min="2" max="3" hidden="1"/></cols><sheetData>
<row r="1"><c r="A1" t="s"><v>0</v></c><c t="s"><v>1</v></c><c r="D1" t="inlineStr"><is><t>In</t></is></c></row>
<row r="2" hidden="1"><c r="A2" s="1"><v>0.378472222222222</v></c><c r="B2" s="2"><v>15</v></c><c r="C2" s="3" t="b"><v>1</v></c><c r="D2" t="str"><f>A1&amp;"x"</f><v>Tartx</v></c></row>
<row><c s="4"/><c t="e"><v>#REF!</v></c><c t="d"><v>2026-05-12T13:05:00</v></c><c t="s"><v>99</v></c></row>
<row r="200"><c r="A200"><v>1.5</v></c><c r="XFD200" s="2"/></row><row r="1048576"><c r="A1048576" s="2"/></row></sheetData>
<mergeCells><mergeCell ref="A1:A1"/><mergeCell ref="C2:XFD2"/><mergeCell ref="nonsense"/></mergeCells>`))
	if len(w.Tables) != 1 || w.Tables[0].Name != "Plan" || w.Tables[0].Header != 1 {
		t.Fatalf("%+v", w)
	}
	got := cells(w.Tables[0].Rows)
	want := []string{"Tart|Rub in now/chill||In", "9:05#B4C7E7@545|15 mins#FFFF00|TRUE#00B0F0+|^", "#BFBFBF|#REF!|2026-05-12T13:05:00@785|"}
	if diff := cmp.Diff(want, got[:3]); diff != "" {
		t.Error(diff)
	}
	if len(got) != 3+100+1 || got[103] != "1.5|||" {
		t.Errorf("%d rows, the last %q", len(got), got[len(got)-1])
	}
	rich := w.Tables[0].Rows[0][1].Lines
	if diff := cmp.Diff([]table.Line{{{Text: "Rub in "}, {Text: "now", Ink: "C00000", Bold: true, Struck: true}}, {{Text: "chill", Ink: "C00000", Bold: true, Struck: true}}}, rich); diff != "" {
		t.Error(diff)
	}
	if ink := w.Tables[0].Rows[1][0].Lines[0][0]; ink.Ink != "ED7D31" || !ink.Bold {
		t.Errorf("%+v", ink)
	}
	if len(w.Notes) != 2 || !strings.Contains(w.Notes[0], "hidden rows (2)") || !strings.Contains(w.Notes[1], "hidden columns (from 2 to 3)") {
		t.Errorf("%q", w.Notes)
	}
}

// Several sheets, one of them hidden, one printed with two rows on each page.
func TestSheets(t *testing.T) {
	one := `<worksheet><sheetData><row><c><v>1</v></c></row><row><c><v>2</v></c></row></sheetData></worksheet>`
	w := read(t, pack(t, "xl/workbook.xml", `<workbook><sheets><sheet name="B" id="b"/><sheet name="A" id="a"/><sheet name="Lists" state="hidden" id="c"/><sheet name="Gone" id="x"/></sheets><definedNames><definedName name="_xlnm.Print_Titles" localSheetId="1">A!$A:$A,A!$1:$2</definedName></definedNames></workbook>`,
		"xl/_rels/workbook.xml.rels", `<Relationships><Relationship Id="a" Type="x/worksheet" Target="a.xml"/><Relationship Id="b" Type="x/worksheet" Target="b.xml"/><Relationship Id="c" Type="x/worksheet" Target="a.xml"/><Relationship Id="x" Type="x/worksheet" TargetMode="External" Target="http://example.org/"/></Relationships>`,
		"xl/a.xml", one, "xl/b.xml", one))
	if len(w.Tables) != 2 || w.Tables[0].Name != "B" || w.Tables[0].Header != 0 || w.Tables[1].Header != 2 || len(w.Notes) != 1 {
		t.Errorf("%+v", w)
	}
}

func TestRefusals(t *testing.T) {
	far := book(t, `<sheetData>`+strings.Repeat(`<row><c r="XFD1"><v>1</v></c></row>`, 20)+`</sheetData>`)
	for _, c := range []struct {
		name string
		data []byte
		want error
	}{
		{"no zip", []byte("Dear all"), packed.ErrNotZip},
		{"a Word document", pack(t, "word/document.xml", "<document/>"), sheet.ErrNotSheet},
		{"bomb", pack(t, "xl/workbook.xml", main, "xl/worksheets/sheet1.xml", strings.Repeat(" ", 4<<20)), packed.ErrTooLarge},
		{"plane", far, table.ErrTooLarge},
		{"entities", pack(t, "xl/workbook.xml", `<!DOCTYPE w [<!ENTITY a "aa">]>`+main), packed.ErrDamaged},
		{"cut off", book(t, `<sheetData>`), packed.ErrDamaged},
	} {
		if w, err := sheet.Read(c.data); !errors.Is(err, c.want) && c.name != "cut off" || len(w.Tables) > 0 {
			t.Errorf("%s: %v", c.name, err)
		}
	}
}

// plan is an invented table in which words look like formulas.
func plan() table.Table {
	cell := func(text string) table.Cell {
		c := table.Cell{Span: 1, Down: 1, Clock: -1}
		c.Fill(table.Lines(table.Line{{Text: text}}))
		return c
	}
	t := table.Table{Name: "Class: 8b/2 [spring]", Header: 1, Rows: [][]table.Cell{
		{cell("Time"), cell("Pupil"), cell("Minutes"), cell("Note")},
		{cell("09:05"), cell("=1+1"), cell("15"), cell("@SUM(A1)\nsecond line")},
		{cell(""), cell("-2+3"), cell("007"), cell("+44 \x00\x01end")},
	}}
	t.Rows[1][0].Clock = 545
	t.Rows[1][1].Shade = "FFE699"
	t.Rows[2][0].Span, t.Rows[2][1] = 2, table.Cell{Span: 1, Clock: -1}
	t.Rows[1][3].Lines[0] = table.Line{{Text: "@SUM", Ink: "C00000", Bold: true}, {Text: "(A1)"}}
	return t
}

// What is written, as the library that others use reads it, and as we do.
func TestWrite(t *testing.T) {
	data, err := sheet.Write([]sheet.Page{{Table: plan(), Widths: []float64{8, 20}}, {Table: table.Table{Name: "class: 8b/2 (spring)"}}, {Table: plan()}})
	if err != nil {
		t.Fatal(err)
	}
	f, err := excelize.OpenReader(bytes.NewReader(data))
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	if diff := cmp.Diff([]string{"Class  8b 2  spring", "class  8b 2 (spring)", "Class  8b 2  spring 2"}, f.GetSheetList()); diff != "" {
		t.Error(diff)
	}
	name := "Class  8b 2  spring"
	for at, want := range map[string]string{"A1": "Time", "A2": "09:05", "B2": "=1+1", "C2": "15", "D2": "@SUM(A1)\nsecond line", "C3": "007", "D3": "+44 end"} {
		got, err := f.GetCellValue(name, at)
		formula, err2 := f.GetCellFormula(name, at)
		if got != want || formula != "" || err != nil || err2 != nil {
			t.Errorf("%s: %q and formula %q, want %q", at, got, formula, want)
		}
	}
	if kind, err := f.GetCellType(name, "C2"); err != nil || kind != excelize.CellTypeUnset && kind != excelize.CellTypeNumber {
		t.Errorf("a number is of type %d", kind)
	}
	if panes, err := f.GetPanes(name); err != nil || !panes.Freeze || panes.YSplit != 1 {
		t.Errorf("%+v %v", panes, err)
	}
	if width, err := f.GetColWidth(name, "B"); err != nil || width != 20 {
		t.Error(width, err)
	}
	again, err := sheet.Write([]sheet.Page{{Table: plan(), Widths: []float64{8, 20}}, {Table: table.Table{Name: "class: 8b/2 (spring)"}}, {Table: plan()}})
	if err != nil || !bytes.Equal(data, again) {
		t.Error("not the same bytes at every call", err)
	}
	back := read(t, data)
	if got := cells(back.Tables[0].Rows); len(back.Tables) != 2 || back.Tables[0].Header != 1 || got[1] != "09:05@545|=1+1#FFE699|15|@SUM(A1)/second line" || got[2] != "|^|007|+44 end" {
		t.Errorf("%q", got)
	}
}

func FuzzSheet(f *testing.F) {
	f.Add(`<sheetData><row r="2"><c r="B2" s="1" t="s"><v>1</v></c><c><v>0.5</v></c></row></sheetData><mergeCells><mergeCell ref="A1:C9"/></mergeCells>`, look)
	f.Add(`<cols><col min="1" max="9" hidden="1"/></cols><sheetData><row><c t="d"><v>T09</v></c></row></sheetData>`, "<styleSheet/>")
	f.Fuzz(func(t *testing.T, inside, look string) {
		w, err := sheet.Read(pack(t, "xl/workbook.xml", main, "xl/_rels/workbook.xml.rels", rels, "xl/worksheets/sheet1.xml", `<worksheet>`+inside+`</worksheet>`, "xl/styles.xml", look, "xl/sharedStrings.xml", texts))
		if err != nil && len(w.Tables) > 0 {
			t.Fatal(err)
		}
		for _, in := range w.Tables {
			for _, row := range in.Rows {
				if len(row) != len(in.Rows[0]) {
					t.Fatalf("%+v", in)
				}
			}
		}
	})
}
