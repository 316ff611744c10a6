package app

import (
	"context"
	_ "embed"
	"io/fs"

	"plait.example/internal/practical"
)

// demoClass is the class of an invented school; the names are invented too.
//
//go:embed demo/class.txt
var demoClass string

// Demo fills an empty store with an invented class and the practical of a file,
// and makes its plan.
func (a *App) Demo(ctx context.Context, fsys fs.FS, name string, o PlanOptions) (Record, error) {
	candidates, faults := ReadCandidates(demoClass)
	if len(faults) > 0 {
		return Record{}, faults
	}
	if _, err := a.SaveClass(ctx, practical.Class{Name: "11C, Brackenford School", Candidates: candidates}); err != nil {
		return Record{}, err
	}
	p, err := a.ReadFS(fsys, name)
	if err != nil {
		return Record{}, err
	}
	r, err := a.Store.Create(ctx, p, "the demonstration", a.now())
	if err != nil {
		return Record{}, err
	}
	return a.Plan(ctx, r.ID, o)
}
