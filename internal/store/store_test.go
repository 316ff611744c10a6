package store

import (
	"context"
	"database/sql"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"

	"plait.example/internal/practical"
	"plait.example/internal/timeplan"
)

// noon is an invented moment.
var noon = time.Date(2026, 11, 25, 12, 0, 0, 123456789, time.UTC)

func mustOpen(t *testing.T, dir string) *Store {
	t.Helper()
	s, err := Open(t.Context(), dir)
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() {
		if err := s.Close(); err != nil {
			t.Error(err)
		}
	})
	return s
}

// titled is an invented practical that differs by its title only.
func titled(title string) *practical.Practical {
	most := 0
	return &practical.Practical{
		Title: title,
		Clock: practical.Clock{SetUp: 8*60 + 30, Start: 9 * 60, Finish: 12 * 60, Hours: 24, Round: 1},
		Dishes: []practical.Dish{{Letter: "A", Name: "Crème caramel", Text: "200 °C \"hot\"\r\n", Steps: []practical.Step{
			{ID: "A1", Text: "Whisk", After: []practical.After{{Step: "A2", Most: &most}}, Doubt: 0.25},
		}}},
	}
}

func mustCreate(t *testing.T, s *Store, title string) timeplan.Record {
	t.Helper()
	r, err := s.Create(t.Context(), titled(title), "new", noon)
	if err != nil {
		t.Fatal(err)
	}
	return r
}

func mustSave(t *testing.T, s *Store, r timeplan.Record, title string) timeplan.Record {
	t.Helper()
	r, err := s.Save(t.Context(), r.ID, r.Version, titled(title), "title "+title, noon)
	if err != nil {
		t.Fatal(err)
	}
	return r
}

func mustTravel(t *testing.T, s *Store, r timeplan.Record, by int) timeplan.Record {
	t.Helper()
	r, err := s.Travel(t.Context(), r.ID, r.Version, by)
	if err != nil {
		t.Fatal(err)
	}
	return r
}

func wantCode(t *testing.T, err error, code practical.Code) {
	t.Helper()
	var f practical.Fault
	if !errors.As(err, &f) || f.Code != code || f.Hint == "" {
		t.Errorf("got error %v, want a fault with code %s and a hint", err, code)
	}
}

func TestRoundTrip(t *testing.T) {
	dir := filepath.Join(t.TempDir(), "a?b #1 %20 é")
	s, err := Open(t.Context(), dir)
	if err != nil {
		t.Fatal(err)
	}
	r := mustCreate(t, s, "Ünit 'x'")
	if err := s.Close(); err != nil {
		t.Fatal(err)
	}
	got, err := mustOpen(t, dir).Load(t.Context(), r.ID)
	if err != nil {
		t.Fatal(err)
	}
	want := timeplan.Record{ID: r.ID, Version: 1, Label: "new", Saved: noon, Practical: titled("Ünit 'x'")}
	if diff := cmp.Diff(want, got); diff != "" {
		t.Errorf("what came back differs (-want +got):\n%s", diff)
	}
}

func TestUndoRedo(t *testing.T) {
	s := mustOpen(t, t.TempDir())
	one := mustCreate(t, s, "one")
	two := mustSave(t, s, one, "two")
	three := mustSave(t, s, two, "three")
	if !three.CanUndo || three.UndoLabel != "title three" || three.CanRedo {
		t.Errorf("version 3: %+v", three)
	}
	back := mustTravel(t, s, mustTravel(t, s, three, -1), -1)
	if diff := cmp.Diff(one.Practical, back.Practical); diff != "" {
		t.Errorf("undo twice (-want +got):\n%s", diff)
	}
	if back.CanUndo || !back.CanRedo || back.RedoLabel != "title two" {
		t.Errorf("at the first version: %+v", back)
	}
	_, err := s.Travel(t.Context(), back.ID, back.Version, -1)
	wantCode(t, err, practical.Invalid)
	if again := mustTravel(t, s, back, +1); again.Practical.Title != "two" || again.RedoLabel != "title three" {
		t.Errorf("redo: %+v", again)
	}
}

func TestChangeAfterUndoBranches(t *testing.T) {
	s := mustOpen(t, t.TempDir())
	two := mustSave(t, s, mustCreate(t, s, "one"), "two")
	other := mustSave(t, s, mustTravel(t, s, two, -1), "other")
	if other.Version != 3 || other.CanRedo {
		t.Errorf("a change after undo: %+v, want version 3 without redo", other)
	}
	if redone := mustTravel(t, s, mustTravel(t, s, other, -1), +1); redone.Practical.Title != "other" {
		t.Errorf("redo took %q, want the newest branch", redone.Practical.Title)
	}
}

func TestConflict(t *testing.T) {
	s := mustOpen(t, t.TempDir())
	one := mustCreate(t, s, "one")
	two := mustSave(t, s, one, "two")
	_, err := s.Save(t.Context(), one.ID, one.Version, titled("late"), "late", noon)
	wantCode(t, err, practical.Conflict)
	_, err = s.Travel(t.Context(), one.ID, one.Version, -1)
	wantCode(t, err, practical.Conflict)
	if now, err := s.Load(t.Context(), one.ID); err != nil || now.Practical.Title != "two" || now.Version != two.Version {
		t.Errorf("after a refused change: %+v, %v", now, err)
	}
}

func TestOneOfManyWritersWins(t *testing.T) {
	s := mustOpen(t, t.TempDir())
	r := mustCreate(t, s, "one")
	const writers = 8
	results := make(chan error, writers)
	for i := range writers {
		go func() {
			_, err := s.Save(context.Background(), r.ID, r.Version, titled(fmt.Sprint(i)), "race", noon)
			results <- err
		}()
	}
	won := 0
	for range writers {
		if err := <-results; err == nil {
			won++
		} else {
			wantCode(t, err, practical.Conflict)
		}
	}
	if won != 1 {
		t.Errorf("%d writers won, want 1", won)
	}
}

func TestNotFound(t *testing.T) {
	s := mustOpen(t, t.TempDir())
	_, err := s.Load(t.Context(), "nobody")
	wantCode(t, err, practical.NotFound)
	_, err = s.Save(t.Context(), "nobody", 1, titled("x"), "x", noon)
	wantCode(t, err, practical.NotFound)
	wantCode(t, s.Delete(t.Context(), "nobody", true), practical.NotFound)
	wantCode(t, s.SavePlan(t.Context(), "nobody", 1, &timeplan.Plan{}), practical.NotFound)
	_, err = s.SaveClass(t.Context(), practical.Class{ID: "nobody"})
	wantCode(t, err, practical.NotFound)
}

func TestPlanBelongsToItsVersion(t *testing.T) {
	s := mustOpen(t, t.TempDir())
	one := mustCreate(t, s, "one")
	past := practical.TimeOfDay(25*60 + 30) // half past one in the next night
	plan := &timeplan.Plan{Title: "one", Finish: past, Rows: []timeplan.Row{{ID: "A1/hands", At: past, Minutes: 5}}}
	if err := s.SavePlan(t.Context(), one.ID, 1, &timeplan.Plan{Title: "older"}); err != nil {
		t.Fatal(err)
	}
	if err := s.SavePlan(t.Context(), one.ID, 1, plan); err != nil {
		t.Fatal(err)
	}
	planned, err := s.Load(t.Context(), one.ID)
	if err != nil {
		t.Fatal(err)
	}
	if diff := cmp.Diff(plan, planned.Plan); diff != "" || planned.PlanStale {
		t.Errorf("stale %v; plan (-want +got):\n%s", planned.PlanStale, diff)
	}
	two := mustSave(t, s, one, "two")
	if two.Plan != nil || !two.PlanStale {
		t.Errorf("after a change: plan %v, stale %v, want none and stale", two.Plan, two.PlanStale)
	}
	if last, err := s.LastPlan(t.Context(), one.ID); err != nil || cmp.Diff(plan, last) != "" {
		t.Errorf("the last plan is %+v, %v; want that of version 1", last, err)
	}
	if back := mustTravel(t, s, two, -1); back.Plan == nil || back.PlanStale {
		t.Errorf("after undo: plan %v, stale %v, want the plan again", back.Plan, back.PlanStale)
	}
	if err := s.SavePlan(t.Context(), one.ID, two.Version, &timeplan.Plan{Title: "newer"}); err != nil {
		t.Fatal(err)
	}
	if last, err := s.LastPlan(t.Context(), one.ID); err != nil || last == nil || last.Title != "newer" {
		t.Errorf("the last plan is %+v, %v; want the newer one", last, err)
	}
	if none, err := s.LastPlan(t.Context(), mustCreate(t, s, "never planned").ID); none != nil || err != nil {
		t.Errorf("never planned: %+v, %v; want nothing", none, err)
	}
}

func TestList(t *testing.T) {
	s := mustOpen(t, t.TempDir())
	first, second := mustCreate(t, s, "first"), mustCreate(t, s, "second")
	if _, err := s.Save(t.Context(), first.ID, 1, titled("first again"), "x", noon.Add(time.Second)); err != nil {
		t.Fatal(err)
	}
	if err := s.Delete(t.Context(), second.ID, true); err != nil {
		t.Fatal(err)
	}
	got, err := s.List(t.Context())
	if err != nil {
		t.Fatal(err)
	}
	want := []timeplan.Summary{
		{ID: first.ID, Title: "first again", Dishes: 1, Version: 2, Saved: noon.Add(time.Second)},
		{ID: second.ID, Title: "second", Dishes: 1, Version: 1, Saved: noon, Deleted: true},
	}
	if diff := cmp.Diff(want, got); diff != "" {
		t.Errorf("list (-want +got):\n%s", diff)
	}
}

func TestClasses(t *testing.T) {
	s := mustOpen(t, t.TempDir())
	c, err := s.SaveClass(t.Context(), practical.Class{Name: "11B", Candidates: []practical.Candidate{{First: "Zoë", Initial: "É"}, {First: "Amara"}}})
	if err != nil {
		t.Fatal(err)
	}
	empty, err := s.SaveClass(t.Context(), practical.Class{Name: "10A"})
	if err != nil {
		t.Fatal(err)
	}
	c.Candidates = c.Candidates[:1]
	if _, err := s.SaveClass(t.Context(), c); err != nil {
		t.Fatal(err)
	}
	got, err := s.Classes(t.Context())
	if err != nil {
		t.Fatal(err)
	}
	if diff := cmp.Diff([]practical.Class{empty, c}, got); diff != "" {
		t.Errorf("classes (-want +got):\n%s", diff)
	}
}

// The settings must hold on every connection of both pools, not on the first alone.
func TestEveryConnectionObeys(t *testing.T) {
	s := mustOpen(t, t.TempDir())
	var held []*sql.Conn
	for range readers {
		c, err := s.read.Conn(t.Context())
		if err != nil {
			t.Fatal(err)
		}
		held = append(held, c)
		wantPragma(t, c, "foreign_keys", "1")
		wantPragma(t, c, "journal_mode", "wal")
		if _, err := c.ExecContext(t.Context(), `DELETE FROM practicals`); err == nil {
			t.Error("a reader could write")
		}
	}
	for _, c := range held {
		if err := c.Close(); err != nil {
			t.Error(err)
		}
	}
	c, err := s.write.Conn(t.Context())
	if err != nil {
		t.Fatal(err)
	}
	wantPragma(t, c, "foreign_keys", "1")
	wantPragma(t, c, "synchronous", "2") // FULL
	wantPragma(t, c, "journal_mode", "wal")
	if err := c.Close(); err != nil {
		t.Error(err)
	}
}

func wantPragma(t *testing.T, c *sql.Conn, name, want string) {
	t.Helper()
	var got string
	if err := c.QueryRowContext(t.Context(), "PRAGMA "+name).Scan(&got); err != nil || got != want {
		t.Errorf("PRAGMA %s is %q (%v), want %q", name, got, err, want)
	}
}

func TestTwoProgramsOneFolder(t *testing.T) {
	dir := t.TempDir()
	first, err := Open(t.Context(), dir)
	if err != nil {
		t.Fatal(err)
	}
	_, err = Open(t.Context(), dir)
	wantCode(t, err, practical.Conflict)
	if err == nil || !strings.Contains(err.Error(), dir) {
		t.Errorf("error %v does not name the folder", err)
	}
	if err := first.Close(); err != nil {
		t.Fatal(err)
	}
	mustOpen(t, dir)
}

func TestOpenRefuses(t *testing.T) {
	for _, tt := range []struct {
		name string
		harm func(t *testing.T, path string)
		want string
	}{
		{"NoDatabase", func(t *testing.T, path string) { write(t, path, []byte(strings.Repeat("a shopping list\n", 99))) }, "is not a database"},
		{"Damaged", damageMiddle, "is damaged"},
		{"Newer", func(t *testing.T, path string) {
			execute(t, path, `INSERT INTO goose_db_version (version_id, is_applied) VALUES (99999, 1)`)
		}, "a newer plait wrote this file"},
	} {
		t.Run(tt.name, func(t *testing.T) {
			dir := t.TempDir()
			s, err := Open(t.Context(), dir)
			if err != nil {
				t.Fatal(err)
			}
			for i := range 40 {
				mustCreate(t, s, fmt.Sprint("practical ", i, strings.Repeat(" long", 500)))
			}
			if err := s.Close(); err != nil {
				t.Fatal(err)
			}
			path := filepath.Join(dir, dataFile)
			tt.harm(t, path)
			before := read(t, path)
			_, err = Open(t.Context(), dir)
			wantCode(t, err, practical.Invalid)
			if err == nil || !strings.Contains(err.Error(), tt.want) || !strings.Contains(err.Error(), path) {
				t.Errorf("error %v, want %q and the path", err, tt.want)
			}
			if string(before) != string(read(t, path)) {
				t.Error("the refused file was changed")
			}
		})
	}
}

func TestOpenNeedsAFolder(t *testing.T) {
	path := filepath.Join(t.TempDir(), "file")
	write(t, path, []byte("x"))
	_, err := Open(t.Context(), path)
	wantCode(t, err, practical.Invalid)
}

// damageMiddle overwrites pages in the middle, header left whole.
func damageMiddle(t *testing.T, path string) {
	t.Helper()
	data := read(t, path)
	for i := len(data) / 4; i < len(data)*3/4; i++ {
		data[i] = 0xA5
	}
	write(t, path, data)
}

func execute(t *testing.T, path, statement string) {
	t.Helper()
	db, err := sql.Open("sqlite", path)
	if err != nil {
		t.Fatal(err)
	}
	if _, err := db.ExecContext(t.Context(), statement); err != nil {
		t.Fatal(err)
	}
	if err := db.Close(); err != nil {
		t.Fatal(err)
	}
}

func read(t *testing.T, path string) []byte {
	t.Helper()
	data, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	return data
}

func write(t *testing.T, path string, data []byte) {
	t.Helper()
	if err := os.WriteFile(path, data, 0o600); err != nil {
		t.Fatal(err)
	}
}
