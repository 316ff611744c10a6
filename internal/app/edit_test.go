package app_test

import (
	"errors"
	"strings"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"

	"plait.example/internal/app"
	"plait.example/internal/practical"
	"plait.example/internal/store"
)

// mustApp is the application on a store of its own and a clock that stands.
func mustApp(t *testing.T) *app.App {
	t.Helper()
	s, err := store.Open(t.Context(), t.TempDir())
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() {
		if err := s.Close(); err != nil {
			t.Error(err)
		}
	})
	return &app.App{Store: s, Now: func() time.Time { return time.Date(2026, 11, 25, 9, 30, 0, 0, time.UTC) }}
}

func mustNew(t *testing.T, a *app.App) app.Record {
	t.Helper()
	r, err := a.NewPractical(t.Context(), "two-in-two")
	if err != nil {
		t.Fatal(err)
	}
	return r
}

func titled(title string) func(*practical.Practical) practical.Faults {
	return func(p *practical.Practical) practical.Faults {
		p.Title = title
		return nil
	}
}

func wantCode(t *testing.T, err error, code practical.Code) {
	t.Helper()
	var f practical.Fault
	if !errors.As(err, &f) || f.Code != code || f.Hint == "" {
		t.Errorf("got error %v, want a fault with code %s and a hint", err, code)
	}
}

func TestNewPractical(t *testing.T) {
	a := mustApp(t)
	for _, s := range practical.StartingPoints() {
		r, err := a.NewPractical(t.Context(), s.ID)
		if err != nil {
			t.Fatal(err)
		}
		if diff := cmp.Diff(s.New(), r.Practical); diff != "" || r.Version != 1 || r.CanUndo {
			t.Errorf("%s: %+v (-want +got):\n%s", s.ID, r, diff)
		}
	}
	_, err := a.NewPractical(t.Context(), "seven-in-one")
	wantCode(t, err, practical.NotFound)
}

func TestChangeKeepsWhatBreaksRules(t *testing.T) {
	a := mustApp(t)
	r := mustNew(t, a)
	unreadable := practical.Faults{{Field: "clock.start", Message: `"noonish" is not a time of day`}}
	kept, faults, err := a.Change(t.Context(), r.ID, r.Version, "finish", func(p *practical.Practical) practical.Faults {
		p.Clock.Finish = p.Clock.Start - 60
		return unreadable
	})
	if err != nil {
		t.Fatal(err)
	}
	if diff := cmp.Diff(unreadable, faults); diff != "" {
		t.Errorf("faults of the edit (-want +got):\n%s", diff)
	}
	again, err := a.Open(t.Context(), r.ID)
	if err != nil {
		t.Fatal(err)
	}
	if kept.Version != 2 || again.Practical.Clock.Finish != r.Practical.Clock.Start-60 || len(again.Practical.Validate()) == 0 {
		t.Errorf("kept %+v; want version 2 with its faulty finish", again)
	}
}

func TestChangeOfNothingMakesNoVersion(t *testing.T) {
	a := mustApp(t)
	r := mustNew(t, a)
	same, _, err := a.Change(t.Context(), r.ID, r.Version, "nothing", titled(r.Practical.Title))
	if err != nil || same.Version != r.Version {
		t.Errorf("got version %d, %v, want %d", same.Version, err, r.Version)
	}
}

func TestChangeConflict(t *testing.T) {
	a := mustApp(t)
	r := mustNew(t, a)
	if _, _, err := a.Change(t.Context(), r.ID, r.Version, "first", titled("first")); err != nil {
		t.Fatal(err)
	}
	now, _, err := a.Change(t.Context(), r.ID, r.Version, "second", titled("second"))
	wantCode(t, err, practical.Conflict)
	if now.Practical.Title != "first" || now.Version != 2 || !strings.Contains(err.Error(), `"first"`) {
		t.Errorf("after a conflict: %+v, %v; want the practical as it is now, and whose change it was", now, err)
	}
}

func TestUndoRedo(t *testing.T) {
	a := mustApp(t)
	r := mustNew(t, a)
	edited, _, err := a.Change(t.Context(), r.ID, r.Version, "title", titled("other"))
	if err != nil {
		t.Fatal(err)
	}
	back, err := a.Undo(t.Context(), r.ID, edited.Version)
	if err != nil || back.Practical.Title != r.Practical.Title || back.RedoLabel != "title" {
		t.Errorf("undo: %+v, %v", back, err)
	}
	again, err := a.Redo(t.Context(), r.ID, back.Version)
	if err != nil || again.Practical.Title != "other" || again.UndoLabel != "title" {
		t.Errorf("redo: %+v, %v", again, err)
	}
	_, err = a.Redo(t.Context(), r.ID, again.Version)
	wantCode(t, err, practical.Invalid)
}

func TestDeleteAndRestore(t *testing.T) {
	a := mustApp(t)
	r := mustNew(t, a)
	if err := a.Delete(t.Context(), r.ID); err != nil {
		t.Fatal(err)
	}
	list, err := a.Practicals(t.Context())
	if err != nil || len(list) != 1 || !list[0].Deleted {
		t.Errorf("list %+v, %v, want one, deleted", list, err)
	}
	back, err := a.Restore(t.Context(), r.ID)
	if err != nil || back.Deleted || back.Practical.Title != r.Practical.Title {
		t.Errorf("restored %+v, %v", back, err)
	}
}

func TestReadCandidates(t *testing.T) {
	got, faults := app.ReadCandidates("Amara B\n\n  Zoë  élan \r\nMary Ann Smith\nCher\n")
	want := []practical.Candidate{{First: "Amara", Initial: "B"}, {First: "Zoë", Initial: "É"}, {First: "Mary Ann", Initial: "S"}, {First: "Cher"}}
	if diff := cmp.Diff(want, got); diff != "" || len(faults) > 0 {
		t.Errorf("faults %v (-want +got):\n%s", faults, diff)
	}
	many, faults := app.ReadCandidates(strings.Repeat("Amara B\n", 1000))
	if len(many) != 200 || len(faults) != 1 || faults[0].Line != 201 || faults[0].Code != practical.TooLarge {
		t.Errorf("%d candidates, faults %v", len(many), faults)
	}
}
