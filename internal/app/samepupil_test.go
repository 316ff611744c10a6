package app

import "testing"

// Names that mark a version of one pupil's plan are the same; figures and
// folders that tell pupils apart are not.
func TestBareName(t *testing.T) {
	for _, c := range []struct {
		a, b string
		same bool
	}{
		{"ash.docx", "ash-v2.docx", true},
		{"old/ash.docx", "week 2/ash draft 2.docx", true},
		{"student1.docx", "student2.xlsx", false},
		{"8C 03.docx", "8C 04.docx", false},
		{"anna/plan.csv", "ben/plan.csv", false},
		{"anna/plan.csv", "anna/plan final.csv", true},
		{"plan (1).docx", "plan (2).docx", false},
		{"Zoë.docx", "zoë_v3.docx", true},
	} {
		if got := bareName(c.a) == bareName(c.b); got != c.same {
			t.Errorf("%q is %q, %q is %q", c.a, bareName(c.a), c.b, bareName(c.b))
		}
	}
}
