package webpage

import (
	"strconv"
	"strings"
)

// What is not part of what a page says: programs, forms, frames, ways to other pages.
var (
	unseen = words("script style template noscript head title iframe object embed svg canvas audio video select textarea button input nav dialog menu datalist math")
	block  = words("address article aside blockquote body center details dd div dl dt fieldset figcaption figure footer form h1 h2 h3 h4 h5 h6 " +
		"header hgroup hr html li main ol p pre section summary table tbody td tfoot th thead tr ul caption legend label")
	spaced    = words("p ul ol dl table blockquote h1 h2 h3 h4 h5 h6 section article div figure pre hr")
	sideRoles = words("navigation banner contentinfo search dialog alertdialog menu menubar toolbar tablist complementary")
)

// hidden says whether a reader of the page does not see the element.
func hidden(n *node) bool {
	if unseen[n.tag] {
		return true
	}
	if _, is := n.get("hidden"); is || n.attribute("aria-hidden") == "true" || sideRoles[n.attribute("role")] {
		return true
	}
	style := strings.ReplaceAll(strings.ToLower(n.attribute("style")), " ", "")
	return strings.Contains(style, "display:none") || strings.Contains(style, "visibility:hidden")
}

// visibleText is what the page says: its main part when it names one, else all
// but headers, footers and asides.
func visibleText(root *node) string {
	if m := mainPart(root); m != nil {
		if text := textOf(m); len(text) >= 80 {
			return text
		}
	}
	w := writer{outer: true}
	w.write(root)
	return w.text()
}

func mainPart(root *node) *node {
	var found *node
	root.each(func(n *node) bool {
		if found == nil && !hidden(n) && (n.tag == "main" || n.attribute("role") == "main") {
			found = n
		}
		return found == nil && !hidden(n)
	})
	return found
}

// textOf is the text of one element in lines.
func textOf(n *node) string {
	var w writer
	w.write(n)
	return w.text()
}

// writer puts text in lines: white space runs together, blocks stand on lines of their own.
type writer struct {
	b       strings.Builder
	line    strings.Builder
	prefix  string // what the next line begins with
	gap     bool   // a blank line goes before the next line
	pre     int
	lists   []int // of each open list: the number of its next item; 0: bullets
	outer   bool  // not yet inside the main part: headers, footers and asides are passed over
	inCells int
}

func (w *writer) text() string {
	w.flush()
	return strings.TrimSpace(w.b.String())
}

// flush ends the line.
func (w *writer) flush() {
	line := strings.Trim(w.line.String(), " \n")
	w.line.Reset()
	if strings.Trim(line, "\t") == "" {
		return
	}
	if w.gap && w.b.Len() > 0 {
		w.b.WriteByte('\n')
	}
	w.gap = false
	w.b.WriteString(w.prefix + line + "\n")
	w.prefix = strings.Repeat(" ", len(w.prefix)-len(strings.TrimLeft(w.prefix, " ")))
}

func (w *writer) write(n *node) {
	if n.tag == "" && n.children == nil {
		w.words(n.text)
		return
	}
	if hidden(n) || w.outer && (n.tag == "header" || n.tag == "footer" || n.tag == "aside") {
		return
	}
	if n.tag == "br" {
		w.breakLine()
		return
	}
	was := w.outer
	w.outer = was && n.tag != "article" && n.tag != "main"
	w.open(n)
	for _, c := range n.children {
		w.write(c)
	}
	w.shut(n)
	w.outer = was
}

// breakLine ends a line inside a block; in a cell, whose row is one line, it is a space.
func (w *writer) breakLine() {
	if w.inCells > 0 {
		w.words(" ")
		return
	}
	w.flush()
}

func (w *writer) open(n *node) {
	if w.inCells > 0 && n.tag != "tr" {
		if block[n.tag] && n.tag != "td" && n.tag != "th" {
			w.words(" ")
		}
		w.cell(n)
		return
	}
	if block[n.tag] {
		w.flush()
		w.gap = w.gap || spaced[n.tag] && len(w.lists) == 0
	}
	switch n.tag {
	case "ul", "ol":
		w.openList(n)
	case "li":
		w.prefix = w.marker()
	case "h1", "h2", "h3", "h4", "h5", "h6":
		w.prefix = strings.Repeat("#", int(n.tag[1]-'0')) + " "
	case "tr":
		if w.inCells > 0 || !layout(n) {
			w.inCells++
		}
	case "pre":
		w.pre++
	case "sup":
		if line := w.line.String(); line != "" && line[len(line)-1] >= '0' && line[len(line)-1] <= '9' {
			w.line.WriteByte(' ') // 1 and a half is not eleven halves
		}
	}
}

// layout says whether a table's row is there to place parts of the page beside
// one another: it holds lists, headings, tables or several paragraphs.
func layout(row *node) bool {
	found, paragraphs := false, 0
	row.each(func(n *node) bool {
		switch n.tag {
		case "ul", "ol", "table", "h1", "h2", "h3", "h4", "h5", "h6", "pre":
			found = true
		case "p":
			paragraphs++
			found = found || paragraphs > 3
		}
		return !found
	})
	return found
}

// cell puts a tab before the second and later cells of a row.
func (w *writer) cell(n *node) {
	if (n.tag == "td" || n.tag == "th") && w.line.Len() > 0 {
		line := strings.TrimRight(w.line.String(), " ")
		w.line.Reset()
		w.line.WriteString(line + "\t")
	}
}

func (w *writer) openList(n *node) {
	first := 0
	if n.tag == "ol" {
		first = 1
		if start, err := strconv.Atoi(n.attribute("start")); err == nil && start > 0 {
			first = start
		}
	}
	w.lists = append(w.lists, first)
}

// marker is what stands before the next item of the innermost list.
func (w *writer) marker() string {
	if len(w.lists) == 0 {
		return "- "
	}
	at := len(w.lists) - 1
	indent := strings.Repeat("  ", at)
	if w.lists[at] == 0 {
		return indent + "- "
	}
	w.lists[at]++
	return indent + strconv.Itoa(w.lists[at]-1) + ". "
}

func (w *writer) shut(n *node) {
	if n.tag == "tr" && w.inCells > 0 {
		if w.inCells--; w.inCells == 0 {
			w.flush()
		}
	}
	if w.inCells > 0 {
		if block[n.tag] {
			w.words(" ")
		}
		return
	}
	switch n.tag {
	case "ul", "ol":
		w.flush()
		if len(w.lists) > 0 {
			w.lists = w.lists[:len(w.lists)-1]
		}
	case "pre":
		w.pre = max(0, w.pre-1)
	}
	if block[n.tag] {
		w.flush()
		w.prefix = ""
		w.gap = w.gap || spaced[n.tag] && len(w.lists) == 0
	}
}

// words adds text to the line. A preformatted text keeps its line ends.
func (w *writer) words(s string) {
	for i, part := range strings.Split(s, "\n") {
		if i > 0 {
			if w.pre > 0 && w.inCells == 0 {
				w.flush()
			} else {
				w.space()
			}
		}
		for _, r := range part {
			if r == ' ' || r == '\t' || r == '\r' || r == '\f' || r == '\u00A0' {
				w.space()
			} else if r >= ' ' && (r < 0x7F || r >= 0xA0) && r != '\u200B' && r != '\u00AD' && r != '\uFEFF' {
				w.line.WriteRune(r)
			}
		}
	}
}

// space adds one space unless the line is empty or ends in white space.
func (w *writer) space() {
	if line := w.line.String(); line != "" && line[len(line)-1] != ' ' && line[len(line)-1] != '\t' {
		w.line.WriteByte(' ')
	}
}

// oneLine runs white space together.
func oneLine(s string) string { return strings.Join(strings.Fields(s), " ") }
