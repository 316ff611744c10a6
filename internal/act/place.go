package act

import (
	"slices"

	"plait.example/internal/practical"
)

var ovens = exactly("oven a-hotoven a-moderateoven a-cooloven a-warmoven a-veryhotoven a-fairlyhotoven a-verycooloven")

// placeIn is the place that the tokens say food is put into or stands in; empty
// when none is said, or it is only taken from there.
func placeIn(ts []token) practical.Place {
	for i, t := range ts {
		if p := placeWord(ts, i, t); p != "" {
			return p
		}
	}
	return ""
}

func shelf(t token) bool { return t.is("shelf", "middle", "top", "bottom", "centre", "rack") }

func placeWord(ts []token, i int, t token) practical.Place {
	to := before(ts, i, "in", "into", "to", "inside", "putin", "on", "onto", "under", "over", "puton", "by", "using")
	switch {
	case ovens[t.text] && at(ts, i-1).is("of", "the") && slices.ContainsFunc(ts[max(0, i-4):i], shelf):
		return practical.AtOven
	case t.kind != word || before(ts, i, "from", "out", "takeout", "getout", "of", "takeoff"):
	case ovens[t.text] && to && !before(ts, i, "on", "puton"):
		return practical.AtOven
	case t.in(coldPlaces) && to:
		return practical.AtFridge
	case t.is("freezer") && to:
		return practical.AtFreezer
	case t.is("microwave") && to:
		return practical.AtMicrowave
	case t.is("grill") && to:
		return practical.AtGrill
	case t.is("shelf", "a-shelf") && to:
		return practical.AtOven
	case t.is("a-warmplace"), t.is("warm") && before(ts, i, "somewhere"):
		return practical.AtWarm
	case t.is("rack", "racks") && to, t.is("aside"), t.is("temperature") && at(ts, i-1).is("room"):
		return practical.AtSide
	case t.is("hob", "ring", "stove", "heat", "flame") && (to || at(ts, i-1).is("medium", "low", "high", "gentle", "full", "moderate")):
		return practical.AtHob
	}
	return ""
}

// takenFrom is the place that the tokens say food comes out of.
func takenFrom(ts []token) practical.Place {
	for i, t := range ts {
		if t.kind != word || !before(ts, i, "from", "out", "takeout", "getout") {
			continue
		}
		switch {
		case ovens[t.text]:
			return practical.AtOven
		case t.in(coldPlaces):
			return practical.AtFridge
		case t.is("freezer"):
			return practical.AtFreezer
		case t.is("heat", "hob", "pan", "stove", "saucepan"):
			return practical.AtHob
		case t.is("grill"):
			return practical.AtGrill
		case t.is("microwave"):
			return practical.AtMicrowave
		}
	}
	return ""
}
