package lcg

import (
	"math/rand/v2"
	"testing"
)

// model is a small random set of constraints, kept twice: posted to an engine
// and judged value by value. The judge is the naive twin of the propagators.
type model struct {
	high    []int // variables are 0..high
	clauses [][]Lit
	differs []differ
	tables  []table
	sums    []sum
}

type differ struct {
	x, y Term
	c    int
	when Lit
}

type table struct {
	tasks    []Task
	capacity int
	energy   bool
	unary    bool // capacity 1: looked at as a disjunctive as well
}

type sum struct {
	parts []Part
	limit int
}

func (m *model) post(e *Engine) {
	for _, h := range m.high {
		e.NewVar(0, h)
	}
	for _, c := range m.clauses {
		e.AddClause(c...)
	}
	for _, d := range m.differs {
		e.AddDifference(d.x, d.c, d.y, d.when)
	}
	for _, t := range m.tables {
		e.AddCumulative(t.tasks, t.capacity, t.energy)
		if t.unary {
			e.AddDisjunctive(t.tasks)
		}
	}
	for _, s := range m.sums {
		e.AddLinear(s.parts, s.limit)
	}
}

// holds judges an assignment; value[0] is the constant 1.
func (m *model) holds(value []int) bool {
	for _, c := range m.clauses {
		if !anyHolds(c, value) {
			return false
		}
	}
	for _, d := range m.differs {
		if litHolds(d.when, value) && at(d.x, value)+d.c > at(d.y, value) {
			return false
		}
	}
	for _, t := range m.tables {
		if !t.holds(value) {
			return false
		}
	}
	for _, s := range m.sums {
		total := 0
		for _, p := range s.parts {
			total += p.Weight * value[p.Var]
		}
		if total > s.limit {
			return false
		}
	}
	return true
}

func (t *table) holds(value []int) bool {
	for now := -10; now < 40; now++ {
		used := 0
		for _, k := range t.tasks {
			if litHolds(k.Present, value) && at(k.Start, value) <= now && now < at(k.End, value) {
				used += k.Amount
			}
		}
		if used > t.capacity {
			return false
		}
	}
	return true
}

func at(t Term, value []int) int { return value[t.Var] + int(t.Add) }

func litHolds(l Lit, value []int) bool {
	if l.Side&1 == 0 {
		return value[l.Var()] >= int(l.Min)
	}
	return -value[l.Var()] >= int(l.Min)
}

func anyHolds(c []Lit, value []int) bool {
	for _, l := range c {
		if litHolds(l, value) {
			return true
		}
	}
	return false
}

// all lists every solution.
func (m *model) all() [][]int {
	value := make([]int, len(m.high)+1)
	value[0] = 1
	var out [][]int
	var walk func(i int)
	walk = func(i int) {
		if i == len(value) {
			if m.holds(value) {
				out = append(out, append([]int(nil), value...))
			}
			return
		}
		for v := 0; v <= m.high[i-1]; v++ {
			value[i] = v
			walk(i + 1)
		}
	}
	walk(1)
	return out
}

func randomModel(r *rand.Rand) *model {
	m := &model{}
	ints, bools := 2+r.IntN(4), r.IntN(4)
	for range ints {
		m.high = append(m.high, 1+r.IntN(7))
	}
	for range bools {
		m.high = append(m.high, 1)
	}
	term := func() Term { return Term{Var(1 + r.IntN(ints)), int32(r.IntN(4))} }
	boolean := func() Lit {
		if bools == 0 || r.IntN(3) == 0 {
			return True
		}
		l := Is(Var(1 + ints + r.IntN(bools)))
		if r.IntN(2) == 0 {
			return l.Not()
		}
		return l
	}
	anyLit := func() Lit {
		v := 1 + r.IntN(len(m.high))
		l := AtLeast(Var(v), 1+r.IntN(m.high[v-1]))
		if r.IntN(2) == 0 {
			return l.Not()
		}
		return l
	}
	for range r.IntN(4) {
		m.differs = append(m.differs, differ{term(), term(), r.IntN(7) - 2, boolean()})
	}
	for range r.IntN(4) {
		c := []Lit{anyLit()}
		for range r.IntN(3) {
			c = append(c, anyLit())
		}
		m.clauses = append(m.clauses, c)
	}
	for range r.IntN(3) {
		t := table{capacity: 1 + r.IntN(3), energy: r.IntN(2) == 0}
		for range 2 + r.IntN(4) {
			k := Task{Start: term(), Amount: 1 + r.IntN(2), Present: boolean()}
			k.Least = 1 + r.IntN(4)
			k.End = k.Start.Plus(k.Least)
			if r.IntN(3) == 0 {
				k.End = term()
				if k.Least = r.IntN(3); k.Least > 0 {
					m.differs = append(m.differs, differ{k.Start, k.End, k.Least, True})
				}
			}
			t.tasks = append(t.tasks, k)
		}
		t.unary = t.capacity == 1
		m.tables = append(m.tables, t)
	}
	for range r.IntN(3) {
		s := sum{limit: r.IntN(12) - 2}
		for range 1 + r.IntN(4) {
			s.parts = append(s.parts, Part{r.IntN(7) - 3, Var(1 + r.IntN(len(m.high)))})
		}
		m.sums = append(m.sums, s)
	}
	return m
}

// anyOpen branches at random on undecided variables.
func anyOpen(e *Engine, r *rand.Rand) func() (Lit, bool) {
	return func() (Lit, bool) {
		if l, ok := e.MostActive(); ok && r.IntN(2) == 0 {
			return l, true
		}
		n := e.Vars()
		for k, from := 0, r.IntN(n); k < n; k++ {
			v := Var((from + k) % n)
			if lo, hi := e.Low(v), e.High(v); lo < hi {
				l := AtMost(v, lo+r.IntN(hi-lo))
				if r.IntN(2) == 0 {
					return l.Not(), true
				}
				return l, true
			}
		}
		return Lit{}, false
	}
}

// drawn says how many of these random models a test draws. The race detector
// makes them ten times as slow, and runs with -short, which takes a quarter;
// "go test" draws all, "go test -race" all with the detector.
func drawn(all int) int {
	if testing.Short() {
		return all / 4
	}
	return all
}

// TestAgainstEnumeration compares feasibility, solutions and learnt clauses
// with plain enumeration on small random models: what the engine finds must
// be a solution, what it refutes must have none, and no learnt clause may
// forbid any solution.
func TestAgainstEnumeration(t *testing.T) {
	found, refuted, learnt := 0, 0, 0
	for seed := range uint64(drawn(8000)) {
		r := rand.New(rand.NewPCG(seed, 1))
		m := randomModel(r)
		solutions := m.all()
		e := New(int64(seed))
		m.post(e)
		e.onLearn = func(c []Lit) {
			learnt++
			for _, s := range solutions {
				if !anyHolds(c, s) {
					t.Fatalf("seed %d: learnt %v forbids the solution %v", seed, c, s)
				}
			}
		}
		left := solutions
		for round := 0; ; round++ {
			switch got := e.Run(Search{Branch: anyOpen(e, r), Restart: Luby}); got {
			case Found:
				found++
				value := make([]int, e.Vars())
				for v := range value {
					value[v] = e.Low(Var(v))
				}
				if !m.holds(value) {
					t.Fatalf("seed %d: %v is not a solution", seed, value)
				}
				if round == 3 {
					break
				}
				// Ask for another one with a greater first variable.
				e.AddClause(AtLeast(1, value[1]+1))
				left = nil
				for _, s := range solutions {
					if s[1] > value[1] {
						left = append(left, s)
					}
				}
				solutions = left
				continue
			case Refuted:
				refuted++
				if len(left) > 0 {
					t.Fatalf("seed %d: refuted, but %v is a solution", seed, left[0])
				}
			default:
				t.Fatalf("seed %d: outcome %d", seed, got)
			}
			break
		}
	}
	if found < drawn(1000) || refuted < drawn(500) || learnt < drawn(1000) {
		t.Errorf("found %d, refuted %d, learnt %d: the models are too easy", found, refuted, learnt)
	}
}
