// Package problem holds the nouns of a project scheduling problem with
// generalised time lags: activities of fixed or variable length, minimal and
// maximal lags between their starts and ends, unary and cumulative renewable
// resources with calendars, state resources with change times, alternative
// modes, and lexicographic objectives.
//
// It is a leaf: it imports none of the project's rooms, so that the search
// (package solver) and the judge (package verify) can share these nouns and
// nothing else.
//
// Time is whole units from an origin 0 to Horizon. Every demand (a lag, a
// resource, a state, a choice) may carry the name that the user gave it, in
// the field Demand, so that a conflict can be told in the user's own words.
package problem

// Problem is one instance. The zero Horizon is not valid; see Validate.
type Problem struct {
	Name       string      `json:"name,omitempty"`
	Horizon    int         `json:"horizon"` // no activity ends after it
	Activities []Activity  `json:"activities"`
	Lags       []Lag       `json:"lags,omitempty"`
	Choices    []Choice    `json:"choices,omitempty"`
	Resources  []Resource  `json:"resources,omitempty"`
	States     []State     `json:"states,omitempty"`
	Objectives []Objective `json:"objectives,omitempty"` // in order of importance; none means Makespan
}

// Activity takes time without interruption: end - start is a decision within
// MinDuration..MaxDuration (equal for a fixed length). It runs in exactly one
// of its modes; an activity without modes uses nothing.
type Activity struct {
	Name        string `json:"name"`
	MinDuration int    `json:"min"`
	MaxDuration int    `json:"max"`
	Modes       []Mode `json:"modes,omitempty"`
}

// Mode is one way to do an activity: what it uses while it runs, and which
// conditions it needs. Modes differ in resources and states, never in length.
type Mode struct {
	Name  string `json:"name,omitempty"`
	Uses  []Use  `json:"uses,omitempty"`
	Needs []Need `json:"needs,omitempty"`
}

// Use is a constant amount of a renewable resource, over [start, end).
// An activity of length zero uses nothing.
type Use struct {
	Resource int `json:"resource"` // index into Problem.Resources
	Amount   int `json:"amount"`   // at least 1
}

// Need says that over the whole of [start, end) the state stands at one
// level, out of Levels (indices into State.Levels). Needs that overlap in
// time therefore share a level. An activity of length zero still needs the
// level at the moment of its start.
type Need struct {
	State  int   `json:"state"`
	Levels []int `json:"levels"`
}

// Origin as a Point's Activity is the time 0.
const Origin = -1

// Point is the start or the end of an activity, or the origin.
type Point struct {
	Activity int  `json:"activity"`
	End      bool `json:"end,omitempty"`
}

// Start, End and Zero make points.
func Start(activity int) Point { return Point{Activity: activity} }

// End is the end of an activity.
func End(activity int) Point { return Point{Activity: activity, End: true} }

// Zero is the origin of time.
func Zero() Point { return Point{Activity: Origin} }

// Lag demands time(To) >= time(From) + Min. Min may be negative: a maximal
// lag "To at most m after From" is Lag{From: To, To: From, Min: -m}. A release
// date runs from Zero; a deadline d for a point is Lag{From: p, To: Zero, Min: -d};
// a fixed time is both.
type Lag struct {
	From   Point  `json:"from"`
	To     Point  `json:"to"`
	Min    int    `json:"lag"`
	Demand string `json:"demand,omitempty"`
}

// Choice demands that at least one of Any holds, if every activity in If runs
// in the mode named there (an empty If: always).
type Choice struct {
	If     []Chosen `json:"if,omitempty"`
	Any    []Lag    `json:"any"`
	Demand string   `json:"demand,omitempty"`
}

// Chosen says that an activity runs in a mode.
type Chosen struct {
	Activity int `json:"activity"`
	Mode     int `json:"mode"`
}

// Resource is renewable: at every moment the amounts in use sum to at most
// its capacity (1: unary), or to what a closure leaves.
type Resource struct {
	Name     string    `json:"name"`
	Capacity int       `json:"capacity"`
	Closures []Closure `json:"closures,omitempty"` // the calendar; must not overlap
	Demand   string    `json:"demand,omitempty"`
}

// Closure leaves a resource only Left units in [From, Until).
type Closure struct {
	From   int    `json:"from"`
	Until  int    `json:"until"`
	Left   int    `json:"left"`
	Demand string `json:"demand,omitempty"`
}

// State is a resource that stands at one of Levels at a time. It starts at
// level Initial at time 0. A change from level a to level b begins at some
// time t, occupies Uses over [t, t+Change[a][b].Work), then settles; needs of
// level b may start from t + Work + Settle on. No change begins, works or
// settles while a need is running, nor before the last change has settled. A
// change between equal levels is not a change; one to a level that no activity
// needs before the next change is not allowed, so there is no going by way of
// a third level. No change begins before ChangeFrom.
type State struct {
	Name       string     `json:"name"`
	Levels     []string   `json:"levels"`
	Initial    int        `json:"initial"`
	Change     [][]Change `json:"change"` // [from][to]; the diagonal is ignored
	Uses       []Use      `json:"uses,omitempty"`
	ChangeFrom int        `json:"changeFrom,omitempty"`
	Demand     string     `json:"demand,omitempty"`
}

// Change is what it takes to go from one level to another.
// For every a, b, c: Work+Settle of a->c is at most that of a->b plus b->c.
type Change struct {
	Work   int `json:"work"`
	Settle int `json:"settle"`
}

// Objective is minimised. It is the sum of what its fields say.
//
// Switches also counts changes that take no time. So a state whose Change is
// all zero, whose levels are kinds of job, and that the jobs of one worker need
// at their kind, counts how often that worker goes from one kind to another:
// jobs of one kind in a row count as nothing, going away and coming back counts
// twice. Leaving the level Initial counts like any change; where the first kind
// shall count for nothing, let Initial be a level that nobody needs, and take 1
// from the value. Needs of such a state at different levels cannot overlap in
// time; where resources keep them apart anyway, the state demands nothing.
type Objective struct {
	Name     string `json:"name"`
	Makespan bool   `json:"makespan,omitempty"` // the greatest end of all activities
	Terms    []Term `json:"terms,omitempty"`    // sum of weight times time
	Changes  []int  `json:"changes,omitempty"`  // number of changes of these states that have Work > 0
	Switches []int  `json:"switches,omitempty"` // number of changes of these states, whatever they take
	Soft     []Soft `json:"soft,omitempty"`     // sum of the weights of those that are broken
}

// Soft is a choice that may be broken at a price. It is broken if every
// activity in If runs in the mode named there (an empty If: always) and no lag
// of Any holds; an empty Any is so a price of modes. A soft lag is a Soft with
// no If and one lag. No Soft makes a schedule right or wrong, and it is no
// demand: names in its lags are for the caller alone.
//
//	problem.Soft{Any: []problem.Lag{{From: problem.End(a), To: problem.Start(b)}}, Weight: 1}
//
// costs 1 unless a ends before b starts.
type Soft struct {
	If     []Chosen `json:"if,omitempty"`
	Any    []Lag    `json:"any,omitempty"`
	Weight int      `json:"weight"` // at least 1
}

// Term is weight times the time of a point.
type Term struct {
	Point  Point `json:"point"`
	Weight int   `json:"weight"`
}

// Solution gives every activity its start, end and mode, and every state its
// changes in order of time.
type Solution struct {
	Start   []int         `json:"start"`
	End     []int         `json:"end"`
	Mode    []int         `json:"mode"`
	Changes []StateChange `json:"changes,omitempty"`
}

// StateChange is a change of a state to a level, begun at At.
type StateChange struct {
	State int `json:"state"`
	Level int `json:"level"`
	At    int `json:"at"`
}

// Time is the time of a point in the solution.
func (s *Solution) Time(p Point) int {
	switch {
	case p.Activity == Origin:
		return 0
	case p.End:
		return s.End[p.Activity]
	default:
		return s.Start[p.Activity]
	}
}
