package ingredient

import (
	"regexp"
	"strings"
)

// Amounts as old books write them, and as the reading of a picture leaves them.

// inWords are parts of a measure in words, at the head of a line.
var inWords = []struct {
	words  *regexp.Regexp
	figure string // with the groups of words
}{
	{regexp.MustCompile(`^(?i)(?:about )?half-an?-`), "1/2 "},
	{regexp.MustCompile(`^(?i)half (pound|lb|pint|ounce|oz|cup|teaspoon|tablespoon|litre|kilo)`), "1/2 $1"},
	{regexp.MustCompile(`^(?i)(?:about )?(?:a |one )?quarter[- ](?:of )?an?[- ](pound|lb|pint|ounce|oz|cup|teaspoon|tablespoon|litre|kilo)`), "1/4 $1"},
	{regexp.MustCompile(`^(?i)(?:about )?three[- ]quarters (?:of )?an? (pound|lb|pint|ounce|oz|cup|teaspoon|tablespoon|litre|kilo)`), "3/4 $1"},
	{regexp.MustCompile(`^(?i)(?:a|one) (pound|pint|ounce) and a half (?:of )?`), "1 1/2 $1 "},
	{regexp.MustCompile(`^(?i)(two|three|four) (pound|pint|ounce)s and a half (?:of )?`), "$1 1/2 $2 "},
}

// onePound is "1 1b" or "11b": pounds whose letter l was read as a one.
var onePound = regexp.MustCompile(`^(\d*[1-9]|\d+/\d+|\d* \d/\d) ?1b(s?)\b`)

// aWeight is "a 6 lb joint", which is 6 lb of it; "a 400 g tin" is one tin.
var aWeight = regexp.MustCompile(`^(?i)an? (\d+(?:\.\d+)?(?:-\d+(?:\.\d+)?)? ?(?:lb|kg|g|oz|pound|kilo))s? (\S+)`)

// oldAmounts puts a figure for a part of a measure in words.
func oldAmounts(text string) string {
	text = onePound.ReplaceAllString(text, "$1 lb$2")
	if text == "" || strings.IndexByte("aohtfAOHTFq", text[0]) < 0 {
		return text
	}
	if m := aWeight.FindStringSubmatch(text); m != nil && isUnit(strings.ToLower(m[2])) == notUnit {
		return text[strings.IndexByte(text, ' ')+1:]
	}
	for _, p := range inWords {
		if m := p.words.FindStringIndex(text); m != nil {
			return p.words.ReplaceAllString(text, p.figure)
		}
	}
	return text
}
