// Package timeplan holds the plan as people read it: rows on the clock, the
// waits beside them, the strands of the plait, and, when it does not fit, the
// demands that cannot hold together. It knows nothing of how plans are found.
package timeplan

import "plait.example/internal/practical"

// Plan is a dovetailed, clock-timed plan of a practical, or the reasons why there is none.
type Plan struct {
	Title    string              `json:"title"`
	Date     string              `json:"date,omitempty"`
	SetUp    practical.TimeOfDay `json:"set-up"`  // set-up begins, extra time included
	Start    practical.TimeOfDay `json:"start"`   // the clock starts
	Finish   practical.TimeOfDay `json:"finish"`  // the last row ends
	Allowed  practical.TimeOfDay `json:"allowed"` // the clock ends, extra time and rest breaks included
	Hours    int                 `json:"hours"`   // 12 or 24
	Round    int                 `json:"round"`   // 1 or 5; what the rows are written to
	Cooks    int                 `json:"cooks"`   // 1 or 2
	Status   Status              `json:"status"`
	Bound    practical.TimeOfDay `json:"bound"` // no plan can finish before
	Over     int                 `json:"over"`  // minutes that the best plan found runs over; 0 when it fits
	Seed     int64               `json:"seed"`
	Levels   []Level             `json:"levels,omitempty"` // how good it is in each aim, the most important first
	Dishes   []Dish              `json:"dishes"`
	Rows     []Row               `json:"rows"`
	Waits    []Wait              `json:"waits"`
	Threads  []Thread            `json:"threads"`            // the plait's strands, piece by piece
	Ovens    []Setting           `json:"ovens"`              // what each oven stands at, and when
	Notes    []string            `json:"notes,omitempty"`    // what the reader should know (such as a rounding that was not possible)
	Conflict []Demand            `json:"conflict,omitempty"` // a smallest set that cannot hold together
	WaysOut  []WayOut            `json:"ways_out,omitempty"` // the cheapest first
}

// Status says what is known about the finish.
type Status string

// The statuses.
const (
	Optimal    Status = "optimal"    // no plan finishes earlier
	Feasible   Status = "feasible"   // it fits; an earlier finish is not excluded
	Infeasible Status = "infeasible" // it cannot fit; see Conflict
)

// Dish is a dish as the plan shows it.
type Dish struct {
	Letter    string         `json:"letter"`
	Name      string         `json:"name"`
	Heat      practical.Heat `json:"heat"`
	Allergens []string       `json:"allergens,omitempty"`
}

// Action is what kind of row it is.
type Action string

// The actions.
const (
	SetUp   Action = "set-up"
	Do      Action = "do"
	PutIn   Action = "put-in"
	TakeOut Action = "take-out"
	TurnTo  Action = "turn-to"
	WashUp  Action = "wash-up"
	Serve   Action = "serve"
	Rest    Action = "rest"
)

// Row is one line of the plan. Rows stand in the order of the clock; a pair's
// rows say whose they are.
type Row struct {
	ID      string              `json:"id"`             // such as "A3/put-in"; stable, so that a pin can name it
	At      practical.TimeOfDay `json:"at"`             // to the minute: when the cook begins it
	Clock   practical.TimeOfDay `json:"clock"`          // as written; At rounded down when Round is 5
	Minutes int                 `json:"minutes"`        // hands minutes; of a rest, its length
	Dish    string              `json:"dish,omitempty"` // letter; empty for all
	Action  Action              `json:"action"`
	Place   practical.Place     `json:"place,omitempty"`
	Oven    string              `json:"oven,omitempty"`    // name, in a kitchen of several
	Celsius int                 `json:"celsius,omitempty"` // of the recipe: oven without fan
	Setting string              `json:"setting,omitempty"` // in words: "200 °C, fan 180 °C, gas 6"
	Steps   []string            `json:"steps,omitempty"`   // ids of the steps it belongs to
	Text    string              `json:"text"`
	Kit     string              `json:"kit,omitempty"`
	Check   string              `json:"check,omitempty"`
	Safety  string              `json:"safety,omitempty"`
	Cook    int                 `json:"cook,omitempty"` // 1 or 2 in a pair, else 0
	Pinned  bool                `json:"pinned,omitempty"`
	Outside bool                `json:"outside,omitempty"` // after the clock has ended, by the practical's rules: not counted in Finish
	Until   practical.TimeOfDay `json:"until,omitempty"`   // of a put-in: when its take-out is due
}

// ApartGrill is what Row.Oven holds in the row that turns on a grill of its own,
// apart from any oven's cavity.
const ApartGrill = "grill"

// End is when the row's hands are free again.
func (r Row) End() practical.TimeOfDay { return r.At + practical.TimeOfDay(r.Minutes) }

// Wait is food in a place while the hands are elsewhere.
type Wait struct {
	Step      string              `json:"step"`
	Dish      string              `json:"dish"`
	Place     practical.Place     `json:"place"`
	From      practical.TimeOfDay `json:"from"`
	Until     practical.TimeOfDay `json:"until"`
	Least     int                 `json:"least"`
	Most      int                 `json:"most,omitempty"` // 0: no most
	Celsius   int                 `json:"celsius,omitempty"`
	Oven      string              `json:"oven,omitempty"`
	Attention practical.Attention `json:"attention,omitempty"`
	Every     int                 `json:"every,omitempty"`
}

// Thread is a piece of a dish's strand between two rows: it leaves the hands at
// the end of row From, stays in Place, and is in the hands again at row To.
type Thread struct {
	Dish      string          `json:"dish"`
	Component string          `json:"component,omitempty"`
	From      int             `json:"from"` // index into Rows
	To        int             `json:"to"`   // index into Rows; -1: it has been served
	Place     practical.Place `json:"place"`
	Wait      int             `json:"wait"` // index into Waits; -1: it only stands ready
}

// Setting is an oven standing at a temperature.
type Setting struct {
	Oven    string              `json:"oven"`
	Celsius int                 `json:"celsius"`
	Words   string              `json:"words"`  // electric, fan and gas together
	Turned  practical.TimeOfDay `json:"turned"` // the dial is turned
	Hot     practical.TimeOfDay `json:"hot"`    // it is at its temperature
	Until   practical.TimeOfDay `json:"until"`  // the next change, or the last take-out
}

// Demand is one thing that was asked for, in the trade's words.
type Demand struct {
	Name string `json:"name"` // stable, such as "finish", "wait-most/A3", "oven/A3"
	Text string `json:"text"` // such as "the choux bakes at least 25 minutes"
	Step string `json:"step,omitempty"`
}

// WayOut is a relaxation that buys a plan.
type WayOut struct {
	Text   string              `json:"text"`   // such as "finish 9 minutes later"
	Demand string              `json:"demand"` // which demand gives way
	Finish practical.TimeOfDay `json:"finish"` // when the plan would then finish
	Cost   int                 `json:"cost"`   // for the order: smaller is cheaper
}
