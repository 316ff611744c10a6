// Package feedback says to people what a check of their plan found: to a pupil
// a page of questions with their own rows and their own plait, to the teacher
// a table of the class. It owns the choice of what matters most and the words
// around it; it must not know how plans are read, matched or checked.
package feedback

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"plait.example/internal/check"
	"plait.example/internal/match"
	"plait.example/internal/paper"
	"plait.example/internal/written"
)

// Setting says what a learner may be shown. The teacher chooses it; local rules
// of the assessment stand above it.
type Setting string

// The settings.
const (
	Assessed Setting = "assessed" // nothing is shown to the learner
	Coached  Setting = "coached"  // questions
	Worked   Setting = "worked"   // questions, with what was seen in the plan
)

// Shows says whether a learner may be shown anything.
func (s Setting) Shows() bool { return s == Coached || s == Worked }

// Plan is a checked plan of one pupil.
type Plan struct {
	File     string
	Matched  match.Matched
	Findings []check.Finding
	Before   *Plan // an earlier version by the same pupil; nil: none
}

// Who is the pupil: as the plan says, or the file's name without its ending.
func (p Plan) Who() string {
	if p.Matched.Plan.Candidate != "" {
		return p.Matched.Plan.Candidate
	}
	base := p.File[strings.LastIndexAny(p.File, `/\`)+1:]
	if dot := strings.LastIndex(base, "."); dot > 0 {
		base = base[:dot]
	}
	return base
}

// MostPoints is how many questions a pupil is asked at once.
const MostPoints = 5

// Top are the findings that matter most, at most n: what stops the cook before
// what costs marks, one of each family before a second of any, and no rule twice
// while there is another.
func Top(findings []check.Finding, n int) []check.Finding {
	type ranked struct {
		check.Finding
		again, round int
	}
	rules, families := map[string]int{}, map[string]int{}
	byWeight := asked(findings)
	slices.SortStableFunc(byWeight, func(a, b check.Finding) int {
		return cmp.Or(cmp.Compare(rank(a.Severity), rank(b.Severity)), cmp.Compare(weight(b), weight(a)))
	})
	all := make([]ranked, len(byWeight))
	for i, f := range byWeight {
		all[i] = ranked{f, rules[f.Rule], 0}
		if rules[f.Rule]++; all[i].again == 0 {
			all[i].round = families[f.Family]
			families[f.Family]++
		}
	}
	slices.SortStableFunc(all, func(a, b ranked) int {
		return cmp.Or(cmp.Compare(rank(a.Severity), rank(b.Severity)), cmp.Compare(a.again, b.again), cmp.Compare(a.round, b.round))
	})
	var top []check.Finding
	for _, f := range all[:min(n, len(all))] {
		top = append(top, f.Finding)
	}
	return top
}

// asked are the findings that have a question; others are for the teacher alone.
func asked(findings []check.Finding) (with []check.Finding) {
	for _, f := range findings {
		if f.Question != "" {
			with = append(with, f)
		}
	}
	return with
}

func rank(s check.Severity) int {
	return slices.Index([]check.Severity{check.Stops, check.Marks, check.Polish}, s)
}

// weight orders findings of one severity: what is unsafe first, then what costs
// the most minutes.
func weight(f check.Finding) int {
	if f.Family == "hygiene and safety" {
		return 1000 + f.Minutes
	}
	return f.Minutes
}

// mostQuoted is how many of their rows stand with a question.
const mostQuoted = 3

// quotes are the pupil's own rows that a finding is about.
func quotes(p Plan, f check.Finding) (list []string) {
	numbers := f.Rows
	if len(numbers) == 0 && f.Row > 0 {
		numbers = []int{f.Row}
	}
	for _, n := range numbers {
		if r, ok := p.row(n); ok && len(list) < mostQuoted {
			list = append(list, quote(r))
		}
	}
	if len(list) == 0 {
		list = []string{"Your whole plan"}
	}
	return list
}

// quote is a row as its writer sees it.
func quote(r match.Row) string {
	text := strings.Join(strings.Fields(r.Text), " ")
	if runes := []rune(text); len(runes) > 110 {
		text = strings.TrimSpace(string(runes[:107])) + " ..."
	}
	at := strings.Join(strings.Fields(r.Written), " ")
	if at == "" && r.Clock != written.NoClock {
		at = r.At.String()
	}
	return strings.TrimSpace(fmt.Sprintf("Row %d, %s \u201c%s\u201d", r.Number, at, text))
}

func (p Plan) row(number int) (match.Row, bool) {
	for _, r := range p.Matched.Rows {
		if r.Number == number {
			return r, true
		}
	}
	return match.Row{}, false
}

// Mark stands in the properties of every document of feedback, and in the last
// line of those without properties, so that none is taken for a plan.
const Mark = "plait-feedback"

// Marked ends a text with the line that has the Mark.
func Marked(text []byte) []byte {
	return append(text[:len(text):len(text)], "\nWritten by plait; this is no time plan ("+Mark+").\n"...)
}

// Cautions stand on everything that is given out.
var Cautions = []string{
	"These are questions, not approval: what is not asked here may still need a look.",
	"Local food-safety rules, the school's risk assessment and the responsible adult decide.",
}

// Note is a pupil's page. With the setting assessed there is none, and it is false.
func Note(p Plan, s Setting) (paper.Note, bool) {
	if !s.Shows() {
		return paper.Note{}, false
	}
	n := paper.Note{Title: "Questions about your time plan", Name: p.Who(), Foot: Cautions, Plait: Plait(p.Matched), Mark: Mark}
	top := Top(p.Findings, MostPoints)
	n.Lead = lead(p, len(top))
	for _, f := range top {
		point := paper.NotePoint{Rows: quotes(p, f), Ask: f.Question}
		if s == Worked {
			point.Why = f.Evidence
		}
		n.Points = append(n.Points, point)
	}
	return n, true
}

// lead says what the page is, and what has changed since an earlier version.
func lead(p Plan, asked int) (lines []string) {
	switch rows := len(p.Matched.Rows); {
	case rows == 0:
		lines = append(lines, "No rows with times were found in your plan. Talk to your teacher about how it is set out.")
	case asked == 0:
		lines = append(lines, fmt.Sprintf("Your plan has %d rows, and nothing was found to ask about.", rows))
	case asked == 1:
		lines = append(lines, fmt.Sprintf("Your plan has %d rows. Think about this question, then look at your plan again.", rows))
	default:
		lines = append(lines, fmt.Sprintf("Your plan has %d rows. Think about these questions, the most important first, then look at your plan again.", rows))
	}
	if p.Before != nil {
		lines = append(lines, Compare(*p.Before, p).words())
	}
	return lines
}
