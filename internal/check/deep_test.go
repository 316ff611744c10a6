package check

import (
	"strings"
	"testing"
)

// A file of brackets is refused before it is parsed: a parser would take memory
// out of all proportion for it.
func TestRulesNestedTooDeeply(t *testing.T) {
	if _, faults := ReadRules("rules.yaml", []byte(strings.Repeat("[", 3000))); len(faults) != 1 || !strings.Contains(faults[0].Message, "deep") {
		t.Errorf("%v", faults)
	}
}
