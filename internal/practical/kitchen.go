package practical

// Kitchen is what one cook (or pair) has. A number is how many.
type Kitchen struct {
	Ovens          []Oven    `json:"ovens" yaml:"ovens"`
	Rings          int       `json:"rings" yaml:"rings"`
	Grill          Grill     `json:"grill" yaml:"grill"`
	Processors     int       `json:"processors" yaml:"processors"`
	Mixers         int       `json:"mixers" yaml:"mixers"`
	Microwaves     int       `json:"microwaves" yaml:"microwaves"`
	FridgeShelves  int       `json:"fridge-shelves" yaml:"fridge-shelves"`
	FreezerShelves int       `json:"freezer-shelves" yaml:"freezer-shelves"`
	Taken          []Taken   `json:"taken,omitempty" yaml:"taken"`         // kit that is someone else's for a while
	GasTable       []GasMark `json:"gas-table,omitempty" yaml:"gas-table"` // the room's own; empty: the handbook's
}

// Oven is one cavity. Minutes of zero mean the fuel's usual ones.
type Oven struct {
	Name     string `json:"name" yaml:"name"`
	Fuel     Fuel   `json:"fuel" yaml:"fuel"`
	Shelves  int    `json:"shelves" yaml:"shelves"`
	Preheat  int    `json:"preheat" yaml:"preheat"`             // minutes from cold to 180 C
	Up       int    `json:"up" yaml:"up"`                       // minutes to rise 20 C
	Down     int    `json:"down" yaml:"down"`                   // minutes to fall 20 C
	DoorOpen int    `json:"door-recovery" yaml:"door-recovery"` // minutes between two openings of the door
}

// Fuel says how an oven heats, and so which figure a cook sets.
type Fuel string

// The fuels.
const (
	Electric Fuel = "electric" // no fan: the figure of the recipe
	Fan      Fuel = "fan"
	Gas      Fuel = "gas"
)

// Grill says whether there is one, and where.
type Grill string

// The grills.
const (
	NoGrill       Grill = "none"
	SeparateGrill Grill = "separate"
	GrillInOven   Grill = "in-oven" // shares the first oven's cavity: never both at once
)

// Taken is kit that the cook cannot have between two times.
type Taken struct {
	Kit    Kit       `json:"kit" yaml:"kit"`
	Number int       `json:"number" yaml:"number"`
	From   TimeOfDay `json:"from" yaml:"from"`
	Until  TimeOfDay `json:"until" yaml:"until"`
}

// Kit is a kind of equipment that is counted.
type Kit string

// The kit.
const (
	Ring       Kit = "ring"
	OvenShelf  Kit = "oven-shelf"
	GrillPan   Kit = "grill"
	Processor  Kit = "processor"
	Mixer      Kit = "mixer"
	Microwave  Kit = "microwave"
	FridgeKit  Kit = "fridge-shelf"
	FreezerKit Kit = "freezer-shelf"
)

// Place is where food can be.
type Place string

// The places, in the order of the plait's lanes (hands stand in the middle).
const (
	AtBench     Place = "bench" // set-up bench
	AtFreezer   Place = "freezer"
	AtFridge    Place = "fridge"
	AtWarm      Place = "warm" // proving
	AtSide      Place = "side" // resting, cooling, marinating on the side
	AtHands     Place = "hands"
	AtHob       Place = "hob"
	AtOven      Place = "oven"
	AtGrill     Place = "grill"
	AtMicrowave Place = "microwave"
	Served      Place = "served"
)
