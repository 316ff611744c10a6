package written

import "regexp"

// pastHour is a cell that gives minutes past the hour of the heading above:
// "05-20", ":40".
var pastHour = regexp.MustCompile(`^\s*([:.]?)([0-5]?\d)(?:\s*(?:-|–|—|to)\s*[:.]?([0-5]?\d|60))?\s*(?:mins?|minutes)?\s*$`)

// underHours finds the column that gives only minutes past the hour, where rows
// across the table give the hours; -1: none. The minutes rise under each hour, and
// are written as no length is: as a range, with a nought or a sign before them.
func (t *tableReader) underHours() int {
	for c := range t.g.width {
		if c != t.l.time && c != t.l.minutes || t.l.time >= 0 && t.l.time != c {
			continue
		}
		hours, cells, signs, last := 0, 0, 0, -1
		for row := t.l.first; row < len(t.g.rows); row++ {
			filled := t.g.filled(row)
			if t.l.heads[row] || len(filled) == 0 {
				continue
			}
			if t.isSection(row, filled) && t.g.cell(row, filled[0]).Span > 1 {
				if hourOf(t.g.words(row, filled[0])) != nil {
					hours, last = hours+1, -1
				}
				continue
			}
			text := t.g.words(row, c)
			m := pastHour.FindStringSubmatch(text)
			if text == "" {
				continue
			}
			if m == nil || number(m[2]) < last || hours == 0 {
				hours = 0
				break
			}
			cells++
			last = number(m[2])
			if m[1] != "" || m[3] != "" || len(m[2]) == 2 && m[2][0] == '0' {
				signs++
			}
		}
		if hours > 0 && cells > hours && 2*signs >= cells {
			return c
		}
	}
	return -1
}

// hourOf is what a heading that begins an hour can mean; nil when it is none.
func hourOf(text string) (hours []option) {
	for _, o := range clockIn(text).times {
		if o.at%60 == 0 {
			hours = append(hours, o)
		}
	}
	return hours
}

// underHour reads a row's minutes past the hour of the heading above it.
func (t *tableReader) underHour(e *entry, row int) {
	text := t.g.words(row, t.past)
	m := pastHour.FindStringSubmatch(text)
	if m == nil || len(t.hour) == 0 {
		return
	}
	e.written, e.mode, e.minutes, e.shared = text, clockMode, 0, false
	e.stamp = stamp{kind: clock, last: -1}
	for _, o := range t.hour {
		e.stamp.times = append(e.stamp.times, option{o.at + number(m[2]), o.cost, o.mended})
		if m[3] != "" {
			e.stamp.until = append(e.stamp.until, option{o.at + number(m[3]), o.cost, o.mended})
		}
	}
}
