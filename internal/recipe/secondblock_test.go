package recipe

import (
	"strings"
	"testing"
)

const stewBlock = "Beef stew\nServes 4\n\n500 g stewing beef\n2 carrots\n\n1. Brown the beef in a pan for 10 minutes.\n2. Add the carrots and 500 ml water and simmer for 90 minutes.\n3. Add the dumplings and cook for 20 minutes.\n4. Serve with peas.\n\n"

// TestSecondBlock: a list and a method below a whole recipe are a part of the
// dish when the words tie the two, and a recipe of their own when not. Invented.
func TestSecondBlock(t *testing.T) {
	dumplings := "Dumplings\n\n100 g self-raising flour\n50 g suet\n\n1. Mix the flour and the suet with water.\n2. Divide into 8 balls.\n"
	for text, want := range map[string]string{
		stewBlock + dumplings: "Beef stew",
		stewBlock + "Cheese scones\n\n200 g flour\n100 g cheese\n\n1. Rub the cheese into the flour.\n2. Bake at 200C for 12 minutes.\n":                              "Beef stew/Cheese scones",
		stewBlock + strings.Replace(dumplings, "Dumplings\n", "Dumplings\n\nServes 8\n", 1):                                                                           "Beef stew/Dumplings",
		stewBlock + "Crisp onions\n\n1 onion\n50 g flour\n\n1. Toss the onion in the flour and fry for 5 minutes.\n2. Scatter the onions over the stew.\n":            "Beef stew",
		"**Caramel pots**\n\n**A. Caramel**\n1. Boil 100 g sugar in a pan for 5 minutes.\n2. Pour into pots.\n\n**B. Custard**\n3. Warm 300 ml milk for 3 minutes.\n": "Caramel pots",
	} {
		var titles []string
		all := Read(text)
		checkRecipes(t, text, all)
		for _, r := range all {
			titles = append(titles, r.Title)
		}
		if got := strings.Join(titles, "/"); got != want {
			t.Errorf("got %q, want %q", got, want)
		}
	}
	r := Read(stewBlock + dumplings)[0]
	add, divide := -1, -1
	for i, s := range r.Steps {
		switch {
		case strings.HasPrefix(s.Text, "Add the dumplings"):
			add = i
		case strings.HasPrefix(s.Text, "Divide"):
			divide = i
		}
	}
	if add < 0 || divide < 0 || !reaches(r, add, r.Steps[divide].ID) || reaches(r, divide, r.Steps[0].ID) {
		t.Errorf("the dumplings must be made before they are added, and need not wait for the stew: %+v", r.Steps)
	}
	if n := len(r.Ingredients); n != 4 || r.Ingredients[3].Component != "Dumplings" {
		t.Errorf("%d ingredients: %+v", n, r.Ingredients)
	}
}
