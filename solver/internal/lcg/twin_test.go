package lcg

import (
	"math/rand/v2"
	"testing"
)

// Each propagator alone against the plain enumeration of its one constraint:
// no bound goes that has support, no explanation says too little.

// idle takes the place of a propagator that is to be left out.
type idle struct{}

func (idle) run(*Engine) bool                                     { return true }
func (idle) unfold(_ *Engine, out []Lit, _ Lit, _, _ int32) []Lit { return out }

// twins are the propagators, each with how to make a model of its constraint
// alone and how to post that. What is whole refuses every wrong assignment.
var twins = []struct {
	name  string
	whole bool
	keep  func(m *model) bool
	post  func(m *model, e *Engine)
}{
	{"difference", true, func(m *model) bool {
		m.tables, m.sums = nil, nil
		return len(m.differs) > 0
	}, func(m *model, e *Engine) { m.post(e) }},
	{"linear", true, func(m *model) bool {
		m.tables, m.differs = nil, nil
		return len(m.sums) > 0
	}, func(m *model, e *Engine) { m.post(e) }},
	{"time-table", true, onlyTables, func(m *model, e *Engine) { postTables(m, e, 1) }},
	{"energy", false, onlyTables, func(m *model, e *Engine) { postTables(m, e, 0) }},
	{"disjunctive", false, func(m *model) bool {
		if !onlyTables(m) {
			return false
		}
		t := &m.tables[0]
		t.capacity = 1
		for i := range t.tasks {
			t.tasks[i].Amount = 1
		}
		return true
	}, func(m *model, e *Engine) {
		tables := m.tables
		m.tables = nil
		m.post(e)
		m.tables = tables
		e.AddDisjunctive(tables[0].tasks)
	}},
}

// onlyTables keeps one table and the lengths that its tasks promise.
func onlyTables(m *model) bool {
	m.sums, m.differs = nil, nil
	if len(m.tables) == 0 {
		return false
	}
	m.tables = m.tables[:1]
	for _, k := range m.tables[0].tasks {
		if k.Least > 0 && k.End != k.Start.Plus(k.Least) {
			m.differs = append(m.differs, differ{k.Start, k.End, k.Least, True})
		}
	}
	return true
}

// postTables posts the table with its time-table (0) or its energy (1) left out.
func postTables(m *model, e *Engine, without int) {
	tables := m.tables
	m.tables = nil
	m.post(e)
	m.tables = tables
	first := len(e.props)
	e.AddCumulative(tables[0].tasks, tables[0].capacity, true)
	e.props[first+without] = idle{}
}

func (m *model) size() int {
	n := 1
	for _, h := range m.high {
		n *= h + 1
	}
	return n
}

func TestPropagatorsAgainstTheirTwins(t *testing.T) {
	for kind, twin := range twins {
		t.Run(twin.name, func(t *testing.T) {
			checked, conflicts, models := 0, 0, 0
			for seed := uint64(0); models < drawn(800); seed++ {
				r := rand.New(rand.NewPCG(seed, uint64(kind)+77))
				m := randomModel(r)
				m.clauses = nil
				if m.size() > 5000 || !twin.keep(m) {
					continue
				}
				solutions := m.all()
				if len(solutions) == 0 && seed%8 != 0 {
					continue // any explanation would do
				}
				models++
				for range 5 {
					e := New(1)
					twin.post(m, e)
					d := dive{t: t, m: m, e: e, r: r, solutions: solutions, seed: seed, whole: twin.whole}
					d.run()
					checked += d.checked
					conflicts += d.conflicts
				}
			}
			t.Logf("%d explanations, %d conflicts", checked, conflicts)
			if checked < drawn(800) || conflicts < drawn(30) {
				t.Error("too few deductions to mean much")
			}
		})
	}
}

// dive decides at random until all is decided or nothing is left.
type dive struct {
	t                  *testing.T
	m                  *model
	e                  *Engine
	r                  *rand.Rand
	solutions          [][]int // those that the decisions leave
	seed               uint64
	whole              bool
	checked, conflicts int
}

func (d *dive) run() {
	e := d.e
	if e.Broken() {
		if len(d.solutions) > 0 {
			d.t.Fatalf("seed %d: refuted when posted, but %v is a solution", d.seed, d.solutions[0])
		}
		return
	}
	e.lastEvent, e.assumed = 1<<62, 1<<30 // nothing is put off
	all := d.solutions
	for {
		from := len(e.trail)
		if !e.propagate() {
			d.conflict(all)
			return
		}
		d.supported()
		if e.level() > 0 {
			d.explained(all, from)
		}
		l, open := anyOpen(e, d.r)()
		if !open {
			break
		}
		e.decide(l)
		var left [][]int
		for _, s := range d.solutions {
			if litHolds(l, s) {
				left = append(left, s)
			}
		}
		d.solutions = left
	}
	if d.whole && len(d.solutions) == 0 {
		d.t.Fatalf("seed %d: a wrong assignment passes: %+v", d.seed, d.m)
	}
}

// conflict checks that no solution is left, nor one that has all of the conflict.
func (d *dive) conflict(all [][]int) {
	d.conflicts++
	if len(d.solutions) > 0 {
		d.t.Fatalf("seed %d: a conflict, but %v is left", d.seed, d.solutions[0])
	}
	for _, l := range d.e.conflict {
		if !d.e.Holds(l) {
			d.t.Fatalf("seed %d: %v of the conflict does not hold", d.seed, l)
		}
	}
	if s := satisfying(all, d.e.conflict); s != nil {
		d.t.Fatalf("seed %d: the conflict %v allows %v", d.seed, d.e.conflict, s)
	}
}

// supported checks that the bounds leave every solution that the decisions do.
func (d *dive) supported() {
	for _, s := range d.solutions {
		for v := range s {
			if s[v] < d.e.Low(Var(v)) || s[v] > d.e.High(Var(v)) {
				d.t.Fatalf("seed %d: x%d is %d in %v, but has become %d to %d", d.seed, v, s[v], s, d.e.Low(Var(v)), d.e.High(Var(v)))
			}
		}
	}
}

// explained checks the reason of every event from an index on: it held before,
// and with the constraint alone it implies what was set.
func (d *dive) explained(all [][]int, from int) {
	e := d.e
	for i := from; i < len(e.trail); i++ {
		ev := e.trail[i]
		if ev.reason.kind == byDecision {
			continue
		}
		d.checked++
		l := Lit{ev.side, ev.new}
		if d.r.IntN(2) == 0 { // a reason serves weaker literals too
			l.Min = ev.old + 1 + int32(d.r.IntN(int(ev.new-ev.old)))
		}
		because := e.unfold(nil, l, ev.reason, int32(i))
		for _, k := range because {
			if !e.Holds(k) || e.cause(k) >= int32(i) {
				d.t.Fatalf("seed %d: %v because %v, which did not hold then", d.seed, l, k)
			}
		}
		if s := satisfying(all, append(because, l.Not())); s != nil {
			d.t.Fatalf("seed %d: %v because %v, but %v is a solution", d.seed, l, because, s)
		}
	}
}

// satisfying is a solution in which all literals hold, or nil.
func satisfying(all [][]int, lits []Lit) []int {
next:
	for _, s := range all {
		for _, l := range lits {
			if !litHolds(l, s) {
				continue next
			}
		}
		return s
	}
	return nil
}
