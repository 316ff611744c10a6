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

// checkedFolders holds what checkPlanted has found: every test asks for the same.
var checkedFolders = map[string][]planted{}

// checkPlanted reads and checks every plan of a folder (invented by us).
func checkPlanted(t *testing.T, folder string) []planted {
	t.Helper()
	if all, done := checkedFolders[folder]; done {
		return all
	}
	documents, err := checktest.Documents(folder)
	if err != nil {
		t.Fatal(err)
	}
	var a App
	if testing.Short() {
		documents = checktest.Few(documents)
	}
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
	checkedFolders[folder] = all
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

// Rows of the layouts that were set out by another hand, which are read as they come.
func TestOtherLayoutsAreRead(t *testing.T) {
	type share struct{ right, all int }
	layouts := map[string]share{}
	right, all := 0, 0
	for _, p := range slices.Concat(checkPlanted(t, checktest.Third), checkPlanted(t, checktest.Fourth), checkPlanted(t, checktest.Fifth)) {
		if p.checked.Fault != nil {
			t.Logf("%s: %v", p.Name, p.checked.Fault)
		}
		n := rightRows(t, p)
		l := layouts[p.Layout]
		layouts[p.Layout] = share{l.right + n, l.all + len(p.Plan.Rows)}
		right, all = right+n, all+len(p.Plan.Rows)
	}
	for _, l := range slices.Sorted(maps.Keys(layouts)) {
		t.Logf("%-14s %3d of %3d rows read right", l, layouts[l].right, layouts[l].all)
	}
	t.Logf("%d of %d rows read right (%.1f %%)", right, all, 100*float64(right)/float64(all))
	if right < all { // at first 1812 of 2163 of the third set; of the fourth all
		t.Errorf("fewer rows are read right than were: all of them")
	}
}

// rightRows counts the rows that came out in their order with time, dish and first words.
func rightRows(t *testing.T, p planted) (right int) {
	t.Helper()
	next := 0
	for _, w := range p.Plan.Rows {
		words := strings.Fields(w.Text)
		first := strings.Join(words[:min(3, len(words))], " ")
		for k := next; k < len(p.checked.Matched.Rows); k++ {
			r := p.checked.Matched.Rows[k]
			if r.At == w.Clock && strings.Contains(r.Text, first) && (w.Dish == "all" || slices.Equal(r.Letters, []string{w.Dish})) {
				right++
				next = k + 1
				break
			}
		}
	}
	if right < len(p.Plan.Rows) {
		t.Logf("%s: %d rows were read, %d are right of %d written", p.Name, len(p.checked.Matched.Rows), right, len(p.Plan.Rows))
	}
	return right
}

// family of findings, for the tally.
type tally struct{ planted, found, alarms, rows int }

// goal is how many of 100 planted faults are found at least, and in how many
// rows of sound plans there is one false alarm at most.
type goal struct{ found, rows int }

// Planted faults are found, and sound plans are left in peace.
func TestPlantedFaultsAreFound(t *testing.T) {
	for folder, least := range map[string]goal{
		checktest.LookedAt: {95, 20},
		checktest.Second:   {95, 20},
		checktest.Fourth:   {80, 10}, // at first sight; before what was no fault was taken out, 26 of 36 and 11 in 101 rows
		checktest.Fifth:    {88, 20}, // at first sight 49 of 62, and 21 in 242 rows
		checktest.Third:    {75, 8},  // at first 88 of 115, and 25 in 257 rows; later 87, when eggs that boiled too long in scotch-1 were mended, and 29
	} {
		t.Run(folder, func(t *testing.T) { score(t, folder, least) })
	}
}

func score(t *testing.T, folder string, least goal) {
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
	if testing.Short() {
		return // shares of a few say nothing
	}
	if 100*all.found < least.found*all.planted {
		t.Errorf("fewer than %d %% of the planted faults are found", least.found)
	}
	if least.rows*all.alarms > all.rows {
		t.Errorf("more than one false alarm in %d rows of sound plans", least.rows)
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
	checktest.Clash:    {"overfull-block", "two-hands-on", "too-little-time", "walks-away", "shared-kit", "clock-backwards"},
	checktest.Overrun:  {"overrun", "overfull-block", "too-little-time"},
	checktest.ColdOven: {"not-pre-heated", "two-heats", "no-time-to-change", "not-turned", "temperature-differs"},
	checktest.Backward: {"clock-backwards"},
	checktest.Lost:     {"out-never-in"},
}

// Where the cook who follows a plan burns, clashes or overruns, the checker has said so.
func TestCookWasWarned(t *testing.T) {
	for _, folder := range []string{checktest.LookedAt, checktest.Second, checktest.Third, checktest.Fourth, checktest.Fifth} {
		if mishaps, warned := follow(t, folder); !testing.Short() && (mishaps == 0 || 100*warned < 90*mishaps) {
			t.Errorf("%s: warned of %d mishaps of %d", folder, warned, mishaps)
		}
	}
}

// follow counts the mishaps in the plans of folders, and those that a finding tells of.
func follow(t *testing.T, folders ...string) (mishaps, warned int) {
	t.Helper()
	var all []planted
	for _, f := range folders {
		all = append(all, checkPlanted(t, f)...)
	}
	for _, p := range all {
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
	return mishaps, warned
}
