package lcg

import "testing"

// Two orders that contradict each other are refuted step by step, one event a
// unit of the horizon: a run may be stopped on the way, and another goes on.
func TestEventsEndARun(t *testing.T) {
	const horizon = 20_000
	e := New(1)
	x, y := Term{Var: e.NewVar(0, horizon)}, Term{Var: e.NewVar(0, horizon)}
	both := e.NewBool()
	e.AddDifference(x, 1, y, both)
	e.AddDifference(y, 1, x, both)
	if got := e.Run(Search{Assume: []Lit{both}, Branch: e.MostActive, Events: 1000}); got != Stopped {
		t.Fatalf("outcome %d, want stopped", got)
	}
	if n := e.Stats.Propagations; n < 1000 || n > 1100 {
		t.Errorf("%d events, want about 1000", n)
	}
	if got := e.Run(Search{Assume: []Lit{both}, Branch: e.MostActive}); got != Failed {
		t.Errorf("outcome %d, want failed", got)
	}
}

// With next to no memory a run ends for lack of it, and says so.
func TestMemoryEndsARun(t *testing.T) {
	e := New(1)
	var pigeons [8][7]Lit // eight pigeons in seven holes: no small refutation by resolution
	for p := range pigeons {
		for h := range pigeons[p] {
			pigeons[p][h] = e.NewBool()
		}
		e.AddClause(pigeons[p][:]...)
	}
	for h := range pigeons[0] {
		for p := range pigeons {
			for q := range p {
				e.AddClause(pigeons[p][h].Not(), pigeons[q][h].Not())
			}
		}
	}
	e.SetMemory(e.Size() + 500)
	if got := e.Run(Search{Branch: e.MostActive}); got != Stopped || !e.Full() {
		t.Errorf("outcome %d, full %v; want stopped for lack of memory", got, e.Full())
	}
	e.SetMemory(0)
	if got := e.Run(Search{Branch: e.MostActive, Restart: func(n int) int64 { return 100 * Luby(n) }}); got != Refuted {
		t.Errorf("outcome %d, want refuted", got)
	}
}
