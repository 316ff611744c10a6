// Package sheet reads and writes spreadsheets in the format of Office Open XML
// (.xlsx, ECMA-376): what cells show, their colours, merged cells, times. Of a
// formula the value that was saved is read, and nothing is computed. Reading
// opens no part but those it needs, follows no link and runs no macro. It knows
// nothing of what the cells say.
package sheet

import (
	"errors"
	"fmt"

	"plait.example/internal/format/packed"
	"plait.example/internal/format/table"
)

// ErrNotSheet is wrapped by the refusal of a file that is no workbook.
var ErrNotSheet = errors.New("the file is not a spreadsheet")

// Workbook is the sheets that say something, in their order.
type Workbook struct {
	Tables []table.Table
	Notes  []string // what a reader should know of how it was read, such as hidden rows
}

// Read reads a workbook. The error wraps packed.ErrTooLarge, packed.ErrDamaged,
// table.ErrTooLarge or ErrNotSheet.
func Read(data []byte) (Workbook, error) {
	p, err := packed.Open(data)
	if err != nil {
		return Workbook{}, err
	}
	name, err := p.Main("xl/workbook.xml")
	if err != nil {
		return Workbook{}, err
	}
	main, err := p.Part(name, "definedName")
	if err != nil {
		return Workbook{}, err
	}
	if main == nil || main.Name != "workbook" {
		return Workbook{}, fmt.Errorf("%w; save it as .xlsx", ErrNotSheet)
	}
	related, err := p.Related(name)
	if err != nil {
		return Workbook{}, err
	}
	b := book{Pack: p, titles: titles(main), from1904: main.Child("workbookPr").Attr("date1904") == "1" || main.Child("workbookPr").Attr("date1904") == "true"}
	if err := b.shared(related); err != nil {
		return Workbook{}, err
	}
	return b.sheets(main, related)
}

// book is what the sheets of a workbook share.
type book struct {
	packed.Pack
	styles
	strings  []table.Line
	titles   map[string]int // rows that are printed on each page, by the number of the sheet
	from1904 bool
	unsaved  int // formulas of the sheet that is being read whose value was not saved
	notes    []string
}

// shared reads the parts that all sheets point into.
func (b *book) shared(related map[string]packed.Relation) error {
	parts := map[string]string{}
	for _, r := range related {
		if r.Type == "theme" || r.Type == "styles" || r.Type == "sharedStrings" {
			parts[r.Type] = r.Part
		}
	}
	theme, err := b.Part(parts["theme"])
	if err != nil {
		return err
	}
	look, err := b.Part(parts["styles"])
	if err != nil {
		return err
	}
	b.styles = stylesOf(theme, look)
	texts, err := b.Part(parts["sharedStrings"], "t")
	if err != nil || texts == nil {
		return err
	}
	for _, si := range texts.Children {
		if si.Name == "si" {
			b.strings = append(b.strings, b.rich(si))
		}
	}
	return nil
}

func (b *book) sheets(main *packed.Element, related map[string]packed.Relation) (w Workbook, err error) {
	for i, s := range main.Child("sheets").All() {
		to := related[s.Attr("id")]
		if to.Type != "worksheet" {
			continue
		}
		if state := s.Attr("state"); state == "hidden" || state == "veryHidden" {
			b.notes = append(b.notes, fmt.Sprintf("sheet %q is hidden and was left out", s.Attr("name")))
			continue
		}
		root, err := b.Part(to.Part, "t", "v")
		if err != nil {
			return Workbook{}, err
		}
		if root == nil {
			continue
		}
		t, err := b.table(s.Attr("name"), root)
		if err != nil {
			return Workbook{}, fmt.Errorf("sheet %q: %w", s.Attr("name"), err)
		}
		if t.Header == 0 {
			t.Header = b.titles[fmt.Sprint(i)]
		}
		if t.Header = min(t.Header, len(t.Rows)); len(t.Rows) > 0 {
			w.Tables = append(w.Tables, t)
		}
	}
	w.Notes = b.notes
	return w, nil
}
