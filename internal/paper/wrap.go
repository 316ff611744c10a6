package paper

import (
	"strings"
	"unicode"
)

// columns is how wide the text form is.
const columns = 100

// clean makes one line of a text: valid UTF-8, no control signs or signs that
// turn the direction of writing, single spaces.
func clean(s string) string {
	s = strings.ToValidUTF8(s, "\uFFFD")
	s = strings.Map(func(r rune) rune {
		switch {
		case unicode.IsControl(r):
			return ' '
		case r >= 0x202A && r <= 0x202E, r >= 0x2066 && r <= 0x2069:
			return -1
		}
		return r
	}, s)
	return strings.Join(strings.Fields(s), " ")
}

// wrap breaks a clean text into lines: the first of at most first columns, the
// others of at most rest. A word too long for a line is broken after a
// backslash; a backslash of the text itself is written twice. unwrap undoes it.
func wrap(s string, first, rest int) []string {
	var lines []string
	line, room := "", first
	flush := func() { lines, line, room = append(lines, line), "", rest }
	for _, word := range strings.Fields(s) {
		signs := escape(word)
		if line != "" && width(line)+1+size(signs) > room {
			flush()
		}
		if line == "" && len(lines) == 0 && size(signs) > room && size(signs) <= rest {
			flush()
		}
		for size(signs) > room && line == "" {
			n := fits(signs, room-1)
			line = strings.Join(signs[:n], "") + `\`
			signs = signs[n:]
			flush()
		}
		if line != "" {
			line += " "
		}
		line += strings.Join(signs, "")
	}
	return append(lines, line)
}

// escape splits a word into what is written for each of its signs.
func escape(word string) []string {
	var signs []string
	for _, r := range word {
		if r == '\\' {
			signs = append(signs, `\\`)
		} else {
			signs = append(signs, string(r))
		}
	}
	return signs
}

// fits is how many signs go into so many columns; at least one.
func fits(signs []string, room int) int {
	used := 0
	for i, s := range signs {
		if used += width(s); used > room && i > 0 {
			return i
		}
	}
	return len(signs)
}

// width is the columns of a text: a column a sign.
func width(s string) int { return len([]rune(s)) }

func size(signs []string) int {
	n := 0
	for _, s := range signs {
		n += width(s)
	}
	return n
}

// unwrap joins lines that wrap made.
func unwrap(lines []string) string {
	var b strings.Builder
	for i, line := range lines {
		line = strings.TrimSpace(line)
		tail := len(line) - len(strings.TrimRight(line, `\`))
		broken := tail%2 == 1 && i < len(lines)-1
		if broken {
			line = line[:len(line)-1]
		}
		b.WriteString(strings.ReplaceAll(line, `\\`, `\`))
		if !broken && i < len(lines)-1 && line != "" {
			b.WriteByte(' ')
		}
	}
	return strings.TrimSpace(b.String())
}
