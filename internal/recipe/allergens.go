package recipe

import (
	"strings"

	"plait.example/internal/practical"
)

// allergenWords are foods by the 14 allergens of UK food information law.
// Words that only sound like one (coconut, nutmeg, buttermilk's own milk) are
// handled by the exceptions. A list read by words is a reminder: the label decides.
var allergenWords = []struct {
	name   string
	foods  []string
	except []string
}{
	{"celery", []string{"celery", "celeriac"}, nil},
	{
		"cereals containing gluten",
		[]string{"flour", "bread", "breadcrumbs", "bread crumbs", "crumbs", "pasta", "spaghetti", "noodles", "couscous", "semolina", "wheat", "barley", "rye", "oats", "pastry", "filo", "biscuits", "lasagne", "lasagna", "penne", "macaroni", "tortilla", "tortillas", "bulgur", "ciabatta", "naan", "bagel", "crackers", "bun", "muffins", "cake", "seitan", "soy sauce", "beer", "panko", "suet"},
		[]string{"cornflour", "corn flour", "rice flour", "gram flour", "rice noodles", "rice paper", "potato flour", "almond flour", "coconut flour", "corn tortillas"},
	},
	{"crustaceans", []string{"prawn", "prawns", "shrimp", "crab", "lobster", "crayfish", "langoustine"}, nil},
	{"eggs", []string{"egg", "eggs", "mayonnaise", "meringue", "yolk", "yolks", "egg noodles"}, []string{"eggplant"}},
	{"fish", []string{"fish", "cod", "salmon", "tuna", "haddock", "mackerel", "anchovies", "anchovy", "sardine", "sardines", "trout", "bass", "worcestershire", "worcester", "pollock"}, nil},
	{"lupin", []string{"lupin"}, nil},
	{
		"milk",
		[]string{"milk", "butter", "cream", "cheese", "yoghurt", "yogurt", "cheddar", "mozzarella", "parmesan", "feta", "ricotta", "mascarpone", "ghee", "custard", "fraiche", "gruyere", "gruyère", "emmental", "emental", "margarine", "paneer", "buttermilk", "halloumi", "stilton", "quark"},
		[]string{"coconut milk", "coconut cream", "almond milk", "oat milk", "soya milk", "soy milk", "rice milk", "peanut butter", "cream of tartar", "butternut", "butter beans", "butter bean", "cocoa butter", "almond butter", "cream crackers"},
	},
	{"molluscs", []string{"mussel", "mussels", "squid", "clam", "clams", "oyster", "oysters", "scallop", "scallops", "octopus", "oyster sauce"}, nil},
	{"mustard", []string{"mustard"}, nil},
	{"nuts", []string{"almond", "almonds", "hazelnut", "hazelnuts", "walnut", "walnuts", "cashew", "cashews", "pecan", "pecans", "pistachio", "pistachios", "macadamia", "brazil nuts", "marzipan", "praline", "pesto", "nuts"}, nil},
	{"peanuts", []string{"peanut", "peanuts", "satay"}, nil},
	{"sesame", []string{"sesame", "tahini", "hummus", "houmous"}, nil},
	{"soya", []string{"soya", "soy", "tofu", "miso", "edamame", "tempeh", "chocolate"}, nil},
	{"sulphur dioxide and sulphites", []string{"wine", "dried apricots", "raisins", "sultanas", "currants", "cider", "balsamic"}, nil},
}

// allergens lists the allergens that the ingredient lines name, in the order of the law's list.
func allergens(list []practical.Ingredient) []string {
	var out []string
	for _, a := range allergenWords {
		for _, ing := range list {
			if namesAllergen(tokenize(strings.ToLower(ing.Raw), 0), a.foods, a.except) {
				out = append(out, a.name)
				break
			}
		}
	}
	return out
}

func namesAllergen(ts []token, foods, except []string) bool {
	for _, f := range foods {
		i := findWord(ts, f)
		if i < 0 {
			continue
		}
		excused := false
		for _, e := range except {
			excused = excused || findWord(ts, e) >= 0
		}
		if !excused {
			return true
		}
	}
	return false
}

// findWord is like find, by whole words instead of stems.
func findWord(ts []token, phrase string) int {
	want := strings.Fields(phrase)
	for i := 0; i+len(want) <= len(ts); i++ {
		ok := true
		for k, w := range want {
			ok = ok && ts[i+k].text == w
		}
		if ok {
			return i
		}
	}
	return -1
}
