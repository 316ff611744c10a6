package recipe

import (
	"fmt"
	"os"
	"path/filepath"
	"reflect"
	"strings"
	"testing"

	"plait.example/internal/practical"
)

// TestReadForms: the same recipe in the forms that people paste.
func TestReadForms(t *testing.T) {
	for name, text := range map[string]string{
		"headings":     "# Scones\n\nServes 4\n\n## Ingredients\n\n- 225g self-raising flour\n- 50g butter\n\n## Method\n\n1. Rub the butter into the flour.\n2. Bake at 220C for 12 minutes.\n",
		"no headings":  "Scones\n\nServes 4\n225g self-raising flour\n50g butter\n\nRub the butter into the flour.\nBake at 220C for 12 minutes.\n",
		"colons":       "Scones\nServes: 4\nIngredients:\n* 225g self-raising flour\n* 50g butter\nMethod:\n* Rub the butter into the flour.\n* Bake at 220C for 12 minutes.\n",
		"capitals":     "SCONES\r\n(serves 4)\r\nServes 4\r\nINGREDIENTS\r\n225g self-raising flour\r\n50g butter\r\nMETHOD\r\nRub the butter into the flour. Bake at 220C for 12 minutes.\r\n",
		"all capitals": "SCONES\nSERVES 4\n225G SELF-RAISING FLOUR\n50G BUTTER\n1. RUB THE BUTTER INTO THE FLOUR.\n2. BAKE AT 220C FOR 12 MINUTES.\n",
		"bold":         "**Scones**\n\nServes 4\n\n**Ingredients**\n225g self-raising flour\n50g butter\n\n**Method**\nStep 1\nRub the butter into the flour.\nStep 2\nBake at 220C for 12 minutes.\n",
		"underlined":   "Scones\n======\nServes 4\n\nIngredients\n-----------\n225g self-raising flour\n50g butter\n\nMethod\n------\n1) Rub the butter into the flour.\n2) Bake at 220C for 12 minutes.\n",
		"front matter": "---\ntitle: \"Scones\"\ntags: ['baking']\n---\n\nServes 4\n\n## Ingredients\n\n- 225g self-raising flour\n- 50g butter\n\n## Method\n\n1. Rub the butter into the flour.\n2. Bake at 220C for 12 minutes.\n",
		"half headed":  "Scones\n\nServes 4\n225g self-raising flour\n50g butter\n\nMethod\n1. Rub the butter into the flour.\n2. Bake at 220C for 12 minutes.\n",
		"one line":     "Scones\nServes 4\n\nIngredients\n225g self-raising flour\n50g butter\n\nMethod\n1. Rub the butter into the flour. 2. Bake at 220C for 12 minutes. 3. Enjoy.\n",
		"wrapped":      "\ufeffScones\n\nServes 4\n\nYou will need\n\n225g self-raising flour\n50g butter\n\nWhat to do\n\n1. Rub the butter\n   into the flour.\n2. Bake at 220C for\n   12 minutes.\n",
	} {
		t.Run(name, func(t *testing.T) {
			all := Read(text)
			if len(all) != 1 {
				t.Fatalf("%d recipes, want 1", len(all))
			}
			r := all[0]
			if !strings.EqualFold(r.Title, "scones") || r.Serves != 4 {
				t.Errorf("title %q serves %d, want scones, 4", r.Title, r.Serves)
			}
			if len(r.Ingredients) != 2 || r.Ingredients[0].Quantity != 225 || !strings.EqualFold(r.Ingredients[1].Name, "butter") {
				t.Errorf("ingredients %+v", r.Ingredients)
			}
			if len(r.Steps) != 2 || r.Steps[1].Wait == nil || r.Steps[1].Wait.Least != 12 || r.Steps[1].Wait.Celsius != 220 {
				t.Errorf("steps %+v", r.Steps)
			}
		})
	}
}

// TestTitlePortions: portions that stand in the title.
func TestTitlePortions(t *testing.T) {
	for title, want := range map[string]string{"Bread rolls (makes 8)": "Bread rolls/8", "Fish pie. Serves 4.": "Fish pie/4", "Curry Goat (Serves 5–6)": "Curry Goat/5", "Soup": "Soup/0", "What makes 4 good scones": "What makes 4 good scones/0"} {
		r := Read(title + "\n\nIngredients\n1 egg\n\nMethod\n1. Beat the egg.\n")[0]
		if got := fmt.Sprintf("%s/%d", r.Title, r.Serves); got != want {
			t.Errorf("%q: got %q, want %q", title, got, want)
		}
	}
}

// TestSeveral: recipes one after the other in one text.
func TestSeveral(t *testing.T) {
	one := "Ingredients\n2 eggs\n50g flour\n\nMethod\n1. Whisk the eggs.\n2. Bake for 10 minutes.\n\n"
	for name, text := range map[string]string{
		"headed":   "# First\n\n" + one + "# Second\n\n" + one,
		"plain":    "First\n\n" + one + "Second\n\n" + one,
		"unheaded": "First\n\n2 eggs\n50g flour\n\nWhisk the eggs.\nBake for 10 minutes.\n\nSecond\n\n2 eggs\n50g flour\n\nWhisk the eggs.\nBake for 10 minutes.\n",
	} {
		all := Read(text)
		if len(all) != 2 || all[0].Title != "First" || all[1].Title != "Second" || len(all[0].Steps) != 2 || len(all[1].Steps) != 2 || len(all[1].Ingredients) != 2 {
			t.Errorf("%s: %d recipes: %+v", name, len(all), all)
		}
	}
}

// TestNothing: texts that are no recipe say so, and lose nothing.
func TestNothing(t *testing.T) {
	for _, text := range []string{"", "   \n\t\n", "\x00\x01", "aaaa", "The cat sat on the mat.", "???", "12345"} {
		all := Read(text)
		if len(all) != 1 || len(all[0].Steps) != 0 || len(all[0].Unread) == 0 {
			t.Errorf("%q: got %+v, want one empty recipe with a note", text, all)
		}
	}
}

// TestTooLong: what lies beyond the limit is said and kept.
func TestTooLong(t *testing.T) {
	var b strings.Builder
	b.WriteString("Soup\n\nIngredients\n1 onion\n\nMethod\n")
	for i := range 10_000 {
		fmt.Fprintf(&b, "%d. Chop the onion.\n", i%90+1)
	}
	all := Read(b.String())
	unread := strings.Join(all[0].Unread, "\n")
	if len(all) != 1 || !strings.Contains(unread, "longer than 3000 lines") || strings.Count(unread, "Chop the onion") != 10_000-(maxLines-6) {
		t.Errorf("%d recipes; Unread begins %.120q", len(all), unread)
	}
}

// TestSame: the same text gives the same answer.
func TestSame(t *testing.T) {
	for name, text := range texts(t) {
		if a, b := Read(text), Read(text); !reflect.DeepEqual(a, b) {
			t.Errorf("%s: two readings differ", name)
		}
	}
}

// TestDish: letters before the numbers; the oven and the serving are not steps.
func TestDish(t *testing.T) {
	r := Read("Toast\n\nServes 2\n\nIngredients\n2 slices bread\n1 tbsp butter\n\nMethod\n1. Preheat the oven to 200C.\n2. Butter the bread.\n3. Bake for 5 minutes.\n4. Serve at once on a warm plate.\n")[0]
	if len(r.Steps) != 4 || r.Steps[0].ID != "oven" || r.Steps[3].ID != "serve" {
		t.Fatalf("steps %+v", r.Steps)
	}
	d := r.Dish("C")
	if d.Letter != "C" || d.Name != "Toast" || d.Portions != 2 || len(d.Steps) != 2 || d.Steps[0].ID != "C1" || d.Steps[1].ID != "C2" {
		t.Fatalf("dish %+v", d)
	}
	if len(d.Steps[1].After) != 1 || d.Steps[1].After[0].Step != "C1" {
		t.Errorf("C2 comes after %+v, want C1 alone", d.Steps[1].After)
	}
	if w := d.Steps[1].Wait; w == nil || w.Celsius != 200 || !strings.Contains(strings.Join(d.Steps[1].Why, ";"), "'200C': said before") {
		t.Errorf("C2 %+v", d.Steps[1])
	}
	want := practical.Serve{Heat: practical.Hot, How: "Serve at once on a warm plate.", Minutes: 3, Within: 5}
	if d.Serve != want {
		t.Errorf("serve %+v, want %+v", d.Serve, want)
	}
	if len(d.Allergens) != 2 {
		t.Errorf("allergens %q, want gluten and milk", d.Allergens)
	}
}

// TestSentence: a dish's step reads as a sentence of its own.
func TestSentence(t *testing.T) {
	for piece, want := range map[string]string{
		"and bake for 20 minutes,":           "Bake for 20 minutes",
		", then turn out":                    "Turn out",
		"[Cook the pasta](/pasta) **well**.": "Cook the pasta well.",
		"stir\n   it;":                       "Stir it",
		"then":                               "Then",
		"élan":                               "Élan",
	} {
		if got := sentenceOf(piece); got != want {
			t.Errorf("%q: got %q, want %q", piece, got, want)
		}
	}
}

// TestHotPan: what follows in a hot pan follows soon.
func TestHotPan(t *testing.T) {
	steps := methodOf(t, "1. Fry the onion for 5 minutes.\n2. Add the garlic and cook for 1 minute.\n3. Chop the parsley.").Steps
	if m := steps[1].After[0].Most; m == nil || *m != 5 {
		t.Errorf("the garlic comes after %+v, want at most 5 minutes", steps[1].After)
	}
	if m := steps[2].After[0].Most; m != nil {
		t.Errorf("the parsley comes at most %d minutes after, want no most", *m)
	}
}

// TestWholeText: each recipe of a text keeps its own part.
func TestWholeText(t *testing.T) {
	one := "Ingredients\n2 eggs\n50g flour\n\nMethod\n1. Whisk the eggs.\n2. Bake for 10 minutes."
	all := Read("# First\n\n" + one + "\n\n# Second\n\n" + one + "\n")
	if len(all) != 2 || all[0].Text != "# First\n\n"+one || all[1].Dish("B").Text != "# Second\n\n"+one {
		t.Errorf("got %q and %q", all[0].Text, all[len(all)-1].Text)
	}
}

// TestOrder: parts beside one another and where they meet; a bar in After is a step's number.
func TestOrder(t *testing.T) {
	for _, c := range []struct {
		name, ingredients, method string
		want                      map[string]string // step: the steps it comes after
	}{
		{"one after the other", "1 onion\n1 carrot", "1. Chop the onion.\n2. Fry it for 5 minutes.\n3. Add the carrot.", map[string]string{"1": "", "2": "1", "3": "2"}},
		{"meanwhile", "500g potatoes\n1 onion", "1. Boil the potatoes for 20 minutes.\n2. Meanwhile, chop the onion.\n3. Mash the potatoes with the onion.", map[string]string{"2": "", "3": "1 2"}},
		{"while it waits", "200g flour\n100g butter\n3 eggs", "1. Mix the flour and butter to a dough and chill for 30 minutes.\n2. Whisk the eggs.\n3. Roll out the dough.\n4. Pour over the eggs.", map[string]string{"3": "", "4": "2", "5": "3 4"}},
		{"parts", "For the base\n200g biscuits\nFor the topping\n300g cheese", "For the base\n1. Crush the biscuits and chill for an hour.\nFor the topping\n2. Beat the cheese.\n3. Spread the topping over the base.", map[string]string{"3": "", "4": "2 3"}},
	} {
		r := Read("Dish\n\nIngredients\n" + c.ingredients + "\n\nMethod\n" + c.method + "\n")[0]
		for _, s := range r.Steps {
			var got []string
			for _, a := range s.After {
				got = append(got, a.Step)
			}
			if want, ok := c.want[s.ID]; ok && strings.Join(got, " ") != want {
				t.Errorf("%s: step %s %q comes after %q, want %q", c.name, s.ID, s.Text, got, want)
			}
		}
	}
}

// TestGaps: what food asks for between two steps. Common practice, no source.
func TestGaps(t *testing.T) {
	for method, want := range map[string]int{
		"1. Bake the sponge for 20 minutes.\n2. Spread with buttercream.":                                                     30,
		"1. Rub the butter into the flour to fine breadcrumbs and bring together to a dough.\n2. Roll out the pastry.":        15,
		"1. Roast the beef for 60 minutes.\n2. Carve the beef.":                                                               10,
		"1. Bake the cake for 20 minutes.\n2. When cold, cut it in half.":                                                     30,
		"1. Bake the sponge for 20 minutes. Leave to cool for 40 minutes.\n2. Spread with buttercream.":                       0,
		"1. Rub the butter into the flour to fine breadcrumbs. Chill the pastry for 30 minutes.\n2. Roll out the pastry thin": 0,
	} {
		steps := methodOf(t, method).Steps
		last := steps[len(steps)-1]
		if len(last.After) != 1 || last.After[0].Least != want {
			t.Errorf("%q: after %+v, want a gap of %d", method, last.After, want)
		}
	}
}

// TestFoodAndSafety: what the hands touch, and the reminder that goes with it.
func TestFoodAndSafety(t *testing.T) {
	for _, c := range []struct {
		method string
		food   practical.Food
		safety string
	}{
		{"1. Dice the chicken.", practical.Raw, "raw meat or fish"},
		{"1. Beat the eggs.", practical.Raw, "raw egg"},
		{"1. Chop the carrots.", "", "claw grip"},
		{"1. Garnish with a few salad leaves.", practical.ReadyToEat, ""},
		{"1. Fry the chicken for 6 minutes.", practical.Raw, "75 °C"},
		{"1. Deep fry the onion rings for 4 minutes.", "", "hot fat"},
		{"1. Add the chicken stock.", "", ""},
		{"1. Add the cooked chicken.", "", ""},
	} {
		s := methodOf(t, c.method).Steps[0]
		if s.Food != c.food || !strings.Contains(s.Safety, c.safety) {
			t.Errorf("%q: food %q safety %q, want %q and %q", c.method, s.Food, s.Safety, c.food, c.safety)
		}
	}
}

// TestSetUp: only what is clearly a job for before the clock.
func TestSetUp(t *testing.T) {
	for method, want := range map[string]bool{
		"1. Grease and line two cake tins.":                true,
		"1. Grease a tray. Preheat the oven to 180C.":      true,
		"1. Line with baking paper and fill with beans.":   false,
		"1. Weigh out the flour.":                          true,
		"1. Line the tin with the pastry.":                 false,
		"1. Grease a tin and mix the flour and butter in.": false,
		"1. Chop the onion.":                               false,
		"1. Butter the bread.":                             false,
	} {
		if got := methodOf(t, method).Steps[0].SetUp; got != want {
			t.Errorf("%q: set-up %v, want %v", method, got, want)
		}
	}
}

// TestChecks: how the cook knows.
func TestChecks(t *testing.T) {
	for method, want := range map[string]string{
		"1. Bake for 20 minutes until golden and springy.":                "golden and springy",
		"1. Leave to rise until doubled in size.":                         "doubled in size",
		"1. Knead for 10 minutes until smooth, elastic and not sticky.":   "smooth, elastic and not sticky",
		"1. Bake for 20 minutes; a skewer should come out clean.":         "skewer should come out clean",
		"1. Simmer for 20 minutes. Stir until thickened, then add cream.": "thickened",
	} {
		var got []string
		for _, s := range methodOf(t, method).Steps {
			got = append(got, s.Check)
		}
		if !strings.Contains(strings.Join(got, "; "), want) {
			t.Errorf("%q: checks %q, want %q", method, got, want)
		}
	}
}

// BenchmarkRead reads a page of text and checks that it was read.
func BenchmarkRead(b *testing.B) {
	data, err := os.ReadFile("testdata/own/lemon-meringue-pie.md")
	if err != nil {
		b.Fatal(err)
	}
	for b.Loop() {
		if all := Read(string(data)); len(all) != 1 || len(all[0].Steps) != 18 {
			b.Fatalf("%d recipes, %d steps", len(all), len(all[0].Steps))
		}
	}
}

// BenchmarkReadAll reads every text of the truth sets, and says how many recipes that makes in a minute.
func BenchmarkReadAll(b *testing.B) {
	paths, _ := filepath.Glob("testdata/truth/*/*.tsv")
	var texts []string
	for _, p := range paths {
		set := filepath.Base(filepath.Dir(p))
		found, _ := filepath.Glob("testdata/" + set + "/" + strings.TrimSuffix(filepath.Base(p), ".tsv") + ".*")
		data, err := os.ReadFile(found[0])
		if err != nil {
			b.Fatal(err)
		}
		texts = append(texts, string(data))
	}
	if len(texts) < 100 {
		b.Fatalf("%d texts, want at least 100", len(texts))
	}
	for b.Loop() {
		for _, t := range texts {
			if all := Read(t); len(all) != 1 || len(all[0].Steps) == 0 {
				b.Fatalf("%d recipes of %.40q", len(all), t)
			}
		}
	}
	b.ReportMetric(float64(len(texts)*b.N)/b.Elapsed().Minutes(), "recipes/min")
}
