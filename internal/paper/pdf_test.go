package paper

import (
	"bytes"
	"compress/zlib"
	"fmt"
	"io"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"
	"unicode/utf16"

	"plait.example/internal/timeplan"
	"plait.example/internal/timeplan/timeplantest"
)

// sheets is every way to lay a plan out, by file name.
var sheets = map[string]Sheet{
	"upright":       {},
	"across":        {Landscape: true, Name: "Sam O."},
	"upright-large": {LargeType: true},
	"across-large":  {Landscape: true, LargeType: true},
}

// reader reads a PDF by its objects, written apart from what writes them
// (ISO 32000-1, 7.3 and 9.4). It reads what such files hold and no more.
type reader struct{ objects map[int]string }

var objectPattern = regexp.MustCompile(`(?ms)^(\d+) 0 obj\n(.*?)\nendobj\n`)

func readPDF(t *testing.T, b []byte) reader {
	t.Helper()
	r := reader{map[int]string{}}
	for _, m := range objectPattern.FindAllSubmatch(b, -1) {
		n, _ := strconv.Atoi(string(m[1]))
		r.objects[n] = string(m[2])
	}
	if len(r.objects) == 0 {
		t.Fatal("no objects")
	}
	return r
}

// number is the object that a key refers to.
func (r reader) number(object, key string) int {
	m := regexp.MustCompile(`/` + key + ` (\d+) 0 R`).FindStringSubmatch(object)
	if m == nil {
		return 0
	}
	n, _ := strconv.Atoi(m[1])
	return n
}

// pages is the pages' objects in order, by the tree of pages.
func (r reader) pages(t *testing.T) []string {
	t.Helper()
	kids := regexp.MustCompile(`/Kids \[([^\]]*)\]`).FindStringSubmatch(r.objects[1])
	if kids == nil {
		t.Fatalf("no tree of pages in %q", r.objects[1])
	}
	var all []string
	for _, m := range regexp.MustCompile(`(\d+) 0 R`).FindAllStringSubmatch(kids[1], -1) {
		n, _ := strconv.Atoi(m[1])
		all = append(all, r.objects[n])
	}
	return all
}

// content is a page's stream, unpacked.
func (r reader) content(t *testing.T, page string) string {
	t.Helper()
	_, packed, _ := strings.Cut(r.objects[r.number(page, "Contents")], "stream\n")
	z, err := zlib.NewReader(strings.NewReader(strings.TrimSuffix(packed, "\nendstream")))
	if err != nil {
		t.Fatal(err)
	}
	b, err := io.ReadAll(z)
	if err != nil {
		t.Fatal(err)
	}
	return string(b)
}

// shown is one text shown on a page, with the kind of element that it belongs to.
type shown struct {
	kind, text string
	y          float64
}

var showPattern = regexp.MustCompile(`(?s)/(\w+) (?:<</MCID \d+>> BDC|BMC)|BT [\d.]+ ([\d.]+) Td \(((?:\\.|[^\\)])*)\) Tj ET|\bEMC\b`)

func (r reader) texts(t *testing.T, page string) []shown {
	var all []shown
	kind := ""
	for _, m := range showPattern.FindAllStringSubmatch(r.content(t, page), -1) {
		switch {
		case m[1] != "":
			kind = m[1]
		case m[0] == "EMC":
			kind = ""
		default:
			y, _ := strconv.ParseFloat(m[2], 64)
			all = append(all, shown{kind, fromUTF16(m[3]), y})
		}
	}
	return all
}

// fromUTF16 reads a string whose codes are the characters' own.
func fromUTF16(s string) string {
	s = regexp.MustCompile(`(?s)\\(.)`).ReplaceAllStringFunc(s, func(m string) string {
		if m[1] == 'r' {
			return "\r"
		}
		return m[1:]
	})
	var units []uint16
	for i := 0; i+1 < len(s); i += 2 {
		units = append(units, uint16(s[i])<<8|uint16(s[i+1]))
	}
	return string(utf16.Decode(units))
}

// TestPDFText holds what the upright sheet says, page by page, kind by kind;
// the plait is the picture's business.
func TestPDFText(t *testing.T) {
	for _, name := range []string{"sample", "toomuch", "pair", "noplan"} {
		b, err := PDF(samples()[name], Sheet{})
		if err != nil {
			t.Fatal(err)
		}
		r := readPDF(t, b)
		var out strings.Builder
		for i, page := range r.pages(t) {
			fmt.Fprintf(&out, "page %d\n", i+1)
			for _, s := range r.texts(t, page) {
				if s.kind != "Figure" {
					fmt.Fprintf(&out, "%s\t%s\n", s.kind, s.text)
				}
			}
		}
		golden(t, name+".pdf.txt", []byte(out.String()))
	}
}

// TestPDFHeadOnEveryPage: every page with a row of the table has the table's heading.
func TestPDFHeadOnEveryPage(t *testing.T) {
	for name, s := range sheets {
		d := set(timeplantest.Sample(), s)
		b, err := d.output()
		if err != nil {
			t.Fatal(err)
		}
		r := readPDF(t, b)
		with := map[int]bool{}
		for _, box := range d.boxes {
			with[box.page] = true
		}
		if len(with) < 3 {
			t.Errorf("%s: the table fills %d pages", name, len(with))
		}
		for i, page := range r.pages(t) {
			heads := 0
			for _, text := range r.texts(t, page) {
				if slices.ContainsFunc(layoutOf(s).columns, func(c column) bool { return c.head == text.text }) && (text.kind == "TH" || text.kind == "Artifact") {
					heads++
				}
			}
			want := 0
			if with[i+1] {
				want = len(layoutOf(s).columns)
			}
			if heads != want {
				t.Errorf("%s, page %d: %d heads, want %d", name, i+1, heads, want)
			}
		}
	}
}

// TestPDFRowsWhole: every row is on one page, inside the margins, below the one before.
func TestPDFRowsWhole(t *testing.T) {
	for name, s := range sheets {
		for plan, p := range samples() {
			d := set(p, s)
			if len(d.boxes) != len(p.Rows) {
				t.Errorf("%s, %s: %d boxes for %d rows", name, plan, len(d.boxes), len(p.Rows))
			}
			page, bottom := 0, 0.0
			for i, b := range d.boxes {
				if b.page != page {
					page, bottom = b.page, margin
				}
				if b.parts != 1 || b.top < bottom-0.01 || b.bottom > d.height-margin || b.bottom <= b.top {
					t.Errorf("%s, %s: row %d stands at %+v", name, plan, i, b)
				}
				bottom = b.bottom
			}
		}
	}
}

// TestPDFTallRow: a row taller than a page goes on over the next pages, and
// none of its words is lost.
func TestPDFTallRow(t *testing.T) {
	for name, s := range sheets {
		p := timeplantest.TooMuch()
		words := make([]string, 3000)
		for i := range words {
			words[i] = "w" + strconv.Itoa(i)
		}
		p.Rows[3].Text = strings.Join(words, " ")
		d := set(p, s)
		b, err := d.output()
		if err != nil {
			t.Fatal(err)
		}
		var said strings.Builder
		r := readPDF(t, b)
		for _, page := range r.pages(t) {
			for _, text := range r.texts(t, page) {
				if text.kind == "TD" {
					said.WriteString(text.text + " ")
				}
			}
		}
		got := strings.Fields(said.String())
		next := 0
		for _, w := range got {
			if next < len(words) && w == words[next] {
				next++
			}
		}
		if next != len(words) {
			t.Errorf("%s: %d of %d words", name, next, len(words))
		}
		for _, b := range d.boxes {
			if b.bottom > d.height-margin+0.01 {
				t.Errorf("%s: a part stands at %+v", name, b)
			}
		}
	}
}

// TestPDFFonts: every font of the file is embedded.
func TestPDFFonts(t *testing.T) {
	p := timeplantest.Sample()
	p.Rows[0].Text = "⅓ cup → bowl" // not in Atkinson Hyperlegible Next; in Andika
	b, _ := PDF(p, Sheet{})
	descriptors, fonts := 0, 0
	for _, o := range readPDF(t, b).objects {
		if strings.Contains(o, "/Type /FontDescriptor") || strings.Contains(o, "/Type/FontDescriptor") {
			descriptors++
			if !strings.Contains(o, "/FontFile2 ") {
				t.Errorf("not embedded: %s", o)
			}
		}
		if strings.Contains(o, "/CIDFontType2") {
			fonts++
		}
	}
	if fonts != 3 || descriptors != fonts {
		t.Errorf("%d fonts, %d descriptors; want regular, bold and the fallback", fonts, descriptors)
	}
}

// TestPDFStructure reads the tree of tags: a title, one table over all pages
// with scopes, a figure with words, every mark of every page in the tree of parents.
func TestPDFStructure(t *testing.T) {
	p := timeplantest.Sample()
	b, _ := PDF(p, Sheet{})
	r := readPDF(t, b)
	count := map[string]int{}
	for _, o := range r.objects {
		if m := regexp.MustCompile(`/Type /StructElem /S /(\w+)`).FindStringSubmatch(o); m != nil {
			count[m[1]]++
			if m[1] == "TH" && !strings.Contains(o, "/Scope /") {
				t.Errorf("a heading cell without scope: %s", o)
			}
			if m[1] == "Figure" && !strings.Contains(o, "/Alt <FEFF") {
				t.Error("a figure without words")
			}
		}
	}
	columns := len(layoutOf(Sheet{}).columns)
	want := map[string]int{
		"Document": 1, "H1": 1, "Table": 1, "Figure": 1,
		"TR": 1 + 2 + len(p.Rows),       // the head, two bands, the rows
		"TH": columns + 2 + len(p.Rows), // and the times
		"TD": (columns - 1) * len(p.Rows),
	}
	for kind, n := range want {
		if count[kind] != n {
			t.Errorf("%d of %s, want %d", count[kind], kind, n)
		}
	}
	var catalogue, tree string
	for _, o := range r.objects {
		if strings.Contains(o, "/Type /Catalog") {
			catalogue = o
		}
	}
	for _, part := range []string{"/Lang (en-GB)", "/MarkInfo <</Marked true>>", "/DisplayDocTitle true"} {
		if !strings.Contains(catalogue, part) {
			t.Errorf("the catalogue lacks %s", part)
		}
	}
	tree = r.objects[r.number(catalogue, "StructTreeRoot")]
	lists := regexp.MustCompile(`(\d+) \[((?:\d+ 0 R ?)*)\]`).FindAllStringSubmatch(tree, -1)
	for i, page := range r.pages(t) {
		marks := strings.Count(r.content(t, page), "/MCID ")
		if got := strings.Count(lists[i][2], " R"); got != marks || !strings.Contains(page, fmt.Sprintf("/StructParents %d\n", i)) {
			t.Errorf("page %d: %d marks, %d parents", i+1, marks, got)
		}
	}
}

// TestPDFCrossReferences: every offset of the table is where its object begins.
func TestPDFCrossReferences(t *testing.T) {
	b, _ := PDF(timeplantest.TooMuch(), Sheet{Landscape: true})
	at := bytes.LastIndex(b, []byte("\nxref\n")) + 1
	if !bytes.Contains(b[at:], fmt.Appendf(nil, "startxref\n%d\n%%%%EOF\n", at)) {
		t.Error("startxref is elsewhere")
	}
	for i, line := range strings.Split(string(b[at:]), "\n")[3:] {
		if !strings.HasSuffix(line, " n ") {
			break
		}
		offset, _ := strconv.Atoi(line[:10])
		if !bytes.HasPrefix(b[offset:], fmt.Appendf(nil, "%d 0 obj\n", i+1)) {
			t.Errorf("object %d is not at %d", i+1, offset)
		}
	}
}

// TestPDFRepeats: the same plan and sheet give the same bytes.
func TestPDFRepeats(t *testing.T) {
	for name, s := range sheets {
		a, _ := PDF(timeplantest.TooMuch(), s)
		b, _ := PDF(timeplantest.TooMuch(), s)
		if !bytes.Equal(a, b) {
			t.Errorf("%s differs from itself", name)
		}
	}
}

// TestPDFStandIn: what no font has is seen, as U+FFFD.
func TestPDFStandIn(t *testing.T) {
	p := timeplantest.TooMuch()
	p.Rows[0].Text = "a\xffb \U0001F370 漢 ⅓ fin"
	b, err := PDF(p, Sheet{})
	if err != nil {
		t.Fatal(err)
	}
	said := ""
	r := readPDF(t, b)
	for _, text := range r.texts(t, r.pages(t)[0]) {
		said += text.text
	}
	if want := "a\uFFFDb \uFFFD \uFFFD ⅓ fin"; !strings.Contains(said, want) {
		t.Errorf("no %q in %q", want, said)
	}
}

// TestAnyPlanOnPaper: no plan makes a sheet fail.
func TestAnyPlanOnPaper(t *testing.T) {
	for seed := range 12 {
		p := anyPlan().Example(seed)
		s := Sheet{Landscape: seed%2 == 0, LargeType: seed%3 == 0, Name: p.Title}
		if _, err := PDF(p, s); err != nil {
			t.Fatal(seed, err)
		}
		if _, err := HTML(p, s); err != nil {
			t.Fatal(seed, err)
		}
		if _, err := JSON(p); err != nil {
			t.Fatal(seed, err)
		}
	}
}

// FuzzPDF: no text makes the PDF fail, wherever it stands.
func FuzzPDF(f *testing.F) {
	f.Add("Stir", true)
	f.Add("a\xffb \U0001F370 漢\x00\r\n", false)
	f.Fuzz(func(t *testing.T, text string, across bool) {
		p := timeplantest.Pair()
		p.Title, p.Notes = text, []string{text}
		p.Dishes[0].Letter, p.Dishes[0].Name = text, text
		p.Rows[2].Text, p.Rows[3].Kit, p.Rows[4].Setting, p.Rows[5].Safety, p.Rows[6].Dish = text, text, text, text, text
		p.Conflict = []timeplan.Demand{{Text: text}}
		if _, err := PDF(p, Sheet{Landscape: across, Name: text}); err != nil {
			t.Fatal(err)
		}
	})
}

// TestLayoutsFillTheSheet: the columns of each layout add up to what A4
// (ISO 216: 210 by 297 mm) leaves between margins of 10 mm.
func TestLayoutsFillTheSheet(t *testing.T) {
	for name, s := range sheets {
		want := 210.0 - 20
		if s.Landscape {
			want = 297 - 20
		}
		for _, l := range []layout{layoutOf(s), layoutOf(s).withoutStrip()} {
			wide := l.strip
			for _, c := range l.columns {
				wide += c.width
			}
			if wide != want {
				t.Errorf("%s: %g mm of %g", name, wide, want)
			}
		}
	}
}
