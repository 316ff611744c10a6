package app

import (
	"context"

	"plait.example/internal/practical"
)

// Where says where a row is moved to.
type Where string

// The moves. Before and After are beside another row.
const (
	Up     Where = "up"   // before the row above
	Down   Where = "down" // after the row below
	Before Where = "before"
	After  Where = "after"
)

// Move moves a row of the plan of version, by its id, and plans again around
// it: the new order is kept as pins, one labelled version, so that undo takes it
// back. beside is the other row's id for Before and After, else ignored. A move
// that the recipe itself forbids is refused with a fault that says why.
func (a *App) Move(ctx context.Context, id string, version int, row string, where Where, beside string, o PlanOptions) (Record, error) {
	return Record{}, nil
}

// Pin holds a row at a time (nil: where the plan has it) and plans again around it.
func (a *App) Pin(ctx context.Context, id string, version int, row string, at *practical.TimeOfDay, o PlanOptions) (Record, error) {
	return Record{}, nil
}

// Unpin lets a row go ("": every row) and plans again.
func (a *App) Unpin(ctx context.Context, id string, version int, row string, o PlanOptions) (Record, error) {
	return Record{}, nil
}
