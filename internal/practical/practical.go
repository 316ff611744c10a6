// Package practical holds the trade's nouns: a timed cooking session with its
// clock, rules, kitchen, dishes and steps; their rules of form; and the file
// that carries them. It imports none of the project's other rooms.
package practical

// Practical is one timed cooking session as one cook (or a pair) meets it.
type Practical struct {
	Title   string  `json:"title" yaml:"title"`
	Date    string  `json:"date,omitempty" yaml:"date"` // YYYY-MM-DD, or empty
	Clock   Clock   `json:"clock" yaml:"clock"`
	Rules   Rules   `json:"rules" yaml:"rules"`
	Kitchen Kitchen `json:"kitchen" yaml:"kitchen"`
	Cooks   int     `json:"cooks" yaml:"cooks"` // 1, or 2 for a pair
	Dishes  []Dish  `json:"dishes" yaml:"dishes"`
	Pins    []Pin   `json:"pins,omitempty" yaml:"pins"`
}

// Clock is the session's time. Everything but set-up jobs lies from Start on.
type Clock struct {
	SetUp  TimeOfDay `json:"set-up" yaml:"set-up"` // set-up may begin; at most Start
	Start  TimeOfDay `json:"start" yaml:"start"`
	Finish TimeOfDay `json:"finish" yaml:"finish"` // before extra time and rest breaks
	Extra  Extra     `json:"extra-time" yaml:"extra-time"`
	Breaks []Break   `json:"rest-breaks,omitempty" yaml:"rest-breaks"`
	Hours  int       `json:"hours" yaml:"hours"` // 12 or 24: how times are written
	Round  int       `json:"round" yaml:"round"` // rows written to 1 or to 5 minutes
}

// Extra is extra time as a percentage, 0 to 100, of each stage. Set-up is
// longer by beginning earlier; cooking and serving by finishing later.
type Extra struct {
	SetUp int `json:"set-up" yaml:"set-up"`
	Cook  int `json:"cook" yaml:"cook"`
	Serve int `json:"serve" yaml:"serve"`
}

// Break is a rest break: the hands stop, the clock stops (the finish moves by
// as much), the food goes on.
type Break struct {
	At      TimeOfDay `json:"at" yaml:"at"`
	Minutes int       `json:"minutes" yaml:"minutes"`
}

// Rules are what differs from school to school; each is a setting.
type Rules struct {
	Dishes        int      `json:"dishes" yaml:"dishes"`                       // how many dishes are asked for; 0: any
	SetUpVerbs    []string `json:"set-up-verbs" yaml:"set-up-verbs"`           // jobs allowed in set-up, by verb
	OvenInSetUp   bool     `json:"oven-in-set-up" yaml:"oven-in-set-up"`       // the oven may be turned on before the clock
	TastingInside bool     `json:"tasting-inside" yaml:"tasting-inside"`       // tasting and photographs are inside the clock
	Tasting       int      `json:"tasting" yaml:"tasting"`                     // minutes of it
	CleanInside   bool     `json:"clean-down-inside" yaml:"clean-down-inside"` // the last clean-down is inside the clock
	CleanDown     int      `json:"clean-down" yaml:"clean-down"`               // minutes of the last clean-down
	WashEvery     int      `json:"wash-up-every" yaml:"wash-up-every"`         // greatest minutes between wash-ups; 0: only at the end
	WashUp        int      `json:"wash-up" yaml:"wash-up"`                     // minutes of one wash-up on the way
	RawClean      int      `json:"raw-clean-down" yaml:"raw-clean-down"`       // minutes of clean-down between raw and ready-to-eat
	Rinse         int      `json:"rinse" yaml:"rinse"`                         // minutes to rinse a processor or mixer between two dishes
	Window        int      `json:"serving-window" yaml:"serving-window"`       // all dishes are served within so many minutes
	Looks         int      `json:"looks" yaml:"looks"`                         // waits that need a look, at most so many at once
	Pace          Pace     `json:"pace" yaml:"pace"`                           // which estimate of hands minutes to plan with
}

// Pace picks one of a step's three estimates.
type Pace string

// The paces.
const (
	Quick  Pace = "low"
	Likely Pace = "likely"
	Steady Pace = "high"
)

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

// Dish is one dish of the menu: its recipe, its steps, how it is served.
type Dish struct {
	Letter      string       `json:"letter" yaml:"letter"` // A to Z, its own on the page
	Name        string       `json:"name" yaml:"name"`
	Portions    int          `json:"portions,omitempty" yaml:"portions"`
	Recipe      string       `json:"recipe,omitempty" yaml:"recipe"` // file with the recipe's text, in place of steps
	Text        string       `json:"text,omitempty" yaml:"text"`     // the recipe's text as it was pasted, kept whole
	Ingredients []Ingredient `json:"ingredients,omitempty" yaml:"ingredients"`
	Allergens   []string     `json:"allergens,omitempty" yaml:"allergens"`
	Steps       []Step       `json:"steps,omitempty" yaml:"steps"`
	Serve       Serve        `json:"serve" yaml:"serve"`
}

// Ingredient is a line of the recipe's list, as written, and what was read in it.
type Ingredient struct {
	Raw       string  `json:"raw" yaml:"raw"`
	Quantity  float64 `json:"quantity,omitempty" yaml:"quantity"`
	Most      float64 `json:"most,omitempty" yaml:"most"` // of a range; 0: none
	Unit      string  `json:"unit,omitempty" yaml:"unit"`
	Name      string  `json:"name,omitempty" yaml:"name"`
	Note      string  `json:"note,omitempty" yaml:"note"`
	Component string  `json:"component,omitempty" yaml:"component"`
}

// Serve is how a dish goes to the table. It is a row of its own.
type Serve struct {
	Heat    Heat   `json:"heat" yaml:"heat"`
	How     string `json:"how" yaml:"how"`                 // how it is presented
	Minutes int    `json:"minutes" yaml:"minutes"`         // hands minutes to plate and garnish
	Within  int    `json:"within,omitempty" yaml:"within"` // served at most so many minutes after its last step; 0: no limit
}

// Heat is how a dish is served.
type Heat string

// The heats. Cold dishes are served first, hot ones last.
const (
	Hot  Heat = "hot"
	Cold Heat = "cold"
	AsIs Heat = "as-is"
)

// Step is one job of a dish: some minutes of hands, then perhaps a wait.
type Step struct {
	ID        string   `json:"id" yaml:"id"`     // unique in the practical, such as "A3"
	Text      string   `json:"text" yaml:"text"` // in the recipe's own words
	Hands     Estimate `json:"hands" yaml:"hands"`
	Uses      []Kit    `json:"uses,omitempty" yaml:"uses"` // counted kit in use while the hands work
	Wait      *Wait    `json:"wait,omitempty" yaml:"wait"`
	After     []After  `json:"after,omitempty" yaml:"after"`
	Food      Food     `json:"food,omitempty" yaml:"food"`
	SetUp     bool     `json:"set-up,omitempty" yaml:"set-up"` // done before the clock, and only there
	Component string   `json:"component,omitempty" yaml:"component"`
	Kit       string   `json:"kit,omitempty" yaml:"kit"`       // small kit to have at hand, in words
	Check     string   `json:"check,omitempty" yaml:"check"`   // how the cook knows it is right
	Safety    string   `json:"safety,omitempty" yaml:"safety"` // reminder
	Why       []string `json:"why,omitempty" yaml:"why"`       // where each figure comes from
	Doubt     float64  `json:"doubt,omitempty" yaml:"doubt"`   // 0 sure to 1 a guess
}

// Estimate is minutes of hands, 0 to 600, Low <= Likely <= High.
type Estimate struct {
	Low    int `json:"low" yaml:"low"`
	Likely int `json:"likely" yaml:"likely"`
	High   int `json:"high" yaml:"high"`
}

// Wait is minutes in which food needs a place and not the hands.
type Wait struct {
	Least     int       `json:"least" yaml:"least"` // minutes
	Most      int       `json:"most" yaml:"most"`   // minutes; 0: no most
	Place     Place     `json:"place" yaml:"place"`
	Celsius   int       `json:"celsius,omitempty" yaml:"celsius"` // oven without fan, 50 to 300
	Band      int       `json:"band,omitempty" yaml:"band"`       // the food takes Celsius plus or minus so much
	Shelves   int       `json:"shelves,omitempty" yaml:"shelves"` // of oven, fridge, freezer; 0 means 1
	Attention Attention `json:"attention,omitempty" yaml:"attention"`
	Every     int       `json:"every,omitempty" yaml:"every"`         // a look every so many minutes
	DoorShut  int       `json:"door-shut,omitempty" yaml:"door-shut"` // the oven door stays shut for the first so many minutes
	PutIn     int       `json:"put-in,omitempty" yaml:"put-in"`       // hands minutes; 0 means 1
	TakeOut   int       `json:"take-out,omitempty" yaml:"take-out"`   // hands minutes; 0 means 1
}

// Attention is what a wait asks of the cook. Empty means Leave.
type Attention string

// The attentions.
const (
	Leave Attention = "leave" // it can be left
	Look  Attention = "look"  // a look every so many minutes
	Stay  Attention = "stay"  // must be watched: the hands are not free
)

// After says that a step comes after another: its first row begins at least
// Least and at most Most minutes after the other's last row has ended.
type After struct {
	Step  string `json:"step" yaml:"step"`
	Least int    `json:"least,omitempty" yaml:"least"`
	Most  *int   `json:"most,omitempty" yaml:"most"` // nil: no most
}

// Food is what the hands touch, for hygiene.
type Food string

// The foods; empty means neither.
const (
	Raw        Food = "raw"          // raw meat, fish, shellfish, egg, unwashed vegetables
	ReadyToEat Food = "ready-to-eat" // eaten as it is
)

// Pin holds a row of the plan. A row's name is the step's id with its part,
// such as "A3/hands", "A3/put-in", "A3/take-out", "A/serve", "wash-up/2".
type Pin struct {
	Row   string     `json:"row" yaml:"row"`
	At    *TimeOfDay `json:"at,omitempty" yaml:"at"`
	After string     `json:"after,omitempty" yaml:"after"` // the row begins after that row has ended
}
