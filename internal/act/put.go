package act

import (
	"slices"

	"plait.example/internal/practical"
)

func (s span) put() []Kind {
	ws, oven := s.words(), s.hasOven()
	place := placeIn(ws)
	takes := s.says("out") || takenFrom(ws) != ""
	switch {
	case s.f.is("lay") && s.says("out"):
		return []Kind{SetUp}
	case s.f.is("put", "place") && s.says("out") && !s.hasOven() && takenFrom(ws) == "" && s.has(foodsAll):
		return []Kind{FromCold} // "put the mince out on the table"
	case takes && place == "" && !s.says("bin", "rubbish"):
		return s.take()
	case s.f.is("puton", "put", "place") && oven && place != practical.AtOven:
		return []Kind{HeatOven}
	case s.says("timer", "alarm") && place == "":
		return []Kind{Timer}
	case oven && s.says("plates", "bowls") && !s.has(vessels):
		return []Kind{Plate}
	case placeKind[place] != "" && place != practical.AtSide:
		if place == practical.AtHob && s.onlyWater() && !s.says("in", "into", "putin") {
			return []Kind{BoilWater}
		}
		return []Kind{placeKind[place]}
	case s.says("apron", "hair", "gloves", "a-gloves"):
		return []Kind{SetUp}
	case s.f.at+1 < s.f.to && covers[at(s.ts, s.f.at+1).text] && !s.has(vessels), s.says("bin", "rubbish"):
		return []Kind{Other}
	case s.says("away"):
		return []Kind{FinalClean}
	case s.says("sink", "dishwasher"):
		return []Kind{WashUp}
	case s.says("rack", "racks"):
		return []Kind{TakeOut, Cool}
	case s.has(waterWords) && (s.f.is("puton") || s.says("on")) && !s.cooksIn():
		return []Kind{BoilWater}
	}
	return s.putElsewhere()
}

var (
	covers  = exactly("clingfilm film foil lid towel cling damp cloth tea")
	vessels = words("cake pie quiche gratin chicken pasties bread biscuits dough buns scones potatoes casserole lasagne")
	hobPans = exactly("pan saucepan frying wok pot a-grillpan saucepans hob ring heat")
	mixKit  = exactly("bowl mixer processor blender a-processor a-mixer jug")
)

// putElsewhere decides by the vessel.
func (s span) putElsewhere() []Kind {
	if s.says("dishes") && s.says("serving") {
		return []Kind{Plate}
	}
	for i, t := range s.after() {
		switch {
		case t.is("plate", "plates", "platter", "stand", "doily") && !s.says("flour", "breadcrumbs", "crumbs") && !s.f.is("lay"), t.is("serving") && at(s.after(), i+1).is("bowl", "bowls", "dish"):
			return []Kind{Plate}
		case hobPans[t.text] && !s.says("roasting", "cake", "baking"):
			return []Kind{Hob}
		case mixKit[t.text]:
			return []Kind{Mix}
		case t.in(cakeTins), t.is("case", "bag", "top", "over", "pastry"):
			return []Kind{Fill}
		case t.is("marinade"):
			return []Kind{Marinate}
		case t.is("grill") && s.says("on"):
			return []Kind{Grill}
		}
	}
	last := s.lastWord()
	switch {
	case s.says("boiling") && s.has(waterWords):
		return []Kind{Hob}
	case s.f.is("in", "putin") && s.says("lettuce", "salad", "burger", "burgers"):
		return []Kind{Fill}
	case s.f.is("in", "putin") && !s.has(baked) && s.has(words("rice pasta noodles spaghetti ravioli gnocchi")):
		return []Kind{Hob}
	case s.f.is("in", "putin") && (s.mixing() || !s.has(baked) && s.has(addedIn)):
		return []Kind{Mix}
	case s.f.is("in", "putin") && s.has(readyToEat) && !s.has(baked):
		return []Kind{Fill}
	case s.f.is("in", "putin"), last.is("in"), s.says("back") && s.says("in"):
		return []Kind{PutIn}
	case s.f.is("puton"), last.is("on"):
		return []Kind{Hob}
	case s.says("on") && s.has(hobFoods) && !s.says("plates", "plate", "tray"):
		return []Kind{Hob}
	}
	return []Kind{Other}
}

var hobFoods = words("pasta rice potatoes noodles sauce soup stock eggs peas")

// addedIn are foods of which "in" means into the pan or the bowl.
var addedIn = words("veg vegetables leek leeks onion onions garlic ginger mushrooms mushroom celery courgette gelatine omelette peas beans spices spice wine tomatoes tomato puree carrot carrots pepper peppers fruit lemon juice cocoa beansprouts spinach chocolate oregano paste paprika cumin turmeric cinnamon saffron chilli mince mayonnaise prawns jam coriander basil thyme herbs rosemary sultanas raisins nuts mustard wine yolks yolk whites honey syrup oats coconut")

// mixing: "put in the eggs", a thing put into a mixture.
func (s span) mixing() bool {
	return s.has(words("egg eggs flour sugar butter milk herbs spices sultanas chocolate chilli garlic stock spice puree water cream cornflour"))
}

// lastWord is the last word of the span that is not of a heat or a time.
func (s span) lastWord() token {
	ws := s.after()
	for i := len(ws) - 1; i >= 0; i-- {
		if ws[i].kind == word && !minuteWords[ws[i].text] && !ws[i].is("c", "f", "degrees", "for", "at", "fan", "gas", "mark", "gm", "and", "then") {
			return ws[i]
		}
	}
	return token{kind: sign}
}

func (s span) hasOven() bool {
	return slices.ContainsFunc(s.words(), func(t token) bool { return ovens[t.text] })
}

// onlyWater says whether nothing but water is named: "pan of water on for the pasta".
func (s span) onlyWater() bool {
	if !s.has(waterWords) {
		return false
	}
	for i, t := range s.words() {
		if t.is("for") {
			break
		}
		if t.kind == word && s.f.from+i != s.f.at && !t.in(notObjects) && !waterThings[t.text] && lexicon[t.text].name == "" {
			return false
		}
	}
	return true
}

var waterThings = exactly("water kettle a-water pan saucepan pot hob ring lid salted boiling salt wok full jug deep")

// cooksIn says whether a food is named that is cooked in the water.
func (s span) cooksIn() bool {
	return s.has(words("potatoes pasta rice eggs egg noodles spaghetti vegetables carrots broccoli peas gnocchi lentils pudding beans tagliatelle ravioli macaroni penne stock")) || s.says("butter", "sugar")
}
