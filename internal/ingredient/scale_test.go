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
		{"1 egg, beaten", 4, 8, "2 eggs, beaten"},
		{"2 eggs", 4, 2, "1 egg"},
		{"2 large eggs", 4, 2, "1 large egg"},
		{"1 large egg yolk", 2, 6, "3 large egg yolks"},
		{"2 onions, finely chopped", 4, 2, "1 onion, finely chopped"},
		{"2 lemons", 8, 2, "1/2 lemon"},
		{"1 onion or 2 shallots", 2, 4, "2 onions or 4 shallots"},
		{"1 potato (about 200 g)", 1, 4, "4 potatoes (about 800 g)"},
		{"1 bay leaf", 2, 4, "2 bay leaves"},
		{"1 fillet of cod", 1, 4, "4 fillets of cod"},
		{"4 peaches", 4, 1, "1 peach"},
		{"6 cherries", 6, 1, "1 cherry"},
		{"1 broccoli", 2, 4, "2 broccoli"},
		{"1 Egg", 1, 2, "2 Eggs"},
		{"1-2 chillies", 4, 2, "1/2-1 chilli"},
		{"1 red pepper, sliced", 4, 8, "2 red peppers, sliced"},
		{"2 lb 4 oz potatoes", 4, 8, "4 lb 8 oz potatoes"},
		{"1kg/2lb 4oz potatoes", 4, 8, "2kg/4lb 8oz potatoes"},
		{"2 x 400g/14oz tins tomatoes", 4, 2, "1 x 400g/14oz tin tomatoes"},
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
