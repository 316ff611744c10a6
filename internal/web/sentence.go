package web

import (
	"strings"
	"unicode"
	"unicode/utf8"
)

// sentence gives a message its capital and its full stop.
func sentence(text string) string {
	text = strings.TrimSpace(text)
	if text == "" {
		return ""
	}
	first, size := utf8.DecodeRuneInString(text)
	text = string(unicode.ToUpper(first)) + text[size:]
	if last, _ := utf8.DecodeLastRuneInString(text); !strings.ContainsRune(".?:…", last) {
		text += "."
	}
	return text
}
