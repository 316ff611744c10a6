package web

import (
	"bytes"
	"fmt"
	"html/template"
	"sync"

	"plait.example/internal/colour"
)

// shapes are the outlines of the dishes' marks in a box of 16 by 16.
var shapes = map[colour.Shape]string{
	colour.Circle:   `<circle cx="8" cy="8" r="7"/>`,
	colour.Square:   `<rect x="1.5" y="1.5" width="13" height="13"/>`,
	colour.Triangle: `<path d="M8 1 15.5 15H.5z"/>`,
	colour.Diamond:  `<path d="M8 .5 15.5 8 8 15.5.5 8z"/>`,
	colour.Hexagon:  `<path d="M4.3 1.5h7.4L15.5 8l-3.8 6.5H4.3L.5 8z"/>`,
	colour.Shield:   `<path d="M1.5 1h13v7.5L8 15.5 1.5 8.5z"/>`,
	colour.Cross:    `<path d="M5.3.8h5.4v4.5h4.5v5.4h-4.5v4.5H5.3v-4.5H.8V5.3h4.5z"/>`,
	colour.Dome:     `<path d="M1 14.5V8a7 7 0 0 1 14 0v6.5z"/>`,
}

// shape is the mark of dish i, for eyes only: the letter always stands beside it.
func shape(i int) template.HTML {
	return template.HTML(`<svg viewBox="0 0 16 16" aria-hidden="true" focusable="false">` + shapes[colour.Ink(i).Shape] + `</svg>`) // a constant of ours
}

// Chip is a dish's mark: colour, shape and letter together.
type Chip struct {
	Letter, Name string
	Class, Edge  string // of its ground and letter; of a border at the top
	Shape        template.HTML
}

// chip is the mark of dish i.
func chip(i int, letter, name string) Chip {
	n := i % (colour.Inks * colour.Inks)
	return Chip{Letter: letter, Name: name, Class: fmt.Sprintf("ink-%d", n), Edge: fmt.Sprintf("edge-%d", n), Shape: shape(i)}
}

// inks is the style sheet of the dishes' colours.
var inks = sync.OnceValue(func() []byte {
	var b bytes.Buffer
	for i := range colour.Inks * colour.Inks {
		ink := colour.Ink(i)
		fmt.Fprintf(&b, ".ink-%d{color:%s;background-color:%s;border-color:%s}\n.cards>.edge-%d{border-top-color:%s}\n", i, ink.Text, ink.Tint, ink.Line, i, ink.Line)
	}
	return b.Bytes()
})
