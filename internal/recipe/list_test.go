package recipe

import (
	"strings"
	"testing"
)

// TestListLines: what stands among the ingredients and is none. Invented.
func TestListLines(t *testing.T) {
	r := Read("Bites\n\nIngredients\n- For the sauce\n- 50 g butter\n- Salt\n- For the bites:\n- 12 slices of bread\n- I find that cheese which is grated at home melts better than any other.\n- Oil for frying\n- For frying\n\nMethod\n1. Melt the butter.\n2. Grill the bread for 5 minutes.\n")[0]
	var got []string
	for _, ing := range r.Ingredients {
		got = append(got, ing.Component+"|"+ing.Name)
	}
	if want := "sauce|butter;sauce|Salt;bites|bread;bites|Oil;bites|For frying"; strings.Join(got, ";") != want {
		t.Errorf("got  %s\nwant %s", strings.Join(got, ";"), want)
	}
	if !strings.Contains(strings.Join(r.Unread, "\n"), "I find that cheese") {
		t.Errorf("the sentence is lost: %q", r.Unread)
	}
}

// TestListInASentence: lists that are written as prose, and sentences that only look so. Invented.
func TestListInASentence(t *testing.T) {
	for _, c := range []struct{ text, list, first string }{
		{"Crumble\nYou will need 2 eggs, 100g flour and 50g butter.\nRub in. Bake at 180C for 20 mins.\n", "2 eggs;100g flour;50g butter", "Rub in."},
		{"Pancakes\n1. Sift the flour.\n2. Fry for 2 minutes.\n\nYou will need: 100g plain flour, pinch salt, 300ml milk (semi-skimmed, cold)\n", "100g plain flour;pinch salt;300ml milk (semi-skimmed, cold)", "Sift the flour."},
		{"for the brownies u need 200g dark choc, 3 eggs. melt the choc and bake at 180C for 30 mins.\n", "200g dark choc;3 eggs", "melt the choc"},
		{"Cake\n\n3 eggs\n100 g flour\n\nMethod\n1. Beat. You need 20 minutes, 30 minutes for a large one.\n2. Bake.\n", "3 eggs;100 g flour", "Beat. You need 20 minutes, 30 minutes for a large one."},
		{"Cake\n\n3 eggs\n100 g flour\n\nMethod\n1. Beat; you need to add 2 eggs first, 1 after.\n2. Bake.\n", "3 eggs;100 g flour", "Beat; you need to add 2 eggs first, 1 after."},
	} {
		all := Read(c.text)
		checkRecipes(t, c.text, all)
		var list []string
		for _, ing := range all[0].Ingredients {
			list = append(list, ing.Raw)
		}
		if got := strings.Join(list, ";"); got != c.list || len(all[0].Steps) == 0 || all[0].Steps[0].Text != c.first {
			t.Errorf("%q:\n got %q, %+v\nwant %q, %q", c.text, got, all[0].Steps, c.list, c.first)
		}
	}
}

// TestSchoolSheet: a list as school sheets have it. Invented.
func TestSchoolSheet(t *testing.T) {
	text := "Crumble pots\n\nYou will need:\nCrumble\n100g plain flour\nFruit\n2 eating apples\n1 x 15ml spoon sugar\nContainer with lid\nEquipment: bowl, sieve, 4 ramekins\n\nMethod\n1) Rub in the fat.\n2) Put the apple in the dishes.\n3) Bake for 25 minutes.\n4) Wash up and put the dishes away.\n"
	all := Read(text)
	checkRecipes(t, text, all)
	var got, ids []string
	for _, ing := range all[0].Ingredients {
		got = append(got, ing.Component+"|"+ing.Unit+"|"+ing.Name)
	}
	for _, s := range all[0].Steps {
		ids = append(ids, s.ID)
	}
	if want := "Crumble|g|plain flour;Fruit||eating apples;Fruit|15 ml spoon|sugar"; strings.Join(got, ";") != want {
		t.Errorf("got  %s\nwant %s", strings.Join(got, ";"), want)
	}
	if strings.Join(ids, " ") != "1 2 3 chore" || len(all[0].Unread) != 3 {
		t.Errorf("steps %q, unread %q", ids, all[0].Unread)
	}
	if w := Weigh(all[0].Ingredients)[2]; !w.Known || w.Grams < 12 || w.Grams > 14 {
		t.Errorf("15 ml of sugar: %+v", w)
	}
}

// TestLoneComponents: parts of a dish that stand alone on a line of the list. Invented.
func TestLoneComponents(t *testing.T) {
	text := "Wraps\n\n2 chicken breasts\nFilling\n1 pepper\nsalsa\nTo serve\nsoured cream\n4 wraps\n\nMethod\n1. Fry the chicken for 8 minutes.\n2. Serve in the wraps.\n"
	all := Read(text)
	checkRecipes(t, text, all)
	var got []string
	for _, ing := range all[0].Ingredients {
		got = append(got, ing.Component+"|"+ing.Name)
	}
	if want := "|chicken breasts;Filling|pepper;Filling|salsa;To serve|soured cream;To serve|wraps"; strings.Join(got, ";") != want {
		t.Errorf("got  %s\nwant %s", strings.Join(got, ";"), want)
	}
}
