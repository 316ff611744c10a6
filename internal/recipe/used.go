package recipe

import (
	"slices"
	"strings"

	"plait.example/internal/practical"
)

// Uses is which steps of a dish name which ingredient, by the words of both.
type Uses struct {
	By       [][]string // the ids of the steps, for each ingredient in its order; empty: never used
	Unlisted []Unlisted // foods that a step names and the list does not have
}

// AtServing stands in place of a step's id for what the serving uses.
const AtServing = "serving"

// Unlisted is a food that is used and not listed.
type Unlisted struct {
	Food  string
	Steps []string
}

// IngredientsUsed checks the ingredients of a dish off against its steps. A line
// whose words stand in no step, not even in a word for many ("the vegetables",
// "the sauce ingredients"), is never used. Salt, pepper and water need no line.
func IngredientsUsed(d practical.Dish) Uses {
	u := Uses{By: make([][]string, len(d.Ingredients))}
	steps := make([][]token, len(d.Steps))
	for k, s := range d.Steps {
		steps[k] = tokenize(s.Text, 0)
	}
	if len(d.Steps) > 0 { // the serving is a row of its own, and garnish goes there
		steps = append(steps, tokenize(d.Serve.How, 0))
	}
	for i, in := range d.Ingredients {
		named := nameOf(in)
		for k, ts := range steps {
			id := AtServing
			if k < len(d.Steps) {
				id = d.Steps[k].ID
			}
			if named.in(ts) && (k >= len(d.Steps) || !ofAnother(d, i, d.Steps[k].Component)) {
				u.By[i] = append(u.By[i], id)
			}
		}
	}
	u.Unlisted = unlisted(d, steps[:len(d.Steps)])
	return u
}

// ofAnother says whether a step of a component uses the line that this component
// has of the same food, and not line i: the butter of the pastry is not that of the sauce.
func ofAnother(d practical.Dish, i int, component string) bool {
	mine := d.Ingredients[i]
	if component == "" || mine.Component == "" || strings.EqualFold(mine.Component, component) {
		return false
	}
	return slices.ContainsFunc(d.Ingredients, func(other practical.Ingredient) bool {
		return strings.EqualFold(other.Component, component) && slices.Equal(nameOf(other).words, nameOf(mine).words)
	})
}

// listedFood is the words by which a step can mean an ingredient.
type listedFood struct {
	words     []string // stems: any of them
	phrase    string   // its last two words, such as baking powder
	many      []string // words for many that count it in
	component string
}

func nameOf(in practical.Ingredient) listedFood {
	f := listedFood{component: in.Component}
	text := in.Name
	if text == "" {
		text = in.Raw
	}
	ts := tokenize(text, 0)
	for _, plain := range []bool{false, true} { // "olive oil" has no word of its own but these
		for _, t := range ts {
			if t.kind == word && len(t.text) > 2 && (plain && !measureWords[t.text] || !notFoods[t.text]) {
				f.words = append(f.words, t.food())
			}
		}
		if len(f.words) > 0 {
			break
		}
	}
	if n := len(ts); n > 0 && ts[n-1].kind == word && ts[n-1].is("oil", "salt", "pepper", "water", "sugar", "flour") {
		f.words = append(f.words, ts[n-1].food())
	}
	if n := len(ts); n > 1 && ts[n-1].kind == word && ts[n-2].kind == word {
		f.phrase = ts[n-2].text + " " + ts[n-1].text
	}
	for _, m := range manyWords {
		if hasAny(ts, m.foods...) || has(ts, m.foods...) {
			f.many = append(f.many, m.words...)
		}
	}
	return f
}

// in says whether a step's words mean the ingredient.
func (f listedFood) in(ts []token) bool {
	for _, t := range ts {
		if t.kind == word && slices.Contains(f.words, t.food()) {
			return true
		}
	}
	if has(ts, f.many...) || f.phrase != "" && has(ts, f.phrase) {
		return true
	}
	i := find(ts, "ingredients")
	if i < 0 {
		return has(ts, "everything")
	}
	before := at(ts, i-1) // "the sauce ingredients" are those of the sauce
	if before.kind != word || before.is("the", "all", "remaining", "other", "these", "your", "listed") {
		return true
	}
	return has(tokenize(f.component, 0), before.text)
}

// measureWords are words of a line that are no food.
var measureWords = set(`and or for the with into from about few can tin good quality tbsp tsp grams cup cups large small medium fresh optional chopped sliced diced grated finely thinly plus your any`)

// manyWords are words by which a method means several foods at once.
var manyWords = []struct{ words, foods []string }{
	{[]string{"vegetables", "veg", "veggies"}, strings.Fields("carrot onion leek pepper peppers courgette celery potato parsnip swede turnip aubergine mushroom broccoli cauliflower peas beans squash cabbage spinach tomato sweetcorn fennel")},
	{[]string{"fruit", "fruits"}, strings.Fields("apple pear plum rhubarb strawberry raspberry blackberry blueberry orange lemon lime banana mango peach apricot raisins sultanas currants cherry grape")},
	{[]string{"herbs"}, strings.Fields("parsley coriander basil mint dill thyme rosemary chives oregano sage tarragon bay marjoram")},
	{[]string{"spices"}, strings.Fields("cumin coriander turmeric paprika cinnamon nutmeg ginger cardamom cloves chilli cayenne garam allspice fenugreek mustard fennel")},
	{[]string{"meat"}, strings.Fields("beef lamb pork chicken turkey mince sausage bacon veal duck venison steak")},
	{[]string{"fish"}, strings.Fields("cod salmon haddock mackerel trout bass plaice tuna sardine pollock")},
	{[]string{"cheese"}, strings.Fields("cheddar parmesan mozzarella feta ricotta mascarpone gruyere halloumi stilton paneer")},
	{[]string{"nuts"}, strings.Fields("almond hazelnut walnut cashew pecan pistachio peanut")},
	{[]string{"seeds"}, strings.Fields("sesame sunflower pumpkin poppy linseed seeds seed")},
	{[]string{"fat"}, strings.Fields("butter lard margarine dripping suet oil")},
	{[]string{"pasta"}, strings.Fields("spaghetti macaroni penne fusilli tagliatelle lasagne noodles")},
	{[]string{"dry ingredients", "dried ingredients"}, strings.Fields("flour sugar salt cocoa oats bicarbonate baking powder spice cinnamon")},
	{[]string{"wet ingredients", "liquid ingredients", "liquid"}, strings.Fields("milk egg oil water buttermilk yogurt yoghurt stock juice")},
	{[]string{"season", "seasoning"}, strings.Fields("salt pepper")},
	{[]string{"yolk", "whites", "egg wash", "glaze", "eggs", "yolks"}, strings.Fields("egg eggs")},
	{[]string{"zest", "juice", "rind", "wedges"}, strings.Fields("lemon lime orange")},
	{[]string{"crumbs", "breadcrumbs"}, strings.Fields("bread breadcrumbs panko")},
	{[]string{"flavouring", "flavoring", "flavour"}, strings.Fields("vanilla essence extract")},
	{[]string{"dough", "mixture"}, strings.Fields("yeast")},
}

// usualFoods are foods that a method may name although the list forgot them.
// Words for what is made on the way (sauce, dough, stock) are not among them.
var usualFoods = set(`butter sugar flour egg milk cream cheese cheddar parmesan mozzarella feta yogurt yoghurt onion garlic carrot celery leek potato tomato courgette aubergine mushroom spinach broccoli cabbage
	lemon lime orange apple banana raspberry strawberry rhubarb raisins sultanas parsley coriander basil mint thyme rosemary dill chives oregano sage cumin turmeric paprika cinnamon nutmeg ginger chilli vanilla
	chicken beef lamb pork bacon sausage salmon cod tuna prawns rice pasta spaghetti lentils chickpeas oats honey syrup treacle chocolate cocoa almonds walnuts hazelnuts yeast gelatine cornflour vinegar mustard mayonnaise breadcrumbs margarine lard
	bicarbonate`)

// unlisted finds usual foods that steps name and no line of the list has.
func unlisted(d practical.Dish, steps [][]token) (out []Unlisted) {
	if len(d.Ingredients) == 0 {
		return nil
	}
	have := map[string]bool{}
	for _, in := range d.Ingredients {
		for _, t := range tokenize(in.Raw+" "+in.Name, 0) {
			have[t.food()] = true
		}
		for _, m := range nameOf(in).many {
			have[stem(m)] = true
		}
	}
	for _, t := range tokenize(d.Name, 0) { // "turn the lemon cake out"
		have[t.food()] = true
	}
	usual := map[string]bool{}
	for w := range usualFoods {
		usual[stem(w)] = true
	}
	for k, ts := range steps {
		for i, t := range ts {
			if t.kind != word || !usual[t.food()] || have[t.food()] || !nounHere(ts, i) {
				continue
			}
			at := slices.IndexFunc(out, func(u Unlisted) bool { return stem(u.Food) == t.stem })
			if at < 0 {
				out = append(out, Unlisted{Food: t.text})
				at = len(out) - 1
			}
			if !slices.Contains(out[at].Steps, d.Steps[k].ID) {
				out[at].Steps = append(out[at].Steps, d.Steps[k].ID)
			}
		}
	}
	return out
}

// nounHere says whether the word at i names a food here: not "cream the fat", "rice-sized" or "cheese grater".
func nounHere(ts []token, i int) bool {
	if at(ts, i+1).is("board", "knife", "grater", "cutter", "press", "sized", "size", "flavoured", "style", "paper", "mixture", "wash", "free") || strings.ContainsRune(ts[i].text, '-') || strings.HasSuffix(ts[i].text, "ed") {
		return false
	}
	if has(ts[max(0, i-3):i], "like", "resembles", "size of") { // "until it looks like breadcrumbs"
		return false
	}
	if _, verb := verbs[ts[i].text]; !verb {
		return true
	}
	return at(ts, i-1).is("the", "some", "with", "of", "more", "little", "in", "extra", "melted", "softened", "soured", "double", "single", "whipped", "plain") && at(ts, i+1).kind != word
}
