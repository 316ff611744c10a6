package recipe

import (
	"strings"
	"testing"

	"plait.example/internal/practical"
)

// readStep reads a method and gives the last of its waits, or its last step, that has one of the words. Invented.
func readStep(t *testing.T, list, method, words string) practical.Step {
	t.Helper()
	text := "Dish\n\n" + list + "\nMethod\n" + method
	all := Read(text)
	checkRecipes(t, text, all)
	found := practical.Step{}
	for i, s := range all[0].Steps {
		src := all[0].Sources[i]
		if hasAny(tokenize(text[src.Start:src.End], 0), strings.Fields(words)...) && (s.Wait != nil || i+1 == len(all[0].Steps)) {
			found = s
		}
	}
	if found.Text == "" {
		t.Fatalf("%q: no step holds %q", method, words)
	}
	return found
}

// TestLooks: how often waiting food is seen to, in minutes, by the words of the wait or of the sentence after it.
func TestLooks(t *testing.T) {
	for method, every := range map[string]int{
		"Roast at 200C for 40 minutes, turning after 12 minutes.":                      12,
		"Roast at 200C for 1 hour, basting every 10.":                                  10,
		"Roast at 200C for 1 hour, basting every 20 minutes.":                          20,
		"Roast at 200C for 45 minutes, turning once or twice.":                         15,
		"Roast at 200C for 40 minutes, rotating the tray halfway through.":             20,
		"Roast at 200C for 30-35 minutes, giving them a shake after 15.":               15,
		"Roast at 200C for 40 minutes. Turn the potatoes after 20 minutes.":            20,
		"Simmer the beef for 2 hours, skimming every half hour.":                       30,
		"Simmer the beef in stock for 40 minutes, stir from the bottom every 10 mins.": 10,
		"Roast at 200C for 40 minutes.":                                                0,
	} {
		s := readStep(t, "1 kg beef\n", method, "minutes hours hour mins")
		if s.Wait == nil {
			t.Errorf("%q is no wait", method)
			continue
		}
		if want := practical.Leave; every == 0 && s.Wait.Attention != want {
			t.Errorf("%q: %s, want %s", method, s.Wait.Attention, want)
		}
		if every > 0 && (s.Wait.Attention != practical.Look || s.Wait.Every != every) {
			t.Errorf("%q: %s every %d, want every %d", method, s.Wait.Attention, s.Wait.Every, every)
		}
	}
}

// TestCoolingIsAWait: cooling without a time, by many words.
func TestCoolingIsAWait(t *testing.T) {
	for _, words := range []string{
		"Cool completely.", "Leave to cool.", "Let cool completely.", "Remove to a rack to cool completely.", "Turn out on to a wire rack to cool.",
		"Leave until quite cold.", "Allow to cool completely before slicing.", "Set aside to cool.", "Leave till you can touch the tin.",
	} {
		s := readStep(t, "200 g flour\n", "Bake at 180C for 20 minutes. "+words, "cool cold leave")
		if s.Wait == nil || s.Wait.Place != practical.AtSide {
			t.Errorf("%q: %+v", words, s.Wait)
		}
	}
	if s := readStep(t, "200 g flour\n", "Bake at 180C for 20 minutes. Once cool, ice the cake.", "ice"); s.Wait != nil {
		t.Errorf("'once cool' is no second wait: %+v", s.Wait)
	}
}
