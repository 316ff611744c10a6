package practical

import (
	"slices"
	"testing"
)

// Lengths and numbers of dishes as published: the regulator for England's GCSE
// (three dishes, one session of at most 3 hours), school pages for the
// stepping-stone of two in two hours, Scotland's National 5 specimen (starter,
// main course and dessert in 2 h 30).
func TestStartingPoints(t *testing.T) {
	want := map[string]struct{ dishes, minutes, setUp int }{
		"three-in-three": {3, 180, 30},
		"two-in-two":     {2, 120, 15},
		"three-courses":  {3, 150, 30},
	}
	verbs := map[string][]string{}
	for _, s := range StartingPoints() {
		p := s.New()
		if faults := p.Validate(); len(faults) > 0 {
			t.Errorf("%s: %v", s.ID, faults)
		}
		w := want[s.ID]
		if got := [3]int{p.Rules.Dishes, int(p.Clock.Finish - p.Clock.Start), int(p.Clock.Start - p.Clock.SetUp)}; got != [3]int{w.dishes, w.minutes, w.setUp} {
			t.Errorf("%s: dishes, minutes, set-up %v, want %v", s.ID, got, w)
		}
		if s.Name == "" || s.About == "" || p.Title != s.Name {
			t.Errorf("%s has no words", s.ID)
		}
		p.Rules.SetUpVerbs[0], p.Kitchen.Ovens[0].Name = "spoilt", "spoilt"
		if again := s.New(); again.Rules.SetUpVerbs[0] == "spoilt" || again.Kitchen.Ovens[0].Name == "spoilt" {
			t.Errorf("%s: two new practicals share a list", s.ID)
		}
		verbs[s.ID] = s.New().Rules.SetUpVerbs
	}
	if len(verbs) != len(want) {
		t.Errorf("%d starting points, want %d", len(verbs), len(want))
	}
	// Where weighing counts as skill time it is not set-up: common practice, no source.
	if slices.Contains(verbs["three-courses"], "weigh") || !slices.Contains(verbs["three-in-three"], "weigh") {
		t.Errorf("weighing in set-up: %v", verbs)
	}
}
