package app

import (
	"context"
	"encoding/json"
	"fmt"

	"plait.example/internal/practical"
)

// NewPractical makes a practical from a starting point's id ("" is the first)
// and keeps it. An unknown id is NotFound.
func (a *App) NewPractical(ctx context.Context, startingPoint string) (Record, error) {
	for _, s := range practical.StartingPoints() {
		if s.ID == startingPoint || startingPoint == "" {
			return a.Store.Create(ctx, s.New(), "new practical: "+s.Name, a.now())
		}
	}
	return Record{}, practical.Fault{
		Code: practical.NotFound, Field: "starting-point",
		Message: fmt.Sprintf("there is no starting point %q", startingPoint), Hint: "choose one from the list",
	}
}

// Practicals lists what is kept, the last changed first; deleted ones are marked.
func (a *App) Practicals(ctx context.Context) ([]Summary, error) { return a.Store.List(ctx) }

// Open is a practical at its current version, with the plan of that version.
func (a *App) Open(ctx context.Context, id string) (Record, error) { return a.Store.Load(ctx, id) }

// Change edits a practical and keeps the result as one labelled version after
// version. What the edit did is kept even when it leaves faults, its own (values
// that could not be read at all, which come back as the second result) or those
// that Validate finds. An edit that changes nothing makes no version. When
// somebody else has changed the practical since version, nothing is kept: the
// error's code is Conflict and the record is the current one.
func (a *App) Change(ctx context.Context, id string, version int, label string, edit func(*practical.Practical) practical.Faults) (Record, practical.Faults, error) {
	now, err := a.Store.Load(ctx, id)
	if err != nil {
		return Record{}, nil, err
	}
	if now.Version != version {
		return now, nil, conflict(now)
	}
	edited, err := now.Practical.Copy()
	if err != nil {
		return now, nil, err
	}
	faults := edit(edited)
	same, err := equal(now.Practical, edited)
	if err != nil || same {
		return now, faults, err
	}
	kept, err := a.Store.Save(ctx, id, version, edited, label, a.now())
	if err != nil {
		if current, reload := a.Store.Load(ctx, id); reload == nil {
			now = current // somebody was quicker, between the two
		}
		return now, faults, err
	}
	a.log().Info("changed", "practical", id, "version", kept.Version, "label", label)
	return kept, faults, nil
}

// Undo takes back the change that made version, which must be current.
func (a *App) Undo(ctx context.Context, id string, version int) (Record, error) {
	return a.Store.Travel(ctx, id, version, -1)
}

// Redo brings again the change last taken back from version, which must be current.
func (a *App) Redo(ctx context.Context, id string, version int) (Record, error) {
	return a.Store.Travel(ctx, id, version, +1)
}

// Delete takes a practical off the list; Restore brings it back with all its versions.
func (a *App) Delete(ctx context.Context, id string) error { return a.Store.Delete(ctx, id, true) }

// Restore brings back a deleted practical.
func (a *App) Restore(ctx context.Context, id string) (Record, error) {
	if err := a.Store.Delete(ctx, id, false); err != nil {
		return Record{}, err
	}
	return a.Store.Load(ctx, id)
}

func conflict(now Record) practical.Fault {
	return practical.Fault{
		Code:    practical.Conflict,
		Message: fmt.Sprintf("the practical was changed in the meantime (%q, at %s)", now.Label, now.Saved.Format("15:04")),
		Hint:    "look at it as it is now, then make your change again",
	}
}

func equal(a, b *practical.Practical) (bool, error) {
	x, err := json.Marshal(a)
	if err != nil {
		return false, fmt.Errorf("compare practicals: %w", err)
	}
	y, err := json.Marshal(b)
	if err != nil {
		return false, fmt.Errorf("compare practicals: %w", err)
	}
	return string(x) == string(y), nil
}
