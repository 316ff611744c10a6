package check

import (
	"slices"
	"testing"

	"plait.example/internal/check/checktest"
	"plait.example/internal/match"
)

// freshScore is what is counted of a folder of fresh plans.
type freshScore struct{ rows, matched, planted, found, soundRows, alarms int }

// Plans in many voices: each folder was scored at first sight, and the scores
// stand in docs/checking.md. The floors are those after causes were mended.
func TestFreshPlans(t *testing.T) {
	for _, folder := range checktest.Fresh {
		s := scoreFresh(t, folder)
		t.Logf("%s: rows matched %d of %d (%.1f %%), planted faults found %d of %d (%.1f %%), %d findings in %d rows of sound plans",
			folder, s.matched, s.rows, 100*float64(s.matched)/float64(s.rows), s.found, s.planted, 100*float64(s.found)/float64(s.planted), s.alarms, s.soundRows)
	}
}

func scoreFresh(t *testing.T, folder string) (s freshScore) {
	t.Helper()
	sound, _ := corpus(t, folder)
	for _, p := range sound {
		m := matchedTo(t, p)
		for i, r := range p.Rows {
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
