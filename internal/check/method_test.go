package check

import (
	"testing"

	"plait.example/internal/match"
	"plait.example/internal/written"
)

const wholeSoup = `
09:00 | A | Peel and chop the carrots and the onion
09:15 | A | Fry the onion and carrots for 10 minutes
09:27 | A | Add the stock and lentils and simmer for 20 minutes
09:50 | A | Blend the soup until smooth
09:55 | A | Serve in a bowl with coriander`

var methodCases = []ruleCase{
	{rule: "step-missing", with: soupAndCake, bad: `
09:00 | A | Peel and chop the carrots and the onion
09:15 | A | Fry the onion and carrots for 10 minutes
09:27 | A | Blend until smooth
09:35 | A | Serve in a bowl with coriander`, row: 3, good: wholeSoup},
	{rule: "step-doubled", bad: `
09:00 | A | Roll out the pastry and line the tin
09:30 | B | Chop the onions
09:40 | A | Roll out the pastry and line the tin`, row: 3, good: `
09:00 | A | Roll out the pastry and line the tin
09:30 | B | Chop the onions
09:40 | A | Roll out the rest of the pastry for the lid`},
	{rule: "out-of-order", with: soupAndCake, bad: `
09:00 | A | Fry the onion and carrots for 10 minutes
09:15 | A | Blend the soup until smooth
09:27 | A | Add the stock and lentils to the carrots and simmer for 20 minutes
09:55 | B | Fill the cake with cream
10:00 | B | Cream the butter and the sugar, beat in the eggs, fold in the flour
10:20 | B | Bake the cake at 180C for 25 minutes`, row: 4, good: wholeSoup},
	{rule: "out-of-order", bad: `
09:00 | A | Roll out the pastry
09:15 | A | Make the shortcrust pastry
09:27 | A | Bake the pastry blind for 15 minutes`, row: 1, good: `
09:00 | A | Make the shortcrust pastry
09:30 | A | Roll out the pastry
09:40 | A | Bake the pastry blind for 15 minutes`},
	{rule: "prepared-after-use", bad: `
09:00 | A | Fry the onion and garlic
09:15 | A | Chop the onion
09:27 | A | Add the stock`, row: 1, good: `
09:00 | A | Chop the onion
09:05 | A | Fry the onion and garlic
09:27 | A | Add the stock`},
	{rule: "dish-missing", with: soupAndCake, bad: wholeSoup, row: 0, good: wholeSoup + `
10:00 | B | Cream the butter and the sugar, beat in the eggs, fold in the flour
10:20 | B | Bake the cake at 180C for 25 minutes`},
	{rule: "ingredient-unused", with: soupAndCake, bad: `
09:00 | A | Peel and chop the carrots and the onion
09:15 | A | Fry the onion and carrots for 10 minutes
09:27 | A | Add the stock and simmer for 20 minutes
09:50 | A | Blend the soup until smooth`, row: 0, good: wholeSoup},
}

// A dish that the document's own key names and that no row is for is told
// without a practical, too.
func TestDishOfTheKeyMissing(t *testing.T) {
	m := planOf(t, nil, wholeSoup)
	m.Plan.Dishes = []written.Named{{Name: "Carrot soup", Letter: "A"}, {Name: "Treacle tart", Letter: "B"}}
	found := Run(match.Matched{Plan: m.Plan, Rows: m.Rows}, Options{})
	if len(told(found, "dish-missing")) != 1 {
		t.Errorf("the tart is not told; found:\n%s", shown(found))
	}
}
