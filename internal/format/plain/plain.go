// Package plain turns the bytes of a text file into text, whatever of the usual
// encodings they are in: UTF-8, UTF-16 and UTF-32 with or without a byte-order
// mark, and Windows-1252. It knows nothing of what the text says.
package plain

import (
	"errors"
	"fmt"
	"strings"
	"unicode/utf8"

	"golang.org/x/text/encoding"
	"golang.org/x/text/encoding/charmap"
	"golang.org/x/text/encoding/unicode"
	"golang.org/x/text/encoding/unicode/utf32"
)

// MaxBytes is the greatest size of a file that is read.
const MaxBytes = 2 << 20

// The names that Decode gives to encodings.
const (
	UTF8        = "UTF-8"
	UTF16LE     = "UTF-16LE"
	UTF16BE     = "UTF-16BE"
	UTF32LE     = "UTF-32LE"
	UTF32BE     = "UTF-32BE"
	Windows1252 = "windows-1252"
	Mixed       = "UTF-8 with windows-1252" // UTF-8 into which bytes of the other were pasted
)

// Refusals that a caller may want to tell apart.
var (
	ErrTooLarge = errors.New("the file is too large")
	ErrNotText  = errors.New("the file is not text")
)

// marks are the byte-order marks, the longer before those that they begin with.
var marks = []struct {
	mark, name string
	encoding   encoding.Encoding
}{
	{"\xEF\xBB\xBF", UTF8, unicode.UTF8},
	{"\xFF\xFE\x00\x00", UTF32LE, utf32.UTF32(utf32.LittleEndian, utf32.IgnoreBOM)},
	{"\x00\x00\xFE\xFF", UTF32BE, utf32.UTF32(utf32.BigEndian, utf32.IgnoreBOM)},
	{"\xFF\xFE", UTF16LE, unicode.UTF16(unicode.LittleEndian, unicode.IgnoreBOM)},
	{"\xFE\xFF", UTF16BE, unicode.UTF16(unicode.BigEndian, unicode.IgnoreBOM)},
}

// Decode is the text of a file and the name of the encoding it was in. The
// byte-order mark goes; line ends stay as they were; a few stray control
// characters become spaces. The error wraps ErrTooLarge or ErrNotText.
func Decode(data []byte) (text, name string, err error) {
	if len(data) > MaxBytes {
		return "", "", fmt.Errorf("%w: %d bytes, and at most %d are read; cut it into several files", ErrTooLarge, len(data), MaxBytes)
	}
	text, name, err = decode(string(data))
	if err != nil {
		return "", "", err
	}
	text, err = printable(text)
	return text, name, err
}

func decode(s string) (text, name string, err error) {
	for _, m := range marks {
		if rest, has := strings.CutPrefix(s, m.mark); has {
			text, err = m.encoding.NewDecoder().String(rest)
			if err != nil {
				err = fmt.Errorf("%w: it says it is %s and breaks its rules (%w); save it as UTF-8", ErrNotText, m.name, err)
			}
			return text, m.name, err
		}
	}
	if i := wide(s); i >= 0 {
		text, err = marks[i].encoding.NewDecoder().String(s)
		return text, marks[i].name, err
	}
	if strings.IndexByte(s, 0) >= 0 {
		return "", "", fmt.Errorf("%w: it holds zero bytes, as programs and pictures do; give a text, Word, web or PDF file", ErrNotText)
	}
	if utf8.ValidString(s) {
		return s, UTF8, nil
	}
	text, some := bytewise(s)
	if some {
		return text, Mixed, nil
	}
	return text, Windows1252, nil
}

// wide is the index in marks of the UTF-16 that a text without a mark is in, by
// the zero bytes that Latin letters have in it; -1 when it is not.
func wide(s string) int {
	if len(s) < 2 || len(s)%2 != 0 {
		return -1
	}
	var zeros [2]int
	for i := range min(len(s), 4096) {
		if s[i] == 0 {
			zeros[i%2]++
		}
	}
	pairs := min(len(s), 4096) / 2
	switch {
	case zeros[0] == 0 && zeros[1]*10 >= pairs*7:
		return 3
	case zeros[1] == 0 && zeros[0]*10 >= pairs*7:
		return 4
	}
	return -1
}

// bytewise reads each byte that no UTF-8 character begins with as Windows-1252,
// and says whether some characters beyond ASCII were UTF-8.
func bytewise(s string) (text string, some bool) {
	var b strings.Builder
	b.Grow(len(s) + len(s)/8)
	for i := 0; i < len(s); {
		r, n := utf8.DecodeRuneInString(s[i:])
		if r == utf8.RuneError && n == 1 {
			r = charmap.Windows1252.DecodeByte(s[i])
		} else if n > 1 {
			some = true
		}
		b.WriteRune(r)
		i += n
	}
	return b.String(), some
}

// printable turns control characters that say nothing to a reader into spaces,
// and refuses what has so many that it cannot be text.
func printable(text string) (string, error) {
	controls, length := 0, 0
	for _, r := range text {
		length++
		if control(r) {
			controls++
		}
	}
	if controls == 0 {
		return text, nil
	}
	if controls*50 > length {
		return "", fmt.Errorf("%w: %d of its %d characters are control characters; give a text, Word, web or PDF file", ErrNotText, controls, length)
	}
	return strings.Map(func(r rune) rune {
		if control(r) {
			return ' '
		}
		return r
	}, text), nil
}

// control: C0 and C1 without tab, line feed, vertical tab, form feed and carriage return.
func control(r rune) bool {
	return r < 0x20 && (r < '\t' || r > '\r') || r >= 0x7F && r < 0xA0
}
