package pdf

import (
	"strings"
	"unicode/utf16"
)

// cmap maps the codes of a font to text (9.10.3), and tells how many bytes they have.
type cmap struct {
	text  map[string]string
	bytes [5]bool // whether codes of so many bytes are named
}

// most mappings that are kept of one font, and most codes of one range.
const maxMappings = 1 << 16

// toUnicode reads a font's ToUnicode stream.
func (f *file) toUnicode(s *stream) *cmap {
	c := &cmap{text: map[string]string{}}
	l := &lexer{data: f.unpack(s)}
	var stack []any
	for len(c.text) < maxMappings {
		o, ok := l.next()
		if !ok {
			break
		}
		k, is := o.(keyword)
		if !is {
			if stack = append(stack, o); len(stack) > 3*maxMappings {
				stack = nil
			}
			continue
		}
		switch k {
		case "endcodespacerange":
			for _, o := range stack {
				if code, is := o.(string); is && len(code) > 0 && len(code) < len(c.bytes) {
					c.bytes[len(code)] = true
				}
			}
		case "endbfchar":
			for i := 0; i+1 < len(stack); i += 2 {
				c.set(stack[i], stack[i+1])
			}
		case "endbfrange":
			for i := 0; i+2 < len(stack); i += 3 {
				c.span(stack[i], stack[i+1], stack[i+2])
			}
		}
		stack = stack[:0]
	}
	return c
}

func (c *cmap) set(code, to any) {
	from, is := code.(string)
	text, is2 := to.(string)
	if is && is2 && len(from) > 0 && len(from) < len(c.bytes) {
		c.text[from] = utf16BE(text)
	}
}

// span maps a range of codes that differ in their last two bytes.
func (c *cmap) span(low, high, to any) {
	from, is := low.(string)
	last, is2 := high.(string)
	if !is || !is2 || len(from) != len(last) || len(from) == 0 || len(from) >= len(c.bytes) {
		return
	}
	code := []byte(from)
	list, isList := to.(array)
	first, isText := to.(string)
	units := []byte(first)
	for i := 0; i < maxMappings && len(c.text) < maxMappings; i++ {
		switch {
		case isList && i < len(list):
			c.set(string(code), list[i])
		case isText:
			c.text[string(code)] = utf16BE(string(units))
			increase(units)
		default:
			return
		}
		if string(code) >= last {
			return
		}
		increase(code)
	}
}

// increase adds one to a number in bytes.
func increase(n []byte) {
	for i := len(n) - 1; i >= 0; i-- {
		if n[i]++; n[i] != 0 {
			return
		}
	}
}

func utf16BE(s string) string {
	units := make([]uint16, 0, len(s)/2)
	if len(s) == 1 {
		return clean(string(rune(s[0])))
	}
	for i := 0; i+1 < len(s); i += 2 {
		units = append(units, uint16(s[i])<<8|uint16(s[i+1]))
	}
	return clean(string(utf16.Decode(units)))
}

// clean takes out control characters and what says nothing, and turns ligatures into letters.
func clean(s string) string {
	return strings.Map(func(r rune) rune {
		switch {
		case r == '\u00A0' || r == '\t' || r == '\n' || r == '\r':
			return ' '
		case r < ' ' || r >= 0x7F && r < 0xA0 || r == '\u00AD' || r == '\u200B' || r == '\uFEFF':
			return -1
		}
		return r
	}, ligatures.Replace(s))
}

var ligatures = strings.NewReplacer("ﬀ", "ff", "ﬁ", "fi", "ﬂ", "fl", "ﬃ", "ffi", "ﬄ", "ffl", "ﬅ", "st", "ﬆ", "st")
