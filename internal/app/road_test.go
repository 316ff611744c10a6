package app_test

import (
	"bytes"
	"context"
	"strings"
	"testing"

	"github.com/santhosh-tekuri/jsonschema/v6"

	"plait.example/examples"
	"plait.example/internal/app"
	"plait.example/internal/paper"
	"plait.example/internal/practical"
	"plait.example/internal/timeplan"
)

// The main road, on every example: read the file, dovetail, print, and read the
// print back. The plan and its print are judged by the arithmetic of the rows
// alone, the JSON by its published schema. The examples are invented.
func TestRoad(t *testing.T) {
	files, err := examples.Files.ReadDir(".")
	if err != nil {
		t.Fatal(err)
	}
	read := 0
	for _, f := range files {
		if !strings.HasSuffix(f.Name(), ".yaml") {
			continue
		}
		read++
		t.Run(f.Name(), func(t *testing.T) {
			plan := roadPlan(t, f.Name())
			judged(t, "plan", plan)
			judged(t, "print", printed(t, plan))
			followsSchema(t, plan)
			if cannot := strings.Contains(f.Name(), "cannot-fit"); cannot == plan.Fits() {
				t.Errorf("fits: %v", plan.Fits())
			}
		})
	}
	if read < 4 {
		t.Errorf("%d examples; there should be four at least", read)
	}
}

func roadPlan(t *testing.T, name string) *timeplan.Plan {
	t.Helper()
	a := &app.App{}
	p, err := a.ReadFS(examples.Files, name)
	if err != nil {
		t.Fatalf("read: %v", err)
	}
	plan, err := a.PlanPractical(context.Background(), p, app.PlanOptions{Seed: 1})
	if err != nil {
		t.Fatalf("plan: %v", err)
	}
	again, err := a.PlanPractical(context.Background(), p, app.PlanOptions{Seed: 1})
	if err != nil {
		t.Fatalf("plan again: %v", err)
	}
	if !bytes.Equal(paper.Text(plan), paper.Text(again)) {
		t.Error("same file, same seed, another plan")
	}
	return plan
}

func printed(t *testing.T, plan *timeplan.Plan) *timeplan.Plan {
	t.Helper()
	back, faults := paper.ReadText(paper.Text(plan))
	if len(faults) > 0 {
		t.Fatalf("the print cannot be read back: %v", faults)
	}
	if len(back.Rows) != len(plan.Rows) || len(back.Rows) < 20 {
		t.Errorf("%d rows printed, %d read back", len(plan.Rows), len(back.Rows))
	}
	return back
}

// judged reads the rows with timeplan's judge, and counts pairs with a sum of its own.
func judged(t *testing.T, what string, plan *timeplan.Plan) {
	t.Helper()
	for _, f := range timeplan.Judge(plan) {
		t.Errorf("%s: %s: %s", what, f.Rule, f.Text)
	}
	inside, last := map[string]practical.TimeOfDay{}, practical.TimeOfDay(0)
	for _, r := range plan.Rows {
		if r.At < last {
			t.Errorf("%s: the clock goes back to %s", what, r.At)
		}
		last = r.At
		switch step := strings.Join(r.Steps, ","); r.Action {
		case timeplan.PutIn:
			inside[step] = r.At
		case timeplan.TakeOut:
			if in, is := inside[step]; !is || r.At < in {
				t.Errorf("%s: %s taken out at %s, in at %s", what, step, r.At, in)
			}
			delete(inside, step)
		}
	}
	for step, in := range inside {
		t.Errorf("%s: %s put in at %s and never taken out", what, step, in)
	}
}

func followsSchema(t *testing.T, plan *timeplan.Plan) {
	t.Helper()
	text, err := paper.JSON(plan)
	if err != nil {
		t.Fatal(err)
	}
	schema, err := jsonschema.UnmarshalJSON(bytes.NewReader(paper.Schema()))
	if err != nil {
		t.Fatal(err)
	}
	value, err := jsonschema.UnmarshalJSON(bytes.NewReader(text))
	if err != nil {
		t.Fatal(err)
	}
	c := jsonschema.NewCompiler()
	if err := c.AddResource("plan.json", schema); err != nil {
		t.Fatal(err)
	}
	compiled, err := c.Compile("plan.json")
	if err != nil {
		t.Fatal(err)
	}
	if err := compiled.Validate(value); err != nil {
		t.Errorf("the JSON breaks its schema: %v", err)
	}
}
