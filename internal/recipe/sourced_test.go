package recipe

import "testing"

// TestTechniqueOfAStep: the row of the table that a step is. Invented.
func TestTechniqueOfAStep(t *testing.T) {
	for _, c := range []struct{ step, want string }{
		{"Bake at 180C for 20 minutes.", "bake"},
		{"Cover the pan with a lid and simmer for 20 minutes.", "simmer"},
		{"Cook the sauce for 20 minutes over a low heat, stirring now and then.", "simmer"},
		{"Put it back in the oven for 10 minutes.", "bake"},
		{"Leave the dough to prove for 40 minutes.", "prove"},
		{"Leave to cool for 10 minutes.", ""},
		{"Rub the butter into the flour.", "rub-in"},
		{"Dice the onion.", "dice-onion"},
		{"Preheat the oven to 200C.", ""},
		{"Wash up.", ""},
	} {
		if r := methodOf(t, "1. "+c.step); len(r.Sources) != 1 || r.Sources[0].Technique != c.want {
			t.Errorf("%s: %+v, want %q", c.step, r.Sources, c.want)
		}
	}
}
