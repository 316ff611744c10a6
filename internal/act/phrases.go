package act

import (
	_ "embed" // the table of phrases
	"strings"
)

// phrases are words that mean one thing together. The left side is read by
// words, longest first; the right side is the word they are read as. Those that
// begin with "a-" are nouns, whatever their parts would be.
//
//go:embed phrases.txt
var phraseLines string

var phrases = phraseTable(phraseLines)

type phrase struct {
	parts []string
	as    string
}

// phraseTable holds the phrases by their first word, longest first.
func phraseTable(lines string) map[string][]phrase {
	table := map[string][]phrase{}
	for _, l := range strings.Split(strings.TrimSpace(lines), "\n") {
		from, as, _ := strings.Cut(l, "|")
		p := phrase{strings.Fields(from), as}
		list := table[p.parts[0]]
		i := 0
		for i < len(list) && len(list[i].parts) >= len(p.parts) {
			i++
		}
		table[p.parts[0]] = append(list[:i:i], append([]phrase{p}, list[i:]...)...)
	}
	return table
}

// phraseWords are the words of the phrases.
var phraseWords = func() set {
	s := set{}
	for _, list := range phrases {
		for _, p := range list {
			for _, w := range p.parts {
				s[w] = true
			}
		}
	}
	return s
}()

// joinPhrases puts one token in the place of each phrase.
func joinPhrases(ts []token) (joined []token) {
	for i := 0; i < len(ts); {
		p, ok := phraseAt(ts, i)
		if !ok {
			joined = append(joined, ts[i])
			i++
			continue
		}
		last := ts[i+len(p.parts)-1]
		joined = append(joined, token{kind: word, text: p.as, stem: stem(p.as), start: ts[i].start, end: last.end, purpose: p.parts[0] == "to"})
		i += len(p.parts)
	}
	return joined
}

func phraseAt(ts []token, i int) (phrase, bool) {
	if ts[i].kind != word {
		return phrase{}, false
	}
next:
	for _, p := range phrases[ts[i].text] {
		for j, w := range p.parts {
			if t := at(ts, i+j); t.kind == number || t.text != w {
				continue next
			}
		}
		return p, true
	}
	return phrase{}, false
}
