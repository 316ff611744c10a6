package solver_test

import (
	"context"
	"encoding/json"
	"slices"
	"testing"
	"time"

	"plait.example/solver"
	"plait.example/solver/problem"
	"plait.example/solver/verify"
)

// TestSameSeedSameAnswer repeats a search that a limit cuts short.
func TestSameSeedSameAnswer(t *testing.T) {
	p := workshop(1, 2, 12)
	var texts []string
	for range 2 {
		r, err := solver.Solve(context.Background(), p, solver.Options{Seed: 5, Effort: 400})
		if err != nil {
			t.Fatal(err)
		}
		r.Stats.Elapsed = 0
		text, err := json.Marshal(r)
		if err != nil {
			t.Fatal(err)
		}
		texts = append(texts, string(text))
	}
	if texts[0] != texts[1] {
		t.Errorf("two runs differ:\n%s\n%s", texts[0], texts[1])
	}
}

// TestLittleMemory solves with memory for little more than the problem: what
// is told then is still a judged schedule and a bound, and the search ends
// long before its effort.
func TestLittleMemory(t *testing.T) {
	p := read(t, "j3013_5.sm")
	r, err := solver.Solve(context.Background(), p, solver.Options{Memory: 60_000, Effort: 1 << 40})
	if err != nil || r.Status != solver.Feasible || len(verify.Check(p, r.Solution)) > 0 || r.Bound > 67 {
		t.Errorf("error %v, status %v, bound %d; want a schedule and a bound below the published 67", err, r.Status, r.Bound)
	}
	if testing.Short() {
		return // the proof below is long; runs without -short have it
	}
	r, err = solver.Solve(context.Background(), p, solver.Options{Memory: 1 << 30, Effort: 1 << 40})
	if err != nil || r.Status != solver.Optimal || r.Bound != 67 {
		t.Errorf("with a gigabyte: error %v, status %v, bound %d; want the published optimum 67", err, r.Status, r.Bound)
	}
}

// TestOrderOfActivitiesDoesNotMatter turns the activities round.
func TestOrderOfActivitiesDoesNotMatter(t *testing.T) {
	for seed := range uint64(4) {
		p := workshop(seed, 2, 6)
		q := reversed(p)
		var values [][]solver.Level
		for _, p := range []*problem.Problem{p, q} {
			r, err := solver.Solve(context.Background(), p, solver.Options{})
			if err != nil {
				t.Fatal(err)
			}
			values = append(values, r.Levels)
		}
		if !values[0][0].Proved || !slices.Equal(values[0], values[1]) {
			t.Errorf("seed %d: %+v; reversed %+v", seed, values[0], values[1])
		}
	}
}

// reversed is the same problem with the activities in the opposite order.
func reversed(p *problem.Problem) *problem.Problem {
	q := *p
	n := len(p.Activities)
	point := func(pt problem.Point) problem.Point {
		if pt.Activity != problem.Origin {
			pt.Activity = n - 1 - pt.Activity
		}
		return pt
	}
	q.Activities = slices.Clone(p.Activities)
	slices.Reverse(q.Activities)
	q.Lags = slices.Clone(p.Lags)
	for i, l := range q.Lags {
		q.Lags[i].From, q.Lags[i].To = point(l.From), point(l.To)
	}
	q.Objectives = slices.Clone(p.Objectives)
	for k, o := range q.Objectives {
		q.Objectives[k].Terms = slices.Clone(o.Terms)
		for i, term := range o.Terms {
			q.Objectives[k].Terms[i].Point = point(term.Point)
		}
	}
	return &q
}

// TestStart begins from a known solution; with almost no effort the answer is
// no worse than that. A start that breaks a demand is ignored.
func TestStart(t *testing.T) {
	p := workshop(2, 2, 8)
	good, err := solver.Solve(context.Background(), p, solver.Options{})
	if err != nil {
		t.Fatal(err)
	}
	r, err := solver.Solve(context.Background(), p, solver.Options{Effort: 1, Start: good.Solution})
	if err != nil {
		t.Fatal(err)
	}
	if r.Levels[0].Value != good.Levels[0].Value {
		t.Errorf("from a start of %d the answer is %d", good.Levels[0].Value, r.Levels[0].Value)
	}
	bad := *good.Solution
	bad.Start = slices.Repeat([]int{0}, len(p.Activities))
	bad.End = slices.Repeat([]int{1}, len(p.Activities))
	r, err = solver.Solve(context.Background(), p, solver.Options{Start: &bad})
	if err != nil || r.Status != solver.Optimal || r.Levels[0].Value != good.Levels[0].Value {
		t.Errorf("from a bad start: %v, %+v", err, r.Levels)
	}
}

// TestImproved watches values fall and bounds rise, every solution right.
func TestImproved(t *testing.T) {
	p := workshop(3, 2, 8)
	value, bound, calls := 1<<30, 0, 0
	_, err := solver.Solve(context.Background(), p, solver.Options{Improved: func(pr solver.Progress) {
		calls++
		if breaches := verify.Check(p, pr.Solution); breaches != nil {
			t.Fatalf("call %d: %v", calls, breaches)
		}
		if pr.Level > 0 {
			return
		}
		if pr.Value > value || pr.Bound < bound || pr.Bound > pr.Value {
			t.Errorf("call %d: value %d after %d, bound %d after %d", calls, pr.Value, value, pr.Bound, bound)
		}
		value, bound = pr.Value, pr.Bound
	}})
	if err != nil || calls == 0 || value != bound {
		t.Errorf("error %v, %d calls, value %d, bound %d", err, calls, value, bound)
	}
}

// TestLimits: a context already over is an error; one that ends during the
// search gives the best so far, and so does the time limit.
func TestLimits(t *testing.T) {
	p := workshop(0, 4, 20)
	over, cancel := context.WithCancel(context.Background())
	cancel()
	if _, err := solver.Solve(over, p, solver.Options{}); err == nil {
		t.Error("no error from a cancelled context")
	}
	ctx, cancel := context.WithCancel(context.Background())
	defer cancel()
	r, err := solver.Solve(ctx, p, solver.Options{Improved: func(solver.Progress) { cancel() }})
	if err != nil || r.Status != solver.Feasible || r.Solution == nil || r.Bound < 1 {
		t.Errorf("cancelled: error %v, status %v, bound %d", err, r.Status, r.Bound)
	}
	r, err = solver.Solve(context.Background(), p, solver.Options{Time: time.Nanosecond})
	if err != nil || r.Status != solver.Unknown || r.Bound < 1 {
		t.Errorf("out of time: error %v, status %v, bound %d", err, r.Status, r.Bound)
	}
}
