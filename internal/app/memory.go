package app

import (
	"context"
	"encoding/json"
	"fmt"
	"slices"
	"strings"
	"time"

	"plait.example/internal/practical"
	"plait.example/internal/recipe"
)

// memory is what a change of a practical teaches, on top of what is kept.
type memory struct {
	kept     *recipe.Corrections // figures that are no good yet among it
	wordings map[string]string   // the words that were read, by the words the teacher made of them
	put      map[string]string   // corrections to keep
	take     []string            // corrections to forget
	reworded map[string]string   // wordings to keep
	off      bool                // nothing new is remembered
}

func (a *App) memory(ctx context.Context) (*memory, error) {
	kept, err := a.keptCorrections(ctx)
	if err != nil {
		return nil, err
	}
	wordings, err := a.Store.Kept(ctx, a.Teacher, wordingKind)
	if err != nil {
		return nil, err
	}
	remembers, err := a.Remembers(ctx)
	return &memory{kept: kept, wordings: wordings, put: map[string]string{}, reworded: map[string]string{}, off: !remembers}, err
}

// compare finds what was put right between two states of a practical: steps of
// the same name in the same dish. It marks those steps of after as sure, with the
// correction as their first reason.
func (m *memory) compare(before, after *practical.Practical, now time.Time) {
	for i := range after.Dishes {
		d := &after.Dishes[i]
		was := dishOf(before, d.Letter)
		if was == nil {
			continue
		}
		named := map[string]string{}
		for _, s := range was.Steps {
			named[s.ID] = m.asRead(s.Text)
		}
		for j := range d.Steps {
			if k := stepIndex(was, d.Steps[j].ID); k >= 0 {
				m.step(was.Steps[k], &d.Steps[j], d.Name, now, named)
			}
		}
	}
}

// asRead is the words that a step was read from, when the teacher has put it in others since.
func (m *memory) asRead(words string) string {
	if read, known := m.wordings[recipe.NormalWords(words)]; known {
		return read
	}
	return words
}

// step learns from one step as it was and as it is.
func (m *memory) step(was practical.Step, is *practical.Step, dish string, now time.Time, named map[string]string) {
	read := m.asRead(was.Text)
	if key := recipe.NormalWords(is.Text); key != recipe.NormalWords(read) && key != "" && was.Text != is.Text && was.Text != "" {
		m.reworded[key] = read
	}
	was.Text = read
	one, changed := recipe.Learn(was, *is, dish, now, named)
	if !changed {
		return
	}
	left := true
	if old, known := m.kept.For(read); known {
		one, left = old.Then(one)
	}
	is.Doubt = 0
	is.Why = slices.DeleteFunc(slices.Clone(is.Why), func(why string) bool { return strings.HasPrefix(why, yourCorrection) })
	key := recipe.NormalWords(read)
	if !left {
		m.take = append(m.take, key)
		return
	}
	is.Why = append([]string{yourCorrection + one.Day() + ": " + one.Say()}, is.Why...)
	if document, err := json.Marshal(one); err == nil { // strings alone: nothing to fail on
		m.put[key] = string(document)
	}
}

// keep writes down what was learnt.
func (m *memory) keep(ctx context.Context, a *App) error {
	if m.off || len(m.put)+len(m.take)+len(m.reworded) == 0 {
		return nil
	}
	if err := a.Store.Keep(ctx, a.Teacher, correctionKind, m.put, m.take, a.now()); err != nil {
		return fmt.Errorf("remember corrections: %w", err)
	}
	return a.Store.Keep(ctx, a.Teacher, wordingKind, m.reworded, nil, a.now())
}

// remembering is the name of the setting that says whether corrections are remembered.
const remembering = "remember"

// Remembers says whether what is put right from now on is remembered. It is,
// until SetRemembers says otherwise.
func (a *App) Remembers(ctx context.Context) (bool, error) {
	settings, err := a.Store.Kept(ctx, a.Teacher, settingKind)
	return settings[remembering] != "no", err
}

// SetRemembers turns remembering on or off; what is remembered already stays in use.
func (a *App) SetRemembers(ctx context.Context, on bool) error {
	if on {
		return a.Store.Keep(ctx, a.Teacher, settingKind, nil, []string{remembering}, a.now())
	}
	return a.Store.Keep(ctx, a.Teacher, settingKind, map[string]string{remembering: "no"}, nil, a.now())
}
