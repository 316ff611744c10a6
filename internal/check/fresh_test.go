package check

import (
	"slices"
	"testing"

	"plait.example/internal/check/checktest"
	"plait.example/internal/match"
)

// freshMatched and freshFound are held of the fresh plans now, in a hundred.
const freshMatched, freshFound = 95, 90

// freshScore is what is counted of a folder of fresh plans.
type freshScore struct{ rows, matched, planted, found, soundRows, alarms int }

// Plans in many voices, and the fifth set: each folder was scored at first sight, and the scores
// stand in docs/checking.md. The floors are those after causes were mended.
func TestFreshPlans(t *testing.T) {
	folders := append([]string{checktest.Fifth}, checktest.Fresh...)
	if testing.Short() {
		folders = folders[len(folders)-1:]
	}
	for _, folder := range folders {
		s := scoreFresh(t, folder)
		if folder != checktest.Fifth && s.matched*100 < s.rows*freshMatched { // the fifth says no steps
			t.Errorf("%s: fewer than %d of 100 rows are matched", folder, freshMatched)
		}
		if s.found*100 < s.planted*freshFound || s.alarms*mostAlarms > s.soundRows {
			t.Errorf("%s: fewer than %d of 100 faults are found, or more than one finding in %d sound rows", folder, freshFound, mostAlarms)
		}
		t.Logf("%s: rows matched %d of %d (%.1f %%), planted faults found %d of %d (%.1f %%), %d findings in %d rows of sound plans",
			folder, s.matched, s.rows, 100*float64(s.matched)/float64(max(1, s.rows)), s.found, s.planted, 100*float64(s.found)/float64(s.planted), s.alarms, s.soundRows)
	}
}

func scoreFresh(t *testing.T, folder string) (s freshScore) {
	t.Helper()
	sound, _ := corpus(t, folder)
	for _, p := range sound {
		m := matchedTo(t, p)
		for i, r := range p.Rows {
			if folder == checktest.Fifth {
				break // it says no steps
			}
			s.rows++
			if stands(m.Rows[i].Steps, r.Steps) {
				s.matched++
			} else {
				t.Logf("%s %s %q: %v, want %v", p.Name, r.Mark, r.Text, m.Rows[i].Steps, r.Steps)
			}
		}
		found := Run(m, Options{})
		s.alarms, s.soundRows = s.alarms+len(found), s.soundRows+len(p.Rows)
		if len(found) > 0 {
			t.Logf("%s:\n%s", p.Name, shown(found))
		}
	}
	s.planted, s.found = plantedIn(t, folder)
	return s
}

// stands says whether the steps are those that were written beside the row.
func stands(got []match.Step, want []string) bool {
	for _, w := range want {
		if w[0] != '(' && !slices.ContainsFunc(got, func(s match.Step) bool { return s.ID == w }) {
			return false
		}
	}
	return !slices.ContainsFunc(got, func(s match.Step) bool {
		return !slices.Contains(want, s.ID) && !slices.Contains(want, "("+s.ID+")")
	})
}
