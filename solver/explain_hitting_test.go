package solver

import (
	"math/rand/v2"
	"slices"
	"testing"
)

// A smallest group that meets random sets is as small as the smallest of all
// groups tried, meets each set, and has what it must have.
func TestLeastHittingSet(t *testing.T) {
	const members = 9
	larger := 0
	for seed := range uint64(400) {
		r := rand.New(rand.NewPCG(seed, 1))
		var sets []group
		for range 1 + r.IntN(12) {
			g := group{r.Uint64() & r.Uint64() & (1<<members - 1)}
			sets = append(sets, g.with(r.IntN(members)))
		}
		base := group{r.Uint64() & r.Uint64() & r.Uint64() & (1<<members - 1)}
		meets := func(g group) bool {
			return base.within(g) && !slices.ContainsFunc(sets, func(s group) bool { return !s.meets(g) })
		}
		want := members
		for word := range uint64(1 << members) {
			if g := (group{word}); meets(g) {
				want = min(want, g.size())
			}
		}
		h := hitting{sets: sets, rank: r.Perm(members), steps: hittingSteps}
		got, out := h.least(base, 0, members)
		if out != met || got.size() != want || !meets(got) {
			t.Errorf("seed %d: %b of %b, outcome %d; want %d members", seed, got, sets, out, want)
		}
		h.steps = hittingSteps
		if g, out := h.least(base, 0, want-1); out != none {
			t.Errorf("seed %d: %b, outcome %d, of fewer than %d members", seed, g, out, want)
		}
		if want > base.size()+1 {
			larger++
		}
	}
	if larger < 100 {
		t.Errorf("only %d of the cases ask for a choice", larger)
	}
}
