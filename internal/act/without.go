package act

import "slices"

// saidWithout reads a piece that has no verb, as pupils write them, and gives a
// name for what is done, with the index of the word that says it.
func saidWithout(ts []token) (name string, where int) {
	last := len(ts) - 1
	for last > 0 && (ts[last].kind != word || ts[last].is("mins", "minutes", "min", "c", "degrees", "fan", "now", "again")) {
		last--
	}
	if boiledFor(ts) {
		return "hobbed", 0 // "noodles 4 min"
	}
	for i, t := range ts {
		next := at(ts, i+1)
		switch {
		case t.kind != word:
		case t.is("a-cooloven", "a-warmoven") && next.is("to", "down", "by"):
			return "turndown", i
		case t.is("still", "already", "is", "are") && slices.ContainsFunc(ts[i:], func(t token) bool { return ovens[t.text] }) && !next.is("on", "off"):
			return "", 0
		case t.is("in") && i > 0 && next.is("last", "bit", "gradually", "slowly"):
			return "add", i
		case t.is("in") && i > 0 && next.kind == number && at(ts, i+2).in(glasses):
			return "tinned", i
		case t.is("gas", "temp", "temperature") && next.is("down", "up") && slices.ContainsFunc(ts[i:], func(t token) bool { return t.kind == number }):
			return "turndown", i // "gas down to 4"
		case t.is("oven", "a-hotoven", "a-moderateoven"):
			if n := ovenWithout(ts, i); n != "" {
				return n, i
			}
		case t.is("out") && i > 0 && at(ts, i-1).is("plates", "bowls", "cutlery", "glasses", "napkins", "kit", "equipment", "ingredients", "board", "boards", "pans", "scales", "book", "knives", "everything"):
			return "setup", i // "plates out"
		case t.is("out") && i > 0:
			return "takeout", i
		case t.in(coldPlaces) && before(ts, i, "in", "into", "to", "putin"):
			return "chilled", i
		case t.in(coldPlaces) && before(ts, i, "from"):
			return "takeout", i
		case t.in(coldPlaces) && i == 0:
			return "chilled", i
		case t.is("rack", "racks") && last == 0:
			return "racked", i
		case t.kind == word && shorthand(ts, i) != "":
			return shorthand(ts, i), i
		case t.is("off") && next.is("heat", "the", "hob") && i > 0:
			return "takeoff", i
		case t.in(cakeTins) && !t.is("dishes", "dish") && before(ts, i, "in", "into", "on", "onto"):
			return "tinned", i
		case (t.is("shelf", "a-shelf") && before(ts, i, "in", "on", "into")) && i > 1:
			return "in", i
		case t.is("pan", "saucepan", "wok", "griddle", "a-grillpan") && before(ts, i, "in", "into", "on", "to") && i > 1, t.is("water") && at(ts, i-1).is("boiling", "simmering") && at(ts, i-2).is("in", "into") && i > 2,
			t.is("heat", "flame") && at(ts, i-1).is("low", "medium", "high", "gentle") && i > 2 && at(ts, i-2).is("on", "over"):
			return "hobbed", i
		case t.in(crumbs) && at(ts, i-1).is("in", "into") && slices.ContainsFunc(ts[:i], func(t token) bool { return t.in(meat) || t.in(fish) }):
			return "coat", i
		case t.is("on") && i == last && i > 0 && at(ts, i-1).in(readyToEat) && !at(ts, i-1).in(hobThings):
			return "topped", i // "mint on"
		case t.is("top") && i == last && i > 1 && at(ts, i-1).is("on"):
			return "top", i
		case t.is("freezer") && before(ts, i, "in", "into", "to"):
			return "frozen", i
		case t.is("grill") && before(ts, i, "under", "in"):
			return "grilled", i
		case t.is("grill") && next.is("on"):
			return "grilled", i
		case t.is("microwave") && before(ts, i, "in"):
			return "microwaved", i
		case t.is("rack", "racks") && before(ts, i, "on", "onto", "to"):
			return "racked", i
		case t.is("a-warmplace") && before(ts, i, "in", "into", "to", "a", "-") || t.is("a-warmplace") && i == 0:
			return "warm-place", i
		case (t.is("kettle") || t.in(waterWords)) && (next.is("on") || before(ts, i, "puton")):
			return "kettle", i
		case t.is("water") && at(ts, i-1).is("simmering", "boiling", "hot") && at(ts, i-2).is("over"):
			return "hobbed", i
		case t.is("hob", "ring") && before(ts, i, "on", "onto"):
			return "hobbed", i
		case t.is("on") && i == last && i > 0 && at(ts, i-1).in(hobThings):
			return "hobbed", i
		case t.is("marinade") && before(ts, i, "in"):
			return "marinate", i
		case t.is("back") && i == 0 && next.kind == number && minuteWords[at(ts, i+2).text]:
			return "in", i
		case t.is("in") && i > 0 && (i == last || next.is("at", "for", "@", "gas", "gm", "mark", "with", "below", "above", "underneath", "too", "also", "again", "beside") || next.kind == number):
			return "in", i
		}
	}
	return namedWithout(ts)
}

// coverings are what goes on top of something.
var coverings = words("icing a-icing a-buttercream frosting glaze jam crumble topping marzipan ganache streusel sauce a-sauce")

// boiledFor says whether a piece is only a food of the hob and its minutes.
func boiledFor(ts []token) bool {
	food, minutes := false, false
	for i, t := range ts {
		switch {
		case t.kind == number:
			minutes = minutes || minuteWords[at(ts, i+1).text]
		case t.kind != word || minuteWords[t.text] || t.is("for", "about", "the", "more", "until", "till", "soft", "tender", "done", "aldente"):
		case t.in(hobThings) && !t.is("pan", "pans", "pot", "milk", "custard"):
			food = true
		default:
			return false
		}
	}
	return food && minutes
}

// saysMinutes says whether the tokens name a length of time, or a number alone.
func saysMinutes(ts []token) bool {
	for i, t := range ts {
		if next := at(ts, i+1); t.kind == number && t.value < 100 && (minuteWords[next.text] || next.kind == sign || next.is("a", "each", "per", "both", "either", "and", "then")) {
			return true
		}
	}
	return false
}

var (
	crumbs  = words("flour breadcrumbs crumbs panko")
	glasses = words("glasses pots ramekins moulds bowls cups dishes tins cases")
)

// hobThings are what "on" puts on the hob: "potatoes on".
var hobThings = words("pasta rice potatoes potato pan pans veg vegetables peas noodles sauce soup curry stock eggs pot water spaghetti carrots beans ragu lentils gnocchi ravioli tagliatelle dal daal dhal milk custard broth borscht goulash porridge gravy dumplings chilli stew ramen")

// ovenWithout reads "oven on", "quiche in oven", "oven 180".
func ovenWithout(ts []token, i int) string {
	next := at(ts, i+1)
	minutes := next.kind == number && minuteWords[at(ts, i+2).text]
	switch {
	case minutes:
		return "in"
	case before(ts, i, "out", "from"):
		return "takeout"
	case before(ts, i, "in", "into", "to", "inside", "for"):
		return "in"
	case next.is("off"):
		return "turnoff"
	case next.is("down", "up"):
		return "turndown"
	case next.is("on", "to", "at", "heating", "warming") || next.kind == number || next.is("gas", "gm", "-", ":", "ready") || i == 0 && len(ts) == 1:
		return "preheat"
	}
	return ""
}

// before says whether one of the words stands in the three tokens before i, with only articles between.
func before(ts []token, i int, ws ...string) bool {
	for k := i - 1; k >= max(0, i-4); k-- {
		if at(ts, k).is(ws...) {
			return true
		}
		if !at(ts, k).is("the", "a", "my", "hot", "of", "preheated", "cool", "warm", "top", "middle", "bottom", "same", "wire", "cooling", "-", "dry", "frying", "large", "small", "big", "deep", "heavy", "greased", "lined", "roasting", "baking", "loaf", "cake", "pie", "low", "medium", "high", "gentle", "boiling", "simmering", "salted", "each", "both", "two") {
			return false
		}
	}
	return false
}

// namedWithout reads a piece that only names a chore or a state: "hands", "apron on", "curry done".
func namedWithout(ts []token) (string, int) {
	for i, t := range ts {
		switch {
		case t.is("hands") && len(ts) <= 3:
			return "handwash", i
		case t.is("apron", "aprons", "hair", "equipment", "ingredients"):
			return "setup", i
		case t.is("plates") && i > 0 && at(ts, i-1).is("hot", "warm", "warmed", "serving"):
			return "plateup", i
		case t.is("plate", "plates") && before(ts, i, "on", "onto"):
			return "plateup", i
		case t.is("bowls", "plates", "bowl", "plate", "dishes") && at(ts, i-1).is("warm", "hot", "serving", "warmed", "cold") && before(ts, i-1, "in", "on", "onto", "into"):
			return "plateup", i
		case t.is("sink", "floor") && len(ts) <= 2:
			return "sweep", i
		case t.is("need", "equip", "kit") && i == 0 && len(ts) == 1:
			return "setup", i
		case t.is("tin", "tins", "mould", "moulds", "ramekins") && at(ts, i+1).is("ready") && i+1 == len(ts)-1:
			return "grease", i
		case t.in(kitAlone) && onlyKit(ts):
			return "setup", i
		case t.is("service"):
			return "serve", i
		case t.is("break", "catch", "contingency", "slack", "nothing", "spare") && len(ts) <= 4:
			return "wait", i
		case t.is("done", "ready", "finished", "complete", "cooked") && i == len(ts)-1 && i > 0:
			return "done", i
		case t.is("core") && at(ts, i+1).is("temperature", "temp", "75", "70", "above", "over", "at", "of", ":", "is"):
			return "probe", i
		}
	}
	return "", 0
}

// kitAlone are things to fetch; a piece that names them and nothing that is done lays them out.
var kitAlone = words("sheet parchment a-paper grater peeler a-tin a-tray")

// onlyKit says whether a piece ends in "ready" or "out" after a thing of the kitchen.
func onlyKit(ts []token) bool {
	return len(ts) <= 4 && (at(ts, len(ts)-1).is("ready", "out") || len(ts) == 1)
}

// shorthand is what word i of a piece without a verb says, as pupils shorten it; empty: nothing.
func shorthand(ts []token, i int) string {
	t, next := ts[i], at(ts, i+1)
	switch {
	case t.is("table") && at(ts, i-1).is("to", "on") && i > 1:
		return "serve"
	case t.is("basket", "platter", "cakestand", "stand", "doily", "slate") && before(ts, i, "in", "on", "into", "onto"):
		return "plateup"
	case t.is("strips", "slices", "cubes", "chunks", "dice", "rings", "wedges", "quarters", "batons", "matchsticks", "halves", "florets", "half") && at(ts, i-1).is("in", "into") && i > 1:
		return "cut" // "chicken in strips"
	case t.is("on", "over", "onto") && i > 0 && at(ts, i-1).in(coverings) && !before(ts, i, "in", "into") && next.kind == word && !next.is("the", "heat", "hob", "low", "medium", "high", "to", "for"):
		return "topped" // "icing on buns"
	case t.is("oil", "fat") && next.is("hot", "heating", "heated", "warm"):
		return "hobbed"
	case t.is("side", "sides") && at(ts, i-1).is("a", "each", "per", "both", "either") && saysMinutes(ts[:i]):
		return "hobbed" // "flatbreads 2 min a side"
	case t.is("lid") && (next.is("on") || at(ts, i-1).is("on")) && saysMinutes(ts[i:]):
		return "hobbed" // "lid on 5"
	case t.is("splash", "dash", "bit", "drop", "pinch", "squeeze", "spoonful", "knob", "glug") && next.is("of") && i <= 1:
		return "add"
	case t.in(waterWords) && at(ts, i-1).is("cold") && at(ts, i-2).is("in", "into"):
		return "soak"
	}
	return ""
}
