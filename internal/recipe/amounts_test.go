package recipe

import (
	"math"
	"strings"
	"testing"

	"plait.example/internal/practical"
)

func list(lines ...string) (out []practical.Ingredient) {
	for _, l := range lines {
		if ing, ok := readIngredient(readLine(l, 0, len(l))); ok {
			out = append(out, ing)
		}
	}
	return out
}

// TestWeigh: the imperial pint is 568.26 ml and the United States one 473.18 ml, by definition (an
// eighth of a gallon of 4.54609 litres, and of one of 231 cubic inches); milk weighs 1.03 g a ml
// (McCance and Widdowson's Integrated Dataset 2021). The lists are invented.
func TestWeigh(t *testing.T) {
	for _, c := range []struct {
		lines []string
		grams float64
		how   string
	}{
		{[]string{"1 pint milk", "200 g flour"}, 568.26 * 1.03, "1 pint is 568 ml"},
		{[]string{"1 pint milk", "2 cups flour"}, 473.18 * 1.03, "1 pint is 473 ml"},
		{[]string{"1 pint milk", "1 stick butter"}, 473.18 * 1.03, "473 ml"},
		{[]string{"1 pint milk", "1 stick celery"}, 568.26 * 1.03, "568 ml"},
		{[]string{"2 x 400 g tins tomatoes"}, 800, "2 times 400 grams"},
	} {
		w := Weigh(list(c.lines...))[0]
		if !w.Known || math.Abs(w.Grams-c.grams) > 1 || !strings.Contains(w.How, c.how) {
			t.Errorf("%q: got %+v, want %.1f g, %q", c.lines, w, c.grams, c.how)
		}
	}
	if w := Weigh(list("a pinch of salt"))[0]; w.Known || w.Grams != 0 || !strings.Contains(w.How, "no agreed weight") {
		t.Errorf("a pinch: %+v", w)
	}
}

// TestScaleList: what a line says stays in step with its words; the component stays.
func TestScaleList(t *testing.T) {
	in := list("1 egg, beaten", "200 g plain flour", "a pinch of salt", "2 tbsp milk")
	in[0].Component = "glaze"
	out := Scale(in, 4, 8)
	want := []practical.Ingredient{
		{Raw: "2 eggs, beaten", Quantity: 2, Name: "eggs", Note: "beaten", Component: "glaze"},
		{Raw: "400 g plain flour", Quantity: 400, Unit: "g", Name: "plain flour"},
		{Raw: "a pinch of salt", Quantity: 1, Unit: "pinch", Name: "salt"},
		{Raw: "4 tbsp milk", Quantity: 4, Unit: "tbsp", Name: "milk"},
	}
	for i := range want {
		if out[i] != want[i] {
			t.Errorf("got %+v\nwant %+v", out[i], want[i])
		}
	}
	if same := Scale(in, 0, 8); same[1] != in[1] {
		t.Errorf("from no portions: %+v", same[1])
	}
	if in[0].Raw != "1 egg, beaten" {
		t.Errorf("the list itself was changed: %+v", in[0])
	}
}
