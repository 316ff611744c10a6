package sheet

import (
	"bytes"
	"fmt"
	"regexp"
	"strconv"
	"strings"
	"unicode/utf8"

	"github.com/xuri/excelize/v2"

	"plait.example/internal/format/table"
)

// Page is a sheet to be written: its name and cells from a table, whose header
// rows stay in view and are printed on each page.
type Page struct {
	Table  table.Table
	Widths []float64 // of columns, in characters; where there is none, by the words, from 6 to 50
}

// Write makes a workbook. Whole numbers are written as numbers and cells with a
// Clock as times; all else is text, so that no words become a formula. The
// error is that of packing. Keywords stand in its properties.
func Write(pages []Page, keywords ...string) ([]byte, error) {
	f := excelize.NewFile()
	defer f.Close()
	w := writer{file: f, looks: map[form]int{}}
	names := map[string]bool{}
	for i, p := range pages {
		name := sheetName(p.Table.Name, i, names)
		if i == 0 {
			w.err = f.SetSheetName("Sheet1", name)
		} else if _, err := f.NewSheet(name); err != nil {
			w.err = err
		}
		w.page(name, p)
	}
	if len(keywords) > 0 {
		w.do(f.SetDocProps(&excelize.DocProperties{Keywords: strings.Join(keywords, " ")}))
	}
	if w.err != nil {
		return nil, fmt.Errorf("write workbook: %w", w.err)
	}
	var b bytes.Buffer
	if err := f.Write(&b); err != nil {
		return nil, fmt.Errorf("write workbook: %w", err)
	}
	return b.Bytes(), nil
}

// sheetName is a name that a sheet may have: at most 31 characters, none of
// them a sign of references, not one that another sheet has.
func sheetName(name string, i int, taken map[string]bool) string {
	name = strings.Trim(strings.Map(func(r rune) rune {
		if strings.ContainsRune(`:\/?*[]`, r) || r < ' ' || r == utf8.RuneError {
			return ' '
		}
		return r
	}, name), "' ")
	if name == "" {
		name = "Sheet " + strconv.Itoa(i+1)
	}
	short := clip(name, 31)
	for n := 2; taken[strings.ToLower(short)]; n++ {
		end := " " + strconv.Itoa(n)
		short = clip(name, 31-len(end)) + end
	}
	taken[strings.ToLower(short)] = true
	return short
}

// clip cuts a name to so many units of UTF-16, in which programs count.
func clip(name string, most int) string {
	n := 0
	for i, r := range name {
		if n++; r > 0xFFFF {
			n++
		}
		if n > most {
			return strings.TrimSpace(name[:i])
		}
	}
	return name
}

// form is what a cell's style is made of.
type form struct {
	shade, ink                        string
	bold, italic, struck, head, clock bool
}

type writer struct {
	file  *excelize.File
	looks map[form]int
	err   error
}

// do keeps the first error.
func (w *writer) do(err error) {
	if w.err == nil {
		w.err = err
	}
}

func (w *writer) page(name string, p Page) {
	for i, row := range p.Table.Rows {
		for at, c := range row {
			if w.err != nil {
				return
			}
			if c.Down > 0 {
				w.cell(name, i, at, c, i < p.Table.Header)
			}
		}
	}
	if len(p.Table.Rows) > 0 {
		w.heights(name, p.Table, w.widths(name, p))
	}
	w.paper(name)
	header := min(p.Table.Header, len(p.Table.Rows))
	if header == 0 || w.err != nil {
		return
	}
	below := ref(header, 0)
	w.do(w.file.SetPanes(name, &excelize.Panes{Freeze: true, YSplit: header, TopLeftCell: below, ActivePane: "bottomLeft", Selection: []excelize.Selection{{SQRef: below, ActiveCell: below, Pane: "bottomLeft"}}}))
	w.do(w.file.SetDefinedName(&excelize.DefinedName{Name: "_xlnm.Print_Titles", RefersTo: "'" + strings.ReplaceAll(name, "'", "''") + "'!$1:$" + strconv.Itoa(header), Scope: name}))
}

// ref is a reference such as B12 to a row and column from 0.
func ref(row, column int) string {
	name, err := excelize.CoordinatesToCellName(column+1, row+1)
	if err != nil {
		return "A1"
	}
	return name
}

// widths sets the widths of columns.
func (w *writer) widths(name string, p Page) []float64 {
	list := make([]float64, len(p.Table.Rows[0]))
	for at := range list {
		list[at] = 6
		if at < len(p.Widths) && p.Widths[at] > 0 {
			list[at] = min(p.Widths[at], 250)
		} else {
			for _, row := range p.Table.Rows {
				if at < len(row) && row[at].Span == 1 {
					for _, l := range row[at].Lines {
						list[at] = max(list[at], min(float64(utf8.RuneCountInString(l.Text()))+2, 50))
					}
				}
			}
		}
		column, err := excelize.ColumnNumberToName(at + 1)
		w.do(err)
		w.do(w.file.SetColWidth(name, column, column, list[at]))
	}
	return list
}

// lineHeight is that of a line of the usual letters, in points.
const lineHeight = 15

// heights gives the rows room for their lines, which not every program does by
// itself.
func (w *writer) heights(name string, t table.Table, widths []float64) {
	for i, row := range t.Rows {
		lines := 1
		for at, c := range row {
			room := 0.0
			for k := at; k < min(at+c.Span, len(widths)); k++ {
				room += widths[k]
			}
			need := 0
			for _, l := range c.Lines {
				need += 1 + int(float64(utf8.RuneCountInString(l.Text()))/max(room-1, 1))
			}
			if c.Down == 1 {
				lines = max(lines, need)
			}
		}
		if lines > 1 {
			w.do(w.file.SetRowHeight(name, i+1, float64(min(lineHeight*lines, 400))))
		}
	}
}

// paper prints the sheet across A4, as wide as the page.
func (w *writer) paper(name string) {
	fit, size, wide, high := true, 9, 1, 0
	across := "landscape"
	w.do(w.file.SetSheetProps(name, &excelize.SheetPropsOptions{FitToPage: &fit}))
	w.do(w.file.SetPageLayout(name, &excelize.PageLayoutOptions{Size: &size, Orientation: &across, FitToWidth: &wide, FitToHeight: &high}))
}

var whole = regexp.MustCompile(`^(?:0|-?[1-9][0-9]{0,8})$`)

func (w *writer) cell(name string, row, column int, c table.Cell, head bool) {
	at := ref(row, column)
	f := form{shade: table.Colour(c.Shade), head: head, bold: head, clock: c.Clock >= 0}
	var pieces []table.Piece
	for i, l := range c.Lines {
		for k, p := range l {
			if i > 0 && k == 0 {
				p.Text = "\n" + p.Text
			}
			p.Text = written(p.Text)
			pieces = append(pieces, p)
		}
	}
	if len(pieces) == 1 {
		p := pieces[0]
		f.ink, f.bold, f.italic, f.struck = table.Colour(p.Ink), f.bold || p.Bold, p.Italic, p.Struck
	}
	text := written(c.Text())
	switch number, err := strconv.Atoi(text); {
	case c.Clock >= 0:
		w.do(w.file.SetCellFloat(name, at, float64(c.Clock)/1440, -1, 64))
	case whole.MatchString(text) && err == nil:
		w.do(w.file.SetCellInt(name, at, int64(number)))
	case len(pieces) > 1:
		w.do(w.file.SetCellRichText(name, at, runs(pieces)))
	case text != "":
		w.do(w.file.SetCellStr(name, at, text))
	}
	last := ref(row+max(c.Down, 1)-1, column+max(c.Span, 1)-1)
	if last != at {
		w.do(w.file.MergeCell(name, at, last))
	}
	w.do(w.file.SetCellStyle(name, at, last, w.look(f)))
}

// longest is how many characters a cell holds.
const longest = 32767

// written is a text as XML and a cell can hold it.
func written(s string) string {
	s = strings.Map(func(r rune) rune {
		if r < ' ' && r != '\t' && r != '\n' || r == 0xFFFE || r == 0xFFFF || r == utf8.RuneError {
			return -1
		}
		return r
	}, s)
	return clip(s, longest)
}

func runs(pieces []table.Piece) []excelize.RichTextRun {
	list := make([]excelize.RichTextRun, len(pieces))
	for i, p := range pieces {
		list[i] = excelize.RichTextRun{Text: p.Text}
		if p.Bold || p.Italic || p.Struck || p.Ink != "" {
			list[i].Font = &excelize.Font{Bold: p.Bold, Italic: p.Italic, Strike: p.Struck, Color: table.Colour(p.Ink)}
		}
	}
	return list
}

func (w *writer) look(f form) int {
	id, known := w.looks[f]
	if known {
		return id
	}
	s := &excelize.Style{Alignment: &excelize.Alignment{WrapText: true, Vertical: "top"}, Font: &excelize.Font{Bold: f.bold, Italic: f.italic, Strike: f.struck, Color: f.ink}}
	if f.shade != "" {
		s.Fill = excelize.Fill{Type: "pattern", Pattern: 1, Color: []string{f.shade}}
	}
	if f.head {
		s.Border = []excelize.Border{{Type: "bottom", Style: 1, Color: "808080"}}
	}
	if f.clock {
		code := "hh:mm"
		s.CustomNumFmt = &code
	}
	id, err := w.file.NewStyle(s)
	w.do(err)
	w.looks[f] = id
	return id
}
