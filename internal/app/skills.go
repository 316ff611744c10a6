package app

import (
	"context"

	"plait.example/internal/practical"
	"plait.example/internal/recipe"
)

// Skills is the skill picture of a practical's dishes by the teacher's technique table.
func (a *App) Skills(ctx context.Context, p *practical.Practical) (recipe.SkillPicture, error) {
	reader, err := a.Reader(ctx)
	if err != nil {
		return recipe.SkillPicture{}, err
	}
	return reader.Skills(p.Dishes), nil
}

// IngredientsUsed checks a dish's ingredients off against its steps.
func IngredientsUsed(d practical.Dish) recipe.Uses { return recipe.IngredientsUsed(d) }

// The types of what the pages show, for rooms that do not read recipes themselves.
type (
	SkillPicture = recipe.SkillPicture
	Technique    = recipe.Technique
	Correction   = recipe.Correction
	Uses         = recipe.Uses
)
