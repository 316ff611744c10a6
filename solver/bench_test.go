package solver_test

import (
	"context"
	"testing"

	"plait.example/solver"
	"plait.example/solver/problem"
)

// BenchmarkPublished proves published instances, easy to hard, from nothing
// each time.
func BenchmarkPublished(b *testing.B) {
	for _, in := range instances(b) {
		switch in.file {
		case "j301_1.sm", "j3025_9.sm", "j3037_3.sm", "j3046_6.sm", "ubo20_psp1.sch", "ubo20_psp65.sch":
		default:
			continue
		}
		b.Run(in.file, func(b *testing.B) {
			p := read(b, in.file)
			b.ReportAllocs()
			for b.Loop() {
				solved(b, p, solver.Options{Seed: 1}, in.best)
			}
		})
	}
}

// BenchmarkWorkshop proves the least finish of invented problems of 28 and 63
// activities with states and calendars. The values are the solver's own,
// proved by it and checked in other tests on smaller cases.
func BenchmarkWorkshop(b *testing.B) {
	for _, size := range []struct {
		name              string
		seed              uint64
		jobs, steps, best int
	}{{"28", 0, 2, 8, 59}, {"63", 1, 3, 12, 129}} {
		b.Run(size.name, func(b *testing.B) {
			p := workshop(size.seed, size.jobs, size.steps)
			p.Objectives = p.Objectives[:1]
			b.ReportAllocs()
			for b.Loop() {
				solved(b, p, solver.Options{Seed: 1}, size.best)
			}
		})
	}
}

// BenchmarkFirstSolution stops at the first solution of 84 activities.
func BenchmarkFirstSolution(b *testing.B) {
	p := workshop(0, 3, 16)
	b.ReportAllocs()
	for b.Loop() {
		ctx, cancel := context.WithCancel(context.Background())
		r, err := solver.Solve(ctx, p, solver.Options{Improved: func(solver.Progress) { cancel() }})
		if err != nil || r.Solution == nil {
			b.Fatalf("error %v, status %v", err, r.Status)
		}
		cancel()
	}
}

func solved(b *testing.B, p *problem.Problem, o solver.Options, best int) {
	r, err := solver.Solve(context.Background(), p, o)
	if err != nil || r.Status != solver.Optimal || r.Levels[0].Value != best {
		b.Fatalf("error %v, status %v, levels %+v; want %d", err, r.Status, r.Levels, best)
	}
}
