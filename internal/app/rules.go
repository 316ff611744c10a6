package app

import (
	"context"

	"plait.example/internal/check"
	"plait.example/internal/practical"
)

// rulesKind keeps the teacher's file of rules, under the empty name.
const rulesKind = "rules"

// RulesInUse is what plans are checked by.
type RulesInUse struct {
	Rules  check.Rules
	Own    string           // the teacher's own file; empty: there is none
	Faults practical.Faults // of Own: it cannot be read any more, and the usual rules stand meanwhile
}

// Rules is the rules that plans are checked by, and the teacher's own file when
// there is one. A kept file that this program cannot read any more is not used,
// and its faults say what is wrong.
func (a *App) Rules(ctx context.Context) (RulesInUse, error) {
	kept, err := a.Store.Kept(ctx, a.Teacher, rulesKind)
	if err != nil || kept[""] == "" {
		return RulesInUse{Rules: check.Usual()}, err
	}
	rules, faults := check.ReadRules("rules.yaml", []byte(kept[""]))
	if len(faults) > 0 {
		a.log().Error("the kept file of rules is not readable; the usual rules are used", "faults", faults.Error())
		return RulesInUse{check.Usual(), kept[""], faults}, nil
	}
	return RulesInUse{rules, kept[""], nil}, nil
}

// UseRules keeps a teacher's file of rules and checks by it from now on. Its
// faults are practical.Faults by line; nothing is then kept.
func (a *App) UseRules(ctx context.Context, name string, data []byte) error {
	if _, faults := check.ReadRules(name, data); len(faults) > 0 {
		return faults
	}
	return a.Store.Keep(ctx, a.Teacher, rulesKind, map[string]string{"": string(data)}, nil, a.now())
}

// DropRules goes back to the rules that come with the program.
func (a *App) DropRules(ctx context.Context) error {
	return a.Store.Keep(ctx, a.Teacher, rulesKind, nil, []string{""}, a.now())
}
