package act

import "plait.example/internal/practical"

func (s span) leave() []Kind {
	ws := s.words()
	place := placeIn(ws)
	switch {
	case s.f.is("keep") && s.says("warm", "hot"):
		return []Kind{KeepHot}
	case s.f.is("keep") && place == "":
		return nil
	case place == practical.AtOven:
		if s.says("low", "a-cooloven", "a-warmoven") {
			return []Kind{KeepHot}
		}
		return []Kind{Other}
	case place == practical.AtSide && s.says("rack", "racks"):
		return []Kind{TakeOut, Cool}
	case placeKind[place] != "" && place != practical.AtSide:
		return []Kind{placeKind[place]}
	case s.says("cool", "cold", "cooled", "cooling"):
		return []Kind{Cool}
	case s.says("set", "firm", "chilled"):
		return []Kind{Chill}
	case s.says("doubled", "double", "risen", "rise", "prove", "proved"):
		return []Kind{Prove}
	case s.says("marinade"):
		return []Kind{Marinate}
	case s.says("water", "a-water", "soak"):
		return []Kind{Soak}
	}
	return []Kind{Rest}
}

func (s span) take() []Kind {
	ws := s.words()
	from := takenFrom(ws)
	out := s.says("out") || s.f.is("takeout", "getout", "takeoff")
	switch {
	case from == practical.AtFridge || from == practical.AtFreezer:
		if s.has(setupThings) && !s.has(meat) && !s.has(fish) && !s.has(foodsAll) && !s.has(madeDishes) {
			return []Kind{SetUp}
		}
		return []Kind{FromCold}
	case out && s.says("rack", "racks"):
		return []Kind{TakeOut, Cool}
	case from == practical.AtOven:
		return []Kind{TakeOut}
	case from == practical.AtHob || from == practical.AtGrill || from == practical.AtMicrowave:
		return []Kind{Other}
	case s.f.is("get") && s.says("out") && s.has(smallKit) && !s.says("tin", "tins", "tray", "trays") && !s.hasOven() && !s.has(foodsAll) && !s.has(madeDishes):
		return []Kind{SetUp} // "get your pans out"
	case s.has(setupThings), s.says("scales", "chopping", "knives"), s.f.is("gather", "collect", "fetch"), s.f.is("getout") && s.has(smallKit):
		return []Kind{SetUp}
	case s.f.is("clear"):
		return s.clean()
	case out && s.has(trimmings), out && s.outOfTin():
		return []Kind{Other}
	case out:
		return []Kind{TakeOut}
	case s.f.is("get") && len(s.objects()) > 0:
		return []Kind{SetUp}
	case s.f.is("lift"), s.f.is("take"):
		return []Kind{Other}
	}
	return nil
}

// outOfTin: "take out of the tins", which is not out of the oven.
func (s span) outOfTin() bool {
	ws := s.words()
	for i, t := range ws {
		if t.is("tin", "tins", "mould", "moulds", "pan", "cases", "ramekins") && before(ws, i, "of", "from") && !s.hasOven() {
			return true
		}
	}
	return false
}

var (
	smallKit  = words("bowl bowls pan pans board boards knife tray trays tin tins whisk scales sieve plates equipment jug")
	trimmings = words("skin skins stalk stalks seed seeds bone bones core cores film clingfilm foil beans paper a-paper lid cling fat stones stone shell shells pips excess air bag head tail heat string leaf membrane vein rind stems")
)
