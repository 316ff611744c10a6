package recipe

import (
	"strings"
	"testing"

	"plait.example/internal/practical"
)

// methodOf reads one paragraph as the whole method of a recipe.
func methodOf(t *testing.T, text string) Recipe {
	t.Helper()
	all := Read("Dish\n\nIngredients\n1 egg\n\nMethod\n" + text + "\n")
	if len(all) != 1 {
		t.Fatalf("%q: %d recipes", text, len(all))
	}
	return all[0]
}

// TestSplit: where the hands stop, a step ends. A bar marks each end.
func TestSplit(t *testing.T) {
	for _, want := range []string{
		"1. Add the stock, | bring to the boil and simmer for 20 minutes, | then blend.",
		"1. Mix the flour and water. | Knead for 10 minutes. | Cover and leave to rise for an hour.",
		"1. Pour into the tin | and bake for 25 minutes until golden, | then cool on a wire rack.",
		"1. Fry the onion for 5 mins, | then add the garlic and cook for 1 min.",
		"1. Bake for 20 minutes, turning once, until crisp.",
		"1. Cook 6 minutes, | shake, then another 5-6 minutes.",
		"1. Simmer for 15 minutes. Stir occasionally.",
		"1. Bake for 30 minutes. Remove from the oven | and leave to cool for 10 minutes.",
		"1. Peel the potatoes. Cut them into chunks.",
		"1. Roll out the pastry, | chill for 30 mins, | then bake for 15 mins.",
		"1. Grease a tin. | Preheat the oven to 180C | and line a tray.",
		"1. Bake for 10 minutes at 220C | then 20 minutes at 180C.",
		"1. Soak the gelatine in cold water for 5 minutes; | squeeze dry.",
		"1. Pour in the milk, | bring to the boil, then turn down the heat and simmer for 20 mins.",
		"1. Bring to the boil, cover and simmer for 40 minutes.",
		"1. Stir in the stock. | Bring to the boil. Reduce the heat and simmer for 10 minutes.",
		"1. Bring a large pan of water to the boil. | Add the pasta | and cook for 10 minutes.",
		"1. Stir in the tomatoes, puree and stock.",
		"1. Grill for 6 minutes or bake for 30 minutes.",
	} {
		text := strings.ReplaceAll(want, "| ", "")
		r := methodOf(t, text)
		var got []string
		for _, s := range r.Steps {
			got = append(got, s.Text)
		}
		if g := "1. " + strings.Join(got, " | "); g != want {
			t.Errorf("\n got %s\nwant %s", g, want)
		}
	}
}

// TestMisleadingWords: words that are not what they look like. Common practice, no source.
func TestMisleadingWords(t *testing.T) {
	for _, text := range []string{
		"1. Set the table and the timer.", "1. Add the rest of the flour.", "1. Brush with egg wash.", "1. Add the chilli and the chilli flakes.", "1. Oil the grill pan.", "1. Butter the tin.",
		"1. Add the cream, butter and stock.", "1. Stir in the bread crumbs and the dry ingredients.", "1. Pour the panna cotta mixture into the moulds.", "1. Take the chicken out of the fridge.",
		"1. Add cool water, warm milk and brown sugar.", "1. Wash the vegetables.", "1. Put the roast peppers in a bowl.", "1. Do not bake, chill or freeze the salad.", "1. Put the beans into an oven dish.",
		"1. Spoon in the batter and the set custard.", "1. Tip in the ice cream and the frozen peas.", "1. Use oven gloves.", "1. Sprinkle over the rest of the cheese.", "1. Add the simmering stock and the boiled egg.",
	} {
		for _, s := range methodOf(t, text).Steps {
			if s.Wait != nil {
				t.Errorf("%q: read a wait %+v", text, *s.Wait)
			}
		}
	}
}

// TestPlaces: where food waits.
func TestPlaces(t *testing.T) {
	for text, want := range map[string]practical.Place{
		"1. Bake for 20 minutes.":                                    practical.AtOven,
		"1. Put in the oven for 20 minutes.":                         practical.AtOven,
		"1. Return to the oven for 5 mins.":                          practical.AtOven,
		"1. Cook in the oven for 20 minutes.":                        practical.AtOven,
		"1. Bake blind for 15 minutes.":                              practical.AtOven,
		"1. Simmer for 20 minutes.":                                  practical.AtHob,
		"1. Cook the pasta in boiling water for 10 minutes.":         practical.AtHob,
		"1. Cover and cook gently for 20 minutes.":                   practical.AtHob,
		"1. Put under the grill for 5 minutes.":                      practical.AtGrill,
		"1. Grill for 4 minutes until bubbling.":                     practical.AtGrill,
		"1. Microwave for 2 minutes.":                                practical.AtMicrowave,
		"1. Melt the chocolate in the microwave for 1 minute.":       practical.AtMicrowave,
		"1. Leave in a warm place for 40 minutes.":                   practical.AtWarm,
		"1. Leave to prove for 40 minutes.":                          practical.AtWarm,
		"1. Let it rise overnight in the fridge.":                    practical.AtFridge,
		"1. Chill for 30 minutes.":                                   practical.AtFridge,
		"1. Put in the fridge to set for 2 hours.":                   practical.AtFridge,
		"1. Marinate the chicken for 30 minutes.":                    practical.AtFridge,
		"1. Let stand in a cold place for one hour.":                 practical.AtFridge,
		"1. Freeze for 20 minutes.":                                  practical.AtFreezer,
		"1. Leave to cool for 10 minutes.":                           practical.AtSide,
		"1. Transfer to a wire rack.":                                practical.AtSide,
		"1. Set aside for 15 minutes.":                               practical.AtSide,
		"1. Rest for 5 minutes before carving.":                      practical.AtSide,
		"1. Bring a large pan of water to the boil.":                 practical.AtHob,
		"1. Braise in the oven for 2 hours.":                         practical.AtOven,
		"1. Boil the eggs for 8 minutes.":                            practical.AtHob,
		"1. Reduce the sauce for 10 minutes.":                        practical.AtHob,
		"1. Leave the dough to rest at room temperature for an hour": practical.AtSide,
	} {
		r := methodOf(t, text)
		if last := r.Steps[len(r.Steps)-1]; last.Wait == nil || last.Wait.Place != want {
			t.Errorf("%q: got %+v, want a wait at the %s", text, last.Wait, want)
		}
	}
}

// TestAttention: what may be left, what wants a look, what must not be left.
func TestAttention(t *testing.T) {
	for _, c := range []struct {
		text  string
		want  practical.Attention
		every int
	}{
		{"1. Simmer for 20 minutes, stirring every 4 minutes.", practical.Look, 4},
		{"1. Simmer for 20 minutes.", practical.Look, 10},
		{"1. Fry the chicken for 15 minutes.", practical.Stay, 0},
		{"1. Grill for 8 minutes.", practical.Stay, 0},
		{"1. Bake for 30 minutes.", practical.Leave, 0},
		{"1. Chill for 30 minutes.", practical.Leave, 0},
		{"1. Boil the sugar, stirring constantly, for 15 minutes.", practical.Stay, 0},
		{"1. Roast for 40 minutes. Turn halfway.", practical.Look, 20},
	} {
		s := methodOf(t, c.text).Steps[0]
		if s.Wait == nil || s.Wait.Attention != c.want || s.Wait.Every != c.every {
			t.Errorf("%q: got %+v, want %s every %d", c.text, s.Wait, c.want, c.every)
		}
	}
}

// TestDoorShut: two thirds of the least for what falls when the door is opened. Common practice, no source.
func TestDoorShut(t *testing.T) {
	for text, want := range map[string]int{"1. Bake the sponge for 24 minutes.": 16, "1. Pour in the batter and bake for 30-35 minutes.": 20, "1. Bake the potatoes for 60 minutes.": 0} {
		r := methodOf(t, text)
		if w := r.Steps[len(r.Steps)-1].Wait; w == nil || w.DoorShut != want {
			t.Errorf("%q: got %+v, want the door shut for %d", text, w, want)
		}
	}
}

// TestOvenCarries: the temperature of "preheat" goes to later baking, until it is turned down.
func TestOvenCarries(t *testing.T) {
	r := methodOf(t, "1. Preheat the oven to 220C/200C fan/gas 7.\n2. Mix the dough.\n3. Bake for 10 minutes.\n4. Turn the oven down to 180C and bake for another 20 minutes.\n5. Put back in the oven for 5 minutes.")
	var got []int
	for _, s := range r.Steps {
		if s.Wait != nil {
			got = append(got, s.Wait.Celsius)
			if s.Wait.Band != 10 {
				t.Errorf("band %d, want 10", s.Wait.Band)
			}
		}
	}
	if len(got) != 3 || got[0] != 220 || got[1] != 180 || got[2] != 180 {
		t.Errorf("got %d, want 220, 180, 180", got)
	}
	if r.Steps[0].ID != ovenID || r.Steps[0].Hands.High != 0 {
		t.Errorf("first step %+v, want one that only turns the oven on", r.Steps[0])
	}
}
