package match

import (
	"strings"

	"plait.example/internal/act"
)

// sameWords are words that one cook writes for another's; the first stands for
// all. Common practice, no source.
var sameWords = func() map[string]string {
	m := map[string]string{}
	for _, line := range strings.Split(strings.TrimSpace(`
potato potatoes spud spuds
vegetable veg veggies
tomato tomatoes toms passata
yogurt yoghurt yog yoghurts
chocolate choc
whisk beat
blend blitz puree process liquidise whizz liquidize
sieve sift strain
mix stir combine
pierce prick poke hole holes
chop dice cut slice cube
divide share
assemble layer
unmould turnout
marinade marinate
fridge refrigerator chill
coriander cilantro
margarine marg butter
mince minced
naan naans flatbread flatbreads
dough base
simmer bubble
brown seal sear
glaze wash
tin tins mould moulds mold molds tray
pan skillet saucepan
heat warm reheat
courgette zucchini
aubergine eggplant
prawn shrimp
pasta spaghetti penne macaroni tagliatelle fusilli linguine
fry saute
rocket arugula
sponge cake cakes
bun buns
top topping
prove rise proof
grease line
take takeout takeoff getout remove
spread smooth
custard patissiere pat
mash mashed
parmesan cheese
`), "\n") {
		words := act.WordsOf(line)
		for _, w := range words {
			m[w.Stem] = words[0].Stem
		}
	}
	return m
}()

// canonical is the stem that stands for a stem.
func canonical(stem string) string {
	if s := sameWords[stem]; s != "" {
		return s
	}
	return stem
}
