package app

import (
	"context"

	"plait.example/internal/check"
)

// rulesKind keeps the teacher's file of rules, under the empty name.
const rulesKind = "rules"

// Rules is the rules that plans are checked by, and the teacher's own file when
// there is one. A kept file that this program cannot read any more is passed
// over, and the log says so.
func (a *App) Rules(ctx context.Context) (rules check.Rules, own string, err error) {
	kept, err := a.Store.Kept(ctx, a.Teacher, rulesKind)
	if err != nil || kept[""] == "" {
		return check.Usual(), "", err
	}
	rules, faults := check.ReadRules("rules.yaml", []byte(kept[""]))
	if len(faults) > 0 {
		a.log().Error("the kept file of rules is not readable; the usual rules are used", "faults", faults.Error())
		return check.Usual(), "", nil
	}
	return rules, kept[""], nil
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
