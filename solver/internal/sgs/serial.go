package sgs

// Directions of time.
const (
	forwards = iota
	backwards
)

// workbench holds what generating one schedule needs, so that nothing is
// allocated in the loop.
type workbench struct {
	*Project
	free    []uint64 // by time and word
	reached int      // times below it may be in use
	start   []int32  // of the schedule made last
	list    []int32  // order to generate by
	order   []int32
	key     []int32
	done    []bool
	waits   []int32
	count   []int32
	made    int64 // schedules generated
}

func newWorkbench(g *Project) *workbench {
	w := &workbench{Project: g}
	w.free = make([]uint64, (g.horizon+2)*g.words)
	for t := range g.horizon + 2 {
		copy(w.free[t*g.words:], g.full)
	}
	w.start, w.list = make([]int32, g.n), make([]int32, 0, g.n)
	w.key, w.order, w.done, w.waits = make([]int32, g.n), make([]int32, g.n), make([]bool, g.n), make([]int32, g.n)
	w.count = make([]int32, g.horizon+2)
	return w
}

// generate schedules w.list, which the lags must allow, each activity as early
// as can be, and returns the makespan. The starts are in w.start; backwards,
// they count from the end.
func (w *workbench) generate(way int) int32 {
	w.made++
	w.clear()
	a := &w.ways[way]
	last := int32(0)
	for _, i := range w.list {
		at := int32(0)
		if way == forwards {
			at = w.release[i]
		}
		for k := a.first[i]; k < a.first[i+1]; k++ {
			at = max(at, w.start[a.from[k]]+a.least[k])
		}
		if d := w.length[i]; d > 0 {
			if w.words == 1 {
				at = w.fitOne(at, d, w.need[i])
			} else {
				at = w.fit(at, d, w.need[int(i)*w.words:int(i+1)*w.words])
			}
		}
		w.start[i] = at
		last = max(last, at+w.length[i])
	}
	w.reached = int(last)
	return last
}

// clear frees all resources.
func (w *workbench) clear() {
	if w.words == 1 {
		free := w.free[:min(w.reached+1, len(w.free))]
		for t := range free {
			free[t] = w.full[0]
		}
		return
	}
	for t := range w.reached + 1 {
		copy(w.free[t*w.words:], w.full)
	}
}

// fitOne finds and takes the earliest room from at on, with four resources or
// fewer. A lane without room borrows its spare bit.
func (w *workbench) fitOne(at, d int32, need uint64) int32 {
	if need == 0 {
		return at
	}
	free := w.free
	for t := at; t < at+d; t++ {
		if ((free[t]|spare)-need)&spare != spare {
			at = t + 1
		}
	}
	for t := at; t < at+d; t++ {
		free[t] -= need
	}
	return at
}

// fit does the same with any number of resources.
func (w *workbench) fit(at, d int32, need []uint64) int32 {
	k := len(need)
	for t := at; t < at+d; t++ {
		row := w.free[int(t)*k : int(t+1)*k]
		for j := range need {
			if ((row[j]|spare)-need[j])&spare != spare {
				at = t + 1
				break
			}
		}
	}
	for t := at; t < at+d; t++ {
		row := w.free[int(t)*k : int(t+1)*k]
		for j := range need {
			row[j] -= need[j]
		}
	}
	return at
}

// arrange makes w.list the activities by rising key, those equal in the order
// of the project or against it; what an activity waits for comes directly
// before it if the keys put it later. Keys are 0..high.
func (w *workbench) arrange(way int, high int32) {
	for int(high)+2 > len(w.count) {
		w.count = append(w.count, 0)
	}
	counts := w.count[:high+2]
	clear(counts)
	for _, k := range w.key {
		counts[k+1]++
	}
	for k := int32(1); k <= high; k++ {
		counts[k] += counts[k-1]
	}
	for k := range w.topo {
		i := w.topo[k]
		if way == backwards {
			i = w.topo[w.n-1-k]
		}
		slot := &counts[w.key[i]]
		w.order[*slot] = i
		*slot++
	}
	w.list = w.list[:0]
	clear(w.done)
	for _, i := range w.order {
		w.place(i, &w.ways[way])
	}
}

// place puts an activity at the end of the list, what it waits for first.
func (w *workbench) place(i int32, a *arcs) {
	if w.done[i] {
		return
	}
	w.done[i] = true
	for k := a.first[i]; k < a.first[i+1]; k++ {
		w.place(a.from[k], a)
	}
	w.list = append(w.list, i)
}

// justify moves all activities of the schedule in w.start as far to the end as
// they go, then to the beginning again, while that makes it shorter. It
// returns the makespan, with a schedule in w.start that counts from the
// beginning.
func (w *workbench) justify(last int32) int32 {
	for {
		before := last
		for way := backwards; ; way = forwards {
			for i := range w.key {
				w.key[i] = last - w.start[i] - w.length[i]
			}
			w.arrange(way, last)
			last = w.generate(way)
			if way == forwards {
				break
			}
		}
		if last >= before {
			return last
		}
	}
}
