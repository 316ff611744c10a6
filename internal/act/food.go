package act

import (
	"slices"
	"strings"

	"plait.example/internal/practical"
)

// notObjects are words that name neither a food nor a thing that is worked on.
var notObjects = words(`the a an and or of in on into onto to from for with at by up down out off over under until till when while whilst then it them this that these those is are be been all each every some any my your our their its his her
	minute min mins m hour hr sec second c f degrees fan gas mark gm time heat high low medium gentle golden brown soft firm smooth thick thin crisp tender done ready cooked cool cold hot warm well just about approx approximately again more still further side both
	once also only if so not no as very carefully gently slowly quickly lightly finely roughly thinly evenly thoroughly back through together around between before after during more same other remaining rest half one two three four five six oven fridge freezer hob place
	ones everything anything something need needed use using sure careful clean small large medium big little few lots lot good nice way part first last next now here there what which who how i we you he she they me us do does can will should must may have has had get`)

// objects are the stems of what the act is done to.
func (s span) objects() (list []string) {
	for i, t := range s.words() {
		if t.kind != word || s.f.from+i == s.f.at || t.in(notObjects) || ovens[t.text] || lexicon[t.text].noun == never && lexicon[t.text].name == t.text {
			continue
		}
		o := strings.TrimPrefix(t.stem, "a-")
		if !slices.Contains(list, o) {
			list = append(list, o)
		}
	}
	return list
}

// foodsAll are words of foods that tell oiling peppers from oiling a tin.
var foodsAll = func() set {
	all := set{}
	for _, s := range []set{meat, fish, produce, readyToEat, words("peppers onions dough bread aubergine pastry")} {
		for w := range s {
			all[w] = true
		}
	}
	return all
}()

// handled are the kinds in which hands, knives and bowls touch the food.
var handled = map[Kind]bool{
	Cut: true, Mix: true, Shape: true, Fill: true, Decorate: true, Marinate: true, Hob: true, Taste: true, FromCold: true, Plate: true, Other: true, Grill: true,
}

// named says whether a food of the set is named, for a verb in its plain form
// after it: in "for the tomato sauce chop the onion" no tomato is chopped.
func (s span) named(w set) bool {
	if s.f.form != plain {
		return s.has(w)
	}
	for i, t := range s.words() {
		if s.f.from+i > s.f.at && t.in(w) {
			return true
		}
	}
	return false
}

// touching are the verbs of no other kind in which the hands are on the food.
var touching = exactly("wash rinse dry defrost thaw prick pierce toss open drain skim flip turn score")

// food says whether the act touches raw meat, fish or egg, or food that is eaten as it is.
func (s span) food(k Kind) practical.Food {
	if !handled[k] {
		return ""
	}
	raw, ready := s.rawNamed(k), s.named(readyToEat)
	switch {
	case raw && k == Fill && s.has(breads) && !s.f.is("wrap"):
		return practical.ReadyToEat
	case raw && k == Other && !touching[s.f.name]:
		return ""
	case raw:
		return practical.Raw
	case ready && k != Hob && k != Grill && k != FromCold && k != Taste && k != Other && !s.f.is("add"):
		return practical.ReadyToEat
	case s.has(meat) && s.cooked() && (k == Cut || k == Plate || k == Fill):
		return practical.ReadyToEat
	}
	return ""
}

// rawNamed says whether raw meat, fish or egg is named. Eggs are raw where they
// are cracked, beaten or mixed.
func (s span) rawNamed(k Kind) bool {
	if k == Plate || s.cooked() {
		return false
	}
	if s.has(meat) || s.has(fish) {
		return !s.says("stock") && !s.has(words("ham gravy"))
	}
	return s.has(egg) && !s.has(words("noodles custard")) && (k == Mix || k == Decorate || k == Fill || k == Shape || s.f.is("separate", "crack", "beat", "break"))
}

// direct says whether the verb has a food or a thing of its own: not "mix with
// yogurt", "coat in flour".
func (s span) direct() bool {
	after := s.after()
	for i, t := range after {
		if t.kind != word || adverbs[t.text] {
			continue
		}
		return !t.is("with", "in", "into", "it", "them", "together", "and", "then") || i > 2
	}
	return false
}

// breads hold what is cooked already: "fill the rolls with burgers".
var breads = words("rolls roll buns bun bread wrap wraps tortilla tortillas pitta flatbread flatbreads baguette sandwich")

// cooked says whether the food is named as cooked: "slice the cooked chicken".
func (s span) cooked() bool {
	for _, t := range s.words() {
		if t.kind == word && cookedWords[t.text] && !t.is("cold") {
			return true
		}
	}
	return false
}

// heating are the kinds that cook food.
var heating = map[Kind]bool{PutIn: true, Hob: true, Grill: true, Microwave: true, Reheat: true}

func (s span) highRisk(k Kind) bool {
	return heating[k] && s.has(highRisk) && !s.says("stock", "wash")
}
