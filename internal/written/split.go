package written

import (
	"regexp"
	"strings"

	"plait.example/internal/format/table"
)

// doneWords are what may stand across a table and be a row all the same.
var doneWords = regexp.MustCompile(`(?i)\bwash(?:ing)?[ -]?up|\bclean(?:ing)?\b|\bclear(?:ing)?\b|\btidy|\bbreak\b|\bwipe\b|\bwash hands\b`)

// shared are headings of a column that belongs to no dish.
var shared = regexp.MustCompile(`(?i)\b(?:wash|clean|general|other|hygiene|all\b|both|set[ -]?up|clear)`)

// dishWords are headings that stand for a dish without its name.
var dishWords = regexp.MustCompile(`(?i)^(?:(?:dish|recipe|product|course)\s*(?:no\.?\s*)?(?:\d|one|two|three|four|five|[a-f])\b|(?:starter|main|dessert|pudding|side|accompaniment|bread)(?: course| dish)?\s*(?:[:(-]|$))`)

// timed is a line of a cell of times.
type timed struct {
	line    int
	written string
	stamp   stamp
}

// timeLines are the times of a cell that has one on each of several lines; nil
// when they are one time together.
func (t *tableReader) timeLines(row int) (times []timed) {
	if t.l.time < 0 {
		return nil
	}
	cell := t.g.cell(row, t.l.time)
	if st, whole := readStamp(strings.ReplaceAll(plain(cell), "\n", " ")); whole && (st.until != nil || len(cell.Lines) < 2) {
		return nil
	}
	for i, l := range cell.Lines {
		text := strings.TrimSpace(kept(l))
		if text == "" {
			continue
		}
		st, ok := readStamp(text)
		if !ok {
			return nil
		}
		times = append(times, timed{i, text, st})
	}
	if len(times) < 2 {
		return nil
	}
	return times
}

// splitByTimes gives each of several times in one cell its lines of the text: one
// each where there are as many, else those beside and below it.
func (t *tableReader) splitByTimes(whole entry, times []timed) (parts []entry) {
	if len(times) == 0 {
		return nil
	}
	var worded []table.Line
	for _, l := range whole.lines {
		if strings.TrimSpace(kept(l)) != "" {
			worded = append(worded, l)
		}
	}
	level := len(times) != len(worded)
	if level && len(whole.lines) <= times[len(times)-1].line {
		return nil
	}
	for i, at := range times {
		part := whole
		part.written, part.stamp = at.written, at.stamp
		if i > 0 {
			part.points, part.besides, part.minutes, part.until = nil, nil, 0, stamp{}
		} else if part.until.kind != noStamp {
			part.besides = append(part.besides, whole.written)
		}
		switch from := at.line; {
		case !level:
			part.lines = worded[i : i+1]
		case i+1 < len(times):
			part.lines = whole.lines[from:min(times[i+1].line, len(whole.lines))]
		default:
			part.lines = whole.lines[from:]
		}
		if i == 0 && level {
			part.lines = whole.lines[:min(times[1].line, len(whole.lines))]
		}
		t.recolour(&part)
		parts = append(parts, part)
	}
	return parts
}

// recolour finds the ink of a part of a cell.
func (t *tableReader) recolour(e *entry) {
	e.ink, e.inks = inksOf(e.lines)
	if shade := shadeOf(e.lines); shade != "" {
		e.shade = shade
	}
}

// splitByLines parts an entry at the lines of its text that begin with a time of
// their own.
func splitByLines(whole entry) []entry {
	var stamps []timed
	whole.lines = sentences(whole.lines)
	for i, l := range whole.lines {
		text := kept(l)
		if st, rest, ok := leading(strings.TrimLeft(text, " \t\u00A0"), false); ok && rest != "" {
			stamps = append(stamps, timed{i, strings.TrimSuffix(text, rest), st})
		}
	}
	if len(stamps) == 0 || len(stamps) == 1 && whole.stamp.kind != noStamp {
		return []entry{whole}
	}
	var parts []entry
	if before := whole.lines[:stamps[0].line]; (entry{lines: before}).text() != "" || whole.stamp.kind == clock && len(stamps) > 1 && stamps[0].line > 0 {
		head := whole
		head.lines = before
		head.ink, head.inks = inksOf(before)
		parts = append(parts, head)
	}
	for i, at := range stamps {
		part := whole
		end := len(whole.lines)
		if i+1 < len(stamps) {
			end = stamps[i+1].line
		}
		if len(parts) > 0 {
			part.points, part.besides, part.minutes, part.until = nil, nil, 0, stamp{}
		} else if whole.written != "" && strings.TrimSpace(whole.written) != strings.TrimSpace(at.written) {
			part.besides = append(part.besides, whole.written)
		}
		part.mode, part.shared = clockMode, false
		part.written, part.stamp = strings.TrimRight(at.written, " \t\u00A0-–—:|"), at.stamp
		part.lines = append([]table.Line{cutLine(whole.lines[at.line], len(at.written))}, whole.lines[at.line+1:end]...)
		part.ink, part.inks = inksOf(part.lines)
		parts = append(parts, part)
	}
	return parts
}

// sentences parts lines in which several sentences begin with a time: "At 9.00 I
// wash my hands. At 9.05 I rub in."
func sentences(lines []table.Line) (all []table.Line) {
	for _, l := range lines {
		text := kept(l)
		cuts := []int{0}
		for _, at := range sentenceEnd.FindAllStringIndex(text, -1) {
			if st, rest, ok := leading(text[at[1]:], false); ok && st.kind == clock && rest != "" {
				cuts = append(cuts, at[1])
			}
		}
		if st, _, ok := leading(text, false); len(cuts) < 2 || !ok || st.kind != clock {
			all = append(all, l)
			continue
		}
		for i, from := range cuts {
			part := cutLine(l, from)
			if i+1 < len(cuts) {
				part = headOf(part, cuts[i+1]-from)
			}
			all = append(all, part)
		}
	}
	return all
}

// sentenceEnd is the end of a sentence with what follows it; the stop of 9.30 is none.
var sentenceEnd = regexp.MustCompile(`[.;!)]\s+|,\s*then\s+|\s{3,}|\t`)

// headOf is the first bytes of a line, of what is not struck out.
func headOf(l table.Line, n int) (head table.Line) {
	for _, p := range l {
		if p.Struck {
			continue // it stands with the last part
		}
		if n <= 0 {
			break
		}
		if n < len(p.Text) {
			p.Text = p.Text[:n]
		}
		n -= len(p.Text)
		head = append(head, p)
	}
	return head
}

// cutLine takes so many bytes, of what is not struck out, from the head of a line.
func cutLine(l table.Line, n int) (rest table.Line) {
	for _, p := range l {
		switch {
		case p.Struck:
		case n >= len(p.Text):
			n -= len(p.Text)
			continue
		case n > 0:
			p.Text = p.Text[n:]
			n = 0
		}
		rest = append(rest, p)
	}
	return rest
}

// cutLines takes so many bytes from the head of lines; white space around counts
// as it does in plain.
func cutLines(lines []table.Line, n int) []table.Line {
	for i, l := range lines {
		text := kept(l)
		if strings.TrimSpace(text) == "" {
			continue
		}
		lead := len(text) - len(strings.TrimLeft(text, " \t\u00A0"))
		if n <= len(strings.TrimSpace(text)) {
			return append([]table.Line{cutLine(l, lead+n)}, lines[i+1:]...)
		}
		n -= len(strings.TrimSpace(text)) + 1
	}
	return nil
}
