package app

import (
	"fmt"
	"slices"

	"plait.example/internal/paper"
	"plait.example/internal/practical"
	"plait.example/internal/timeplan"
)

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
type Sheet = paper.Sheet

// Paper writes a plan in a format. An unknown format is a fault.
func (a *App) Paper(p *timeplan.Plan, f Format, s Sheet) (Document, error) {
	write, known := map[Format]func() ([]byte, error){
		Text: func() ([]byte, error) { return paper.Text(p), nil },
		JSON: func() ([]byte, error) { return paper.JSON(p) },
		HTML: func() ([]byte, error) { return paper.HTML(p, s) },
		PDF:  func() ([]byte, error) { return paper.PDF(p, s) },
	}[f]
	if !known {
		return Document{}, practical.Fault{
			Code: practical.Invalid, Field: "format", Message: fmt.Sprintf("there is no format %q", f), Hint: "text, json, html or pdf",
		}
	}
	data, err := write()
	if err != nil {
		return Document{}, fmt.Errorf("write the plan as %s: %w", f, err)
	}
	as := documents[f]
	return Document{Name: fileName(p.Title) + as.suffix, MediaType: as.mediaType, Data: data}, nil
}

var documents = map[Format]struct{ suffix, mediaType string }{
	Text: {".txt", "text/plain; charset=utf-8"},
	JSON: {".json", "application/json"},
	HTML: {".html", "text/html; charset=utf-8"},
	PDF:  {".pdf", "application/pdf"},
}

// Schema is the JSON Schema (2020-12) of "practical" (the practical file),
// "plan" (the plan as JSON), "recipes" (what was read of recipes as JSON) or
// "checks" (what a check of written plans found, as JSON).
func (a *App) Schema(of string) ([]byte, error) {
	switch of {
	case "practical":
		return practical.Schema(), nil
	case "plan":
		return paper.Schema(), nil
	case "recipes":
		return slices.Clone(recipesSchema), nil
	case "checks":
		return slices.Clone(checksSchema), nil
	}
	return nil, practical.Fault{
		Code: practical.NotFound, Field: "schema", Message: fmt.Sprintf("there is no schema of %q", of), Hint: "practical, plan, recipes or checks",
	}
}
