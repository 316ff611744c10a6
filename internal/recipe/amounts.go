package recipe

import (
	"strings"

	"plait.example/internal/ingredient"
	"plait.example/internal/practical"
)

// Weight is what a line of the list weighs, and how that was found; or why it is not known.
type Weight struct {
	Grams float64 // 0 when not Known
	Known bool
	How   string
}

// Weigh gives the weight of each line of a list. Lists that measure in cups,
// quarts or sticks of butter and nowhere in grams or millilitres are taken for American
// ones, whose pint and spoons are smaller.
func Weigh(list []practical.Ingredient) []Weight {
	lines := make([]ingredient.Line, len(list))
	for i, ing := range list {
		lines[i] = ingredient.Parse(ing.Raw)
	}
	measures := measuresOf(lines)
	out := make([]Weight, len(list))
	for i, l := range lines {
		out[i].Grams, out[i].How, out[i].Known = measures.Weigh(l)
	}
	return out
}

func measuresOf(lines []ingredient.Line) ingredient.Measures {
	american := false
	for _, l := range lines {
		for _, a := range l.Amounts {
			switch ingredient.UnitName(a.Unit) {
			case "gram", "kilogram", "millilitre", "litre":
				return ingredient.British
			case "cup", "quart":
				american = true
			case "stick":
				american = american || strings.Contains(strings.ToLower(l.Name), "butter")
			}
		}
	}
	if american {
		return ingredient.American
	}
	return ingredient.British
}

// Scale gives a list for another number of portions, its lines written anew with
// amounts that a cook can measure: eggs whole, spoons in quarters, a pinch as it
// is. A number of portions that is not above nought changes nothing.
func Scale(list []practical.Ingredient, from, to int) []practical.Ingredient {
	out := make([]practical.Ingredient, len(list))
	for i, ing := range list {
		out[i] = ing
		raw := ingredient.Scale(ingredient.Parse(ing.Raw), float64(from), float64(to)).Raw
		if raw == ing.Raw {
			continue
		}
		if read, ok := readIngredient(readLine(raw, 0, len(raw))); ok {
			read.Component = ing.Component
			out[i] = read
		}
	}
	return out
}
