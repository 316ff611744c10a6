package recipe

import (
	"strings"
	"testing"

	"plait.example/internal/practical"
)

// TestDishesAreValid: what is read holds the rules of form of a practical file.
func TestDishesAreValid(t *testing.T) {
	start := practical.StartingPoints()
	if len(start) == 0 {
		t.Fatal("no starting point")
	}
	for name, text := range texts(t) {
		for _, r := range Read(text) {
			p := start[0].New()
			p.Rules.Dishes = 1
			p.Pins = nil
			p.Dishes = []practical.Dish{r.Dish("A")}
			for _, f := range p.Validate() {
				// Some texts prove or freeze overnight: true, and longer than any practical.
				if strings.HasPrefix(f.Field, "dishes") && !strings.Contains(f.Message, "the clock has") {
					t.Errorf("%s: %v", name, f)
				}
			}
		}
	}
}
