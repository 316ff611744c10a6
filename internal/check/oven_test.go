package check

import "plait.example/internal/practical"

func gas(p *practical.Practical) { p.Kitchen.Ovens[0].Fuel = practical.Gas }

var ovenCases = []ruleCase{
	{rule: "not-pre-heated", bad: `
09:00 | A | Rub the butter into the flour
09:15 | A | Light the oven, gas 6
09:18 | A | Bake the scones at gas 6 for 12 minutes
09:30 | A | Take the scones out`, row: 3, good: `
09:00 | A | Light the oven, gas 6
09:02 | A | Rub the butter into the flour
09:18 | A | Bake the scones at gas 6 for 12 minutes
09:30 | A | Take the scones out`},
	{rule: "not-pre-heated", bad: `
09:00 | A | Rub the butter into the flour
09:18 | A | Bake the scones at gas 6 for 12 minutes
09:30 | A | Take the scones out`, row: 2, good: `
08:55 | all | Aprons on, oven on 200C
09:18 | A | Bake the scones at 200C for 12 minutes
09:30 | A | Take the scones out`},
	{rule: "heated-too-early", bad: `
09:00 | A | Turn the oven on to 200C
09:50 | A | Bake the scones at 200C for 12 minutes
10:02 | A | Take the scones out`, row: 1, good: `
09:25 | A | Turn the oven on to 200C
09:50 | A | Bake the scones at 200C for 12 minutes
10:02 | A | Take the scones out`},
	{rule: "no-temperature", bad: `
09:20 | A | Put the oven on
09:50 | A | Bake the scones for 12 minutes
10:02 | A | Take the scones out`, row: 2, good: `
09:20 | A | Put the oven on
09:50 | A | Bake the scones for 12 minutes at 200 degrees
10:02 | A | Take the scones out`},
	{rule: "wrong-scale", with: kitchenWith(gas), bad: `
09:20 | A | Turn on the oven to 200C
09:50 | A | Bake the scones for 12 minutes at 200C
10:02 | A | Take the scones out`, row: 1, good: `
09:20 | A | Turn on the oven to gas 6
09:50 | A | Bake the scones for 12 minutes at 200C, gas 6
10:02 | A | Take the scones out`},
	{rule: "pair-disagrees", bad: `
09:20 | A | Turn on the oven to 220C / gas 4
09:50 | A | Bake the scones for 12 minutes
10:02 | A | Take the scones out`, row: 1, good: `
09:20 | A | Turn on the oven to 180C / 160 fan / gas 4
09:50 | A | Bake the scones for 12 minutes
10:02 | A | Take the scones out`},
	{rule: "temperature-differs", with: soupAndCake, bad: `
09:00 | B | Cream the butter and sugar, beat in the eggs, fold in the flour
09:20 | B | Bake the cake at 220C
09:46 | B | Take the cake out of the oven`, row: 2, good: `
09:00 | B | Cream the butter and sugar, beat in the eggs, fold in the flour
09:20 | B | Bake the cake at gas 4
09:46 | B | Take the cake out of the oven`},
	{rule: "two-heats", bad: `
09:00 | A | Put the meringues in the oven at 120C for 60 minutes
09:20 | B | Roast the potatoes at 200C for 40 minutes
10:00 | all | Take everything out of the oven`, row: 2, good: `
09:00 | A | Put the cake in the oven at 180C for 30 minutes
09:20 | B | Roast the potatoes at 190C for 40 minutes
10:00 | all | Take everything out of the oven`},
	{rule: "no-time-to-change", bad: `
09:00 | A | Bake the rolls at 220C for 15 minutes
09:15 | A | Take the rolls out
09:18 | B | Bake the sponge at 180C for 25 minutes
09:43 | B | Take the sponge out`, row: 3, good: `
09:00 | A | Bake the rolls at 220C for 15 minutes
09:15 | A | Take the rolls out and turn the oven down to 180C
09:30 | B | Bake the sponge at 180C for 25 minutes
09:55 | B | Take the sponge out`},
	{rule: "not-turned", bad: `
09:00 | A | Bake the rolls at 220C for 15 minutes
09:15 | A | Take the rolls out
09:35 | B | Bake the custard at 140C for 40 minutes
10:15 | B | Take the custard out`, row: 3, good: `
09:00 | A | Bake the rolls at 220C for 15 minutes
09:15 | A | Take the rolls out. Turn oven to 140C
09:35 | B | Bake the custard at 140C for 40 minutes
10:15 | B | Take the custard out`},
	{rule: "shelves-over-full", with: kitchen, bad: `
09:00 | A | Bake the bread at fan 180C for 30 minutes
09:05 | B | Bake the biscuits at fan 180C for 15 minutes
09:08 | C | Bake the tart at fan 180C for 30 minutes
09:20 | B | Take the biscuits out
09:30 | A | Take the bread out
09:40 | C | Take the tart out`, row: 3, good: `
09:00 | A | Bake the bread at fan 180C for 30 minutes
09:05 | B | Bake the biscuits at fan 180C for 15 minutes
09:20 | B | Take the biscuits out
09:21 | C | Bake the tart at fan 180C for 30 minutes
09:30 | A | Take the bread out
09:51 | C | Take the tart out`},
	{rule: "too-many-rings", with: kitchenWith(func(p *practical.Practical) { p.Kitchen.Rings = 2 }), bad: `
09:00 | A | Simmer the sauce for 30 minutes
09:05 | B | Boil the potatoes for 20 minutes
09:10 | C | Simmer the jam for 20 minutes`, row: 3, good: `
09:00 | A | Simmer the sauce for 30 minutes
09:05 | B | Boil the potatoes for 20 minutes
09:32 | C | Simmer the jam for 20 minutes`},
	{rule: "grill-with-oven", with: kitchenWith(func(p *practical.Practical) { p.Kitchen.Grill = practical.GrillInOven }), bad: `
09:00 | A | Bake the cake at fan 160C for 40 minutes
09:20 | B | Grill the bacon for 8 minutes
09:40 | A | Take the cake out`, row: 2, good: `
09:00 | A | Bake the cake at fan 160C for 40 minutes
09:40 | A | Take the cake out
09:45 | B | Grill the bacon for 8 minutes`},
	{rule: "shared-kit", with: kitchen, bad: `
09:00-09:10 | A | Blitz the soup in the food processor
09:05-09:15 | B | Make breadcrumbs in the food processor`, row: 2, good: `
09:00-09:10 | A | Blitz the soup in the food processor
09:10-09:14 | all | Wash up
09:15-09:20 | B | Make breadcrumbs in the food processor`},
	{rule: "kit-taken-by-another", with: kitchenWith(func(p *practical.Practical) {
		p.Kitchen.Taken = []practical.Taken{{Kit: practical.Processor, Number: 1, From: 9 * 60, Until: 9*60 + 30}}
	}), bad: `
09:20 | A | Blitz the soup in the food processor
09:40 | A | Pour the soup into a pan`, row: 1, good: `
09:20 | A | Chop the onions by hand
09:40 | A | Blitz the soup in the food processor`},
	{rule: "cake-door-opened", bad: `
09:00 | A | Bake the sponge at 180C for 25 minutes
09:08 | B | Put the pizza in the oven at 180C for 15 minutes
09:25 | A | Take the sponge out
09:26 | B | Take the pizza out`, row: 2, good: `
09:00 | A | Bake the sponge at 180C for 25 minutes
09:22 | B | Put the pizza in the oven at 180C for 15 minutes
09:25 | A | Take the sponge out
09:37 | B | Take the pizza out`},
}
