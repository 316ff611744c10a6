package recipe

import (
	"strings"

	"plait.example/internal/practical"
)

// knownFoods is the stems of the words that name ingredients.
func knownFoods(list []practical.Ingredient) map[string]bool {
	m := map[string]bool{}
	for _, ing := range list {
		for _, t := range tokenize(ing.Name, 0) {
			if t.kind == word && len(t.text) > 2 && !notFoods[t.text] {
				m[t.food()] = true
				addKinds(m, t.stem)
			}
		}
	}
	return m
}

// fishes are fish that a method calls "the fish".
var fishes = []string{"cod", "haddock", "pollock", "coley", "hake", "salmon", "trout", "mackerel", "tuna", "plaice", "whiting", "bass", "bream", "sole", "snapper", "tilapia", "halibut", "monkfish", "sardines", "mullet", "turbot", "catfish"}

// food is the stem of a word that names a food; peppers are not pepper.
func (t token) food() string {
	if t.text == "peppers" {
		return t.text
	}
	return t.stem
}

// titleWords is the stems of the words that name the dish.
func titleWords(title string) map[string]bool {
	m := map[string]bool{}
	for _, t := range tokenize(title, 0) {
		if t.kind == word && len(t.text) > 3 && !notFoods[t.text] && verbs[t.text].name == "" {
			m[t.stem] = true
		}
	}
	return m
}

// sharedFoods is the stems that several lines of the list have: which one is meant cannot be told.
func sharedFoods(list []practical.Ingredient) map[string]bool {
	seen, shared := map[string]bool{}, map[string]bool{}
	for _, ing := range list {
		for s := range knownFoods([]practical.Ingredient{ing}) {
			shared[s] = shared[s] || seen[s]
			seen[s] = true
		}
	}
	return shared
}

// notFoods are words in names of ingredients that say nothing about which food it is.
var notFoods = set(`and or for the with fresh dried ground large small medium plain whole white black red green brown yellow hot cold warm extra virgin unsalted salted free range self raising caster
	granulated chopped sliced diced grated cut into pieces finely thinly optional few can tin good quality ripe from all purpose baby mixed little more plus about your any choice style
	easy quick best homemade simple style boneless skinless lean fat cooked raw low-fat salt pepper water oil icing powder seeds leaves juice olive vegetable sunflower baking`)

// products are words for what the cook has made.
var products = []string{
	"dough", "pastry", "sauce", "filling", "mixture", "mix", "batter", "topping", "base", "custard", "cream", "icing", "marinade", "dressing", "stuffing", "soup", "syrup", "yolks", "whites", "juice", "zest", "dry ingredients", "wet ingredients", "puree", "paste", "glaze", "salad", "salsa",
	"meringue", "sponge", "cake", "crumble", "crust", "filling", "rice", "pasta", "potatoes", "mash", "gravy", "stock", "ganache", "buttercream", "patties", "burgers", "meatballs", "balls", "bechamel", "béchamel", "ragu", "curry", "bread", "rolls", "biscuits", "jelly", "coulis", "pesto", "broth", "semolina", "noodles", "pastry cream", "omelette", "case", "cases",
}

// made are things that a cook makes and then works on, by stem: they come from an earlier step.
var made = set("dough pastri batter base custard ganach meringu sauc crust")

// productStems is the products by their stems.
var productStems = func() map[string]bool {
	m := map[string]bool{}
	for _, p := range products {
		m[stem(p)] = true
	}
	return m
}()

// isProduct says whether a stem is that of a product, such as a sauce, which may be only a part of the dish.
func isProduct(s string) bool { return productStems[s] }

// common are words that do not tell threads apart.
var common = set("mixtur mix salt pepper water oil butter flour sugar egg cream milk")

// onlyOnce are common foods that tell a thread when it alone holds them and the text says "the".
var onlyOnce = set("egg cream milk")

// preparedFood says that the food is named by what was done to it before: "the softened butter", "melted chocolate".
func preparedFood(ts []token, food string) bool {
	for i, t := range ts {
		if p := at(ts, i-1); t.kind == word && t.stem == food && p.kind == word && (strings.HasSuffix(p.text, "ed") || p.is("beaten")) && verbByStem[p.stem].name != "" {
			return true
		}
	}
	return false
}

// dishWord is the stem of the last word of the first part of a title: what is made.
func dishWord(title string) string {
	last := ""
	for _, t := range tokenize(title, 0) {
		if partsTitle(t) && last != "" {
			break
		}
		if t.kind == word {
			last = t.stem
		}
	}
	return last
}

// theWord says that the food stands with "the" before it.
func theWord(ts []token, food string) bool {
	for i, t := range ts {
		if t.stem == food && (at(ts, i-1).is("the") || at(ts, i-2).is("the") && at(ts, i-1).kind == word) {
			return true
		}
	}
	return false
}
