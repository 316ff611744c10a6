package written

import (
	"strings"

	"plait.example/internal/format/table"
)

// entry is a row as it stands in the document, before the clock and the dishes
// of all rows have been made out together.
type entry struct {
	table, line int
	written     string
	stamp       stamp
	mode        mode  // of the column of times
	base        int   // from when the column counts, in minutes after midnight, and one more; 0: the start
	shared      bool  // a time that is written once for several rows
	until       stamp // in a column of its own
	minutes     int
	dishes      []string
	section     bool // the dish is that of the heading above
	heading     bool // a time that stands over the lines under it
	earlier     bool // on a day before that of the plan
	lines       []table.Line
	points      []string
	besides     []string
	ink, shade  string
	inks        []string // of a row in several colours: each with a good part of the letters
}

// text is what is done, without what is struck out.
func (e entry) text() string {
	var lines []string
	for _, l := range e.lines {
		if t := strings.TrimSpace(kept(l)); t != "" {
			lines = append(lines, t)
		}
	}
	return strings.Join(lines, "\n")
}

// beside keeps words that have no column.
func (e *entry) beside(text string) {
	if text = strings.TrimSpace(text); text != "" {
		e.besides = append(e.besides, text)
	}
}

// tableReader reads the rows of one table.
type tableReader struct {
	r       *reader
	g       *grid
	l       layout
	index   int      // of the table
	section []string // the dish that a heading inside the table names
	above   []string // the dish of the row above, for ditto marks
	since   stamp    // the time that a heading gives for the rows under it that give none
	past    int      // the column that gives minutes past the hour of the heading above; -1: none
	hour    []option // that hour
	under   string   // that heading, when it is a time alone and holds for all of them
}

// readTable reads a table that is a plan.
func (r *reader) readTable(g *grid, l layout, index int, dish []string) {
	t := tableReader{r: r, g: g, l: l, index: index, section: dish}
	t.past = t.underHours()
	t.learnSections()
	for row := range g.rows {
		filled := g.filled(row)
		switch {
		case len(filled) == 0 && g.line(row) == "":
		case strings.Trim(g.line(row), "-=|: ") == "":
			r.other(g.line(row))
		case l.heads[row] || row < l.first:
			r.other(g.line(row))
		case r.legend(g, row, l):
			r.other(g.line(row))
		case t.isSection(row, filled):
			t.sectionRow(row, filled)
		case len(l.perDish) > 0:
			t.dishRow(row)
		default:
			t.row(row)
		}
	}
}

// row reads a row of the usual layout: one or more entries.
func (t *tableReader) row(row int) {
	whole := t.entry(row)
	if text := whole.text(); t.g.width == 1 && whole.stamp.kind == noStamp && sectionLine(text) {
		if _, _, timed := leading(text, false); !timed {
			t.r.other(t.g.line(row))
			t.r.dayOf(text)
			t.section, t.above = t.r.dishesIn(text), nil
			return
		}
	}
	times := t.timeLines(row)
	switch parts := t.splitByTimes(whole, times); {
	case len(parts) > 0:
		for _, e := range parts {
			t.add(e)
		}
	default:
		for _, e := range splitByLines(whole) {
			t.add(e)
		}
	}
}

// entry reads a row as one entry.
func (t *tableReader) entry(row int) entry {
	e := entry{table: t.index, line: row, mode: t.l.runs, base: t.l.base}
	if t.time(&e, row); t.past >= 0 {
		t.underHour(&e, row)
	}
	for _, c := range t.inOrder(t.l.text) {
		cell := t.g.cell(row, c)
		e.lines = append(e.lines, cell.Lines...)
		if cell.Shade != "" && e.shade == "" {
			e.shade = cell.Shade
		}
	}
	t.beside(&e, row)
	t.sayDishes(&e, row)
	if len(t.l.text) > 0 {
		t.colour(&e, t.g.cell(row, t.l.text[0]))
	}
	return e
}

// inOrder puts columns in the order of the page.
func (t *tableReader) inOrder(list []int) []int { return union(list, nil) }

// time reads the cells of the clock.
func (t *tableReader) time(e *entry, row int) {
	if t.l.time >= 0 {
		cell, here := t.g.over(row, t.l.time)
		text := plain(cell)
		e.written, e.shared = strings.ReplaceAll(text, "\n", " "), !here && text != ""
		if st, ok := stampOf(cell); ok {
			e.stamp = st
			if _, rest, ok := leading(text, true); ok && rest != "" && here {
				if dish, known := t.r.find(rest); known {
					e.dishes = append(e.dishes, dish)
				}
				e.beside(rest)
			}
		}
		if here {
			e.beside(struck(cell.Lines))
		}
	}
	if t.l.until >= 0 {
		cell, here := t.g.over(row, t.l.until)
		if st, ok := stampOf(cell); ok {
			e.until = st
		}
		e.beside(struck(cell.Lines))
		if text := plain(cell); here && text != "" {
			if e.shared {
				e.beside(text)
			} else if e.written != "" {
				e.written += " - "
			}
			if !e.shared {
				e.written += text
			}
		}
	}
	if t.l.minutes >= 0 {
		cell := t.g.cell(row, t.l.minutes)
		st, ok := stampOf(cell)
		e.beside(cell.Text())
		switch {
		case ok && st.kind == clock:
			e.minutes = st.times[0].at
		case ok:
			e.minutes = max(st.number, st.last, st.minutes)
		}
	}
}

// beside reads the columns of points, and those of no use here.
func (t *tableReader) beside(e *entry, row int) {
	for _, c := range t.l.points {
		cell := t.g.cell(row, c)
		if text := plain(cell); text != "" {
			e.points = append(e.points, text)
		}
		e.beside(struck(cell.Lines))
	}
	for _, c := range t.l.besides {
		e.beside(t.g.cell(row, c).Text())
	}
}

// sayDishes reads the columns of the dish, and ticks under the dishes' names.
func (t *tableReader) sayDishes(e *entry, row int) {
	for _, c := range t.l.dish {
		cell, _ := t.g.over(row, c)
		text, tag := untagged(plain(cell))
		e.beside(tag)
		if same[strings.ToLower(text)] {
			e.dishes = append(e.dishes, t.above...)
			e.beside(text)
			continue
		}
		said := t.r.named(text)
		if said == nil || said[0] == EveryDish && !strings.EqualFold(text, EveryDish) {
			e.beside(text)
		}
		e.dishes = append(e.dishes, said...)
		e.beside(struck(cell.Lines))
		if cell.Shade != "" && e.shade == "" {
			e.shade = cell.Shade
		}
	}
	for _, c := range t.l.marks {
		if t.g.words(row, c) != "" {
			e.dishes = append(e.dishes, t.r.named(bareDish(t.l.columns[c].heading))...)
		}
		e.beside(t.g.cell(row, c).Text())
	}
	if len(e.dishes) == 0 && len(t.section) > 0 {
		e.dishes, e.section = t.section, true
	}
	if len(e.dishes) > 0 {
		t.above = e.dishes
	}
}

// ownTags are what plait's own paper puts beside the mark of a dish.
var ownTags = []string{"IN", "OUT", "SERVE", "WASH UP", "TURN TO", "OVEN", "GRILL", "SET-UP", "REST"}

// untagged takes such a tag from the end of a dish.
func untagged(text string) (dish, tag string) {
	for _, t := range ownTags {
		if rest, is := strings.CutSuffix(text, t); is && (rest == "" || strings.HasSuffix(rest, " ") || strings.HasSuffix(rest, "\n")) {
			return strings.TrimSpace(rest), t
		}
	}
	return text, ""
}

var same = map[string]bool{"\"": true, "''": true, "”": true, "〃": true, "ditto": true, "as above": true, "same": true, "“": true, "^": true}

// dishRow reads a row of a table in which each dish has a column.
func (t *tableReader) dishRow(row int) {
	first := true
	for _, c := range t.l.perDish {
		cell := t.g.cell(row, c)
		if plain(cell) == "" {
			t.r.other(cell.Text())
			continue
		}
		e := entry{table: t.index, line: row, mode: t.l.runs, base: t.l.base, lines: cell.Lines}
		t.time(&e, row)
		if over := within(t.l.perDish, c, cell.Span); len(over) < len(t.l.perDish) {
			for _, d := range over {
				if !shared.MatchString(t.l.columns[d].heading) {
					e.dishes = append(e.dishes, t.r.named(bareDish(t.l.columns[d].heading))...)
				}
			}
		}
		if first {
			t.beside(&e, row)
			for _, d := range t.l.dish {
				e.beside(t.g.cell(row, d).Text())
			}
		} else {
			e.besides, e.points = nil, nil
		}
		first = false
		t.colour(&e, cell)
		for _, part := range splitByLines(e) {
			t.add(part)
		}
	}
	if first {
		t.r.other(t.g.line(row))
	}
}

// bareDish is a heading such as "Dish 1: Scones" without its label.
func bareDish(heading string) string {
	if m := dishPattern.FindStringSubmatch(heading); m != nil {
		return m[2]
	}
	return heading
}

// within lists the columns that a cell covers.
func within(columns []int, c, span int) (over []int) {
	for _, d := range columns {
		if d >= c && d < c+max(span, 1) {
			over = append(over, d)
		}
	}
	return over
}

// colour finds the ink and shade of an entry.
func (t *tableReader) colour(e *entry, cell table.Cell) {
	if cell.Shade != "" {
		e.shade = cell.Shade
	}
	e.ink, e.inks = inksOf(e.lines)
	if shade := shadeOf(e.lines); e.shade == "" {
		e.shade = shade
	}
}

// add keeps an entry that says something.
func (t *tableReader) add(e entry) {
	switch {
	case e.stamp.kind != noStamp || e.written != "":
		t.since, t.under = stamp{}, ""
	case t.under != "":
		last := len(t.r.entries) - 1
		e.stamp, e.written, e.mode = t.since, t.under, clockMode
		e.shared = last >= 0 && t.r.entries[last].table == e.table && t.r.entries[last].written == t.under
	default:
		e.stamp, e.shared = t.since, t.since.kind == clock
		t.since = stamp{}
	}
	e.earlier = t.r.earlier || dayBefore.MatchString(e.written)
	if e.text() == "" {
		if e.stamp.kind == noStamp && len(e.dishes) == 0 || e.written == "" && e.section || e.shared && len(e.points) == 0 {
			t.r.leftOver(e)
			return
		}
	}
	t.r.entries = append(t.r.entries, e)
}
