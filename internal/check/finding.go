// Package check says where a plan that somebody wrote would go wrong: a file
// for each family of rules, each rule a value with its name, severity, test and
// wording. It does not know who shows it, nor how plans are found or read.
package check

// Finding is what a rule found. Where the words of the plan may only have been
// missed, Evidence says that they could not be found, never that they were forgotten.
type Finding struct {
	Rule     string   `json:"rule"` // stable, such as "in-never-out"
	Fault    int      `json:"fault,omitempty"`
	Family   string   `json:"family"`
	Severity Severity `json:"severity"`
	Row      int      `json:"row"`            // number of the row, from 1; 0: of the plan as a whole
	Rows     []int    `json:"rows,omitempty"` // every row it is about, Row first
	Dish     string   `json:"dish,omitempty"` // letter
	Step     string   `json:"step,omitempty"` // of the recipe
	Evidence string   `json:"evidence"`
	Question string   `json:"question"`          // for the learner: makes them think, gives nothing away
	Answer   string   `json:"answer"`            // for the teacher alone
	Minutes  int      `json:"minutes,omitempty"` // what it costs the cook; 0: none, or not known
}

// Severity says what a fault costs.
type Severity string

// The severities, worst first.
const (
	Stops  Severity = "stops"  // the cook stops here, is unsafe, or a dish is lost
	Marks  Severity = "marks"  // costs marks or quality
	Polish Severity = "polish" // small
)
