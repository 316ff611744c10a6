package lcg

// Task uses Amount of a resource over [Start, End) while Present holds.
// Nothing here says that Start <= End or how long a task is: differences do.
type Task struct {
	Start, End Term
	Amount     int
	Present    Lit
	Least      int // the caller's promise: End >= Start + Least; may be 0
}

// cumulative is the time-table propagator of a resource of constant capacity;
// a calendar is a set of fixed tasks. The compulsory part of a task is the
// time from its latest start to its earliest end. Where the compulsory parts
// leave less than a task's amount, the task cannot be.
//
// Explanations are pointwise (Schutt et al. 2011): each deduction names one
// moment t and the tasks that cover it, as start <= t and end >= t+1.
type cumulative struct {
	id       int32
	capacity int
	tasks    []Task
	byStart  []int32 // tasks in order of latest start, kept between runs
	byEnd    []int32 // tasks in order of earliest end
	lst, ect []int32
	profile  []segment
	tall     []segment // those of the profile that leave too little for the greatest task
	greatest int       // amount of any task
	before   []int64   // by segment: energy before it, see energy.go
	cover    []coverTask
}

// segment is a stretch of constant height of the compulsory parts.
type segment struct {
	from, to int32
	height   int
}

// AddCumulative demands that at every moment the amounts in use sum to at
// most the capacity. Windows of time are looked at as well, which is dear and
// strong: always if energetic, else only before the first decision of a run.
func (e *Engine) AddCumulative(tasks []Task, capacity int, energetic bool) {
	e.backTo(0)
	c := &cumulative{capacity: capacity, tasks: tasks}
	c.lst = make([]int32, len(tasks))
	c.ect = make([]int32, len(tasks))
	var sides []Side
	for i := range tasks {
		t := &tasks[i]
		c.greatest = max(c.greatest, t.Amount)
		c.byStart = append(c.byStart, int32(i))
		c.byEnd = append(c.byEnd, int32(i))
		for _, v := range []Var{t.Start.Var, t.End.Var} {
			sides = append(sides, Side(2*v), Side(2*v)+1)
		}
		sides = append(sides, t.Present.Side)
	}
	c.id = e.addPropagator(c, middling, sides)
	e.addEnergy(c, sides, !energetic)
}

// run builds the profile, then filters every task against the segments that
// could be in the way of one.
func (c *cumulative) run(e *Engine) bool {
	top := c.build(e)
	if top > c.capacity && !c.overload(e) {
		return false
	}
	if top+c.greatest <= c.capacity {
		return true
	}
	c.tall = c.tall[:0]
	for _, s := range c.profile {
		if s.height+c.greatest > c.capacity {
			c.tall = append(c.tall, s)
		}
	}
	for i := range c.tasks {
		t := &c.tasks[i]
		if top+t.Amount <= c.capacity || e.Fails(t.Present) {
			continue
		}
		if e.Holds(t.Present) {
			if e.Min(t.Start) == e.Max(t.Start) && e.Min(t.End) == e.Max(t.End) {
				continue // all of it is in the profile
			}
			if !c.pushStart(e, i) || !c.pushEnd(e, i) {
				return false
			}
		} else if !c.exclude(e, i) {
			return false
		}
	}
	return true
}

// build sweeps over latest starts and earliest ends. It returns the greatest
// height.
func (c *cumulative) build(e *Engine) int {
	for i := range c.tasks {
		t := &c.tasks[i]
		c.lst[i], c.ect[i] = int32(e.Max(t.Start)), int32(e.Min(t.End))
		if c.ect[i] <= c.lst[i] || !e.Holds(t.Present) {
			c.lst[i], c.ect[i] = never, never
		}
	}
	arrange(c.byStart, c.lst)
	arrange(c.byEnd, c.ect)
	c.profile = c.profile[:0]
	height, top := 0, 0
	at := never
	i, j := 0, 0
	for j < len(c.byEnd) && c.ect[c.byEnd[j]] < never {
		next := c.ect[c.byEnd[j]]
		if i < len(c.byStart) {
			next = min(next, c.lst[c.byStart[i]])
		}
		if height > 0 && at < next {
			c.profile = append(c.profile, segment{at, next, height})
			top = max(top, height)
		}
		at = next
		for ; i < len(c.byStart) && c.lst[c.byStart[i]] == next; i++ {
			height += c.tasks[c.byStart[i]].Amount
		}
		for ; j < len(c.byEnd) && c.ect[c.byEnd[j]] == next; j++ {
			height -= c.tasks[c.byEnd[j]].Amount
		}
	}
	return top
}

// never is later than any time.
const never = int32(1 << 30)

// arrange sorts an order that is nearly sorted already.
func arrange(order, key []int32) {
	for i := 1; i < len(order); i++ {
		x := order[i]
		k := key[x]
		j := i
		for ; j > 0 && key[order[j-1]] > k; j-- {
			order[j] = order[j-1]
		}
		order[j] = x
	}
}

// overload reports a segment above the capacity.
func (c *cumulative) overload(e *Engine) bool {
	for _, s := range c.profile {
		if s.height > c.capacity {
			e.conflict = c.coverAt(e, e.conflict[:0], -1, (s.from+s.to)/2, c.capacity, int32(len(e.trail)))
			return false
		}
	}
	return true
}

// blocks says that a segment leaves too little for task i, whose own
// compulsory part does not count against it.
func (c *cumulative) blocks(s *segment, i int) bool {
	h := s.height + c.tasks[i].Amount
	if c.lst[i] <= s.from && s.to <= c.ect[i] {
		h -= c.tasks[i].Amount
	}
	return h > c.capacity
}

// pushStart moves the earliest start of a present task over blocked segments.
func (c *cumulative) pushStart(e *Engine, i int) bool {
	t := &c.tasks[i]
	est, ect := int32(e.Min(t.Start)), int32(e.Min(t.End))
	for k := firstAfter(c.tall, est); k < len(c.tall); k++ {
		s := &c.tall[k]
		if s.from >= ect {
			break
		}
		if s.to <= est || !c.blocks(s, i) {
			continue
		}
		for est < s.to && est < ect {
			at := min(s.to, ect) - 1
			if !e.set(t.Start.AtLeast(int(at)+1), c.because(i, fromLeft)) {
				return false
			}
			est, ect = int32(e.Min(t.Start)), int32(e.Min(t.End))
		}
	}
	return true
}

// pushEnd moves the latest end of a present task before blocked segments.
func (c *cumulative) pushEnd(e *Engine, i int) bool {
	t := &c.tasks[i]
	lst, let := int32(e.Max(t.Start)), int32(e.Max(t.End))
	for k := firstAfter(c.tall, let-1); k >= 0; k-- {
		if k >= len(c.tall) {
			continue
		}
		s := &c.tall[k]
		if s.to <= lst {
			break
		}
		if s.from >= let || !c.blocks(s, i) {
			continue
		}
		for let > s.from && lst < let {
			at := max(s.from, lst)
			if !e.set(t.End.AtMost(int(at)), c.because(i, fromRight)) {
				return false
			}
			lst, let = int32(e.Max(t.Start)), int32(e.Max(t.End))
		}
	}
	return true
}

// firstAfter is the index of the first segment that ends after t.
func firstAfter(list []segment, t int32) int {
	lo, hi := 0, len(list)
	for lo < hi {
		m := (lo + hi) / 2
		if list[m].to <= t {
			lo = m + 1
		} else {
			hi = m
		}
	}
	return lo
}

// exclude rules out an optional task whose compulsory part, if it were
// present, has no room.
func (c *cumulative) exclude(e *Engine, i int) bool {
	t := &c.tasks[i]
	lst, ect := int32(e.Max(t.Start)), int32(e.Min(t.End))
	if lst >= ect {
		return true
	}
	for k := firstAfter(c.tall, lst); k < len(c.tall); k++ {
		s := &c.tall[k]
		if s.from >= ect {
			break
		}
		if s.height+t.Amount > c.capacity {
			return c.excludeBecause(e, i, max(s.from, lst))
		}
	}
	return true
}
