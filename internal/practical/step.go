package practical

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

// Around is the estimate for one figure alone: likely, with three quarters of
// it as low and four thirds as high, rounded to the nearest minute. Common
// practice, no source: the technique tables we have spread about so.
// A figure outside 0 to 600 gives an estimate that Validate refuses.
func Around(likely int) Estimate {
	if likely < 0 || likely > 600 {
		return Estimate{likely, likely, likely}
	}
	return Estimate{Low: (3*likely + 2) / 4, Likely: likely, High: min(600, (4*likely+1)/3)}
}
