package practicaltest

import (
	"strings"

	"pgregory.net/rapid"
)

// words draws a few plain words.
func words(t *rapid.T, label string) string {
	known := []string{"pastry", "onions", "sauce", "rice", "fold", "the", "slowly", "tin", "plain", "½", "crème", "8", "mm"}
	return strings.Join(rapid.SliceOfN(rapid.SampledFrom(known), 1, 5).Draw(t, label), " ")
}

// odd draws nothing mostly, else text that is hard on files: what means
// something in YAML, several lines, letters of every alphabet.
func odd(t *rapid.T, label string) string {
	return rapid.SampledFrom([]string{
		"", "", "", "", "", "", "golden, crisp underneath; core 75 °C", "a: b", "# hash", "- dash", "true", "NULL", "~", "1e3", "0x1f", "09:00", "2026-12-04",
		"one\ntwo", "one\n\n two\nthree\n", "\n", " before", "after ", "tab\there", "a\r\nb", `"both" 'kinds' \ of`, "'", "&a *b", "{c: d}", "[e]", "? f", "| g", "> h",
		"! i", "% j", "@ k", "` l", "<<", "---", "...", "日本語", "🥧 pie", "a\u2028b", "a\u00a0b", "½ tsp", ",", ": ", " #", "a,\nb: c # d", "x\n",
	}).Draw(t, label)
}
