package match

import (
	"strings"

	"plait.example/internal/act"
)

// techniques say which words the steps of a thing have that a plan names in a
// word or two: "make the choux". Common practice, no source.
var techniques = standing(`
choux: butter water boil flour beat egg
shortcrust pastry pastri: rub flour butter water bind dough bring together fat egg yolk knead
puff flaky rough: butter flour fold roll turn dough water lemon
roux bechamel white sauce cheese: melt butter flour milk whisk stir thicken boil cook
custard creme patissiere pat: yolk sugar cornflour milk whisk boil thicken vanilla egg heat pour
dough bread: flour yeast salt water mix knead oil sugar warm bring together
meringue: whisk egg white sugar
sponge cake: cream butter sugar egg flour fold beat whisk sift
batter: flour egg milk whisk
crumble topping: rub flour butter sugar oats
ganache: chocolate cream melt stir heat
mash: boil potato drain mash butter milk
curry: fry onion garlic spice tomato simmer ginger paste
tomato: fry onion garlic tomato simmer basil
dressing vinaigrette: oil vinegar mustard whisk lemon honey
salad slaw coleslaw: slice chop cucumber tomato lettuce toss grate carrot cabbage
buttercream icing: butter sugar beat cream
burger patty kofta meatball: mince onion breadcrumb egg mix shape season
marinade: yogurt spice garlic lemon mix chicken oil
base: crush biscuit melt butter press
filling: fry chop mix season
pasta: flour egg knead dough
coulis: blend sieve sugar simmer raspberry
jelly panna cotta: gelatine soak dissolve cream sugar heat
caramel: sugar water boil
salsa: chop dice tomato onion lime coriander
raita dip: yogurt cucumber mint grate stir
veg vegetable: peel chop slice dice onion carrot pepper potato
garnish decoration: chop slice parsley
ragu bolognese sauce: fry onion garlic mince tomato simmer carrot celery
risotto: fry onion rice stock stir
soup: fry onion stock simmer blend
stuffing: breadcrumb onion herb mix egg
`)

func standing(table string) map[string][]string {
	m := map[string][]string{}
	for _, line := range strings.Split(strings.TrimSpace(table), "\n") {
		names, words, _ := strings.Cut(line, ":")
		var stems []string
		for _, w := range act.WordsOf(words) {
			stems = append(stems, canonical(w.Stem))
		}
		for _, n := range act.WordsOf(names) {
			m[canonical(n.Stem)] = append(m[canonical(n.Stem)], stems...)
		}
	}
	return m
}

// standsFor are the stems that the words of a piece stand for.
func standsFor(own map[string]bool, made bool) (list []string) {
	if !made {
		return nil
	}
	seen := map[string]bool{}
	for _, stem := range sorted(own) {
		for _, s := range techniques[stem] {
			if !own[s] && !seen[s] {
				seen[s] = true
				list = append(list, s)
			}
		}
	}
	return list
}
