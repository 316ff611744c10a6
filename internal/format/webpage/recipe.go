package webpage

import (
	"encoding/json"
	"math"
	"slices"
	"strings"

	"golang.org/x/net/html"
)

// recipes are the recipes among some values and inside them. A how-to counts
// when there is no recipe: schema.org's Recipe is a kind of it.
func recipes(values []any) (list []Recipe) {
	f := finder{}
	for _, v := range values {
		f.find(v)
	}
	found := f.recipes
	if len(found) == 0 {
		found = f.howTos
	}
	for _, o := range found[:min(len(found), MaxRecipes)] {
		r := recipeOf(o)
		if len(r.Ingredients)+len(r.Instructions) > 0 && !slices.ContainsFunc(list, r.same) {
			list = append(list, r)
		}
	}
	return list
}

// same says whether another is this recipe again: pages give one in two syntaxes.
func (r Recipe) same(other Recipe) bool {
	return strings.EqualFold(r.Name, other.Name) && (slices.Equal(r.Ingredients, other.Ingredients) || r.steps() == other.steps())
}

func (r Recipe) steps() string {
	var b strings.Builder
	for _, s := range r.Instructions {
		b.WriteString(strings.Join(s.Steps, " ") + " ")
	}
	return oneLine(b.String())
}

type finder struct{ recipes, howTos []object }

func (f *finder) find(v any) {
	switch v := v.(type) {
	case []any:
		for _, e := range v {
			f.find(e)
		}
	case object:
		switch {
		case isA(v, "Recipe"):
			f.recipes = append(f.recipes, v)
			return
		case isA(v, "HowTo"):
			f.howTos = append(f.howTos, v)
		}
		for _, key := range sortedKeys(v) {
			f.find(v[key])
		}
	}
}

func sortedKeys(o object) []string {
	keys := make([]string, 0, len(o))
	for k := range o {
		keys = append(keys, k)
	}
	slices.Sort(keys)
	return keys
}

// isA says whether an object has a type.
func isA(o object, name string) bool {
	names, marked := o["@type"].([]string)
	if !marked {
		for _, t := range listOf(o["@type"]) {
			if s, is := t.(string); is {
				names = append(names, typeNames(s)...)
			}
		}
	}
	return slices.Contains(names, name)
}

func recipeOf(o object) Recipe {
	r := Recipe{
		Name: line(get(o, "name", "headline")), Description: line(get(o, "description")), Yield: yieldOf(get(o, "recipeYield", "yield")),
		Prep: minutes(get(o, "prepTime")), Cook: minutes(get(o, "cookTime", "performTime")), Total: minutes(get(o, "totalTime")),
	}
	for _, v := range listOf(get(o, "recipeIngredient", "ingredients", "supply")) {
		r.Ingredients = append(r.Ingredients, ingredients(v)...)
	}
	r.Instructions = instructions(get(o, "recipeInstructions", "instructions", "step", "steps"))
	return r
}

// get is the value of the first of some properties that an object has.
func get(o object, names ...string) any {
	for _, name := range names {
		for _, key := range []string{name, "schema:" + name, "http://schema.org/" + name, "https://schema.org/" + name} {
			if v := o[key]; v != nil && v != "" {
				return v
			}
		}
	}
	return nil
}

// listOf is a value as a list: what JSON-LD leaves open is open here.
func listOf(v any) []any {
	switch v := v.(type) {
	case nil:
		return nil
	case []any:
		return v
	case object:
		if inner, is := v["@list"].([]any); is {
			return inner
		}
	}
	return []any{v}
}

// text is a value's words in lines, with the markup that some pages put in them taken out.
func text(v any) string {
	switch v := v.(type) {
	case string:
		return unmarked(v)
	case json.Number:
		return v.String()
	case []any:
		for _, e := range v {
			if s := text(e); s != "" {
				return s
			}
		}
	case object:
		return text(get(v, "@value", "text", "name"))
	}
	return ""
}

// line is a value's words on one line.
func line(v any) string { return oneLine(text(v)) }

// unmarked is the text of a string that may hold markup or, once more, character references.
func unmarked(s string) string {
	if strings.Contains(s, "&") {
		s = html.UnescapeString(s)
	}
	if !strings.ContainsRune(s, '<') {
		var w writer
		w.pre = 1
		w.words(s)
		return w.text()
	}
	root, err := parse(strings.ReplaceAll(s, "\n", "<br>"))
	if err != nil {
		return oneLine(s)
	}
	return textOf(root)
}

// yieldOf is the fullest of the yields given: "4" and "4 people" stand side by side.
func yieldOf(v any) (yield string) {
	for _, e := range listOf(v) {
		s := line(e)
		if o, is := e.(object); is {
			s = oneLine(amount(o))
		}
		if len(s) > len(yield) {
			yield = s
		}
	}
	return yield
}

// minutes is a duration rounded to whole minutes, 0 when it is not one. Of a
// least and a most it is the most.
func minutes(v any) int {
	if o, is := v.(object); is {
		v = get(o, "maxValue", "value", "@value", "minValue")
	}
	d, err := ParseDuration(strings.ToUpper(line(v)))
	if err != nil {
		return 0
	}
	return int(math.Round(d.Minutes()))
}
