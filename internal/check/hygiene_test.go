package check

const calm = `
09:00 | all | Wash hands
09:05 | A | Slice the cucumber
09:15 | A | Serve the salad`

var hygieneCases = []ruleCase{
	{rule: "no-hand-wash-at-start", bad: `
09:00 | A | Wash the vegetables
09:05 | A | Slice the cucumber
09:20 | A | Toss the salad
09:30 | A | Serve the salad`, row: 1, good: calm},
	{rule: "no-hand-wash-after-raw", bad: `
09:00 | all | Wash hands
09:05 | A | Cut the chicken into strips
09:15 | B | Whisk the cream`, row: 2, good: `
09:00 | all | Wash hands
09:05 | A | Cut the chicken into strips | wash hands after
09:15 | B | Whisk the cream`},
	{rule: "raw-then-ready", bad: `
09:00 | A | Fillet the salmon
09:15 | B | Slice the tomatoes for the salad`, row: 2, good: `
09:00 | A | Fillet the salmon
09:10 | all | Sanitise the board and knife, wash hands
09:15 | B | Slice the tomatoes for the salad`},
	{rule: "raw-then-ready", bad: `
09:00 | A | Shape the mince into burgers
09:15 | A | Cut the lettuce`, row: 2, good: `
09:00 | A | Shape the mince into burgers
09:15 | A | Chop the tomatoes
09:20 | A | Simmer the tomatoes for the sauce`},
	{rule: "raw-first-by-choice", bad: `
09:00 | A | Dice the chicken
09:15 | B | Chop the lettuce and cucumber`, row: 2, good: `
09:00 | B | Chop the lettuce and cucumber
09:15 | A | Dice the chicken`},
	{rule: "no-core-check", bad: `
09:00 | A | Fry the chicken pieces for 15 minutes
09:20 | A | Serve the chicken with rice`, row: 1, good: `
09:00 | A | Fry the chicken pieces for 15 minutes
09:16 | A | Check with a probe
09:20 | A | Serve the chicken with rice`},
	{rule: "no-core-check", bad: `
09:00 | A | Put the sausages in the oven at 180C for 25 minutes
09:25 | A | Take the sausages out`, row: 1, good: `
09:00 | A | Fry the peppers
09:25 | A | Take the eggs out of the fridge`},
	{rule: "raw-left-out", bad: `
09:00 | A | Cut up the pork
09:10 | B | Make the crumble
10:00 | A | Fry the pork`, row: 1, good: `
09:00 | A | Cut up the pork and put it in the fridge
09:10 | B | Make the crumble
10:00 | A | Fry the pork`},
	{rule: "cold-dish-out", with: kitchen, bad: `
09:00 | A | Whip the cream and spread it on the trifle
11:00 | A | Serve the trifle`, row: 1, good: `
09:00 | A | Whip the cream and spread it on the trifle. Refrigerate
11:00 | A | Serve the trifle`},
	{rule: "cold-dish-out", with: kitchen, bad: `
09:00 | A | Fill the eclairs with cream
10:20 | A | Serve the eclairs`, row: 1, good: `
09:00 | A | Cream the butter and sugar
10:20 | A | Serve the biscuits`},
	{rule: "hot-into-fridge", bad: `
09:00 | A | Bake the cheesecake at 150C for 45 minutes
09:45 | A | Take the cheesecake out and put it in the fridge`, row: 2, good: `
09:00 | A | Bake the cheesecake at 150C for 45 minutes
09:45 | A | Take the cheesecake out and leave to cool
10:30 | A | Put the cheesecake in the fridge`},
	{rule: "left-warm", bad: `
09:00 | A | Boil the rice for 12 minutes
10:40 | A | Serve the rice`, row: 1, good: `
09:00 | A | Boil the rice for 12 minutes, rinse in cold water and chill
10:40 | A | Serve the rice`},
	{rule: "reheated-twice", bad: `
09:00 | A | Simmer the curry for 20 minutes
09:40 | A | Reheat the curry
10:00 | A | Reheat the curry again`, row: 3, good: `
09:00 | A | Simmer the curry for 20 minutes
09:40 | A | Reheat the curry
09:50 | A | Warm the plates`},
	{rule: "marinade-reused", bad: `
09:00 | A | Marinate the chicken in soy and ginger
09:40 | A | Fry the chicken
09:55 | A | Pour the marinade over the chicken to serve`, row: 3, good: `
09:00 | A | Marinate the chicken in soy and ginger
09:40 | A | Fry the chicken
09:50 | A | Boil the marinade for a sauce`},
	{rule: "allergens-unmarked", with: soupAndCake, bad: wholeSoup, row: 0, good: wholeSoup + `
10:00 | all | Write the allergen card: egg, milk, celery`},
	{rule: "hot-fat-no-note", bad: `
09:00 | A | Deep fry the chips
09:20 | A | Drain the chips`, row: 1, good: `
09:00 | A | Deep fry the chips | never leave the fryer, teacher near
09:20 | A | Drain the chips`},
	{rule: "walks-away", bad: `
09:00 | A | Make the caramel
09:02 | B | Slice the strawberries
09:15 | A | Pour the caramel into the moulds`, row: 2, good: `
09:00 | A | Make the caramel
09:15 | B | Slice the strawberries
09:20 | A | Pour the caramel into the moulds`},
	{rule: "no-washing-up", bad: `
09:00 | all | Wash hands and wash the vegetables
09:05 | A | Brush the tart with egg wash
09:15 | A | Serve the tart`, row: 0, good: calm + `
09:20 | all | Washing-up`},
	{rule: "no-final-clean", bad: `
09:00 | all | Wash up
10:30 | A | Serve the salad`, row: 0, good: calm + `
09:20 | all | Clean down the work surfaces and sink`},
}
