package docx

import (
	"archive/zip"
	"bytes"
	"cmp"
	"crypto/sha256"
	"encoding/xml"
	"fmt"
	"io"
	"path"
	"slices"
	"strconv"
	"strings"

	"plait.example/internal/format/packed"
)

// Note is a comment to be put into a document. Table and Row count from 0 as
// in Document.Tables: the n-th block there that is a table, and its r-th row; a
// Row below 0 is the first. With a Table below 0, Row is the number of a block
// there that is a line, and below 0 the first line or row of the document.
type Note struct {
	Table, Row   int
	Author, Text string // the lines of Text become paragraphs
}

// Comment adds comments to a document and leaves all else in it as it is: the
// parts that need no change keep their bytes, and the text of the others does.
// Comments that are there already stay. Untouched tells the document when it comes
// back as it went. The error says which note points to no row, or wraps what Read
// and Document.Tables return.
func Comment(data []byte, notes []Note) ([]byte, error) {
	p, err := open(data)
	if err != nil {
		return nil, err
	}
	name, err := p.mainName()
	if err != nil {
		return nil, err
	}
	d, err := Read(data)
	if err != nil {
		return nil, err
	}
	places, err := d.anchors(notes)
	if err != nil {
		return nil, err
	}
	c := commenter{pack: p, main: name, changed: map[string][]byte{}}
	if err := c.add(notes, places); err != nil {
		return nil, err
	}
	return c.write()
}

// anchors finds the paragraph for each note.
func (d Document) anchors(notes []Note) ([]*packed.Element, error) {
	all, err := d.placed()
	if err != nil {
		return nil, err
	}
	var tables []placed
	for _, b := range all {
		if b.Table != nil {
			tables = append(tables, b)
		}
	}
	list := make([]*packed.Element, len(notes))
	for i, n := range notes {
		switch row := max(n.Row, 0); {
		case n.Table >= len(tables):
			return nil, fmt.Errorf("note %d is for table %d, and the document has %d; count from 0", i+1, n.Table, len(tables))
		case n.Table >= 0 && row >= len(tables[n.Table].rows):
			return nil, fmt.Errorf("note %d is for row %d of table %d, which has %d; count from 0", i+1, n.Row, n.Table, len(tables[n.Table].rows))
		case n.Table >= 0:
			list[i] = wordiest(tables[n.Table].rows[row])
		case row >= len(all):
			return nil, fmt.Errorf("note %d is for block %d, and the document has %d; count from 0", i+1, n.Row, len(all))
		case all[row].Table != nil:
			list[i] = wordiest(all[row].rows[0])
		default:
			list[i] = all[row].paragraph
		}
		if list[i] == nil {
			return nil, fmt.Errorf("note %d is for a row without a paragraph", i+1)
		}
	}
	return list, nil
}

// wordiest is the paragraph with the longest text of a row, the first when all
// are empty.
func wordiest(row *packed.Element) (found *packed.Element) {
	most := -1
	var look func(*packed.Element)
	look = func(in *packed.Element) {
		for _, e := range in.Children {
			if e.Name == "p" {
				if n := textLength(e); n > most {
					most, found = n, e
				}
			} else if !dropped[e.Name] {
				look(e)
			}
		}
	}
	look(row)
	return found
}

func textLength(in *packed.Element) (n int) {
	for _, e := range in.Children {
		if e.Name == "t" {
			n += len(e.Content())
		} else if !dropped[e.Name] && e.Name != "txbxContent" {
			n += textLength(e)
		}
	}
	return n
}

// commenter writes a document anew with comments.
type commenter struct {
	pack
	main    string
	changed map[string][]byte // parts that are new or no longer the same
}

// Namespaces and types of ECMA-376 part 1, 13.4.
const (
	relationships = "http://schemas.openxmlformats.org/package/2006/relationships"
	contentTypes  = "http://schemas.openxmlformats.org/package/2006/content-types"
	commentsType  = "application/vnd.openxmlformats-officedocument.wordprocessingml.comments+xml"
	transitional  = "http://schemas.openxmlformats.org/wordprocessingml/2006/main"
	strict        = "http://purl.oclc.org/ooxml/wordprocessingml/main"
	relation      = "http://schemas.openxmlformats.org/officeDocument/2006/relationships/comments"
	strictly      = "http://purl.oclc.org/ooxml/officeDocument/relationships/comments"
)

// edit puts a text in the place of bytes of a part.
type edit struct {
	from, to int
	text     string
}

func (c *commenter) add(notes []Note, places []*packed.Element) error {
	raw, err := c.Bytes(c.main)
	if err != nil {
		return err
	}
	words := vocabulary(raw)
	name, comments, err := c.commentsPart(words)
	if err != nil {
		return err
	}
	old, err := packed.Parse(comments)
	if err != nil {
		return fmt.Errorf("%w: part %.60q (%w); open it in a word processor and save it again", ErrDamaged, name, err)
	}
	id := 0
	for _, e := range old.Children {
		if n, err := strconv.Atoi(e.Attr("id")); err == nil && n < 1<<30 {
			id = max(id, n+1)
		}
	}
	var more strings.Builder
	own := vocabulary(comments)
	marks := map[*packed.Element]*ends{}
	var order []*packed.Element
	for i, n := range notes {
		at := places[i]
		if marks[at] == nil {
			marks[at] = &ends{}
			order = append(order, at)
		}
		marks[at].add(words, strconv.Itoa(id+i))
		own.comment(&more, n, strconv.Itoa(id+i))
	}
	var edits []edit
	for _, at := range order {
		edits = append(edits, marks[at].edits(raw, at)...)
	}
	c.changed[c.main] = splice(raw, edits)
	c.changed[name] = splice(comments, []edit{inside(comments, old, more.String()+seal(c.changed[c.main]))})
	return nil
}

// seal is a remark among the comments that says what the document's main part
// was when they were put in. Programs that save the document leave it out.
func seal(main []byte) string { return fmt.Sprintf("<!-- %s%x -->", sealed, sha256.Sum256(main)) }

const sealed = "comments by plait into sha256:"

// Untouched says whether Comment wrote a document and its words and comments
// have not been changed since.
func Untouched(data []byte) bool {
	p, err := open(data)
	if err != nil {
		return false
	}
	main, err := p.mainName()
	if err != nil {
		return false
	}
	raw, err := p.Bytes(main)
	if err != nil || raw == nil {
		return false
	}
	for _, f := range p.Files() {
		if name := strings.TrimPrefix(f.Name, "/"); strings.HasPrefix(path.Base(name), "comments") {
			if part, err := p.Bytes(name); err == nil && bytes.Contains(part, []byte(seal(raw))) {
				return true
			}
		}
	}
	return false
}

// ends are what stands at the beginning and the end of what comments are about.
type ends struct{ begin, end string }

func (m *ends) add(words prefix, id string) {
	m.begin += words.tag("commentRangeStart", `id="`+id+`"`, true)
	m.end += words.tag("commentRangeEnd", `id="`+id+`"`, true) + words.open("r") + words.tag("commentReference", `id="`+id+`"`, false) + words.shut("r")
}

// edits put them into a paragraph.
func (m *ends) edits(raw []byte, p *packed.Element) []edit {
	if p.At.Inside == p.At.To { // one tag
		return []edit{inside(raw, p, m.begin+m.end)}
	}
	at := p.At.Inside
	if format := p.Child("pPr"); format != nil {
		at = format.At.To
	}
	return []edit{{at, at, m.begin}, {p.At.Stop, p.At.Stop, m.end}}
}

// inside is the edit that adds to the end of what an element holds. One that is
// a single tag is opened.
func inside(raw []byte, e *packed.Element, text string) edit {
	if e.At.Inside < e.At.To {
		return edit{e.At.Stop, e.At.Stop, text}
	}
	tag := strings.TrimSuffix(string(raw[e.At.From:e.At.To]), "/>")
	name, _, _ := strings.Cut(strings.Join(strings.Fields(tag[1:]), " "), " ")
	return edit{e.At.From, e.At.To, tag + ">" + text + "</" + name + ">"}
}

// splice makes edits; those at one place come in their order.
func splice(raw []byte, edits []edit) []byte {
	slices.SortStableFunc(edits, func(a, b edit) int { return cmp.Compare(a.from, b.from) })
	var b bytes.Buffer
	at := 0
	for _, e := range edits {
		b.Write(raw[at:e.from])
		b.WriteString(e.text)
		at = e.to
	}
	b.Write(raw[at:])
	return b.Bytes()
}

// commentsPart is the name and content of the part with the comments, made and
// announced when there is none.
func (c *commenter) commentsPart(words prefix) (name string, data []byte, err error) {
	related, err := c.Related(c.main)
	if err != nil {
		return "", nil, err
	}
	for _, r := range related {
		if r.Type == "comments" && c.Has(r.Part) {
			data, err = c.Bytes(r.Part)
			return r.Part, data, err
		}
	}
	dir, base := path.Split(c.main)
	name = dir + "comments.xml"
	for i := 2; c.Has(name); i++ {
		name = dir + "comments" + strconv.Itoa(i) + ".xml"
	}
	id := "rIdComments"
	for i := 2; related[id].Part != ""; i++ {
		id = "rIdComments" + strconv.Itoa(i)
	}
	kind := relation
	if words.space == strict {
		kind = strictly
	}
	err = c.append(dir+"_rels/"+base+".rels", "Relationships", relationships,
		`<Relationship xmlns="`+relationships+`" Id="`+id+`" Type="`+kind+`" Target="`+path.Base(name)+`"/>`)
	if err != nil {
		return "", nil, err
	}
	err = c.append("[Content_Types].xml", "Types", contentTypes, `<Override xmlns="`+contentTypes+`" PartName="/`+name+`" ContentType="`+commentsType+`"/>`)
	return name, []byte(xml.Header + `<w:comments xmlns:w="` + words.space + `"></w:comments>`), err
}

// append adds an element to the end of a part, which is made when there is none.
func (c *commenter) append(name, root, space, text string) error {
	raw, err := c.Bytes(name)
	if err != nil {
		return err
	}
	if raw == nil {
		raw = []byte(xml.Header + "<" + root + ` xmlns="` + space + `"></` + root + ">")
	}
	e, err := packed.Parse(raw)
	if err != nil {
		return fmt.Errorf("%w: part %.60q (%w); open it in a word processor and save it again", ErrDamaged, name, err)
	}
	c.changed[name] = splice(raw, []edit{inside(raw, e, text)})
	return nil
}

// write packs the document: what is the same as it was packed, the rest anew.
func (c *commenter) write() ([]byte, error) {
	var b bytes.Buffer
	z := zip.NewWriter(&b)
	for _, f := range c.Files() {
		name := strings.TrimPrefix(f.Name, "/")
		data, is := c.changed[name]
		if !is {
			if err := z.Copy(f); err != nil {
				return nil, fmt.Errorf("%w: part %.60q (%w)", ErrDamaged, name, err)
			}
			continue
		}
		delete(c.changed, name)
		if err := put(z, &zip.FileHeader{Name: f.Name, Method: zip.Deflate, Modified: f.Modified}, data); err != nil {
			return nil, err
		}
	}
	var fresh []string
	for name := range c.changed {
		fresh = append(fresh, name)
	}
	slices.Sort(fresh)
	for _, name := range fresh {
		if err := put(z, &zip.FileHeader{Name: name, Method: zip.Deflate}, c.changed[name]); err != nil {
			return nil, err
		}
	}
	if err := z.Close(); err != nil {
		return nil, err
	}
	return b.Bytes(), nil
}

func put(z *zip.Writer, h *zip.FileHeader, data []byte) error {
	w, err := z.CreateHeader(h)
	if err == nil {
		_, err = io.Copy(w, bytes.NewReader(data))
	}
	return err
}
