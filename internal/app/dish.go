package app

import (
	"context"
	"fmt"
	"slices"
	"strings"

	"plait.example/internal/practical"
	"plait.example/internal/recipe"
)

// mostText is the longest text of recipes that is read, in bytes: some forty
// thousand lines, well above any menu.
const mostText = 1 << 20

// AddDish adds the dishes of a pasted text (one for each recipe found in it),
// each with the text kept whole; an empty text adds an empty dish. Letters are
// the first free ones. A text in which no recipe was found still becomes a dish,
// without steps, so that nothing pasted is lost; what was not understood comes
// back as faults beside it.
func (a *App) AddDish(ctx context.Context, id string, version int, text string) (Record, practical.Faults, error) {
	if err := tooLong(text); err != nil {
		return Record{}, nil, err
	}
	reader, err := a.Reader(ctx)
	if err != nil {
		return Record{}, nil, err
	}
	label := "add a dish"
	if strings.TrimSpace(text) != "" {
		label = "add a pasted recipe"
	}
	return a.Change(ctx, id, version, label, func(p *practical.Practical) practical.Faults {
		if strings.TrimSpace(text) == "" {
			p.Dishes = append(p.Dishes, practical.Dish{Letter: freeLetter(p.Dishes), Serve: practical.Serve{Heat: practical.AsIs, Minutes: 5}})
			return nil
		}
		return addDishes(p, Recipes{Text: text, Recipes: reader.Read(text)})
	})
}

// ReadDish reads a dish again from a changed text: its ingredients and steps
// are replaced, its letter, name and the way it is served stay.
func (a *App) ReadDish(ctx context.Context, id string, version int, letter, text string) (Record, practical.Faults, error) {
	if err := tooLong(text); err != nil {
		return Record{}, nil, err
	}
	r, err := a.Store.Load(ctx, id)
	if err != nil {
		return Record{}, nil, err
	}
	if !slices.ContainsFunc(r.Practical.Dishes, func(d practical.Dish) bool { return d.Letter == letter }) {
		return r, nil, noDish(letter)
	}
	reader, err := a.Reader(ctx)
	if err != nil {
		return r, nil, err
	}
	return a.Change(ctx, id, version, "read dish "+letter+" again", func(p *practical.Practical) practical.Faults {
		i := slices.IndexFunc(p.Dishes, func(d practical.Dish) bool { return d.Letter == letter })
		if i < 0 {
			return nil // another change has taken it away; Change tells of that
		}
		read := reader.Read(text)[0]
		fresh := dishFrom(read, letter, p.Rules)
		old := &p.Dishes[i]
		old.Text, old.Ingredients, old.Steps = text, fresh.Ingredients, fresh.Steps
		old.Allergens = union(old.Allergens, fresh.Allergens)
		dropPins(p)
		return unread(fmt.Sprintf("dishes[%d].text", i), read)
	})
}

func noDish(letter string) practical.Fault {
	return practical.Fault{Code: practical.NotFound, Field: "letter", Message: fmt.Sprintf("there is no dish %q", letter), Hint: "choose one of the dishes"}
}

func addDishes(p *practical.Practical, all Recipes) practical.Faults {
	var faults practical.Faults
	for i, read := range all.Recipes {
		d := dishFrom(read, freeLetter(p.Dishes), p.Rules)
		if i == 0 {
			d.Text = all.Text // kept once, whole
		}
		faults = append(faults, unread(fmt.Sprintf("dishes[%d].text", len(p.Dishes)), read)...)
		p.Dishes = append(p.Dishes, d)
	}
	return faults
}

// dishFrom is a recipe as a dish of a practical with these rules.
func dishFrom(r recipe.Recipe, letter string, rules practical.Rules) practical.Dish {
	d := r.Dish(letter)
	rules.OutOfSetUp(&d)
	return d
}

// unread is what the reader did not understand, as faults beside the text.
func unread(field string, r recipe.Recipe) practical.Faults {
	var faults practical.Faults
	for _, u := range r.Unread {
		faults = append(faults, practical.Fault{
			Code: practical.Invalid, Field: field, Message: u, Hint: "look at the steps that were read, and put right what is missing",
		})
	}
	return faults
}

// freeLetter is the first letter of A to Z that no dish has; empty when all are taken.
func freeLetter(dishes []practical.Dish) string {
	for l := 'A'; l <= 'Z'; l++ {
		if !slices.ContainsFunc(dishes, func(d practical.Dish) bool { return d.Letter == string(l) }) {
			return string(l)
		}
	}
	return ""
}

func union(a, b []string) []string {
	for _, one := range b {
		if !slices.Contains(a, one) {
			a = append(a, one)
		}
	}
	return a
}

func tooLong(text string) error {
	if len(text) <= mostText {
		return nil
	}
	return practical.Fault{
		Code: practical.TooLarge, Field: "text", Message: fmt.Sprintf("the text is longer than %d bytes; nothing of it was read", mostText),
		Hint: "paste the recipes one at a time",
	}
}
