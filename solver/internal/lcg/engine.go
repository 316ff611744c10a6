// Package lcg is a lazy clause generation engine: integer variables known by
// their bounds, order literals, clauses with two watched literals, first-UIP
// learning, and propagators that explain what they deduce. It is arithmetic
// only: it knows neither activities nor resources by name.
//
// A literal is a pair (side, number) and is never stored as an object of its
// own, so x >= 5 implies x >= 3 without a clause. What the search branches on
// by activity are the literals that occur in learnt clauses (see atom.go).
//
// Sources: O. Ohrimenko, P. Stuckey, M. Codish, Propagation via lazy clause
// generation, Constraints 14 (2009); A. Schutt, T. Feydy, P. Stuckey,
// M. Wallace, Explaining the cumulative propagator, Constraints 16 (2011);
// N. Een, N. Sorensson, An extensible SAT-solver (2003).
package lcg

import "math/rand/v2"

// Engine holds variables, constraints and the state of one search. It is not
// safe for concurrent use.
type Engine struct {
	// trail.go
	bound      []int32 // by side: the value of the side is at least this
	last       []int32 // by side: index of its last event, or -1
	trail      []event
	levels     []int32 // trail length at which each decision level began
	head       int     // first event not yet propagated
	broken     bool    // contradiction at the root
	conflict   []Lit   // true literals that cannot hold together
	reasonPool []Lit   // stored reasons, cut back with the trail

	// clause.go
	arena     []Lit
	clauses   []clause
	watches   []watchers // by side whose rise makes the watched literal false
	learnts   int        // learnt clauses now held
	learntMax int        // how many to hold before dropping some
	clauseUp  float32

	// difference.go
	edges []edge
	out   [][]arc  // by side
	gates [][]gate // by side: conditional edges that a literal switches on

	// propagate.go
	props   []propagator
	wakes   [][]wake // by side: propagators to wake
	queued  []bool
	dears   []int32
	quick   bool
	assumed int // assumptions of the run
	queue   [3]ring

	// analyze.go
	need    []int32 // by side: number that must be explained
	needAt  []int32 // by side: event that implies it, or -1
	touched []Side
	learnt  []Lit
	buffer  []Lit
	shown   []int32 // by event: number whose redundancy is settled, see minimise.go
	marked  []int32
	settled []int32
	stack   []Lit
	core    []Lit // assumptions to blame, see core.go

	// atom.go
	atoms order

	phase  []int32 // by variable: value to try first
	binary []bool  // by variable: made as a Boolean
	rng    *rand.Rand

	memory     int64 // bytes; 0 for no limit
	full       bool  // the limit is reached, and forgetting does not help
	lastEvent  int64 // count of events at which the run ends
	asked      int64
	backtracks int64
	onLearn    func([]Lit) // sees every learnt clause
	logged     bool        // and the bounds at the root, see proof.go

	Stats Stats
}

// Stats counts work since New.
type Stats struct {
	Conflicts, Decisions, Propagations, Restarts, Learnt, Literals int64
}

// True is a literal that always holds.
var True = Lit{0, 1}

// New makes an engine; the seed steers ties.
func New(seed int64) *Engine {
	e := &Engine{clauseUp: 1, learntMax: 3000, lastEvent: 1 << 62, rng: rand.New(rand.NewPCG(uint64(seed), 0x9e3779b97f4a7c15))}
	e.atoms.init()
	e.NewVar(1, 1) // the variable of True
	return e
}

// Constant is the term of a fixed number.
func Constant(k int) Term { return Term{0, int32(k) - 1} }

// NewVar adds a variable of lo..hi. An empty range breaks the engine.
func (e *Engine) NewVar(lo, hi int) Var {
	v := Var(len(e.phase))
	e.bound = append(e.bound, int32(lo), int32(-hi))
	e.last = append(e.last, -1, -1)
	e.watches = append(e.watches, watchers{}, watchers{})
	e.out = append(e.out, nil, nil)
	e.gates = append(e.gates, nil, nil)
	e.wakes = append(e.wakes, nil, nil)
	e.need = append(e.need, 0, 0)
	e.needAt = append(e.needAt, -1, -1)
	e.phase = append(e.phase, int32(lo))
	e.binary = append(e.binary, lo == 0 && hi == 1)
	e.atoms.addVar()
	if lo > hi {
		e.broken = true
	}
	return v
}

// NewBool adds a Boolean and returns its literal. It takes part in the
// branching by activity from the beginning.
func (e *Engine) NewBool() Lit {
	v := e.NewVar(0, 1)
	e.atoms.intern(v, 1)
	return Is(v)
}

// Vars is the number of variables.
func (e *Engine) Vars() int { return len(e.phase) }

// Broken says that the constraints contradict each other at the root.
func (e *Engine) Broken() bool { return e.broken }

// Low and High are the current bounds of a variable.
func (e *Engine) Low(v Var) int  { return int(e.bound[2*v]) }
func (e *Engine) High(v Var) int { return int(-e.bound[2*v+1]) }

// Min and Max are the current bounds of a term.
func (e *Engine) Min(t Term) int { return int(e.bound[2*t.Var] + t.Add) }
func (e *Engine) Max(t Term) int { return int(t.Add - e.bound[2*t.Var+1]) }

// Fixed says that a variable has one value left.
func (e *Engine) Fixed(v Var) bool { return e.bound[2*v] == -e.bound[2*v+1] }

// Holds says that the literal is true now; Fails that it is false now.
func (e *Engine) Holds(l Lit) bool { return e.bound[l.Side] >= l.Min }
func (e *Engine) Fails(l Lit) bool { return e.bound[l.Side^1] > -l.Min }

// Backtracks counts how often decisions were undone. While it stands still,
// what was decided stays so.
func (e *Engine) Backtracks() int64 { return e.backtracks }

// Prefer sets the value that branching tries first for a variable.
func (e *Engine) Prefer(v Var, value int) { e.phase[v] = int32(value) }
