package solver_test

import (
	"context"
	"encoding/csv"
	"os"
	"path/filepath"
	"strconv"
	"testing"

	"plait.example/solver"
	"plait.example/solver/problem"
	"plait.example/solver/psplib"
	"plait.example/solver/verify"
)

// published are the instances of psplib/testdata with their published optima;
// the sources stand in the README there.
type published struct {
	file     string
	feasible bool
	best     int
}

func instances(t testing.TB) []published {
	t.Helper()
	f, err := os.Open(filepath.Join("psplib", "testdata", "published.csv"))
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	rows, err := csv.NewReader(f).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	var out []published
	for _, row := range rows[1:] {
		best, _ := strconv.Atoi(row[2])
		out = append(out, published{row[0], row[1] == "optimal", best})
	}
	return out
}

func read(t testing.TB, file string) *problem.Problem {
	t.Helper()
	f, err := os.Open(filepath.Join("psplib", "testdata", file))
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	p, err := psplib.Read(file, f)
	if err != nil {
		t.Fatal(err)
	}
	return p
}

// TestPublishedOptima proves every instance, and agrees with what was published.
func TestPublishedOptima(t *testing.T) {
	for _, in := range instances(t) {
		if testing.Short() && (in.file == "j3013_5.sm" || in.file == "j6042_3.sm") {
			continue // half the time of all; proved in the runs without -short
		}
		t.Run(in.file, func(t *testing.T) {
			p := read(t, in.file)
			r, err := solver.Solve(context.Background(), p, solver.Options{Seed: 1})
			if err != nil {
				t.Fatal(err)
			}
			if breaches := verify.Check(p, r.Solution); in.feasible && len(breaches) > 0 {
				t.Errorf("the judge refuses the schedule: %v", breaches)
			}
			if !in.feasible {
				if r.Status != solver.Infeasible {
					t.Errorf("status %v, want infeasible", r.Status)
				}
				return
			}
			if r.Status != solver.Optimal || r.Levels[0].Value != in.best || r.Bound != in.best {
				t.Errorf("status %v, levels %+v, bound %d; published optimum %d", r.Status, r.Levels, r.Bound, in.best)
			}
			t.Logf("%d conflicts, %v", r.Stats.Conflicts, r.Stats.Elapsed)
		})
	}
}

// TestRecordIsNear looks at an instance of 120 activities that nobody has
// proved: 134 is the shortest makespan published, 130 the greatest lower bound.
// A short search comes within 5 % of the one and stays below the other.
func TestRecordIsNear(t *testing.T) {
	p, effort := read(t, "j12018_6.sm"), int64(3000)
	if testing.Short() {
		effort = 1000
	}
	r, err := solver.Solve(context.Background(), p, solver.Options{Seed: 1, Effort: effort})
	if err != nil || r.Solution == nil {
		t.Fatalf("%v, %v", r.Status, err)
	}
	if v := r.Levels[0].Value; v < 130 || 100*v > 105*134 || r.Bound > 134 || len(verify.Check(p, r.Solution)) > 0 {
		t.Errorf("makespan %d and bound %d; published 134 and 130", v, r.Bound)
	}
}
