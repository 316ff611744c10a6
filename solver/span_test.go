package solver

import (
	"bytes"
	"context"
	"math/rand/v2"
	"slices"
	"testing"

	"plait.example/solver/internal/brute"
	"plait.example/solver/internal/recheck"
	"plait.example/solver/problem"
)

// The worth of what is taken is that of the best of all ways to match the
// units of sources with those of sinks.
func TestTransportAgainstEveryMatching(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 2))
	for range 400 {
		var p transport
		var from, to []int // by unit
		for units := 2 + r.IntN(6); len(from) < units; {
			p.supply = append(p.supply, 0)
			p.sources = append(p.sources, load{node: len(p.sources)})
			for k := 1 + r.IntN(2); k > 0 && len(from) < units; k-- {
				p.supply[len(p.supply)-1]++
				from = append(from, len(p.supply)-1)
			}
		}
		for len(to) < len(from) {
			p.demand = append(p.demand, 0)
			p.sinks = append(p.sinks, load{node: len(p.sinks)})
			for k := 1 + r.IntN(2); k > 0 && len(to) < len(from); k-- {
				p.demand[len(p.demand)-1]++
				to = append(to, len(p.demand)-1)
			}
		}
		for range p.supply {
			row := make([]int, len(p.demand))
			for j := range row {
				row[j] = r.IntN(21) - 10
			}
			p.worth = append(p.worth, row)
		}
		best := -1 << 40
		permute(to, 0, func() {
			sum := 0
			for u := range from {
				sum += p.worth[from[u]][to[u]]
			}
			best = max(best, sum)
		})
		supply, demand := slices.Clone(p.supply), slices.Clone(p.demand)
		sum := 0
		for _, f := range p.solve() {
			sum += f.amount * f.least
			supply[f.from.node] -= f.amount
			demand[f.to.node] -= f.amount
		}
		if sum != best || slices.Max(supply) != 0 || slices.Min(supply) != 0 || slices.Max(demand) != 0 || slices.Min(demand) != 0 {
			t.Fatalf("worth %d, best %d; left %v of %+v and %v to bring", sum, best, supply, p, demand)
		}
	}
}

func permute(list []int, k int, visit func()) {
	if k == len(list) {
		visit()
	}
	for i := k; i < len(list); i++ {
		list[k], list[i] = list[i], list[k]
		permute(list, k+1, visit)
		list[k], list[i] = list[i], list[k]
	}
}

// Sums of times of either sign: values and proofs are those of a search that
// tries every schedule, and the proofs hold when they are replayed.
func TestSpansAgainstEverySchedule(t *testing.T) {
	spans, steps, unchecked, seeds := 0, 0, 0, uint64(160)
	if testing.Short() {
		seeds = 80
	}
	for seed := range seeds {
		p := brute.Random(seed)
		r := rand.New(rand.NewPCG(seed, 3))
		sum := problem.Objective{Name: "sum"}
		for range 2 + r.IntN(4) {
			point := problem.Point{Activity: r.IntN(len(p.Activities)), End: r.IntN(2) == 0}
			sum.Terms = append(sum.Terms, problem.Term{Point: point, Weight: r.IntN(7) - 3})
		}
		p.Objectives = []problem.Objective{sum, {Makespan: true, Terms: []problem.Term{{Point: problem.End(0), Weight: 2}, {Point: problem.Start(1), Weight: -2}}}}
		if seed%2 == 0 {
			p.Objectives = []problem.Objective{{Makespan: true}, sum}
		}
		values, _, feasible := brute.Lexicographic(p)
		if !feasible {
			continue
		}
		var log bytes.Buffer
		got, err := Solve(context.Background(), p, Options{Seed: int64(seed), Proof: &log})
		if err != nil {
			t.Fatal(err)
		}
		for k, l := range got.Levels {
			if l.Value != values[k] || !l.Proved {
				t.Fatalf("seed %d: levels %+v, want %v", seed, got.Levels, values)
			}
		}
		spans += bytes.Count(log.Bytes(), []byte(" span "))
		report, err := recheck.Replay(p, &log, 3000)
		if err != nil || !report.Sound() {
			t.Fatalf("seed %d: error %v, %v", seed, err, report)
		}
		steps += report.Propagated + report.Searched
		unchecked += report.Unchecked
	}
	t.Logf("%d spans, %d steps, %d unchecked", spans, steps, unchecked)
	if spans < int(seeds)/4 || 50*unchecked > steps {
		t.Errorf("%d spans; %d of %d steps unchecked", spans, unchecked, steps)
	}
}

// Two jobs on one machine, 3 and 4 long, and a third of 1 between the end of
// the first and that of the second: the span from the start of the first to the
// end of the second is at least 3 + 1 + 4, wherever they are. A sum of
// independent times has no such bound.
func TestSpansBoundASum(t *testing.T) {
	p := jobs([]int{3, 4, 1}, []int{0, 0, 0})
	p.Lags = []problem.Lag{before(0, 2), before(2, 1)}
	p.Objectives = []problem.Objective{{Terms: []problem.Term{{Point: problem.Start(0), Weight: -5}, {Point: problem.End(1), Weight: 5}}}}
	if m := compile(p, 1); m.bound(0) != 5*8 {
		t.Errorf("bound %d, want 40", m.bound(0))
	}
}
