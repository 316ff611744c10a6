package app

import (
	"fmt"
	"slices"
	"strings"

	"plait.example/internal/check"
	"plait.example/internal/written"
)

// Cautions stand under all that is said of a plan.
var Cautions = []string{
	"Findings are questions to look into, and no approval where there are none: words that were not found may still be there.",
	"Local food-safety rules, the school's risk assessment and the responsible adult decide.",
}

// severityWords are the severities as people say them, the worst first.
var severityWords = []struct {
	severity check.Severity
	heading  string
	count    string
}{
	{check.Stops, "Stops the cook, or is unsafe", "stop the cook"},
	{check.Marks, "Costs marks", "cost marks"},
	{check.Polish, "Small", "small"},
}

const textWidth = 96 // characters of a line

// CheckedText writes checked plans for a teacher to read: of each plan its
// findings by severity, with the question for the learner and the answer.
func (a *App) CheckedText(all []Checked) []byte {
	var b strings.Builder
	for _, c := range all {
		writeChecked(&b, c)
		b.WriteString("\n")
	}
	for _, line := range Cautions {
		wrapTo(&b, "", line)
	}
	return []byte(b.String())
}

func writeChecked(b *strings.Builder, c Checked) {
	title := c.File
	if name := c.Matched.Plan.Candidate; name != "" {
		title += ": " + name
	}
	fmt.Fprintf(b, "%s\n%s\n", title, strings.Repeat("=", len([]rune(title))))
	if c.Fault != nil {
		f := *c.Fault
		f.File = ""
		wrapTo(b, "", "Could not be read: "+f.Error())
		return
	}
	if c.Unchecked != nil {
		f := *c.Unchecked
		f.File = ""
		wrapTo(b, "", "Not checked: "+f.Error())
	} else {
		fmt.Fprintf(b, "%s\n", summary(c))
	}
	for _, s := range severityWords {
		first := true
		for _, f := range c.Findings {
			if f.Severity != s.severity {
				continue
			}
			if first {
				fmt.Fprintf(b, "\n%s\n", s.heading)
				first = false
			}
			writeFinding(b, c, f)
		}
	}
	if unread := append(slices.Clone(c.Notes), c.Matched.Plan.Unread...); len(unread) > 0 {
		b.WriteString("\nNot understood\n")
		for _, u := range unread {
			wrapTo(b, "  - ", u)
		}
	}
}

// summary says how many rows and findings there are.
func summary(c Checked) string {
	if c.Empty() {
		return "No plan was found in this file"
	}
	parts := []string{fmt.Sprintf("%d rows", len(c.Matched.Rows))}
	for _, s := range severityWords {
		n := 0
		for _, f := range c.Findings {
			if f.Severity == s.severity {
				n++
			}
		}
		if n > 0 {
			parts = append(parts, fmt.Sprintf("%d %s", n, s.count))
		}
	}
	if len(c.Findings) == 0 {
		parts = append(parts, "nothing found")
	}
	return strings.Join(parts, ", ")
}

func writeFinding(b *strings.Builder, c Checked, f check.Finding) {
	where := "whole plan"
	if row, ok := rowAt(c, f.Row); ok {
		where = fmt.Sprintf("row %d", f.Row)
		if row.Clock != written.NoClock {
			where += ", " + row.At.String()
		}
	}
	wrapTo(b, "  - ", fmt.Sprintf("%s (%s): %s", where, f.Rule, f.Evidence))
	if f.Question != "" {
		wrapTo(b, "      Ask: ", f.Question)
	}
	if f.Answer != "" {
		wrapTo(b, "      Answer: ", f.Answer)
	}
}

// rowAt is a row by its number.
func rowAt(c Checked, number int) (written.Row, bool) {
	for _, r := range c.Matched.Rows {
		if r.Number == number {
			return r.Row, true
		}
	}
	return written.Row{}, false
}

// wrapTo writes a text in lines, all but the first set in as far as its label.
func wrapTo(b *strings.Builder, label, text string) {
	line := label
	width := len([]rune(label))
	set := strings.Repeat(" ", width)
	empty := true
	for _, word := range strings.Fields(text) {
		if n := len([]rune(word)); !empty && width+1+n > textWidth {
			b.WriteString(line + "\n")
			line, width, empty = set, len(set), true
		}
		if !empty {
			line, width = line+" ", width+1
		}
		line, width, empty = line+word, width+len([]rune(word)), false
	}
	b.WriteString(line + "\n")
}
