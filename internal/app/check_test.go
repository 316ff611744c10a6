package app_test

import (
	"archive/zip"
	"bytes"
	"context"
	"encoding/json"
	"fmt"
	"maps"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/santhosh-tekuri/jsonschema/v6"

	"plait.example/internal/app"
	"plait.example/internal/check/checktest"
	"plait.example/internal/practical"
)

// The plans here are invented.
const pupilsPlan = `Name: Dilys Marsh
9.00 Wash hands
9.05 Scones: rub in the butter
9.15 Scones: bake at 220C
9.40 Wash up
10.00 Serve the scones with butter
`

func TestCheckKeepsOrderAndGoesOn(t *testing.T) {
	told := 0
	files := []app.PlanFile{
		{Name: "broken.docx", Data: []byte("PK\x03\x04 and no more")},
		{Name: "dilys.txt", Data: []byte(pupilsPlan)},
		{Name: "missing.txt", Err: practical.Fault{Code: practical.NotFound, Message: "there is no such file"}},
		{Name: "again.txt", Data: []byte(pupilsPlan)},
	}
	all := new(app.App).Check(t.Context(), files, app.CheckOptions{Checked: func(done, of int) {
		if told++; done != told || of != 4 {
			t.Errorf("progress %d of %d at call %d", done, of, told)
		}
	}})
	for i, c := range all {
		if c.File != files[i].Name {
			t.Errorf("file %d is %s", i, c.File)
		}
		if readable := i == 1 || i == 3; (c.Fault == nil) != readable || readable != (len(c.Matched.Rows) == 5) {
			t.Errorf("%s: fault %v, %d rows", c.File, c.Fault, len(c.Matched.Rows))
		}
	}
	if all[1].Matched.Plan.Candidate != "Dilys Marsh" || !all[1].Stops() || told != 4 {
		t.Errorf("plan of %q, findings %+v, told %d times", all[1].Matched.Plan.Candidate, all[1].Findings, told)
	}
}

func TestCheckStopped(t *testing.T) {
	ctx, stop := context.WithCancel(t.Context())
	stop()
	for _, c := range new(app.App).Check(ctx, []app.PlanFile{{Name: "a", Data: []byte(pupilsPlan)}}, app.CheckOptions{}) {
		if c.Fault == nil {
			t.Error("a stopped check says nothing of it")
		}
	}
}

func TestCheckedJSON(t *testing.T) {
	a := new(app.App)
	data, err := a.CheckedJSON(a.Check(t.Context(), []app.PlanFile{{Name: "dilys.txt", Data: []byte(pupilsPlan)}, {Name: "picture.png", Data: []byte("\x89PNG\r\n\x1a\n")}}, app.CheckOptions{}))
	if err != nil {
		t.Fatal(err)
	}
	var plans []struct {
		File, Candidate string
		Error           string
		Rows            []struct {
			Number int
			Clock  *string
			Dish   *string
			Text   string
			Steps  *[]string
			Sure   *float64
		}
		Findings *[]struct {
			Rule, Severity, Evidence, Question string
			Answer                             *string
			Row                                *int
		}
		Unread *[]string
	}
	if err := json.Unmarshal(data, &plans); err != nil {
		t.Fatal(err)
	}
	if len(plans) != 2 || plans[0].File != "dilys.txt" || plans[0].Candidate != "Dilys Marsh" || len(plans[0].Rows) != 5 || plans[1].Error == "" {
		t.Fatalf("%s", data)
	}
	row := plans[0].Rows[2]
	if row.Number != 3 || row.Clock == nil || *row.Clock != "09:15" || row.Dish == nil || row.Text != "Scones: bake at 220C" || row.Steps == nil || row.Sure == nil {
		t.Errorf("row %+v", row)
	}
	whole := false
	for _, f := range *plans[0].Findings {
		if f.Rule == "" || !strings.Contains("stops marks polish", f.Severity) || f.Question == "" || f.Evidence == "" || f.Answer == nil {
			t.Errorf("finding %+v", f)
		}
		whole = whole || f.Row == nil
	}
	if !whole {
		t.Error("no finding is of the plan as a whole, with row null")
	}
}

// Every kind of plan as JSON keeps the published schema, judged by somebody else's code.
func TestCheckedJSONKeepsItsSchema(t *testing.T) {
	a := new(app.App)
	data, err := a.Schema("checks")
	if err != nil {
		t.Fatal(err)
	}
	document, err := jsonschema.UnmarshalJSON(bytes.NewReader(data))
	if err != nil {
		t.Fatal(err)
	}
	compiler := jsonschema.NewCompiler()
	if err := compiler.AddResource("checks.json", document); err != nil {
		t.Fatal(err)
	}
	schema, err := compiler.Compile("checks.json")
	if err != nil {
		t.Fatal(err)
	}
	documents, err := checktest.Documents(checktest.LookedAt)
	if err != nil {
		t.Fatal(err)
	}
	if testing.Short() {
		documents = checktest.Few(documents)
	}
	files := []app.PlanFile{{Name: "picture.png", Data: []byte("\x89PNG\r\n\x1a\n")}, {Name: "dilys.txt", Data: []byte(pupilsPlan)}}
	for _, d := range documents {
		files = append(files, app.PlanFile{Name: d.Name, Data: d.Data})
	}
	written, err := a.CheckedJSON(a.Check(t.Context(), files, app.CheckOptions{}))
	if err != nil {
		t.Fatal(err)
	}
	value, err := jsonschema.UnmarshalJSON(bytes.NewReader(written))
	if err != nil {
		t.Fatal(err)
	}
	if err := schema.Validate(value); err != nil {
		t.Error(err)
	}
}

func zipped(t *testing.T, files map[string]string) []byte {
	t.Helper()
	var b bytes.Buffer
	z := zip.NewWriter(&b)
	for _, name := range slices.Sorted(maps.Keys(files)) {
		w, err := z.Create(name)
		if err != nil {
			t.Fatal(err)
		}
		if _, err := w.Write([]byte(files[name])); err != nil {
			t.Fatal(err)
		}
	}
	if err := z.Close(); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

func TestPlanFiles(t *testing.T) {
	archive := zipped(t, map[string]string{"amy.txt": "a", "in/ben.txt": "b", ".hidden": "c"})
	dir := folder(t, map[string]string{
		"b.txt": "b", "a.txt": "a", "sub/c.txt": "c", ".hidden": "no", "~$a.docx": "no", "class.zip": string(archive), "bad.zip": "not one",
	})
	var names []string
	for _, f := range new(app.App).PlanFiles(t.Context(), []string{dir, filepath.Join(dir, "none.txt")}) {
		name, err := filepath.Rel(dir, f.Name)
		if err != nil {
			t.Fatal(err)
		}
		if f.Err != nil {
			name += " !"
		}
		names = append(names, filepath.ToSlash(name))
	}
	got := strings.Join(names, " ")
	if want := "a.txt b.txt bad.zip ! class.zip/amy.txt class.zip/in/ben.txt sub/c.txt none.txt !"; got != want {
		t.Errorf("got  %s\nwant %s", got, want)
	}
}

// Plans that plait writes come back row by row.
func TestOwnPlansAreReadBack(t *testing.T) {
	a := new(app.App)
	p, err := a.ReadFile("../../examples/two-by-a-pair.yaml")
	if err != nil {
		t.Fatal(err)
	}
	plan, err := a.PlanPractical(t.Context(), p, app.PlanOptions{Seed: 1})
	if err != nil {
		t.Fatal(err)
	}
	for _, f := range []app.Format{app.Text, app.JSON, app.HTML} {
		d, err := a.Paper(plan, f, app.Sheet{})
		if err != nil {
			t.Fatal(err)
		}
		c := a.Check(t.Context(), []app.PlanFile{{Name: d.Name, Data: d.Data}}, app.CheckOptions{Practical: p})[0]
		if c.Fault != nil || len(c.Matched.Rows) != len(plan.Rows) {
			t.Errorf("%s: fault %v, %d rows, want %d", f, c.Fault, len(c.Matched.Rows), len(plan.Rows))
			continue
		}
		for i, r := range c.Matched.Rows {
			if want := plan.Rows[i]; r.At != want.Clock || r.Minutes != want.Minutes || !strings.Contains(strings.Join(strings.Fields(r.Text), " "), strings.Join(strings.Fields(want.Text), " ")) {
				t.Errorf("%s row %d: %s [%d] %q, want %s [%d] %q", f, i+1, r.At, r.Minutes, r.Text, want.Clock, want.Minutes, want.Text)
			}
		}
	}
}

// class is 24 plans of about 60 rows, each three invented plans of one menu after
// one another.
func class(tb testing.TB) (files []app.PlanFile, p *practical.Practical) {
	tb.Helper()
	sound, err := checktest.Sound(checktest.LookedAt)
	if err != nil {
		tb.Fatal(err)
	}
	text, err := sound[0].Practical()
	if err != nil {
		tb.Fatal(err)
	}
	p, faults := practical.Parse("practical.yaml", []byte(text))
	if p == nil {
		tb.Fatal(faults)
	}
	for i := range 24 {
		plan := sound[0]
		plan.Rows = nil
		for len(plan.Rows) < 60 {
			plan.Rows = append(plan.Rows, sound[0].Rows...)
		}
		l := checktest.Layouts[i%len(checktest.Layouts)]
		files = append(files, app.PlanFile{Name: fmt.Sprintf("%02d%s", i, l.Ext), Data: l.Document(plan, i)})
	}
	return files, p
}

func BenchmarkCheckClass(b *testing.B) {
	files, p := class(b)
	rows := 0
	for b.Loop() {
		rows = 0
		for _, c := range new(app.App).Check(b.Context(), files, app.CheckOptions{Practical: p}) {
			if c.Fault != nil {
				b.Fatal(c.Fault)
			}
			rows += len(c.Matched.Rows)
		}
	}
	if rows < 24*60 {
		b.Fatalf("%d rows", rows)
	}
	b.ReportMetric(float64(rows), "rows")
}
