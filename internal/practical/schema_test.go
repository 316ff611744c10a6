package practical_test

import (
	"bytes"
	"encoding/json"
	"os"
	"path/filepath"
	"reflect"
	"slices"
	"strings"
	"testing"

	"github.com/goccy/go-yaml"
	"github.com/santhosh-tekuri/jsonschema/v6"
	"pgregory.net/rapid"

	"plait.example/internal/practical"
	"plait.example/internal/practical/practicaltest"
)

// compiled is the schema as an independent validator of JSON Schema 2020-12 reads it.
func compiled(t *testing.T) *jsonschema.Schema {
	t.Helper()
	doc, err := jsonschema.UnmarshalJSON(bytes.NewReader(practical.Schema()))
	if err != nil {
		t.Fatal(err)
	}
	c := jsonschema.NewCompiler()
	if err := c.AddResource("practical.schema.json", doc); err != nil {
		t.Fatal(err)
	}
	s, err := c.Compile("practical.schema.json")
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// bySchema is what the schema says of a YAML text.
func bySchema(s *jsonschema.Schema, text []byte) error {
	var doc any
	if err := yaml.Unmarshal(text, &doc); err != nil {
		return err
	}
	asJSON, err := json.Marshal(doc)
	if err != nil {
		return err
	}
	value, err := jsonschema.UnmarshalJSON(bytes.NewReader(asJSON))
	if err != nil {
		return err
	}
	return s.Validate(value)
}

func exampleFiles(t *testing.T) []string {
	t.Helper()
	files, err := filepath.Glob("../../examples/*.yaml")
	if err != nil || len(files) == 0 {
		t.Fatalf("examples: %v, %v", files, err)
	}
	return files
}

func TestExamplesAreValidByFileAndBySchema(t *testing.T) {
	s := compiled(t)
	for _, file := range exampleFiles(t) {
		data, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		if _, faults := practical.Parse(file, data); len(faults) > 0 {
			t.Error(faults)
		}
		if err := bySchema(s, data); err != nil {
			t.Error(file, err)
		}
	}
}

func TestWrittenFilesAreValidBySchema(t *testing.T) {
	s := compiled(t)
	rapid.Check(t, func(t *rapid.T) {
		text, err := practical.Write(practicaltest.Practical(t))
		if err != nil {
			t.Fatal(err)
		}
		if err := bySchema(s, text); err != nil {
			t.Fatalf("%v\n%s", err, text)
		}
	})
}

// TestBadFilesAreRefusedTwice holds file reader and schema to the same form.
func TestBadFilesAreRefusedTwice(t *testing.T) {
	const dish = "title: T\ndishes:\n  - name: D\n    steps:\n      - text: Stir\n"
	const step = dish + "        hands: 5\n"
	const wait = step + "        wait:\n          place: oven\n          celsius: 180\n"
	good := []string{"title: T\n", step, wait, step + "        after: []\n", "title: T\nclock: {start: 9.30, finish: \"11:00 am\"}\n", "title: T\nclock: {start: 0905}\n"}
	bad := map[string]string{
		"no title":               "cooks: 1\n",
		"empty title":            "title: \"\"\n",
		"unknown field":          "title: T\ndishs: []\n",
		"unknown starting point": "title: T\nlike: four-in-four\n",
		"not a table":            "- title\n",
		"clock is a text":        "title: T\nclock: nine\n",
		"not a time":             "title: T\nclock: {start: nine}\n",
		"minute 75":              "title: T\nclock: {start: \"9:75\"}\n",
		"not a date":             "title: T\ndate: Friday\n",
		"extra time of 101":      "title: T\nclock: {extra-time: {cook: 101}}\n",
		"hours of 18":            "title: T\nclock: {hours: 18}\n",
		"round to 10":            "title: T\nclock: {round: 10}\n",
		"break without a time":   "title: T\nclock: {rest-breaks: [{minutes: 0}]}\n",
		"three cooks":            "title: T\ncooks: 3\n",
		"half a cook":            "title: T\ncooks: 1.5\n",
		"cooks in words":         "title: T\ncooks: one\n",
		"minus one ring":         "title: T\nkitchen: {rings: -1}\n",
		"unknown grill":          "title: T\nkitchen: {grill: hot}\n",
		"oven of wood":           "title: T\nkitchen: {ovens: [{fuel: wood}]}\n",
		"five ovens":             "title: T\nkitchen: {ovens: [{name: a}, {name: b}, {name: c}, {name: d}, {name: e}]}\n",
		"taken nothing":          "title: T\nkitchen: {taken: [{kit: spoon, from: 9:00, until: 10:00}]}\n",
		"mark of no heat":        "title: T\nkitchen: {gas-table: [{mark: 4}]}\n",
		"unknown pace":           "title: T\nrules: {pace: slow}\n",
		"no looks":               "title: T\nrules: {looks: 0}\n",
		"verb of two words":      "title: T\nrules: {set-up-verbs: [Weigh out]}\n",
		"maybe":                  "title: T\nrules: {oven-in-set-up: maybe}\n",
		"dish without a name":    "title: T\ndishes: [{letter: A}]\n",
		"letter of two":          "title: T\ndishes: [{letter: AB, name: D}]\n",
		"thirteen dishes":        "title: T\ndishes:\n" + strings.Repeat("  - name: D\n", 13),
		"step without text":      "title: T\ndishes: [{name: D, steps: [{hands: 5}]}]\n",
		"step without time":      dish,
		"hands of 601":           dish + "        hands: 601\n",
		"hands in words":         dish + "        hands: five\n",
		"hands with middle":      dish + "        hands: {low: 1, middle: 2, high: 3}\n",
		"unknown kit":            step + "        uses: [spoon]\n",
		"unknown food":           step + "        food: cooked\n",
		"doubt of two":           step + "        doubt: 2\n",
		"wait without place":     step + "        wait: {least: 5}\n",
		"wait in the hands":      step + "        wait: {place: hands}\n",
		"oven without heat":      step + "        wait: {place: oven}\n",
		"oven at 40":             step + "        wait: {place: oven, celsius: 40}\n",
		"oven at 301":            step + "        wait: {place: oven, celsius: 301}\n",
		"two temperatures":       step + "        wait: {place: oven, celsius: [180, 200]}\n",
		"fridge at 180":          step + "        wait: {place: fridge, celsius: 180}\n",
		"unknown attention":      wait + "          attention: sometimes\n",
		"put in for an hour":     wait + "          put-in: 60\n",
		"gap without step":       step + "        after: {least: 5}\n",
		"gap of minus five":      step + "        after: {step: A1, least: -5}\n",
		"serve lukewarm":         "title: T\ndishes: [{name: D, serve: {heat: lukewarm}}]\n",
		"pin to nothing":         "title: T\npins: [{row: A/serve}]\n",
	}
	s := compiled(t)
	for _, text := range good {
		if _, faults := practical.Parse("good.yaml", []byte(text)); len(faults) > 0 {
			t.Errorf("refused by the reader: %s%v", text, faults)
		}
		if err := bySchema(s, []byte(text)); err != nil {
			t.Errorf("refused by the schema: %s%v", text, err)
		}
	}
	for name, text := range bad {
		if _, faults := practical.Parse("bad.yaml", []byte(text)); len(faults) == 0 {
			t.Errorf("%s: the reader takes it:\n%s", name, text)
		}
		if err := bySchema(s, []byte(text)); err == nil {
			t.Errorf("%s: the schema takes it:\n%s", name, text)
		}
	}
}

// TestSchemaHasTheFieldsOfTheNouns compares names both ways.
func TestSchemaHasTheFieldsOfTheNouns(t *testing.T) {
	var doc map[string]any
	if err := json.Unmarshal(practical.Schema(), &doc); err != nil {
		t.Fatal(err)
	}
	if doc["$schema"] != "https://json-schema.org/draft/2020-12/schema" || doc["$id"] == "" {
		t.Error("the schema names neither draft nor id")
	}
	types := map[string]reflect.Type{
		"": reflect.TypeFor[practical.Practical](), "clock": reflect.TypeFor[practical.Clock](), "extra": reflect.TypeFor[practical.Extra](),
		"break": reflect.TypeFor[practical.Break](), "rules": reflect.TypeFor[practical.Rules](), "kitchen": reflect.TypeFor[practical.Kitchen](),
		"oven": reflect.TypeFor[practical.Oven](), "taken": reflect.TypeFor[practical.Taken](), "gas-mark": reflect.TypeFor[practical.GasMark](),
		"dish": reflect.TypeFor[practical.Dish](), "ingredient": reflect.TypeFor[practical.Ingredient](), "serve": reflect.TypeFor[practical.Serve](),
		"step": reflect.TypeFor[practical.Step](), "estimate": reflect.TypeFor[practical.Estimate](), "wait": reflect.TypeFor[practical.Wait](),
		"after": reflect.TypeFor[practical.After](), "pin": reflect.TypeFor[practical.Pin](),
	}
	defs := doc["$defs"].(map[string]any)
	for name := range defs {
		if _, ok := types[name]; !ok && name != "time" && name != "kit" {
			t.Errorf("the schema has %q, which is no noun", name)
		}
	}
	for name, noun := range types {
		def := doc
		if name != "" {
			def, _ = defs[name].(map[string]any)
		}
		properties := propertiesOf(def)
		delete(properties, "like") // of the file alone: the starting point
		for i := range noun.NumField() {
			key := noun.Field(i).Tag.Get("yaml")
			property, ok := properties[key].(map[string]any)
			if !ok {
				t.Errorf("%s.%s is not in the schema", noun.Name(), key)
				continue
			}
			described(t, noun.Name()+"."+key, property, defs)
			delete(properties, key)
		}
		for key := range properties {
			t.Errorf("the schema's %s.%s is no field", noun.Name(), key)
		}
	}
}

// propertiesOf are a definition's properties, where it has a short form those of the long one.
func propertiesOf(def map[string]any) map[string]any {
	if p, ok := def["properties"].(map[string]any); ok {
		return p
	}
	for _, form := range def["anyOf"].([]any) {
		if p, ok := form.(map[string]any)["properties"].(map[string]any); ok {
			return p
		}
	}
	return map[string]any{}
}

func described(t *testing.T, name string, property, defs map[string]any) {
	t.Helper()
	if to, ok := property["$ref"].(string); ok && property["description"] == nil {
		property, _ = defs[strings.TrimPrefix(to, "#/$defs/")].(map[string]any)
	}
	if text, _ := property["description"].(string); len(text) < 4 {
		t.Errorf("%s has no description", name)
	}
}

// TestDefaultStartingPointsAreInTheSchema keeps the list of names.
func TestDefaultStartingPointsAreInTheSchema(t *testing.T) {
	var doc struct {
		Properties struct {
			Like struct{ Enum []string }
		}
	}
	if err := json.Unmarshal(practical.Schema(), &doc); err != nil {
		t.Fatal(err)
	}
	var ids []string
	for _, s := range practical.StartingPoints() {
		ids = append(ids, s.ID)
	}
	if !slices.Equal(ids, doc.Properties.Like.Enum) {
		t.Errorf("starting points %v, schema %v", ids, doc.Properties.Like.Enum)
	}
}
