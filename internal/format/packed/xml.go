package packed

import (
	"bytes"
	"encoding/xml"
	"errors"
	"fmt"
	"io"
	"slices"
	"strings"
	"unicode/utf8"
)

// Element is an XML element by its local name, whatever its namespace's
// address; text between elements, where it is kept, is an Element without a name.
type Element struct {
	Name     string
	Attrs    []xml.Attr
	Children []*Element
	Text     string // of an Element without a name
	At       Span
	texts    bool // character data inside are kept
}

// Span is where an element stands in its part, in bytes: where its start tag
// begins and ends, and where its end tag begins and ends; the last three are
// the same in an element that is one tag.
type Span struct{ From, Inside, Stop, To int }

// Attr is an attribute by its local name, "" when it is not there.
func (e *Element) Attr(local string) string {
	if e != nil {
		for _, a := range e.Attrs {
			if a.Name.Local == local {
				return a.Value
			}
		}
	}
	return ""
}

// Child is the first child of that name, nil when there is none or no element.
func (e *Element) Child(name string) *Element {
	if e != nil {
		for _, c := range e.Children {
			if c.Name == name {
				return c
			}
		}
	}
	return nil
}

// Path follows first children by their names.
func (e *Element) Path(names ...string) *Element {
	for _, n := range names {
		e = e.Child(n)
	}
	return e
}

// Val is the attribute val of a child.
func (e *Element) Val(name string) string { return e.Child(name).Attr("val") }

// On says whether a switch such as w:b is there and not turned off.
func (e *Element) On(name string) bool {
	c := e.Child(name)
	switch c.Attr("val") {
	case "0", "false", "off", "none":
		return false
	}
	return c != nil
}

// Content is the text straight inside an element.
func (e *Element) Content() string {
	if e == nil {
		return ""
	}
	if len(e.Children) == 1 {
		return e.Children[0].Text
	}
	var b strings.Builder
	for _, c := range e.Children {
		b.WriteString(c.Text)
	}
	return b.String()
}

// Parse reads XML. Document types, and with them entities, are refused.
func Parse(data []byte, texts ...string) (*Element, error) {
	d := xml.NewDecoder(bytes.NewReader(data))
	d.CharsetReader = func(name string, in io.Reader) (io.Reader, error) {
		if !strings.EqualFold(name, "utf-8") && !strings.EqualFold(name, "us-ascii") {
			return nil, fmt.Errorf("its XML is in %.20q and not in UTF-8", name)
		}
		return in, nil
	}
	stack := []*Element{{}}
	for count := 0; ; {
		from := int(d.InputOffset())
		token, err := d.Token()
		if errors.Is(err, io.EOF) {
			break
		} else if err != nil {
			return nil, err
		}
		top := stack[len(stack)-1]
		switch t := token.(type) {
		case xml.Directive:
			return nil, errors.New("its XML has a document type, which no word processor writes")
		case xml.StartElement:
			if count++; count > MaxElements {
				return nil, fmt.Errorf("%w: more than %d elements of XML; cut it into several", ErrTooLarge, MaxElements)
			}
			if len(stack) > MaxDepth {
				return nil, fmt.Errorf("%w: XML nested more than %d deep", ErrTooLarge, MaxDepth)
			}
			e := &Element{Name: t.Name.Local, Attrs: t.Attr, At: Span{From: from, Inside: int(d.InputOffset())}, texts: top.texts || slices.Contains(texts, t.Name.Local)}
			top.Children = append(top.Children, e)
			stack = append(stack, e)
		case xml.EndElement:
			top.At.Stop, top.At.To = from, int(d.InputOffset())
			stack = stack[:len(stack)-1]
		case xml.CharData:
			if top.texts && utf8.Valid(t) {
				if count++; count > MaxElements {
					return nil, fmt.Errorf("%w: more than %d pieces of XML; cut it into several", ErrTooLarge, MaxElements)
				}
				top.Children = append(top.Children, &Element{Text: string(t)})
			}
		}
	}
	if len(stack[0].Children) == 0 {
		return nil, errors.New("it is empty")
	}
	return stack[0].Children[0], nil
}

// All are the elements inside, none when there is no element.
func (e *Element) All() []*Element {
	if e == nil {
		return nil
	}
	return e.Children
}
