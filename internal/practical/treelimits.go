package practical

import (
	"bytes"
	"fmt"
	"unicode/utf8"

	"github.com/goccy/go-yaml/token"
)

// Limits on what a practical file may be.
const (
	maxBytes = 2 << 20 // 2 MB
	maxNodes = 200_000 // after aliases are written out: an alias bomb ends here
	maxDepth = 100     // nested lists and tables
	maxTable = 500     // entries of one table
)

// refuse says why the text should not even be parsed: too large, not UTF-8,
// or nested so deeply that it can only be meant to do harm.
func refuse(data []byte) *Fault {
	switch {
	case len(data) > maxBytes:
		return &Fault{Message: fmt.Sprintf("the file has %d bytes", len(data)), Hint: fmt.Sprintf("a practical file has at most %d bytes (2 MB)", maxBytes), Code: TooLarge}
	case !utf8.Valid(data):
		line := 1
		for rest := data; len(rest) > 0; {
			r, size := utf8.DecodeRune(rest)
			if r == utf8.RuneError && size == 1 {
				break
			}
			if r == '\n' {
				line++
			}
			rest = rest[size:]
		}
		return &Fault{Line: line, Message: "the file is not UTF-8 text", Hint: "save it as UTF-8 (plain text)", Code: Invalid}
	}
	if line := tooDeep(data); line > 0 {
		return &Fault{Line: line, Message: "lists within lists are nested too deeply", Hint: fmt.Sprintf("at most %d levels", maxDepth), Code: TooLarge}
	}
	return nil
}

// TooDeep is why a YAML text must not even be parsed: not UTF-8, larger than 2 MB,
// or nested beyond reason, which costs a parser memory out of all proportion. Nil:
// it may be parsed.
func TooDeep(data []byte) *Fault { return refuse(data) }

// tooDeep is the first line at which brackets, or the dashes, question marks
// and colons that a line begins with, nest beyond reason; 0 when none does. It
// knows nothing of quotes, so its limit on brackets is generous.
func tooDeep(data []byte) int {
	depth := 0
	for i, line := range bytes.Split(data, []byte("\n")) {
		depth = brackets(line, depth)
		if depth > 10*maxDepth || leads(line) > maxDepth {
			return i + 1
		}
	}
	return 0
}

// brackets is how deep brackets are nested at the end of a line.
func brackets(line []byte, depth int) int {
	for _, c := range line {
		switch c {
		case '[', '{':
			depth++
		case ']', '}':
			depth = max(0, depth-1)
		}
	}
	return depth
}

// leads counts the marks, each with a space after it, with which a line begins.
func leads(line []byte) int {
	n := 0
	for lead := range bytes.FieldsSeq(line) {
		if len(lead) != 1 || !bytes.Contains([]byte("-?:"), lead) {
			break
		}
		n++
	}
	return n
}

// tooWide is the token with which a table gets more names than a practical's
// tables have, nil when none does. The library reads a table in time that grows
// with the square of its names, so it must not see such a one. Names belong to one table
// while they stand in one column and nothing stands further left between them.
func tooWide(tokens token.Tokens) *token.Token {
	type open struct{ column, names int }
	var tables []open
	for _, tk := range tokens {
		name := tk
		switch tk.Type {
		case token.MappingValueType:
			if name = tk.Prev; name == nil {
				continue
			}
		case token.MappingKeyType, token.SequenceEntryType:
		default:
			continue
		}
		column := name.Position.Column
		for len(tables) > 0 && tables[len(tables)-1].column > column {
			tables = tables[:len(tables)-1]
		}
		if tk.Type == token.SequenceEntryType {
			continue
		}
		if len(tables) == 0 || tables[len(tables)-1].column < column {
			tables = append(tables, open{column: column})
		}
		last := &tables[len(tables)-1]
		if last.names++; last.names > maxTable {
			return name
		}
	}
	return nil
}
