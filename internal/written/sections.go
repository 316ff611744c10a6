package written

import (
	"slices"
	"strings"

	"plait.example/internal/format/table"
)

// learnSections takes headings across the table for dishes, when no column says
// the dish: those that come again, or all where one of them says "all dishes".
func (t *tableReader) learnSections() {
	if len(t.l.dish)+len(t.l.perDish)+len(t.l.marks) > 0 {
		return
	}
	var order []string
	times, enough := map[string]int{}, 2
	for row := range t.g.rows {
		filled := t.g.filled(row)
		if row < t.l.first || t.l.heads[row] || !t.isSection(row, filled) {
			continue
		}
		text := strings.Trim(plain(t.g.cell(row, filled[0])), " .:")
		if all[strings.ToLower(text)] {
			enough = 1
		} else if _, _, timed := leading(text, true); !timed && len(text) <= 40 && !sectionWords.MatchString(text) && !doneWords.MatchString(text) && !hasFigure(text) {
			if times[text]++; times[text] == 1 {
				order = append(order, text)
			}
		}
	}
	for _, text := range order {
		if times[text] >= enough && !t.r.isDish(text) {
			t.r.names = append(t.r.names, Named{Name: text})
			t.r.plan.Dishes = append(t.r.plan.Dishes, Named{Name: text})
		}
	}
}

// isSection says whether a row is a heading across the table.
func (t *tableReader) isSection(row int, filled []int) bool {
	if len(filled) != 1 || t.g.width == 1 {
		return false
	}
	c := filled[0]
	cell := t.g.cell(row, c)
	end := c + max(cell.Span, 1)
	if _, is := stampOf(cell); is && c == t.l.time && cell.Span == 1 && hasFigure(plain(cell)) {
		return false
	}
	if len(t.l.perDish) > 0 && (slices.Contains(t.l.perDish, c) && end <= t.g.width-1 || c > t.l.time && t.l.time >= 0) {
		_, timed := t.g.over(row, t.l.time)
		return cell.Span > 1 && timed && t.l.time >= c
	}
	across := cell.Span > 1 && (end-c >= t.g.width-1 || t.l.time >= c && t.l.time < end)
	return across || c == t.l.time && end == c+1
}

// sectionRow reads a heading across the table: a row in it after all, or the
// dish that the rows under it are about.
func (t *tableReader) sectionRow(row int, filled []int) {
	cell := t.g.cell(row, filled[0])
	text := plain(cell)
	st, rest, timed := leading(text, false)
	if timed && rest != "" || !timed && t.done(cell, text) {
		e := entry{table: t.index, line: row, mode: t.l.runs, lines: cell.Lines}
		if timed {
			e.written, e.stamp = strings.TrimSuffix(text, rest), st
			e.lines = cutLines(cell.Lines, len(e.written))
		}
		t.colour(&e, cell)
		t.add(e)
		return
	}
	t.r.other(t.g.line(row))
	t.r.dayOf(text)
	t.since, t.under, t.hour = clockIn(text), "", hourOf(text)
	if timed && rest == "" {
		t.since, t.under = st, text
		return
	}
	t.section, t.above = t.r.dishesIn(text), nil
}

// clockIn is the first time of day in a heading, or its set-up.
func clockIn(text string) stamp {
	if len(text) > 200 {
		return stamp{}
	}
	for at := range text {
		if at > 0 && text[at-1] != ' ' && text[at-1] != '(' {
			continue
		}
		if st, _, ok := leading(text[at:], false); ok && st.kind == clock {
			return stamp{kind: clock, times: st.times, last: -1}
		}
	}
	if st, ok := readStamp(strings.Trim(text, " .:-()")); ok && st.kind == atSetUp {
		return st
	}
	return stamp{}
}

// done says whether words across the table are something that is done.
func (t *tableReader) done(cell table.Cell, text string) bool {
	words := len(strings.Fields(text))
	if strings.Contains(text, ":") || bold(cell) && words > 4 || len(t.r.dishesIn(text)) > 0 && words < 6 {
		return false
	}
	return doneWords.MatchString(text) && words <= 12 || words > 6 && !bold(cell)
}
