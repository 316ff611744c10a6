package app

import (
	"bytes"
	"strings"

	"plait.example/internal/feedback"
	"plait.example/internal/format"
)

// ownWork says why a file is no plan to be checked though it looks like one:
// plait itself wrote it about a plan. Empty: it did not.
func ownWork(data []byte) string {
	tail := data[max(0, len(data)-4096):]
	switch {
	case strings.Contains(format.Keywords(data), feedback.Mark), bytes.Contains(tail, []byte("("+feedback.Mark+")")), bytes.HasPrefix(data, []byte(checksBegin)):
		return "plait wrote it about a plan"
	case format.ReturnedAsSent(data):
		return "plait put the comments into it, and nothing has been changed in it since"
	}
	return ""
}

// checksBegin is how findings as JSON begin.
const checksBegin = "[\n  {\n    \"file\": "

// Marked ends a text with the line by which ownWork tells it.
func Marked(text []byte) []byte { return feedback.Marked(text) }

// Plans parts files into those that may be plans and those that plait wrote itself.
func Plans(files []PlanFile) (plans, own []PlanFile) {
	for _, f := range files {
		if f.Own != "" {
			own = append(own, f)
		} else {
			plans = append(plans, f)
		}
	}
	return plans, own
}
