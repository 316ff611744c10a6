package lcg

// disjunctive looks at tasks of which no two may overlap, for whatever reason:
// the reason itself is posted elsewhere. What must come before a task (because
// that could not end before it has to start otherwise: a detectable precedence)
// takes its time one after the other before the task can start; and a task
// that would start too early behind a set of others is not last among it. The
// mirror image gives what must come after, and not-first (P. Vilim, Filtering
// algorithms for the unary resource constraint, 2008; explanations as in P.
// Vilim, Computing explanations for the unary resource constraint, 2005).
type disjunctive struct {
	tasks    []Task
	mirror   bool // time runs backwards: start is minus the end
	n        int
	task     []int32 // the present tasks, by rising earliest start
	est, lst []int32
	ect      []int32
	least    []int32
	order    [2][]int32 // forwards and backwards
	all      int32      // when all are done at the earliest, as far as seen here
	soonest  int32      // least latest start
	rest     int        // wakes to let go by, as for energy
	wait     int
	because  []Lit
}

// AddDisjunctive helps with tasks of which no two that are present overlap.
// It demands nothing of its own: post the resource or the orders as well.
func (e *Engine) AddDisjunctive(tasks []Task) {
	e.backTo(0)
	d := &disjunctive{tasks: tasks}
	var sides []Side
	for i := range tasks {
		t := &tasks[i]
		for _, v := range []Var{t.Start.Var, t.End.Var} {
			sides = append(sides, Side(2*v), Side(2*v)+1)
		}
		sides = append(sides, t.Present.Side)
	}
	for i := range tasks {
		d.order[0], d.order[1] = append(d.order[0], int32(i)), append(d.order[1], int32(i))
	}
	for _, s := range []*[]int32{&d.task, &d.est, &d.lst, &d.ect, &d.least} {
		*s = make([]int32, len(tasks))
	}
	e.addPropagator(d, dear, sides)
}

func (d *disjunctive) unfold(_ *Engine, out []Lit, _ Lit, _, _ int32) []Lit { return out }

func (d *disjunctive) run(e *Engine) bool {
	if e.level() > e.assumed {
		if d.wait++; d.wait < d.rest {
			return true
		}
	}
	d.wait = 0
	before := len(e.trail)
	ok := true
	for _, mirror := range [...]bool{false, true} {
		d.mirror = mirror
		d.load(e)
		if ok = d.scan(e); !ok {
			break
		}
	}
	if !ok || len(e.trail) > before {
		d.rest = 0
	} else {
		d.rest = min(2*d.rest+1, longestRest)
	}
	return ok
}

// load reads the bounds of the tasks that are present and have length, in
// order of the earliest start. The order of the last time is nearly right.
func (d *disjunctive) load(e *Engine) {
	order := d.order[0]
	if d.mirror {
		order = d.order[1]
	}
	for x := 1; x < len(order); x++ {
		i := order[x]
		key := d.earliest(e, i)
		y := x
		for ; y > 0 && d.earliest(e, order[y-1]) > key; y-- {
			order[y] = order[y-1]
		}
		order[y] = i
	}
	d.n, d.all, d.soonest = 0, -1<<30, never
	for _, i := range order {
		t := &d.tasks[i]
		if t.Least == 0 || !e.Holds(t.Present) {
			continue
		}
		est, lst, ect := int32(e.Min(t.Start)), int32(e.Max(t.Start)), int32(e.Min(t.End))
		if d.mirror {
			est, lst, ect = -int32(e.Max(t.End)), -ect, -lst
		}
		k := d.n
		d.task[k], d.est[k], d.lst[k], d.ect[k], d.least[k] = i, est, lst, ect, int32(t.Least)
		d.n++
		d.all = max(d.all, est) + int32(t.Least)
		d.soonest = min(d.soonest, lst)
	}
}

func (d *disjunctive) earliest(e *Engine, i int32) int32 {
	if d.mirror {
		return -int32(e.Max(d.tasks[i].End))
	}
	return int32(e.Min(d.tasks[i].Start))
}

// scan looks at every task i in turn.
func (d *disjunctive) scan(e *Engine) bool {
	for i := range d.n {
		if d.soonest < d.ect[i] && !d.precedences(e, i) {
			return false
		}
		if d.lst[i] < d.all && !d.notLast(e, i) {
			return false
		}
	}
	return true
}

// precedences starts i after all that must precede it: those that cannot start
// at its earliest end.
func (d *disjunctive) precedences(e *Engine, i int) bool {
	var end, from int32
	found := false
	for k := range d.n {
		if k == i || d.lst[k] >= d.ect[i] {
			continue
		}
		if !found || d.est[k] >= end {
			end, from, found = d.est[k], d.est[k], true
		}
		end += d.least[k]
	}
	if !found || end <= d.est[i] {
		return true
	}
	latest := d.latestStart(i, from, d.ect[i])
	d.because = append(d.because[:0], d.endAtLeast(i, latest+1), d.present(i))
	d.set(i, from, d.ect[i], latest)
	return e.setStored(d.startAtLeast(i, end), d.because)
}

// notLast ends i before the latest start of a set that it cannot follow: one
// that ends, one after the other, later than i can start.
func (d *disjunctive) notLast(e *Engine, i int) bool {
	limit := d.latestEnd(e, i)
	var end, from int32
	found := false
	for k := range d.n {
		if k == i || d.lst[k] >= limit {
			continue
		}
		if !found || d.est[k] >= end {
			end, from, found = d.est[k], d.est[k], true
		}
		end += d.least[k]
	}
	if !found || end <= d.lst[i] {
		return true
	}
	latest := d.latestStart(i, from, limit)
	d.because = append(d.because[:0], d.startAtMost(i, end-1), d.present(i))
	d.set(i, from, limit, latest)
	return e.setStored(d.endAtMost(i, latest), d.because)
}

// latestStart is the latest start of the tasks other than i that start from on
// and before limit.
func (d *disjunctive) latestStart(i int, from, limit int32) int32 {
	latest := int32(-1 << 30)
	for k := range d.n {
		if k != i && d.lst[k] < limit && d.est[k] >= from {
			latest = max(latest, d.lst[k])
		}
	}
	return latest
}

// set adds to the reasons that those tasks lie there.
func (d *disjunctive) set(i int, from, limit, latest int32) {
	for k := range d.n {
		if k != i && d.lst[k] < limit && d.est[k] >= from {
			d.because = append(d.because, d.startAtLeast(k, from), d.startAtMost(k, latest), d.present(k))
		}
	}
}

func (d *disjunctive) latestEnd(e *Engine, k int) int32 {
	t := &d.tasks[d.task[k]]
	if d.mirror {
		return -int32(e.Min(t.Start))
	}
	return int32(e.Max(t.End))
}

func (d *disjunctive) present(k int) Lit { return d.tasks[d.task[k]].Present }

func (d *disjunctive) startAtLeast(k int, v int32) Lit {
	t := &d.tasks[d.task[k]]
	if d.mirror {
		return t.End.AtMost(int(-v))
	}
	return t.Start.AtLeast(int(v))
}

func (d *disjunctive) startAtMost(k int, v int32) Lit {
	t := &d.tasks[d.task[k]]
	if d.mirror {
		return t.End.AtLeast(int(-v))
	}
	return t.Start.AtMost(int(v))
}

func (d *disjunctive) endAtLeast(k int, v int32) Lit {
	t := &d.tasks[d.task[k]]
	if d.mirror {
		return t.Start.AtMost(int(-v))
	}
	return t.End.AtLeast(int(v))
}

func (d *disjunctive) endAtMost(k int, v int32) Lit {
	t := &d.tasks[d.task[k]]
	if d.mirror {
		return t.Start.AtLeast(int(-v))
	}
	return t.End.AtMost(int(v))
}
