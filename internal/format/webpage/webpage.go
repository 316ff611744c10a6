// Package webpage reads a web page that was saved to disk: its visible text with
// headings, lists and table rows as lines, and the recipes that it describes in
// the vocabulary of schema.org, as JSON-LD, microdata or RDFa. It fetches
// nothing and runs nothing. It knows the form of a recipe's data and nothing of
// what the words in it mean.
package webpage

import (
	"errors"
	"fmt"
	"strings"

	"golang.org/x/net/html/charset"

	"plait.example/internal/format/table"
)

// Limits of a page that is read. A larger or deeper one is refused.
const (
	MaxBytes    = 16 << 20 // pages saved with their pictures inside are large
	MaxElements = 200_000
	MaxDepth    = 400 // elements inside one another
	MaxRecipes  = 200 // those beyond are left out
)

// Refusals that a caller may want to tell apart.
var (
	ErrTooLarge = errors.New("the page is too large")
	ErrTooDeep  = errors.New("the page nests its elements too deeply")
)

// Page is what a page says.
type Page struct {
	Title   string
	Text    string // visible text: "# " before headings, "- " and "1. " before list items, tabs between cells
	Recipes []Recipe
	Blocks  []table.Block // its visible text as lines and tables
}

// Recipe is a recipe as the page's data describe it. Words are as on the page,
// without markup. Minutes are 0 when they are not said.
type Recipe struct {
	Name         string
	Description  string
	Yield        string
	Ingredients  []string
	Instructions []Section
	Prep         int // minutes
	Cook         int // minutes
	Total        int // minutes
}

// Section is a part of a method; most recipes have one, without a name.
type Section struct {
	Name  string
	Steps []string
}

// Read reads a page, in the encoding that it says or shows. The error wraps
// ErrTooLarge, ErrTooDeep or table.ErrTooLarge.
func Read(data []byte) (Page, error) {
	if len(data) > MaxBytes {
		return Page{}, fmt.Errorf("%w: %d bytes, and at most %d are read; save it as \"web page, HTML only\" or copy the text", ErrTooLarge, len(data), MaxBytes)
	}
	root, err := parse(decode(data))
	if err != nil {
		return Page{}, err
	}
	p := Page{Title: title(root), Text: visibleText(root)}
	if p.Blocks, err = blocksOf(root); err != nil {
		return Page{}, err
	}
	p.Recipes = recipes(append(linked(root), marked(root)...))
	return p, nil
}

// decode is the page in UTF-8, by its byte-order mark, what it says of itself, or what it looks like.
func decode(data []byte) string {
	encoding, name, _ := charset.DetermineEncoding(data, "")
	if name == "utf-8" {
		return strings.ToValidUTF8(strings.TrimPrefix(string(data), "\uFEFF"), "\uFFFD")
	}
	text, err := encoding.NewDecoder().Bytes(data)
	if err != nil {
		text = data
	}
	return strings.ToValidUTF8(strings.TrimPrefix(string(text), "\uFEFF"), "\uFFFD")
}

func title(root *node) string {
	found := ""
	root.each(func(n *node) bool {
		if n.tag == "title" && found == "" {
			found = oneLine(n.content())
		}
		return found == "" && n.tag != "svg"
	})
	return found
}
