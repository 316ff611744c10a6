package app

import (
	"context"
	"time"

	"plait.example/internal/recipe"
)

// Memory keeps what a teacher keeps beside practicals: documents of a kind, by
// name. A method is one transaction.
type Memory interface {
	// Kept is every document of a kind, by name.
	Kept(ctx context.Context, teacher, kind string) (map[string]string, error)
	// Keep puts documents in place of those of the same names and takes others away.
	Keep(ctx context.Context, teacher, kind string, put map[string]string, take []string, at time.Time) error
}

// The kinds of document.
const (
	correctionKind = "correction" // by the words of the step
	techniqueKind  = "techniques" // one, under the empty name
	wordingKind    = "wording"    // the words a step was read from, by those the teacher gave it
	settingKind    = "setting"    // by its name
)

// Reader reads recipes as the teacher would have them read: with the technique
// table and the corrections that are kept. Without a store it is the program's own.
func (a *App) Reader(ctx context.Context) (recipe.Reader, error) {
	if a.Store == nil {
		return recipe.Reader{}, nil
	}
	table, own, err := a.Techniques(ctx)
	if err != nil {
		return recipe.Reader{}, err
	}
	corrections, err := a.Corrections(ctx)
	if err != nil {
		return recipe.Reader{}, err
	}
	if !own {
		table = nil
	}
	return recipe.Reader{Techniques: table, Corrections: corrections}, nil
}

// ReadOwn is ReadRecipes with the teacher's technique table and corrections.
func (a *App) ReadOwn(ctx context.Context, name string, data []byte) (Recipes, error) {
	document, err := document(name, data)
	if err != nil {
		return Recipes{}, err
	}
	reader, err := a.Reader(ctx)
	if err != nil {
		return Recipes{}, err
	}
	return reader.ReadDocument(document), nil
}
