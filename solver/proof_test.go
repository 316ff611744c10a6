package solver_test

import (
	"bytes"
	"context"
	"regexp"
	"testing"

	"plait.example/solver"
	"plait.example/solver/internal/brute"
	"plait.example/solver/internal/recheck"
	"plait.example/solver/problem"
)

// logged solves p and returns the log of the proof.
func logged(t testing.TB, p *problem.Problem, o solver.Options) (solver.Result, []byte) {
	t.Helper()
	var log bytes.Buffer
	o.Proof = &log
	r, err := solver.Solve(context.Background(), p, o)
	if err != nil {
		t.Fatal(err)
	}
	return r, log.Bytes()
}

func replayed(t testing.TB, p *problem.Problem, log []byte, nodes int) *recheck.Report {
	t.Helper()
	r, err := recheck.Replay(p, bytes.NewReader(log), nodes)
	if err != nil {
		t.Fatal(err)
	}
	return r
}

// TestProofsOfRandomProblems replays the proofs of small random problems with
// lags, choices, modes, calendars, states and up to three objectives: nothing
// is refuted, and next to nothing stays unchecked.
func TestProofsOfRandomProblems(t *testing.T) {
	var sum recheck.Report
	infeasible, open := 0, 0
	for seed := range uint64(drawn(2000)) {
		p := brute.Random(seed)
		_, log := logged(t, p, solver.Options{Seed: int64(seed)})
		r := replayed(t, p, log, 5000)
		if !r.Proved {
			open++
		}
		sum.Unchecked += r.Unchecked
		if !r.Sound() {
			t.Fatalf("seed %d: %v\n%s", seed, r, log)
		}
		if r.Status == "infeasible" {
			infeasible++
		}
		sum.Propagated += r.Propagated
		sum.Searched += r.Searched
	}
	t.Logf("%d steps by propagation, %d by search, %d unchecked; %d problems infeasible, %d claims not proved",
		sum.Propagated, sum.Searched, sum.Unchecked, infeasible, open)
	share := 100
	if testing.Short() {
		share = 75 // the scatter is wider
	}
	if share*sum.Unchecked > sum.Propagated || open > 10 {
		t.Error("too much is left unchecked")
	}
	if sum.Searched < drawn(100) || infeasible < drawn(400) {
		t.Error("the problems are too easy to mean much")
	}
}

// long are the published instances whose proofs take too long to find here, and
// the one that is not proved.
var long = regexp.MustCompile(`^(j120|j3013_5|j605_5|j6042_3)`)

// longer are those that take most of the time of the rest: left to the runs
// without -short.
var longer = regexp.MustCompile(`^j60|^j3025_9|^ubo100`)

// TestProofsOfPublished replays whole proofs of published instances: optimal
// ones and infeasible ones. Every step is shown by propagation, without any
// search, and the value proved is the published one.
func TestProofsOfPublished(t *testing.T) {
	for _, in := range instances(t) {
		if long.MatchString(in.file) || testing.Short() && longer.MatchString(in.file) {
			continue
		}
		t.Run(in.file, func(t *testing.T) {
			p := read(t, in.file)
			_, log := logged(t, p, solver.Options{Seed: 1})
			r := replayed(t, p, log, 0)
			want := "infeasible"
			if in.feasible {
				want = "optimal"
			}
			if !r.Proved || r.Status != want || r.Unchecked > 0 {
				t.Errorf("%v; want %s, proved", r, want)
			}
			if in.feasible && (len(r.Bounds) != 1 || r.Bounds[0] != in.best || r.Values[0] != in.best) {
				t.Errorf("value %v, bound %v; published %d", r.Values, r.Bounds, in.best)
			}
			t.Log(r)
		})
	}
}
