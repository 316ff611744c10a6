package recipe

import (
	"strings"
	"testing"
	"unicode/utf8"
)

// FuzzRead holds that no text breaks the reader, that steps are pieces of the
// source, and that no word is lost.
func FuzzRead(f *testing.F) {
	for _, text := range texts(f) {
		f.Add(text)
	}
	for _, s := range []string{
		"", " ", "\xff\xfe", "1.", "Step 1", "bake", "Bake 99999999999999999999 hours at 1/0.", "Method\n\nBake for ½½ hours at gas ¼/½-9.", "- - -\n===", "((((((", "Preheat the oven to 180C.",
		"#\n##\n###", "Mix.\n1. Bake for 5 minutes.\n\n#", "# Pie\n\n## mIngredients\n\n- 2 eggs\n\n#", "Mix. Mix. Mix.", "2 x 400 g tins", "For 5-4 minutes bake", "\u00a0Bake\u2028for 5\u00a0minutes", "Serve", "After 10 minutes, after 20 minutes", strings.Repeat("chop ", 500),
	} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, text string) {
		all := Read(text)
		if utf8.ValidString(text) && isASCII(text) {
			checkRecipes(t, text, all)
		}
		for _, r := range all {
			r.Dish("A")
			for _, src := range r.Sources {
				_ = text[src.Start:src.End]
			}
		}
	})
}

func isASCII(s string) bool {
	for i := range len(s) {
		if s[i] >= 0x80 {
			return false
		}
	}
	return true
}

// FuzzDurations holds that times are found in order, do not overlap, and are not negative.
func FuzzDurations(f *testing.F) {
	for _, s := range []string{"1 hr 30", "an hour and a quarter", "8-10 minutes", "10 mins each side", "half an hour to 2 hours", "1:30", "5'", "1h30m"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		last := 0
		for _, d := range durations(tokenize(s, 0)) {
			if d.from < last || d.to <= d.from || d.least < 0 || d.most < d.least {
				t.Fatalf("%q: %+v", s, d)
			}
			last = d.to
		}
	})
}

// FuzzIngredient holds that a line's words stay in it and its figures make sense.
func FuzzIngredient(f *testing.F) {
	for _, s := range []string{"2 x 400g tins chopped tomatoes", "a pinch of salt", "1/2-1 tsp chilli (optional)", "Boneless chicken 1/2 lb, cubed", "½", "10/0 eggs"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		l := readLine(s, 0, len(s))
		ing, ok := readIngredient(l)
		if ok && (ing.Quantity < 0 || ing.Most != 0 && ing.Most < ing.Quantity) {
			t.Fatalf("%q: %+v", s, ing)
		}
	})
}
