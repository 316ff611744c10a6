package recipe

import "testing"

// TestWorkedInWaitsForWhatIsThere: what is beaten or whisked in needs what it
// goes into, though its words name new ingredients alone. Invented.
func TestWorkedInWaitsForWhatIsThere(t *testing.T) {
	const list = "Buns\n\nServes 2\n\nIngredients\n65 g flour\n50 g butter\n2 eggs\n200 g yogurt\n150 ml oil\n\nMethod\n1. Melt the butter, tip in the flour and beat. Cool for 10 minutes.\n2. "
	for line, follows := range map[string]bool{
		"Beat in the eggs little by little.":   true,
		"Whisk in the yogurt.":                 true,
		"Beat the eggs in one at a time.":      true,
		"Rub in the flour.":                    true,
		"Whisk the eggs in a bowl.":            false,
		"Whisk the eggs and yogurt in a bowl.": false,
	} {
		steps := Read(list + line + "\n3. Bake it all at 180C for 20 minutes.\n")[0].Steps
		s := steps[len(steps)-2]
		if got := len(s.After) > 0; got != follows {
			t.Errorf("%q, read as %q, after %v", line, s.Text, s.After)
		}
	}
}
