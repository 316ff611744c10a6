package feedback

import (
	"strconv"
	"strings"

	"plait.example/internal/format/sheet"
	"plait.example/internal/format/table"
)

// Sheet is the table of the class as a workbook: the class, the faults, what to
// teach again, what the room is short of, and every finding with its answer.
func (c Class) Sheet() ([]byte, error) {
	return sheet.Write([]sheet.Page{c.classPage(), c.faultPage(), c.againPage(), c.roomPage(), c.findingPage()}, Mark)
}

// grid is rows of texts as a table with one row of headings.
func grid(name string, head []string, rows [][]string) table.Table {
	t := table.Table{Name: name, Header: 1}
	for i, texts := range append([][]string{head}, rows...) {
		var row []table.Cell
		for _, text := range texts {
			cell := table.Cell{Span: 1, Down: 1, Clock: -1}
			for _, line := range strings.Split(text, "\n") {
				cell.Lines = append(cell.Lines, table.Line{{Text: line, Bold: i == 0}})
			}
			row = append(row, cell)
		}
		t.Rows = append(t.Rows, row)
	}
	return t
}

func (c Class) classPage() sheet.Page {
	second := false
	for _, p := range c.Pupils {
		second = second || p.Second
	}
	head := []string{"Who", "File", "Rows", "From", "To", "Steps found", "Steps in all", "Stops the cook", "Costs marks", "Small", "Ask first"}
	if second {
		head = append(head, "Mended", "Still there", "New")
	}
	var rows [][]string
	for _, p := range c.Pupils {
		row := []string{
			p.Who, p.File, strconv.Itoa(p.Rows), p.Begins, p.Ends, strconv.Itoa(p.Found), strconv.Itoa(p.Steps),
			strconv.Itoa(p.Stops), strconv.Itoa(p.Marks), strconv.Itoa(p.Polish), p.Main,
		}
		switch {
		case p.Second:
			row = append(row, strconv.Itoa(p.Mended), strconv.Itoa(p.Still), strconv.Itoa(p.Newer))
		case second:
			row = append(row, "", "", "")
		}
		rows = append(rows, row)
	}
	for _, u := range c.Unread {
		row := make([]string, len(head))
		row[0], row[1], row[10] = "could not be read", u.File, u.Why
		rows = append(rows, row)
	}
	return sheet.Page{Table: grid("Class", head, rows)}
}

func (c Class) faultPage() sheet.Page {
	var rows [][]string
	for _, f := range c.Faults {
		number := ""
		if f.Number > 0 {
			number = strconv.Itoa(f.Number)
		}
		rows = append(rows, []string{f.Rule, number, f.Family, string(f.Severity), strconv.Itoa(len(f.Pupils)), strconv.Itoa(len(c.Pupils)), f.Question, strings.Join(f.Pupils, ", ")})
	}
	return sheet.Page{Table: grid("Faults", []string{"Fault", "Number", "Family", "Severity", "Pupils", "Of", "Question", "Who"}, rows)}
}

func (c Class) againPage() sheet.Page {
	var rows [][]string
	for _, t := range c.Again {
		rows = append(rows, []string{t.What, t.Family, strings.Join(t.Rules, ", "), strconv.Itoa(t.Pupils), strconv.Itoa(len(c.Pupils))})
	}
	for _, caution := range Cautions {
		rows = append(rows, []string{caution, "", "", "", ""})
	}
	return sheet.Page{Table: grid("Teach again", []string{"What", "Family", "Faults", "Pupils, up to", "Of"}, rows)}
}

// roomPage says when the class's plans together want more than the room has.
func (c Class) roomPage() sheet.Page {
	var rows [][]string
	for _, b := range c.Busy {
		have := "not known"
		if b.Have > 0 {
			have = strconv.Itoa(b.Have)
		}
		rows = append(rows, []string{string(b.Kit), b.From.String(), b.Until.String(), strconv.Itoa(b.Most), have, strings.Join(b.Names(), "\n")})
	}
	return sheet.Page{Table: grid("Room", []string{"What", "From", "Until", "Wanted at once", "The room has", "Who, and when"}, rows)}
}

func (c Class) findingPage() sheet.Page {
	var rows [][]string
	for _, p := range c.Pupils {
		for _, f := range p.findings {
			row, minutes := "", ""
			if f.Row > 0 {
				row = strconv.Itoa(f.Row)
			}
			if f.Minutes > 0 {
				minutes = strconv.Itoa(f.Minutes)
			}
			rows = append(rows, []string{p.Who, row, f.Dish, string(f.Severity), f.Rule, f.Evidence, f.Question, f.Answer, minutes})
		}
	}
	return sheet.Page{Table: grid("Findings", []string{"Who", "Row", "Dish", "Severity", "Fault", "What was seen", "Question", "Answer (teacher)", "Minutes"}, rows)}
}
