package webpage

import (
	"strconv"
	"strings"

	"plait.example/internal/format/table"
)

// reader makes blocks of a page's elements.
type reader struct {
	sheet  *sheet
	path   []*node // the elements around
	blocks []table.Block
	line   table.Line
	space  bool // white space came before the next word
	pre    int
	lists  []int // of each open list: the number of its next item; 0: bullets
	item   string
	level  int  // of the heading that is being read
	cell   bool // it reads inside a cell
	outer  bool // not yet inside the main part: headers, footers and asides are passed over
	ticked bool
	err    error
}

// blocksOf is what a page says, as lines and tables; as in its text, its main
// part alone when it names one.
func blocksOf(root *node) ([]table.Block, error) {
	s := styles(root)
	if m := mainPart(root); m != nil && len(textOf(m)) >= 80 {
		r := &reader{sheet: s}
		r.read(m, look{})
		r.flush()
		return r.blocks, r.err
	}
	r := &reader{sheet: s, outer: true}
	r.read(root, look{})
	r.flush()
	return r.blocks, r.err
}

func (r *reader) read(n *node, from look) {
	if n.tag == "" && n.children == nil {
		r.words(n.text, from.piece)
		return
	}
	if n.tag == "input" && strings.EqualFold(n.attribute("type"), "checkbox") {
		if _, on := n.get("checked"); on {
			r.ticked = true
		}
	}
	if hidden(n) || r.outer && (n.tag == "header" || n.tag == "footer" || n.tag == "aside") || r.err != nil {
		return
	}
	l := r.look(n, from)
	if l.hidden {
		return
	}
	was := r.outer
	r.outer = was && n.tag != "article" && n.tag != "main"
	r.open(n)
	if n.tag == "table" {
		r.table(n, l)
	} else {
		r.inside(n, l)
	}
	r.shut(n)
	r.outer = was
}

func (r *reader) inside(n *node, l look) {
	r.path = append(r.path, n)
	for _, c := range n.children {
		r.read(c, l)
	}
	r.path = r.path[:len(r.path)-1]
}

func (r *reader) open(n *node) {
	if block[n.tag] {
		r.flush()
	}
	switch n.tag {
	case "br":
		if r.cell && len(r.line) == 0 {
			r.blocks = append(r.blocks, table.Block{})
		}
		r.flush()
	case "ul", "ol":
		r.lists = append(r.lists, 0)
		if start, err := strconv.Atoi(n.attribute("start")); n.tag == "ol" && err == nil && start > 0 {
			r.lists[len(r.lists)-1] = start
		} else if n.tag == "ol" {
			r.lists[len(r.lists)-1] = 1
		}
	case "li":
		r.item = "-"
		if at := len(r.lists) - 1; at >= 0 && r.lists[at] > 0 {
			r.item = strconv.Itoa(r.lists[at]) + "."
			r.lists[at]++
		}
	case "h1", "h2", "h3", "h4", "h5", "h6":
		r.level = int(n.tag[1] - '0')
	case "pre":
		r.pre++
	case "sup":
		if text := r.line.Text(); text != "" && text[len(text)-1] >= '0' && text[len(text)-1] <= '9' {
			r.space = true // 1 and a half is not eleven halves
		}
	}
}

func (r *reader) shut(n *node) {
	if block[n.tag] {
		r.flush()
	}
	switch n.tag {
	case "ul", "ol":
		r.lists = r.lists[:max(0, len(r.lists)-1)]
	case "li":
		r.item = ""
	case "h1", "h2", "h3", "h4", "h5", "h6":
		r.level = 0
	case "pre":
		r.pre--
	}
}

// flush ends the line.
func (r *reader) flush() {
	r.space = false
	lines := table.Lines(r.line)
	r.line = nil
	if len(lines[0]) == 0 {
		return
	}
	r.blocks = append(r.blocks, table.Block{Line: lines[0], Heading: r.level, Item: r.item})
	r.item = ""
}

// words adds text to the line; white space runs together, and a preformatted
// text keeps its own.
func (r *reader) words(s string, form table.Piece) {
	for i, part := range strings.Split(s, "\n") {
		if i > 0 {
			if r.space = r.space || len(r.line) > 0; r.pre > 0 {
				r.flush()
			}
		}
		if r.pre > 0 {
			form.Text = visible(part)
			r.line = r.line.Join(form)
			continue
		}
		var b strings.Builder
		for _, c := range visible(part) {
			if c == ' ' || c == '\t' || c == '\u00A0' {
				r.space = r.space || b.Len() > 0 || len(r.line) > 0
				continue
			}
			if r.space && b.Len() == 0 && len(r.line) > 0 {
				r.line[len(r.line)-1].Text += " " // so that no shade begins before its word
			} else if r.space {
				b.WriteByte(' ')
			}
			r.space = false
			b.WriteRune(c)
		}
		form.Text = b.String()
		r.line = r.line.Join(form)
	}
}

// visible leaves out control characters and signs without width.
func visible(s string) string {
	return strings.Map(func(c rune) rune {
		if c != '\t' && (c < ' ' || c >= 0x7F && c < 0xA0) || c == '\u200B' || c == '\u00AD' || c == '\uFEFF' {
			return -1
		}
		return c
	}, s)
}
