package app

import (
	"context"
	"fmt"
	"slices"

	"plait.example/internal/practical"
	"plait.example/internal/timeplan"
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
// that the recipe itself forbids is refused with a fault that says why. When the
// planning fails, the move is kept and comes back in the record beside the error.
func (a *App) Move(ctx context.Context, id string, version int, row string, where Where, beside string, o PlanOptions) (Record, error) {
	r, err := a.planned(ctx, id, version)
	if err != nil {
		return r, err
	}
	m, err := newMove(r, row, where, beside)
	if err != nil {
		return r, err
	}
	return a.replan(ctx, r, fmt.Sprintf("move %q %s", short(m.moved.Text), m.words()), m.pin, o)
}

// Pin holds a row at a time (nil: where the plan has it) and plans again around it.
func (a *App) Pin(ctx context.Context, id string, version int, row string, at *practical.TimeOfDay, o PlanOptions) (Record, error) {
	r, err := a.planned(ctx, id, version)
	if err != nil {
		return r, err
	}
	i := slices.IndexFunc(r.Plan.Rows, func(x timeplan.Row) bool { return x.ID == row })
	if i < 0 {
		return r, noRow(row)
	}
	if !canMove(r.Practical)(r.Plan.Rows[i]) {
		return r, held(r.Plan.Rows[i])
	}
	if at == nil {
		at = &r.Plan.Rows[i].At
	}
	if from, until := r.Practical.SetUpFrom(), r.Practical.Allowed(); *at < from || *at > until {
		return r, practical.Fault{
			Code: practical.Invalid, Field: "at", Message: fmt.Sprintf("%s is outside the practical", at.Write(r.Plan.Hours)),
			Hint: fmt.Sprintf("%s to %s", from.Write(r.Plan.Hours), until.Write(r.Plan.Hours)),
		}
	}
	label := fmt.Sprintf("hold %q at %s", short(r.Plan.Rows[i].Text), at.Write(r.Plan.Hours))
	return a.replan(ctx, r, label, func(p *practical.Practical) {
		p.Pins = slices.DeleteFunc(p.Pins, func(x practical.Pin) bool { return x.Row == row && x.At != nil })
		p.Pins = append(p.Pins, practical.Pin{Row: row, At: at})
	}, o)
}

// Unpin lets a row go, with what was put before or after it ("": every row),
// and plans again.
func (a *App) Unpin(ctx context.Context, id string, version int, row string, o PlanOptions) (Record, error) {
	r, err := a.Store.Load(ctx, id)
	if err != nil {
		return Record{}, err
	}
	if r.Version != version {
		return r, conflict(r)
	}
	label := "let " + row + " go"
	if row == "" {
		label = "let every row go"
	}
	return a.replan(ctx, r, label, func(p *practical.Practical) {
		p.Pins = slices.DeleteFunc(p.Pins, func(x practical.Pin) bool { return row == "" || x.Row == row || x.After == row })
	}, o)
}

// planned is the current record, which must be version and have its plan.
func (a *App) planned(ctx context.Context, id string, version int) (Record, error) {
	r, err := a.Store.Load(ctx, id)
	if err != nil {
		return Record{}, err
	}
	if r.Version != version {
		return r, conflict(r)
	}
	if r.Plan == nil {
		return r, practical.Fault{Code: practical.Invalid, Message: "there is no plan of this practical as it is now", Hint: "make the plan, then move its rows"}
	}
	return r, nil
}

// replan makes a change and plans again around it, from the plan that stood.
func (a *App) replan(ctx context.Context, r Record, label string, edit func(*practical.Practical), o PlanOptions) (Record, error) {
	edited, _, err := a.Change(ctx, r.ID, r.Version, label, func(p *practical.Practical) practical.Faults {
		edit(p)
		return nil
	})
	if err != nil {
		return edited, err
	}
	if o.Before == nil {
		o.Before = r.Plan
	}
	return a.planRecord(ctx, edited, o)
}

// dropPins takes away the pins that name steps which are no longer there.
func dropPins(p *practical.Practical) {
	there := map[string]bool{}
	for _, d := range p.Dishes {
		there[d.Letter] = true
		for _, s := range d.Steps {
			there[s.ID] = true
		}
	}
	gone := func(row string) bool { return row != "" && !isWashUp(row) && !there[stepOf(row)] }
	p.Pins = slices.DeleteFunc(p.Pins, func(x practical.Pin) bool { return gone(x.Row) || gone(x.After) })
}

func noRow(row string) practical.Fault {
	return practical.Fault{Code: practical.NotFound, Field: "row", Message: fmt.Sprintf("the plan has no row %q", row), Hint: "choose a row of the plan as it is now"}
}

func held(r timeplan.Row) practical.Fault {
	return practical.Fault{
		Code: practical.Invalid, Field: "row", Message: fmt.Sprintf("%q cannot be moved or held by itself", short(r.Text)),
		Hint: "move the row that it is there for; it will follow",
	}
}

// short is a row's text cut for a label.
func short(text string) string {
	const most = 40
	if letters := []rune(text); len(letters) > most {
		return string(letters[:most-1]) + "…"
	}
	return text
}
