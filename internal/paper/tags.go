package paper

import (
	"bytes"
	"fmt"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"unicode/utf16"
)

// tag is an element of the document's structure (ISO 32000-1, 14.7 and 14.8):
// what a screen reader goes by.
type tag struct {
	kind   string // H1, P, Table, TR, TH, TD, Figure, ...
	scope  string // of a TH: Column or Row
	span   int    // columns, when more than one
	alt    string
	kids   []*tag
	pieces []piecePlace
	object int
}

// piecePlace is a marked piece of a page's content.
type piecePlace struct{ page, id int }

// add puts a new element under another.
func (t *tag) add(kind string) *tag {
	kid := &tag{kind: kind}
	t.kids = append(t.kids, kid)
	return kid
}

// tagger marks content while it is written.
type tagger struct {
	root   *tag
	marked map[int][]*tag // by page: the element of each piece
}

func newTagger() *tagger { return &tagger{root: &tag{kind: "Document"}, marked: map[int][]*tag{}} }

// in writes content that belongs to an element.
func (n *pen) in(t *tag, write func()) {
	page := n.f.PageNo()
	id := len(n.tags.marked[page])
	n.tags.marked[page] = append(n.tags.marked[page], t)
	t.pieces = append(t.pieces, piecePlace{page, id})
	n.f.RawWriteStr(fmt.Sprintf("/%s <</MCID %d>> BDC", t.kind, id))
	write()
	n.f.RawWriteStr("EMC")
}

// aside writes content that says nothing: grounds, rules, page numbers.
func (n *pen) aside(write func()) {
	n.f.RawWriteStr("/Artifact BMC")
	write()
	n.f.RawWriteStr("EMC")
}

// output is the finished document with its structure.
func (n *pen) output() ([]byte, error) {
	var b bytes.Buffer
	if err := n.f.Output(&b); err != nil {
		return nil, fmt.Errorf("paper: PDF: %w", err)
	}
	objects, err := readObjects(b.Bytes())
	if err != nil {
		return nil, err
	}
	return n.tags.rewrite(objects), nil
}

// readObjects takes a document of fpdf apart by its cross-reference table:
// object n is at n-1. The last one is the catalogue, the one before the information.
func readObjects(b []byte) ([][]byte, error) {
	_, tail, ok := bytes.Cut(b, []byte("startxref\n"))
	var at int
	if _, err := fmt.Sscan(string(tail), &at); !ok || err != nil || at >= len(b) {
		return nil, fmt.Errorf("paper: PDF: no cross-reference table")
	}
	lines := strings.Split(string(b[at:]), "\n")
	var first, count int
	if _, err := fmt.Sscan(lines[1], &first, &count); err != nil || count < 3 || len(lines) < count+2 {
		return nil, fmt.Errorf("paper: PDF: cross-reference table of %q", lines[1])
	}
	var offsets []int
	for i := 1; i < count; i++ {
		from, err := strconv.Atoi(strings.Fields(lines[i+2])[0])
		if err != nil || from >= at {
			return nil, fmt.Errorf("paper: PDF: object %d: %q", i, lines[i+2])
		}
		offsets = append(offsets, from)
	}
	ends := append(slices.Sorted(slices.Values(offsets)), at)
	var objects [][]byte
	for _, from := range offsets {
		i, _ := slices.BinarySearch(ends, from)
		_, body, _ := bytes.Cut(b[from:ends[i+1]], []byte(" obj\n"))
		objects = append(objects, bytes.TrimSuffix(body, []byte("\nendobj\n")))
	}
	return objects, nil
}

// pageHead is how fpdf begins a page.
var pageHead = regexp.MustCompile(`^<</Type /Page\n`)

// rewrite puts the structure beside the objects and writes the file anew.
func (g *tagger) rewrite(objects [][]byte) []byte {
	var pages []int // object numbers
	for i, o := range objects {
		if pageHead.Match(o) {
			objects[i] = pageHead.ReplaceAll(o, fmt.Appendf(nil, "<</Type /Page\n/StructParents %d\n/Tabs /S\n", len(pages)))
			pages = append(pages, i+1)
		}
	}
	info, catalogue := len(objects)-1, len(objects)
	tree := len(objects) + 1
	next := tree + 1
	number(g.root, &next)
	objects[catalogue-1] = bytes.Replace(objects[catalogue-1], []byte("/Type /Catalog\n"),
		fmt.Appendf(nil, "/Type /Catalog\n/MarkInfo <</Marked true>>\n/StructTreeRoot %d 0 R\n/ViewerPreferences <</DisplayDocTitle true>>\n", tree), 1)
	var parents strings.Builder
	for i := range pages {
		fmt.Fprintf(&parents, "%d [", i)
		for _, t := range g.marked[i+1] {
			fmt.Fprintf(&parents, "%d 0 R ", t.object)
		}
		parents.WriteString("] ")
	}
	objects = append(objects, fmt.Appendf(nil, "<</Type /StructTreeRoot /K %d 0 R /ParentTree <</Nums [%s]>> /ParentTreeNextKey %d>>", g.root.object, parents.String(), len(pages)))
	objects = g.root.write(objects, tree, pages)
	return writeFile(objects, catalogue, info)
}

// number gives the element and all under it their object numbers.
func number(t *tag, next *int) {
	t.object = *next
	*next++
	for _, kid := range t.kids {
		number(kid, next)
	}
}

// write adds the element and all under it, in the order of number.
func (t *tag) write(objects [][]byte, parent int, pages []int) [][]byte {
	var b strings.Builder
	fmt.Fprintf(&b, "<</Type /StructElem /S /%s /P %d 0 R", t.kind, parent)
	if t.alt != "" {
		fmt.Fprintf(&b, " /Alt %s", textString(t.alt))
	}
	if t.scope != "" || t.span > 1 {
		b.WriteString(" /A <</O /Table")
		if t.scope != "" {
			fmt.Fprintf(&b, " /Scope /%s", t.scope)
		}
		if t.span > 1 {
			fmt.Fprintf(&b, " /ColSpan %d", t.span)
		}
		b.WriteString(">>")
	}
	b.WriteString(" /K [")
	for _, p := range t.pieces {
		fmt.Fprintf(&b, "<</Type /MCR /Pg %d 0 R /MCID %d>> ", pages[p.page-1], p.id)
	}
	for _, kid := range t.kids {
		fmt.Fprintf(&b, "%d 0 R ", kid.object)
	}
	b.WriteString("]>>")
	objects = append(objects, []byte(b.String()))
	for _, kid := range t.kids {
		objects = kid.write(objects, t.object, pages)
	}
	return objects
}

// textString writes a text as UTF-16 in hexadecimal, with its byte-order mark.
func textString(s string) string {
	var b strings.Builder
	b.WriteString("<FEFF")
	for _, u := range utf16.Encode([]rune(s)) {
		fmt.Fprintf(&b, "%04X", u)
	}
	return b.String() + ">"
}

// writeFile writes objects with their cross-reference table.
func writeFile(objects [][]byte, catalogue, info int) []byte {
	var b bytes.Buffer
	b.WriteString("%PDF-1.7\n%\xe2\xe3\xcf\xd3\n")
	offsets := make([]int, len(objects))
	for i, o := range objects {
		offsets[i] = b.Len()
		fmt.Fprintf(&b, "%d 0 obj\n", i+1)
		b.Write(o)
		b.WriteString("\nendobj\n")
	}
	at := b.Len()
	fmt.Fprintf(&b, "xref\n0 %d\n0000000000 65535 f \n", len(objects)+1)
	for _, o := range offsets {
		fmt.Fprintf(&b, "%010d 00000 n \n", o)
	}
	fmt.Fprintf(&b, "trailer\n<</Size %d /Root %d 0 R /Info %d 0 R>>\nstartxref\n%d\n%%%%EOF\n", len(objects)+1, catalogue, info, at)
	return b.Bytes()
}
