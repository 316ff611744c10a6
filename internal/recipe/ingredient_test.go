package recipe

import (
	"testing"

	"plait.example/internal/practical"
)

func TestIngredient(t *testing.T) {
	for _, c := range []practical.Ingredient{
		{Raw: "175g self-raising flour", Quantity: 175, Unit: "g", Name: "self-raising flour"},
		{Raw: "2 x 400g tins chopped tomatoes", Quantity: 2, Unit: "400g tins", Name: "chopped tomatoes"},
		{Raw: "2 400 g tins chickpeas, drained", Quantity: 2, Unit: "400 g tins", Name: "chickpeas", Note: "drained"},
		{Raw: "1 16-ounce can peeled tomatoes", Quantity: 1, Unit: "16 ounce can", Name: "peeled tomatoes"},
		{Raw: "2 x 400g/14oz tins chopped tomatoes", Quantity: 2, Unit: "400g tins", Name: "chopped tomatoes", Note: "14oz"},
		{Raw: "400g/14oz tin cannellini beans, drained", Quantity: 400, Unit: "g tin", Name: "cannellini beans", Note: "14oz, drained"},
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
		{Raw: "15 g (1 tbsp) lemon juice", Quantity: 15, Unit: "g", Name: "lemon juice", Note: "1 tbsp"},
		{Raw: "1 egg (optional)", Quantity: 1, Name: "egg", Note: "optional"},
		{Raw: "Salt and pepper, to taste", Name: "Salt and pepper", Note: "to taste"},
		{Raw: "icing sugar, to dust", Name: "icing sugar", Note: "to dust"},
		{Raw: "Boneless Chicken 1/2lb, cubed", Quantity: 0.5, Unit: "lb", Name: "Boneless Chicken", Note: "cubed"},
		{Raw: "7g sachet fast-action yeast", Quantity: 7, Unit: "g sachet", Name: "fast-action yeast"},
		{Raw: "Chicken thighs | 500g", Quantity: 500, Unit: "g", Name: "Chicken thighs"},
		{Raw: "500g | Chicken thighs", Quantity: 500, Unit: "g", Name: "Chicken thighs"},
		{Raw: "thumb-sized piece of ginger", Name: "thumb-sized piece of ginger"},
	} {
		got, ok := readIngredient(c.Raw, readLine(c.Raw, 0, len(c.Raw)))
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
