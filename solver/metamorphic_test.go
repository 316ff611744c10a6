package solver_test

import (
	"context"
	"strings"
	"testing"

	"plait.example/solver"
	"plait.example/solver/problem"
)

// What must not change the answer, or must change it in a known way.

func answerOf(t *testing.T, p *problem.Problem) (solver.Status, []int) {
	t.Helper()
	r, err := solver.Solve(context.Background(), p, solver.Options{Seed: 1})
	if err != nil {
		t.Fatal(err)
	}
	var values []int
	for _, l := range r.Levels {
		values = append(values, l.Value)
	}
	return r.Status, values
}

// scaled is p with every time k times as long.
func scaled(p *problem.Problem, k int) *problem.Problem {
	q := problem.Without(p, nil)
	q.Horizon *= k
	for i := range q.Activities {
		q.Activities[i].MinDuration *= k
		q.Activities[i].MaxDuration *= k
	}
	for i := range q.Lags {
		q.Lags[i].Min *= k
	}
	for i := range q.Resources {
		for c := range q.Resources[i].Closures {
			q.Resources[i].Closures[c].From *= k
			q.Resources[i].Closures[c].Until *= k
		}
	}
	return q
}

// With lags and resources alone, a best schedule of whole numbers is best of
// all, so that finer time does not help: k times the times is k times the answer.
func TestScale(t *testing.T) {
	for _, in := range instances(t) {
		if strings.HasSuffix(in.file, ".sm") {
			continue // the instances with time lags are enough, and quick
		}
		status, values := answerOf(t, scaled(read(t, in.file), 7))
		if in.feasible && (status != solver.Optimal || values[0] != 7*in.best) {
			t.Errorf("%s with times 7 times as long: %v %v, want %d", in.file, status, values, 7*in.best)
		}
		if !in.feasible && status != solver.Infeasible {
			t.Errorf("%s with times 7 times as long: %v", in.file, status)
		}
	}
}

// mirrored is p with time running backwards: ends are starts.
func mirrored(p *problem.Problem) *problem.Problem {
	q := problem.Without(p, nil)
	q.Lags = nil
	for _, l := range p.Lags {
		if l.From.Activity == problem.Origin || l.To.Activity == problem.Origin {
			continue // that the source is at 0; the sink takes its place
		}
		l.From, l.To = l.To, l.From
		l.From.End, l.To.End = !l.From.End, !l.To.End
		q.Lags = append(q.Lags, l)
	}
	return q
}

func TestMirror(t *testing.T) {
	for k, in := range instances(t) {
		if in.file == "j3013_5.sm" || testing.Short() && k%4 != 0 {
			continue // the hardest of them, proved elsewhere; and under -short most
		}
		status, values := answerOf(t, mirrored(read(t, in.file)))
		if in.feasible && (status != solver.Optimal || values[0] != in.best) {
			t.Errorf("%s backwards: %v %v, want %d", in.file, status, values, in.best)
		}
		if !in.feasible && status != solver.Infeasible {
			t.Errorf("%s backwards: %v", in.file, status)
		}
	}
}
