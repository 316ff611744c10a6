package act

import (
	"strings"

	"plait.example/internal/practical"
)

var warmed = words("flatbreads bread rolls naan naans sauce tortillas wraps pittas pitta")

func (s span) heat() []Kind {
	ws := s.words()
	place := placeIn(ws)
	switch {
	case s.says("fryer", "oil", "wok"), s.says("pan", "saucepan") && !s.hasOven():
		return []Kind{Hob}
	case s.says("plates", "bowls", "plate") && s.f.is("warm", "heat") && !s.has(warmed):
		return []Kind{Plate}
	case place == practical.AtMicrowave, s.f.is("heat", "warm") && s.says("microwave"):
		return []Kind{Microwave}
	case s.f.is("warm", "heat") && place == practical.AtOven:
		return []Kind{PutIn}
	case s.hasOven() && s.says("off"):
		return []Kind{OvenOff}
	case s.hasOven():
		return []Kind{HeatOven}
	case s.says("grill", "a-grillpan"):
		return []Kind{Grill}
	case s.says("kettle", "a-water") || s.says("water") && !s.cooksIn():
		return []Kind{BoilWater}
	case s.f.is("preheat"):
		return []Kind{HeatOven}
	case s.f.is("turnon", "switch", "light") && s.says("gas") && len(heatsOf(s.text())) > 0:
		return []Kind{HeatOven} // "light the gas, mark 6"
	case s.f.is("turnon", "switch", "light"):
		if s.says("hob", "ring", "gas", "heat") {
			return []Kind{Hob}
		}
		return []Kind{Other}
	case s.f.is("warm") && !s.says("milk", "cream", "butter", "a-cream"):
		return []Kind{Reheat}
	}
	return []Kind{Hob}
}

func (s span) turn() []Kind {
	switch {
	case s.says("out") && !s.hasOven():
		return s.turnout()
	case s.hasOven() && s.says("off"):
		return []Kind{OvenOff}
	case s.hasOven() && s.says("on") && !s.says("down", "up"):
		return []Kind{HeatOven}
	case s.hasOven() && placeIn(s.words()) != practical.AtOven:
		return []Kind{TurnOven}
	case s.says("grill") && s.says("on"):
		return []Kind{Grill}
	case s.says("heat", "hob", "simmer", "ring") && s.f.is("turn", "turndown", "turnup", "lower", "reduce", "raise", "increase"):
		return []Kind{Hob}
	case s.f.is("turndown", "turnup", "lower", "raise", "increase", "reduce") && len(heatsOf(s.text())) > 0:
		return []Kind{TurnOven}
	case s.f.is("turndown", "turnup", "reduce"):
		return []Kind{Hob}
	case s.says("off"):
		return s.off()
	}
	return []Kind{Other}
}

// text is the span's words as mended, for the reader of heats.
func (s span) text() string {
	var b strings.Builder
	for _, t := range s.words() {
		b.WriteString(t.text + " ")
	}
	return "oven " + b.String()
}

func (s span) off() []Kind {
	if s.hasOven() || s.says("everything") {
		return []Kind{OvenOff}
	}
	return []Kind{Other}
}

func (s span) set() []Kind {
	place := placeIn(s.words())
	switch {
	case s.says("timer", "alarm"):
		return []Kind{Timer}
	case s.hasOven() && place != practical.AtOven:
		return []Kind{HeatOven}
	case place == practical.AtOven:
		return []Kind{PutIn}
	case s.says("table"), s.says("out", "work", "workstation", "area", "station", "place") && !s.f.purpose:
		return []Kind{SetUp}
	case place == practical.AtFreezer:
		return []Kind{Freeze}
	}
	return []Kind{Chill}
}

func (s span) cool() []Kind {
	switch place := placeIn(s.words()); {
	case place == practical.AtFridge:
		return []Kind{Chill}
	case place == practical.AtFreezer:
		return []Kind{Freeze}
	case s.hasOven() && place != practical.AtOven && takenFrom(s.words()) == "":
		return []Kind{TurnOven}
	case s.says("rack", "racks"), s.hasOven() && takenFrom(s.words()) != "":
		return []Kind{TakeOut, Cool}
	}
	return []Kind{Cool}
}

var baked = words(`cake cakes pie pies quiche quiches bread rolls biscuits biscuit cookies scones pizza lasagne tart tarts brownies crumble pasties muffins sponge meringue meringues flan cheesecake buns eclairs profiteroles gratin
	casserole pastry pastries puddings wellington focaccia loaf traybake shortbread flapjack cupcakes tartlets roulade souffle samosas brownies croissants wellington focaccia naan naans pavlova`)

func (s span) cook() []Kind {
	place := placeIn(s.words())
	switch {
	case placeKind[place] != "" && place != practical.AtSide:
		return []Kind{placeKind[place]}
	case s.says("pan", "wok", "griddle") && !s.says("roasting", "baking", "cake") && !s.hasOven():
		return []Kind{Hob}
	case len(heatsOf(s.text())) > 0, s.has(baked) && !s.says("cream", "sauce"):
		return []Kind{PutIn}
	case s.f.form == noVerb:
		return []Kind{Other}
	}
	return []Kind{Hob}
}
