package app

import (
	"fmt"
	"io/fs"
	"maps"
	"slices"
	"strings"
	"testing"
	"testing/fstest"

	"plait.example/internal/check"
	"plait.example/internal/check/checktest"
	"plait.example/internal/practical"
)

// planted is a plan of the corpus as it was read and checked.
type planted struct {
	checktest.Document
	practical *practical.Practical
	checked   Checked
}

// checkPlanted reads and checks every plan of the corpus (invented by us).
func checkPlanted(t *testing.T, folder string) []planted {
	t.Helper()
	documents, err := checktest.Documents(folder)
	if err != nil {
		t.Fatal(err)
	}
	var a App
	practicals := map[string]*practical.Practical{} // by the text of its file
	var all []planted
	for _, d := range documents {
		text, err := d.Plan.Practical()
		if err != nil {
			t.Fatal(err)
		}
		p := practicals[d.Plan.Menu+text]
		if p == nil {
			p = menuPractical(t, &a, d.Plan, text)
			practicals[d.Plan.Menu+text] = p
		}
		c := a.Check(t.Context(), []PlanFile{{Name: d.Name, Data: d.Data}}, CheckOptions{Practical: p})
		all = append(all, planted{d, p, c[0]})
	}
	return all
}

func menuPractical(t *testing.T, a *App, plan checktest.Plan, text string) *practical.Practical {
	t.Helper()
	files := fstest.MapFS{"practical.yaml": {Data: []byte(text)}}
	recipes, err := fs.Glob(checktest.Menus, plan.Folder+"/"+plan.Menu+"/*.txt")
	if err != nil {
		t.Fatal(err)
	}
	for _, r := range recipes {
		data, err := checktest.Menus.ReadFile(r)
		if err != nil {
			t.Fatal(err)
		}
		files[r[strings.LastIndex(r, "/")+1:]] = &fstest.MapFile{Data: data}
	}
	p, err := a.ReadFS(files, "practical.yaml")
	if err != nil {
		t.Fatalf("%s: %v\n%s", plan.Menu, err, text)
	}
	return p
}

// Rows come out of every layout as they were written: time, dish and words.
func TestPlantedPlansAreRead(t *testing.T) {
	for _, p := range append(checkPlanted(t, checktest.LookedAt), checkPlanted(t, checktest.Second)...) {
		if p.checked.Fault != nil {
			t.Errorf("%s: %v", p.Name, p.checked.Fault)
			continue
		}
		if got, want := len(p.checked.Matched.Rows), len(p.Plan.Rows); got != want {
			t.Errorf("%s: %d rows, %d were written", p.Name, got, want)
			continue
		}
		for i, r := range p.checked.Matched.Rows {
			w := p.Plan.Rows[i]
			if r.At != w.Clock {
				t.Errorf("%s, row %d: at %s, %s was written (%q, %s)", p.Name, i+1, r.At, w.Clock, r.Written, r.Clock)
			}
			if !strings.Contains(r.Text, strings.Fields(w.Text)[0]) {
				t.Errorf("%s, row %d: %q was read of %q", p.Name, i+1, r.Text, w.Text)
			}
			if w.Dish != "all" && !slices.Equal(r.Letters, []string{w.Dish}) {
				t.Errorf("%s, row %d: dish %v, %s was written: %s", p.Name, i+1, r.Letters, w.Dish, w.Text)
			}
		}
	}
}

// family of findings, for the tally.
type tally struct{ planted, found, alarms, rows int }

// Planted faults are found, and sound plans are left in peace.
func TestPlantedFaultsAreFound(t *testing.T) {
	for _, folder := range []string{checktest.LookedAt, checktest.Second} {
		t.Run(folder, func(t *testing.T) { score(t, folder) })
	}
}

func score(t *testing.T, folder string) {
	t.Helper()
	families := map[string]*tally{}
	of := func(f string) *tally {
		if families[f] == nil {
			families[f] = &tally{}
		}
		return families[f]
	}
	family := map[int]string{}
	for _, r := range check.Usual().List() {
		if r.Fault > 0 {
			family[r.Fault] = r.Family
		}
	}
	var all tally
	for _, p := range checkPlanted(t, folder) {
		if p.Plan.Sound {
			all.rows += len(p.Plan.Rows)
			for _, f := range p.checked.Findings {
				all.alarms++
				of(f.Family).alarms++
				t.Logf("alarm: %s row %d: %s (%d, %s): %s", p.Name, f.Row, f.Rule, f.Fault, f.Severity, f.Evidence)
			}
			continue
		}
		for _, w := range p.Plan.Planted {
			all.planted++
			of(family[w.Faults[0]]).planted++
			if slices.ContainsFunc(p.checked.Findings, func(f check.Finding) bool { return meets(f, w) }) {
				all.found++
				of(family[w.Faults[0]]).found++
				continue
			}
			t.Logf("missed: %s: %v at rows %v: %s", p.Name, w.Faults, w.Rows, quoted(p.Plan, w))
		}
	}
	for _, f := range slices.Sorted(maps.Keys(families)) {
		t.Logf("%-10s %3d of %3d planted faults found, %3d false alarms", f, families[f].found, families[f].planted, families[f].alarms)
	}
	t.Logf("%d of %d planted faults found (%.1f %%); %d findings in %d rows of sound plans (1 in %.0f)",
		all.found, all.planted, 100*float64(all.found)/float64(all.planted), all.alarms, all.rows, float64(all.rows)/float64(max(1, all.alarms)))
	if 100*all.found < 95*all.planted {
		t.Errorf("fewer than 95 %% of the planted faults are found")
	}
	if 20*all.alarms > all.rows {
		t.Errorf("more than one false alarm in 20 rows of sound plans")
	}
}

func meets(f check.Finding, w checktest.Planted) bool {
	if !slices.Contains(w.Faults, f.Fault) {
		return false
	}
	return len(w.Rows) == 0 || slices.ContainsFunc(w.Rows, func(r int) bool { return r == f.Row || slices.Contains(f.Rows, r) })
}

func quoted(p checktest.Plan, w checktest.Planted) string {
	var b strings.Builder
	for _, r := range w.Rows {
		fmt.Fprintf(&b, "%s %s; ", p.Rows[r-1].Clock, p.Rows[r-1].Text)
	}
	return b.String()
}

// said are the rules of which one tells of a mishap of the cook who follows the
// plan. Hands that are behind because a row's time is wrong are told as that.
var said = map[checktest.MishapKind][]string{
	checktest.Burnt:    {"in-never-out", "oven-time-differs", "cook-time-implausible", "cook-time-missing"},
	checktest.Raw:      {"oven-time-differs", "cook-time-implausible"},
	checktest.Clash:    {"overfull-block", "two-hands-on", "too-little-time", "walks-away", "clock-backwards"},
	checktest.Overrun:  {"overrun", "overfull-block", "too-little-time"},
	checktest.ColdOven: {"not-pre-heated", "two-heats", "no-time-to-change", "not-turned", "temperature-differs"},
	checktest.Backward: {"clock-backwards"},
	checktest.Lost:     {"out-never-in"},
}

// Where the cook who follows a plan burns, clashes or overruns, the checker has said so.
func TestCookWasWarned(t *testing.T) {
	mishaps, warned := 0, 0
	for _, p := range append(checkPlanted(t, checktest.LookedAt), checkPlanted(t, checktest.Second)...) {
		for _, m := range checktest.Follow(p.Plan, int(p.practical.Allowed())) {
			mishaps++
			if slices.ContainsFunc(p.checked.Findings, func(f check.Finding) bool {
				return slices.Contains(said[m.Kind], f.Rule)
			}) {
				warned++
				continue
			}
			t.Logf("not warned: %s row %d: %s: %s", p.Name, m.Row, m.Kind, m.Text)
		}
	}
	t.Logf("warned of %d mishaps of %d", warned, mishaps)
	if mishaps < 50 || 100*warned < 95*mishaps {
		t.Errorf("warned of %d mishaps of %d", warned, mishaps)
	}
}
