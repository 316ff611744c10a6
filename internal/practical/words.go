package practical

import "reflect"

// words are the allowed words of each type that has a fixed list, in the order shown to people.
var words = map[reflect.Type][]string{
	reflect.TypeFor[Pace]():      {string(Quick), string(Likely), string(Steady)},
	reflect.TypeFor[Fuel]():      {string(Electric), string(Fan), string(Gas)},
	reflect.TypeFor[Grill]():     {string(NoGrill), string(SeparateGrill), string(GrillInOven)},
	reflect.TypeFor[Kit]():       {string(Ring), string(OvenShelf), string(GrillPan), string(Processor), string(Mixer), string(Microwave), string(FridgeKit), string(FreezerKit)},
	reflect.TypeFor[Place]():     {string(AtBench), string(AtFreezer), string(AtFridge), string(AtWarm), string(AtSide), string(AtHands), string(AtHob), string(AtOven), string(AtGrill), string(AtMicrowave), string(Served)},
	reflect.TypeFor[Heat]():      {string(Hot), string(Cold), string(AsIs)},
	reflect.TypeFor[Attention](): {string(Leave), string(Look), string(Stay)},
	reflect.TypeFor[Food]():      {string(Raw), string(ReadyToEat)},
}

// mayBeEmpty are the types whose empty word means "neither" or "the usual".
var mayBeEmpty = map[reflect.Type]bool{
	reflect.TypeFor[Attention](): true,
	reflect.TypeFor[Food]():      true,
}
