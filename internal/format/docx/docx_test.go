package docx_test

import (
	"archive/zip"
	"bytes"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"

	"plait.example/internal/format/docx"
)

const (
	head = `<?xml version="1.0" encoding="UTF-8" standalone="yes"?><w:document xmlns:w="http://schemas.openxmlformats.org/wordprocessingml/2006/main" xmlns:mc="http://schemas.openxmlformats.org/markup-compatibility/2006" xmlns:wps="http://schemas.microsoft.com/office/word/2010/wordprocessingShape"><w:body>`
	foot = `<w:sectPr><w:headerReference w:type="default"/></w:sectPr></w:body></w:document>`
	rels = `<Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships"><Relationship Id="rId1" Type="http://schemas.openxmlformats.org/officeDocument/2006/relationships/officeDocument" Target="word/document.xml"/></Relationships>`
	look = `<w:styles xmlns:w="http://schemas.openxmlformats.org/wordprocessingml/2006/main">
<w:style w:type="paragraph" w:default="1" w:styleId="Normal"><w:name w:val="Normal"/></w:style>
<w:style w:type="paragraph" w:styleId="Ttel"><w:name w:val="Title"/></w:style>
<w:style w:type="paragraph" w:styleId="berschrift2"><w:name w:val="heading 2"/><w:basedOn w:val="Normal"/><w:pPr><w:outlineLvl w:val="1"/></w:pPr></w:style>
<w:style w:type="paragraph" w:styleId="Part"><w:name w:val="Part of a recipe"/><w:basedOn w:val="berschrift2"/></w:style>
<w:style w:type="paragraph" w:styleId="Num"><w:name w:val="List Number"/><w:pPr><w:numPr><w:numId w:val="1"/></w:numPr></w:pPr></w:style>
<w:style w:type="paragraph" w:styleId="Ring"><w:name w:val="Ring"/><w:basedOn w:val="Ring"/></w:style></w:styles>`
	counts = `<w:numbering xmlns:w="http://schemas.openxmlformats.org/wordprocessingml/2006/main">
<w:abstractNum w:abstractNumId="7"><w:lvl w:ilvl="0"><w:start w:val="1"/><w:numFmt w:val="decimal"/><w:lvlText w:val="%1."/></w:lvl>
<w:lvl w:ilvl="1"><w:start w:val="1"/><w:numFmt w:val="lowerLetter"/><w:lvlText w:val="%2)"/></w:lvl>
<w:lvl w:ilvl="2"><w:start w:val="1"/><w:numFmt w:val="decimal"/><w:isLgl/><w:lvlText w:val="%1.%2.%3"/></w:lvl></w:abstractNum>
<w:abstractNum w:abstractNumId="8"><w:lvl w:ilvl="0"><w:numFmt w:val="bullet"/><w:lvlText w:val="&#xF0B7;"/></w:lvl></w:abstractNum>
<w:num w:numId="1"><w:abstractNumId w:val="7"/></w:num><w:num w:numId="2"><w:abstractNumId w:val="8"/></w:num>
<w:num w:numId="3"><w:abstractNumId w:val="7"/><w:lvlOverride w:ilvl="0"><w:startOverride w:val="1"/></w:lvlOverride></w:num></w:numbering>`
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

// document packs a body as a word processor does. All texts are invented; the
// elements are those of ECMA-376 part 1, section 17.
func document(t testing.TB, body string) []byte {
	t.Helper()
	return pack(t, "[Content_Types].xml", "<Types/>", "_rels/.rels", rels, "word/document.xml", head+body+foot,
		"word/styles.xml", look, "word/numbering.xml", counts, "word/header1.xml", "<hdr>class 8b</hdr>", "word/vbaProject.bin", "\xD0\xCF\x11\xE0")
}

func read(t testing.TB, body string) docx.Document {
	t.Helper()
	d, err := docx.Read(document(t, body))
	if err != nil {
		t.Fatal(err)
	}
	return d
}

func p(text string) string {
	return `<w:p><w:r><w:t xml:space="preserve">` + text + `</w:t></w:r></w:p>`
}

func styled(style, text string) string {
	return `<w:p><w:pPr><w:pStyle w:val="` + style + `"/></w:pPr><w:r><w:t>` + text + `</w:t></w:r></w:p>`
}

func item(list, level, text string) string {
	return `<w:p><w:pPr><w:numPr><w:ilvl w:val="` + level + `"/><w:numId w:val="` + list + `"/></w:numPr></w:pPr><w:r><w:t>` + text + `</w:t></w:r></w:p>`
}

const scones = `<w:tbl><w:tr><w:tc><w:p><w:r><w:t>200 g</w:t></w:r></w:p></w:tc><w:tc><w:p><w:r><w:t>flour</w:t></w:r></w:p></w:tc></w:tr>
<w:tr><w:tc><w:p><w:r><w:t>50 g</w:t></w:r></w:p></w:tc><w:tc><w:p><w:r><w:t>butter</w:t></w:r></w:p></w:tc></w:tr></w:tbl>`

func whole() string {
	return styled("Ttel", "Cheese scones") + p("Makes 8") + styled("berschrift2", "Ingredients") + scones + item("2", "0", "1 egg") +
		styled("Part", "Method") + styled("Num", "Rub in.") + item("1", "1", "By hand") + item("1", "1", "or fork") + item("1", "2", "Cold") + styled("Num", "Bake.") +
		styled("Ttel", "Jam") + item("3", "0", "Boil.") + item("3", "0", "Pot.")
}

func TestText(t *testing.T) {
	want := "# Cheese scones\nMakes 8\n\n## Ingredients\n\n200 g\tflour\n50 g\tbutter\n\n- 1 egg\n\n## Method\n\n" +
		"1. Rub in.\n  a) By hand\n  b) or fork\n    1.2.1 Cold\n2. Bake.\n\n# Jam\n\n1. Boil.\n2. Pot."
	if d := cmp.Diff(want, read(t, whole()).Text()); d != "" {
		t.Error(d)
	}
}

func TestWhatIsInTheText(t *testing.T) {
	for _, c := range []struct{ name, body, want string }{
		{"insertion", `<w:p><w:ins><w:r><w:t>Add </w:t></w:r></w:ins><w:r><w:t>salt</w:t></w:r></w:p>`, "Add salt"},
		{"deletion", `<w:p><w:r><w:t>Add</w:t></w:r><w:del><w:r><w:delText> no</w:delText></w:r></w:del><w:r><w:t> salt</w:t></w:r></w:p>`, "Add salt"},
		{"deleted paragraph mark", `<w:p><w:pPr><w:rPr><w:del/></w:rPr></w:pPr><w:r><w:t>Add </w:t></w:r></w:p>` + p("salt") + p("Stir"), "Add salt\nStir"},
		{"moved", `<w:p><w:moveFrom><w:r><w:t>Stir. </w:t></w:r></w:moveFrom><w:r><w:t>Boil.</w:t></w:r><w:moveTo><w:r><w:t> Stir.</w:t></w:r></w:moveTo></w:p>`, "Boil. Stir."},
		{"tab and breaks", `<w:p><w:r><w:t>a</w:t><w:tab/><w:t>b</w:t><w:br/><w:t>c</w:t><w:noBreakHyphen/><w:t>d</w:t><w:softHyphen/></w:r></w:p>`, "a\tb\nc-d"},
		{"symbol", `<w:p><w:r><w:t>180</w:t><w:sym w:font="Symbol" w:char="F0B0"/><w:t>C</w:t></w:r></w:p>`, "180°C"},
		{"field", `<w:p><w:r><w:fldChar/></w:r><w:r><w:instrText>PAGE</w:instrText></w:r><w:r><w:t>Stir</w:t></w:r></w:p>`, "Stir"},
		{"link and control in a line", `<w:p><w:hyperlink><w:r><w:t>Leek </w:t></w:r></w:hyperlink><w:sdt><w:sdtPr/><w:sdtContent><w:r><w:t>tart</w:t></w:r></w:sdtContent></w:sdt></w:p>`, "Leek tart"},
		{"control around paragraphs", `<w:sdt><w:sdtPr><w:alias/></w:sdtPr><w:sdtContent>` + p("Boil.") + p("Stir.") + `</w:sdtContent></w:sdt>`, "Boil.\nStir."},
		{"row in a control", `<w:tbl><w:sdt><w:sdtContent><w:tr><w:tc>` + p("1") + `</w:tc><w:sdt><w:sdtContent><w:tc>` + p("egg") + `</w:tc></w:sdtContent></w:sdt></w:tr></w:sdtContent></w:sdt></w:tbl>`, "1\tegg"},
		{"deleted row", `<w:tbl><w:tr><w:trPr><w:del/></w:trPr><w:tc>` + p("gone") + `</w:tc></w:tr><w:tr><w:tc>` + p("egg") + `</w:tc></w:tr></w:tbl>`, "egg"},
		{"text box once", `<w:p><w:r><w:t>Stir.</w:t><mc:AlternateContent><mc:Choice><wps:txbx><w:txbxContent>` + p("Tip: slowly") + `</w:txbxContent></wps:txbx></mc:Choice><mc:Fallback><w:txbxContent>` + p("Tip: slowly") + `</w:txbxContent></mc:Fallback></mc:AlternateContent></w:r></w:p>` + p("Boil."), "Stir.\nTip: slowly\nBoil."},
		{"hidden", `<w:p><w:r><w:rPr><w:vanish/></w:rPr><w:t>no</w:t></w:r><w:r><w:rPr><w:vanish w:val="0"/></w:rPr><w:t>yes</w:t></w:r></w:p>`, "yes"},
		{"equation", `<w:p><m:oMath xmlns:m="m"><m:f><m:num><m:r><m:t>1</m:t></m:r></m:num><m:den><m:r><m:t>2</m:t></m:r></m:den></m:f></m:oMath><w:r><w:t> tsp</w:t></w:r></w:p>`, "1/2 tsp"},
		{"nested table", `<w:tbl><w:tr><w:tc>` + scones + p("") + `</w:tc><w:tc>` + item("1", "0", "Rub in.") + `</w:tc></w:tr></w:tbl>`, "200 g\tflour\n50 g\tbutter\n\n1. Rub in."},
		{"cell of lines", `<w:tbl><w:tr><w:tc>` + p("10:00") + `</w:tc><w:tc>` + p("Rub in") + p("by hand") + `</w:tc></w:tr></w:tbl>`, "10:00\tRub in by hand"},
		{"style ring", styled("Ring", "Stir"), "Stir"},
		{"unknown list", item("99", "0", "Stir"), "- Stir"},
	} {
		t.Run(c.name, func(t *testing.T) {
			if d := cmp.Diff(c.want, read(t, c.body).Text()); d != "" {
				t.Error(d)
			}
		})
	}
}

// Cells merged across and down, with the colours that time plans are marked in.
func TestTable(t *testing.T) {
	cell := func(format, text string) string { return `<w:tc><w:tcPr>` + format + `</w:tcPr>` + p(text) + `</w:tc>` }
	body := `<w:tbl><w:tr><w:trPr><w:tblHeader/></w:trPr>` + cell(`<w:gridSpan w:val="2"/><w:shd w:fill="ffcc00"/>`, "Plan") + cell(``, "Check") + `</w:tr><w:tr>` +
		cell(`<w:vMerge w:val="restart"/>`, "10:00") + cell(``, "Rub in") + cell(``, "fine") + `</w:tr><w:tr>` + cell(`<w:vMerge/>`, "") + cell(`<w:shd w:fill="auto"/>`, "Chill") + cell(``, "") + `</w:tr></w:tbl>`
	d := read(t, body)
	text := func(s string) []docx.Block {
		one := &docx.Paragraph{}
		if s != "" {
			one.Runs = []docx.Run{{Text: s}}
			one.Style = "Normal"
		}
		return []docx.Block{{Paragraph: one}}
	}
	want := docx.Table{Rows: []docx.Row{
		{Header: true, Cells: []docx.Cell{{Span: 2, Down: 1, Shade: "FFCC00", Blocks: text("Plan")}, {Span: 1, Down: 1, Blocks: text("Check")}}},
		{Cells: []docx.Cell{{Span: 1, Down: 2, Blocks: text("10:00")}, {Span: 1, Down: 1, Blocks: text("Rub in")}, {Span: 1, Down: 1, Blocks: text("fine")}}},
		{Cells: []docx.Cell{{Span: 1, Down: 0, Blocks: text("")}, {Span: 1, Down: 1, Blocks: text("Chill")}, {Span: 1, Down: 1, Blocks: text("")}}},
	}}
	if len(d.Blocks) != 1 || d.Blocks[0].Table == nil {
		t.Fatalf("%+v", d.Blocks)
	}
	if diff := cmp.Diff(want, *d.Blocks[0].Table, cmpopts.IgnoreUnexported(docx.Table{}, docx.Row{}, docx.Cell{}, docx.Paragraph{}), cmpopts.IgnoreFields(docx.Paragraph{}, "Style")); diff != "" {
		t.Error(diff)
	}
}

func TestRuns(t *testing.T) {
	d := read(t, `<w:p><w:r><w:rPr><w:b/><w:color w:val="c00000"/></w:rPr><w:t>Hot</w:t></w:r><w:r><w:rPr><w:b/><w:color w:val="C00000"/></w:rPr><w:t> fat</w:t></w:r>`+
		`<w:r><w:rPr><w:b w:val="0"/><w:i/><w:strike/><w:highlight w:val="yellow"/><w:color w:val="auto"/></w:rPr><w:t>now</w:t></w:r></w:p>`)
	want := []docx.Run{{Text: "Hot fat", Colour: "C00000", Bold: true}, {Text: "now", Shade: "yellow", Italic: true, Struck: true}}
	if diff := cmp.Diff(want, d.Blocks[0].Paragraph.Runs); diff != "" {
		t.Error(diff)
	}
}

func BenchmarkRead(b *testing.B) {
	data := document(b, strings.Repeat(whole(), 20))
	b.SetBytes(int64(len(data)))
	for b.Loop() {
		if d, err := docx.Read(data); err != nil || !strings.HasPrefix(d.Text(), "# Cheese scones") {
			b.Fatal(err)
		}
	}
}
