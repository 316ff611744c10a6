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

// AtServing stands in place of a step's id for what the serving uses.
const AtServing = recipe.AtServing

// SkillGroups names the twelve skill groups in their order.
func SkillGroups() [12]string { return recipe.Groups }

// The types of what the pages show, for rooms that do not read recipes themselves.
type (
	Recipe          = recipe.Recipe
	TechniqueColumn = recipe.Column
	SkillPicture    = recipe.SkillPicture
	Technique       = recipe.Technique
	Conflict        = recipe.Conflict
	Raise           = recipe.Raise
	Correction      = recipe.Correction
	Uses            = recipe.Uses
)
