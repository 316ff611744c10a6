package recipe

import "testing"

// TestHeats: the pairs are those of UK cookery handbooks' heat tables (gas
// marks with degrees Celsius and Fahrenheit; fan 20 lower), which differ a
// little between books; the words are theirs too, from memory.
func TestHeats(t *testing.T) {
	for _, c := range []struct {
		text string
		want int
	}{
		{"preheat the oven to 200C/180C fan/gas 6", 200},
		{"oven to 200°C/fan 180°C/gas 6", 200},
		{"oven at 180°C (fan 160°C)", 180},
		{"Heat oven to 180C (160C fan), gas mark 4", 180},
		{"oven to fan 160C", 180},
		{"oven to 160C fan", 180},
		{"oven to 160 fan", 180},
		{"oven to 160°C (325°F) fan", 180},
		{"Preheat oven Gas 5/190◦c", 190},
		{"bake at 180/160 fan/gas 4", 180},
		{"bake at 350F", 180},
		{"Preheat oven to 350°F", 180},
		{"oven to 350 degrees F", 180},
		{"bake at 400°F", 200},
		{"bake at 425 F", 220},
		{"450℉ (230℃) oven", 230},
		{"oven at 180˚C (350-360˚F)", 180},
		{"gas mark 4", 180},
		{"GM4", 180},
		{"gm 7", 220},
		{"Gas ½", 130},
		{"gas mark 1/4", 110},
		{"mark 5", 190},
		{"bake at 375°F/190°C/gas mark 5", 190},
		{"oven to 200 degrees C (gas 6)", 200},
		{"oven to 200 degrees", 200},
		{"bake at 180 for 20 minutes", 180},
		{"preheat to 180C", 180},
		{"bake in moderate oven", 180},
		{"a hot oven", 220},
		{"a very hot oven", 230},
		{"very slow oven", 130},
		{"a cool oven", 150},
		{"Roast in an oven at medium temperature", 180},
	} {
		var got []heat
		for _, h := range heats(tokenize(c.text, 0)) {
			if h.oven {
				got = append(got, h)
			}
		}
		if len(got) != 1 || got[0].celsius != c.want {
			t.Errorf("%q: got %+v, want one of %d", c.text, got, c.want)
		}
	}
}

// TestNotOvenHeats: temperatures of oil, syrup, food and weather are not the oven's.
func TestNotOvenHeats(t *testing.T) {
	for _, text := range []string{
		"Heat the oil to 175–180°C", "until the core temperature is 75C", "boil the syrup to 118C", "cook to an internal temperature of 165F", "warm the milk to 40C",
		"bake for 20 minutes", "over a medium heat", "2 x 180 g tins", "at 12 o'clock", "400 g flour at room temperature", "on high heat", "hot water", "cool water", "a warm place",
	} {
		for _, h := range heats(tokenize(text, 0)) {
			if h.oven {
				t.Errorf("%q: got %+v, want no oven temperature", text, h)
			}
		}
	}
}

// TestHeatClash: 220 °C fan goes with gas 9, not gas 7.
func TestHeatClash(t *testing.T) {
	for text, want := range map[string]bool{"oven to 220c (fan), or gas mark 7": true, "302°F/105°C oven": true, "oven to 200C/180C fan/gas 6": false, "oven to 170C/325F/gas 3": false} {
		got := heats(tokenize(text, 0))
		if len(got) != 1 || got[0].clash != want {
			t.Errorf("%q: got %+v, want clash %v", text, got, want)
		}
	}
}
