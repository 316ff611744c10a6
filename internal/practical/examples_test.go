package practical

import (
	"os"
	"path/filepath"
	"testing"
)

func TestExamplesAreValid(t *testing.T) {
	files, err := filepath.Glob("../../examples/*.yaml")
	if err != nil || len(files) == 0 {
		t.Fatalf("examples: %v, %v", files, err)
	}
	for _, file := range files {
		data, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		if _, faults := Parse(file, data); len(faults) > 0 {
			t.Error(faults)
		}
	}
}
