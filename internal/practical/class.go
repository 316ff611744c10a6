package practical

import "strings"

// Class is a group of candidates that cook the same practical.
type Class struct {
	ID         string      `json:"id"` // given by the store; empty: not kept yet
	Name       string      `json:"name"`
	Candidates []Candidate `json:"candidates"`
}

// Candidate is one learner, by first name and initial only: nothing else about
// a child is kept.
type Candidate struct {
	First   string `json:"first"`
	Initial string `json:"initial"` // of the family name; may be empty
}

// String is the name as it is printed, such as "Amara B".
func (c Candidate) String() string { return strings.TrimSpace(c.First + " " + c.Initial) }
