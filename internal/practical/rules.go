package practical

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
