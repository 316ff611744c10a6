package recipe

import (
	"fmt"
	"regexp"
	"strings"

	"plait.example/internal/practical"
)

// followsOf writes what a step comes after: a line for each, by its words, with
// the gap before them. A step of another dish is passed over.
func followsOf(s practical.Step, named map[string]string) string {
	var lines []string
	for _, a := range s.After {
		words, known := named[a.Step]
		if !known {
			continue
		}
		words = strings.Join(strings.Fields(words), " ")
		switch {
		case a.Most != nil && a.Least == 0:
			words = fmt.Sprintf("at most %d min after: %s", *a.Most, words)
		case a.Most != nil:
			words = fmt.Sprintf("%d to %d min after: %s", a.Least, *a.Most, words)
		case a.Least > 0:
			words = fmt.Sprintf("at least %d min after: %s", a.Least, words)
		}
		lines = append(lines, words)
	}
	return orNone(strings.Join(lines, "\n"))
}

var gapForm = regexp.MustCompile(`^(?:at least (\d{1,4})|at most (\d{1,4})|(\d{1,4}) to (\d{1,4})) min after: `)

// putFollows finds the steps again by their words; where one of them is not in
// this recipe the step is left as it was read. ids is nil when only the form is judged.
func putFollows(s *practical.Step, text string, ids map[string]string) string {
	var after []practical.After
	for line := range strings.SplitSeq(strings.TrimSpace(text), "\n") {
		if text == none {
			break
		}
		a, words := readGap(line)
		if NormalWords(words) == "" {
			return "write the words of a step on each line, or none"
		}
		id, there := ids[NormalWords(words)]
		if !there {
			return ""
		}
		a.Step = id
		after = append(after, a)
	}
	if ids != nil {
		s.After = after
	}
	return ""
}

// readGap cuts the gap from a line.
func readGap(line string) (practical.After, string) {
	m := gapForm.FindStringSubmatch(line)
	if m == nil {
		return practical.After{}, line
	}
	var a practical.After
	switch {
	case m[1] != "":
		a.Least = digits(m[1])
	case m[2] != "":
		a.Most = new(digits(m[2]))
	default:
		a.Least, a.Most = digits(m[3]), new(digits(m[4]))
	}
	return a, line[len(m[0]):]
}

// circular says whether the steps' order goes round in a ring.
func circular(steps []practical.Step) bool {
	at := map[string]int{}
	for i, s := range steps {
		at[s.ID] = i
	}
	state := make([]int, len(steps)) // 1: on the way, 2: done
	var visit func(i int) bool
	visit = func(i int) bool {
		state[i] = 1
		for _, a := range steps[i].After {
			k, there := at[a.Step]
			if there && (state[k] == 1 || state[k] == 0 && visit(k)) {
				return true
			}
		}
		state[i] = 2
		return false
	}
	for i := range steps {
		if state[i] == 0 && visit(i) {
			return true
		}
	}
	return false
}
