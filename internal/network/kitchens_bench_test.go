package network

import (
	"context"
	"flag"
	"slices"
	"testing"
	"time"

	"pgregory.net/rapid"

	"plait.example/internal/practical"
	"plait.example/internal/practical/practicaltest"
	"plait.example/solver"
	"plait.example/solver/problem"
)

var (
	kitchens     = flag.Int("kitchens", 20, "how many invented practicals BenchmarkKitchens plans")
	kitchenLimit = flag.Duration("kitchen-limit", 2*time.Second, "time for one of them")
)

// kitchen is an invented practical of 2 dishes or more and 25 to 90 activities,
// with seven hours so that it can be planned; false if the seed gives none.
// The practicals are drawn evenly over sizes: wanted is the least size.
func kitchen(seed, wanted int) (*problem.Problem, bool) {
	p := rapid.Custom(practicaltest.Practical).Example(seed)
	p.Clock.Finish = p.Clock.Start + practical.TimeOfDay(7*60)
	p.Pins = nil
	if len(p.Dishes) < 2 || p.Ready() != nil {
		return nil, false
	}
	n := translate(p)
	size := len(n.problem.Activities)
	return n.problem, size >= wanted && size <= 90
}

// BenchmarkKitchens plans invented practicals and tells how soon the first plan
// is there, and for how many the finish is proved. Practicals of which it is
// proved that no plan exists are left out. The whole, a quarter of an hour at most:
//
//	go test ./internal/network -run '^$' -bench Kitchens -benchtime 1x -kitchens 200 -kitchen-limit 10s
func BenchmarkKitchens(b *testing.B) {
	for range b.N {
		var first, whole []float64
		proved := 0
		for seed := 1; len(whole) < *kitchens; seed++ {
			p, ok := kitchen(seed, 25+5*(len(whole)%10))
			if !ok {
				continue
			}
			begin := time.Now()
			soonest := time.Duration(0)
			r, err := solver.Solve(context.Background(), p, solver.Options{Seed: 1, Time: *kitchenLimit, Effort: 1 << 40, Improved: func(s solver.Progress) {
				if soonest == 0 && s.Solution != nil {
					soonest = time.Since(begin)
				}
			}})
			if err != nil {
				b.Fatal(err)
			}
			if r.Status == solver.Infeasible {
				continue
			}
			if r.Status == solver.Optimal {
				proved++
			}
			if soonest > 0 {
				first = append(first, soonest.Seconds()*1000)
			}
			whole = append(whole, time.Since(begin).Seconds()*1000)
		}
		slices.Sort(first)
		b.ReportMetric(first[len(first)/2], "first-ms-median")
		b.ReportMetric(first[len(first)*95/100], "first-ms-95%")
		b.ReportMetric(float64(len(whole)-len(first)), "without-plan")
		b.ReportMetric(100*float64(proved)/float64(len(whole)), "%finish-proved")
	}
}
