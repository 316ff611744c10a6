package recheck

import (
	"fmt"
	"strings"
	"testing"

	"plait.example/solver/problem"
)

// Two jobs of 3 and 4, the second at least 2 after the first: from the start of
// the first to the end of the second it is at least 3 + 2 + 4 = 9, wherever they
// are. What the log claims at its end is checked whatever was wrong before, and
// is one step more where no bound was shown.
func TestSpansByHand(t *testing.T) {
	p := twoJobs()
	p.Horizon = 30
	p.Lags = []problem.Lag{{From: problem.End(0), To: problem.Start(1), Min: 2}}
	p.Objectives = []problem.Objective{{Terms: []problem.Term{{Point: problem.Start(0), Weight: -2}, {Point: problem.End(1), Weight: 2}, {Point: problem.Start(1), Weight: 1}}}}
	head := "proof 1 activities 2 horizon 30 objectives 1\nlet s0 start 0\nlet e1 end 1\nlet s1 start 1\n"
	tail := "starts 0 5\nends 3 9\nmodes 0 0\nvalue 0 23 bound 23\nend optimal\n"
	// The value is 2*9 + 5, as the second job starts at 5 or later.
	for _, c := range []struct {
		steps string
		want  string // of the report: propagated, refuted, faults, proved
	}{
		{"let d1 span s0 e1 9\nsum 0 2 d1\nbound 0 23", "1 0 0 true"},
		{"let d1 span s0 s1+4 -3\nsum 0 2 d1\nbound 0 23", "1 0 0 true"}, // the same end, another base
		{"let d1 span s1 e1 4\nsum 0 7 d1\nbound 0 24", "1 1 1 false"},   // still the same sum: 23 can be had
		{"let d1 span s0 e1 9\nclause d1>=1", "1 1 1 false"},
		{"let d1 span s0 e1 9\nclause d1>=0\nsum 0 2 d1\nbound 0 23", "2 0 0 true"},
		{"let d1 span s0 e1 9\nsum 0 2 s1\nbound 0 23", "1 0 1 false"}, // s1 is no span
		{"let d1 span s0 e1 9\nsum 1 2 d1\nbound 0 23", "1 0 1 false"},
		{"let d1 span s0 e1 9\nsum 0 2\nbound 0 23", "1 0 1 false"},
		{"let d1 span s0 e1 9\nsum 0 99999999999999999 d1\nbound 0 23", "1 0 1 false"},
		{"let d1 span s0 e1 9000\nbound 0 23", "1 0 1 false"}, // farther than can be
	} {
		r, err := Replay(p, strings.NewReader(head+c.steps+"\n"+tail), 100)
		if err != nil {
			t.Fatal(err)
		}
		got := fmt.Sprint(r.Propagated, r.Refuted, len(r.Faults), r.Proved)
		if got != c.want {
			t.Errorf("%q: %s, want %s\n%v", c.steps, got, c.want, r)
		}
	}
}
