package network

import (
	"context"
	"slices"
	"testing"
	"time"

	"plait.example/solver"
)

// BenchmarkOverfull makes invented practicals six minutes shorter than the
// earliest finish, and tells how soon the reason is known and how often it is
// proved smallest. Those whose earliest finish is not proved in two seconds are
// left out.
//
//	go test ./internal/network -run '^$' -bench Overfull -benchtime 1x -kitchens 80
func BenchmarkOverfull(b *testing.B) {
	for range b.N {
		var took []float64
		smallest, minimal, demands := 0, 0, 0
		for seed := 1; len(took) < *kitchens; seed++ {
			_, p := kitchen(seed, 25+5*(len(took)%10))
			if p == nil {
				continue
			}
			r, err := solver.Solve(context.Background(), p, solver.Options{Seed: 1, Time: 2 * time.Second, Effort: 1 << 40})
			if err != nil {
				b.Fatal(err)
			}
			if r.Status != solver.Optimal {
				continue
			}
			for i := range p.Lags {
				if p.Lags[i].Demand == "finish" {
					p.Lags[i].Min = 6 - r.Bound
				}
			}
			begin := time.Now()
			c, err := solver.Explain(context.Background(), p, solver.Options{Seed: 1, Effort: DefaultEffort})
			if err != nil || len(c.Demands) == 0 {
				b.Fatalf("%+v, error %v", c, err)
			}
			took = append(took, time.Since(begin).Seconds()*1000)
			demands += len(c.Demands)
			if c.Smallest {
				smallest++
			}
			if c.Minimal {
				minimal++
			}
		}
		slices.Sort(took)
		b.ReportMetric(took[len(took)/2], "ms-median")
		b.ReportMetric(took[len(took)*9/10], "ms-90%")
		b.ReportMetric(100*float64(smallest)/float64(len(took)), "%smallest")
		b.ReportMetric(100*float64(minimal)/float64(len(took)), "%minimal")
		b.ReportMetric(float64(demands)/float64(len(took)), "demands")
	}
}
