package written

import (
	"regexp"
	"strings"

	"plait.example/internal/format/table"
)

// field is a label with what it says: "Time: 9.05", alone on a line or in a row of two cells.
type field struct {
	role        role
	label       string
	lines       []table.Line
	table, line int
}

var labelled = regexp.MustCompile(`^[\s*•-]*([A-Za-z][A-Za-z &/,']{1,38}?)\s*:\s*\S`)

// cards reads a plan that has for each job a card of labels: "Time: 9.05", "Dish:
// Quiche", "Task: rub in". False when there are fewer than two.
func (r *reader) cards(blocks []table.Block) bool {
	fields, others := fieldsOf(blocks)
	times, works := 0, 0
	for _, f := range fields {
		if _, is := readStamp(f.text()); is && f.role == timeRole {
			times++
		} else if f.role == textRole {
			works++
		}
	}
	if times < 2 || works < 2 {
		return false
	}
	for _, text := range others {
		r.other(text)
	}
	t := tableReader{r: r}
	var card []field
	for i, f := range fields {
		if i > 0 && f.label == fields[0].label {
			t.card(card)
			card = nil
		}
		card = append(card, f)
	}
	t.card(card)
	return true
}

func (f field) text() string { return entry{lines: f.lines}.text() }

// fieldsOf finds the labels that are headings of a plan's columns, and what else there is.
func fieldsOf(blocks []table.Block) (fields []field, others []string) {
	index := -1
	for i, b := range blocks {
		if b.Table == nil {
			text := kept(b.Line)
			if m := labelled.FindStringSubmatchIndex(text); m != nil && roleOf(text[m[2]:m[3]]) != noRole {
				label := text[m[2]:m[3]]
				rest := cutLine(b.Line, m[1]-1)
				fields = append(fields, field{roleOf(label), label, []table.Line{rest}, -1, i})
			} else {
				others = append(others, lineText(b))
			}
			continue
		}
		index++
		g := newGrid(b.Table)
		others = append(others, b.Table.Name)
		for row := range g.rows {
			label := strings.Trim(g.words(row, 0), " :")
			if role := roleOf(label); g.width == 2 && role != noRole && g.words(row, 1) != "" && len(label) <= 40 {
				fields = append(fields, field{role, label, g.cell(row, 1).Lines, index, row})
			} else {
				others = append(others, g.line(row))
			}
		}
	}
	return fields, others
}

// card makes an entry of the fields of one card.
func (t *tableReader) card(fields []field) {
	if len(fields) == 0 {
		return
	}
	e := entry{table: fields[0].table, line: fields[0].line, mode: clockMode}
	for _, f := range fields {
		text := f.text()
		st, timed := readStamp(strings.ReplaceAll(text, "\n", " "))
		switch {
		case f.role == timeRole && timed && e.written == "":
			e.stamp, e.written = st, text
		case f.role == untilRole && timed && e.until.kind == noStamp:
			e.until = st
			e.beside(text)
		case f.role == minutesRole && timed:
			e.minutes = max(st.number, st.last, st.minutes)
			e.beside(text)
		case f.role == textRole:
			e.lines = append(e.lines, f.lines...)
			e.table, e.line = f.table, f.line
			continue
		case f.role == dishRole:
			e.dishes = append(e.dishes, t.r.named(text)...)
			e.beside(text)
		case f.role == pointsRole:
			e.points = append(e.points, text)
		default:
			e.beside(f.label + ": " + text)
		}
		e.beside(struck(f.lines))
	}
	t.colour(&e, table.Cell{})
	t.add(e)
}
