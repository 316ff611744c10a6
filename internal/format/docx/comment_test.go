package docx_test

import (
	"archive/zip"
	"bytes"
	"crypto/sha256"
	"encoding/xml"
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"plait.example/internal/format/docx"
	"plait.example/internal/format/table"
)

// parts unpacks a document.
func parts(t testing.TB, data []byte) map[string]string {
	t.Helper()
	z, err := zip.NewReader(bytes.NewReader(data), int64(len(data)))
	if err != nil {
		t.Fatal(err)
	}
	all := map[string]string{}
	for _, f := range z.File {
		r, err := f.Open()
		if err != nil {
			t.Fatal(err)
		}
		text, err := io.ReadAll(r)
		if err != nil {
			t.Fatal(err)
		}
		all[f.Name] = string(text)
	}
	return all
}

func written(t testing.TB, name string) []byte {
	t.Helper()
	data, err := os.ReadFile(filepath.Join("..", "testdata", "libreoffice", name))
	if err != nil {
		t.Fatal(err)
	}
	return data
}

func commented(t testing.TB, data []byte, notes ...docx.Note) []byte {
	t.Helper()
	out, err := docx.Comment(data, notes)
	if err != nil {
		t.Fatal(err)
	}
	return out
}

func blocks(t testing.TB, data []byte) []table.Block {
	t.Helper()
	d, err := docx.Read(data)
	if err != nil {
		t.Fatal(err)
	}
	list, err := d.Tables()
	if err != nil {
		t.Fatal(err)
	}
	return list
}

// comments are the comments of a document: the author, what it is about, and
// what it says, by a reader of this test's own that takes the parts as the
// standard names them (ECMA-376 part 1, 17.13.4).
func comments(t testing.TB, data []byte) (list []string) {
	t.Helper()
	all := parts(t, data)
	type text struct {
		Words []string `xml:"r>t"`
	}
	var root struct {
		Comments []struct {
			ID     string `xml:"id,attr"`
			Author string `xml:"author,attr"`
			Lines  []text `xml:"p"`
		} `xml:"comment"`
	}
	if err := xml.Unmarshal([]byte(all["word/comments.xml"]), &root); err != nil {
		t.Fatal(err)
	}
	body := all["word/document.xml"]
	for _, c := range root.Comments {
		about := regexp.MustCompile(`(?s)<w:commentRangeStart[^>]* w:id="` + c.ID + `"[^>]*>(.*)<w:commentRangeEnd[^>]* w:id="` + c.ID + `"[^>]*>.*<w:commentReference[^>]* w:id="` + c.ID + `"`).FindStringSubmatch(body)
		if about == nil {
			t.Fatalf("comment %s is about nothing", c.ID)
		}
		var lines []string
		for _, l := range c.Lines {
			lines = append(lines, strings.Join(l.Words, ""))
		}
		words := regexp.MustCompile(`<w:t[ >][^<]*`).FindAllString(about[1], -1)
		for i, w := range words {
			words[i] = w[strings.IndexByte(w, '>')+1:]
		}
		list = append(list, c.Author+" of "+strings.Join(words, "")+": "+strings.Join(lines, "/"))
	}
	slices.Sort(list)
	return list
}

// notes are about rows and lines of the invented plan; the last row of its
// second table has an empty cell and one with a date.
var notes = []docx.Note{
	{Table: 0, Row: 2, Author: "Ms Okoro", Text: "When does it\ncome out of the fridge?"},
	{Table: 0, Row: 4, Author: "Ms Okoro", Text: "Why <now> & not later?"},
	{Table: 0, Row: 5, Author: "Ms Okoro", Text: "How hot?"},
	{Table: 0, Row: 5, Author: "Mr Hale", Text: "How long?"},
	{Table: 1, Row: 1, Author: "Ms Okoro", Text: "Which year?"},
	{Table: -1, Row: -1, Author: "Ms Okoro", Text: "Well set out."},
	{Table: -1, Row: 3, Author: "Ms Okoro", Text: "After what?"},
}

var wantComments = []string{
	"Mr Hale of Roll out and line the tin, blind bake: How long?",
	"Ms Okoro of 12 May: Which year?",
	"Ms Okoro of After that:: After what?",
	"Ms Okoro of Roll out and line the tin, blind bake: How hot?",
	"Ms Okoro of Rub in the pastryChill 20 mins: When does it/come out of the fridge?",
	"Ms Okoro of Stone the plums: Why <now> & not later?",
	"Ms Okoro of Time plan: Wednesday practical: Well set out.",
}

func TestComment(t *testing.T) {
	plan := written(t, "plan.docx")
	out := commented(t, plan, notes...)
	if diff := cmp.Diff(wantComments, comments(t, out)); diff != "" {
		t.Error(diff)
	}
	if diff := cmp.Diff(blocks(t, plan), blocks(t, out)); diff != "" {
		t.Errorf("the plan reads otherwise than before: %s", diff)
	}
	before, after := parts(t, plan), parts(t, out)
	for name, text := range before {
		switch name {
		case "word/document.xml", "[Content_Types].xml", "word/_rels/document.xml.rels":
			if got := without(after[name]); got != text {
				t.Errorf("%s is not as it was but for what was added:\n%s", name, cmp.Diff(text, got))
			}
		default:
			if after[name] != text {
				t.Errorf("%s was changed", name)
			}
		}
	}
	if len(after) != len(before)+1 || !bytes.Equal(out, commented(t, plan, notes...)) {
		t.Errorf("%d parts, then %d; or not the same at every call", len(before), len(after))
	}
}

// without takes out what a comment adds to a part.
func without(text string) string {
	for _, added := range []string{
		`<w:commentRangeStart w:id="\d+"/>`, `<w:commentRangeEnd w:id="\d+"/><w:r><w:commentReference w:id="\d+"/></w:r>`,
		`<Override [^>]*PartName="/word/comments.xml"[^>]*/>`, `<Relationship [^>]*Id="rIdComments"[^>]*/>`,
	} {
		text = regexp.MustCompile(added).ReplaceAllString(text, "")
	}
	return text
}

// A document that LibreOffice saved with these comments in it: it had found
// them all, at their places, and more can be added to its own.
func TestCommentsInAnotherProgram(t *testing.T) {
	theirs := written(t, "commented.docx")
	if diff := cmp.Diff(wantComments, comments(t, theirs)); diff != "" {
		t.Error(diff)
	}
	out := commented(t, theirs, docx.Note{Table: 0, Row: 0, Author: "Mr Hale", Text: "Which dish is S?"})
	want := append([]string{"Mr Hale of What I will do: Which dish is S?"}, wantComments...)
	slices.Sort(want)
	if diff := cmp.Diff(want, comments(t, out)); diff != "" {
		t.Error(diff)
	}
}

// The parts that LibreOffice opened for the document above. When this changes,
// what is written now has to be opened by another program again (README there).
func TestCommentsAreThoseThatWereOpened(t *testing.T) {
	all := parts(t, commented(t, written(t, "plan.docx"), notes...))
	sum := sha256.Sum256([]byte(all["word/document.xml"] + all["word/comments.xml"] + all["[Content_Types].xml"] + all["word/_rels/document.xml.rels"]))
	if got := fmt.Sprintf("%x", sum[:8]); got != opened {
		t.Errorf("parts %s, and %s were opened", got, opened)
	}
}

const opened = "dc13c8241086bea1"

// A document that comes back as it went is told; one that was worked on is not.
func TestUntouched(t *testing.T) {
	plan := written(t, "plan.docx")
	out := commented(t, plan, notes...)
	if !docx.Untouched(out) {
		t.Error("as it went: not told")
	}
	all := parts(t, out)
	edited := []string{}
	for name, text := range all {
		if name == "word/document.xml" {
			text = strings.Replace(text, "</w:body>", "<w:p/></w:body>", 1)
		}
		edited = append(edited, name, text)
	}
	for name, data := range map[string][]byte{
		"without comments": plan, "saved by LibreOffice": written(t, "commented.docx"), "edited": pack(t, edited...), "no document": []byte("PK"),
	} {
		if docx.Untouched(data) {
			t.Errorf("%s: taken for one that comes back as it went", name)
		}
	}
}

// Documents as other programs write them: another prefix, the strict
// namespace, no relationships, paragraphs of one tag.
func TestCommentInOddDocuments(t *testing.T) {
	const body = `<x:body><x:tbl><x:tr><x:tc><x:p/></x:tc></x:tr></x:tbl></x:body>`
	for name, space := range map[string]string{
		"prefix": "http://schemas.openxmlformats.org/wordprocessingml/2006/main",
		"strict": "http://purl.oclc.org/ooxml/wordprocessingml/main",
	} {
		data := pack(t, "word/document.xml", `<x:document xmlns:x="`+space+`">`+body+`</x:document>`)
		all := parts(t, commented(t, data, docx.Note{Author: "A", Text: "Why?"}, docx.Note{Author: "B", Text: "How?"}))
		want := `<x:p><x:commentRangeStart x:id="0"/><x:commentRangeStart x:id="1"/><x:commentRangeEnd x:id="0"/><x:r><x:commentReference x:id="0"/></x:r><x:commentRangeEnd x:id="1"/><x:r><x:commentReference x:id="1"/></x:r></x:p>`
		if !strings.Contains(all["word/document.xml"], want) || !strings.Contains(all["word/comments.xml"], space) ||
			!strings.Contains(all["[Content_Types].xml"], "/word/comments.xml") || !strings.Contains(all["word/_rels/document.xml.rels"], `Target="comments.xml"`) {
			t.Errorf("%s: %q", name, all)
		}
	}
	plain := pack(t, "word/document.xml", `<document xmlns="http://schemas.openxmlformats.org/wordprocessingml/2006/main"><body><p a="1"  ><pPr/><r><t>Stir</t></r></p></body></document>`, "[Content_Types].xml", "<Types/>")
	all := parts(t, commented(t, plain, docx.Note{Table: -1, Author: "A", Text: "Why?"}))
	if got := all["word/document.xml"]; !strings.Contains(got, `<pPr/><w:commentRangeStart xmlns:w="http://schemas.openxmlformats.org/wordprocessingml/2006/main" w:id="0"/><r>`) {
		t.Error(got)
	}
	if got := all["[Content_Types].xml"]; !strings.HasPrefix(got, "<Types><Override") || !strings.HasSuffix(got, "</Types>") {
		t.Error(got)
	}
}

func TestNotesToNowhere(t *testing.T) {
	plan := written(t, "plan.docx")
	for want, n := range map[string]docx.Note{
		"note 1 is for table 2, and the document has 2":  {Table: 2},
		"note 1 is for row 8 of table 0, which has 8":    {Table: 0, Row: 8},
		"note 1 is for block 99, and the document has 7": {Table: -1, Row: 99},
	} {
		if _, err := docx.Comment(plan, []docx.Note{n}); err == nil || !strings.HasPrefix(err.Error(), want) {
			t.Errorf("%v, want %s", err, want)
		}
	}
	if _, err := docx.Comment([]byte("no"), notes); !errors.Is(err, docx.ErrNotWord) {
		t.Error(err)
	}
}

func FuzzComment(f *testing.F) {
	f.Add(scones, "Why?", 0)
	f.Add(`<w:p/><w:tbl><w:tr><w:tc><w:p><w:pPr/></w:p><w:tbl><w:tr><w:tc><w:p/></w:tc></w:tr></w:tbl></w:tc></w:tr></w:tbl>`, "\x00<", 0)
	f.Fuzz(func(t *testing.T, body, text string, row int) {
		data := pack(t, "word/document.xml", head+body+foot)
		d, err := docx.Read(data)
		if err != nil {
			return
		}
		want, err := d.Tables()
		if err != nil {
			return
		}
		out, err := docx.Comment(data, []docx.Note{{Row: row, Author: text, Text: text}, {Table: -1, Row: row, Text: text}})
		if err != nil {
			return
		}
		if diff := cmp.Diff(want, blocks(t, out)); diff != "" {
			t.Error(diff)
		}
		if err := xml.Unmarshal([]byte(parts(t, out)["word/comments.xml"]), new(struct{})); err != nil {
			t.Error(err)
		}
	})
}
