package docx

import (
	"bytes"
	"encoding/xml"
	"strings"
	"unicode/utf8"
)

// prefix is how a part names the elements of word processing.
type prefix struct {
	space   string // address of the namespace
	name    string // "w"
	declare string // to be written in each element, when the part's root does not declare it
}

// vocabulary finds out how a part's root names its elements.
func vocabulary(raw []byte) prefix {
	words := prefix{space: transitional, name: "w", declare: ` xmlns:w="` + transitional + `"`}
	d := xml.NewDecoder(bytes.NewReader(raw))
	for {
		token, err := d.Token()
		if err != nil {
			return words
		}
		root, is := token.(xml.StartElement)
		if !is {
			continue
		}
		if root.Name.Space == strict {
			words.space, words.declare = strict, ` xmlns:w="`+strict+`"`
		}
		for _, a := range root.Attr {
			if a.Name.Space == "xmlns" && a.Value == words.space && a.Name.Local != "" {
				words.name, words.declare = a.Name.Local, ""
				return words
			}
		}
		return words
	}
}

// tag is an element without content; its attribute is in the same namespace.
func (p prefix) tag(name, attribute string, declare bool) string {
	s := "<" + p.name + ":" + name
	if declare {
		s += p.declare
	}
	if attribute != "" {
		s += " " + p.name + ":" + attribute
	}
	return s + "/>"
}

func (p prefix) open(name string) string { return "<" + p.name + ":" + name + p.declare + ">" }
func (p prefix) shut(name string) string { return "</" + p.name + ":" + name + ">" }

// comment writes a comment.
func (p prefix) comment(b *strings.Builder, n Note, id string) {
	at := " " + p.name + ":"
	b.WriteString("<" + p.name + ":comment" + p.declare + at + `id="` + id + `"` + at + `author="` + escaped(n.Author) + `"` + at + `initials="` + escaped(initials(n.Author)) + `">`)
	inner := prefix{space: p.space, name: p.name}
	for i, line := range strings.Split(n.Text, "\n") {
		b.WriteString(inner.open("p"))
		if i == 0 {
			b.WriteString(inner.open("r") + inner.tag("annotationRef", "", false) + inner.shut("r"))
		}
		b.WriteString(inner.open("r") + "<" + p.name + `:t xml:space="preserve">` + escaped(line) + inner.shut("t") + inner.shut("r") + inner.shut("p"))
	}
	b.WriteString(inner.shut("comment"))
}

func initials(name string) string {
	var b strings.Builder
	for _, word := range strings.Fields(name) {
		first, _ := utf8.DecodeRuneInString(word)
		b.WriteRune(first)
	}
	return b.String()
}

// escaped is a text as XML can hold it; what it cannot hold is left out.
func escaped(s string) string {
	s = strings.Map(func(r rune) rune {
		if r < ' ' && r != '\t' || r == utf8.RuneError || r == 0xFFFE || r == 0xFFFF {
			return -1
		}
		return r
	}, s)
	var b strings.Builder
	if err := xml.EscapeText(&b, []byte(s)); err != nil {
		return ""
	}
	return b.String()
}
