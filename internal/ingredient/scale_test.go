package ingredient_test

import (
	"math"
	"testing"

	"plait.example/internal/ingredient"
)

// How far to round is common practice, no source; the lines are invented.
func TestScale(t *testing.T) {
	for _, c := range []struct {
		line     string
		from, to float64
		want     string
	}{
		{"2 eggs, beaten", 4, 6, "3 eggs, beaten"},
		{"3 eggs", 4, 2, "2 eggs"},
		{"1 egg", 4, 1, "1 egg"},
		{"a pinch of salt", 4, 12, "a pinch of salt"},
		{"2 pinches salt", 2, 8, "2 pinches salt"},
		{"1 tsp cumin", 4, 6, "1 1/2 tsp cumin"},
		{"1 tbsp oil", 4, 5, "1 1/4 tbsp oil"},
		{"1/2 tsp chilli powder", 4, 1, "1/8 tsp chilli powder"},
		{"200g plain flour", 4, 6, "300g plain flour"},
		{"225 g butter", 4, 3, "170 g butter"},
		{"30 g sugar", 4, 3, "23 g sugar"},
		{"5 g yeast", 2, 1, "2.5 g yeast"},
		{"1.2 kg potatoes", 6, 4, "0.8 kg potatoes"},
		{"1 kg potatoes", 6, 1, "0.165 kg potatoes"},
		{"2 x 400 g tins chopped tomatoes", 4, 8, "4 x 400 g tins chopped tomatoes"},
		{"1 (14-ounce) can beans", 2, 4, "2 (14-ounce) cans beans"},
		{"2-3 cloves garlic", 2, 4, "4-6 cloves garlic"},
		{"1 onion, chopped", 4, 2, "1/2 onion, chopped"},
		{"½ lemon", 4, 8, "1 lemon"},
		{"1 1/2 cups flour", 4, 2, "3/4 cup flour"},
		{"1 cup plus 2 tablespoons sugar", 2, 4, "2 cups plus 4 tablespoons sugar"},
		{"1 tbsp fresh thyme or 1 tsp dried", 4, 8, "2 tbsp fresh thyme or 2 tsp dried"},
		{"salt to taste", 4, 8, "salt to taste"},
		{"half a lemon", 2, 4, "1 lemon"},
		{"400g can of beans (optional)", 4, 4, "400g can of beans (optional)"},
		{"oil 2 tbsp", 1, 2, "oil 4 tbsp"},
	} {
		if got := ingredient.Scale(ingredient.Parse(c.line), c.from, c.to).Raw; got != c.want {
			t.Errorf("%s from %v to %v: got %q, want %q", c.line, c.from, c.to, got, c.want)
		}
	}
}

func TestScaleKeepsOnNonsense(t *testing.T) {
	l := ingredient.Parse("2 eggs")
	for _, p := range [][2]float64{{0, 4}, {4, 0}, {-1, 2}, {2, -1}, {math.NaN(), 1}, {1, math.Inf(1)}} {
		if got := ingredient.Scale(l, p[0], p[1]); got.Raw != "2 eggs" || got.First().Low != 2 {
			t.Errorf("from %v to %v: got %+v", p[0], p[1], got.First())
		}
	}
}
