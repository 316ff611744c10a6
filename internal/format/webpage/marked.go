package webpage

import "strings"

// syntax is how a page marks properties on its elements.
type syntax struct {
	property string                       // attribute that names the property
	types    func(*node) ([]string, bool) // types of the item that an element begins, and whether it begins one
}

// microdata: HTML Standard, section 5.
var microdata = syntax{"itemprop", func(n *node) ([]string, bool) {
	_, is := n.get("itemscope")
	return typeNames(n.attribute("itemtype")), is
}}

// rdfa: RDFa Lite 1.1 (vocab, typeof, property), as far as schema.org's examples use it.
var rdfa = syntax{"property", func(n *node) ([]string, bool) {
	value, is := n.get("typeof")
	return typeNames(value), is
}}

// typeNames are the names of types without the vocabulary's address or prefix.
func typeNames(list string) (names []string) {
	for _, t := range strings.Fields(list) {
		t = strings.TrimRight(t, "/#")
		names = append(names, t[strings.LastIndexAny(t, "/#:")+1:])
	}
	return names
}

// marked is every item of the page that no other holds, in microdata and in RDFa.
func marked(root *node) (items []any) {
	ids := map[string]*node{}
	root.each(func(n *node) bool {
		if id := n.attribute("id"); id != "" && ids[id] == nil {
			ids[id] = n
		}
		return true
	})
	for _, s := range []syntax{microdata, rdfa} {
		m := marker{s, ids, MaxElements}
		root.each(func(n *node) bool {
			types, is := s.types(n)
			if _, property := n.get(s.property); !is || property && s.property == "itemprop" {
				return true
			}
			items = append(items, m.item(n, types))
			return !is
		})
	}
	return items
}

// marker reads items. Elements named by itemref are read again for every item
// that names them, so what is read has a limit.
type marker struct {
	syntax
	ids  map[string]*node
	left int // elements that may still be read
}

func (m *marker) item(n *node, types []string) object {
	o := object{"@type": types}
	for _, c := range n.children {
		m.gather(c, o)
	}
	for _, id := range strings.Fields(n.attribute("itemref")) {
		if at := m.ids[id]; at != nil && m.property == microdata.property && !contains(at, n) {
			m.gather(at, o)
		}
	}
	return o
}

// contains says whether an element is, or holds, another.
func contains(outer, inner *node) (found bool) {
	outer.each(func(n *node) bool {
		found = found || n == inner
		return !found
	})
	return found
}

// gather adds the properties that an element and what is in it give to an item.
func (m *marker) gather(n *node, o object) {
	if m.left--; n.tag == "" && n.children == nil || m.left < 0 {
		return
	}
	types, begins := m.types(n)
	names := typeNames(n.attribute(m.property))
	if len(names) > 0 {
		var value any
		if begins {
			value = m.item(n, types)
		} else {
			value = valueOf(n)
		}
		for _, name := range names {
			list, _ := o[name].([]any)
			o[name] = append(list, value)
		}
	}
	if begins {
		return
	}
	for _, c := range n.children {
		m.gather(c, o)
	}
}

// valueOf is the value of a property that is not an item (HTML Standard, 5.2.4; "content" on any element as RDFa has it).
func valueOf(n *node) string {
	if content, has := n.get("content"); has {
		return content
	}
	key := map[string]string{"a": "href", "link": "href", "area": "href", "img": "src", "source": "src", "data": "value", "meter": "value", "time": "datetime"}[n.tag]
	if value, has := n.get(key); has && key != "" {
		return value
	}
	var w writer
	for _, c := range n.children { // not the element itself, which may be a heading or an item of a list
		w.write(c)
	}
	return w.text()
}
