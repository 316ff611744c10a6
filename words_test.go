package plait_test

import (
	"io/fs"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
)

// trade are words that have no business in the engine, which knows schedules
// and not what they are for.
var trade = regexp.MustCompile(`(?i)\b(food|cook|cooks|cooked|cooking|kitchen|kitchens|oven|ovens|hob|grill|fridge|freezer|` +
	`dish|dishes|recipe|recipes|ingredient|ingredients|meal|meals|bake|baked|baking|dough|flour|meat|hygiene|wash-up|` +
	`learner|learners|teacher|teachers|pupil|pupils|practical|practicals)\b`)

// The engine's files are free of the trade's words, in code, comments and tests.
func TestEngineSpeaksOfNoTrade(t *testing.T) {
	read := 0
	err := filepath.WalkDir("solver", func(path string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() || !strings.HasSuffix(path, ".go") && !strings.HasSuffix(path, ".md") && !strings.HasSuffix(path, ".json") {
			return err
		}
		data, err := os.ReadFile(path)
		read++
		for i, line := range strings.Split(string(data), "\n") {
			if word := trade.FindString(line); word != "" {
				t.Errorf("%s:%d: %q", path, i+1, word)
			}
		}
		return err
	})
	if err != nil || read < 50 {
		t.Fatalf("%d files read, error %v", read, err)
	}
}
