package webpage

import (
	"strconv"
	"strings"

	"plait.example/internal/format/table"
)

// look is how words look: what an element takes from those around it and what
// it adds.
type look struct {
	piece  table.Piece // without words
	cells  string      // the shade of a table or row, for its cells
	hidden bool
}

// look is how an element looks inside another; path are those around it.
func (r *reader) look(n *node, from look) look {
	l := from
	shade := colour(strings.ToLower(n.attribute("bgcolor")))
	l.tag(n)
	for _, d := range append(r.sheet.of(n, r.path), declarations(n.attribute("style"))...) {
		switch d.property {
		case "background", "background-color":
			shade = colour(d.value)
		default:
			l.declare(d)
		}
	}
	shade = table.Shade(shade)
	switch n.tag {
	case "html", "body":
	case "table", "thead", "tbody", "tfoot", "tr":
		if shade != "" {
			l.cells = shade
		}
	case "td", "th":
		if shade != "" {
			l.cells = shade
		}
		l.piece.Shade = ""
	default:
		if shade != "" {
			l.piece.Shade = shade
		}
	}
	return l
}

// tag is what the element means by itself (HTML Standard, 15.3).
func (l *look) tag(n *node) {
	switch n.tag {
	case "b", "strong", "th", "h1", "h2", "h3", "h4", "h5", "h6":
		l.piece.Bold = true
	case "i", "em", "cite", "dfn":
		l.piece.Italic = true
	case "s", "strike", "del":
		l.piece.Struck = true
	case "mark":
		l.piece.Shade = "FFFF00"
	case "font":
		if ink := colour(strings.ToLower(n.attribute("color"))); ink != "" {
			l.piece.Ink = table.Ink(ink)
		}
	}
}

func (l *look) declare(d declaration) {
	switch d.property {
	case "color":
		if ink := colour(d.value); ink != "" {
			l.piece.Ink = table.Ink(ink)
		}
	case "font-weight":
		n, err := strconv.Atoi(d.value)
		l.piece.Bold = d.value == "bold" || d.value == "bolder" || err == nil && n >= 600
	case "font-style":
		l.piece.Italic = d.value == "italic" || d.value == "oblique"
	case "text-decoration", "text-decoration-line":
		l.piece.Struck = l.piece.Struck || strings.Contains(d.value, "line-through")
	case "display":
		l.hidden = l.hidden || d.value == "none"
	case "visibility":
		l.hidden = l.hidden || d.value == "hidden" || d.value == "collapse"
	}
}
