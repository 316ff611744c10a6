package act

import "plait.example/internal/practical"

func (s span) prepare() []Kind {
	switch {
	case s.says("washup", "washing", "dishes"):
		return []Kind{WashUp}
	case s.has(cakeTins) && !s.says("serving", "dish", "dishes"):
		return []Kind{Ready}
	case s.has(setupThings), s.says("yourself", "myself", "equip"):
		return []Kind{SetUp}
	case s.says("plate", "plates", "serving", "presentation"):
		return []Kind{Plate}
	case s.has(produce), s.has(meat), s.has(fish), s.says("garnish", "onions", "onion", "filling", "ginger", "garlic") && !s.says("sauce"):
		return []Kind{Cut}
	case s.f.is("do") && len(s.objects()) == 0:
		return nil
	}
	return []Kind{Mix}
}

// ready reads "line the tin", "grease and flour", but "line the tin with pastry" shapes.
func (s span) ready() []Kind {
	switch {
	case s.f.is("line") && (s.has(pastryWords) && !s.says("beans") || s.says("biscuit", "sponge", "case")):
		return []Kind{Shape}
	case s.f.is("butter") && s.says("bread", "toast", "rolls", "scones", "muffins"):
		return []Kind{Fill}
	case s.f.is("oil", "butter", "flour") && !s.has(tinWords) && s.has(foodsAll):
		return []Kind{Mix}
	}
	return []Kind{Ready}
}

func (s span) boil() []Kind {
	if s.says("kettle") || s.onlyWater() {
		return []Kind{BoilWater}
	}
	return []Kind{Hob}
}

func (s span) fill() []Kind {
	switch {
	case s.says("kettle"), s.has(waterWords) && s.says("pan", "saucepan"):
		return []Kind{BoilWater}
	case s.says("sink"):
		return []Kind{WashUp}
	}
	return []Kind{Fill}
}

// hob reads verbs of the hob that may be done elsewhere: "brown under the grill", "melt in the microwave".
func (s span) hob() []Kind {
	switch p := placeIn(s.words()); {
	case p == practical.AtGrill, p == practical.AtMicrowave, p == practical.AtOven:
		return []Kind{placeKind[p]}
	case s.f.is("toast") && (s.says("pan") || p == practical.AtHob):
		return []Kind{Hob}
	case s.f.is("toast"):
		return []Kind{Grill}
	case s.f.is("soften") && s.says("butter", "margarine") && !s.says("onion", "onions", "garlic", "leek", "leeks"):
		return []Kind{Other} // out of the fridge
	}
	return []Kind{Hob}
}

// onto reads pouring, spooning and adding by what it is poured into.
func (s span) onto() []Kind {
	p := placeIn(s.words())
	switch {
	case p == practical.AtHob && s.f.is("stir", "mix", "add", "pour"):
		return []Kind{Hob}
	case s.next.purpose && s.next.is("cool") && s.f.is("spread", "spoon", "tip"):
		return []Kind{Other} // "spread on a plate to get cold"
	case s.says("plate", "plates", "platter") || s.says("serving") && s.says("dish", "bowl", "dishes", "bowls"):
		return []Kind{Plate}
	case s.f.is("assemble", "arrange") && s.has(setupThings):
		return []Kind{SetUp}
	case s.f.is("add", "stir", "mix"):
		return []Kind{Mix}
	case s.f.is("assemble", "build", "spread", "arrange"):
		return []Kind{Fill}
	case s.f.is("divide", "share", "portion") && !s.has(cakeTins):
		return []Kind{Shape}
	case s.has(cakeTins), s.says("case", "pastry", "base", "glasses", "cases", "bag", "top", "between"), s.f.is("spoon", "tip"):
		return []Kind{Fill}
	}
	return []Kind{Mix}
}

// lead reads "start the sauce": the making of what is named.
func (s span) lead() []Kind {
	switch {
	case s.f.is("carry") && !s.says("on"):
		return []Kind{Other}
	case s.f.is("finish") && placeKind[placeIn(s.words())] != "":
		return []Kind{placeKind[placeIn(s.words())]}
	case s.f.is("finish", "stay"):
		if s.f.is("finish") && s.says("with") {
			return []Kind{Decorate}
		}
		if s.f.is("finish") {
			return []Kind{Other}
		}
	case s.f.is("start", "begin", "continue", "carry") && s.has(produce):
		return []Kind{Cut}
	case s.f.is("start", "begin", "carry") && len(s.objects()) > 0:
		return []Kind{Mix}
	}
	return nil
}

func (s span) brush() []Kind {
	if s.has(cakeTins) && s.says("oil", "butter") {
		return []Kind{Ready}
	}
	return []Kind{Decorate}
}

func (s span) bake() []Kind {
	if placeIn(s.words()) == practical.AtHob {
		return []Kind{Hob}
	}
	return []Kind{PutIn}
}

func (s span) pause() []Kind {
	if s.says("egg", "eggs", "chocolate", "spaghetti", "biscuits", "up", "into", "noodles") {
		return []Kind{Mix}
	}
	return []Kind{Idle}
}

func (s span) chill() []Kind {
	if placeIn(s.words()) == practical.AtFreezer {
		return []Kind{Freeze}
	}
	return []Kind{Chill}
}

func (s span) getready() []Kind {
	if s.says("serve", "service", "serving", "present", "plate") || s.next.is("serve", "plate", "present") {
		return []Kind{Plate}
	}
	return []Kind{SetUp}
}

func (s span) make() []Kind {
	if s.says("sure", "certain") {
		return nil
	}
	return []Kind{Mix}
}

func (s span) rest() []Kind {
	if p := placeIn(s.words()); p == practical.AtFridge || p == practical.AtFreezer {
		return []Kind{placeKind[p]}
	}
	return []Kind{Rest}
}

func (s span) grill() []Kind {
	if s.says("off") {
		return []Kind{Other}
	}
	return []Kind{Grill}
}

// cut reads "cut out biscuits" as shaping, all else as cutting.
func (s span) cut() []Kind {
	if s.f.is("squeeze") && s.says("water", "dry", "liquid", "excess", "moisture") {
		return []Kind{Other}
	}
	if s.f.is("split", "crack") && s.has(egg) {
		return []Kind{Mix} // whites from yolks
	}
	if s.says("cutter", "rounds", "circles", "discs", "shapes", "biscuits", "strips") && s.has(words("pastry dough biscuits pasta rounds circles")) {
		return []Kind{Shape}
	}
	return []Kind{Cut}
}

// turnout turns food out of its tin, on to the plates when they are named.
func (s span) turnout() []Kind {
	if s.says("plate", "plates") {
		return []Kind{Plate}
	}
	return []Kind{Other}
}

func (s span) reheat() []Kind {
	if s.says("plates") {
		return []Kind{Plate}
	}
	return []Kind{Reheat}
}

func (s span) roll() []Kind {
	if s.says("flour", "breadcrumbs", "sugar", "coconut", "oats") && s.says("in") {
		return []Kind{Fill}
	}
	return []Kind{Shape}
}

func (s span) top() []Kind {
	if s.says("mash", "potato", "sauce", "crumble", "mozzarella", "dough", "lid") {
		return []Kind{Fill}
	}
	return []Kind{Decorate}
}

func (s span) check() []Kind {
	switch {
	case s.says("probe", "core", "thermometer") || (s.says("temperature") || s.coreFigure()) && !s.hasOven() && !s.has(setupThings):
		return []Kind{Probe}
	case s.f.is("use"):
		return nil
	}
	return []Kind{Test}
}

// soak: pots that soak in the sink are washing-up.
func (s span) soak() []Kind {
	if s.says("sink", "dirty", "pots", "pans") {
		return []Kind{WashUp}
	}
	return []Kind{Soak}
}

func (s span) ladle() []Kind {
	if s.says("bowls", "bowl", "plates", "dishes") {
		return []Kind{Plate}
	}
	return []Kind{Fill}
}

// measure: "measure with the probe" is no weighing.
func (s span) measure() []Kind {
	if s.says("probe", "temperature", "thermometer") {
		return []Kind{Probe}
	}
	return []Kind{SetUp}
}

func (s span) push() []Kind {
	if s.says("probe", "thermometer") {
		return []Kind{Probe}
	}
	return []Kind{Other}
}

// open: "open the gas" lights the oven, "open the oven" does not.
func (s span) open() []Kind {
	if s.says("gas") {
		return []Kind{HeatOven}
	}
	return []Kind{Other}
}

// coreFigure says whether degrees are named that food, and no oven, reaches.
func (s span) coreFigure() bool {
	ws := s.words()
	for i, t := range ws {
		if t.kind == number && t.value >= 63 && t.value <= 90 && at(ws, i+1).is("°", "c", "degrees") {
			return true
		}
	}
	return false
}
