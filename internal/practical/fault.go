package practical

import (
	"fmt"
	"strings"
)

// Code classes a fault or an error, for programs; the sentences are for people.
type Code string

// The codes.
const (
	Invalid  Code = "invalid"   // what was given breaks a rule of form
	NotFound Code = "not-found" // what was asked for is not there
	Conflict Code = "conflict"  // somebody changed it in the meantime
	TooLarge Code = "too-large"
	Internal Code = "internal" // our fault; logged, not shown
)

// Fault is one thing wrong with what was given: where, what, and what would be right.
type Fault struct {
	File    string `json:"file,omitempty"`
	Line    int    `json:"line,omitempty"`   // from 1; 0: no line
	Column  int    `json:"column,omitempty"` // from 1
	Field   string `json:"field"`            // path such as dishes[0].steps[2].wait.celsius
	Message string `json:"message"`          // what was wrong
	Hint    string `json:"hint"`             // what would be right
	Code    Code   `json:"code"`
}

func (f Fault) Error() string {
	var b strings.Builder
	if f.File != "" {
		b.WriteString(f.File + ":")
	}
	if f.Line > 0 {
		fmt.Fprintf(&b, "%d:", f.Line)
		if f.Column > 0 {
			fmt.Fprintf(&b, "%d:", f.Column)
		}
	}
	if b.Len() > 0 {
		b.WriteString(" ")
	}
	if f.Field != "" {
		b.WriteString(f.Field + ": ")
	}
	b.WriteString(f.Message)
	if f.Hint != "" {
		b.WriteString("; " + f.Hint)
	}
	return b.String()
}

// Faults is every fault found, in the order of the text. It is an error when not empty.
type Faults []Fault

func (fs Faults) Error() string {
	lines := make([]string, len(fs))
	for i, f := range fs {
		lines[i] = f.Error()
	}
	return strings.Join(lines, "\n")
}

// OrNil is the faults as an error, nil when there are none.
func (fs Faults) OrNil() error {
	if len(fs) == 0 {
		return nil
	}
	return fs
}
