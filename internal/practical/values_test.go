package practical

import (
	"encoding/json"
	"reflect"
	"slices"
	"testing"
)

// property is what the comparison reads of a property of the schema.
type property struct {
	Type    string
	Minimum *float64
	Maximum *float64
	Enum    []any
	Ref     string `json:"$ref"`
	Items   *property
	AnyOf   []property
}

// TestRangesAndWordsAreThoseOfTheSchema compares every range and every fixed list of words.
func TestRangesAndWordsAreThoseOfTheSchema(t *testing.T) {
	var doc struct {
		Properties map[string]property
		Defs       map[string]struct {
			property
			Properties map[string]property
			AnyOf      []struct{ Properties map[string]property }
		} `json:"$defs"`
	}
	if err := json.Unmarshal(Schema(), &doc); err != nil {
		t.Fatal(err)
	}
	names := map[string]string{
		"clock": "Clock", "extra": "Extra", "break": "Break", "rules": "Rules", "kitchen": "Kitchen", "oven": "Oven", "taken": "Taken", "gas-mark": "GasMark",
		"dish": "Dish", "ingredient": "Ingredient", "serve": "Serve", "step": "Step", "estimate": "Estimate", "wait": "Wait", "after": "After", "pin": "Pin",
	}
	got := map[string]property{}
	add := func(noun string, properties map[string]property) {
		for key, p := range properties {
			got[noun+"."+key] = p
		}
	}
	add("Practical", doc.Properties)
	for def, noun := range names {
		add(noun, doc.Defs[def].Properties)
		for _, form := range doc.Defs[def].AnyOf {
			add(noun, form.Properties)
		}
	}
	compared := 0
	for name, p := range got {
		if p.Minimum == nil || p.Type == "" {
			continue
		}
		want, ok := spans[name]
		if name == "Wait.celsius" {
			want, ok = span{coolest, hottest, ""}, true
		}
		if !ok || float64(want.least) != *p.Minimum || float64(want.most) != *p.Maximum {
			t.Errorf("%s: schema %v to %v, code %v", name, *p.Minimum, *p.Maximum, want)
		}
		compared++
	}
	if want := len(spans) + 1; compared != want {
		t.Errorf("compared %d ranges, the code has %d", compared, want)
	}
	lists := map[string]reflect.Type{
		"Rules.pace": reflect.TypeFor[Pace](), "Oven.fuel": reflect.TypeFor[Fuel](), "Kitchen.grill": reflect.TypeFor[Grill](), "Serve.heat": reflect.TypeFor[Heat](),
		"Wait.attention": reflect.TypeFor[Attention](), "Step.food": reflect.TypeFor[Food](), "Wait.place": reflect.TypeFor[Place](),
	}
	for name, of := range lists {
		checkWords(t, name, got[name].Enum, of)
	}
	checkWords(t, "kit", doc.Defs["kit"].Enum, reflect.TypeFor[Kit]())
	for name, allowed := range choices {
		if e := got[name].Enum; len(e) != 2 || e[0] != float64(allowed[0]) || e[1] != float64(allowed[1]) {
			t.Errorf("%s: schema %v, code %v", name, e, allowed)
		}
	}
}

func checkWords(t *testing.T, name string, enum []any, of reflect.Type) {
	t.Helper()
	want := slices.Clone(words[of])
	if mayBeEmpty[of] {
		want = slices.Insert(want, 0, "")
	}
	if of == reflect.TypeFor[Place]() { // food does not wait there
		want = slices.DeleteFunc(want, func(w string) bool { return w == string(AtHands) || w == string(Served) })
	}
	got := make([]string, len(enum))
	for i, e := range enum {
		got[i], _ = e.(string)
	}
	if !slices.Equal(got, want) {
		t.Errorf("%s: schema %q, code %q", name, got, want)
	}
}
