package check

import (
	"maps"
	"os"
	"slices"
	"strings"
	"testing"

	"plait.example/internal/check/checktest"
	"plait.example/internal/match"
	"plait.example/internal/practical"
	"plait.example/internal/written"
)

// menu is the practical of a plan of the corpus. The files in testdata are what
// was read of the menus' recipes, so that no reader of recipes is needed here.
func menu(t testing.TB, p checktest.Plan) *practical.Practical {
	t.Helper()
	place := "testdata/"
	if strings.HasPrefix(p.Folder, "fresh/") {
		place = "testdata/fresh/"
	}
	data, err := os.ReadFile(place + p.Menu + ".yaml")
	if err != nil {
		t.Fatal(err)
	}
	got, faults := practical.Parse(p.Menu, data)
	if len(faults) > 0 {
		t.Fatal(faults)
	}
	if p.Finish != "" {
		if got.Clock.Finish, err = practical.ParseTimeOfDay(p.Finish); err != nil {
			t.Fatal(err)
		}
	}
	got.Clock.Extra.Cook = p.Extra
	if p.Rings > 0 {
		got.Kitchen.Rings = p.Rings
	}
	if p.Shelves > 0 {
		got.Kitchen.Ovens[0].Shelves = p.Shelves
	}
	if p.OneGrill {
		got.Kitchen.Grill = practical.GrillInOven
	}
	return got
}

// writtenPlan is a plan of the corpus as the reader of documents gives it.
func writtenPlan(t testing.TB, p checktest.Plan) written.Plan {
	out := written.Plan{Name: p.Name}
	names := map[string]string{"all": "all"}
	dishes := checktest.Names[p.Menu]
	if dishes == nil {
		for _, d := range menu(t, p).Dishes {
			dishes = append(dishes, [2]string{d.Letter, d.Name})
		}
	}
	for _, n := range dishes {
		names[n[0]] = n[1]
		out.Dishes = append(out.Dishes, written.Named{Letter: n[0], Name: n[1]})
	}
	for i, r := range p.Rows {
		row := written.Row{Number: i + 1, Line: i, Written: r.Clock.String(), Clock: written.Said, At: r.Clock, Text: r.Text, Points: r.Points}
		if r.Dish != "all" {
			row.Dishes = []string{names[r.Dish]}
		}
		out.Rows = append(out.Rows, row)
	}
	return out
}

// seenAs is how much is known of the practical when a plan of the corpus is checked.
var seenAs = map[string]func(t testing.TB, p checktest.Plan) match.Matched{
	"with its recipes": func(t testing.TB, p checktest.Plan) match.Matched {
		return match.Match(writtenPlan(t, p), menu(t, p), nil)
	},
	"with its kitchen": func(t testing.TB, p checktest.Plan) match.Matched {
		kitchen := menu(t, p)
		kitchen.Dishes = nil
		m := match.Match(writtenPlan(t, p), nil, nil)
		m.Practical = kitchen
		return m
	},
	"alone": func(t testing.TB, p checktest.Plan) match.Matched { return match.Match(writtenPlan(t, p), nil, nil) },
}

// matchedPlans keeps the plans of the corpus beside their recipes, by name:
// several tests look at them and none changes them.
var matchedPlans = map[string]match.Matched{}

func matchedTo(t testing.TB, p checktest.Plan) match.Matched {
	t.Helper()
	m, there := matchedPlans[p.Name]
	if !there {
		m = seenAs["with its recipes"](t, p)
		matchedPlans[p.Name] = m
	}
	return m
}

func corpus(t testing.TB, folder string) (sound, faulty []checktest.Plan) {
	t.Helper()
	sound, err := checktest.Sound(folder)
	if err != nil {
		t.Fatal(err)
	}
	if faulty, err = checktest.Faulty(folder); err != nil {
		t.Fatal(err)
	}
	return sound, faulty
}

// folders are the sets of plans: the rules were written with the first before
// them; the second and the third were made by another hand and looked at when
// the rules stood.
var folders = []string{checktest.LookedAt, checktest.Second, checktest.Third}

// mostAlarms is the rows of sound plans for which one finding is too many.
const mostAlarms = 20

// Sound plans are left in peace, whatever is known besides.
func TestSoundPlans(t *testing.T) {
	for _, folder := range folders {
		for _, how := range slices.Sorted(maps.Keys(seenAs)) {
			alarms(t, folder, how)
		}
	}
}

func alarms(t *testing.T, folder, how string) {
	t.Helper()
	sound, _ := corpus(t, folder)
	alarms, rows := 0, 0
	for _, p := range sound {
		found := Run(seenAs[how](t, p), Options{})
		alarms, rows = alarms+len(found), rows+len(p.Rows)
		if len(found) > 0 { // what each plan is told, to be read when it is too much
			t.Logf("%s, %s:\n%s", how, p.Name, shown(found))
		}
	}
	t.Logf("%s, %s: %d findings in %d rows of %d sound plans", folder, how, alarms, rows, len(sound))
	if alarms*mostAlarms > rows {
		t.Errorf("%s, %s: more than one finding in %d rows of sound plans", folder, how, mostAlarms)
	}
}

// Planted faults are found: 95 of 100 in all, and in no set fewer than 90.
func TestPlantedFaults(t *testing.T) {
	all, told := 0, 0
	for _, folder := range folders {
		planted, found := plantedIn(t, folder)
		t.Logf("%s: %d of %d planted faults found", folder, found, planted)
		if found*100 < planted*90 {
			t.Errorf("%s: fewer than 90 of 100 planted faults are found", folder)
		}
		all, told = all+planted, told+found
	}
	if told*100 < all*95 {
		t.Errorf("%d of %d planted faults are found, fewer than 95 of 100", told, all)
	}
}

// plantedIn counts the planted faults of a set and those that are found.
func plantedIn(t *testing.T, folder string) (planted, found int) {
	t.Helper()
	_, faulty := corpus(t, folder)
	for _, p := range faulty {
		all := Run(matchedTo(t, p), Options{})
		for _, w := range p.Planted {
			planted++
			if slices.ContainsFunc(all, func(f Finding) bool { return meets(f, w) }) {
				found++
				continue
			}
			t.Logf("missed: %s: fault %v in rows %v", p.Name, w.Faults, w.Rows)
			for _, n := range w.Rows {
				t.Logf("    %s", p.Rows[n-1].Text)
			}
			t.Logf("found:\n%s", shown(all))
		}
	}
	return planted, found
}

func meets(f Finding, w checktest.Planted) bool {
	if !slices.Contains(w.Faults, f.Fault) {
		return false
	}
	return len(w.Rows) == 0 || slices.ContainsFunc(w.Rows, func(n int) bool { return slices.Contains(f.Rows, n) })
}
