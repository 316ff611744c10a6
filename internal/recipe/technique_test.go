package recipe

import (
	"testing"
)

// TestTechniques holds the table's form: every group, figures in order, a
// source for each row, and no matching word that is not a verb of the reader.
func TestTechniques(t *testing.T) {
	all := DefaultTable().Techniques
	if len(all) < 180 {
		t.Fatalf("%d techniques, want 180 or more", len(all))
	}
	groups := map[int]int{}
	for _, q := range all {
		groups[q.Group]++
		if q.Learner.High == 0 || q.Skilled.Likely > q.Learner.Likely {
			t.Errorf("%s: a learner takes %d minutes, a skilled cook %d", q.ID, q.Learner.Likely, q.Skilled.Likely)
		}
		for _, w := range q.alternatives {
			for _, v := range w.verbs {
				if _, ok := verbs[v]; !ok {
					t.Errorf("%s: %q in its match is not a verb that the reader knows", q.ID, v)
				}
			}
		}
	}
	for g := 1; g <= 12; g++ {
		if groups[g] == 0 {
			t.Errorf("no technique in skill group %d", g)
		}
	}
}

// TestTechniqueFor: the most specific row wins.
func TestTechniqueFor(t *testing.T) {
	for _, c := range []struct{ verb, text, want string }{
		{"whisk", "whisk the cream to soft peaks", "whisk-soft-peak"},
		{"whisk", "whisk the egg whites to stiff peaks", "whisk-stiff-peak"},
		{"whisk", "whisk together the oil and vinegar", "combine"},
		{"rub", "rub the butter into the flour", "rub-in"},
		{"cream", "cream the butter and sugar", "cream-fat-sugar"},
		{"fold", "fold in the flour", "fold-in"},
		{"knead", "knead until smooth", "knead"},
		{"knead", "knead lightly", "knead-light"},
		{"chop", "chop the onion", "dice-onion"},
		{"chop", "chop the carrots", "chop-veg"},
		{"crush", "crush the garlic", "garlic"},
		{"line", "line a flan tin with the pastry", "line-pastry"},
		{"grease", "grease a cake tin", "line-tin"},
		{"roll", "roll out the pastry", "roll-out"},
		{"mash", "mash the potatoes", "mash"},
		{"grate", "grate the cheese", "grate"},
	} {
		got := DefaultTable().find(c.verb, tokenize(c.text, 0))
		if got == nil || got.ID != c.want {
			t.Errorf("%q: got %v, want %s", c.text, got, c.want)
		}
	}
}

// TestReasons: the two examples that a user must see.
func TestReasons(t *testing.T) {
	for text, want := range map[string]string{
		"1. Knead for 8 minutes.":              "'8 minutes': said",
		"1. Whisk the cream to soft peaks.":    "'whisk': technique table, whisk to soft peaks, 3 to 6 minutes by hand",
		"1. Bake at gas 4 for 20-25 minutes.":  "'20-25 minutes': said",
		"1. Preheat oven to 200C. Bake 5 min.": "'5 min': said",
	} {
		found := false
		for _, s := range methodOf(t, text).Steps {
			for _, w := range s.Why {
				found = found || w == want
			}
		}
		if !found {
			t.Errorf("%q: no reason %q in %q", text, want, methodOf(t, text).Steps[0].Why)
		}
	}
}
