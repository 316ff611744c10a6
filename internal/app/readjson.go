package app

import (
	"bytes"
	_ "embed"
	"encoding/json"
	"fmt"
	"math"
	"strings"

	"plait.example/internal/practical"
	"plait.example/internal/recipe"
)

//go:embed recipes.schema.json
var recipesSchema []byte

// RecipesJSON is the recipes that were read of a file, each as a JSON object of
// the schema "recipes", indented, without the brackets and commas of the array
// that they stand in.
func (a *App) RecipesJSON(file string, read Recipes) ([][]byte, error) {
	out := make([][]byte, len(read.Recipes))
	for i, r := range read.Recipes {
		var b bytes.Buffer
		e := json.NewEncoder(&b)
		e.SetEscapeHTML(false)
		e.SetIndent("  ", "  ")
		if err := e.Encode(recipeOut(file, read.Text, r)); err != nil {
			return nil, fmt.Errorf("write the recipe %q: %w", r.Title, err)
		}
		out[i] = bytes.TrimRight(b.Bytes(), "\n")
	}
	return out, nil
}

// jsonRecipe is a recipe as JSON. Pointers are null when the recipe does not say.
type jsonRecipe struct {
	File        string           `json:"file"`
	Title       string           `json:"title"`
	Serves      *int             `json:"serves"`
	Ingredients []jsonIngredient `json:"ingredients"`
	Steps       []jsonStep       `json:"steps"`
	Unread      []string         `json:"unread"`
	SourceText  string           `json:"source_text"`
}

type jsonIngredient struct {
	Raw       string      `json:"raw"`
	Quantity  *jsonAmount `json:"quantity"`
	Unit      string      `json:"unit"`
	Name      string      `json:"name"`
	Note      string      `json:"note"`
	Component string      `json:"component"`
	Grams     *float64    `json:"grams"`
	Why       string      `json:"why"`
}

type jsonAmount struct {
	Low  float64 `json:"low"`
	High float64 `json:"high"`
}

type jsonStep struct {
	ID        string              `json:"id"`
	Text      string              `json:"text"`
	Source    jsonSource          `json:"source"`
	Component string              `json:"component"`
	Hands     practical.Estimate  `json:"hands"`
	Wait      *jsonWait           `json:"wait"`
	Place     string              `json:"place"`
	Celsius   *int                `json:"celsius"`
	Attention practical.Attention `json:"attention"`
	Every     *int                `json:"every"`
	After     []jsonAfter         `json:"after"`
	Technique string              `json:"technique"`
	Food      practical.Food      `json:"food"`
	SetUp     bool                `json:"set_up"`
	Kit       string              `json:"kit"`
	Check     string              `json:"check"`
	Safety    string              `json:"safety"`
	Doubt     float64             `json:"doubt"`
	Why       []string            `json:"why"`
}

type jsonSource struct {
	Start int `json:"start"`
	End   int `json:"end"`
}

type jsonWait struct {
	Least int  `json:"least"`
	Most  *int `json:"most"`
}

type jsonAfter struct {
	Step  string `json:"step"`
	Least int    `json:"least"`
	Most  *int   `json:"most"`
}

func recipeOut(file, text string, r recipe.Recipe) jsonRecipe {
	out := jsonRecipe{
		File: file, Title: valid(r.Title), Serves: positive(r.Serves), SourceText: text,
		Ingredients: []jsonIngredient{}, Steps: []jsonStep{}, Unread: []string{},
	}
	for i, w := range recipe.Weigh(r.Ingredients) {
		out.Ingredients = append(out.Ingredients, ingredientOut(r.Ingredients[i], w))
	}
	for i, s := range r.Steps {
		out.Steps = append(out.Steps, stepOut(s, r.Sources[i], r.Serve))
	}
	for _, u := range r.Unread {
		out.Unread = append(out.Unread, valid(u))
	}
	return out
}

func ingredientOut(ing practical.Ingredient, w Weight) jsonIngredient {
	out := jsonIngredient{
		Raw: valid(ing.Raw), Unit: ing.Unit, Name: valid(ing.Name), Note: valid(ing.Note), Component: valid(ing.Component), Why: w.How,
	}
	if ing.Quantity > 0 {
		out.Quantity = &jsonAmount{ing.Quantity, max(ing.Quantity, ing.Most)}
	}
	if w.Known {
		grams := math.Round(w.Grams*10) / 10
		out.Grams = &grams
	}
	return out
}

func stepOut(s practical.Step, at recipe.Source, serve practical.Serve) jsonStep {
	out := jsonStep{
		ID: s.ID, Text: s.Text, Source: jsonSource{at.Start, at.End}, Component: valid(s.Component), Hands: s.Hands,
		Place: workPlace(s), Technique: at.Technique, Food: s.Food, SetUp: s.SetUp, Kit: s.Kit, Check: valid(s.Check), Safety: s.Safety,
		Doubt: s.Doubt, Why: append([]string{}, s.Why...), After: []jsonAfter{},
	}
	out.Celsius = positive(at.Celsius)
	if s.ID == recipe.ServeStep {
		out.Hands = practical.Around(serve.Minutes)
	}
	if w := s.Wait; w != nil {
		out.Wait = &jsonWait{w.Least, positive(w.Most)}
		out.Every, out.Attention = positive(w.Every), w.Attention
		if w.Celsius > 0 {
			out.Celsius = &w.Celsius
		}
		if w.Attention == "" {
			out.Attention = practical.Leave
		}
	}
	for _, a := range s.After {
		out.After = append(out.After, jsonAfter{a.Step, a.Least, a.Most})
	}
	return out
}

// workPlace is where a step's food waits or, without a wait, where the hands work.
func workPlace(s practical.Step) string {
	switch {
	case s.Wait != nil:
		return string(s.Wait.Place)
	case strings.HasPrefix(s.ID, recipe.OvenStep):
		return string(practical.AtOven)
	}
	for _, k := range s.Uses {
		switch k {
		case practical.Ring:
			return string(practical.AtHob)
		case practical.Microwave:
			return string(practical.AtMicrowave)
		}
	}
	return "bench"
}

// positive is a figure, nil when nothing is said.
func positive(n int) *int {
	if n <= 0 {
		return nil
	}
	return &n
}

func valid(s string) string { return strings.ToValidUTF8(s, "\uFFFD") }
