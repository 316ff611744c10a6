package app_test

import (
	"context"
	"errors"
	"slices"
	"testing"

	"github.com/google/go-cmp/cmp"

	"plait.example/examples"
	"plait.example/internal/app"
	"plait.example/internal/practical"
	"plait.example/internal/timeplan"
)

// lunch is an invented practical of two dishes with room to move rows in.
const lunch = `title: Lunch
like: two-in-two
rules: {wash-up-every: 0}
dishes:
  - name: Flatbreads
    steps:
      - {text: Knead the dough, hands: 10, wait: {least: 15, most: 60, place: side}}
      - {text: Roll and bake, hands: 8, wait: {least: 8, most: 12, place: oven, celsius: 220}}
  - name: Dip
    steps:
      - {text: Toast the seeds, hands: 4}
      - {text: Stir the dip, hands: 8}
`

// seed makes every plan here repeatable.
var seed = app.PlanOptions{Seed: 1}

func mustPlan(t *testing.T, a *app.App) app.Record {
	t.Helper()
	r, err := a.Import(t.Context(), "lunch.yaml", []byte(lunch))
	if err != nil {
		t.Fatal(err)
	}
	if r, err = a.Plan(t.Context(), r.ID, seed); err != nil {
		t.Fatal(err)
	}
	return r
}

func at(t *testing.T, r app.Record, row string) practical.TimeOfDay {
	t.Helper()
	i := slices.IndexFunc(r.Plan.Rows, func(x timeplan.Row) bool { return x.ID == row })
	if i < 0 {
		t.Fatalf("the plan has no row %s", row)
	}
	return r.Plan.Rows[i].At
}

// wantJudged lets the plan's own judge, which has not seen the search, read it.
func wantJudged(t *testing.T, r app.Record) {
	t.Helper()
	if found := timeplan.Judge(r.Plan); len(found) > 0 || !r.Plan.Fits() {
		t.Errorf("plan %s, %d over: %v", r.Plan.Status, r.Plan.Over, found)
	}
}

func TestPlanIsKeptWithItsVersion(t *testing.T) {
	a := mustApp(t)
	r := mustPlan(t, a)
	wantJudged(t, r)
	if r.Version != 1 || r.PlanStale {
		t.Errorf("planning made version %d (stale %v), want no new version", r.Version, r.PlanStale)
	}
	edited, _, err := a.Change(t.Context(), r.ID, r.Version, "title", titled("Tea"))
	if err != nil || edited.Plan != nil || !edited.PlanStale {
		t.Errorf("after an edit: plan %v, stale %v, %v", edited.Plan, edited.PlanStale, err)
	}
	back, err := a.Undo(t.Context(), r.ID, edited.Version)
	if err != nil {
		t.Fatal(err)
	}
	if diff := cmp.Diff(r.Plan, back.Plan); diff != "" {
		t.Errorf("undo brings another plan (-want +got):\n%s", diff)
	}
}

// Planning after an edit begins from the plan before: a row that was held where
// it is as good as elsewhere stays there when it is let go, and when words are
// changed. Planned afresh it goes where it was first.
func TestPlanAfterAnEditKeepsRows(t *testing.T) {
	a := mustApp(t)
	r := mustPlan(t, a)
	first := at(t, r, "B2/hands")
	later := first + 1 // on a mark of five minutes
	r, err := a.Pin(t.Context(), r.ID, r.Version, "B2/hands", &later, seed)
	if err != nil {
		t.Fatal(err)
	}
	if r, err = a.Unpin(t.Context(), r.ID, r.Version, "B2/hands", seed); err != nil || at(t, r, "B2/hands") != later {
		t.Fatalf("let go, it is at %v, %v; want %v", at(t, r, "B2/hands"), err, later)
	}
	if r, _, err = a.Change(t.Context(), r.ID, r.Version, "title", titled("Tea")); err != nil {
		t.Fatal(err)
	}
	if r, err = a.Plan(t.Context(), r.ID, seed); err != nil || at(t, r, "B2/hands") != later {
		t.Fatalf("after an edit, it is at %v, %v; want %v", at(t, r, "B2/hands"), err, later)
	}
	wantJudged(t, r)
	if r, err = a.Plan(t.Context(), r.ID, seed); err != nil || at(t, r, "B2/hands") != first {
		t.Errorf("afresh, it is at %v, %v; want %v", at(t, r, "B2/hands"), err, first)
	}
}

func TestPlanSaysFaults(t *testing.T) {
	a := mustApp(t)
	r := mustNew(t, a) // no dishes
	again, err := a.Plan(t.Context(), r.ID, seed)
	var faults practical.Faults
	if !errors.As(err, &faults) || faults[0].Field != "dishes" || again.ID != r.ID {
		t.Errorf("got %+v, %v; want the record and a fault at dishes", again, err)
	}
}

func TestPlanStops(t *testing.T) {
	a := mustApp(t)
	r := mustPlan(t, a)
	ctx, cancel := context.WithCancel(t.Context())
	cancel()
	if _, err := a.PlanPractical(ctx, r.Practical, seed); !errors.Is(err, context.Canceled) {
		t.Errorf("error %v, want context.Canceled", err)
	}
}

func TestProgressIsTold(t *testing.T) {
	a := mustApp(t)
	r := mustPlan(t, a)
	var told []app.Progress
	plan, err := a.PlanPractical(t.Context(), r.Practical, app.PlanOptions{Seed: 1, Improved: func(p app.Progress) { told = append(told, p) }})
	if err != nil {
		t.Fatal(err)
	}
	if len(told) == 0 || !told[len(told)-1].Found || told[len(told)-1].Bound > plan.Finish {
		t.Errorf("told %+v of a plan that finishes at %v", told, plan.Finish)
	}
}

// Every row that may go up or down does, in a plan that still holds, and undo
// brings the plan from before.
func TestMoveEveryRow(t *testing.T) {
	a := mustApp(t)
	r := mustPlan(t, a)
	moved := 0
	for i, row := range r.Plan.Rows {
		for where, other := range map[app.Where]int{app.Up: i - 1, app.Down: i + 1} {
			now, err := a.Move(t.Context(), r.ID, r.Version, row.ID, where, "", seed)
			if err != nil {
				wantCode(t, err, codeOf(err))
				continue
			}
			moved++
			if now.Version == r.Version || !now.CanUndo {
				t.Errorf("%s %s made no version", row.ID, where)
			}
			if now.Plan.Fits() {
				wantJudged(t, now)
			}
			neighbour := r.Plan.Rows[other].ID
			if now.Plan.Fits() && isStep(neighbour) && (at(t, now, row.ID) < at(t, now, neighbour)) != (where == app.Up) {
				t.Errorf("%s moved %s: it stands at %v, %s at %v", row.ID, where, at(t, now, row.ID), neighbour, at(t, now, neighbour))
			}
			back, err := a.Undo(t.Context(), r.ID, now.Version)
			if err != nil {
				t.Fatal(err)
			}
			if diff := cmp.Diff(r.Plan, back.Plan); diff != "" {
				t.Errorf("undo (-want +got):\n%s", diff)
			}
		}
	}
	if moved < 4 {
		t.Errorf("only %d moves were possible", moved)
	}
}

func isStep(row string) bool { return row[0] == 'A' || row[0] == 'B' }

func codeOf(err error) practical.Code {
	var f practical.Fault
	if errors.As(err, &f) && (f.Code == practical.Invalid || f.Code == practical.NotFound) {
		return f.Code
	}
	return practical.Invalid // so that anything else is an error
}

func TestPinHoldsARow(t *testing.T) {
	a := mustApp(t)
	r := mustPlan(t, a)
	ten := practical.TimeOfDay(10 * 60)
	held, err := a.Pin(t.Context(), r.ID, r.Version, "B1/hands", &ten, seed)
	if err != nil {
		t.Fatal(err)
	}
	wantJudged(t, held)
	if at(t, held, "B1/hands") != ten {
		t.Errorf("held at %v, want 10:00", at(t, held, "B1/hands"))
	}
	where := at(t, held, "A2/hands")
	both, err := a.Pin(t.Context(), r.ID, held.Version, "A2/hands", nil, seed)
	if err != nil || at(t, both, "A2/hands") != where || len(both.Practical.Pins) != 2 {
		t.Errorf("held where it is: %v, pins %v", err, both.Practical.Pins)
	}
	one, err := a.Unpin(t.Context(), r.ID, both.Version, "B1/hands", seed)
	if err != nil || len(one.Practical.Pins) != 1 || one.Practical.Pins[0].Row != "A2/hands" {
		t.Errorf("one let go: %v, pins %v", err, one.Practical.Pins)
	}
	none, err := a.Unpin(t.Context(), r.ID, one.Version, "", seed)
	if err != nil {
		t.Fatal(err)
	}
	if diff := cmp.Diff(r.Plan, none.Plan); diff != "" {
		t.Errorf("all let go: another plan than at first (-want +got):\n%s", diff)
	}
}

func TestPinRefuses(t *testing.T) {
	a := mustApp(t)
	r := mustPlan(t, a)
	night := practical.TimeOfDay(60)
	_, err := a.Pin(t.Context(), r.ID, r.Version, "B1/hands", &night, seed)
	wantCode(t, err, practical.Invalid)
	_, err = a.Pin(t.Context(), r.ID, r.Version, "Q1/hands", nil, seed)
	wantCode(t, err, practical.NotFound)
	_, err = a.Pin(t.Context(), r.ID, r.Version+1, "B1/hands", nil, seed)
	wantCode(t, err, practical.Conflict)
	edited, _, err := a.Change(t.Context(), r.ID, r.Version, "title", titled("Tea"))
	if err != nil {
		t.Fatal(err)
	}
	_, err = a.Move(t.Context(), r.ID, edited.Version, "B1/hands", app.Up, "", seed)
	wantCode(t, err, practical.Invalid) // no plan of this version
}

func TestDemo(t *testing.T) {
	a := mustApp(t)
	r, err := a.Demo(t.Context(), examples.Files, "three-in-three.yaml", seed)
	if err != nil {
		t.Fatal(err)
	}
	wantJudged(t, r)
	classes, err := a.Classes(t.Context())
	if err != nil || len(classes) != 1 || len(classes[0].Candidates) != 20 {
		t.Errorf("classes %v, %v, want one of 20", classes, err)
	}
}

func TestPaper(t *testing.T) {
	a := mustApp(t)
	r := mustPlan(t, a)
	for format, want := range map[app.Format]string{app.Text: "lunch.txt", app.JSON: "lunch.json", app.HTML: "lunch.html", app.PDF: "lunch.pdf"} {
		d, err := a.Paper(r.Plan, format, app.Sheet{Name: "Amara B"})
		if err != nil || d.Name != want || len(d.Data) == 0 || d.MediaType == "" {
			t.Errorf("%s: %s, %d bytes, %v", format, d.Name, len(d.Data), err)
		}
	}
	_, err := a.Paper(r.Plan, "stone", app.Sheet{})
	wantCode(t, err, practical.Invalid)
}
