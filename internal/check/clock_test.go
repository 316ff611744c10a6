package check

import "plait.example/internal/practical"

var clockCases = []ruleCase{
	{rule: "clock-backwards", bad: `
09:00 | A | Peel and chop the carrots
09:20 | A | Simmer the carrots in stock for 15 minutes
09:10 | B | Cream the butter and sugar
09:40 | A | Blend the soup`, row: 3, good: `
12:40 | A | Peel and chop the carrots
12:50 | A | Simmer the carrots in stock for 15 minutes
13:05 | B | Cream the butter and sugar
13:05 | A | Stir the soup`},
	{rule: "clock-backwards", bad: `
09:00 | A | Peel and chop the carrots
09:20 | A | Simmer the carrots in stock for 15 minutes
09:10 | A | Blend the soup
09:40 | A | Serve the soup`, row: 3, good: `
09:00 | A | Peel and chop the carrots
09:20 | A | Simmer the carrots in stock for 15 minutes
09:40 | A | Blend the soup
09:05 | B | Cream the butter and sugar
09:25 | B | Bake the cake at 180C for 20 minutes
09:45 | B | Take out the cake`},
	{rule: "gap", with: kitchen, bad: `
09:00 | A | Peel and chop the carrots
09:10 | A | Drain the carrots
09:45 | B | Cream the butter and sugar
09:55 | A | Blend the soup`, row: 2, good: `
09:00 | A | Peel and chop the carrots
09:10 | A | Simmer the carrots in stock for 15 minutes
09:25 | B | Cream the butter and sugar
09:35 | A | Blend the soup and pass it through a sieve into a clean pan`},
	{rule: "overrun", with: kitchen, bad: `
09:00 | A | Peel and chop the carrots
11:50 | A | Put the tart in the oven at fan 180C for 25 minutes
11:55 | all | Wash up`, row: 2, good: `
09:00 | A | Peel and chop the carrots
11:30 | A | Put the tart in the oven at fan 180C for 25 minutes
11:55 | A | Take out the tart
12:00 | all | Finish`},
	{rule: "overrun", with: kitchen, bad: `
09:00 | A | Peel and chop the carrots
12:10 | A | Serve the soup in bowls`, row: 2, good: `
09:00 | A | Peel and chop the carrots
12:00 | A | Serve the soup in bowls`},
	{rule: "set-up-work", with: kitchen, bad: `
08:40 | A | Peel and dice the carrots
09:00 | A | Simmer them in stock`, row: 1, good: `
08:40 | A | Wash the carrots, weigh the flour and line a tin
09:00 | A | Peel and dice the carrots`},
	{rule: "oven-in-set-up", with: kitchen, bad: `
08:50 | A | Turn on the oven to 180C fan
09:05 | A | Bake the biscuits for 12 minutes`, row: 1, good: `
09:00 | A | Turn on the oven to 180C fan
09:15 | A | Bake the biscuits for 12 minutes`},
	{rule: "overfull-block", bad: `
09:00 | A | Knead the bread dough for 10 minutes
09:04 | B | Grate the cheese
09:15 | B | Stir in the cheese`, row: 1, good: `
09:00 | A | Knead the bread dough for 10 minutes
09:10 | B | Grate the cheese
09:15 | B | Stir in the cheese`},
	{rule: "two-hands-on", bad: `
09:00-09:20 | A | Knead the dough
09:10-09:25 | B | Peel and chop the potatoes
09:30 | B | Boil the potatoes`, row: 2, good: `
09:00-09:20 | A | Simmer the sauce
09:10-09:20 | B | Peel and chop the potatoes
09:30 | B | Boil the potatoes`},
	{rule: "two-hands-on", bad: `
09:00 | A | Roll out the pastry
09:00 | B | Dice the chicken
09:15 | B | Fry the onions`, row: 2, good: `
09:00 | A | Leave the pastry to rest
09:00 | B | Dice the chicken
09:15 | B | Fry the onions`},
	{rule: "too-little-time", with: soupAndCake, bad: `
09:00 | A | Peel and chop the carrots and the onion
09:03 | B | Cream the butter and the sugar, beat in the eggs, fold in the flour
09:06 | A | Fry the onion and carrots for 10 minutes
09:09 | B | Whip the cream
09:12 | A | Blend the soup
09:15 | B | Fill the cake with the cream and dust with icing sugar`, row: 5, good: `
09:00 | A | Peel and chop the carrots and the onion
09:15 | B | Cream the butter and the sugar, beat in the eggs, fold in the flour
09:35 | A | Fry the onion and carrots for 10 minutes
09:50 | B | Whip the cream
10:00 | A | Blend the soup
10:15 | B | Fill the cake with the cream and dust with icing sugar`},
	{rule: "extra-time", with: kitchenWith(func(p *practical.Practical) { p.Clock.Extra.Cook, p.Clock.Extra.Serve = 25, 25 }), bad: `
09:00 | A | Peel and chop the carrots
11:50 | A | Serve the soup in bowls`, row: 2, good: `
09:00 | A | Peel and chop the carrots
12:30 | A | Serve the soup in bowls`},
	{rule: "rest-break", with: kitchenWith(func(p *practical.Practical) {
		p.Clock.Breaks = []practical.Break{{At: 10 * 60, Minutes: 10}}
	}), bad: `
09:50 | A | Peel and chop the carrots
10:05 | A | Chop the onions`, row: 2, good: `
09:50 | A | Peel and chop the carrots
10:10 | A | Chop the onions`},
}
