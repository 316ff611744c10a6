package app_test

import (
	"errors"
	"testing"

	"plait.example/internal/app"
	"plait.example/internal/practical"
)

func TestScaleDish(t *testing.T) {
	a := mustApp(t)
	r := mustNew(t, a)
	r, _, err := a.AddDish(t.Context(), r.ID, r.Version, "Cheese scones (makes 8)\n\nIngredients\n225 g self-raising flour\n1 egg\na pinch of salt\n\nMethod\n1. Rub in.\n2. Bake at 220C for 12 minutes.\n")
	if err != nil {
		t.Fatal(err)
	}
	raw := func(r app.Record) (lines []string) {
		for _, ing := range r.Practical.Dishes[0].Ingredients {
			lines = append(lines, ing.Raw)
		}
		return lines
	}
	steps := len(r.Practical.Dishes[0].Steps)
	r, _, err = a.ScaleDish(t.Context(), r.ID, r.Version, "A", 16)
	if err != nil {
		t.Fatal(err)
	}
	if got := raw(r); got[0] != "450 g self-raising flour" || got[1] != "2 eggs" || got[2] != "a pinch of salt" || r.Practical.Dishes[0].Portions != 16 {
		t.Errorf("for 16: %q, %d portions", got, r.Practical.Dishes[0].Portions)
	}
	if n := len(r.Practical.Dishes[0].Steps); n != steps {
		t.Errorf("%d steps, there were %d", n, steps)
	}
	if w := app.Weights(r.Practical.Dishes[0].Ingredients); !w[0].Known || w[0].Grams != 450 || w[2].Known {
		t.Errorf("weights %+v", w)
	}
	for _, c := range []struct {
		letter   string
		portions int
		want     practical.Code
	}{{"B", 4, practical.NotFound}, {"A", 0, practical.Invalid}, {"A", 501, practical.Invalid}} {
		if _, _, err := a.ScaleDish(t.Context(), r.ID, r.Version, c.letter, c.portions); faultCode(err) != c.want {
			t.Errorf("dish %s to %d: %v, want %s", c.letter, c.portions, err, c.want)
		}
	}
	r, _, err = a.AddDish(t.Context(), r.ID, r.Version, "Soup\n\n1 onion\n2 carrots\n\nMethod\n1. Chop the onion.\n2. Boil for 20 minutes.\n")
	if err != nil {
		t.Fatal(err)
	}
	if _, _, err := a.ScaleDish(t.Context(), r.ID, r.Version, "B", 4); faultCode(err) != practical.Invalid {
		t.Errorf("portions not said: %v", err)
	}
}

// faultCode is the code of a fault; "" of anything else.
func faultCode(err error) practical.Code {
	var f practical.Fault
	errors.As(err, &f)
	return f.Code
}
