package pdf

import (
	"bytes"
	"strconv"
)

// maxNesting of arrays and dictionaries in one another; deeper ones are nil.
const maxNesting = 100

// lexer reads objects from bytes (ISO 32000-1, 7.2 and 7.3). It never fails:
// what has no meaning is passed over.
type lexer struct {
	data  []byte
	at    int
	refs  bool // "12 0 R" is a reference; not so in page descriptions
	depth int
	steps int // tokens read
}

func space(c byte) bool {
	return c == ' ' || c == '\n' || c == '\r' || c == '\t' || c == '\f' || c == 0
}

func delimiter(c byte) bool { return bytes.IndexByte([]byte("()<>[]{}/%"), c) >= 0 }

func (l *lexer) skip() {
	for l.at < len(l.data) {
		switch c := l.data[l.at]; {
		case space(c):
			l.at++
		case c == '%':
			for l.at < len(l.data) && l.data[l.at] != '\n' && l.data[l.at] != '\r' {
				l.at++
			}
		default:
			return
		}
	}
}

// next is the next object or operator; ok is false at the end.
func (l *lexer) next() (o any, ok bool) {
	l.skip()
	if l.at >= len(l.data) {
		return nil, false
	}
	l.steps++
	c := l.data[l.at]
	two := l.at+1 < len(l.data) && l.data[l.at+1] == c
	switch {
	case c == '/':
		l.at++
		return l.name(), true
	case c == '(':
		l.at++
		return l.literal(), true
	case c == '<' && two:
		l.at += 2
		return l.dict(), true
	case c == '<':
		l.at++
		return l.hex(), true
	case c == '[':
		l.at++
		return array(l.until("]")), true
	case c == '>' && two:
		l.at += 2
		return keyword(">>"), true
	case delimiter(c):
		l.at++
		return keyword(string(c)), true
	}
	return l.word(), true
}

func (l *lexer) regular() []byte {
	from := l.at
	for l.at < len(l.data) && !space(l.data[l.at]) && !delimiter(l.data[l.at]) {
		l.at++
	}
	return l.data[from:l.at]
}

// word is a number, a reference, true, false, null or an operator.
func (l *lexer) word() any {
	w := l.regular()
	if n, is := number(w); is {
		if l.refs && n >= 0 && n < 1e8 && n == float64(int(n)) {
			if r, is := l.reference(int(n)); is {
				return r
			}
		}
		return n
	}
	switch string(w) {
	case "true":
		return true
	case "false":
		return false
	case "null":
		return nil
	}
	return keyword(w)
}

// reference reads " 0 R" after a number, or nothing.
func (l *lexer) reference(n int) (ref, bool) {
	back := l.at
	l.skip()
	if _, is := number(l.regular()); is {
		l.skip()
		if string(l.regular()) == "R" {
			return ref(n), true
		}
	}
	l.at = back
	return 0, false
}

func number(w []byte) (float64, bool) {
	if len(w) == 0 || len(w) > 40 || bytes.IndexByte([]byte("+-.0123456789"), w[0]) < 0 {
		return 0, false
	}
	for _, c := range w {
		if bytes.IndexByte([]byte("+-.0123456789"), c) < 0 {
			return 0, false
		}
	}
	n, err := strconv.ParseFloat(string(w), 64)
	if err != nil { // "--5", "1.2.3" and "5-3" stand in files
		n, err = strconv.ParseFloat(string(bytes.TrimLeft(w, "-+")), 64)
	}
	return n, err == nil
}

func (l *lexer) name() name {
	w := l.regular()
	if bytes.IndexByte(w, '#') < 0 {
		return name(w)
	}
	var out []byte
	for i := 0; i < len(w); i++ {
		if w[i] == '#' && i+2 < len(w) {
			if v, err := strconv.ParseUint(string(w[i+1:i+3]), 16, 8); err == nil {
				out = append(out, byte(v))
				i += 2
				continue
			}
		}
		out = append(out, w[i])
	}
	return name(out)
}

// literal reads a string in parentheses (7.3.4.2).
func (l *lexer) literal() string {
	var out []byte
	for open := 1; l.at < len(l.data); l.at++ {
		c := l.data[l.at]
		switch c {
		case '(':
			open++
		case ')':
			if open--; open == 0 {
				l.at++
				return string(out)
			}
		case '\\':
			l.at++
			out = l.escape(out)
			continue
		}
		out = append(out, c)
	}
	return string(out)
}

// escape reads what follows a backslash and leaves the position on its last byte.
func (l *lexer) escape(out []byte) []byte {
	if l.at >= len(l.data) {
		return out
	}
	c := l.data[l.at]
	if i := bytes.IndexByte([]byte("nrtbf"), c); i >= 0 {
		return append(out, "\n\r\t\b\f"[i])
	}
	switch {
	case c == '\r':
		if l.at+1 < len(l.data) && l.data[l.at+1] == '\n' {
			l.at++
		}
		return out
	case c == '\n':
		return out
	case c >= '0' && c <= '7':
		v := 0
		for n := 0; n < 3 && l.at < len(l.data) && l.data[l.at] >= '0' && l.data[l.at] <= '7'; n++ {
			v = v*8 + int(l.data[l.at]-'0')
			l.at++
		}
		l.at--
		return append(out, byte(v))
	}
	return append(out, c)
}

// hex reads a string in angle brackets; a last digit alone stands for itself and 0.
func (l *lexer) hex() string {
	var out []byte
	high, half := byte(0), false
	for ; l.at < len(l.data); l.at++ {
		c := l.data[l.at]
		if c == '>' {
			l.at++
			break
		}
		v, err := strconv.ParseUint(string(c), 16, 8)
		if err != nil {
			continue
		}
		if half {
			out = append(out, high<<4|byte(v))
		}
		high, half = byte(v), !half
	}
	if half {
		out = append(out, high<<4)
	}
	return string(out)
}

// until reads objects up to a closing bracket. An operator in between ends it,
// as where a bracket was lost.
func (l *lexer) until(end keyword) (list []any) {
	if l.depth++; l.depth > maxNesting {
		l.at = len(l.data)
		return nil
	}
	defer func() { l.depth-- }()
	for {
		back := l.at
		o, ok := l.next()
		if !ok || o == any(end) {
			return list
		}
		if k, is := o.(keyword); is {
			if k == "endobj" || k == "stream" || k == "endstream" {
				l.at = back
				return list
			}
			continue
		}
		list = append(list, o)
	}
}

func (l *lexer) dict() dict {
	list := l.until(">>")
	d := make(dict, len(list)/2)
	for i := 0; i+1 < len(list); {
		key, is := list[i].(name)
		if !is {
			i++
			continue
		}
		d[key] = list[i+1]
		i += 2
	}
	return d
}
