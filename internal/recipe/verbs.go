package recipe

import (
	"strings"

	"plait.example/internal/practical"
)

// deed is what a verb of the method asks for.
type deed int

const (
	works   deed = iota // the hands work
	minor               // the hands work for less than a minute: add, season
	moves               // food goes from one place to another, before it waits there
	fries               // the hands stay at a hot pan
	waits               // food is left in a place
	boils               // the pan comes to the boil
	heatsUp             // the oven or grill is turned on
	serves
	cooks // "cook": the place and the words around it decide
	lets  // let, leave, allow, keep: the verb that follows decides
)

// verb is a cooking verb: what it asks for, and where food waits while it is done.
type verb struct {
	name  string
	deed  deed
	place practical.Place
}

// verbs by their plain form.
var verbs = func() map[string]verb {
	m := map[string]verb{}
	for _, g := range verbGroups {
		for _, w := range strings.Fields(g.words) {
			m[w] = verb{w, g.deed, g.place}
		}
	}
	return m
}()

var verbGroups = []struct {
	deed  deed
	place practical.Place
	words string
}{
	{works, "", `arrange assemble baste bash bat beat blend blitz bind bone break brush butter butterfly carve check chop clean coat combine core cream crack crimp crumble crush cut
		debone deglaze decorate deseed devein dice dig dip discard dissolve distribute divide dock drain draw dredge dress drip drizzle drop dry dump dust emulsify fillet fill finish flake flatten flip flour fluff fold form
		gather glaze grate grease grind gut halve hollow hull ice incorporate insert joint juice julienne knead knock level liquidise lift line loosen make
		mash measure melt mince mist mix moisten mould mound open pack pare pat peal peel pick pierce pinch pipe pit plait poke portion pound prepare press prick process pulse pull punch puree push
		quarter release repeat roll rub run sandwich scale scatter slash dollop crumb scoop scramble slap scrape scrub seal seed segment separate shake shape shell shred sieve sift skewer skim skin slice slide slit smear smash smooth
		snip split spread squash squeeze squish stamp stir stone strain stretch string stuff swirl tear temper tenderise tenderize thicken thin thread tie toss trim truss tuck turn twist unmould unmold unroll unwrap use
		wash weigh wet whip whisk whizz oil wipe work zest rinse score crinkle ladle plate layer probe test cube pass level mark trickle top remove take tip invert untie unfold throw push bottle dab start begin continue rehydrate spiralise massage slather smother dunk plunge blot spatchcock dimple swill swish send carry preshape rotate swap spin jiggle fork hang`},
	{minor, "", `strew spritz add adjust season salt sprinkle taste dot dash garnish reserve include`},
	{moves, "", `put place pour transfer spoon return cover uncover wrap set lay bring reduce lower increase raise pop arrange tent stack immerse submerge switch sit store chuck bung whack stick shove plonk sling lob nestle slot`},
	{fries, practical.AtHob, `crisp wilt sizzle blister fry saute stir-fry sear brown pan-fry shallow-fry char griddle deep-fry colour color`},
	{waits, practical.AtOven, `bake roast`},
	{waits, practical.AtHob, `simmer boil parboil blanch poach steam stew braise casserole sweat soften caramelise caramelize scald render bubble`},
	{waits, practical.AtWarm, `prove rise ferment proof`},
	{waits, practical.AtFridge, `chill fridge refrigerate marinate marinade brine cure`},
	{waits, practical.AtFreezer, `freeze`},
	{waits, practical.AtSide, `cool rest soak infuse steep stand macerate bloom thaw defrost settle autolyse`},
	{waits, practical.AtGrill, `grill broil`},
	{waits, practical.AtMicrowave, `microwave`},
	{boils, practical.AtHob, `boil-up`},
	{heatsUp, practical.AtOven, `preheat`},
	{cooks, "", `cook heat warm toast reheat barbecue air-fry`},
	{serves, "", `serve enjoy eat`},
	{lets, "", `let leave allow keep give wait`},
}

// verbByStem finds a verb by the stem of its -ing form.
var verbByStem = func() map[string]verb {
	m := map[string]verb{}
	for _, g := range verbGroups {
		for _, w := range strings.Fields(g.words) {
			if _, ok := m[stem(w)]; !ok {
				m[stem(w)] = verbs[w]
			}
		}
	}
	return m
}()

// nounsToo are verbs that are as often nouns or adjectives: inside a sentence
// they count as verbs only before a word such as "the" or "until".
var nounsToo = set(`fork spin fridge crisp blister oil casserole squash brown butter cream flour salt season pepper dust ice dress top core skin bone stone shell line cool warm heat dry cover roast grill glaze plate roll spread mix shape juice zest
	mash set rest chill drain cook slice dice peel stock scale score process pulse string stuff seal pack form bottle toast level press pinch drop dash clean open work use turn run start place stand
	smooth thin wet crush mince quarter pit mould cut grate butterfly portion sandwich rice whip fillet joint steam stew boil simmer soak braise prove rise bake fry wash mark colour color dip crumble slide split whisk blend spoon layer probe test cube pass puree marinade skewer ladle plait dip measure string taste`)

// verbalNext are words that show the verb before them to be one.
var verbalNext = set(`the a an it them each all your both some any half on in until till for with over at well together gently lightly off out up down thoroughly aside into evenly under everything through
	this that these those again once when slightly completely overnight through every carefully quickly slowly very briefly uncovered covered as by from away back onto to immediately separately
	cream butter sugar eggs egg meat flour pastry dough onion onions garlic vegetables salt between across lengthways lengthwise top tops finely roughly coarsely thinly one two gradually`)

// adverbs may stand before a verb.
var adverbs = set(`then gently carefully slowly quickly now finally next immediately lightly thoroughly well just also briefly gradually roughly finely coarsely thinly evenly lastly first firstly secondly thirdly again
	meanwhile meantime optionally alternatively generously loosely tightly simply please always firmly liberally once afterwards very slightly continually constantly occasionally vigorously separately later so`)

// isAdverb says whether a word may stand before a verb without changing it.
func (t token) isAdverb() bool {
	return adverbs[t.text] || t.kind == word && len(t.text) > 4 && strings.HasSuffix(t.text, "ly") && verbs[t.text].name == ""
}

// modals may stand before a verb with its subject: "you can now brush".
var modals = set(`can should must may will you we i please could might`)

// negations turn a verb into a warning.
var negations = set(`not don't never without cannot can't won't doesn't`)

// isVerb gives the verb of token i when it is in its plain form.
func isVerb(ts []token, i int) (verb, bool) {
	t := at(ts, i)
	if t.kind != word {
		return verb{}, false
	}
	if v, ok := verbs[t.text]; ok {
		return v, true
	}
	if t.taught {
		return verb{name: t.text, deed: works}, true
	}
	if i := strings.LastIndexByte(t.text, '-'); i > 0 { // "dry-fry", "par-cook", "re-roll"
		v, ok := verbs[t.text[i+1:]]
		return v, ok && !nounsToo[v.name] || ok && (v.deed == fries || v.deed == cooks || v.deed == waits)
	}
	return misspelt(ts, i)
}
