package app

import "context"

// AddDish adds the dishes of a pasted text (one for each recipe found in it),
// each with the text kept whole; an empty text adds an empty dish. Letters are
// the first free ones.
func (a *App) AddDish(ctx context.Context, id string, version int, text string) (Record, error) {
	return Record{}, nil
}

// ReadDish reads a dish again from a changed text: its ingredients and steps
// are replaced, its letter and the way it is served stay.
func (a *App) ReadDish(ctx context.Context, id string, version int, letter, text string) (Record, error) {
	return Record{}, nil
}
