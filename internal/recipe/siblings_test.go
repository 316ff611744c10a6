package recipe

import (
	"strings"
	"testing"
)

// TestRecipesUnderOneHeading: several recipes below the title of the document, and
// a dish whose parts have headings of their own. Invented.
func TestRecipesUnderOneHeading(t *testing.T) {
	part := func(title, food string) string {
		return "## " + title + "\n\nServes 2\n\n### Ingredients\n\n- 200 g " + food + "\n- 1 egg\n\n### Method\n\n1. Beat the egg into the " + food + ".\n2. Bake at 180C for 20 minutes.\n\n"
	}
	for text, want := range map[string]string{
		"# Year 9 recipes\n\n" + part("Bread rolls", "flour") + part("Leek soup", "leeks"):            "Bread rolls/Leek soup",
		"# Our book\n\nFor the term.\n\n" + part("First", "flour") + part("Second", "leeks"):          "First/Second",
		"# Cinnamon buns\n\n" + part("Dough", "flour") + part("Icing", "sugar"):                       "Cinnamon buns",
		"# Pie\n\n## For the base\n\n- 1 egg\n\n## For the top\n\n- 1 egg\n\n## Method\n\n1. Bake.\n": "Pie",
	} {
		var titles []string
		all := Read(text)
		for _, r := range all {
			titles = append(titles, r.Title)
		}
		if got := strings.Join(titles, "/"); got != want {
			t.Errorf("got %q, want %q", got, want)
		}
		checkRecipes(t, text, all)
	}
}

// TestListGoesOn: a line of a list that reads like work does not end the list. Invented.
func TestListGoesOn(t *testing.T) {
	for text, want := range map[string]int{
		"Stew\n\nIngredients\n500 g beef\nChopped or halved nuts to cover the top in the dish\n2 carrots\n1 onion\n100 ml stock\n":   5,
		"Stew\n\nIngredients\n500 g beef\n2 carrots\nChop the carrots and fry them in the oil until soft.\nSimmer for 20 minutes.\n": 2,
	} {
		all := Read(text)
		checkRecipes(t, text, all)
		if len(all) != 1 || len(all[0].Ingredients) != want {
			t.Errorf("%q: %d ingredients, want %d", text, len(all[0].Ingredients), want)
		}
	}
}
