package network

import (
	"strings"
	"unicode"
	"unicode/utf8"
)

// sentence makes a row of a piece of a method: without the "and" or "then" that
// tied it to the piece before, and with a capital.
func sentence(text string) string {
	text = strings.TrimSpace(text)
	for {
		shorter := text
		for _, word := range []string{"and ", "then ", "or ", ", ", "; "} {
			shorter = cutPrefixFold(shorter, word)
		}
		if shorter == text {
			break
		}
		text = strings.TrimSpace(shorter)
	}
	first, size := utf8.DecodeRuneInString(text)
	if size == 0 || first == utf8.RuneError {
		return text
	}
	return string(unicode.ToUpper(first)) + text[size:]
}

// said are words that a serve row has already.
var said = map[string]bool{"and": true, "then": true, "serve": true, "served": true, "hot": true, "cold": true}

// presentation is how a dish is served, without what the row has said already.
func presentation(how string) string {
	words := strings.Fields(strings.TrimRight(how, ". "))
	for len(words) > 0 && said[strings.ToLower(strings.Trim(words[0], ",:;"))] {
		words = words[1:]
	}
	return strings.Join(words, " ")
}

func cutPrefixFold(s, prefix string) string {
	if len(s) >= len(prefix) && strings.EqualFold(s[:len(prefix)], prefix) {
		return s[len(prefix):]
	}
	return s
}
