package recipe

import (
	"testing"

	"plait.example/internal/practical"
)

// TestNeverCooked: a slaw is eaten as it is, so that a clean-down comes before it
// where something raw was handled. Invented.
func TestNeverCooked(t *testing.T) {
	const list = "Dish\n\nServes 2\n\nIngredients\n1/4 cabbage\n2 carrots\n3 tbsp yogurt\n\nMethod\n"
	for method, want := range map[string]practical.Food{
		"Shred the cabbage and grate the carrots. Fold in the yogurt and chill until needed.": practical.ReadyToEat,
		"Shred the cabbage and grate the carrots. Fry in a pan for 10 minutes.":               "",
		"Shred the cabbage and grate the carrots. Bake at 180C for 20 minutes.":               "",
	} {
		for _, s := range Read(list + method + "\n")[0].Steps {
			if s.Hands.Likely > 0 && s.ID != serveID && s.Food != want {
				t.Errorf("%q: %q is %q, want %q", method, s.Text, s.Food, want)
			}
			if s.Check != "" {
				t.Errorf("%q: %q is checked by %q", method, s.Text, s.Check)
			}
		}
	}
}
