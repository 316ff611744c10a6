package ingredient_test

import (
	"reflect"
	"strings"
	"testing"

	"plait.example/internal/ingredient"
)

// amount is an Amount that a test can write down.
type amount struct {
	low, high  float64
	unit, size string
	relation   ingredient.Relation
}

func amounts(l ingredient.Line) []amount {
	var out []amount
	for _, a := range l.Amounts {
		out = append(out, amount{a.Low, a.High, a.Unit, a.Size, a.Relation})
	}
	return out
}

// The lines are invented; the shapes are those that people write.
func TestParse(t *testing.T) {
	const main, each, same, plus, more, or = ingredient.Main, ingredient.Each, ingredient.Same, ingredient.Plus, ingredient.More, ingredient.Or
	for _, c := range []struct {
		line                       string
		amounts                    []amount
		name, preparation, comment string
	}{
		{"200g plain flour", []amount{{200, 200, "g", "", main}}, "plain flour", "", ""},
		{"1tbsp oil", []amount{{1, 1, "tbsp", "", main}}, "oil", "", ""},
		{"1 1/2 cups sugar", []amount{{1.5, 1.5, "cup", "", main}}, "sugar", "", ""},
		{"1½ cups sugar", []amount{{1.5, 1.5, "cup", "", main}}, "sugar", "", ""},
		{"1-1/2 cups sugar", []amount{{1.5, 1.5, "cup", "", main}}, "sugar", "", ""},
		{"½ lemon", []amount{{0.5, 0.5, "", "", main}}, "lemon", "", ""},
		{"2–3 carrots", []amount{{2, 3, "", "", main}}, "carrots", "", ""},
		{"2 to 3 tbsp milk", []amount{{2, 3, "tbsp", "", main}}, "milk", "", ""},
		{"1,5 kg potatoes", []amount{{1.5, 1.5, "kg", "", main}}, "potatoes", "", ""},
		{"1,000 ml water", []amount{{1000, 1000, "ml", "", main}}, "water", "", ""},
		{"2 x 400 g tins chopped tomatoes", []amount{{2, 2, "tin", "", main}, {400, 400, "g", "", each}}, "tomatoes", "chopped", ""},
		{"2×400g tins kidney beans, drained", []amount{{2, 2, "tin", "", main}, {400, 400, "g", "", each}}, "kidney beans", "drained", ""},
		{"1 (14-ounce) can black beans", []amount{{1, 1, "can", "", main}, {14, 14, "ounce", "", each}}, "black beans", "", ""},
		{"1 16-ounce jar salsa", []amount{{1, 1, "jar", "", main}, {16, 16, "ounce", "", each}}, "salsa", "", ""},
		{"1 1/2 pounds spinach (about 3 cups)", []amount{{1.5, 1.5, "pound", "", main}, {3, 3, "cup", "", same}}, "spinach", "", "about"},
		{"4 chicken thighs, about 150 g each", []amount{{4, 4, "", "", main}, {150, 150, "g", "", each}}, "chicken thighs", "", "about, each"},
		{"1 lb / 450 g beef mince", []amount{{1, 1, "lb", "", main}, {450, 450, "g", "", same}}, "beef mince", "", ""},
		{"1 cup plus 2 tablespoons cream", []amount{{1, 1, "cup", "", main}, {2, 2, "tablespoon", "", plus}}, "cream", "", "plus 2 tablespoons"},
		{"50 g butter, plus 10 g for the tin", []amount{{50, 50, "g", "", main}, {10, 10, "g", "", more}}, "butter", "", "plus 10 g for the tin"},
		{"1 tbsp fresh dill or 1 tsp dried", []amount{{1, 1, "tbsp", "", main}, {1, 1, "tsp", "", or}}, "fresh dill", "", "or 1 tsp dried"},
		{"juice of 1 lemon", []amount{{1, 1, "", "", main}}, "lemon", "juice", "of"},
		{"Finely grated zest of half an orange", []amount{{0.5, 0.5, "", "", main}}, "orange", "Finely grated zest", "of, an"},
		{"a pinch of salt", []amount{{1, 1, "pinch", "", main}}, "salt", "", "a, of"},
		{"Salt, to taste", nil, "Salt", "", "to taste"},
		{"a dozen oysters", []amount{{12, 12, "", "", main}}, "oysters", "", "a"},
		{"a few sprigs of mint", []amount{{3, 3, "sprig", "", main}}, "mint", "", "a, of"},
		{"2 large cloves garlic, crushed", []amount{{2, 2, "clove", "large", main}}, "garlic", "crushed", ""},
		{"3 garlic cloves", []amount{{3, 3, "clove", "", main}}, "garlic", "", ""},
		{"2 medium onions, peeled and finely sliced", []amount{{2, 2, "", "medium", main}}, "onions", "peeled and finely sliced", ""},
		{"1 heaped tsp paprika", []amount{{1, 1, "tsp", "heaped", main}}, "paprika", "", ""},
		{"2 fl oz brandy", []amount{{2, 2, "fl oz", "", main}}, "brandy", "", ""},
		{"1 packed cup basil leaves", []amount{{1, 1, "cup", "", main}}, "basil leaves", "packed", ""},
		{"150g red, yellow or orange peppers, deseeded", []amount{{150, 150, "g", "", main}}, "red, yellow or orange peppers", "deseeded", ""},
		{"1 onion (optional)", []amount{{1, 1, "", "", main}}, "onion", "", "optional"},
		{"Butter, melted, 2 tbsp", []amount{{2, 2, "tbsp", "", same}}, "Butter", "melted", ""},
		{"oil 2 tbsp", []amount{{2, 2, "tbsp", "", main}}, "oil", "", ""},
		{"½ teapsoon nutmeg", []amount{{0.5, 0.5, "teaspoon", "", main}}, "nutmeg", "", ""},
		{"300 g 00 flour", []amount{{300, 300, "g", "", main}}, "00 flour", "", ""},
		{"100 g 70% chocolate", []amount{{100, 100, "g", "", main}}, "70% chocolate", "", ""},
		{"- 2 eggs", []amount{{2, 2, "", "", main}}, "eggs", "", ""},
		{"", nil, "", "", ""},
	} {
		l := ingredient.Parse(c.line)
		if got := amounts(l); !reflect.DeepEqual(got, c.amounts) {
			t.Errorf("%q: amounts %v, want %v", c.line, got, c.amounts)
		}
		if l.Name != c.name || l.Preparation != c.preparation || l.Comment != c.comment {
			t.Errorf("%q: got %q, %q, %q; want %q, %q, %q", c.line, l.Name, l.Preparation, l.Comment, c.name, c.preparation, c.comment)
		}
	}
}

func TestOptional(t *testing.T) {
	for line, want := range map[string]bool{"1 onion (optional)": true, "(Optional) 1 onion": true, "salt, if desired": true, "1 onion": false, "cream, if needed": false} {
		if got := ingredient.Parse(line).Optional; got != want {
			t.Errorf("%q: got %v, want %v", line, got, want)
		}
	}
}

// Every word of a line is in a part of it, or is a figure or a unit.
func TestNothingIsDropped(t *testing.T) {
	for _, file := range []string{"marked_us.csv", "marked_metric.csv"} {
		for _, m := range readMarked(t, file) {
			l := ingredient.Parse(m.raw)
			k := l.Marks()
			rest := " " + strings.ToLower(strings.Join([]string{k.Quantity, k.Unit, l.Name, l.Preparation, l.Comment}, " ")) + " "
			for _, w := range strings.FieldsFunc(strings.ToLower(m.raw), func(r rune) bool { return !(r >= 'a' && r <= 'z') }) {
				one := strings.TrimSuffix(strings.TrimSuffix(w, "s"), "e")
				if len(w) > 2 && !strings.Contains(rest, one) && !strings.Contains(rest, strings.TrimSuffix(w, "ves")) && !figures[w] {
					t.Errorf("%q: %q is in no part: %q, %q, %q, %q", m.raw, w, k.Unit, l.Name, l.Preparation, l.Comment)
				}
			}
		}
	}
}

var figures = map[string]bool{
	"one": true, "two": true, "three": true, "four": true, "five": true, "six": true, "seven": true, "eight": true, "ten": true, "twelve": true, "frac": true,
	"half": true, "dozen": true,
}

func FuzzParse(f *testing.F) {
	for _, s := range []string{"1 1/2 cups (about 3) sugar", "2 x 400 g tins", "((", "1/0 x", "½½", "- - ,", "a", "1 1/2", "&frac12; [x](y)", "plus or of", "\xff1", "99999999999999999999 g", "1 (", "a few", "1 x", "~", "half"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		l := ingredient.Parse(s)
		if !reflect.DeepEqual(l, ingredient.Parse(s)) {
			t.Errorf("%q is read in two ways", s)
		}
		for _, a := range l.Amounts {
			if a.Low < 0 || a.High < a.Low || a.High > 1e9 {
				t.Errorf("%q: amount %+v", s, a)
			}
		}
		_, _ = l.Marks(), l.FormMarks()
		if g, how, ok := ingredient.Grams(l); how == "" || (ok && !(g > 0)) || (!ok && g != 0) {
			t.Errorf("%q weighs %v, %q, %v", s, g, how, ok)
		}
		_ = ingredient.Scale(l, 4, 6)
	})
}

func BenchmarkParse(b *testing.B) {
	lines := readMarked(b, "marked_us.csv")
	b.ResetTimer()
	for i := range b.N {
		ingredient.Parse(lines[i%len(lines)].raw)
	}
	b.ReportMetric(float64(b.N)/b.Elapsed().Seconds(), "lines/s")
}

func BenchmarkGrams(b *testing.B) {
	lines := readMarked(b, "marked_us.csv")
	parsed := make([]ingredient.Line, len(lines))
	for i, m := range lines {
		parsed[i] = ingredient.Parse(m.raw)
	}
	ingredient.Grams(parsed[0])
	b.ResetTimer()
	for i := range b.N {
		ingredient.Grams(parsed[i%len(parsed)])
	}
}
