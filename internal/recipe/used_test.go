package recipe

import (
	"testing"

	"github.com/google/go-cmp/cmp"

	"plait.example/internal/practical"
)

// The dishes are invented.

func TestIngredientsUsed(t *testing.T) {
	d := practical.Dish{
		Name: "Leek pie",
		Ingredients: []practical.Ingredient{
			{Raw: "200 g plain flour", Name: "plain flour"},
			{Raw: "100 g butter", Name: "butter"},
			{Raw: "2 leeks", Name: "leeks"},
			{Raw: "2 carrots", Name: "carrots"},
			{Raw: "1 tbsp olive oil", Name: "olive oil"},
			{Raw: "salt and pepper", Name: "salt and pepper"},
			{Raw: "1 tsp cumin", Name: "cumin", Component: "filling"},
			{Raw: "1 tsp mustard", Name: "mustard", Component: "dressing"},
			{Raw: "1 lemon", Name: "lemon"},
			{Raw: "parsley to garnish", Name: "parsley"},
			{Raw: "50 g walnuts", Name: "walnuts"},
			{Raw: "1 tsp baking powder", Name: "best baking powder"},
		},
		Steps: []practical.Step{
			{ID: "A1", Text: "Rub the butter into the flour until it looks like fine breadcrumbs, with the baking powder."},
			{ID: "A2", Text: "Heat the oil and fry the vegetables for 5 minutes; season."},
			{ID: "A3", Text: "Stir in the spices and the zest. Grate in the garlic. Butter a dish."},
			{ID: "A4", Text: "Whisk the dressing ingredients together with the cumin."},
		},
		Serve: practical.Serve{How: "with chopped parsley"},
	}
	u := IngredientsUsed(d)
	want := [][]string{{"A1"}, {"A1", "A3"}, {"A2"}, {"A2"}, {"A2"}, {"A2"}, {"A3", "A4"}, {"A3", "A4"}, {"A3"}, {"serving"}, nil, {"A1"}}
	if diff := cmp.Diff(want, u.By); diff != "" {
		t.Errorf("used (-want +got)\n%s", diff)
	}
	if diff := cmp.Diff([]Unlisted{{"garlic", []string{"A3"}}}, u.Unlisted); diff != "" {
		t.Errorf("not listed (-want +got)\n%s", diff)
	}
}

// A food that stands in two parts of the list is used by the steps of its part.
func TestIngredientsUsedByParts(t *testing.T) {
	d := practical.Dish{
		Ingredients: []practical.Ingredient{
			{Raw: "100 g butter", Name: "butter", Component: "pastry"},
			{Raw: "25 g butter", Name: "butter", Component: "sauce"},
			{Raw: "1 onion", Name: "onion", Component: "sauce"},
		},
		Steps: []practical.Step{
			{ID: "A1", Text: "Rub the butter into the flour.", Component: "Pastry"},
			{ID: "A2", Text: "Melt the butter.", Component: "sauce"},
			{ID: "A3", Text: "Fry the onion in the butter."},
			{ID: "A4", Text: "Scatter the onion over the pastry.", Component: "pastry"},
		},
	}
	want := [][]string{{"A1", "A3"}, {"A2", "A3"}, {"A3", "A4"}}
	if diff := cmp.Diff(want, IngredientsUsed(d).By); diff != "" {
		t.Errorf("(-want +got)\n%s", diff)
	}
}

// A dish without a list, and one without steps, ask nothing.
func TestIngredientsUsedOfLittle(t *testing.T) {
	if u := IngredientsUsed(practical.Dish{Steps: []practical.Step{{ID: "A1", Text: "Fry the garlic."}}}); len(u.By) != 0 || len(u.Unlisted) != 0 {
		t.Errorf("%+v", u)
	}
	if u := IngredientsUsed(practical.Dish{Ingredients: []practical.Ingredient{{Raw: "garlic"}}}); len(u.By) != 1 || len(u.By[0]) != 0 {
		t.Errorf("%+v", u)
	}
}
