package recipe

import (
	"strings"
	"testing"
)

// TestFoodsInProse: amounts inside a method, where there is no list. Invented, in the manner of old books and letters.
func TestFoodsInProse(t *testing.T) {
	for text, want := range map[string]string{
		"SEED CAKE\n\nRub six ounces of butter into one pound of flour, add half a pound of sugar and an ounce of caraway seeds. Beat three eggs with a gill of milk. Bake in a moderate oven for an hour and a half.\n":                     "butter|flour|sugar|caraway seeds|eggs|milk",
		"APPLE DUMPLINGS\n\nTake half a pound of flour, a quarter of a pound of suet and a pinch of salt. Mix with water to a paste. Peel 4 large apples. Boil for one hour.\n":                                                              "flour|suet|salt|apples",
		"Dear Sam, here is the soup. Fry 2 onions in 25g butter for 10 minutes, add 1 litre of stock and simmer for 20 minutes. Cut into 4 wedges.\n":                                                                                        "onions|butter|stock",
		"Risotto\n\n25g butter; 1 small onion; 150g risotto rice; half a glass of wine; 500ml stock; mint\n\nMelt the butter and fry the onion for 5 minutes. Stir in the rice, pour in the wine and the stock and simmer for 18 minutes.\n": "butter|onion|risotto rice|wine|stock|mint",
	} {
		all := Read(text)
		checkRecipes(t, text, all)
		var names []string
		for _, ing := range all[0].Ingredients {
			names = append(names, ing.Name)
		}
		if got := strings.Join(names, "|"); got != want {
			t.Errorf("got %s, want %s", got, want)
		}
	}
}

// TestPortionsOfOneThing: what a whole is cut into. Invented.
func TestPortionsOfOneThing(t *testing.T) {
	for line, want := range map[string]int{
		"Yield: 1 loaf (10 slices)": 10, "Makes 1 large loaf, about 14 slices": 14, "Makes one 23cm cake, serves 8-10": 8, "Makes 1 loaf": 0, "Cuts into 16 squares": 16,
		"Prep: 10 mins | Cook: 20 mins | Serves 4": 4, "Recipe serves 6": 6, "Makes enough for 4": 4, "Serves 4-6 (makes 1 litre)": 4,
	} {
		if got := Read("Bread\n\n" + line + "\n\n200 g flour\n3 bananas\n\nMash the bananas. Stir in the flour. Bake for 1 hour.\n")[0].Serves; got != want {
			t.Errorf("%q: %d, want %d", line, got, want)
		}
	}
}
