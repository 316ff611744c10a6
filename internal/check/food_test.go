package check

var foodCases = []ruleCase{
	{rule: "chill-too-short", bad: `
09:00 | A | Melt the chocolate and fold in the whisked whites. Pour the mousse into glasses and put in the fridge to set
09:30 | A | Take the mousse out of the fridge and decorate`, row: 1, good: `
09:00 | A | Melt the chocolate and fold in the whisked whites. Pour the mousse into glasses and put in the fridge to set
11:00 | A | Take the mousse out of the fridge and decorate`},
	{rule: "prove-out-of-range", bad: `
09:00 | A | Knead the bread dough for 10 minutes
09:10 | A | Leave the dough to prove
09:22 | A | Knock back and shape the loaf
09:30 | A | Prove again
09:55 | A | Bake at 220C for 30 minutes`, row: 2, good: `
09:00 | A | Knead the bread dough for 10 minutes
09:10 | A | Leave the dough to prove
10:00 | A | Knock back and shape the loaf
10:08 | A | Prove again
10:30 | A | Bake at 220C for 30 minutes`},
	{rule: "pastry-not-rested", bad: `
09:00 | A | Make the shortcrust pastry
09:15 | A | Roll out the pastry and line the flan ring`, row: 2, good: `
09:00 | A | Make the shortcrust pastry, wrap and chill
09:15 | B | Chop the vegetables
09:35 | A | Roll out the pastry and line the flan ring`},
	{rule: "pastry-not-rested", bad: `
09:00 | A | Rub fat into flour, add water to make pastry
09:12 | A | Roll pastry and line tart tin`, row: 2, good: `
09:00 | A | Roll out the ready made puff pastry
09:12 | A | Line tart tin`},
	{rule: "filled-warm", bad: `
09:00 | A | Bake the sponge cakes at 180C for 25 minutes
09:25 | A | Take the cakes out of the oven
09:30 | A | Ice the cakes with buttercream`, row: 3, good: `
09:00 | A | Bake the sponge cakes at 180C for 25 minutes
09:25 | A | Take the cakes out of the oven and cool on a rack
10:05 | A | Ice the cakes with buttercream`},
	{rule: "filled-warm", bad: `
09:00 | A | Bake the profiteroles at 200C for 25 minutes
09:25 | A | Take out profiteroles
09:32 | A | Pipe in the whipped cream`, row: 3, good: `
09:00 | A | Bake the lemon cake at 180C for 25 minutes
09:25 | A | Take the cake out of the oven
09:28 | A | Drizzle the lemon syrup over the cake`},
	{rule: "not-rested", bad: `
09:00 | A | Roast the chicken at 200C for 60 minutes
10:00 | A | Take the chicken out of the oven
10:02 | A | Carve the chicken`, row: 3, good: `
09:00 | A | Roast the chicken at 200C for 60 minutes
10:00 | A | Take the chicken out of the oven and leave to rest
10:12 | A | Carve the chicken`},
	{rule: "wait-too-short", with: soupAndCake, bad: `
09:00 | A | Peel and chop the carrots and the onion
09:15 | A | Fry the onion and carrots for 10 minutes
09:27 | A | Add the stock and lentils and simmer
09:35 | A | Blend the soup until smooth`, row: 4, good: `
09:00 | A | Peel and chop the carrots and the onion
09:15 | A | Fry the onion and carrots for 10 minutes
09:27 | A | Add the stock and lentils and simmer
09:50 | A | Blend the soup until smooth`},
	{rule: "wait-too-long", with: soupAndCake, bad: `
09:00 | A | Peel and chop the carrots and the onion
09:15 | A | Fry the onion and carrots for 10 minutes
09:27 | A | Add the stock and lentils and simmer
09:30 | B | Cream the butter and the sugar
11:20 | A | Blend the soup until smooth`, row: 5, good: `
09:00 | A | Peel and chop the carrots and the onion
09:15 | A | Fry the onion and carrots for 10 minutes
09:27 | A | Add the stock and lentils and simmer
09:30 | B | Cream the butter and the sugar
09:55 | A | Blend the soup until smooth`},
	{rule: "hot-dish-early", with: kitchen, bad: `
09:00 | A | Fry the onions and mince
09:20 | A | Simmer the beef stew for 30 minutes
10:40 | A | Serve the beef stew`, row: 2, good: `
09:00 | A | Fry the onions and mince
09:20 | A | Simmer the beef stew for 30 minutes
09:50 | A | Keep the beef stew hot in a low oven
10:40 | A | Serve the beef stew`},
	{rule: "finishes-scattered", with: kitchen, bad: `
09:00 | A | Simmer the curry for 20 minutes
09:25 | A | Serve the curry
09:30 | B | Simmer the stew for 20 minutes
09:55 | B | Serve the stew`, row: 2, good: `
09:00 | A | Simmer the curry for 20 minutes
09:05 | B | Simmer the stew for 20 minutes
09:25 | A | Serve the curry
09:30 | B | Serve the stew`},
	{rule: "course-order", bad: `
09:00 | A | Serve the dessert
09:20 | B | Serve the main course`, row: 1, good: `
09:00 | A | Serve the main course
09:20 | B | Serve the dessert`},
	{rule: "fragile-too-early", bad: `
09:00 | A | Toss the salad leaves in the dressing
09:40 | A | Serve the salad`, row: 1, good: `
09:00 | A | Wash the salad leaves
09:35 | A | Toss the salad leaves in the dressing
09:40 | A | Serve the salad`},
	{rule: "gelatine-or-enzyme", bad: `
09:00 | A | Add the gelatine to the cream and bring to the boil
09:10 | A | Pour into moulds`, row: 1, good: `
09:00 | A | Warm the cream and stir in the gelatine, do not boil
09:10 | A | Pour into moulds`},
	{rule: "gelatine-or-enzyme", bad: `
09:00 | A | Soak the gelatine
09:10 | A | Stir in the chopped kiwi and pour into moulds`, row: 2, good: `
09:00 | A | Soak the gelatine
09:10 | A | Stir in the tinned pineapple and pour into moulds`},
	{rule: "tin-not-ready", bad: `
09:00 | A | Cream butter and sugar, beat in eggs, fold in flour for the sponge
09:20 | A | Grease and line the cake tins
09:25 | A | Bake the sponge at 180C for 25 minutes`, row: 2, good: `
09:00 | A | Grease and line the cake tins
09:05 | A | Cream butter and sugar, beat in eggs, fold in flour for the sponge
09:25 | A | Bake the sponge at 180C for 25 minutes`},
	{rule: "water-not-on", bad: `
09:00 | A | Grate the cheese
09:10 | A | Cook the pasta in boiling water for 10 minutes`, row: 2, good: `
09:00 | A | Put a pan of water on to boil. Grate the cheese
09:10 | A | Cook the pasta in boiling water for 10 minutes`},
	{rule: "plates-and-garnish", with: kitchen, bad: `
09:00 | A | Simmer the curry for 20 minutes
09:25 | A | Serve the curry`, row: 0, good: `
09:00 | A | Simmer the curry for 20 minutes
09:15 | all | Warm the plates
09:25 | A | Serve the curry`},
	{rule: "simmer-time-missing", bad: `
09:00 | A | Chop the onions
09:10 | A | Simmer the sauce
09:25 | B | Cream the butter and sugar`, row: 2, good: `
09:00 | A | Chop the onions
09:10 | A | Simmer the sauce until reduced by half
09:25 | B | Cream the butter and sugar`},
}
