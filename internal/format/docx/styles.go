package docx

import (
	"strconv"
	"strings"
)

// style is what a paragraph's style says of lists and headings.
type style struct {
	name    string
	based   string
	outline int // level from 0; -1: none said
	numID   string
	level   int
}

type styles map[string]style

// styles reads word/styles.xml; a document may have none.
func (p pack) styles() (styles, error) {
	root, err := p.part("word/styles.xml")
	if err != nil || root == nil {
		return nil, err
	}
	all := styles{}
	for _, s := range root.children {
		if s.name != "style" || s.attr("type") != "paragraph" {
			continue
		}
		one := style{name: s.val("name"), based: s.val("basedOn"), outline: -1}
		format := s.child("pPr")
		if n, err := strconv.Atoi(format.val("outlineLvl")); err == nil && n >= 0 && n < 9 {
			one.outline = n
		}
		one.numID = format.path("numPr", "numId").attr("val")
		one.level, _ = strconv.Atoi(format.path("numPr", "ilvl").attr("val"))
		if s.attr("default") == "1" {
			all[""] = one
		}
		all[s.attr("styleId")] = one
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
