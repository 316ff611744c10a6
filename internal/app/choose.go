package app

import (
	"context"
	"strings"

	"plait.example/internal/practical"
)

// MostText is the longest text of recipes that is read, in bytes.
const MostText = mostText

// AddChosen adds the dishes of some of a file's recipes, each given by its own
// text, as one change. It is AddDish for several texts.
func (a *App) AddChosen(ctx context.Context, id string, version int, name string, texts []string) (Record, practical.Faults, error) {
	if err := tooLong(strings.Join(texts, "")); err != nil {
		return Record{}, nil, err
	}
	reader, err := a.Reader(ctx)
	if err != nil {
		return Record{}, nil, err
	}
	return a.Change(ctx, id, version, "add recipes of "+name, func(p *practical.Practical) (faults practical.Faults) {
		for _, text := range texts {
			faults = append(faults, addDishes(p, Recipes{Text: text, Recipes: reader.Read(text)})...)
		}
		return faults
	})
}
