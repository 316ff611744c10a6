package recheck

import (
	"slices"

	"plait.example/solver/problem"
)

// search tries everything below a domain: it looks for a schedule of the
// problem that keeps the clauses taken on so far.
type search struct {
	c      *checker
	left   int               // nodes; below 0, the search was cut short
	first  []lit             // what they speak of is tried first
	given  *problem.Solution // its changes alone are tried, or nil
	values []int             // of the schedule found
}

// below says whether there is a schedule in d. Cut short, it says no.
func (s *search) below(d *domain) bool {
	if s.left--; s.left < 0 {
		return false
	}
	if !s.c.propagate(d) {
		return false
	}
	left, right, open := s.split(d)
	if !open {
		return s.states(d)
	}
	for _, way := range [...]func(*domain){left, right} {
		e := d.clone()
		way(e)
		if s.below(e) {
			return true
		}
		if s.left < 0 {
			return false
		}
	}
	return false
}

// split gives two ways that together leave nothing out: a mode or not, one
// order of a pair that clashes or the other, one half of a time or the other.
func (s *search) split(d *domain) (left, right func(*domain), open bool) {
	c := s.c
	for _, vars := range c.modes {
		for _, v := range vars {
			if !d.fixed(v) {
				return func(e *domain) { e.fix(v, 1) }, func(e *domain) { e.fix(v, 0) }, true
			}
		}
	}
	if v, found := s.spoken(d); found {
		return halves(d, v)
	}
	c.leastAmounts(d)
	if i, j, found := s.tightest(d); found {
		choose := func(i, j int) func(*domain) {
			return func(e *domain) {
				e.orders = append(e.orders, c.order(i, j))
				c.putFirst(e, i, j)
			}
		}
		return choose(i, j), choose(j, i), true
	}
	best := -1
	for v := range 2 * c.n {
		if !d.fixed(v) && (best < 0 || d.hi[v]-d.lo[v] < d.hi[best]-d.lo[best]) {
			best = v
		}
	}
	if best < 0 {
		return nil, nil, false
	}
	return halves(d, best)
}

// spoken is the time of fewest values, of those that the clause speaks of.
func (s *search) spoken(d *domain) (best int, found bool) {
	for _, l := range s.first {
		if l.v < 2*s.c.n && !d.fixed(l.v) && (!found || d.hi[l.v]-d.lo[l.v] < d.hi[best]-d.lo[best]) {
			best, found = l.v, true
		}
	}
	return best, found
}

func halves(d *domain, v int) (left, right func(*domain), open bool) {
	half := d.lo[v] + (d.hi[v]-d.lo[v])/2
	return func(e *domain) { e.atMost(v, half) }, func(e *domain) { e.atLeast(v, half+1) }, true
}

// tightest is the pair that clashes, in no order yet, with the least room.
func (s *search) tightest(d *domain) (first, second int, found bool) {
	c := s.c
	least := farthest
	for i := range c.n {
		for j := range i {
			if !c.clash(i, j) || c.comesFirst(d, i, j) || c.comesFirst(d, j, i) {
				continue
			}
			room := max(d.hi[c.startOf(i)], d.hi[c.startOf(j)]) - min(d.lo[c.endOf(i)], d.lo[c.endOf(j)])
			if room < least {
				first, second, least, found = i, j, room, true
			}
		}
	}
	return first, second, found
}

// turn is a change of a state.
type turn struct {
	problem.StateChange
	from int
	problem.Change
}

// stand is what serves a need: the block and what led to it.
type stand struct {
	there        bool
	block, level int
	turn         turn
}

// wish is a need in the order of starts.
type wish struct {
	activity    int
	from, until int
	levels      []bool
}

// states tries every row of changes for every state, all starts, ends and
// modes being fixed.
func (s *search) states(d *domain) bool {
	return s.state(d, 0, nil, nil)
}

func (s *search) state(d *domain, k int, turns []turn, stands [][]stand) bool {
	c := s.c
	if k == len(c.p.States) {
		return s.whole(d, turns, stands)
	}
	var wishes []wish
	for i := range c.n {
		if len(c.p.Activities[i].Modes) == 0 {
			continue
		}
		if set := c.allowed(i, c.modeOf(d, i), k); set != nil {
			from := d.lo[c.startOf(i)]
			wishes = append(wishes, wish{i, from, max(from+1, d.lo[c.endOf(i)]), set})
		}
	}
	slices.SortStableFunc(wishes, func(a, b wish) int { return a.from - b.from })
	r := row{search: s, d: d, k: k, before: stands, here: make([]stand, c.n)}
	return r.serve(wishes, stand{there: true, level: c.p.States[k].Initial}, 0, turns)
}

// modeOf is the mode of an activity, which must be decided.
func (c *checker) modeOf(d *domain, i int) int {
	for m, v := range c.modes[i] {
		if d.lo[v] == 1 {
			return m
		}
	}
	return 0
}

// row is the changes of one state in the making.
type row struct {
	*search
	d      *domain
	k      int
	before [][]stand // of the states before
	here   []stand   // by activity
}

// serve serves the wishes in order, the state standing as now says and in use
// or changing until busy. A change must serve the next wish: none other lies
// before the change after it.
func (r *row) serve(wishes []wish, now stand, busy int, turns []turn) bool {
	if r.left--; r.left < 0 {
		return false
	}
	if len(wishes) == 0 {
		return r.state(r.d, r.k+1, turns, append(slices.Clone(r.before), slices.Clone(r.here)))
	}
	w := wishes[0]
	defer func() { r.here[w.activity] = stand{} }()
	if w.levels[now.level] && (now.block == 0 || w.from >= now.turn.At+now.turn.Work+now.turn.Settle) {
		r.here[w.activity] = now
		if r.fits(w.activity) && r.serve(wishes[1:], now, max(busy, w.until), turns) {
			return true
		}
	}
	st := &r.c.p.States[r.k]
	for to, may := range w.levels {
		if !may || to == now.level {
			continue
		}
		change := st.Change[now.level][to]
		for at := max(busy, st.ChangeFrom); at+change.Work+change.Settle <= w.from; at++ {
			t := turn{problem.StateChange{State: r.k, Level: to, At: at}, now.level, change}
			if r.given != nil && !slices.Contains(r.given.Changes, t.StateChange) {
				continue
			}
			r.here[w.activity] = stand{true, now.block + 1, to, t}
			if r.fits(w.activity) && r.serve(wishes[1:], r.here[w.activity], w.until, append(turns[:len(turns):len(turns)], t)) {
				return true
			}
			if r.left < 0 {
				return false
			}
		}
	}
	return false
}

// fits says that what an activity's need came to is allowed by the variables
// that speak of it.
func (r *row) fits(i int) bool {
	for _, y := range r.c.plays {
		if y.state != r.k || y.i != i && y.j != i || !r.here[y.i].there || kinds[y.kind].two && !r.here[y.j].there {
			continue
		}
		if k := y.value(r.here); k < r.d.lo[y.v] || k > r.d.hi[y.v] {
			return false
		}
	}
	return true
}

// whole judges a whole schedule with its changes.
func (s *search) whole(d *domain, turns []turn, stands [][]stand) bool {
	c := s.c
	if s.given != nil && !sameChanges(s.given.Changes, turns) {
		return false
	}
	if !c.roomFor(d, turns) {
		return false
	}
	e := d.clone()
	for k, v := range c.worked {
		working, all := 0, 0
		for _, t := range turns {
			if t.State == k {
				all++
				working += one(t.Work > 0)
			}
		}
		e.fix(v, working)
		e.fix(c.counts[k], all)
	}
	for _, y := range c.plays {
		e.fix(y.v, y.value(stands[y.state]))
	}
	if !c.propagate(e) {
		return false
	}
	s.values = nil
	for _, v := range c.values {
		s.values = append(s.values, e.lo[v])
	}
	return true
}

func sameChanges(given []problem.StateChange, turns []turn) bool {
	var list []problem.StateChange
	for _, t := range turns {
		list = append(list, t.StateChange)
	}
	byTime := func(a, b problem.StateChange) int {
		return slices.Compare([]int{a.At, a.State, a.Level}, []int{b.At, b.State, b.Level})
	}
	given = slices.Clone(given)
	slices.SortFunc(given, byTime)
	slices.SortFunc(list, byTime)
	return slices.Equal(given, list)
}

// roomFor counts, minute by minute, what activities and changes take.
func (c *checker) roomFor(d *domain, turns []turn) bool {
	for r, room := range c.room {
		used := make([]int, len(room))
		for i, a := range c.p.Activities {
			if len(a.Modes) == 0 {
				continue
			}
			for t := d.lo[c.startOf(i)]; t < d.lo[c.endOf(i)]; t++ {
				used[t] += uses(a.Modes[c.modeOf(d, i)].Uses, r)
			}
		}
		for _, k := range turns {
			for t := k.At; t < k.At+k.Work; t++ {
				used[t] += uses(c.p.States[k.State].Uses, r)
			}
		}
		for t := range room {
			if used[t] > room[t] {
				return false
			}
		}
	}
	return true
}

// value is what a variable of states comes to, given how the needs are served.
func (y *play) value(stands []stand) int {
	x, o := &stands[y.i], &stands[y.j]
	led := x.there && x.block > 0
	both := x.there && o.there
	switch y.kind {
	case "level":
		return one(x.there && x.level == y.a || !x.there && y.a == y.b)
	case "place":
		if x.there {
			return min(x.block, y.a)
		}
		return 0
	case "turn":
		if x.there {
			return x.block
		}
		return 0
	case "change":
		if led {
			return x.turn.At
		}
		return y.a
	case "worked":
		if led && x.turn.Work > 0 {
			return x.turn.At + x.turn.Work
		}
		return 0
	case "kind":
		return one(led && x.turn.Work == y.a && x.turn.Settle == y.b)
	case "source":
		return one(led && x.turn.from == y.a)
	case "same":
		return one(both && x.block == o.block)
	case "before":
		return one(both && x.block < o.block)
	}
	return one(both && x.block+1 == o.block) // next
}

func one(yes bool) int {
	if yes {
		return 1
	}
	return 0
}
