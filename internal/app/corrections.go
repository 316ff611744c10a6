package app

import (
	"context"
	"encoding/json"
	"fmt"
	"slices"

	"plait.example/internal/practical"
	"plait.example/internal/recipe"
)

// Corrections is what the teacher put right, as it is used for reading.
func (a *App) Corrections(ctx context.Context) (*recipe.Corrections, error) {
	all, err := a.keptCorrections(ctx)
	if err != nil {
		return nil, err
	}
	var sound []recipe.Correction
	for _, one := range all.All() {
		if one, ok := one.Sound(); ok {
			sound = append(sound, one)
		}
	}
	return recipe.NewCorrections(sound), nil
}

// keptCorrections is what is kept, figures that are no good yet among it: a form
// saves itself field by field, and 20 to 12 minutes is on the way to 20 to 25.
func (a *App) keptCorrections(ctx context.Context) (*recipe.Corrections, error) {
	kept, err := a.Store.Kept(ctx, a.Teacher, correctionKind)
	if err != nil {
		return nil, err
	}
	list := make([]recipe.Correction, 0, len(kept))
	for name, document := range kept {
		var one recipe.Correction
		if err := json.Unmarshal([]byte(document), &one); err != nil {
			return nil, fmt.Errorf("correction %q: %w", name, err)
		}
		list = append(list, one)
	}
	return recipe.NewCorrections(list), nil
}

// yourCorrection begins the reason of a step that the teacher has put right.
const yourCorrection = "your correction of "

// Correct is Change for what a teacher puts right in the steps of dishes: edit's
// changes of figures are remembered for the next recipe with the same words, and
// the steps count as sure. act, which may be nil, then does what else belongs to
// the same version, such as moving a step.
func (a *App) Correct(ctx context.Context, id string, version int, label string, edit func(*practical.Practical) practical.Faults, act func(*practical.Practical)) (Record, practical.Faults, error) {
	m, err := a.memory(ctx)
	if err != nil {
		return Record{}, nil, err
	}
	var uncopied error
	rec, faults, err := a.Change(ctx, id, version, label, func(p *practical.Practical) practical.Faults {
		before, err := p.Copy()
		if err != nil {
			uncopied = err
			return nil
		}
		faults := edit(p)
		m.compare(before, p, a.now())
		if act != nil {
			act(p)
		}
		return faults
	})
	if err == nil {
		err = uncopied
	}
	if err == nil {
		err = m.keep(ctx, a)
	}
	return rec, faults, err
}

// TakenBack remembers what an undo or a redo did to steps whose words it left.
func (a *App) TakenBack(ctx context.Context, before, after *practical.Practical) error {
	m, err := a.memory(ctx)
	if err != nil {
		return err
	}
	same, err := after.Copy()
	if err != nil {
		return err
	}
	for i := range same.Dishes {
		d := &same.Dishes[i]
		was := dishOf(before, d.Letter)
		d.Steps = slices.DeleteFunc(d.Steps, func(s practical.Step) bool {
			k := stepIndex(was, s.ID)
			return k < 0 || was.Steps[k].Text != s.Text
		})
	}
	m.compare(before, same, a.now())
	return m.keep(ctx, a)
}

// Forget takes corrections away by the words of their steps.
func (a *App) Forget(ctx context.Context, words ...string) error {
	names := make([]string, len(words))
	for i, w := range words {
		names[i] = recipe.NormalWords(w)
	}
	return a.Store.Keep(ctx, a.Teacher, correctionKind, nil, names, a.now())
}

// Incoming is what a file of corrections would bring, or has brought.
type Incoming struct {
	Added     int // figures that are new
	Conflicts []recipe.Conflict
}

// CompareCorrections says what a file of corrections would bring; nothing is
// kept. The faults of the file are practical.Faults by line.
func (a *App) CompareCorrections(ctx context.Context, name string, data []byte) (Incoming, error) {
	_, in, err := a.merge(ctx, name, data, false)
	return in, err
}

// TakeCorrections adds those of a file to the teacher's own. Where both put the
// same right differently, the teacher's own stands unless preferTheirs.
func (a *App) TakeCorrections(ctx context.Context, name string, data []byte, preferTheirs bool) (Incoming, error) {
	merged, in, err := a.merge(ctx, name, data, preferTheirs)
	if err != nil {
		return in, err
	}
	put := map[string]string{}
	for _, one := range merged.All() {
		document, err := json.Marshal(one)
		if err != nil {
			return in, fmt.Errorf("correction %q: %w", one.Words, err)
		}
		put[recipe.NormalWords(one.Words)] = string(document)
	}
	return in, a.Store.Keep(ctx, a.Teacher, correctionKind, put, nil, a.now())
}

func (a *App) merge(ctx context.Context, name string, data []byte, preferTheirs bool) (*recipe.Corrections, Incoming, error) {
	theirs, faults := recipe.ParseCorrections(name, data)
	if len(faults) > 0 {
		return nil, Incoming{}, faults
	}
	mine, err := a.Corrections(ctx)
	if err != nil {
		return nil, Incoming{}, err
	}
	merged, added, conflicts := recipe.Merge(mine, theirs, preferTheirs)
	return merged, Incoming{added, conflicts}, nil
}
