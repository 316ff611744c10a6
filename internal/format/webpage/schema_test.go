package webpage_test

import (
	"os"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"plait.example/internal/format/webpage"
)

// example is one of schema.org's published examples as a page.
func example(t testing.TB, name string) []byte {
	t.Helper()
	data, err := os.ReadFile("testdata/schema.org/" + name)
	if err != nil {
		t.Fatal(err)
	}
	if strings.HasSuffix(name, ".jsonld") {
		return []byte(`<script type="application/ld+json">` + string(data) + `</script>`)
	}
	return data
}

// Source: schema.org's example of Recipe in its three syntaxes, which say the
// same but for the unit's word.
func TestPublishedRecipe(t *testing.T) {
	for _, c := range []struct{ file, sugar string }{
		{"recipe.jsonld", "3/4 cup sugar"}, {"recipe.microdata.html", "3/4 cup sugar"}, {"recipe.rdfa.html", "3/4 cup sugar"},
	} {
		t.Run(c.file, func(t *testing.T) {
			page, err := webpage.Read(example(t, c.file))
			if err != nil {
				t.Fatal(err)
			}
			want := []webpage.Recipe{{
				Name:        "Mom's World Famous Banana Bread",
				Description: "This classic banana bread recipe comes from my mom -- the walnuts add a nice texture and flavor to the banana bread.",
				Yield:       "1 loaf", Prep: 15, Cook: 60,
				Ingredients: []string{"3 or 4 ripe bananas, smashed", "1 egg", c.sugar},
				Instructions: []webpage.Section{{Steps: []string{
					"Preheat the oven to 350 degrees. Mix in the ingredients in a bowl. Add the flour last. Pour the mixture into a loaf pan and bake for one hour.",
				}}},
			}}
			if d := cmp.Diff(want, page.Recipes); d != "" {
				t.Error(d)
			}
		})
	}
}

// Source: schema.org's example of HowTo (a tyre, but the published example of
// sections, steps, directions and tips in one another).
func TestPublishedSectionsAndTips(t *testing.T) {
	for _, file := range []string{"howto.jsonld", "howto.microdata.html", "howto.rdfa.html"} {
		t.Run(file, func(t *testing.T) {
			page, err := webpage.Read(example(t, file))
			if err != nil || len(page.Recipes) != 1 {
				t.Fatalf("%d recipes, %v", len(page.Recipes), err)
			}
			r := page.Recipes[0]
			var names []string
			var counts []int
			for _, s := range r.Instructions {
				names, counts = append(names, s.Name), append(counts, len(s.Steps))
			}
			if d := cmp.Diff([]string{"Preparation", "Raise the car", "Finishing up"}, names); d != "" {
				t.Error(d)
			}
			if d := cmp.Diff([]int{2, 5, 3}, counts); d != "" {
				t.Error(d)
			}
			if r.Name != "Change a Flat Tire" || r.Total != 30 || len(r.Ingredients) != 1 || r.Ingredients[0] != "Flares" {
				t.Errorf("%q %d %q", r.Name, r.Total, r.Ingredients)
			}
			if want := "Raise the jack until the flat tire is just barely off of the ground. Tip: It doesn't need to be too high."; len(names) > 1 && r.Instructions[1].Steps[1] != want {
				t.Errorf("%q", r.Instructions[1].Steps[1])
			}
		})
	}
}
