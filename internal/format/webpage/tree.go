package webpage

import (
	"fmt"
	"strings"

	"golang.org/x/net/html"
)

// node is an element with its content, or a piece of text when it has no tag.
type node struct {
	tag      string
	text     string
	attr     []html.Attribute
	children []*node
}

// get is the value of an attribute, and whether it is there.
func (n *node) get(key string) (string, bool) {
	for _, a := range n.attr {
		if a.Key == key {
			return a.Val, true
		}
	}
	return "", false
}

func (n *node) attribute(key string) string {
	value, _ := n.get(key)
	return value
}

// each calls visit for the node and what is in it, in the order of the page; it
// leaves out what is in a node for which visit says no.
func (n *node) each(visit func(*node) bool) {
	if visit(n) {
		for _, c := range n.children {
			c.each(visit)
		}
	}
}

// content is all text inside, as it stands in the source.
func (n *node) content() string {
	var b strings.Builder
	n.each(func(n *node) bool {
		b.WriteString(n.text)
		return true
	})
	return b.String()
}

// words makes a set of the words of a text.
func words(list string) map[string]bool {
	set := map[string]bool{}
	for _, w := range strings.Fields(list) {
		set[w] = true
	}
	return set
}

// void elements have no content and no end tag (HTML Standard, 13.1.2).
var void = words("area base br col embed hr img input link meta source track wbr")

// closesParagraph are the start tags that end an open paragraph (HTML Standard, 13.1.2.4).
var closesParagraph = words("address article aside blockquote center details dialog dir div dl dd dt fieldset figcaption figure footer form " +
	"h1 h2 h3 h4 h5 h6 header hgroup hr li main menu nav ol p pre search section table ul")

// implied says which open elements a start tag ends, and which elements keep
// it from looking further out (optional tags: HTML Standard, 13.1.2.4).
var implied = map[string]struct{ ends, within map[string]bool }{
	"li":       {words("li"), words("ul ol menu dir table")},
	"dt":       {words("dt dd"), words("dl table")},
	"dd":       {words("dt dd"), words("dl table")},
	"tr":       {words("tr td th"), words("table")},
	"td":       {words("td th"), words("tr table")},
	"th":       {words("td th"), words("tr table")},
	"thead":    {words("thead tbody tfoot tr td th"), words("table")},
	"tbody":    {words("thead tbody tfoot tr td th"), words("table")},
	"tfoot":    {words("thead tbody tfoot tr td th"), words("table")},
	"option":   {words("option"), words("select")},
	"optgroup": {words("option optgroup"), words("select")},
	"body":     {words("head"), nil},
}

// builder makes the tree in one pass. It repairs what pages in the wild leave
// out, and unlike a browser never copies an element, so that a small page
// cannot become a large tree.
type builder struct {
	open  []*node
	count int
}

// parse is the tree of a page, under a root without a tag.
func parse(source string) (*node, error) {
	z := html.NewTokenizer(strings.NewReader(source))
	b := &builder{open: []*node{{}}}
	for {
		switch z.Next() {
		case html.ErrorToken:
			return b.open[0], nil
		case html.TextToken:
			b.add(&node{text: string(z.Text())})
		case html.StartTagToken, html.SelfClosingTagToken:
			if err := b.start(z.Token()); err != nil {
				return nil, err
			}
		case html.EndTagToken:
			name, _ := z.TagName()
			b.end(string(name))
		}
	}
}

func (b *builder) add(n *node) {
	top := b.open[len(b.open)-1]
	top.children = append(top.children, n)
}

func (b *builder) start(t html.Token) error {
	if b.count++; b.count > MaxElements {
		return fmt.Errorf("%w: more than %d elements; copy the text into a text file", ErrTooLarge, MaxElements)
	}
	if closesParagraph[t.Data] {
		b.close(paragraph, buttonScope)
	}
	if rule, has := implied[t.Data]; has {
		b.close(rule.ends, rule.within)
	}
	n := &node{tag: t.Data, attr: t.Attr}
	b.add(n)
	if void[t.Data] || t.Type == html.SelfClosingTagToken && foreign[t.Data] {
		return nil
	}
	if b.open = append(b.open, n); len(b.open) > MaxDepth {
		return fmt.Errorf("%w: more than %d inside one another; copy the text into a text file", ErrTooDeep, MaxDepth)
	}
	return nil
}

// foreign elements may end themselves with a slash, unlike HTML's own.
var foreign = words("svg path circle rect line polygon polyline ellipse use g stop image text math mi mn mo")

var (
	paragraph   = words("p")
	buttonScope = words("button table td th caption template object li dd dt")
	cellScope   = words("table template")
	inCell      = words("td th caption template")
	ofTable     = words("table thead tbody tfoot tr td th caption template")
)

// close ends the outermost open element of the given names that is not outside one of within.
func (b *builder) close(names, within map[string]bool) {
	to := 0
	for i := len(b.open) - 1; i > 0 && !within[b.open[i].tag]; i-- {
		if names[b.open[i].tag] {
			to = i
		}
	}
	if to > 0 {
		b.open = b.open[:to]
	}
}

// end ends the innermost open element of that name; an end tag without one is
// passed over, and one in a table's cell ends nothing outside it.
func (b *builder) end(name string) {
	within := inCell
	if ofTable[name] {
		within = cellScope
	}
	for i := len(b.open) - 1; i > 0; i-- {
		if b.open[i].tag == name {
			b.open = b.open[:i]
			return
		}
		if within[b.open[i].tag] {
			return
		}
	}
}
