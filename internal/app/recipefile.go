package app

import (
	"errors"
	"fmt"
	"io/fs"
	"path"
	"path/filepath"
	"slices"
	"strings"

	"plait.example/internal/practical"
	"plait.example/internal/recipe"
)

// recipeFile is a recipe that a practical file named.
type recipeFile struct {
	name  string
	read  recipe.Recipe
	lines bool // it is plain text, so that lines can be counted in it
}

// readRecipe reads the recipe file that a dish names, if it names one. What the
// practical file says of the dish stands above what the recipe says. Faults are
// either in the practical file or in the recipe's.
func (a *App) readRecipe(fsys fs.FS, name string, in *practical.Reading, i int) (file *recipeFile, inThis, inRecipe practical.Faults) {
	dish := &in.Practical.Dishes[i]
	field := fmt.Sprintf("dishes[%d].recipe", i)
	faulty := slices.ContainsFunc(in.Faults, func(f practical.Fault) bool { return f.Field == field })
	if dish.Recipe == "" || faulty {
		return nil, nil, nil
	}
	from := path.Join(path.Dir(name), filepath.ToSlash(dish.Recipe))
	data, err := readIn(fsys, from, MostFile)
	if err != nil {
		f := cannotRead("", err)
		f.Field, f.Message = field, fmt.Sprintf("%q: %s", dish.Recipe, f.Message)
		return nil, practical.Faults{f}, nil
	}
	all, err := a.ReadRecipes(from, data)
	if err != nil {
		var f practical.Fault
		errors.As(err, &f)
		f.File, f.Field, f.Message = "", field, fmt.Sprintf("%q: %s", dish.Recipe, f.Message)
		return nil, practical.Faults{f}, nil
	}
	read, fault := pick(all.Recipes, dish.Name)
	if fault != nil {
		fault.File, fault.Field = from, field
		return nil, nil, practical.Faults{*fault}
	}
	for _, text := range read.Unread {
		a.log().Info("left out of the steps", "file", from, "text", text)
	}
	fill(dish, read, in.Practical.Rules)
	dish.Recipe, dish.Text = "", all.Text
	return &recipeFile{name: from, read: read, lines: all.Text == string(data)}, nil, nil
}

// pick is the recipe that a dish means: the only one, or the one of its name.
func pick(found []recipe.Recipe, name string) (recipe.Recipe, *practical.Fault) {
	var titles []string
	for _, r := range found {
		if len(found) == 1 || strings.EqualFold(strings.TrimSpace(r.Title), strings.TrimSpace(name)) {
			return r, unusable(r)
		}
		titles = append(titles, r.Title)
	}
	return recipe.Recipe{}, &practical.Fault{
		Code: practical.Invalid, Message: fmt.Sprintf("the file holds %d recipes, and none is called %q", len(found), name),
		Hint: "name the dish as one of them: " + strings.Join(titles, ", "),
	}
}

func unusable(r recipe.Recipe) *practical.Fault {
	if len(r.Steps) > 0 {
		return nil
	}
	message := "no method was found in this recipe"
	if len(r.Unread) > 0 {
		message = r.Unread[0]
	}
	return &practical.Fault{Code: practical.Invalid, Line: 1, Message: message, Hint: "write the method in sentences after the ingredients"}
}

// fill takes from the recipe what the practical file left out.
func fill(dish *practical.Dish, r recipe.Recipe, rules practical.Rules) {
	read := dishFrom(r, dish.Letter, rules)
	if dish.Name == "" {
		dish.Name = read.Name
	}
	if dish.Portions == 0 {
		dish.Portions = read.Portions
	}
	if len(dish.Ingredients) == 0 {
		dish.Ingredients = read.Ingredients
	}
	if len(dish.Steps) == 0 {
		dish.Steps = read.Steps
	}
	if dish.Serve == (practical.Serve{Heat: practical.AsIs, Minutes: 5}) || dish.Serve == (practical.Serve{}) {
		dish.Serve = read.Serve
	}
	dish.Allergens = union(dish.Allergens, read.Allergens)
}

// recipeFault puts a fault of a step that came from a recipe file at the line of
// the step's text there.
func recipeFault(f practical.Fault, p *practical.Practical, named map[int]*recipeFile) (practical.Fault, bool) {
	var i, j int
	if n, _ := fmt.Sscanf(f.Field, "dishes[%d].steps[%d]", &i, &j); n < 2 || named[i] == nil {
		return f, false // the dish's own fields stand in the practical file
	}
	dish := p.Dishes[i]
	f.File, f.Line = named[i].name, 0
	if !named[i].lines {
		return f, true
	}
	f.Line = 1
	for _, s := range named[i].read.Sources {
		if dish.Letter+s.Step == dish.Steps[j].ID && s.Start <= len(dish.Text) {
			f.Line = 1 + strings.Count(dish.Text[:s.Start], "\n")
		}
	}
	return f, true
}
