package docx

import (
	"bytes"
	"encoding/xml"
	"errors"
	"fmt"
	"io"
	"strings"
	"unicode/utf8"
)

// element is an XML element by its local name; the namespaces of Word's two
// variants (transitional and strict) use the same ones.
type element struct {
	name     string
	attrs    []xml.Attr
	text     strings.Builder // character data straight inside a w:t
	children []*element
}

func (e *element) attr(local string) string {
	if e != nil {
		for _, a := range e.attrs {
			if a.Name.Local == local {
				return a.Value
			}
		}
	}
	return ""
}

// child is the first child of that name, nil when there is none or no element.
func (e *element) child(name string) *element {
	if e != nil {
		for _, c := range e.children {
			if c.name == name {
				return c
			}
		}
	}
	return nil
}

// path follows first children by their names.
func (e *element) path(names ...string) *element {
	for _, n := range names {
		e = e.child(n)
	}
	return e
}

// val is the w:val of a child.
func (e *element) val(name string) string { return e.child(name).attr("val") }

// on says whether a switch such as w:b is there and not turned off.
func (e *element) on(name string) bool {
	c := e.child(name)
	switch c.attr("val") {
	case "0", "false", "off", "none":
		return false
	}
	return c != nil
}

// parse reads XML. Document types, and with them entities, are refused.
func parse(data []byte) (*element, error) {
	d := xml.NewDecoder(bytes.NewReader(data))
	d.CharsetReader = func(name string, in io.Reader) (io.Reader, error) {
		if !strings.EqualFold(name, "utf-8") && !strings.EqualFold(name, "us-ascii") {
			return nil, fmt.Errorf("its XML is in %.20q and not in UTF-8", name)
		}
		return in, nil
	}
	stack := []*element{{}}
	for count := 0; ; {
		token, err := d.Token()
		if errors.Is(err, io.EOF) {
			break
		} else if err != nil {
			return nil, err
		}
		top := stack[len(stack)-1]
		switch t := token.(type) {
		case xml.Directive:
			return nil, errors.New("its XML has a document type, which Word never writes")
		case xml.StartElement:
			if count++; count > MaxElements {
				return nil, fmt.Errorf("%w: more than %d elements of XML; cut it into several", ErrTooLarge, MaxElements)
			}
			if len(stack) > MaxDepth {
				return nil, fmt.Errorf("%w: XML nested more than %d deep", ErrTooLarge, MaxDepth)
			}
			e := &element{name: t.Name.Local, attrs: t.Copy().Attr}
			top.children = append(top.children, e)
			stack = append(stack, e)
		case xml.EndElement:
			stack = stack[:len(stack)-1]
		case xml.CharData:
			if top.name == "t" && utf8.Valid(t) {
				top.text.Write(t)
			}
		}
	}
	if len(stack[0].children) == 0 {
		return nil, errors.New("it is empty")
	}
	return stack[0].children[0], nil
}
