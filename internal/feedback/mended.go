package feedback

import (
	"fmt"
	"strings"

	"plait.example/internal/check"
)

// Mended is what has become of the findings of an earlier version.
type Mended struct {
	Gone  []check.Finding // of the earlier version
	Still []check.Finding // as the later version has them
	New   []check.Finding
}

// Compare says what was mended between two versions of a plan. Findings are the
// same when they are of one rule and one dish or step, and of rows that say much
// the same; each is paired once.
func Compare(before, after Plan) (m Mended) {
	paired := make([]bool, len(after.Findings))
	for _, old := range before.Findings {
		best, most := -1, 0.0
		for i, f := range after.Findings {
			if paired[i] || f.Rule != old.Rule {
				continue
			}
			if like := likeness(before, old, after, f); like > most {
				best, most = i, like
			}
		}
		if best < 0 {
			m.Gone = append(m.Gone, old)
			continue
		}
		paired[best] = true
	}
	for i, f := range after.Findings {
		if paired[i] {
			m.Still = append(m.Still, f)
		} else {
			m.New = append(m.New, f)
		}
	}
	return m
}

// likeness is 0 for findings about different things, more the more alike they are.
func likeness(before Plan, a check.Finding, after Plan, b check.Finding) float64 {
	if a.Dish != b.Dish && a.Dish != "" && b.Dish != "" {
		return 0
	}
	if a.Step != "" && b.Step != "" {
		if a.Step == b.Step {
			return 3
		}
		return 0
	}
	if (a.Row == 0) != (b.Row == 0) {
		return 0
	}
	if a.Row == 0 {
		return 1
	}
	ra, okA := before.row(a.Row)
	rb, okB := after.row(b.Row)
	if !okA || !okB {
		return 0
	}
	if same := shared(ra.Text, rb.Text); same >= 0.4 {
		return same
	}
	return 0
}

// shared is how many of the words of two texts are in both, of all (Jaccard 1912).
func shared(a, b string) float64 {
	in := map[string]int{}
	for _, w := range strings.Fields(strings.ToLower(a)) {
		in[strings.Trim(w, ".,;:()")] |= 1
	}
	for _, w := range strings.Fields(strings.ToLower(b)) {
		in[strings.Trim(w, ".,;:()")] |= 2
	}
	both := 0
	for _, k := range in {
		if k == 3 {
			both++
		}
	}
	if len(in) == 0 {
		return 1
	}
	return float64(both) / float64(len(in))
}

// words says it to the pupil in a sentence.
func (m Mended) words() string {
	gone, still, newer := len(asked(m.Gone)), len(asked(m.Still)), ""
	if n := len(asked(m.New)); n > 0 {
		newer = fmt.Sprintf(" New: %d.", n)
	}
	switch was := gone + still; {
	case was == 0 && newer == "":
		return "Nothing was asked about your last version, and nothing is now."
	case still == 0 && was > 0:
		return "Since your last version: everything that was asked about has been mended." + newer
	default:
		return fmt.Sprintf("Since your last version: %d of %d questions are answered, %d are still open.", gone, was, still) + newer
	}
}
