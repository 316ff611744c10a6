package check

var wordCases = []ruleCase{
	{rule: "no-quality-checks", bad: `
09:00 | A | Peel the carrots
09:10 | A | Simmer the carrots for 15 minutes
09:30 | A | Serve the soup`, row: 0, good: `
09:00 | A | Peel the carrots
09:10 | A | Simmer the carrots until tender
09:30 | A | Serve the soup`},
	{rule: "no-special-points", bad: `
09:00 | A | Peel the carrots
09:50 | A | Simmer the carrots for 15 minutes
10:30 | A | Serve the soup`, row: 0, good: `
09:00 | A | Peel the carrots | claw grip
09:50 | A | Simmer the carrots for 15 minutes | check they are soft
10:30 | A | Serve the soup`},
	{rule: "vague-row", bad: `
09:00 | A | Peel the carrots
09:10 | A | Make the sauce
09:30 | A | Serve the soup`, row: 2, good: `
09:00 | A | Peel carrots
09:10 | A | Make a roux with the butter and flour, add the milk
09:20 | all | Wash up
09:30 | A | Plate up`},
	{rule: "serving-not-described", bad: `
09:00 | A | Peel the carrots
09:10 | B | Bake the bread at 200C for 30 minutes
09:40 | all | Serve everything`, row: 1, good: `
09:00 | A | Peel the carrots
09:10 | B | Bake the bread at 200C for 30 minutes
09:40 | A | Serve the soup in warm bowls with a swirl of cream
09:45 | B | Serve the bread sliced on a board`},
	{rule: "recipe-pasted", bad: `
09:00 | A | Put 200 g of plain flour and 100 g of butter in a bowl and rub them together with the tips of your fingers until the mixture looks like fine breadcrumbs, then add 2 tbsp of cold water
09:20 | A | Take 300 g of mushrooms and 2 tbsp of oil and cook them in a large frying pan over a high heat for ten minutes until all of the liquid has gone and they are brown`, row: 1, good: `
09:00 | A | Rub 100 g butter into 200 g flour until it looks like breadcrumbs
09:20 | A | Fry the mushrooms until brown`},
	{rule: "every-step-the-same", bad: `
09:00 | A | Peel the carrots
09:05 | A | Chop the carrots
09:10 | A | Fry the onion
09:15 | A | Add the stock
09:20 | B | Cream the butter
09:25 | B | Beat in the eggs
09:30 | B | Fold in the flour
09:35 | B | Line the tin
09:40 | B | Fill the tin
09:45 | B | Bake at 180C`, row: 0, good: `
09:00 | A | Peel the carrots
09:05 | A | Chop the carrots
09:10 | A | Fry the onion
09:17 | A | Add the stock
09:20 | B | Cream the butter
09:28 | B | Beat in the eggs
09:30 | B | Fold in the flour
09:35 | B | Line the tin
09:37 | B | Fill the tin
09:45 | B | Bake at 180C`},
	{rule: "no-key-terms", bad: `
09:00 | A | Get the things for the soup
09:10 | A | Do the first part of the soup
09:20 | A | Do the second part of the soup
09:30 | B | Get the things for the cake
09:40 | B | Do the first part of the cake
09:50 | B | Do the second part of the cake`, row: 0, good: `
09:00 | A | Dice the carrots
09:10 | A | Simmer the soup
09:20 | A | Do the second part of the soup
09:30 | B | Cream the butter
09:40 | B | Do the first part of the cake
09:50 | B | Do the second part of the cake`},
}
