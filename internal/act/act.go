// Package act reads what the words of a row of a time plan say: put in, take
// out, heat the oven, chill, wash hands. It knows the words of the kitchen
// and nothing of clocks, recipes or whether an act is right.
package act

import "plait.example/internal/practical"

// Act is one thing that a row says is done.
type Act struct {
	Kind       Kind
	Start, End int             // bytes of the text that say it
	At         int             // byte where its verb, or the word in its place, begins
	Verb       string          // stem of its verb, such as "chop"
	Place      practical.Place // where the food is while or after it; empty: not said
	Heats      []Heat          // oven temperatures said with it
	Least      int             // minutes said with it; 0: none
	Most       int             // at least Least; equal for one figure
	Objects    []string        // stems of the foods and things it is done to
	Food       practical.Food  // what it touches: Raw, ReadyToEat or neither
	HighRisk   bool            // it heats meat, fish, or another food that must reach a core temperature
	Implied    bool            // not said, but it follows from what is: "cool on a rack" is out of the oven
}

// Kind is what kind of act it is.
type Kind string

// The kinds.
const (
	HeatOven   Kind = "heat-oven"   // pre-heat, light, turn on
	TurnOven   Kind = "turn-oven"   // to another temperature
	OvenOff    Kind = "oven-off"    //
	PutIn      Kind = "put-in"      // into the oven; bake, roast
	TakeOut    Kind = "take-out"    // out of the oven
	Chill      Kind = "chill"       // into the fridge, to chill or set
	Freeze     Kind = "freeze"      //
	FromCold   Kind = "from-cold"   // out of the fridge or freezer
	Prove      Kind = "prove"       //
	Rest       Kind = "rest"        // dough, pastry, batter, meat
	Cool       Kind = "cool"        //
	Marinate   Kind = "marinate"    //
	Soak       Kind = "soak"        //
	BoilWater  Kind = "boil-water"  // put water on, fill the kettle
	Hob        Kind = "hob"         // fry, simmer, boil, melt, stir over heat
	Grill      Kind = "grill"       //
	Microwave  Kind = "microwave"   //
	Reheat     Kind = "reheat"      //
	KeepHot    Kind = "keep-hot"    //
	WashHands  Kind = "wash-hands"  //
	WashUp     Kind = "wash-up"     //
	CleanDown  Kind = "clean-down"  // boards, knives and surfaces after raw food
	FinalClean Kind = "final-clean" // at the end: bench, sink, floor
	SetUp      Kind = "set-up"      // gather, weigh, lay out, apron, hair
	Ready      Kind = "ready-tin"   // line, grease, flour a tin
	Cut        Kind = "cut"         // peel, chop, dice, slice, grate
	Mix        Kind = "mix"         // rub in, whisk, cream, fold, knead, blend
	Shape      Kind = "shape"       // roll, pipe, form, line a case
	Fill       Kind = "fill"        // fill, assemble, coat, layer
	Decorate   Kind = "decorate"    // ice, glaze, drizzle, garnish
	Plate      Kind = "plate"       // put on plates, warm plates
	Serve      Kind = "serve"       // serve, present
	Probe      Kind = "probe"       // core temperature
	Test       Kind = "test"        // look for readiness
	Taste      Kind = "taste"       // and season
	Timer      Kind = "timer"       // set or heard
	Idle       Kind = "idle"        // wait, break
	Other      Kind = "other"       // something else is done
)

// Heat is an oven temperature as written.
type Heat struct {
	Written string
	Celsius int     // of an oven without fan, whatever was written; 0 with only words such as "hot oven"
	Fan     bool    // "fan" is said of it
	Gas     float64 // mark; 0: not said
	Scale   Scale
	// Implausible: no oven's dial has the figure as written. "160F" is read as
	// 160 for a fan, "350C" as Fahrenheit, "gas 180" as degrees.
	Implausible bool
}

// Scale is what the figure was written in.
type Scale string

// The scales.
const (
	Degrees    Scale = "celsius"
	Fahrenheit Scale = "fahrenheit"
	GasMark    Scale = "gas"
	Words      Scale = "words"
)
