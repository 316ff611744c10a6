package lcg

import (
	"math/rand/v2"
	"slices"
	"testing"
)

// TestCoreAgainstEnumeration assumes random literals in small random models:
// what a failure blames is part of them, and no solution has all of it.
func TestCoreAgainstEnumeration(t *testing.T) {
	failed, smaller := 0, 0
	for seed := range uint64(drawn(3000)) {
		r := rand.New(rand.NewPCG(seed, 2))
		m := randomModel(r)
		solutions := m.all()
		e := New(int64(seed))
		m.post(e)
		var assume []Lit
		for range 5 {
			v := 1 + r.IntN(len(m.high))
			l := AtLeast(Var(v), 1+r.IntN(m.high[v-1]))
			if r.IntN(2) == 0 {
				l = l.Not()
			}
			assume = append(assume, l)
		}
		if e.Run(Search{Assume: assume, Branch: anyOpen(e, r), Restart: Luby}) != Failed {
			continue
		}
		failed++
		core := slices.Clone(e.Core())
		if len(core) < len(assume) {
			smaller++
		}
		for _, l := range core {
			if !slices.Contains(assume, l) {
				t.Fatalf("seed %d: %v is blamed, but was not assumed: %v", seed, l, assume)
			}
		}
		for _, s := range solutions {
			if !slices.ContainsFunc(core, func(l Lit) bool { return !litHolds(l, s) }) {
				t.Fatalf("seed %d: %v is blamed, but %v is a solution", seed, core, s)
			}
		}
	}
	if failed < drawn(500) || smaller < drawn(300) {
		t.Errorf("%d failures, %d of them blamed on a part: too few to mean much", failed, smaller)
	}
}
