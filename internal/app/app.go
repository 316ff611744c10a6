// Package app holds the verbs: what a teacher or a learner does with a
// practical, as short functions that the command line and the web both call.
// It owns the order in which the other rooms are asked, and the interface of
// the store. It must not know SQL, HTML or the search.
package app

import (
	"context"
	"log/slog"
	"time"

	"plait.example/internal/practical"
	"plait.example/internal/timeplan"
)

// App is the application: a store, a clock and a log. The zero Log is silent;
// the zero Now is the wall clock. A nil Store serves the verbs that keep
// nothing (ReadFile, PlanPractical, Paper, Schema).
type App struct {
	Store   Store
	Teacher string // whose corrections and techniques; one installation has one teacher, ""
	Now     func() time.Time
	Log     *slog.Logger

	gate   gate
	checks keptChecks
}

// Record is a kept practical at its current version, with its plan.
type Record = timeplan.Record

// Summary is a kept practical as a list shows it.
type Summary = timeplan.Summary

// Store keeps practicals, classes and what a teacher keeps beside them. A method is one transaction and durable
// when it returns nil. Its errors are practical.Fault with code NotFound or
// Conflict; anything else is our own fault.
type Store interface {
	Memory
	Handing

	// Create keeps a new practical as version 1.
	Create(ctx context.Context, p *practical.Practical, label string, at time.Time) (Record, error)
	// List names every practical, the last changed first, deleted ones too.
	List(ctx context.Context) ([]Summary, error)
	// Load is a practical at its current version.
	Load(ctx context.Context, id string) (Record, error)
	// Save keeps p as a new version after version, which must be the current one (else Conflict).
	Save(ctx context.Context, id string, version int, p *practical.Practical, label string, at time.Time) (Record, error)
	// Travel makes the version before (-1) or after (+1) the given one current;
	// version must be the current one (else Conflict).
	Travel(ctx context.Context, id string, version, by int) (Record, error)
	// Delete marks a practical as deleted, or restores it.
	Delete(ctx context.Context, id string, deleted bool) error
	// SavePlan keeps the plan of a version, in place of an older plan of that version.
	SavePlan(ctx context.Context, id string, version int, plan *timeplan.Plan) error
	// LastPlan is the plan kept of the newest version that has one; nil where none has.
	LastPlan(ctx context.Context, id string) (*timeplan.Plan, error)
	// Classes is every class with its candidates, by name.
	Classes(ctx context.Context) ([]practical.Class, error)
	// SaveClass keeps a class: a new one when its ID is empty, else in place of the old.
	SaveClass(ctx context.Context, c practical.Class) (practical.Class, error)
}

func (a *App) now() time.Time {
	if a.Now == nil {
		return time.Now()
	}
	return a.Now()
}

func (a *App) log() *slog.Logger {
	if a.Log == nil {
		return slog.New(slog.DiscardHandler)
	}
	return a.Log
}
