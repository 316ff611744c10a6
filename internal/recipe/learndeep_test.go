package recipe

import (
	"strings"
	"testing"
)

// A file of brackets is refused before it is parsed.
func TestCorrectionsNestedTooDeeply(t *testing.T) {
	if _, faults := ParseCorrections("corrections.yaml", []byte(strings.Repeat("[", 3000))); len(faults) != 1 || !strings.Contains(faults[0].Message, "deep") {
		t.Errorf("%v", faults)
	}
}
