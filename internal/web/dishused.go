package web

import (
	"plait.example/internal/app"
	"plait.example/internal/practical"
)

// Line is an ingredient line, checked off by the steps that use it.
type Line struct {
	Raw   string
	Steps []Used // empty: no step uses it
}

// Used is a step that uses an ingredient; no link: the serving.
type Used struct{ ID, Link string }

// NotListed is a food that steps use and the list does not have.
type NotListed struct {
	Food  string
	Steps []Used
}

// checkOff checks the ingredients of the dish off against its steps.
func (page *DishPage) checkOff(d practical.Dish) {
	uses := app.IngredientsUsed(d)
	for i, in := range d.Ingredients {
		raw := in.Raw
		if raw == "" {
			raw = in.Name
		}
		page.Ingredients = append(page.Ingredients, Line{raw, page.used(uses.By[i])})
		if len(uses.By[i]) == 0 {
			page.NotUsed++
		}
	}
	for _, u := range uses.Unlisted {
		page.Unlisted = append(page.Unlisted, NotListed{u.Food, page.used(u.Steps)})
	}
}

func (page *DishPage) used(steps []string) []Used {
	list := make([]Used, len(steps))
	for i, id := range steps {
		list[i] = Used{ID: id}
		if id != app.AtServing {
			list[i].Link = stepLink(page.Action, id)
		}
	}
	return list
}
