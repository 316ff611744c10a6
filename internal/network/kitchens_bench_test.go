package network

import (
	"context"
	"encoding/csv"
	"flag"
	"fmt"
	"os"
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
	kitchenLimit = flag.Duration("kitchen-limit", 2*time.Second, "time of the processor for one of them")
	kitchenRows  = flag.String("kitchen-rows", "", "file for a row of CSV a practical, those without a plan too")
	kitchenOne   = flag.Int("kitchen", 0, "plan only the practical of this seed, as the rows name it")
)

const (
	leastKitchen = 25 // activities
	mostKitchen  = 90
)

// kitchen is an invented practical of 2 to 5 dishes and 25 to 90 activities,
// with seven hours so that it can be planned, and no objective but the finish;
// nil if the seed gives none of that size or more than wanted.
func kitchen(seed, wanted int) (*practical.Practical, *problem.Problem) {
	draw := func(t *rapid.T) *practical.Practical { return practicaltest.OfDishes(t, 2, 5) }
	p := rapid.Custom(draw).Example(seed)
	p.Clock.Finish = p.Clock.Start + practical.TimeOfDay(7*60)
	p.Pins = nil
	if p.Ready() != nil {
		return nil, nil
	}
	n := translate(p).problem
	if size := len(n.Activities); size < wanted || size > mostKitchen {
		return nil, nil
	}
	n.Objectives = n.Objectives[:1]
	return p, n
}

// planned is what came of one practical.
type planned struct {
	solver.Result
	first, whole time.Duration // until the first plan (0: none), and in all; of the processor
}

// inTime is a context that is over when the processor has worked so long.
type inTime struct {
	context.Context
	end time.Duration
}

func (c inTime) Err() error {
	if processor() > c.end {
		return context.DeadlineExceeded
	}
	return nil
}

func planKitchen(b *testing.B, p *problem.Problem) (out planned) {
	begin := processor()
	o := solver.Options{Seed: 1, Effort: 1 << 40, Improved: func(s solver.Progress) {
		if out.first == 0 && s.Solution != nil {
			out.first = processor() - begin
		}
	}}
	r, err := solver.Solve(inTime{context.Background(), begin + *kitchenLimit}, p, o)
	if err != nil && r.Status != solver.Unknown {
		b.Fatal(err)
	}
	out.Result, out.whole = r, processor()-begin
	return out
}

// BenchmarkKitchens plans invented practicals of all sizes evenly: how soon the
// first plan is there, and for how many the finish is proved. More than half of what
// is drawn has no plan at all, such is the chance of its limits of time: those
// that are proved to have none are told and not counted. The whole, and what
// one of its rows says of a hard one:
//
//	go test ./internal/network -run '^$' -bench Kitchens -benchtime 1x -timeout 2h -kitchens 200 -kitchen-limit 10s -kitchen-rows ROWS.csv
//	go test ./internal/network -run '^$' -bench Kitchens -benchtime 1x -kitchen-limit 10s -kitchen-rows /dev/stdout -kitchen 1234
func BenchmarkKitchens(b *testing.B) {
	rows := newRows(b)
	for range b.N {
		var first, whole []float64
		proved, none := 0, 0
		for seed := max(1, *kitchenOne); len(whole) < *kitchens; seed++ {
			if *kitchenOne > 0 && seed > *kitchenOne {
				break
			}
			wanted := leastKitchen
			if *kitchenOne == 0 {
				wanted += 5 * ((len(whole) + none) % ((mostKitchen - leastKitchen) / 5))
			}
			p, n := kitchen(seed, wanted)
			if n == nil {
				continue
			}
			got := planKitchen(b, n)
			rows.write(seed, p, n, &got)
			if got.Status == solver.Infeasible {
				none++
				continue
			}
			if got.Status == solver.Optimal {
				proved++
			}
			if got.first > 0 {
				first = append(first, got.first.Seconds()*1000)
			}
			whole = append(whole, got.whole.Seconds()*1000)
		}
		report(b, first, whole, proved, none)
	}
	rows.close()
}

// report tells the figures of the practicals that have a plan, or may have one.
func report(b *testing.B, first, whole []float64, proved, none int) {
	if len(first) == 0 {
		return
	}
	slices.Sort(first)
	under := func(list []float64, most float64) (n float64) {
		for _, ms := range list {
			if ms <= most {
				n++
			}
		}
		return n
	}
	all := float64(len(whole))
	b.ReportMetric(first[len(first)/2], "first-ms-median")
	b.ReportMetric(first[len(first)*95/100], "first-ms-95%")
	b.ReportMetric(first[len(first)-1], "first-ms-worst")
	b.ReportMetric(100*under(first, 50)/all, "%first-in-50ms")
	b.ReportMetric(100*under(whole, 1000)/all, "%done-in-1s")
	b.ReportMetric(100*float64(proved)/all, "%finish-proved")
	b.ReportMetric(float64(len(whole)-len(first)), "without-plan")
	b.ReportMetric(float64(none), "proved-to-have-none")
}

// kitchenFile is the file of rows, if one is wanted.
type kitchenFile struct {
	f *os.File
	w *csv.Writer
}

func newRows(b *testing.B) *kitchenFile {
	if *kitchenRows == "" {
		return nil
	}
	f, err := os.Create(*kitchenRows)
	if err != nil {
		b.Fatal(err)
	}
	k := &kitchenFile{f, csv.NewWriter(f)}
	k.line("seed", "dishes", "cooks", "activities", "status", "first ms", "seconds", "finish", "bound", "conflicts")
	return k
}

func (k *kitchenFile) line(fields ...string) {
	_ = k.w.Write(fields) // close tells of an error
	k.w.Flush()
}

func (k *kitchenFile) write(seed int, p *practical.Practical, n *problem.Problem, got *planned) {
	if k == nil {
		return
	}
	finish := ""
	if len(got.Levels) > 0 {
		finish = fmt.Sprint(got.Levels[0].Value)
	}
	k.line(fmt.Sprint(seed), fmt.Sprint(len(p.Dishes)), fmt.Sprint(p.Cooks), fmt.Sprint(len(n.Activities)), got.Status.String(),
		fmt.Sprintf("%.1f", got.first.Seconds()*1000), fmt.Sprintf("%.3f", got.whole.Seconds()), finish, fmt.Sprint(got.Bound), fmt.Sprint(got.Stats.Conflicts))
}

func (k *kitchenFile) close() {
	if k != nil {
		k.w.Flush()
		k.f.Close()
	}
}
