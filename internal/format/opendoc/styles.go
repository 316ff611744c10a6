package opendoc

import (
	"strings"

	"plait.example/internal/format/packed"
	"plait.example/internal/format/table"
)

// style is what a style says of colours and signs; what it leaves open comes
// from its parent.
type style struct {
	parent               string
	ink, shade, cell     string // colours; "none": none in spite of the parent's
	bold, italic, struck string // "yes", "no" or "" for not said
	list                 string
}

// key of a style: names count within a family.
type key struct{ family, name string }

type styles struct {
	all   map[key]style
	lists map[string]*list
}

// stylesOf reads the styles that parts of a document hold.
func stylesOf(parts ...*packed.Element) styles {
	s := styles{map[key]style{}, map[string]*list{}}
	for _, part := range parts {
		for _, set := range []string{"styles", "automatic-styles"} {
			if e := part.Child(set); e != nil {
				s.read(e)
			}
		}
	}
	return s
}

func (s styles) read(set *packed.Element) {
	for _, e := range set.Children {
		switch e.Name {
		case "style":
			text, cell, paragraph := e.Child("text-properties"), e.Child("table-cell-properties"), e.Child("paragraph-properties")
			if e.Attr("family") == "table-row" {
				cell = e.Child("table-row-properties")
			}
			one := style{
				parent: e.Attr("parent-style-name"), list: e.Attr("list-style-name"), ink: colour(text.Attr("color")), shade: colour(text.Attr("background-color")),
				cell: colour(cell.Attr("background-color")), bold: sign(text.Attr("font-weight"), "normal"), italic: sign(text.Attr("font-style"), "normal"),
				struck: sign(text.Attr("text-line-through-style"), "none"),
			}
			if one.shade == "" {
				one.shade = colour(paragraph.Attr("background-color"))
			}
			if one.struck == "" {
				one.struck = sign(text.Attr("text-line-through-type"), "none")
			}
			s.all[key{e.Attr("family"), e.Attr("name")}] = one
		case "list-style":
			s.lists[e.Attr("name")] = listOf(e)
		}
	}
}

// colour is RRGGBB, "none" where it says that there is none, "" where it says nothing.
func colour(value string) string {
	if value == "transparent" {
		return "none"
	}
	return table.Colour(value)
}

func sign(value, no string) string {
	switch value {
	case "":
		return ""
	case no:
		return "no"
	}
	return "yes"
}

// of is a style with what it takes from its parents.
func (s styles) of(family, name string) style {
	var sum style
	for range 20 { // no document bases styles deeper, and a ring ends
		one, known := s.all[key{family, name}]
		if !known {
			break
		}
		sum = sum.under(one)
		name = one.parent
	}
	return sum
}

// under fills what a style leaves open from another.
func (s style) under(o style) style {
	for _, pair := range []struct{ own, other *string }{
		{&s.ink, &o.ink}, {&s.shade, &o.shade}, {&s.cell, &o.cell}, {&s.bold, &o.bold}, {&s.italic, &o.italic}, {&s.struck, &o.struck}, {&s.list, &o.list},
	} {
		if *pair.own == "" {
			*pair.own = *pair.other
		}
	}
	return s
}

// piece is the ink of words in a style.
func (s style) piece() table.Piece {
	return table.Piece{
		Ink: table.Ink(strings.TrimSuffix(s.ink, "none")), Shade: table.Shade(strings.TrimSuffix(s.shade, "none")),
		Bold: s.bold == "yes", Italic: s.italic == "yes", Struck: s.struck == "yes",
	}
}

// shade is the colour that a style gives to a cell.
func (s styles) shade(family, name string) string {
	return table.Shade(strings.TrimSuffix(s.of(family, name).cell, "none"))
}
