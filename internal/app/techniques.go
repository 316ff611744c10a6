package app

import (
	"context"
	"reflect"

	"plait.example/internal/recipe"
)

// Techniques is the technique table in use; own says whether it is the teacher's
// rather than the one that comes with the program. A kept table that this
// program cannot read any more is passed over, and the log says so.
func (a *App) Techniques(ctx context.Context) (table *recipe.Table, own bool, err error) {
	kept, err := a.Store.Kept(ctx, a.Teacher, techniqueKind)
	if err != nil {
		return nil, false, err
	}
	written, there := kept[""]
	if !there {
		return recipe.DefaultTable(), false, nil
	}
	table, faults := recipe.ParseTable("techniques.csv", []byte(written))
	if len(faults) > 0 {
		a.log().Error("the kept technique table is not readable; the program's own is used", "faults", faults.Error())
		return recipe.DefaultTable(), false, nil
	}
	return table, true, nil
}

// UseTechniques keeps a table that the teacher has edited and reads with it from
// now on. Its faults are practical.Faults by row and column; nothing is then kept.
func (a *App) UseTechniques(ctx context.Context, name string, data []byte) (*recipe.Table, error) {
	table, faults := recipe.ParseTable(name, data)
	if len(faults) > 0 {
		return nil, faults
	}
	err := a.Store.Keep(ctx, a.Teacher, techniqueKind, map[string]string{"": string(table.Write())}, nil, a.now())
	return table, err
}

// DropTechniques goes back to the table that comes with the program.
func (a *App) DropTechniques(ctx context.Context) error {
	return a.Store.Keep(ctx, a.Teacher, techniqueKind, nil, []string{""}, a.now())
}

// TechniqueChanges is how a table differs from the one that comes with the
// program: techniques in neither order, by id.
type TechniqueChanges struct{ Added, Changed, Gone []string }

// ChangesOf compares a table with the program's own.
func ChangesOf(table *recipe.Table) (c TechniqueChanges) {
	own := recipe.DefaultTable()
	for _, t := range table.Techniques {
		switch was := own.Find(t.ID); {
		case was == nil:
			c.Added = append(c.Added, t.ID)
		case !reflect.DeepEqual(*was, t):
			c.Changed = append(c.Changed, t.ID)
		}
	}
	for _, t := range own.Techniques {
		if table.Find(t.ID) == nil {
			c.Gone = append(c.Gone, t.ID)
		}
	}
	return c
}

// TechniqueColumns tells of the columns of the table's file.
func TechniqueColumns() []TechniqueColumn { return recipe.Columns() }
