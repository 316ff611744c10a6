package app_test

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path"
	"path/filepath"
	"strings"
	"sync/atomic"
	"testing"
	"testing/fstest"
	"time"

	"plait.example/internal/app"
	"plait.example/internal/check/checktest"
	"plait.example/internal/format/docx"
	"plait.example/internal/format/table"
	"plait.example/internal/practical"
	"plait.example/internal/store"
)

// handing is an application with a practical and plans of n learners handed in.
func handing(tb testing.TB, n int) (*app.App, string) {
	tb.Helper()
	kept, err := store.Open(tb.Context(), tb.TempDir())
	if err != nil {
		tb.Fatal(err)
	}
	tb.Cleanup(func() {
		if err := kept.Close(); err != nil {
			tb.Error(err)
		}
	})
	a := &app.App{Store: kept, Now: func() time.Time { return time.Date(2026, 11, 25, 12, 0, 0, 0, time.UTC) }}
	sound, err := checktest.Sound(checktest.LookedAt)
	if err != nil {
		tb.Fatal(err)
	}
	rec, err := a.Store.Create(tb.Context(), menu(tb, a, sound[0]), "made", a.Now())
	if err != nil {
		tb.Fatal(err)
	}
	var files []app.PlanFile
	for i := range n {
		l := checktest.Layouts[i%len(checktest.Layouts)]
		files = append(files, app.PlanFile{Name: fmt.Sprintf("pupil%02d%s", i, l.Ext), Data: l.Document(sound[0], i)})
	}
	if in, err := a.HandIn(tb.Context(), rec.ID, files); err != nil || in.Kept != n {
		tb.Fatal(in, err)
	}
	return a, rec.ID
}

// menu is the practical of an invented plan, with its recipes read.
func menu(tb testing.TB, a *app.App, plan checktest.Plan) *practical.Practical {
	tb.Helper()
	text, err := plan.Practical()
	if err != nil {
		tb.Fatal(err)
	}
	files := fstest.MapFS{"practical.yaml": {Data: []byte(text)}}
	recipes, err := fs.Glob(checktest.Menus, plan.Folder+"/"+plan.Menu+"/*.txt")
	if err != nil {
		tb.Fatal(err)
	}
	for _, r := range recipes {
		data, err := checktest.Menus.ReadFile(r)
		if err != nil {
			tb.Fatal(err)
		}
		files[path.Base(r)] = &fstest.MapFile{Data: data}
	}
	p, err := a.ReadFS(files, "practical.yaml")
	if err != nil {
		tb.Fatal(err)
	}
	return p
}

func wanting(t *testing.T, a *app.App, id string) int {
	t.Helper()
	n, _, err := a.PlansToCheck(t.Context(), id)
	if err != nil {
		t.Fatal(err)
	}
	return n
}

// A plan is checked once for a practical, rules and corrections as they are; what
// changes of these asks for another check of what it concerns, and no more.
func TestPlansAreCheckedOnce(t *testing.T) {
	a, id := handing(t, 3)
	look := func() []*app.HandedPlan {
		t.Helper()
		told := atomic.Int64{}
		_, all, err := a.HandedPlans(t.Context(), id, func(done, of int) {
			if int(told.Add(1)) != done || of != 3 {
				t.Errorf("told %d of %d", done, of)
			}
		})
		if err != nil || len(all) != 3 || told.Load() != 3 {
			t.Fatal(len(all), err)
		}
		if n := wanting(t, a, id); n != 0 {
			t.Errorf("%d to check after a look", n)
		}
		return all
	}
	if n := wanting(t, a, id); n != 3 {
		t.Errorf("%d to check at first", n)
	}
	first := look()
	if err := a.FixRow(t.Context(), id, first[1].ID, 2, []string{"A1", "A1"}, false); err != nil {
		t.Fatal(err)
	}
	if n := wanting(t, a, id); n != 1 {
		t.Errorf("%d to check after a correction in one", n)
	}
	if steps := look()[1].Matched.Rows[1].Steps; len(steps) != 1 || steps[0].ID != "A1" {
		t.Errorf("the row stands for %v", steps)
	}
	if err := a.UseRules(t.Context(), "r.yaml", []byte("rules:\n  gap: {on: false}\n")); err != nil {
		t.Fatal(err)
	}
	if n := wanting(t, a, id); n != 3 {
		t.Errorf("%d to check by other rules", n)
	}
	look()
	if err := a.DropRules(t.Context()); err != nil {
		t.Fatal(err)
	}
	if n := wanting(t, a, id); n != 0 {
		t.Errorf("%d to check by the rules of before", n)
	}
	rec, err := a.Open(t.Context(), id)
	if err != nil {
		t.Fatal(err)
	}
	if _, _, err := a.Change(t.Context(), id, rec.Version, "one ring", func(p *practical.Practical) practical.Faults { p.Kitchen.Rings = 1; return nil }); err != nil {
		t.Fatal(err)
	}
	if n := wanting(t, a, id); n != 3 {
		t.Errorf("%d to check in another kitchen", n)
	}
}

// A look that is broken off gives its context's error and keeps nothing wrong.
func TestLookIsBrokenOff(t *testing.T) {
	a, id := handing(t, 6)
	ctx, stop := context.WithCancel(t.Context())
	_, _, err := a.HandedPlans(ctx, id, func(done, _ int) {
		if done == 1 {
			stop()
		}
	})
	if !errors.Is(err, context.Canceled) {
		t.Errorf("the error is %v", err)
	}
	if n := wanting(t, a, id); n == 0 || n == 6 {
		t.Errorf("%d of 6 to check", n)
	}
	_, all, err := a.HandedPlans(t.Context(), id, nil)
	if err != nil {
		t.Fatal(err)
	}
	for _, h := range all {
		if h.Fault != nil || len(h.Matched.Rows) == 0 {
			t.Errorf("%s: %v, %d rows", h.Name, h.Fault, len(h.Matched.Rows))
		}
	}
}

// One broken file of a zip refuses itself, and a zip inside says what to do.
func TestZipOfAClass(t *testing.T) {
	a, id := handing(t, 1)
	in, err := a.HandIn(t.Context(), id, []app.PlanFile{{Name: "8b.zip", Data: zipped(t, map[string]string{
		"ana.txt": pupilsPlan, "more.zip": "PK\x03\x04", "bomb.docx": strings.Repeat("\x00", 8<<20),
	})}})
	if err != nil || in.Kept != 1 || len(in.Faults) != 2 {
		t.Fatalf("%+v, %v", in, err)
	}
	for _, f := range in.Faults {
		want := map[string]string{"8b.zip/more.zip": "it was not opened: a zip inside a zip; hand in the plans themselves", "8b.zip/bomb.docx": "it is too large: it unpacks to more than 200 times its size, as files do that are made to choke a reader; leave it out"}[f.File]
		if got := f.Message + "; " + f.Hint; got != want {
			t.Errorf("%s: %s", f.File, got)
		}
	}
}

// What was written about plans into the folder of the plans is passed over the
// next time, whatever it is called; a pupil who works on in the document with the
// comments hands in a plan.
func TestFeedbackIsNotReadAsPlans(t *testing.T) {
	var rows table.Table
	for _, line := range []string{"Time\tWhat I do", "9.00\tWash hands", "9.10\tMake the scones", "9.20\tBake the scones at 220C", "10.00\tServe the scones with butter"} {
		var row []table.Cell
		for _, text := range strings.Split(line, "\t") {
			row = append(row, table.Cell{Span: 1, Down: 1, Clock: -1, Lines: []table.Line{{{Text: text}}}})
		}
		rows.Rows = append(rows.Rows, row)
	}
	plan, err := docx.Write(docx.Paper{Blocks: []table.Block{{Table: &rows}}})
	if err != nil {
		t.Fatal(err)
	}
	dir := folder(t, map[string]string{"zoë.docx": string(plan), "dilys.txt": pupilsPlan})
	a := new(app.App)
	files, own := app.Plans(a.PlanFiles(t.Context(), []string{dir}))
	if len(files) != 2 || len(own) != 0 {
		t.Fatalf("%d plans, %d of ours", len(files), len(own))
	}
	checked := a.Check(t.Context(), files, app.CheckOptions{})
	documents, err := a.Feedback(files, checked, nil, app.Coached, nil)
	if err != nil {
		t.Fatal(err)
	}
	found, err := a.CheckedJSON(checked)
	if err != nil {
		t.Fatal(err)
	}
	documents = append(documents, app.Document{Name: "found.json", Data: found}, app.Document{Name: "found.txt", Data: app.Marked(a.CheckedText(checked))})
	var commented []byte
	for i, d := range documents {
		if strings.HasSuffix(d.Name, app.Commented) {
			commented = d.Data
		}
		name := filepath.Join(dir, fmt.Sprintf("%02d%s", i, filepath.Ext(d.Name)))
		if err := os.WriteFile(name, d.Data, 0o600); err != nil {
			t.Fatal(err)
		}
	}
	files, own = app.Plans(a.PlanFiles(t.Context(), []string{dir}))
	if len(files) != 2 || len(own) != len(documents) {
		t.Errorf("%d plans, want 2; %d of ours, want %d", len(files), len(own), len(documents))
	}
	// The words of the document are stored as they are in a part that is packed;
	// another program packs it anew.
	again, err := docx.Comment(commented, nil)
	if err != nil {
		t.Fatal(err)
	}
	if one := app.PlansIn("a.docx", again)[0]; one.Own == "" {
		t.Error("the document with comments, packed anew, is taken for a plan")
	}
	worked := bytes.Clone(plan)
	if one := app.PlansIn("a.docx", worked)[0]; one.Own != "" {
		t.Error("a plan is taken for ours")
	}
}

// A document the size of a book is read in part and says so; what is beyond a
// plan is read and not checked.
func TestDocumentsBeyondAPlan(t *testing.T) {
	lines := func(n int) []byte {
		var b strings.Builder
		b.WriteString("Time\tWhat I do\n")
		for i := range n {
			fmt.Fprintf(&b, "%d:%02d\tchop leek %d\n", 9+i/60%3, i%60, i)
		}
		return []byte(b.String())
	}
	a := new(app.App)
	all := a.Check(t.Context(), []app.PlanFile{{Name: "many.txt", Data: lines(app.MostRows + 1)}, {Name: "book.txt", Data: lines(5000)}}, app.CheckOptions{})
	many, book := all[0], all[1]
	if many.Fault != nil || many.Unchecked == nil || len(many.Matched.Rows) != app.MostRows+1 || len(many.Findings) > 0 || len(many.Notes) > 0 {
		t.Errorf("many: %v, %v, %d rows, notes %q", many.Fault, many.Unchecked, len(many.Matched.Rows), many.Notes)
	}
	if book.Unchecked == nil || len(book.Matched.Rows) != 2999 || len(book.Notes) != 1 || !strings.HasPrefix(book.Notes[0], "2001 lines and rows after the first 3000") {
		t.Errorf("book: %v, %d rows, notes %q", book.Unchecked, len(book.Matched.Rows), book.Notes)
	}
	text := string(a.CheckedText(all[:1]))
	if !strings.Contains(text, "Not checked: 601 rows were read") || strings.Contains(text, "nothing found") {
		t.Errorf("the text does not say so:\n%.300s", text)
	}
}

// BenchmarkFirstView and BenchmarkSecondView are a page with 70 plans of a class.
func BenchmarkFirstView(b *testing.B) {
	a, id := handing(b, 70)
	for b.Loop() {
		fresh := &app.App{Store: a.Store, Now: a.Now}
		view(b, fresh, id)
	}
}

func BenchmarkSecondView(b *testing.B) {
	a, id := handing(b, 70)
	view(b, a, id)
	for b.Loop() {
		view(b, a, id)
	}
}

func view(b *testing.B, a *app.App, id string) {
	b.Helper()
	_, all, err := a.HandedPlans(b.Context(), id, nil)
	if err != nil || len(all) != 70 || len(a.Class(all, nil).Pupils) == 0 {
		b.Fatal(len(all), err)
	}
}
