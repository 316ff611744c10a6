package check

import (
	"slices"
	"testing"

	"plait.example/internal/match"
	"plait.example/internal/practical"
)

// ruleCase is a plan with a rule's fault, and one much like it without. The
// plans are invented by us.
type ruleCase struct {
	rule string
	with func(t *testing.T) *practical.Practical // nil: the plan alone
	bad  string
	row  int // that the finding is about; 0: the plan as a whole
	good string
}

func kitchen(*testing.T) *practical.Practical { return kitchenOnly() }

// kitchenWith is kitchenOnly changed.
func kitchenWith(change func(*practical.Practical)) func(*testing.T) *practical.Practical {
	return func(*testing.T) *practical.Practical {
		p := kitchenOnly()
		change(p)
		return p
	}
}

// checked runs the rules over the lines of a plan, matched to the practical's
// recipes if it has any.
func checked(t *testing.T, with func(*testing.T) *practical.Practical, lines string) []Finding {
	t.Helper()
	var p *practical.Practical
	if with != nil {
		p = with(t)
	}
	m := planOf(t, p, lines)
	if p != nil && len(p.Dishes) > 0 {
		m = match.Match(m.Plan, p, nil)
	}
	return Run(m, Options{})
}

func TestRules(t *testing.T) {
	seen := map[string]bool{}
	for _, cases := range [][]ruleCase{clockCases, pairCases, ovenCases, foodCases, methodCases, hygieneCases, dovetailCases, wordCases} {
		for _, c := range cases {
			seen[c.rule] = true
			t.Run(c.rule, func(t *testing.T) {
				found := checked(t, c.with, c.bad)
				if !slices.ContainsFunc(found, func(f Finding) bool { return f.Rule == c.rule && f.Row == c.row }) {
					t.Errorf("not told at row %d; found:\n%s", c.row, shown(found))
				}
				found = checked(t, c.with, c.good)
				if slices.ContainsFunc(found, func(f Finding) bool { return f.Rule == c.rule }) {
					t.Errorf("told of a plan without the fault:\n%s", shown(found))
				}
			})
		}
	}
	for _, r := range Usual().List() {
		if !seen[r.Name] {
			t.Errorf("rule %s has no case", r.Name)
		}
	}
}
