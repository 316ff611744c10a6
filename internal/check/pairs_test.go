package check

var pairCases = []ruleCase{
	{rule: "in-never-out", bad: `
09:00 | A | Preheat the oven to 180C
09:20 | A | Place the muffins in the oven for 20 minutes
09:50 | B | Toss the salad`, row: 2, good: `
09:00 | A | Preheat the oven to 180C
09:20 | A | Place the muffins in the oven for 20 minutes
09:40 | A | Check with a skewer and remove the muffins
09:50 | B | Toss the salad`},
	{rule: "in-never-out", bad: `
09:00 | A | Preheat the oven to 180C
09:20 | A | Place the muffins in the oven for 20 minutes
09:25 | B | Put the potatoes in to roast at 180C
10:10 | B | Take the potatoes out of the oven`, row: 2, good: `
09:00 | A | Preheat the oven to 180C
09:20 | A | Place the muffins in the oven for 20 minutes
09:40 | A | Cool the muffins on a wire rack`},
	{rule: "out-never-in", bad: `
09:00 | A | Preheat the oven to 180C
09:20 | A | Mix the muffins
09:40 | A | Take the muffins out of the oven`, row: 3, good: `
09:00 | A | Preheat the oven to 180C
09:20 | A | Put the muffins in to bake
09:25 | B | Take the chicken out of the fridge
09:40 | A | Take the muffins out of the oven`},
	{rule: "cook-time-missing", bad: `
09:00 | A | Preheat the oven to 180C
09:20 | A | Put the lasagne in the oven
09:50 | B | Dress the salad`, row: 2, good: `
09:00 | A | Preheat the oven to 180C
09:20 | A | Put the lasagne in the oven for 35 minutes
09:50 | B | Dress the salad`},
	{rule: "cook-time-implausible", bad: `
09:00 | A | Preheat the oven to 180C
09:20 | A | Bake the bread for 4 minutes
09:25 | A | Take the bread out`, row: 2, good: `
09:00 | A | Preheat the oven to 180C
09:20 | A | Bake the bread for 30 minutes
09:50 | A | Take the bread out`},
	{rule: "oven-time-differs", with: soupAndCake, bad: `
09:00 | B | Cream the butter and sugar, beat in the eggs, fold in the flour
09:20 | B | Bake the cake at 180C
09:30 | B | Take the cake out of the oven`, row: 2, good: `
09:00 | B | Cream the butter and sugar, beat in the eggs, fold in the flour
09:20 | B | Bake the cake at 180C
09:46 | B | Take the cake out of the oven`},
	{rule: "timer-not-set", bad: `
09:00 | A | Preheat the oven to 180C
09:20 | A | Bake the bread at 180C for 30 minutes
09:50 | A | Take the bread out
09:55 | B | Bake the biscuits at 180C for 12 minutes
10:07 | B | Take the biscuits out
10:10 | C | Bake the tart at 180C for 25 minutes
10:35 | C | Take the tart out`, row: 2, good: `
09:00 | A | Preheat the oven to 180C
10:10 | C | Bake the tart at 180C for 25 minutes
10:35 | C | Take the tart out
10:40 | A | Bake the bread at 180C for 30 minutes | set timer
11:10 | A | Take the bread out
11:15 | B | Bake the biscuits at 180C for 12 minutes
11:27 | B | Take the biscuits out`},
}
