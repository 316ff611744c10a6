package web

import (
	"fmt"
	"net/http"
	"net/url"
	"slices"
	"strconv"
	"strings"

	"plait.example/internal/app"
	"plait.example/internal/practical"
)

// ChoosePage is the recipes of a file, to be ticked.
type ChoosePage struct {
	Base
	File, Fault string
	Recipes     []FoundRecipe
}

// FoundRecipe is a recipe in a file.
type FoundRecipe struct {
	Title, Text        string
	Ingredients, Steps int
	Taken              bool
}

// readFile reads a file of recipes: one recipe becomes a dish at once, of several
// the user chooses, and a text without a recipe goes into the box to be mended.
func (s *Server) readFile(w http.ResponseWriter, r *http.Request) error {
	rec, err := s.app.Open(r.Context(), r.PathValue("id"))
	if err != nil {
		return err
	}
	name, data, err := sent(r)
	var read app.Recipes
	if err == nil {
		read, err = s.app.ReadOwn(r.Context(), name, data)
	}
	var fault practical.Fault
	if asFault(err, &fault) {
		return s.fileAgain(w, r, rec, "", fault)
	}
	if err != nil {
		return err
	}
	with := full(read.Recipes)
	switch len(with) {
	case 0:
		return s.fileAgain(w, r, rec, read.Text, practical.Fault{Message: "no recipe was found in " + name, Hint: "its text stands in the box above: put it right there, or paste the recipe itself"})
	case 1:
		add := func() (app.Record, practical.Faults, error) {
			return s.app.AddFile(r.Context(), rec.ID, rec.Version, name, data)
		}
		if len(read.Recipes) > 1 { // the others in it hold nothing
			add = func() (app.Record, practical.Faults, error) {
				return s.app.AddChosen(r.Context(), rec.ID, rec.Version, name, []string{with[0].Text})
			}
		}
		rec, faults, err := add()
		if asFault(err, &fault) && fault.Code != practical.Conflict {
			return s.fileAgain(w, r, rec, "", fault)
		}
		return s.added(w, r, rec, faults, err, read.Text)
	}
	return s.choose(w, r, rec, name, with)
}

// choose shows the recipes of a file or of a pasted text to be ticked.
func (s *Server) choose(w http.ResponseWriter, r *http.Request, rec app.Record, name string, found []app.Recipe) error {
	page := ChoosePage{Base: s.base(r, rec, "Dishes", nil), File: name}
	for _, one := range found {
		page.Recipes = append(page.Recipes, FoundRecipe{titleOf(one.Title), one.Text, len(one.Ingredients), len(one.Dish("A").Steps), false})
	}
	page.Title, page.Said = "Choose recipes", fmt.Sprintf("%s holds %d recipes", capital(name), len(found))
	return s.render(w, http.StatusOK, "choose", page)
}

// pastedText is what a pasted text is called where a file has its name.
const pastedText = "the pasted text"

// full is the recipes that hold something.
func full(all []app.Recipe) []app.Recipe {
	return slices.DeleteFunc(slices.Clone(all), func(one app.Recipe) bool { return len(one.Steps) == 0 && len(one.Ingredients) == 0 })
}

func titleOf(title string) string {
	if title == "" {
		return "Recipe without a title"
	}
	return title
}

// chosen adds the recipes that were ticked. The page carries their texts, so that
// nothing of the file is kept meanwhile.
func (s *Server) chosen(w http.ResponseWriter, r *http.Request) error {
	texts := r.PostForm["text"]
	var taken []string
	for _, n := range r.PostForm["take"] {
		if i, err := strconv.Atoi(n); err == nil && i >= 0 && i < len(texts) {
			taken = append(taken, strings.ReplaceAll(texts[i], "\r\n", "\n"))
		}
	}
	rec, err := s.app.Open(r.Context(), r.PathValue("id"))
	if err != nil {
		return err
	}
	name := r.PostFormValue("file")
	if len(taken) == 0 {
		page := ChoosePage{Base: s.base(r, rec, "Dishes", nil), File: name, Fault: "No recipe is ticked; tick one or more, or add none."}
		for _, text := range texts {
			title, _, _ := strings.Cut(strings.TrimLeft(text, "# \n"), "\n")
			page.Recipes = append(page.Recipes, FoundRecipe{Title: titleOf(strings.TrimSpace(title)), Text: text, Ingredients: 0, Steps: 0})
		}
		page.recount(s.app, r)
		page.Title, page.Said = "Choose recipes", page.Fault
		return s.render(w, http.StatusUnprocessableEntity, "choose", page)
	}
	rec, faults, err := s.app.AddChosen(r.Context(), rec.ID, rec.Version, name, taken)
	if err != nil || len(taken) == 1 {
		return s.added(w, r, rec, faults, err, strings.Join(taken, "\n"))
	}
	edited{rec: rec}.home(w, r, "/practical/"+rec.ID+"/dishes", nil)
	return nil
}

// recount reads the texts of a page again, for how much is in each.
func (page *ChoosePage) recount(a *app.App, r *http.Request) {
	for i := range page.Recipes {
		read, err := a.ReadOwn(r.Context(), "recipe.txt", []byte(page.Recipes[i].Text))
		if err == nil && len(read.Recipes) > 0 {
			page.Recipes[i].Ingredients, page.Recipes[i].Steps = len(read.Recipes[0].Ingredients), len(read.Recipes[0].Dish("A").Steps)
		}
	}
}

// fileAgain shows the dishes with what was wrong with a file, and its text in the box.
func (s *Server) fileAgain(w http.ResponseWriter, r *http.Request, rec app.Record, text string, fault practical.Fault) error {
	page := s.dishesPage(r, rec)
	page.Text, page.FileFaults = text, practical.Faults{fault}
	page.Said = "Not added. " + sentence(fault.Message)
	return s.render(w, http.StatusUnprocessableEntity, "dishes", page)
}

// added goes to the dish that was added last; what was left out is told there.
func (s *Server) added(w http.ResponseWriter, r *http.Request, rec app.Record, faults practical.Faults, err error, text string) error {
	if err != nil {
		return s.settle(w, r, rec, err)
	}
	to := "/practical/" + rec.ID + "/dishes"
	if n := len(rec.Practical.Dishes); n > 0 {
		to += "/" + url.PathEscape(rec.Practical.Dishes[n-1].Letter)
	}
	query := url.Values{}
	for _, one := range faults {
		query.Add("note", leftOut(one.Message, text))
	}
	edited{rec: rec}.home(w, r, to, query)
	return nil
}
