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
