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

// Pin holds a row of the plan. A row's name is the step's id with its part,
// such as "A3/hands", "A3/put-in", "A3/take-out", "A/serve", "wash-up/2".
type Pin struct {
	Row   string     `json:"row" yaml:"row"`
	At    *TimeOfDay `json:"at,omitempty" yaml:"at"`
	After string     `json:"after,omitempty" yaml:"after"` // the row begins after that row has ended
}
