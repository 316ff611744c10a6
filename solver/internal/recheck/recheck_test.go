package recheck

import (
	"fmt"
	"strings"
	"testing"

	"plait.example/solver/internal/brute"
	"plait.example/solver/problem"
)

// two jobs of 3 and 4 on one machine: the second cannot end before 7.
func twoJobs() *problem.Problem {
	job := func(length int) problem.Activity {
		return problem.Activity{MinDuration: length, MaxDuration: length, Modes: []problem.Mode{{Uses: []problem.Use{{Amount: 1}}}}}
	}
	return &problem.Problem{Horizon: 10, Activities: []problem.Activity{job(3), job(4)}, Resources: []problem.Resource{{Capacity: 1}}}
}

const (
	header = "proof 1 activities 2 horizon 10 objectives 1\nlet s0 start 0\nlet s1 start 1\nlet b1 lag s0+3 s1 0\nlet last makespan\nlet b2 all b1 last<=8\n"
	footer = "starts 0 3\nends 3 7\nmodes 0 0\nvalue 0 7 bound 7\nend optimal\n"
)

// TestStepsByHand judges single steps whose truth can be told by hand.
func TestStepsByHand(t *testing.T) {
	for _, c := range []struct {
		steps string
		want  string // of the report: propagated, searched, unchecked, refuted, faults, proved
	}{
		{"bound 0 7", "1 0 0 0 0 true"},                                       // 3 + 4
		{"bound 0 8", "1 0 0 1 1 false"},                                      // 7 can be had; the bound of the claim is right
		{"clause !b1 s1>=3\nbound 0 7", "2 0 0 0 0 true"},                     // first comes first: the other starts at 3 or later
		{"clause !b1 s1>=4\nbound 0 7", "1 0 0 1 1 false"},                    // or at 3
		{"clause b1 s0>=4\nbound 0 7", "2 0 0 0 0 true"},                      // the other way round, it is 4
		{"clause b1\nbound 0 7", "1 0 0 1 1 false"},                           // either order can be
		{"clause !b2 s1<=4\nbound 0 7", "2 0 0 0 0 true"},                     // ends by 8, so starts by 4
		{"clause s0<=2 s0>=3\nbound 0 7", "2 0 0 0 0 true"},                   // always so
		{"clause s0<=7\nclause s1<=6\nbound 0 7\nkeep 0 7", "3 0 0 0 0 true"}, // the horizon
		{"keep 0 6", "0 0 0 0 1 false"},                                       // the schedule has 7
		{"bound 1 0\nbound 0 7", "1 0 0 0 1 false"},                           // there is no objective 1
		{"let s0 start 0\nbound 0 7", "1 0 0 0 1 false"},                      // twice
		{"let c9 start 2\nbound 0 7", "1 0 0 0 1 false"},                      // there is no third activity
		{"let c9 place 0 0 1\nbound 0 7", "1 0 0 0 1 false"},                  // there are no states
		{"clause s0=3\nbound 0 7", "1 0 0 0 1 false"},
		{"clause s0>=x\nbound 0 7", "1 0 0 0 1 false"},
		{"clause s0>=9999999999999999999999\nbound 0 7", "1 0 0 0 1 false"},
		{"so it is\nbound 0 7", "1 0 0 0 1 false"},
	} {
		r, err := Replay(twoJobs(), strings.NewReader(header+c.steps+"\n"+footer), 100)
		if err != nil {
			t.Fatal(err)
		}
		got := fmt.Sprint(r.Propagated, r.Searched, r.Unchecked, r.Refuted, len(r.Faults), r.Proved)
		if got != c.want {
			t.Errorf("%q: %s, want %s\n%v", c.steps, got, c.want, r)
		}
	}
}

// TestBoundsAgainstEveryScheduleTried asks about bounds at, below and above
// the best value found by trying every schedule, and about infeasibility.
func TestBoundsAgainstEveryScheduleTried(t *testing.T) {
	right, wrong, none, open := 0, 0, 0, 0
	for seed := uint64(0); seed < 200; seed++ {
		p := brute.Random(seed)
		head := fmt.Sprintf("proof 1 activities %d horizon %d objectives %d\n", len(p.Activities), p.Horizon, max(1, len(p.Objectives)))
		best, found := brute.Best(p)
		ask := func(step string) *Report {
			r, err := Replay(p, strings.NewReader(head+step), 5000)
			if err != nil {
				t.Fatal(err)
			}
			open += r.Unchecked
			return r
		}
		if r := ask("end infeasible\n"); r.Unchecked == 0 && r.Proved == found {
			t.Errorf("seed %d: infeasible is said to be proved: %v; a schedule is there: %v", seed, r.Proved, found)
		}
		if !found {
			none++
			continue
		}
		for v := best - 1; v <= best+2; v++ {
			r := ask(fmt.Sprintf("bound 0 %d\nend unknown\n", v))
			if r.Unchecked == 0 && (r.Refuted == 0) != (v <= best) {
				t.Errorf("seed %d: bound %d of a best value %d: %v", seed, v, best, r)
			}
			if v <= best {
				right++
			} else {
				wrong++
			}
		}
	}
	t.Logf("%d bounds that hold, %d that do not, %d problems without a schedule, %d not answered", right, wrong, none, open)
	if right < 150 || none < 60 || open > 10 {
		t.Error("too few questions, or too few answers, to mean much")
	}
}

// FuzzReplay: whatever stands in a log, it is read without a panic, and 8 is
// never a proved bound of a problem whose best value is 7.
func FuzzReplay(f *testing.F) {
	f.Add(header + "bound 0 7\n" + footer)
	f.Add(header + "let d1 span s0 s1+4 2\nsum 0 3 d1\nclause d1<=5 s1>=3\nbound 0 7\n" + footer)
	f.Add(header + "clause !b1 s1>=3\nkeep 0 7\nbound 0 8\nchange 0 0 0\n" + footer)
	f.Fuzz(func(t *testing.T, log string) {
		r, err := Replay(twoJobs(), strings.NewReader(log), 50)
		if err != nil {
			return
		}
		if r.Proved && (r.Status == "infeasible" || len(r.Bounds) > 0 && r.Bounds[0] > 7) {
			t.Errorf("%v, bounds %v", r, r.Bounds)
		}
	})
}
