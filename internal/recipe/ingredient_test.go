package recipe

import (
	"slices"
	"strings"
	"testing"

	"plait.example/internal/practical"
)

// TestIngredient: the unit is a singular, so that a program finds the same thing under one name,
// with the size of the pack before it. The same amount measured another way is left to the line's
// own words: it is no note about the food.
func TestIngredient(t *testing.T) {
	for _, c := range []practical.Ingredient{
		{Raw: "175g self-raising flour", Quantity: 175, Unit: "g", Name: "self-raising flour"},
		{Raw: "2 x 400g tins chopped tomatoes", Quantity: 2, Unit: "400 g tin", Name: "chopped tomatoes"},
		{Raw: "2 400 g tins chickpeas, drained", Quantity: 2, Unit: "400 g tin", Name: "chickpeas", Note: "drained"},
		{Raw: "1 16-ounce can peeled tomatoes", Quantity: 1, Unit: "16 ounce can", Name: "peeled tomatoes"},
		{Raw: "2 x 400g/14oz tins chopped tomatoes", Quantity: 2, Unit: "400 g tin", Name: "chopped tomatoes"},
		{Raw: "400g/14oz tin cannellini beans, drained", Quantity: 400, Unit: "g tin", Name: "cannellini beans", Note: "drained"},
		{Raw: "a pinch of salt", Quantity: 1, Unit: "pinch", Name: "salt"},
		{Raw: "pinch of salt", Unit: "pinch", Name: "salt"},
		{Raw: "½ tsp ground cumin", Quantity: 0.5, Unit: "tsp", Name: "ground cumin"},
		{Raw: "1 1/2 tsp salt", Quantity: 1.5, Unit: "tsp", Name: "salt"},
		{Raw: "1-2 tbsp cold water", Quantity: 1, Most: 2, Unit: "tbsp", Name: "cold water"},
		{Raw: "50-100 ml ice water", Quantity: 50, Most: 100, Unit: "ml", Name: "ice water"},
		{Raw: "2 large onions, thinly sliced", Quantity: 2, Unit: "large", Name: "onions", Note: "thinly sliced"},
		{Raw: "2 garlic cloves, crushed", Quantity: 2, Unit: "clove", Name: "garlic", Note: "crushed"},
		{Raw: "half a lemon", Quantity: 0.5, Name: "lemon"},
		{Raw: "a handful of coriander", Quantity: 1, Unit: "handful", Name: "coriander"},
		{Raw: "a few basil leaves", Quantity: 3, Name: "basil leaves"},
		{Raw: "15 g (1 tbsp) lemon juice", Quantity: 15, Unit: "g", Name: "lemon juice"},
		{Raw: "1 egg (optional)", Quantity: 1, Name: "egg", Note: "optional"},
		{Raw: "Salt and pepper, to taste", Name: "Salt and pepper", Note: "to taste"},
		{Raw: "icing sugar, to dust", Name: "icing sugar", Note: "to dust"},
		{Raw: "Boneless Chicken 1/2lb, cubed", Quantity: 0.5, Unit: "lb", Name: "Boneless Chicken", Note: "cubed"},
		{Raw: "7g sachet fast-action yeast", Quantity: 7, Unit: "g sachet", Name: "fast-action yeast"},
		{Raw: "Chicken thighs | 500g", Quantity: 500, Unit: "g", Name: "Chicken thighs"},
		{Raw: "500g | Chicken thighs", Quantity: 500, Unit: "g", Name: "Chicken thighs"},
		{Raw: "2 lb 4 oz potatoes", Quantity: 2.25, Unit: "lb", Name: "potatoes"},
		{Raw: "1kg/2lb 4oz potatoes", Quantity: 1, Unit: "kg", Name: "potatoes"},
		{Raw: "500g pack of puff pastry", Quantity: 500, Unit: "g pack", Name: "puff pastry"},
		{Raw: "28oz (825 ml) can of whole tomatoes", Quantity: 28, Unit: "oz can", Name: "whole tomatoes"},
		{Raw: "3 tablespoons of chopped parsley", Quantity: 3, Unit: "tablespoon", Name: "parsley", Note: "chopped"},
		{Raw: "4oz S.R. flour", Quantity: 4, Unit: "oz", Name: "S.R. flour"},
		{Raw: "l egg, beaten", Quantity: 1, Name: "egg", Note: "beaten"},
		{Raw: "Chopped tomatoes 400g tin", Quantity: 400, Unit: "g tin", Name: "Chopped tomatoes"},
		{Raw: "a 400g tin chickpeas", Quantity: 1, Unit: "400 g tin", Name: "chickpeas"},
		{Raw: "5cm/2in piece ginger", Quantity: 5, Unit: "cm piece", Name: "ginger"},
		{Raw: "Drop of milk", Unit: "drop", Name: "milk"},
		{Raw: "2 hard boiled eggs", Quantity: 2, Name: "eggs", Note: "hard boiled"},
		{Raw: "1 large garlic clove, chopped", Quantity: 1, Unit: "large clove", Name: "garlic", Note: "chopped"},
		{Raw: "600ml boiling water", Quantity: 600, Unit: "ml", Name: "boiling water"},
		{Raw: "Juice of 1/2 lemon", Quantity: 0.5, Name: "lemon", Note: "Juice"},
		{Raw: "1 lb cubed stewing beef (chuck or oxtail)", Quantity: 1, Unit: "lb", Name: "stewing beef", Note: "cubed, chuck or oxtail"},
		{Raw: "thumb-sized piece of ginger", Name: "thumb-sized piece of ginger"},
	} {
		got, ok := readIngredient(readLine(c.Raw, 0, len(c.Raw)))
		if !ok || got != c {
			t.Errorf("%q:\n got %+v\nwant %+v", c.Raw, got, c)
		}
	}
}

// TestAllergens: the fourteen of UK food information law; words that only sound like one are not.
func TestAllergens(t *testing.T) {
	list := func(lines ...string) (out []practical.Ingredient) {
		for _, l := range lines {
			out = append(out, practical.Ingredient{Raw: l})
		}
		return out
	}
	for _, c := range []struct {
		lines []string
		want  []string
	}{
		{[]string{"200g plain flour", "2 eggs", "50g butter"}, []string{"cereals containing gluten", "eggs", "milk"}},
		{[]string{"400ml coconut milk", "1 butternut squash", "1 tsp nutmeg", "cornflour", "1 tsp cream of tartar"}, nil},
		{[]string{"100g prawns", "1 tbsp soy sauce", "2 sticks celery"}, []string{"celery", "cereals containing gluten", "crustaceans", "soya"}},
		{[]string{"50g peanuts"}, []string{"peanuts"}},
		{[]string{"2 tbsp tahini", "50g flaked almonds"}, []string{"nuts", "sesame"}},
	} {
		got := allergens(list(c.lines...))
		if len(got) != len(c.want) {
			t.Errorf("%q: got %q, want %q", c.lines, got, c.want)
			continue
		}
		for i := range got {
			if got[i] != c.want[i] {
				t.Errorf("%q: got %q, want %q", c.lines, got, c.want)
			}
		}
	}
}

// Lines that run several ingredients together, invented.
func TestRunOnLine(t *testing.T) {
	r := Read("Pie\n\nIngredients\nPastry: 125 g plain flour, 60 g butter, 2-3 tbsp cold water\nFilling: 200 g chicken breast, 1 leek\n200 g tomatoes, chopped\n\nMethod\nRub the butter into the flour. Bake for 20 minutes at 200C.\n")[0]
	var got []string
	for _, ing := range r.Ingredients {
		got = append(got, ing.Component+"|"+ing.Unit+"|"+ing.Name+"|"+ing.Note)
	}
	columns := Read("Chicken\n\nYou need\n1 chicken breast       1 tbsp cornflour\n1 small tin pineapple      1 tbsp ketchup\n1/2 pepper      2    onions\n\nMethod\n1. Fry.\n")[0]
	var names []string
	for _, ing := range columns.Ingredients {
		names = append(names, ing.Name)
	}
	if want := []string{"chicken breast", "cornflour", "pineapple", "ketchup", "pepper", "onions"}; !slices.Equal(names, want) {
		t.Errorf("two columns: got %q, want %q", names, want)
	}
	want := []string{"Pastry|g|plain flour|", "Pastry|g|butter|", "Pastry|tbsp|cold water|", "Filling|g|chicken breast|", "Filling||leek|", "|g|tomatoes|chopped"}
	if !slices.Equal(got, want) {
		t.Errorf("got %q\nwant %q", got, want)
	}
}

// A line before the ingredients that turns the oven on heats the baking.
func TestOvenAtTheHead(t *testing.T) {
	r := Read("Pie\nPreheat the oven to 200C/fan 180C/gas 6.\n\nIngredients\n100 g flour\n\nMethod\nRoll the flour. Bake for 20 minutes.\n")[0]
	for _, s := range r.Steps {
		if s.Wait != nil && s.Wait.Celsius != 200 {
			t.Errorf("%s: %d degrees", s.Text, s.Wait.Celsius)
		}
	}
}

// What goes over the bases comes after the crumbs are pressed, in a thread of their own.
func TestOverTheBases(t *testing.T) {
	r := Read("Pots\n\n80 g biscuits\n40 g butter\n150 g soft cheese\n\nMethod\nCrush the biscuits. Melt the butter and stir in the crumbs. Press into two glasses and chill for 15 minutes.\nBeat the soft cheese until smooth.\nSpoon over the bases and chill for 1 hour.\n")[0]
	i := slices.IndexFunc(r.Steps, func(s practical.Step) bool { return strings.HasPrefix(s.Text, "Spoon over") })
	if i < 0 || len(r.Steps[i].After) != 2 {
		t.Errorf("%v: spooning over needs the bases and the cheese", r.Steps)
	}
}

// Pastry rubbed in and chilled is rolled out later, whatever was cooked between.
func TestPastryIsRolledAfterItIsMade(t *testing.T) {
	r := Read("Pie\n\n125 g flour\n60 g butter\n200 g chicken\n1 leek\n\nMethod\n1. Rub the butter into the flour. Add water and bring together. Wrap and chill for 20 minutes.\n2. Cut the chicken and slice the leek.\n3. Fry the chicken for 5 minutes. Leave to cool for 10 minutes.\n4. Roll out the pastry and cover the pie.\n5. Bake at 200C for 25 minutes.\n")[0]
	after := map[string][]practical.After{}
	var chill, roll string
	for _, s := range r.Steps {
		after[s.ID] = s.After
		switch {
		case s.Wait != nil && s.Wait.Place == practical.AtFridge:
			chill = s.ID
		case strings.Contains(s.Text, "Roll out"):
			roll = s.ID
		}
	}
	var reaches func(id string) bool
	reaches = func(id string) bool {
		return id == chill || slices.ContainsFunc(after[id], func(a practical.After) bool { return reaches(a.Step) })
	}
	if chill == "" || roll == "" || !reaches(roll) {
		t.Errorf("rolled (%s) without coming after chilled (%s): %v", roll, chill, after)
	}
}
