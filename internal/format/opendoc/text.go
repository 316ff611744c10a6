package opendoc

import (
	"strconv"
	"strings"

	"plait.example/internal/format/packed"
	"plait.example/internal/format/table"
)

// maxSpaces is how many spaces one element makes at most.
const maxSpaces = 200

type reader struct {
	styles styles
	ticked map[string]bool // boxes of forms
	notes  []string
	counts map[string]int // the last number of lists that others go on with, by list style and level
	boxes  []*packed.Element
	box    bool // a ticked box was met
	base   style
}

// dropped are elements whose content is not in the text: what was deleted,
// notes, comments, forms.
var dropped = map[string]bool{
	"tracked-changes": true, "note": true, "annotation": true, "annotation-end": true, "forms": true, "sequence-decls": true, "variable-decls": true,
	"ruby-text": true, "title": true, "desc": true, "object": true, "object-ole": true, "image": true, "script": true, "event-listeners": true,
	"table-of-content": true, "dde-connection-decls": true, "shapes": true,
}

// blocks reads the paragraphs, lists and tables inside an element.
func (r *reader) blocks(in *packed.Element) (list []table.Block, err error) {
	for _, e := range in.Children {
		var more []table.Block
		switch {
		case dropped[e.Name] || e.Name == "":
		case e.Name == "p" || e.Name == "h":
			more, err = r.paragraph(e)
		case e.Name == "list":
			more, err = r.list(e, "", 0)
		case e.Name == "table":
			more, err = r.table(e, false)
		default:
			more, err = r.blocks(e)
		}
		if err != nil {
			return nil, err
		}
		list = append(list, more...)
	}
	return list, nil
}

func (r *reader) paragraph(e *packed.Element) ([]table.Block, error) {
	level := 0
	if e.Name == "h" {
		n, err := strconv.Atoi(e.Attr("outline-level"))
		if level = 1; err == nil && n >= 1 && n <= 9 {
			level = n
		}
	}
	outer := r.boxes
	r.boxes = nil
	w := writer{reader: r}
	w.write(e, r.styles.of("paragraph", e.Attr("style-name")).under(r.base))
	var blocks []table.Block
	for _, l := range table.Lines(w.line) {
		blocks = append(blocks, table.Block{Line: l, Heading: level})
	}
	boxes := r.boxes
	r.boxes = outer
	for _, box := range boxes {
		more, err := r.blocks(box)
		if err != nil {
			return nil, err
		}
		blocks = append(blocks, more...)
	}
	return blocks, nil
}

// writer makes a line of a paragraph. White space runs together; elements
// stand for more of it (ISO/IEC 26300-1, 6.1.2).
type writer struct {
	*reader
	line  table.Line
	space bool
}

func (w *writer) write(in *packed.Element, s style) {
	for _, e := range in.Children {
		switch {
		case e.Name == "":
			w.words(e.Text, s)
		case dropped[e.Name]:
		case e.Name == "span":
			w.write(e, w.styles.of("text", e.Attr("style-name")).under(s))
		case e.Name == "s":
			n, err := strconv.Atoi(e.Attr("c"))
			if err != nil || n < 1 {
				n = 1
			}
			w.add(strings.Repeat(" ", min(n, maxSpaces)), s)
		case e.Name == "tab":
			w.add("\t", s)
		case e.Name == "line-break":
			w.add("\n", s)
		case e.Name == "text-box" || e.Name == "custom-shape":
			w.boxes = append(w.boxes, e)
		case e.Name == "control":
			w.box = w.box || w.ticked[e.Attr("control")]
		default:
			w.write(e, s)
		}
	}
}

func (w *writer) words(text string, s style) {
	var b strings.Builder
	for _, c := range text {
		if c == ' ' || c == '\n' || c == '\t' || c == '\r' {
			if !w.space {
				b.WriteByte(' ')
			}
			w.space = true
			continue
		}
		w.space = false
		b.WriteRune(c)
	}
	p := s.piece()
	p.Text = b.String()
	w.line = w.line.Join(p)
}

// add adds white space that stays as it is.
func (w *writer) add(text string, s style) {
	p := s.piece()
	p.Text = text
	w.line = w.line.Join(p)
	w.space = false
}

// list reads a list; name is the style of the one around it.
func (r *reader) list(e *packed.Element, name string, level int) (blocks []table.Block, err error) {
	if own := e.Attr("style-name"); own != "" {
		name = own
	}
	if r.counts == nil {
		r.counts = map[string]int{}
	}
	kind := r.styles.lists[name]
	id := name + " " + strconv.Itoa(level)
	number := kind.first(level) - 1
	if e.Attr("continue-numbering") == "true" || e.Attr("continue-list") != "" {
		number = max(number, r.counts[id])
	}
	for _, item := range e.Children {
		if item.Name != "list-item" {
			continue
		}
		if start, err := strconv.Atoi(item.Attr("start-value")); err == nil && start >= 0 && start < 32768 {
			number = start - 1
		}
		number++
		more, err := r.item(item, name, level, kind.marker(level, number))
		if err != nil {
			return nil, err
		}
		blocks = append(blocks, more...)
	}
	r.counts[id] = number
	return blocks, nil
}

func (r *reader) item(e *packed.Element, name string, level int, marker string) (blocks []table.Block, err error) {
	for _, c := range e.Children {
		var more []table.Block
		switch c.Name {
		case "list":
			more, err = r.list(c, name, level+1)
		case "p", "h":
			if more, err = r.paragraph(c); len(more) > 0 {
				more[0].Item, marker = marker, ""
			}
		default:
			more, err = r.blocks(c)
		}
		if err != nil {
			return nil, err
		}
		blocks = append(blocks, more...)
	}
	return blocks, nil
}
