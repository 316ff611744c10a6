package recipe

import (
	"fmt"
	"strings"
	"unicode"
	"unicode/utf8"
)

// Greatest size of a text that is read; the rest stands in Unread.
const (
	maxLines = 3000
	maxBytes = 200_000
	maxItem  = 3000 // tokens of one paragraph of a method
)

// line is a line of the text without its list marker and markup.
type line struct {
	head       int    // byte at which the whole line begins
	start, end int    // bytes of the content in the source
	text       string // the content
	indent     int    // columns before the marker
	marker     marker
	heading    int  // 1 to 6: level; 0: none
	blank      bool // nothing but space
	gap        bool // a blank line stands before it
	aside      bool // neither ingredient nor method, whatever it looks like
	bare       bool // a marker alone ("Step 1"): the next line is the item
	ts         []token
}

type marker int

const (
	noMarker marker = iota
	bullet
	numbered
)

// splitLines cuts the text into lines. What lies beyond the limits comes back as notes.
func splitLines(text string) ([]line, []string) {
	var lines []line
	var notes []string
	gap := false
	for pos := 0; pos < len(text); {
		if len(lines) >= maxLines || pos >= maxBytes {
			notes = append(notes, fmt.Sprintf("The text is longer than %d lines or %d characters; what follows was not read. Paste fewer recipes at a time.", maxLines, maxBytes), strings.TrimSpace(text[pos:]))
			break
		}
		end := pos + strings.IndexByte(text[pos:], '\n')
		if end < pos {
			end = len(text)
		}
		stop := min(end, pos+maxBytes)
		for stop < end && !utf8.RuneStart(text[stop]) {
			stop--
		}
		l := readLine(text, pos, stop)
		l.gap, gap = gap, l.blank
		lines = append(lines, l)
		pos = max(stop, end)
		if stop < end {
			pos = stop
		} else if pos < len(text) {
			pos++
		}
	}
	frontMatter(lines)
	pageHeads(lines)
	underlines(lines)
	clockTimes(lines)
	bareNumbers(lines)
	return inlineNumbers(text, inlineHeadings(text, lines)), notes
}

// pageHeads puts aside the running heads of a book's pages: a number and a line of
// capitals with a wide gap between them, "74      MEAT AND POULTRY".
func pageHeads(lines []line) {
	for i := range lines {
		l := &lines[i]
		if n := len(l.ts); n < 2 || n > 8 || !capitals(l.text) {
			continue
		}
		first, last := l.ts[0], l.ts[len(l.ts)-1]
		left := first.kind == number && l.ts[1].start-first.end >= columnGap
		right := last.kind == number && last.start-l.ts[len(l.ts)-2].end >= columnGap
		l.aside = l.aside || left || right
	}
}

// frontMatter reads the block between two rows of dashes that heads some files: its title becomes a heading.
func frontMatter(lines []line) {
	if len(lines) == 0 || lines[0].text != "---" {
		return
	}
	for end := 1; end < min(len(lines), 40); end++ {
		if lines[end].text != "---" {
			continue
		}
		for i := range lines[:end+1] {
			l := &lines[i]
			switch {
			case l.text == "---":
				l.blank, l.text, l.ts = true, "", nil
			case strings.HasPrefix(l.text, "title:"):
				l.start += len("title:")
				l.text, l.ts = strings.Trim(l.text[len("title:"):], " \"'"), l.ts[2:]
				l.heading = 1
			default:
				l.aside = true
			}
		}
		return
	}
}

// readLine reads one line: its marker, its heading signs, its content.
func readLine(text string, start, end int) line {
	l := line{head: start}
	trim := func() {
		for start < end {
			r, n := utf8.DecodeRuneInString(text[start:end])
			if !unicode.IsSpace(r) && r != '\uFEFF' {
				break
			}
			if r == '\t' {
				l.indent += 4
			} else {
				l.indent++
			}
			start += n
		}
		for end > start {
			r, n := utf8.DecodeLastRuneInString(text[start:end])
			if !unicode.IsSpace(r) {
				break
			}
			end -= n
		}
	}
	trim()
	indent := l.indent
	if n := markerLength(text[start:end], &l); n > 0 {
		start += n
		trim()
	}
	if l.marker == noMarker {
		start, end = headingSigns(text, start, end, &l)
		trim()
	}
	l.indent = indent
	l.start, l.end, l.text = start, end, text[start:end]
	l.blank = start == end && !l.bare && l.heading == 0
	l.ts = tokenize(l.text, start)
	return l
}

// markerLength is the length of a list marker at the head of s: "- ", "1. ", "Step 1:", "(a) ".
func markerLength(s string, l *line) int {
	r, n := utf8.DecodeRuneInString(s)
	next, _ := utf8.DecodeRuneInString(s[min(n, len(s)):])
	if strings.ContainsRune("-*+•·▪◦‣●○–—✓☐✔✅☑▢❑❏□■➤►▶➢→★☆", r) && (unicode.IsSpace(next) || r == '•' || r == '·' || r == '●') {
		l.marker = bullet
		return n + boxLength(s[n:])
	}
	if n := letterMarker(s); n > 0 {
		l.marker = numbered
		return n
	}
	low := strings.ToLower(s[:min(len(s), 12)])
	i := 0
	if strings.HasPrefix(low, "step ") {
		i = 5
	} else if strings.HasPrefix(low, "(") {
		i = 1
	}
	j := i
	for j < len(s) && s[j] >= '0' && s[j] <= '9' && j < i+2 {
		j++
	}
	if j == i {
		return 0
	}
	k := j
	for k < len(s) && (strings.IndexByte(".):-", s[k]) >= 0 || s[k] == '/' && k == j && k+2 < len(s) && s[k+1] == ' ' && !isDigit(s[k+2])) && k < j+2 {
		k++
	}
	named := i == 5
	if k == len(s) && (named || k > j) {
		l.marker, l.bare = numbered, true
		return k
	}
	if !named && k == j || k < len(s) && s[k] != ' ' && s[k] != '\t' && !(named && k > j) && !glued(s, k) {
		return 0
	}
	l.marker = numbered
	return k
}

// glued says whether text follows the marker without a space: "1.Peel", but not "1.5 kg".
func glued(s string, k int) bool {
	r, _ := utf8.DecodeRuneInString(s[k:])
	return unicode.IsUpper(r) && s[k-1] != '-'
}

func boxLength(s string) int {
	for _, box := range []string{" [ ]", " [x]"} {
		if strings.HasPrefix(s, box) {
			return len(box)
		}
	}
	return 0
}

// boldHeading is the level of a line that is wholly bold: it may be a title or the name of a part.
const boldHeading = 4

// headingSigns takes off "## " and the stars or underscores of a line that is wholly bold.
func headingSigns(text string, start, end int, l *line) (int, int) {
	s := text[start:end]
	n := 0
	for n < len(s) && s[n] == '#' {
		n++
	}
	if n > 0 && n <= 6 && (n == len(s) || s[n] == ' ') {
		l.heading = n
		return start + n, end - (len(s)-len(strings.TrimRight(s, "#")))*boolInt(len(s) > n)
	}
	if t := strings.Trim(s, "*_: "); len(t) > 4 && len(t) < 80 && strings.HasPrefix(s, "***") && strings.HasSuffix(strings.TrimRight(s, ": "), "***") && !strings.Contains(t, "*") {
		l.heading = boldHeading
		at := start + strings.Index(s, t)
		return at, at + len(t)
	}
	for _, mark := range []string{"**", "__"} {
		t := strings.TrimSuffix(s, ":")
		if len(t) > 4 && strings.HasPrefix(t, mark) && strings.HasSuffix(t, mark) && strings.Count(t, mark) == 2 && len(t) < 80 {
			l.heading = boldHeading
			return start + 2, start + len(t) - 2
		}
	}
	return start, end
}

func boolInt(b bool) int {
	if b {
		return 1
	}
	return 0
}

// underlines finds headings that are underlined with = or -.
func underlines(lines []line) {
	for i := 1; i < len(lines); i++ {
		t := strings.TrimSpace(lines[i].text)
		if len(t) < 3 || strings.Trim(t, "=") != "" && strings.Trim(t, "-") != "" && strings.Trim(t, "_") != "" {
			continue
		}
		lines[i].blank, lines[i].text = true, ""
		if p := &lines[i-1]; !p.blank && p.marker == noMarker && len(p.ts) <= 10 && t[0] != '_' {
			p.heading = 1 + boolInt(t[0] == '-')
		}
		if i+1 < len(lines) {
			lines[i+1].gap = true
		}
	}
}

func isDigit(b byte) bool { return b >= '0' && b <= '9' }
