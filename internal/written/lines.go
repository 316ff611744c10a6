package written

import (
	"regexp"
	"strings"
	"unicode"
	"unicode/utf8"

	"plait.example/internal/format/table"
)

// lines reads a plan that is no table: lines that begin with a time. It is false
// when there are fewer than two.
func (r *reader) lines(blocks []table.Block) bool {
	blocks, of := parted(r.timesFirst(blocks))
	stamps := make([]stamp, len(blocks))
	rests := make([]string, len(blocks))
	for _, inColumn := range []bool{false, true} {
		found, bare, last := 0, 0, -1
		for i, b := range blocks {
			stamps[i] = stamp{}
			if b.Table != nil {
				continue
			}
			st, rest, ok := leadingItem(b, inColumn)
			if ok && (rest != "" || st.kind == clock || st.kind == digits && st.number >= 600 || inColumn && st.kind != digits) && !candidatePattern.MatchString(rest) {
				stamps[i], rests[i] = st, rest
				if rest == "" {
					bare++
				}
				found++
				last = i
			}
		}
		if found >= 2 && bare*2 <= len(blocks) {
			r.lineRows(blocks, of, stamps, rests, last)
			return true
		}
	}
	return false
}

// parted is blocks with a line for each sentence that begins with a time, and
// which block each is of.
func parted(blocks []table.Block) (all []table.Block, of []int) {
	for n, b := range blocks {
		if b.Table != nil {
			all, of = append(all, b), append(of, n)
			continue
		}
		for i, l := range sentences([]table.Line{b.Line}) {
			part := b
			if part.Line = l; i > 0 {
				part.Item = ""
			}
			all, of = append(all, part), append(of, n)
		}
	}
	return all, of
}

// leadingItem reads the time at the head of a line.
func leadingItem(b table.Block, inColumn bool) (stamp, string, bool) {
	text := strings.TrimSpace(b.Line.Text())
	if number := itemNumber.FindString(text); number != "" {
		if st, rest, ok := leading(text[len(number):], false); ok && st.kind == clock {
			return st, rest, true
		}
	}
	if st, rest, ok := leading(text, inColumn); ok && (st.kind != digits || st.number >= 600) && st.kind < atStart {
		return st, rest, true
	}
	return stamp{}, text, false
}

// lineRows makes a row of each line from the first with a time on.
func (r *reader) lineRows(blocks []table.Block, of []int, stamps []stamp, rests []string, last int) {
	t := tableReader{r: r, index: -1}
	mode := clockMode
	var all []stamp
	for _, st := range stamps {
		if st.kind != noStamp {
			all = append(all, st)
		}
	}
	if m := modeOf(all, timeRole); m != noMode {
		mode = m
	}
	begun, ended, capitals := false, 0, capitalised(stamps, rests)
	for i, b := range blocks {
		text := lineText(b)
		if stamps[i].kind == noStamp && begun && i == ended+1 && wraps(b, text, r.entries[len(r.entries)-1], capitals) {
			e := &r.entries[len(r.entries)-1]
			e.lines = append(e.lines, b.Line)
			ended = i
			continue
		}
		switch {
		case b.Table != nil:
			r.otherTable(b.Table)
			continue
		case stamps[i].kind != noStamp:
			begun, ended = true, i
			line := b.Line
			if cut := strings.TrimSuffix(strings.TrimSpace(line.Text()), rests[i]); strings.HasSuffix(strings.TrimSpace(line.Text()), rests[i]) {
				line = joined(cutLines([]table.Line{line}, len(cut)))
			}
			t.lineRow(b, line, of[i], mode, stamps[i], strings.TrimSuffix(strings.TrimSpace(b.Line.Text()), rests[i]))
			continue
		case !begun || text == "" || b.Heading > 0 || i > last+1 && !follows(b, text) || sectionLine(text):
			r.other(text)
			r.dayOf(text)
			if begun && text != "" {
				t.section = r.dishesIn(text)
			}
			continue
		}
		t.lineRow(b, b.Line, of[i], mode, stamp{}, "")
		ended = i
	}
}

// capitalised says whether most lines begin with a capital after their time.
func capitalised(stamps []stamp, rests []string) bool {
	small := 0
	for i, rest := range rests {
		if c, _ := utf8.DecodeRuneInString(rest); stamps[i].kind == noStamp || rest == "" || !unicode.IsLetter(c) {
			continue
		} else if unicode.IsLower(c) {
			small++
		} else {
			small--
		}
	}
	return small < 0
}

// wraps says whether a line goes on with the one above: in small letters where
// the others begin with a capital, or where the one above breaks off.
func wraps(b table.Block, text string, above entry, capitals bool) bool {
	c, _ := utf8.DecodeRuneInString(text)
	if b.Table != nil || b.Heading > 0 || b.Item != "" || above.table >= 0 || above.text() == "" {
		return false
	}
	if strings.HasPrefix(text, "(") && strings.HasSuffix(strings.TrimRight(text, "."), ")") {
		return true
	}
	if !unicode.IsLower(c) {
		return false
	}
	return capitals && !strings.ContainsAny(above.text()[len(above.text())-1:], ".!?:") || breaksOff.MatchString(above.text())
}

// breaksOff is the end of a line that cannot be the end of what it says.
var breaksOff = regexp.MustCompile(`(?i)(?:,|\b(?:and|or|the|a|an|with|to|of|until|till|for|it|is|are|my|into|from))$`)

// follows says whether a line after the last time still belongs to the plan.
func follows(b table.Block, text string) bool {
	return doneWords.MatchString(text) && len(text) < 80 && !strings.Contains(text, ":")
}

// sectionLine says whether a line without a time is a heading among the rows.
func sectionLine(text string) bool {
	return len(text) <= 60 && (strings.HasSuffix(text, ":") || sectionWords.MatchString(text) || dishPattern.MatchString(text))
}

func (t *tableReader) lineRow(b table.Block, line table.Line, i int, mode mode, st stamp, written string) {
	e := entry{table: -1, line: i, mode: mode, stamp: st, written: strings.TrimRight(written, " \t\u00A0-–—:|"), lines: []table.Line{line}}
	text := e.text()
	last := len(t.r.entries) - 1
	item := strings.TrimSuffix(lineText(b), strings.TrimSpace(b.Line.Text()))
	if st.kind == noStamp && last >= 0 && t.r.entries[last].table == -1 && t.r.entries[last].text() == "" {
		t.r.entries[last].lines = append(t.r.entries[last].lines, line)
		t.r.entries[last].beside(item)
		if dish := t.r.named(text); len(dish) == 1 && t.r.isDish(text) && len(t.r.entries[last].dishes) == 0 {
			t.r.entries[last].dishes = dish
			t.r.entries[last].lines = nil
		} else {
			t.r.entries[last].ink, t.r.entries[last].inks = inksOf(t.r.entries[last].lines)
		}
		return
	}
	e.beside(item)
	if len(t.section) > 0 {
		e.dishes, e.section = t.section, true
	}
	e.heading = b.Heading > 0
	e.earlier = t.r.earlier || dayBefore.MatchString(e.written)
	t.colour(&e, table.Cell{})
	t.r.entries = append(t.r.entries, e)
}

// joined is lines as one.
func joined(lines []table.Line) (one table.Line) {
	for _, l := range lines {
		one = append(one, l...)
	}
	return one
}

// sectionWords are headings between the rows.
var sectionWords = regexp.MustCompile(`(?i)^(?:set[ -]?up|preparation|before (?:the )?(?:start|clock|exam)|(?:first|second|third|fourth|last|1st|2nd|3rd|4th) (?:hour|half|part)|part \w+|hour \w+|page \d+|time plan|order of work|plan of work|special points|evaluation|equipment|ingredients|shopping list)\b`)
