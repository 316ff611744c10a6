package act

import (
	"testing"

	"plait.example/internal/practical"
)

// What the hands touch, and what must reach a core temperature: the foods are
// those of UK food-safety teaching (raw meat, poultry, fish, shellfish, egg;
// food that is eaten as it is). Rows invented.
func TestFoodOfAnAct(t *testing.T) {
	const none = practical.Food("")
	for _, c := range []struct {
		text string
		act  int // which act of the row
		want practical.Food
	}{
		{"Dice chicken and onion", 0, practical.Raw},
		{"Slice cucumber salad", 0, practical.ReadyToEat},
		{"Chop onion", 0, none},
		{"crack eggs into a bowl", 0, practical.Raw},
		{"whisk eggs and sugar", 0, practical.Raw},
		{"Brush with egg wash", 0, practical.Raw},
		{"whip cream", 0, practical.ReadyToEat},
		{"fill buns with cream", 0, practical.ReadyToEat},
		{"shape burgers", 0, practical.Raw},
		{"slice the cooked chicken", 0, practical.ReadyToEat},
		{"slice the chicken and serve", 0, practical.ReadyToEat},
		{"dice chicken, mix with yogurt and curry paste", 1, practical.Raw},
		{"cut a pocket in the chicken, fill with soft cheese", 1, practical.Raw},
		{"take chicken out of the fridge", 0, practical.Raw},
		{"take the salmon off the heat", 0, none},
		{"put chicken in oven", 0, none},
		{"make chicken stock", 0, none},
		{"fry eggs", 0, none},
		{"split and fill the rolls with lettuce and burgers", 1, practical.ReadyToEat},
		{"add tomatoes", 0, none},
		{"rub butter into flour, add icing sugar", 1, none},
		{"roll out pastry", 0, none},
		{"serve chicken with salad", 0, none},
		{"wash salad", 0, none},
	} {
		acts := Read(c.text)
		if len(acts) <= c.act {
			t.Errorf("%q: only %d acts", c.text, len(acts))
		} else if got := acts[c.act].Food; got != c.want {
			t.Errorf("%q: %s touches %q, want %q", c.text, acts[c.act].Kind, got, c.want)
		}
	}
}

func TestHighRiskFoodIsHeated(t *testing.T) {
	for text, want := range map[string]bool{
		"put chicken in the oven":     true,
		"fry the mince":               true,
		"grill burgers 5 mins a side": true,
		"poach the salmon":            true,
		"boil rice":                   true,
		"fry onions":                  false,
		"bake the cake":               false,
		"simmer chicken stock":        false,
		"chop chicken":                false,
		"serve chicken":               false,
	} {
		got := false
		for _, a := range Read(text) {
			got = got || a.HighRisk
		}
		if got != want {
			t.Errorf("%q: %v, want %v", text, got, want)
		}
	}
}
