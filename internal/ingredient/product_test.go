package ingredient_test

import (
	"testing"

	"plait.example/internal/ingredient"
)

// The lines are invented; which words belong to a product is common practice, no source.
func TestProduct(t *testing.T) {
	for _, c := range []struct{ line, name, note string }{
		{"2 x 400 g tins chopped tomatoes, drained", "chopped tomatoes", "drained"},
		{"1 tin of chopped tomatoes", "chopped tomatoes", ""},
		{"500 g pack of puff pastry", "puff pastry", ""},
		{"1 can finely chopped peeled tomatoes", "finely chopped peeled tomatoes", ""},
		{"100 ml cold water", "cold water", ""},
		{"2 tbsp chopped parsley", "parsley", "chopped"},
		{"half a teaspoon of salt", "salt", ""},
		{"About 60 ml milk (more if wanted)", "milk", "more if wanted"},
		{"1 bunch chard (leaves only), washed (twice) and torn", "chard", "(leaves only), washed (twice) and torn"},
		{"5 sticks of cheese, cut into 2 cm (1 inch) pieces (one a ball)", "cheese", "cut into 2 cm (1 inch) pieces (one a ball)"},
		{"salt", "salt", ""},
	} {
		if name, note := ingredient.Parse(c.line).Product(); name != c.name || note != c.note {
			t.Errorf("%s: got %q, %q; want %q, %q", c.line, name, note, c.name, c.note)
		}
	}
}

// The lines are invented.
func TestStandsAlone(t *testing.T) {
	for line, want := range map[string]bool{
		"2-3 tbsp cold water": true, "1 leek": true, "60 g butter": true, "200 g gochujang": true, "2 eggs, beaten": true, "a pinch of salt": false,
		"1/2 inch thick": false, "2 inches long": false, "1 1/2 pounds each": false, "6 coarsely chopped": false, "4-6 pieces": false, "2 halves": false, "5 cm ginger": false, "salt": false, "": false,
	} {
		if got := ingredient.Parse(line).StandsAlone(); got != want {
			t.Errorf("%q: %v", line, got)
		}
	}
	for line, want := range map[string]float64{"I large onion": 1, "I x 400 g tin tomatoes": 1, "I find this good": 0, "l onion": 1, "| 2 eggs": 1} {
		if got := ingredient.Parse(line).First().Low; got != want {
			t.Errorf("%q: %v, want %v", line, got, want)
		}
	}
}
