package check

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"plait.example/internal/act"
	"plait.example/internal/match"
	"plait.example/internal/practical"
	"plait.example/internal/written"
)

// kitchenOnly is a practical without dishes: an electric fan cooker, four
// rings, a separate grill, a clock of three hours after half an hour of set-up.
func kitchenOnly() *practical.Practical {
	p := practical.StartingPoints()[0].New()
	p.Rules.SetUpVerbs = []string{"weigh", "wash", "line"}
	return p
}

// planOf makes a plan of lines "09:05 | P | text | points"; the last may be
// absent. "09:05-09:20" is a range, "all" is every dish.
func planOf(t *testing.T, p *practical.Practical, lines string) match.Matched {
	t.Helper()
	var plan written.Plan
	for i, line := range strings.Split(strings.TrimSpace(lines), "\n") {
		part := strings.Split(line, "|")
		for k := range part {
			part[k] = strings.TrimSpace(part[k])
		}
		if len(part) < 3 {
			t.Fatalf("line %d: %q has no three parts", i+1, line)
		}
		row := written.Row{Number: i + 1, Line: i, Written: part[0], Text: part[2]}
		from, until, ranged := strings.Cut(part[0], "-")
		at, err := practical.ParseTimeOfDay(from)
		if err != nil {
			t.Fatal(err)
		}
		row.At, row.Clock = at, written.Said
		if ranged {
			if row.Until, err = practical.ParseTimeOfDay(until); err != nil {
				t.Fatal(err)
			}
			row.HasUntil = true
		}
		if part[1] != "" {
			row.Dishes = []string{part[1]}
		}
		if len(part) > 3 {
			row.Points = part[3]
		}
		plan.Rows = append(plan.Rows, row)
	}
	return matchedOf(plan, p)
}

// matchedOf reads the acts of a plan and takes its dishes as letters.
func matchedOf(plan written.Plan, p *practical.Practical) match.Matched {
	m := match.Matched{Plan: plan, Practical: p}
	for _, r := range plan.Rows {
		row := match.Row{Row: r, Acts: act.Read(r.Text), Notes: act.Read(r.Points)}
		if len(r.Dishes) == 1 && r.Dishes[0] != "all" {
			row.Letters = r.Dishes
		}
		m.Rows = append(m.Rows, row)
	}
	return m
}

// shown is findings as lines, for messages.
func shown(found []Finding) string {
	var b strings.Builder
	for _, f := range found {
		fmt.Fprintf(&b, "  %2d %-22s %-6s rows %v %s\n", f.Fault, f.Rule, f.Severity, f.Rows, f.Evidence)
	}
	return b.String()
}

// told lists the rows of the findings of a rule, first rows only.
func told(found []Finding, rule string) (rows []int) {
	for _, f := range found {
		if f.Rule == rule {
			rows = append(rows, f.Row)
		}
	}
	slices.Sort(rows)
	return rows
}
