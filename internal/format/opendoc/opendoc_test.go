package opendoc_test

import (
	"archive/zip"
	"bytes"
	"errors"
	"fmt"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"plait.example/internal/format/opendoc"
	"plait.example/internal/format/packed"
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

// content is a document's main part; local names are what counts.
func content(styles, body string) string {
	return `<document-content><automatic-styles>` + styles + `</automatic-styles><body>` + body + `</body></document-content>`
}

func read(t testing.TB, styles, body string) opendoc.Document {
	t.Helper()
	d, err := opendoc.Read(pack(t, "content.xml", content(styles, body), "styles.xml", common))
	if err != nil {
		t.Fatal(err)
	}
	return d
}

const common = `<document-styles><styles><style name="Standard" family="paragraph"/><style name="Warm" family="paragraph" parent-style-name="Standard"><text-properties color="#c00000"/></style>
<style name="Ring" family="text" parent-style-name="Ring"/></styles></document-styles>`

// drawn is blocks as text, a line each, cells between bars.
func drawn(blocks []table.Block) string {
	var b strings.Builder
	for _, block := range blocks {
		if block.Table == nil {
			fmt.Fprintf(&b, "%s%s%s\n", strings.Repeat("#", block.Heading), block.Item, block.Line.Text())
			continue
		}
		fmt.Fprintf(&b, "T%d %s\n", block.Table.Header, block.Table.Name)
		for _, row := range block.Table.Rows {
			cells := make([]string, len(row))
			for i, c := range row {
				cells[i] = strings.ReplaceAll(c.Text(), "\n", "/")
				if c.Shade != "" {
					cells[i] += "#" + c.Shade
				}
				if c.Clock >= 0 {
					cells[i] += fmt.Sprint("@", c.Clock)
				}
				if c.Checked {
					cells[i] += "+"
				}
				if c.Down == 0 {
					cells[i] = "^"
				}
			}
			b.WriteString(strings.Join(cells, "|") + "\n")
		}
	}
	return b.String()
}

const tint = `<style name="Y" family="table-cell"><table-cell-properties background-color="#ffe699"/></style><style name="Y2" family="table-cell" parent-style-name="Y"/>
<style name="N" family="table-cell" parent-style-name="Y"><table-cell-properties background-color="transparent"/></style><style name="R" family="table-row"><table-row-properties background-color="#dddddd"/></style>
<list-style name="L"><list-level-style-number level="1" num-format="1" num-suffix="." start-value="3"/><list-level-style-number level="2" num-format="a" num-suffix=")"/></list-style>`

// Elements of ISO/IEC 26300-1 (OpenDocument 1.2, part 1), sections 5, 6 and 9.
// Words are invented.
func TestTexts(t *testing.T) {
	cell := func(format, text string) string {
		return `<table-cell ` + format + `><p>` + text + `</p></table-cell>`
	}
	for _, c := range []struct{ name, body, want string }{
		{"white space", `<p>a
  b<s c="2"/>c<tab/>d<line-break/>e<soft-page-break/>f</p>`, "a b  c\td\nef\n"},
		{"what is not text", `<tracked-changes><changed-region><deletion><p>gone</p></deletion></changed-region></tracked-changes><p>a<note><note-body><p>foot</p></note-body></note><annotation><p>said</p></annotation>b<ruby><ruby-base>c</ruby-base><ruby-text>x</ruby-text></ruby></p>`, "abc\n"},
		{
			"lists", `<list style-name="L"><list-item><p>a</p><list><list-item><p>b</p></list-item></list></list-item><list-item><p>c</p><p>more</p></list-item></list><p>x</p><list style-name="L" continue-numbering="true"><list-item><p>d</p></list-item></list><list><list-item><p>e</p></list-item></list>`,
			"3.a\na)b\n4.c\nmore\nx\n5.d\n-e\n",
		},
		{"headings and sections", `<section><h outline-level="3">Plan</h><h>One</h></section>`, "###Plan\n#One\n"},
		{"text box", `<p>a<frame><text-box><p>b</p></text-box></frame></p>`, "a\nb\n"},
		{"spans", `<table name="T1"><table-header-rows><table-row style-name="R">` + cell(`number-columns-spanned="2"`, "a") + `<covered-table-cell/>` + cell(`style-name="Y2"`, "b") + `</table-row></table-header-rows><table-row>` +
			cell(`number-rows-spanned="2" style-name="N"`, "c") + cell(`number-columns-repeated="2"`, "d") + `</table-row><table-row><covered-table-cell/>` + cell(``, "e") + `</table-row></table>`, "T1 \na#DDDDDD|^|b#FFE699\nc|d|d\n^|e|\n"},
		{"a frame", `<table><table-row><table-cell><p>Plan</p><table><table-row>` + cell(``, "9:00") + cell(``, "a") + `</table-row><table-row>` + cell(``, "9:10") + cell(``, "b") + `</table-row></table></table-cell></table-row></table>`, "Plan\nT0 \n9:00|a\n9:10|b\n"},
		{"a list in a cell", `<table><table-row>` + cell(``, "9:00") + `<table-cell><list style-name="L"><list-item><p>a</p></list-item></list><list><list-item><p>b</p></list-item></list></table-cell></table-row></table>`, "T0 \n9:00|3. a/b\n"},
		{"a form's boxes", `<forms><form><checkbox id="k1" current-state="checked"/><checkbox id="k2" current-state="unchecked"/></form></forms><table><table-row>` + cell(``, `<control control="k1"/>`) + cell(``, `<control control="k2"/>no`) + `</table-row></table>`, "T0 \n+|no\n"},
	} {
		t.Run(c.name, func(t *testing.T) {
			if diff := cmp.Diff(c.want, drawn(read(t, tint, "<text>"+c.body+"</text>").Blocks)); diff != "" {
				t.Error(diff)
			}
		})
	}
}

// Inks by the run's style, its paragraph's, and their parents.
func TestInks(t *testing.T) {
	d := read(t, `<style name="P" family="paragraph" parent-style-name="Warm"/><style name="S" family="text"><text-properties background-color="#ffff00" font-weight="bold" text-line-through-type="single"/></style><style name="U" family="text" parent-style-name="S"><text-properties color="#0070c0" background-color="transparent" text-line-through-style="none"/></style>`,
		`<text><p style-name="P">a<span style-name="S">b<span style-name="Ring">c</span></span><span style-name="U">d</span></p></text>`)
	want := table.Line{{Text: "a", Ink: "C00000"}, {Text: "bc", Ink: "C00000", Shade: "FFFF00", Bold: true, Struck: true}, {Text: "d", Ink: "0070C0", Bold: true}}
	if diff := cmp.Diff(want, d.Blocks[0].Line); diff != "" {
		t.Error(diff)
	}
}

func TestSheets(t *testing.T) {
	d := read(t, tint, `<spreadsheet><table name="Plan"><table-column default-cell-style-name="Y"/><table-column number-columns-repeated="16383" visibility="visible"/>
<table-row><table-cell value-type="time" time-value="PT09H05M00S"><p>9:05</p></table-cell><table-cell value-type="date" date-value="2026-05-12T13:20:00"><p>x</p></table-cell><table-cell number-columns-repeated="16382"/></table-row>
<table-row visibility="filter"><table-cell value-type="time" time-value="PT25H00M00S"><p>25:00</p></table-cell><table-cell number-columns-repeated="16383" number-columns-spanned="16000"/></table-row>
<table-row number-rows-repeated="5000"><table-cell number-columns-repeated="16384"/></table-row>
<table-row number-rows-repeated="2"><table-cell/><table-cell value-type="boolean" boolean-value="true"><p>TRUE</p></table-cell></table-row>
<table-row number-rows-repeated="1040000"><table-cell style-name="Y" number-columns-repeated="16384"/></table-row></table><table name="Empty"/></spreadsheet>`)
	got := strings.Split(drawn(d.Blocks), "\n")
	if !d.Sheets || len(d.Blocks) != 1 || len(d.Notes) != 1 || len(got) != 1+2+100+2+1 {
		t.Fatalf("%d lines, notes %q", len(got), d.Notes)
	}
	if diff := cmp.Diff([]string{"T0 Plan", "9:05#FFE699@545|x@800", "25:00#FFE699|"}, got[:3]); diff != "" {
		t.Error(diff)
	}
	if got[103] != "#FFE699|TRUE+" || got[104] != got[103] {
		t.Errorf("%q", got[103:])
	}
}

func TestRefusals(t *testing.T) {
	text := func(body string) []byte { return pack(t, "content.xml", content("", "<text>"+body+"</text>")) }
	for _, c := range []struct {
		name string
		data []byte
		want error
	}{
		{"no zip", []byte("Dear all"), packed.ErrNotZip},
		{"a drawing", pack(t, "content.xml", content("", "<drawing/>")), opendoc.ErrNotOpen},
		{"no content", pack(t, "mimetype", "x"), opendoc.ErrNotOpen},
		{"password", pack(t, "META-INF/manifest.xml", `<manifest><file-entry><encryption-data/></file-entry></manifest>`, "content.xml", "\x01\x02"), opendoc.ErrLocked},
		{"bomb", text(strings.Repeat(" ", 4<<20)), packed.ErrTooLarge},
		{"entities", pack(t, "content.xml", `<!DOCTYPE d [<!ENTITY a "aaaaaaaa"><!ENTITY b "&a;&a;">]>`+content("", "<text><p>&b;</p></text>")), packed.ErrDamaged},
		{"deep", text(strings.Repeat("<section>", 400) + strings.Repeat("</section>", 400)), packed.ErrTooLarge},
		{"rows without end", text(`<table><table-row number-rows-repeated="1000000"><table-cell number-columns-repeated="1000000"><p>a</p></table-cell></table-row></table>`), table.ErrTooLarge},
		{"a span without end", text(`<table><table-row><table-cell number-columns-spanned="1000000" number-rows-spanned="1000000"><p>a</p></table-cell></table-row></table>`), table.ErrTooLarge},
		{"flat and cut off", []byte(`<?xml version="1.0"?><office:document xmlns:office="o"><body>`), packed.ErrDamaged},
	} {
		t.Run(c.name, func(t *testing.T) {
			d, err := opendoc.Read(c.data)
			if !errors.Is(err, c.want) || len(d.Blocks) > 0 {
				t.Errorf("%v, want %v", err, c.want)
			}
		})
	}
}

func FuzzRead(f *testing.F) {
	f.Add(tint, `<text><p>a<s c="9"/><span style-name="S">b</span></p><list style-name="L"><list-item start-value="4"><p>c</p></list-item></list><table><table-row number-rows-repeated="3"><table-cell number-columns-spanned="2" number-rows-spanned="2"><p>d</p></table-cell><covered-table-cell/></table-row></table></text>`)
	f.Add(tint, `<spreadsheet><table name="T"><table-column default-cell-style-name="Y"/><table-row visibility="collapse"><table-cell value-type="time" time-value="PT9H5M"><p>9:05</p></table-cell></table-row></table></spreadsheet>`)
	f.Fuzz(func(t *testing.T, styles, body string) {
		d, err := opendoc.Read(pack(t, "content.xml", content(styles, body)))
		if err != nil && len(d.Blocks) > 0 {
			t.Fatal(err)
		}
		for _, b := range d.Blocks {
			if b.Table == nil {
				continue
			}
			for i, row := range b.Table.Rows {
				if len(row) != len(b.Table.Rows[0]) {
					t.Fatalf("%+v", b.Table)
				}
				for at, c := range row {
					if c.Span < 1 || at+c.Span > len(row) || i+c.Down > len(b.Table.Rows) || c.Clock >= 1440 {
						t.Fatalf("%+v", c)
					}
				}
			}
		}
	})
}
