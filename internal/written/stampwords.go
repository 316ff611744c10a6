package written

import (
	"regexp"
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"

	"golang.org/x/text/unicode/norm"
)

// Slips of typing and the many signs between hours and minutes, in the order in
// which they are put right. mends says that what is meant is not what stands there.
var tidies = []struct {
	find  *regexp.Regexp
	put   string
	mends bool
}{
	{regexp.MustCompile(`^(?:\d{4}-\d\d-\d\d|\d{1,2}[/.]\d{1,2}[/.]\d{2,4})[t, ] ?(\d)`), "$1", false},
	{regexp.MustCompile(`^(?:mon|tue|wed|thu|fri)[a-z]*\.?,? ?(\d)`), "$1", false},
	{regexp.MustCompile(`[–—−‒‑]`), "-", false},
	{regexp.MustCompile(`[’‘´]`), "'", false},
	{regexp.MustCompile(`[∶·]`), ":", false},
	{regexp.MustCompile(`[\s\x{00A0}]+`), " ", false},
	{regexp.MustCompile(`\b[li|](\d)`), "1$1", true},
	{regexp.MustCompile(`(\d)[li|]([\d:.;]|$)`), "${1}1$2", true},
	{regexp.MustCompile(`([\d:.;])oo\b`), "${1}00", true},
	{regexp.MustCompile(`([\d:.;])o(\d|\b)`), "${1}0$2", true},
	{regexp.MustCompile(`\bo(\d)`), "0$1", true},
	{regexp.MustCompile(`(\d) ?[:;.,]{2,3} ?(\d)`), "$1:$2", true},
	{regexp.MustCompile(`(\d) ?; ?(\d)`), "$1:$2", true},
	{regexp.MustCompile(`(\d) ?([:.]) ?(\d)`), "$1$2$3", false},
	{regexp.MustCompile(`(\d),(\d)`), "$1:$2", false},
	{regexp.MustCompile(`\b(\d\d?)h ?(\d\d)\b`), "$1:$2", false},
	{regexp.MustCompile(`^(\d\d?) (\d\d)( ?[ap]\.?m?\.?)?$`), "$1:$2$3", false},
	{regexp.MustCompile(`^(\d\d?)-(0\d)$`), "$1:$2", true},
	{regexp.MustCompile(`\b([ap])\. ?m\b\.?`), "${1}m", false},
	{regexp.MustCompile(`^[\s(\[*•~.,:|-]+|[\s)\]*.,;:|-]+$`), "", false},
	{regexp.MustCompile(`^(?:time:?|from|between|at|by|approx\.?|approximately|about|around|circa|ca?\.|@|=|~) ?(\d|(?:a quarter|quarter|half|five|ten|twenty|noon|midday|\w+ o'?clock)\b)`), "$1", false},
	{regexp.MustCompile(`(\d) ?(?:onwards|approx\.?|ish|start|sharp)$`), "$1", false},
	{regexp.MustCompile(`^(?:it )?takes `), "", false},
}

// longestStamp is more than any time as people write it, in bytes.
const longestStamp = 60

// tidy is a text that may be a time in plain signs and small letters: "9:05",
// "9:05-9:20", "5 mins".
func tidy(text string) (s string, mended bool) {
	if len(text) > longestStamp {
		return "", false
	}
	s = strings.ToLower(strings.TrimSpace(norm.NFKC.String(text)))
	if !strings.ContainsAny(s, "0123456789") && !spokenHint.MatchString(s) {
		return "", false
	}
	for _, t := range tidies {
		put := t.find.ReplaceAllString(s, t.put)
		if put != s && t.mends {
			mended = true
		}
		s = put
	}
	return s, mended
}

var spokenHint = regexp.MustCompile(`\b(past|to|half|quarter|noon|midday|o'?clock|hour)\b`)

// numberWords are the numbers that are said in words of a time.
var numberWords = map[string]int{
	"one": 1, "two": 2, "three": 3, "four": 4, "five": 5, "six": 6, "seven": 7, "eight": 8, "nine": 9, "ten": 10,
	"eleven": 11, "twelve": 12, "twenty": 20, "twenty-five": 25, "twenty five": 25, "quarter": 15, "a quarter": 15, "half": 30,
}

var spokenTime = regexp.MustCompile(`^(?:(half|a quarter|quarter|five|ten|twenty[ -]five|twenty|\d\d?)(?: minutes?| mins?)? ?(past|to|after) ?)([a-z]+|\d\d?)(?: ?o'?clock)?\b`)

var halfHour = regexp.MustCompile(`^half[ -](one|two|three|four|five|six|seven|eight|nine|ten|eleven|twelve|\d\d?)\b`)

var oClock = regexp.MustCompile(`^([a-z]+) ?o'?clock\b`)

// spoken takes "quarter past 9", "half nine" (half past, as in Britain), "ten to
// ten", "nine o'clock", "noon".
func (s *scanner) spoken() (clockWord, bool) {
	if s.words("noon", "midday", "12 noon", "12:00 noon") {
		return clockWord{kind: clock, times: []option{{at: 12 * 60}}}, true
	}
	if m := spokenTime.FindStringSubmatch(s.rest); m != nil {
		minutes, hour := valueOf(m[1]), valueOf(m[3])
		if minutes < 1 || minutes > 59 || hour < 1 || hour > 12 {
			return clockWord{}, false
		}
		s.rest = s.rest[len(m[0]):]
		if m[2] == "to" {
			return clockWord{kind: clock, times: hoursOf((hour+10)%12+1, "", []option{{at: 60 - minutes}})}, true
		}
		return clockWord{kind: clock, times: hoursOf(hour, "", []option{{at: minutes}})}, true
	}
	for m, minutes := range map[*regexp.Regexp]int{halfHour: 30, oClock: 0} {
		if found := m.FindStringSubmatch(s.rest); found != nil {
			if hour := valueOf(found[1]); hour >= 1 && hour <= 12 {
				s.rest = s.rest[len(found[0]):]
				return clockWord{kind: clock, times: hoursOf(hour, "", []option{{at: minutes}})}, true
			}
		}
	}
	return clockWord{}, false
}

// valueOf is a number in words or figures; -1 for neither.
func valueOf(s string) int {
	if n, known := numberWords[s]; known {
		return n
	}
	n, err := strconv.Atoi(s)
	if err != nil {
		return -1
	}
	return n
}

var (
	lengthPattern = regexp.MustCompile(`^(?:(\d{1,2}|an|a|one|two|three|1/2|half an|1 1/2|one and a half)[ -]?(?:hours?|hrs?|h)\b(?: ?(?:and )?(\d{1,2}) ?(?:minutes?|mins?|min\.|m)?(?:\b|$))?|(\d{1,3}) ?(?:minutes?|mins?\.?|m|')(?:[^a-z0-9]|$))`)
	barePattern   = regexp.MustCompile(`^\d{1,3}\b`)
)

var hourWords = map[string]int{"an": 60, "a": 60, "one": 60, "two": 120, "three": 180, "half an": 30, "1/2": 30, "1 1/2": 90, "one and a half": 90}

// lengthOf takes a length in minutes; with its unit when that is asked for.
func (s *scanner) lengthOf(unit bool) (int, bool) {
	s.space()
	m := lengthPattern.FindStringSubmatch(s.rest)
	if m == nil {
		if !unit && barePattern.MatchString(s.rest) {
			return s.number(3)
		}
		return 0, false
	}
	end := len(m[0])
	if last := m[0][end-1]; m[3] != "" && last != '.' && last != '\'' && (last < 'a' || last > 'z') {
		end-- // what stands after the unit
	}
	s.rest = s.rest[end:]
	if m[3] != "" {
		n, err := strconv.Atoi(m[3])
		return n, err == nil
	}
	minutes, known := hourWords[m[1]]
	if !known {
		hours, err := strconv.Atoi(m[1])
		if err != nil || hours > 5 {
			return 0, false
		}
		minutes = 60 * hours
	}
	if m[2] != "" {
		n, err := strconv.Atoi(m[2])
		return minutes + n, err == nil
	}
	return minutes, true
}

// beginsTime says, at little cost, whether a time can begin a text at all.
func beginsTime(text string) bool {
	text = strings.TrimLeft(text, " \t\n\u00A0([*•~.,:|-–—")
	r, _ := utf8.DecodeRuneInString(text)
	switch {
	case unicode.IsNumber(r), strings.ContainsRune("+@=\"'”〃", r):
		return true
	case !unicode.IsLetter(r):
		return false
	}
	end := strings.IndexFunc(text, func(r rune) bool { return !unicode.IsLetter(r) })
	if end < 0 {
		end = len(text)
	}
	word := strings.ToLower(text[:end])
	return timeWords[word] || len(word) == 1 && end < len(text)
}

// timeWords are the words with which a time begins, beside figures.
var timeWords = func() map[string]bool {
	words := map[string]bool{}
	for _, list := range []map[string]int{numberWords, hourWords} {
		for w := range list {
			words[strings.FieldsFunc(w, func(r rune) bool { return !unicode.IsLetter(r) && !unicode.IsNumber(r) })[0]] = true
		}
	}
	for w := range wordStamps {
		if first := strings.FieldsFunc(w, func(r rune) bool { return !unicode.IsLetter(r) }); len(first) > 0 {
			words[first[0]] = true
		}
	}
	for _, w := range strings.Fields("mon monday tue tues tuesday wed weds wednesday thu thur thurs thursday fri friday noon midday time from between at by approx approximately about around circa ca c after it takes take t li lo io oo ol half quarter") {
		words[w] = true
	}
	return words
}()

// allTimeWords says, at little cost, whether all words of a text can stand in a time.
func allTimeWords(text string) bool {
	for len(text) > 0 {
		begin := strings.IndexFunc(text, unicode.IsLetter)
		if begin < 0 {
			return true
		}
		text = text[begin:]
		end := strings.IndexFunc(text, func(r rune) bool { return !unicode.IsLetter(r) })
		if end < 0 {
			end = len(text)
		}
		if word := text[:end]; word[0] < utf8.RuneSelf && !timeWords[strings.ToLower(word)] && !innerWords[strings.ToLower(word)] {
			return false
		}
		text = text[end:]
	}
	return true
}

// innerWords are words that stand in a time and do not begin it.
var innerWords = func() map[string]bool {
	words := map[string]bool{}
	for _, w := range strings.Fields("am pm a p m min mins minute minutes hr hrs hour hours h past to until till til and for clock oclock o l i in into the later onwards ish sharp before up setup an past five serving service end go") {
		words[w] = true
	}
	for w := range wordStamps {
		for _, part := range strings.FieldsFunc(w, func(r rune) bool { return !unicode.IsLetter(r) }) {
			words[part] = true
		}
	}
	return words
}()
