package app_test

import (
	"errors"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"

	"plait.example/internal/app"
	"plait.example/internal/practical"
)

func TestReadRecipesRefuses(t *testing.T) {
	for name, c := range map[string]struct {
		data []byte
		code practical.Code
		says string
	}{
		"empty":   {nil, practical.Invalid, "no words were found"},
		"picture": {[]byte("\x89PNG\r\n\x1a\n\x00\x00\x00\rIHDR"), practical.Invalid, "a picture"},
		"binary":  {[]byte("\x7fELF\x02\x01\x01\x00\x00\x00\x00\x00\x00\x00\x00\x00\x03\x00"), practical.Invalid, "not text"},
		"huge":    {make([]byte, app.MostFile+1), practical.TooLarge, "larger than"},
		"doc":     {[]byte("\xD0\xCF\x11\xE0\xA1\xB1\x1A\xE1"), practical.Invalid, "save it as .docx"},
	} {
		_, err := new(app.App).ReadRecipes(name, c.data)
		var f practical.Fault
		if !errors.As(err, &f) || f.Code != c.code || f.File != name || !strings.Contains(err.Error(), c.says) || strings.Count(err.Error(), name+":") != 1 {
			t.Errorf("%s: got %v", name, err)
		}
	}
	if _, err := new(app.App).ReadRecipesFile(filepath.Join(t.TempDir(), "none.txt")); faultCode(err) != practical.NotFound || !strings.Contains(err.Error(), "no such file; check the name") {
		t.Errorf("no file: %v", err)
	}
	if read, err := new(app.App).ReadRecipes("note.txt", []byte("Dear all, the bus leaves at nine.")); err != nil || len(read.Recipes) != 1 || len(read.Recipes[0].Steps) != 0 || len(read.Recipes[0].Unread) == 0 {
		t.Errorf("no recipe: %+v, %v", read, err)
	}
}

func TestAddFile(t *testing.T) {
	a := mustApp(t)
	r := mustNew(t, a)
	page := `<!doctype html><title>Soup</title><script type="application/ld+json">[{"@type":"Recipe","name":"Soup","recipeIngredient":["1 onion"],"recipeInstructions":["Chop the onion.","Boil for 20 minutes."]},
		{"@type":"Recipe","name":"Toast","recipeIngredient":["2 slices bread"],"recipeInstructions":["Grill the bread for 3 minutes."]}]</script>`
	r, _, err := a.AddFile(t.Context(), r.ID, r.Version, "soup.html", []byte(page))
	if err != nil {
		t.Fatal(err)
	}
	if d := r.Practical.Dishes; len(d) != 2 || d[0].Letter != "A" || d[0].Name != "Soup" || d[1].Name != "Toast" || len(d[0].Steps) != 2 || !strings.Contains(d[0].Text, "Boil for 20 minutes.") {
		t.Errorf("dishes %+v", d)
	}
	if r.Label != "add the recipe of soup.html" {
		t.Errorf("label %q", r.Label)
	}
	version := r.Version
	if _, _, err := a.AddFile(t.Context(), r.ID, r.Version, "photo.png", []byte("\x89PNG\r\n\x1a\n")); faultCode(err) != practical.Invalid {
		t.Errorf("a picture: %v", err)
	}
	if r, err = a.Open(t.Context(), r.ID); err != nil || r.Version != version {
		t.Errorf("version %d, %v; nothing was to change", r.Version, err)
	}
}

// A practical file can name recipes of any kind that is read.
func TestRecipeOfAnyKindInAPracticalFile(t *testing.T) {
	page, err := os.ReadFile("../format/webpage/testdata/tart.html")
	if err != nil {
		t.Fatal(err)
	}
	pdf, err := os.ReadFile("../format/pdf/testdata/tart.pdf")
	if err != nil {
		t.Fatal(err)
	}
	dir := folder(t, map[string]string{
		"p.yaml":    "like: two-in-two\ntitle: Two tarts\ndishes:\n  - name: One\n    recipe: tart.html\n  - name: Two\n    recipe: tart.pdf\n",
		"tart.html": string(page), "tart.pdf": string(pdf),
	})
	p, err := new(app.App).ReadFile(filepath.Join(dir, "p.yaml"))
	if err != nil {
		t.Fatal(err)
	}
	for i, want := range []string{"Bake at 180°C for 40 minutes", "Bake"} {
		d := p.Dishes[i]
		found := false
		for _, s := range d.Steps {
			found = found || strings.HasPrefix(s.Text, want)
		}
		if !found || d.Recipe != "" || d.Text == "" {
			t.Errorf("dish %s: %+v", d.Letter, d.Steps)
		}
	}
}

// What is written as a practical file reads back as the same dishes.
func TestRecipesFileRoundTrip(t *testing.T) {
	a := new(app.App)
	var all []app.FileRecipes
	for _, text := range []string{pasties, scones} {
		read, err := a.ReadRecipes("recipe.txt", []byte(text))
		if err != nil {
			t.Fatal(err)
		}
		all = append(all, app.FileRecipes{File: "recipe.txt", Recipes: read})
	}
	p, left, err := a.RecipesPractical(all)
	if err != nil || len(left) > 0 {
		t.Fatalf("%v, %v", left, err)
	}
	data, left, err := a.RecipesFile(all)
	if err != nil || len(left) > 0 {
		t.Fatalf("%v, %v", left, err)
	}
	dir := folder(t, map[string]string{"read.yaml": string(data)})
	again, err := a.ReadFile(filepath.Join(dir, "read.yaml"))
	if err != nil {
		t.Fatal(err)
	}
	if diff := cmp.Diff(p, again, cmpopts.EquateEmpty()); diff != "" {
		t.Error(diff)
	}
	if again.Rules.Dishes != 2 || again.Dishes[0].Portions+again.Dishes[1].Portions != 4 {
		t.Errorf("rules %+v", again.Rules)
	}
	for _, d := range again.Dishes {
		for _, s := range d.Steps {
			if len(s.Why) == 0 {
				t.Errorf("%s has lost its reasons", s.ID)
			}
		}
	}
}

func TestRecipesPracticalSaysWhatIsLeft(t *testing.T) {
	a := new(app.App)
	file := func(name, text string) app.FileRecipes {
		read, err := a.ReadRecipes(name, []byte(text))
		if err != nil {
			t.Fatal(err)
		}
		return app.FileRecipes{File: name, Recipes: read}
	}
	p, left, err := a.RecipesPractical([]app.FileRecipes{file("note.txt", "Dear all."), file("dough.txt", "500 g flour\n1 tsp yeast\n\nMethod\n1. Knead the dough for 5 minutes.\n2. Leave to prove for 12 hours.\n")})
	if err != nil || len(p.Dishes) != 1 || p.Dishes[0].Name != "dough" || p.Title != "dough" {
		t.Fatalf("%+v, %v", p, err)
	}
	if len(left) != 2 || left[0].File != "note.txt" || !strings.Contains(left[1].Error(), "the clock has 180") {
		t.Errorf("left out:\n%v", left)
	}
	long, left, err := a.RecipesPractical([]app.FileRecipes{file("dough.txt", "500 g flour\n1 tsp yeast\n\nMethod\n1. Knead the dough for 5 minutes.\n2. Leave to prove for 2 hours.\n")})
	if err != nil || len(left) > 0 || long.Clock.Finish-long.Clock.Start != 180 {
		t.Errorf("a dough that takes two hours: %v, %v, %v", long, left, err)
	}
	if _, _, err := a.RecipesPractical([]app.FileRecipes{file("note.txt", "Dear all.")}); faultCode(err) != practical.Invalid {
		t.Errorf("no recipe: %v", err)
	}
	var many []app.FileRecipes
	for range 27 {
		many = append(many, file("scones.txt", scones))
	}
	if _, _, err := a.RecipesPractical(many); faultCode(err) != practical.TooLarge {
		t.Errorf("27 recipes: %v", err)
	}
}

// The head of the file says what to look at, in comments that change nothing.
func TestRecipesFileHead(t *testing.T) {
	a := new(app.App)
	read, err := a.ReadRecipes("stew.txt", []byte("Stew\n\n500 g beef\n\nMethod\n1. Chop the beef.\n2. Simmer until tender.\n\nNote: Grandma's\tway: # \u202e \"yes\".\n"))
	if err != nil {
		t.Fatal(err)
	}
	data, _, err := a.RecipesFile([]app.FileRecipes{{File: "stew.txt", Recipes: read}})
	if err != nil {
		t.Fatal(err)
	}
	head, _, _ := strings.Cut(string(data), "title:")
	for _, want := range []string{"# Look first at these steps:\n#   A2 Simmer until tender. (", "# Not understood, and in no step:\n#   stew.txt: Note: Grandma's way: # \"yes\".\n"} {
		if !strings.Contains(head, want) {
			t.Errorf("the head is\n%s\nand lacks %q", head, want)
		}
	}
	for line := range strings.SplitSeq(strings.TrimSpace(head), "\n") {
		if !strings.HasPrefix(line, "#") {
			t.Errorf("%q is no comment", line)
		}
	}
	if p, faults := practical.Parse("stew.yaml", data); len(faults) > 0 || p.Dishes[0].Name != "Stew" {
		t.Errorf("%v", faults)
	}
}
