package check

import (
	"testing"

	"plait.example/internal/match"
)

var dovetailCases = []ruleCase{
	{rule: "not-dovetailed", bad: `
09:00 | A | Peel the carrots
09:10 | A | Simmer the carrots
09:40 | A | Blend the soup
09:45 | B | Cream the butter and sugar
09:55 | B | Fold in the flour
10:00 | B | Bake at 180C for 25 minutes
10:25 | B | Take out the cake`, row: 0, good: `
09:00 | A | Peel the carrots
09:10 | A | Simmer the carrots
09:12 | B | Cream the butter and sugar
09:25 | B | Fold in the flour
09:30 | A | Blend the soup
09:35 | B | Bake at 180C for 25 minutes
10:00 | B | Take out the cake`},
	{rule: "hands-idle", with: kitchen, bad: `
09:00 | A | Put the bread in the oven at fan 180C for 35 minutes
09:35 | A | Take out the bread
10:10 | A | Simmer the stew for 50 minutes
11:00 | A | Serve the stew
11:50 | all | Wash up`, row: 1, good: `
09:00 | A | Put the bread in the oven at fan 180C for 35 minutes
09:02 | B | Peel, chop and slice the vegetables for the stew and the meat
09:35 | A | Take out the bread
09:37 | B | Simmer the stew for 50 minutes
09:40 | A | Make the pastry, roll it and line the tins
10:20 | all | Wash up
10:30 | A | Make the icing and pipe it on the cakes`},
	{rule: "cheap-reordering", bad: `
09:00 | A | Put the bread in the oven at 200C for 35 minutes
09:35 | A | Take out the bread
09:40 | B | Peel and dice the potatoes
10:10 | B | Boil the potatoes for 15 minutes`, row: 3, good: `
09:00 | A | Put the bread in the oven at 200C for 35 minutes
09:01 | B | Peel and dice the potatoes and make the salad dressing with herbs
09:35 | A | Take out the bread
09:40 | B | Boil the potatoes for 15 minutes`},
	{rule: "washing-up-at-end", with: kitchen, bad: `
09:00 | A | Peel the carrots
11:00 | A | Simmer the carrots
11:45 | all | Wash up`, row: 3, good: `
09:00 | A | Peel the carrots
10:00 | all | Wash up
11:00 | A | Simmer the carrots
11:45 | all | Wash up`},
	{rule: "no-contingency", with: kitchen, bad: `
09:00 | A | Peel the carrots
11:54 | A | Serve the soup`, row: 2, good: `
09:00 | A | Peel the carrots
11:35 | A | Serve the soup`},
	{rule: "no-contingency", with: kitchen, bad: `
09:00 | A | Peel the carrots
11:54 | A | Serve the soup`, row: 2, good: `
09:00 | A | Peel the carrots
11:54 | A | Serve the soup | if late leave out the croutons`},
}

// A saving that the caller works out is told to the teacher, and asks the learner nothing.
func TestSaving(t *testing.T) {
	saving := func(match.Matched) (Saved, bool) {
		return Saved{Row: 2, After: 1, Minutes: 12, What: "slice the cucumber while the bread bakes"}, true
	}
	for _, f := range Run(planOf(t, nil, calm), Options{Saving: saving}) {
		if f.Rule == "cheap-reordering" {
			if f.Row != 2 || f.Minutes != 12 || f.Question != "" || f.Answer != "About 12 min saved: slice the cucumber while the bread bakes." {
				t.Errorf("told as %+v", f)
			}
			return
		}
	}
	t.Error("the saving is not told")
}
