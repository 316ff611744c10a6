package recipe

import "plait.example/internal/practical"

// placeWords finds the place that the words name, "" when they name none.
// Names of things that only sound like a place are passed over.
func placeWords(ts []token) practical.Place {
	aside := practical.Place("")
	for i, t := range ts {
		if t.kind != word {
			continue
		}
		switch p := placeAt(ts, i); {
		case p == practical.AtSide && t.is("aside"):
			aside = p // "set aside in the fridge"
		case p != "":
			return p
		}
	}
	return aside
}

func placeAt(ts []token, i int) practical.Place {
	t, prev, next := ts[i], at(ts, i-1), at(ts, i+1)
	switch t.text {
	case "oven", "ovens":
		if prev.is("dutch", "pizza", "the-") && !prev.is("pizza") || next.is("dish", "dishes", "proof", "safe", "tray", "gloves", "glove", "cloth", "mitts", "chips", "shelf", "rack", "ready", "baked", "for-show") && !has(ts[max(0, i-3):i], "in the", "into the") {
			return ""
		}
		if has(ts[max(0, i-4):i], "out of the", "from the", "from", "out of") || prev.is("off") || at(ts, i-1).is("the") && at(ts, i-2).is("off") {
			return ""
		}
		return practical.AtOven
	case "fridge", "refrigerator", "icebox":
		if has(ts[max(0, i-4):i], "from the", "out of the", "from") {
			return ""
		}
		return practical.AtFridge
	case "freezer":
		if has(ts[max(0, i-4):i], "from the", "out of the", "from") {
			return ""
		}
		return practical.AtFreezer
	case "microwave", "microwaveable", "microwavable", "microwave-safe", "microwave-proof", "watts":
		return practical.AtMicrowave
	case "w":
		if prev.kind == number && prev.value >= 300 && prev.value <= 1200 && !t.gap {
			return practical.AtMicrowave // "800W"
		}
	case "shelf":
		if prev.is("top", "middle", "bottom", "centre", "center", "upper", "lower", "oven") && !has(ts[i:min(i+5, len(ts))], "fridge", "refrigerator", "freezer") {
			return practical.AtOven
		}
	case "grill", "broiler":
		if next.is("pan", "rack", "tray") || prev.is("a", "or") && next.is("or", "griddle") {
			return ""
		}
		if has(ts[max(0, i-4):i], "under", "the", "hot", "preheated", "medium") {
			return practical.AtGrill
		}
	case "place", "spot", "area", "cupboard":
		switch {
		case prev.is("warm", "airing", "free", "cosy", "draught-free", "draft-free"):
			return practical.AtWarm
		case prev.is("cold", "cool") && at(ts, i-2).is("a", "in", "the"):
			return practical.AtFridge
		}
	case "somewhere":
		switch {
		case next.is("warm", "cosy"):
			return practical.AtWarm
		case next.is("cold", "cool"):
			return practical.AtFridge
		}
	case "cold":
		if prev.is("the") && at(ts, i-2).is("in") && (next.kind != word || next.is("for", "until", "till", "while", "and", "to", "overnight")) {
			return practical.AtFridge // "half an hour in the cold"
		}
	case "radiator", "boiler":
		return practical.AtWarm
	case "rack":
		if prev.is("wire", "cooling", "a", "the") {
			return practical.AtSide
		}
	case "temperature":
		if prev.is("room") {
			return practical.AtSide
		}
	case "aside":
		return practical.AtSide
	case "counter", "countertop":
		if prev.is("the", "kitchen") && has(ts[max(0, i-3):i], "on") {
			return practical.AtSide
		}
	case "side":
		if prev.is("one") && at(ts, i-2).is("to") {
			return practical.AtSide
		}
	case "heat", "flame":
		if prev.is("low", "medium", "high", "gentle", "moderate", "medium-low", "medium-high", "low-medium", "the", "steady", "medium-low", "strong", "lowest", "very", "slow", "full") && !has(ts[max(0, i-5):i], "off the", "turn off", "remove from", "from the") {
			return practical.AtHob
		}
	case "hob", "stove", "stovetop", "stove-top", "burner", "ring":
		if has(ts[max(0, i-4):i], "from", "off") {
			return ""
		}
		if t.text != "ring" || prev.is("the", "hob", "back") {
			return practical.AtHob
		}
	}
	return ""
}

// pans are words for what stands on a hob.
func namesPan(ts []token) bool {
	for i, t := range ts {
		if t.is("pan", "pot", "pans", "cooker") && !at(ts, i-1).is("cake", "baking", "pie", "roasting", "loaf", "muffin", "springform", "tart", "bundt", "sheet", "tube", "bread", "grill", "flan", "sponge", "brownie", "square", "lined", "prepared", "oven", "tea", "flower", "rice", "slow", "greased", "crust-lined") &&
			!has(ts[max(0, i-5):i], "inch", "cm", "springform", "lined", "off the", "from the") {
			return true
		}
	}
	return has(ts, "casserole", "ovenproof dish") && has(ts, "heat", "fry", "brown", "oil", "melt", "hob", "flameproof") || has(ts, "saucepan", "sauce pan", "frying pan", "frypan", "skillet", "wok", "griddle", "kettle", "dutch oven", "stockpot", "boiling water", "salted water")
}

// rawMeat are foods that go to the fridge while they wait raw.
func namesRawMeat(ts []token) bool {
	return has(ts, "chicken", "beef", "lamb", "pork", "turkey", "steak", "meat", "mince", "duck", "fish", "salmon", "cod", "mackerel", "prawn", "shrimp", "haddock", "tuna", "sausage", "bacon", "veal", "liver", "fillet", "thigh", "drumstick", "squid", "mussel", "chipolata", "gammon", "venison", "rabbit")
}
