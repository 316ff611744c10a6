package docx

import (
	"strconv"
	"strings"
)

// style is what a style says of lists, headings and colours.
type style struct {
	name    string
	based   string
	outline int // level from 0; -1: none said
	numID   string
	level   int
	ink     Run // the colours and signs that it gives to letters
}

type styles map[string]style

// styles reads word/styles.xml; a document may have none.
func (p pack) styles() (styles, error) {
	root, err := p.part("word/styles.xml")
	if err != nil || root == nil {
		return nil, err
	}
	all := styles{}
	for _, s := range root.Children {
		if s.Name != "style" || s.Attr("type") != "paragraph" && s.Attr("type") != "character" {
			continue
		}
		one := style{name: s.Val("name"), based: s.Val("basedOn"), outline: -1, ink: inked(s.Child("rPr"))}
		format := s.Child("pPr")
		if n, err := strconv.Atoi(format.Val("outlineLvl")); err == nil && n >= 0 && n < 9 {
			one.outline = n
		}
		one.numID = format.Path("numPr", "numId").Attr("val")
		one.level, _ = strconv.Atoi(format.Path("numPr", "ilvl").Attr("val"))
		if s.Attr("default") == "1" && s.Attr("type") == "paragraph" {
			all[""] = one
		}
		all[s.Attr("styleId")] = one
	}
	return all, nil
}

// chain calls visit for a style and those it is based on, until visit says no.
func (s styles) chain(id string, visit func(style) bool) {
	for range 20 { // no document bases styles deeper, and a ring ends
		one, known := s[id]
		if !known || !visit(one) || one.based == "" {
			return
		}
		id = one.based
	}
}

// heading is the level of heading that a style makes, 0 for none.
func (s styles) heading(id string) (level int) {
	if s[id].name == "" {
		return headingName(id) // a document without its styles
	}
	s.chain(id, func(one style) bool {
		level = headingName(one.name)
		if level == 0 && one.outline >= 0 {
			level = one.outline + 1
		}
		return level == 0
	})
	return level
}

func headingName(name string) int {
	name = strings.ToLower(name)
	if name == "title" {
		return 1
	}
	rest, has := strings.CutPrefix(name, "heading")
	if n, err := strconv.Atoi(strings.TrimSpace(rest)); has && err == nil && n >= 1 && n <= 9 {
		return n
	}
	return 0
}

// list is the list that a style puts its paragraphs in.
func (s styles) list(id string) (numID string, level int) {
	s.chain(id, func(one style) bool {
		numID, level = one.numID, one.level
		return numID == ""
	})
	return numID, level
}

// colours is the ink and the shade that a style gives to letters.
func (s styles) colours(id string) (ink, shade string) {
	if id == "" {
		return "", ""
	}
	s.chain(id, func(one style) bool {
		if ink == "" {
			ink = one.ink.Colour
		}
		if shade == "" {
			shade = one.ink.Shade
		}
		return ink == "" || shade == ""
	})
	return ink, shade
}
