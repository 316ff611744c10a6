package timeplan

// Finding is what a check says of a plan: where, what, how serious, and a
// question for the learner.
type Finding struct {
	Rule     string   `json:"rule"` // stable, such as "pair" or "hands"
	Severity Severity `json:"severity"`
	Rows     []string `json:"rows,omitempty"` // ids of the rows it is about, in the order of the plan
	Text     string   `json:"text"`
	Question string   `json:"question,omitempty"`
}

// Severity says how much a finding matters.
type Severity string

// The severities.
const (
	Serious Severity = "serious" // the plan cannot be cooked as it is written
	Minor   Severity = "minor"   // it can, though something is out of step
)
