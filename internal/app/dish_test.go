package app_test

import (
	"strings"
	"testing"

	"plait.example/internal/practical"
)

// scones is an invented recipe.
const scones = `Cheese scones

Ingredients
225 g self-raising flour
50 g butter
100 g cheese
150 ml milk

Method
1. Rub the butter into the flour. Stir in the cheese and the milk.
2. Roll out and cut into rounds.
3. Bake at 220C for 12 minutes until golden.
`

func TestAddDishFromText(t *testing.T) {
	a := mustApp(t)
	r := mustNew(t, a)
	r, _, err := a.AddDish(t.Context(), r.ID, r.Version, scones)
	if err != nil {
		t.Fatal(err)
	}
	if len(r.Practical.Dishes) != 1 {
		t.Fatalf("%d dishes, want 1", len(r.Practical.Dishes))
	}
	d := r.Practical.Dishes[0]
	if d.Letter != "A" || d.Name != "Cheese scones" || d.Text != scones || len(d.Ingredients) != 4 || len(d.Steps) == 0 {
		t.Errorf("dish %+v", d)
	}
	baked := false
	for _, s := range d.Steps {
		baked = baked || s.Wait != nil && s.Wait.Place == practical.AtOven && s.Wait.Celsius == 220
	}
	if !baked {
		t.Errorf("no step bakes at 220: %+v", d.Steps)
	}
	r, _, err = a.AddDish(t.Context(), r.ID, r.Version, " \n")
	if err != nil || len(r.Practical.Dishes) != 2 || r.Practical.Dishes[1].Letter != "B" || r.Practical.Dishes[1].Steps != nil {
		t.Errorf("empty dish: %+v, %v", r.Practical.Dishes, err)
	}
}

func TestAddDishKeepsWhatItCannotRead(t *testing.T) {
	a := mustApp(t)
	r := mustNew(t, a)
	const text = "zxcvb\x00 \xff qwerty"
	r, faults, err := a.AddDish(t.Context(), r.ID, r.Version, text)
	if err != nil {
		t.Fatal(err)
	}
	if len(r.Practical.Dishes) != 1 || !strings.Contains(r.Practical.Dishes[0].Text, "qwerty") || len(faults) == 0 || faults[0].Field != "dishes[0].text" {
		t.Errorf("dishes %+v, faults %v; want the text kept and a fault beside it", r.Practical.Dishes, faults)
	}
}

func TestAddDishTooLong(t *testing.T) {
	a := mustApp(t)
	r := mustNew(t, a)
	_, _, err := a.AddDish(t.Context(), r.ID, r.Version, strings.Repeat("stir\n", 1<<20))
	wantCode(t, err, practical.TooLarge)
}

func TestReadDishAgain(t *testing.T) {
	a := mustApp(t)
	r := mustNew(t, a)
	r, _, err := a.AddDish(t.Context(), r.ID, r.Version, scones)
	if err != nil {
		t.Fatal(err)
	}
	changed := strings.ReplaceAll(scones, "12 minutes", "17 minutes")
	r, _, err = a.ReadDish(t.Context(), r.ID, r.Version, "A", changed)
	if err != nil {
		t.Fatal(err)
	}
	d := r.Practical.Dishes[0]
	last := d.Steps[len(d.Steps)-1]
	if d.Text != changed || last.Wait == nil || last.Wait.Least > 17 || last.Wait.Most < 17 {
		t.Errorf("read again: %+v", d)
	}
	_, _, err = a.ReadDish(t.Context(), r.ID, r.Version, "Q", changed)
	wantCode(t, err, practical.NotFound)
}
