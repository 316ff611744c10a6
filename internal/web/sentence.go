package web

import (
	"strings"
	"unicode/utf8"
)

// sentence gives a message its capital and its full stop.
func sentence(text string) string {
	text = strings.TrimSpace(text)
	if text == "" {
		return ""
	}
	text = capital(text)
	if last, _ := utf8.DecodeLastRuneInString(text); !strings.ContainsRune(".?:…", last) {
		text += "."
	}
	return text
}
