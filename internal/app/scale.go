package app

import (
	"context"
	"fmt"
	"slices"

	"plait.example/internal/practical"
	"plait.example/internal/recipe"
)

// Weight is what an ingredient weighs in grams, and how that was found.
type Weight = recipe.Weight

// Weights gives the weight of each line of a dish's list, in the order of the list.
func Weights(list []practical.Ingredient) []Weight { return recipe.Weigh(list) }

// mostPortions is the greatest number of portions that a dish is scaled to.
const mostPortions = 500

// ScaleDish writes a dish's list anew for another number of portions. The words
// of its steps, and their minutes, stay as they are. A dish whose portions are
// not said, or a number outside 1 to 500, is a practical.Fault, and nothing is changed.
func (a *App) ScaleDish(ctx context.Context, id string, version int, letter string, portions int) (Record, practical.Faults, error) {
	r, err := a.Store.Load(ctx, id)
	if err != nil {
		return Record{}, nil, err
	}
	dish := func(p *practical.Practical) int {
		return slices.IndexFunc(p.Dishes, func(d practical.Dish) bool { return d.Letter == letter })
	}
	i := dish(r.Practical)
	switch {
	case i < 0:
		return r, nil, noDish(letter)
	case portions < 1 || portions > mostPortions:
		return r, nil, practical.Fault{
			Code: practical.Invalid, Field: fmt.Sprintf("dishes[%d].portions", i), Message: fmt.Sprintf("%d portions cannot be made", portions),
			Hint: fmt.Sprintf("give a number from 1 to %d", mostPortions),
		}
	case r.Practical.Dishes[i].Portions < 1:
		return r, nil, practical.Fault{
			Code: practical.Invalid, Field: fmt.Sprintf("dishes[%d].portions", i), Message: "the recipe does not say how many portions it makes",
			Hint: "put in how many portions the list is for, then scale it",
		}
	}
	label := fmt.Sprintf("scale dish %s to %d portions", letter, portions)
	return a.Change(ctx, id, version, label, func(p *practical.Practical) practical.Faults {
		if i := dish(p); i >= 0 {
			d := &p.Dishes[i]
			d.Ingredients = recipe.Scale(d.Ingredients, d.Portions, portions)
			d.Portions = portions
		}
		return nil
	})
}
