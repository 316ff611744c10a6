package recipe

import (
	"strings"
	"testing"
)

// TestScribbles: notes, a message, the text of a photo. Invented.
func TestScribbles(t *testing.T) {
	for _, c := range []struct{ name, text, title, list, steps string }{
		{
			"note", "Spag bol for 4\nmince 500g\nonion\nspaghetti 400g\n\nfry onion 5 min\nadd mince, simmer 20-30min lid on\n",
			"Spag bol/4", "mince;onion;spaghetti", "fry onion 5 min;add mince,;simmer 20-30min lid on",
		},
		{
			"message", "From: Mr Hale\nSubject: Thursday\n\nHi Year 10,\n\nPlease bring:\n- 250g bread flour\n- 1 tsp salt\n\nWhat we will do\nMix to a dough.\nKnead for 10 mins.\n",
			"/0", "bread flour;salt", "Mix to a dough.;Knead for 10 mins.",
		},
		{
			"photo", "Bean burgers (4 portions)\nINGREDIENTS\nl x 400g can beans\nl egg, beaten\nMETHOD\nl Mash the beans until\nsmooth.\n2 Add the egg and mix.\n3 Chill for 20 minutes.\n",
			"Bean burgers/4", "beans;egg", "Mash the beans until\nsmooth.;Add the egg and mix.;Chill for 20 minutes.",
		},
		{
			"a number alone", "Chilli\nIngredients: (4)\n1 lrg onion\n1 tin toms\nMethod:\n1.Chop the onion.\n2.Simmer for 20 minutes.\n",
			"Chilli/0", "onion;toms", "Chop the onion.;Simmer for 20 minutes.",
		},
		{
			"bullets", "Pizza toast\n\n✔ 2 slices bread\n✔ ½ pepper\n\n• Turn on the grill\n• Slice the pepper\n• Grill for 4 minutes\n",
			"Pizza toast/0", "bread;pepper", "Turn on the grill;Slice the pepper;Grill for 4 minutes",
		},
		{
			"table", "# Curry\n\n| Quantity | Ingredient | Prep |\n|---|---|---|\n| 300 g | chicken | diced |\n| 1 tbsp | oil | |\n\n**Steps**\n\na) Fry the chicken for 8 minutes.\nb) Serve.\n\n> Tip: freeze the rest.\n",
			"Curry/0", "chicken;oil", "Fry the chicken for 8 minutes.;Serve.",
		},
	} {
		all := Read(c.text)
		checkRecipes(t, c.text, all)
		r := all[0]
		var list, steps []string
		for _, ing := range r.Ingredients {
			list = append(list, ing.Name)
		}
		for _, s := range r.Steps {
			steps = append(steps, s.Text)
		}
		if title := r.Title + "/" + decimal(float64(r.Serves)); title != c.title || strings.Join(list, ";") != c.list || strings.Join(steps, ";") != c.steps {
			t.Errorf("%s: %q\n got %q, %q\nwant %q, %q", c.name, title, list, steps, c.list, c.steps)
		}
	}
}

func TestOneWholeIsNoPortion(t *testing.T) {
	for said, want := range map[string]int{"Makes 1 loaf": 0, "Yield: 1 pie": 0, "Serves 1": 1, "Makes 2 loaves": 2, "Makes 12 buns": 12} {
		r := Read("Bread\n" + said + "\n\n500 g flour\n1 tsp yeast\n\nMethod\n1. Knead.\n2. Bake for 30 minutes.\n")[0]
		if r.Serves != want || r.Title != "Bread" {
			t.Errorf("%s: %q serves %d, want %d", said, r.Title, r.Serves, want)
		}
	}
}

func TestPortionsOfAList(t *testing.T) {
	for heading, want := range map[string]int{"Ingredients for 12 cupcakes:": 12, "Ingredients (serves 4)": 4, "Ingredients (for 4 people):": 4, "Ingredients (base)": 0, "Ingredients for 2 x 20 cm tins:": 0, "Ingredients": 0} {
		text := "Cakes\n\n" + heading + "\n500 g flour\n1 tsp yeast\n\nMethod\n1. Knead.\n2. Bake for 30 minutes.\n"
		all := Read(text)
		checkRecipes(t, text, all)
		if r := all[0]; r.Serves != want || len(r.Ingredients) != 2 || r.Title != "Cakes" {
			t.Errorf("%s: %q serves %d, want %d; %+v", heading, r.Title, r.Serves, want, r.Ingredients)
		}
	}
}

func TestPortionsAtTheEndOfATitle(t *testing.T) {
	for title, want := range map[string]string{
		"Dinner for 2": "Dinner/2", "Chilli (4 portions)": "Chilli/4", "Stew for 6 people": "Stew/6", "Soup - 2 servings.": "Soup/2",
		"Cake for 4 July": "Cake for 4 July/0", "Formula 1": "Formula 1/0", "for 4": "for 4/0", "Ready in 30": "Ready in 30/0",
	} {
		if rest, n := titlePortions(title); rest+"/"+decimal(float64(n)) != want {
			t.Errorf("%q: %q, %d, want %q", title, rest, n, want)
		}
	}
}
