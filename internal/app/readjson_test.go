package app_test

import (
	"bytes"
	"encoding/json"
	"os"
	"strings"
	"testing"
	"unicode"

	"github.com/santhosh-tekuri/jsonschema/v6"

	"plait.example/internal/app"
)

// pasties is an invented recipe in which every figure is said.
const pasties = "Leek pasties\r\nServes 4\r\n\r\nIngredients\r\n250 g plain flour\r\n2-3 tbsp cold water\r\n½ tsp salt\r\na knob of butter\r\n1 egg, beaten\r\n\r\nMethod\r\n" +
	"1. Preheat the oven to 200°C (fan 180°C, gas 6).\r\n2. Knead the dough for 5 minutes and rest it in the fridge for 20 minutes.\r\n3. Bake the pasties on a tray for 25-30 minutes until golden brown.\r\n4. Serve hot – with a salad.\r\n\r\nNote: Grandma’s way.\r\n"

// jsonRecipes is what was read of a file as JSON, by the schema.
func jsonRecipes(t testing.TB, name string, data []byte) []map[string]any {
	t.Helper()
	a := new(app.App)
	read, err := a.ReadRecipes(name, data)
	if err != nil {
		t.Fatal(err)
	}
	objects, err := a.RecipesJSON(name, read)
	if err != nil {
		t.Fatal(err)
	}
	text := "[" + string(bytes.Join(objects, []byte(","))) + "]"
	value, err := jsonschema.UnmarshalJSON(strings.NewReader(text))
	if err != nil {
		t.Fatal(err)
	}
	if err := recipesSchema(t).Validate(value); err != nil {
		t.Fatalf("%v\n%s", err, text)
	}
	var out []map[string]any
	if err := json.Unmarshal([]byte(text), &out); err != nil {
		t.Fatal(err)
	}
	return out
}

func recipesSchema(t testing.TB) *jsonschema.Schema {
	t.Helper()
	schema, err := new(app.App).Schema("recipes")
	if err != nil {
		t.Fatal(err)
	}
	document, err := jsonschema.UnmarshalJSON(bytes.NewReader(schema))
	if err != nil {
		t.Fatal(err)
	}
	c := jsonschema.NewCompiler()
	if err := c.AddResource("recipes.json", document); err != nil {
		t.Fatal(err)
	}
	s, err := c.Compile("recipes.json")
	if err != nil {
		t.Fatal(err)
	}
	return s
}

func TestRecipesJSON(t *testing.T) {
	all := jsonRecipes(t, "pasties.txt", []byte(pasties))
	if len(all) != 1 {
		t.Fatalf("%d recipes", len(all))
	}
	r := all[0]
	if r["file"] != "pasties.txt" || r["title"] != "Leek pasties" || r["serves"] != 4.0 || r["source_text"] != pasties {
		t.Errorf("head %q %q %v", r["file"], r["title"], r["serves"])
	}
	for i, want := range []string{
		`{"component":"","grams":250,"name":"plain flour","note":"","quantity":{"high":250,"low":250},"raw":"250 g plain flour","unit":"g","why":"250 grams as stated"}`,
		`{"component":"","grams":37.5,"name":"cold water","note":"","quantity":{"high":3,"low":2},"raw":"2-3 tbsp cold water","unit":"tbsp","why":"2 to 3 tablespoons is 38 ml; 1.001 g a ml for \"Beverages, water, tap, municipal\""}`,
		`{"component":"","grams":3.1,"name":"salt","note":"","quantity":{"high":0.5,"low":0.5},"raw":"½ tsp salt","unit":"tsp","why":"0.5 teaspoon is 2.5 ml; 1.234 g a ml for \"Salt, table\""}`,
		`{"component":"","grams":null,"name":"butter","note":"","quantity":{"high":1,"low":1},"raw":"a knob of butter","unit":"knob","why":"a knob has no agreed weight"}`,
		`{"component":"","grams":52,"name":"egg","note":"beaten","quantity":{"high":1,"low":1},"raw":"1 egg, beaten","unit":"","why":"1 at 52 g (medium), \"Egg, whole, raw, British grades\""}`,
	} {
		got, err := json.Marshal(r["ingredients"].([]any)[i])
		if err != nil || string(got) != want {
			t.Errorf("got  %s\nwant %s", got, want)
		}
	}
	steps := r["steps"].([]any)
	var ids []string
	for _, s := range steps {
		ids = append(ids, s.(map[string]any)["id"].(string))
	}
	if strings.Join(ids, " ") != "oven 1 2 3 serve" {
		t.Fatalf("steps %q", ids)
	}
	rest, bake := steps[2].(map[string]any), steps[3].(map[string]any)
	if w := rest["wait"].(map[string]any); rest["place"] != "fridge" || w["least"] != 20.0 || w["most"] != nil || rest["celsius"] != nil {
		t.Errorf("rest %v", rest)
	}
	if w := bake["wait"].(map[string]any); bake["place"] != "oven" || w["least"] != 25.0 || w["most"] != 30.0 || bake["celsius"] != 200.0 || bake["attention"] != "leave" || bake["technique"] != "bake" {
		t.Errorf("bake %v", bake)
	}
	if k := steps[1].(map[string]any); k["place"] != "bench" || k["wait"] != nil || k["attention"] != "" || k["hands"].(map[string]any)["likely"] != 5.0 {
		t.Errorf("knead %v", k)
	}
	if o := steps[0].(map[string]any); o["celsius"] != 200.0 || o["place"] != "oven" {
		t.Errorf("oven %v", o)
	}
	if u := r["unread"].([]any); len(u) != 1 || u[0] != "Note: Grandma’s way." {
		t.Errorf("unread %q", u)
	}
	holdsRecipes(t, all)
}

// holdsRecipes checks that each step is a piece of the text, that steps come after
// steps of the recipe, and that no word of the text is lost.
func holdsRecipes(t testing.TB, all []map[string]any) {
	t.Helper()
	var found strings.Builder
	text := ""
	for _, r := range all {
		text = r["source_text"].(string)
		found.WriteString(r["title"].(string) + "\n")
		for _, u := range r["unread"].([]any) {
			found.WriteString(u.(string) + "\n")
		}
		for _, ing := range r["ingredients"].([]any) {
			found.WriteString(ing.(map[string]any)["raw"].(string) + "\n" + ing.(map[string]any)["component"].(string) + "\n")
		}
		known := map[string]bool{}
		for _, s := range r["steps"].([]any) {
			step := s.(map[string]any)
			at := step["source"].(map[string]any)
			start, end := int(at["start"].(float64)), int(at["end"].(float64))
			if end > len(text) || start > end || text[start:end] != step["text"] {
				t.Fatalf("step %v at %d to %d is not %q", step["id"], start, end, step["text"])
			}
			for _, a := range step["after"].([]any) {
				if !known[a.(map[string]any)["step"].(string)] {
					t.Fatalf("step %v comes after %v, which is not there before it", step["id"], a)
				}
			}
			known[step["id"].(string)] = true
			found.WriteString(step["text"].(string) + "\n" + step["component"].(string) + "\n")
		}
	}
	kept := strings.ToLower(found.String())
	for _, w := range strings.FieldsFunc(text, func(r rune) bool { return !unicode.IsLetter(r) }) {
		if w = strings.ToLower(w); !strings.Contains(kept, w) && !structural(w) {
			t.Fatalf("the word %q is lost", w)
		}
	}
}

// structural says that a word may stand in a heading, a number or the portions
// line, which are read and not kept. The reader knows such words by their stems.
func structural(w string) bool {
	for _, stem := range []string{"ingred", "method", "direct", "instruct", "step", "prep", "proced", "serv", "make", "making", "portion", "yield", "feed", "peopl", "person", "shop", "list", "cook", "time", "minut", "titl"} {
		if strings.HasPrefix(w, stem) {
			return true
		}
	}
	return strings.Contains(" for the to you ll will need what do about of x how a i ii iii b and ", " "+w+" ")
}

// FuzzRecipesJSON holds that no file breaks the way from its bytes to the JSON,
// that the JSON keeps its schema, and that no step or word goes missing on it.
func FuzzRecipesJSON(f *testing.F) {
	f.Add([]byte(pasties))
	f.Add([]byte(scones))
	f.Add([]byte(`{"@type":"Recipe","name":"Tea","recipeIngredient":["1 bag"],"recipeInstructions":["Boil water for 3 minutes.",{"@type":"HowToStep","text":"Pour & wait"}],"recipeYield":"2","totalTime":"PT5M"}`))
	f.Add([]byte("<!doctype html><h1>Tea</h1><ul><li>1 bag</ul><ol><li>Boil water for 3 minutes.<li>Pour.</ol><table><tr><td>Ingredients<td>Method<tr><td>tea<td>Stir.</table>"))
	f.Add([]byte("\xFF\xFET\x00e\x00a\x00\n\x001\x00 \x00c\x00u\x00p\x00\n\x00"))
	f.Add([]byte("Ingredients\n- For the top:\n- 2 x 400g/14oz tins\n- 1 lb 2 oz\n"))
	f.Add([]byte{0, 1, 2})
	f.Add([]byte("For AA:\n-"))
	f.Add([]byte("\n00A\n\xba"))
	f.Add([]byte("Rest for 3 days and then for 25-3020 minutes.\n\n#"))
	for _, name := range []string{"../format/webpage/testdata/tart.html", "../format/pdf/testdata/tart.pdf", "../../cmd/plait/testdata/read/flapjacks.docx"} {
		data, err := os.ReadFile(name)
		if err != nil {
			f.Fatal(err)
		}
		f.Add(data)
	}
	schema := recipesSchema(f)
	f.Fuzz(func(t *testing.T, data []byte) {
		a := new(app.App)
		read, err := a.ReadRecipes("file", data)
		if err != nil {
			return
		}
		objects, err := a.RecipesJSON("file", read)
		if err != nil {
			t.Fatal(err)
		}
		text := "[" + string(bytes.Join(objects, []byte(","))) + "]"
		value, err := jsonschema.UnmarshalJSON(strings.NewReader(text))
		if err != nil {
			t.Fatal(err)
		}
		if err := schema.Validate(value); err != nil {
			t.Fatal(err)
		}
		var all []map[string]any
		if err := json.Unmarshal([]byte(text), &all); err != nil {
			t.Fatal(err)
		}
		if len(all) != len(read.Recipes) || len(all) == 0 {
			t.Fatalf("%d recipes, %d objects", len(read.Recipes), len(all))
		}
		holdsRecipes(t, all)
	})
}
