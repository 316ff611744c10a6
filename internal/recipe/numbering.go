package recipe

import (
	"strconv"
	"strings"
)

// bareNumbers finds methods numbered without a sign: lines that begin with 1,
// 2, 3, ... and most of which begin with a verb. Between them may stand lines
// that go on with the one before, as in the text of a photo.
func bareNumbers(lines []line) {
	loneNumbers(lines)
	for i := 0; i < len(lines); i++ {
		run, verbal := numberRun(lines, i)
		if len(run) < 3 || 2*verbal <= len(run) {
			continue
		}
		for _, k := range run {
			l := &lines[k]
			first := 1 + boolInt(l.ts[1].is("-"))
			l.marker = numbered
			l.text = l.text[l.ts[first].start-l.start:]
			l.start, l.ts = l.ts[first].start, l.ts[first:]
		}
		i = run[len(run)-1]
	}
}

// loneNumbers finds the numbers 1, 2, 3, ... that stand alone on the lines above their steps, as copied from web pages.
func loneNumbers(lines []line) {
	var run []int
	for k := range lines {
		if l := lines[k]; len(l.ts) == 1 && l.marker == noMarker && l.text == strconv.Itoa(len(run)+1) && len(at2(lines, k+1).ts) > 2 {
			run = append(run, k)
		}
	}
	if len(run) < 3 {
		return
	}
	for _, k := range run {
		l := &lines[k]
		l.marker, l.bare, l.start, l.text, l.ts = numbered, true, l.end, "", nil
	}
}

// numberRun is the lines from i on that are numbered 1, 2, 3, ..., and how many of them begin with a verb.
func numberRun(lines []line, i int) (run []int, verbal int) {
	last := i
	for k := i; k < len(lines) && k <= last+12; k++ {
		l := lines[k]
		if numberedLine(l, len(run)+1) {
			run, last = append(run, k), k
			first := 1 + boolInt(l.ts[1].is("-"))
			verbal += boolInt(startsWithVerb(l.ts[first:]) && len(clauses(l.ts[first:])) > 0)
			continue
		}
		if len(run) == 0 || l.marker != noMarker || l.heading > 0 {
			break
		}
	}
	return run, verbal
}

// numberedLine says that a line begins with the number n, as "3 Mix" or "3 - mix", and words that may begin a step.
// A picture's 1 is often read as a letter.
func numberedLine(l line, n int) bool {
	if l.marker != noMarker || len(l.ts) < 3 || l.ts[0].text != strconv.Itoa(n) && !(n == 1 && l.ts[0].is("l", "i")) {
		return false
	}
	first := 1 + boolInt(l.ts[1].is("-"))
	return l.ts[first].kind == word && l.ts[first].gap && (l.ts[first].upper || first == 2 || startsWithVerb(l.ts[first:]))
}

// inlineNumbers cuts lines that hold a whole numbered method: "1. Mix ... 2. Add ... 3. Bake ...".
func inlineNumbers(text string, lines []line) []line {
	var out []line
	for _, l := range lines {
		starts := numberStarts(l)
		if len(starts) < 2 {
			out = append(out, l)
			continue
		}
		if first := starts[0]; l.marker != numbered && first > 0 {
			out = append(out, part(text, l, 0, first, l.marker))
		} else if l.marker == numbered {
			out = append(out, part(text, l, 0, first, numbered))
		}
		for k, at := range starts {
			end := len(l.ts)
			if k+1 < len(starts) {
				end = starts[k+1]
			}
			if at+2 < end {
				out = append(out, part(text, l, at+2, end, numbered))
			}
		}
	}
	return out
}

// numberStarts is the tokens at which "1.", "2.", "3." stand in one line, in
// order; the first may be the line's own marker. Fewer than three are none.
func numberStarts(l line) []int {
	want := 1
	if l.marker == numbered {
		want = 2
	}
	first := want
	var starts []int
	for i, t := range l.ts {
		if t.kind == number && t.text == strconv.Itoa(want) && at(l.ts, i+1).is(".", ")") && !at(l.ts, i+1).gap && at(l.ts, i+2).kind == word && (i == 0 || t.gap) {
			starts = append(starts, i)
			want++
		}
	}
	if want-1 < 3 || first == 2 && len(starts) < 2 {
		return nil
	}
	return starts
}

// part is a piece of a line as a line of its own.
func part(text string, l line, from, to int, m marker) line {
	p := line{head: l.head, indent: l.indent, marker: m, gap: l.gap && from == 0, ts: l.ts[from:to]}
	p.start, p.end = p.ts[0].start, p.ts[len(p.ts)-1].end
	p.text = text[p.start:p.end]
	return p
}

// inlineHeadings parts lines in which a heading and the first words below it
// stand together: "Ingredients: 1 onion", "Method: 1. Rub the fat in".
func inlineHeadings(text string, lines []line) []line {
	var out []line
	for _, l := range lines {
		if len(l.ts) < 4 || l.marker != noMarker || l.heading > 0 || !l.ts[0].is("ingredients", "method", "directions", "instructions") || !l.ts[1].is(":") || l.ts[2].is("*", "_") {
			out = append(out, l)
			continue
		}
		head := part(text, l, 0, 2, noMarker)
		rest := readLine(text, l.ts[2].start, l.end)
		rest.head = l.ts[2].start
		out = append(out, head, rest)
	}
	return out
}

// clockTimes finds plans whose lines begin with the time of day, "9.05 Bake",
// "10:30 - Whisk", and takes the times for the numbers of steps.
func clockTimes(lines []line) {
	var run []int
	last := -1
	for k := range lines {
		if minute, n := clockAt(lines[k]); n > 0 && minute >= last {
			run, last = append(run, k), minute
		}
	}
	if len(run) < 3 {
		return
	}
	for _, k := range run {
		l := &lines[k]
		_, n := clockAt(*l)
		l.marker = numbered
		l.text = l.text[l.ts[n].start-l.start:]
		l.start, l.ts = l.ts[n].start, l.ts[n:]
	}
}

// clockAt reads a time of day at the head of a line: its minute of the day and
// the token after it; 0: there is none.
func clockAt(l line) (minute, next int) {
	ts := l.ts
	if l.marker != noMarker || len(ts) < 3 || ts[0].kind != number {
		return 0, 0
	}
	h, m, found := strings.Cut(ts[0].text, ".")
	n := 1
	if !found && ts[1].is(":") && ts[2].kind == number && !ts[2].gap {
		m, n, found = ts[2].text, 3, true
	}
	hour, err := strconv.Atoi(h)
	if !found || len(m) != 2 || err != nil || hour > 23 {
		return 0, 0
	}
	min, err := strconv.Atoi(m)
	if err != nil || min > 59 {
		return 0, 0
	}
	for at(ts, n).is("am", "pm", "-", ":", "|", "hrs") {
		n++
	}
	if n >= len(ts) || ts[n].kind != word || units[ts[n].text] && !ts[n].upper {
		return 0, 0
	}
	if hour < 7 {
		hour += 12 // lessons are in the day
	}
	return hour*60 + min, n
}
