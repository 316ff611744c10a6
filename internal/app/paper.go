package app

import "plait.example/internal/timeplan"

// Document is a file to give out.
type Document struct {
	Name      string // such as "year-10-practical.pdf"
	MediaType string
	Data      []byte
}

// Format is how a plan is written.
type Format string

// The formats.
const (
	Text Format = "text"
	JSON Format = "json"
	HTML Format = "html"
	PDF  Format = "pdf"
)

// Sheet is how a plan is laid out on paper.
type Sheet struct {
	Landscape, LargeType bool
	Name                 string // candidate; empty: a line to write on
}

// Paper writes a plan in a format. An unknown format is a fault.
func (a *App) Paper(p *timeplan.Plan, f Format, s Sheet) (Document, error) {
	return Document{}, nil
}

// Schema is the JSON Schema of "practical" or "plan".
func (a *App) Schema(name string) ([]byte, error) { return nil, nil }
