package timeplan

import (
	"time"

	"plait.example/internal/practical"
)

// Record is a kept practical at its current version, with the plan of that version.
type Record struct {
	ID        string
	Version   int // from 1, unique in the practical; undo goes back to an older number
	Label     string
	Saved     time.Time // when this version was kept
	Practical *practical.Practical
	Plan      *Plan // of exactly this version; nil: none, or of another version
	PlanStale bool  // a plan exists, of an earlier version only
	CanUndo   bool
	CanRedo   bool
	UndoLabel string // the change that undo takes back
	RedoLabel string // the change that redo brings again
	Deleted   bool   // it can be restored
}

// Summary is a kept practical as a list shows it.
type Summary struct {
	ID      string
	Title   string
	Date    string // YYYY-MM-DD or empty
	Dishes  int
	Version int
	Saved   time.Time
	Planned bool // the current version has a plan
	Deleted bool
}

// Fits says whether the plan is one that can be cooked inside the time.
func (p *Plan) Fits() bool { return p.Status != Infeasible && p.Over == 0 }
