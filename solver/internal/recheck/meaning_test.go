package recheck

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"plait.example/solver/internal/brute"
	"plait.example/solver/problem"
)

// everything defines all that a log can speak of in p.
func everything(p *problem.Problem) string {
	var b strings.Builder
	count := 0
	let := func(format string, args ...any) {
		count++
		fmt.Fprintf(&b, "let v%d "+format+"\n", append([]any{count}, args...)...)
	}
	for i, a := range p.Activities {
		fmt.Fprintf(&b, "let s%d start %d\nlet e%d end %d\n", i, i, i, i)
		for m := range a.Modes {
			if len(a.Modes) > 1 {
				let("mode %d %d", i, m)
			}
		}
	}
	let("makespan")
	for i := range p.Activities {
		for j := range i {
			let("lag e%d s%d+1 -2", i, j)
			let("all v%d v%d>=0", count, count)
		}
	}
	for k, st := range p.States {
		let("switches %d", k)
		for i := range p.Activities {
			for l := range st.Levels {
				let("level %d %d %d 0", i, k, l)
				let("source %d %d %d", i, k, l)
				for to, w := range st.Change[l] {
					if to != l {
						let("kind %d %d %d %d", i, k, w.Work, w.Settle)
					}
				}
			}
			let("place %d %d %d", i, k, 1+k%2)
			let("change %d %d %d", i, k, st.ChangeFrom)
			let("worked %d %d", i, k)
			let("turn %d %d", i, k)
			for j := range p.Activities {
				if i != j {
					for _, kind := range []string{"same", "before", "next"} {
						let("%s %d %d %d", kind, i, j, k)
					}
				}
			}
		}
	}
	return b.String()
}

// TestRightSchedulesPass holds schedules that the judge accepted, found by
// trying them all, against every rule and every definition at once: none may
// be refused. One with an activity moved before time 0 is.
func TestRightSchedulesPass(t *testing.T) {
	passed, changes := 0, 0
	for seed := range uint64(500) {
		p := brute.Random(seed)
		if len(p.States) == 0 && seed%5 > 0 {
			continue
		}
		values, s, found := brute.Lexicographic(p)
		if !found {
			continue
		}
		var log strings.Builder
		fmt.Fprintf(&log, "proof 1 activities %d horizon %d objectives %d\n%s", len(p.Activities), p.Horizon, max(1, len(p.Objectives)), everything(p))
		write := func(s *problem.Solution) string {
			var b strings.Builder
			fmt.Fprintf(&b, "starts %s\nends %s\nmodes %s\n", spaced(s.Start), spaced(s.End), spaced(s.Mode))
			for _, c := range s.Changes {
				fmt.Fprintf(&b, "change %d %d %d\n", c.State, c.Level, c.At)
			}
			for k, v := range values {
				fmt.Fprintf(&b, "value %d %d bound %d\n", k, v, v-1000)
			}
			return b.String() + "end feasible\n"
		}
		r, err := Replay(p, strings.NewReader(log.String()+write(s)), 2000)
		if err != nil || len(r.Faults) > 0 || !slices.Equal(r.Values, values) {
			t.Fatalf("seed %d: error %v, %v, values %v, want %v\n%s%s", seed, err, r, r.Values, values, log.String(), write(s))
		}
		passed++
		changes += len(s.Changes)
		s.Start[0] -= 1000
		if r, err = Replay(p, strings.NewReader(log.String()+write(s)), 2000); err != nil || r.Sound() {
			t.Errorf("seed %d: error %v, a wrong schedule passes", seed, err)
		}
	}
	if passed < 100 || changes < 30 {
		t.Errorf("only %d schedules with %d changes", passed, changes)
	}
}

func spaced(list []int) string { return strings.Trim(fmt.Sprint(list), "[]") }
