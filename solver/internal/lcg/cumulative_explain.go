package lcg

import (
	"cmp"
	"slices"
)

// What a time-table deduction did. The moment t of it follows from the
// literal that was set: start >= t+1 or end <= t.
const (
	fromLeft = iota
	fromRight
)

// coverTask is a task that covers a moment, and when it came to.
type coverTask struct {
	task int32
	when int32
}

func (c *cumulative) because(i int, kind int32) reason {
	return reason{byTable, c.id, int32(i)<<1 | kind}
}

// unfold explains a push of task data>>1.
func (c *cumulative) unfold(e *Engine, out []Lit, l Lit, data, at int32) []Lit {
	i := int(data >> 1)
	t := &c.tasks[i]
	reached := l.Min
	if int(at) < len(e.trail) {
		reached = e.trail[at].new
	}
	var moment int32
	if data&1 == fromLeft {
		moment = reached + t.Start.Add - 1
		out = append(out, t.End.AtLeast(int(moment)+1))
	} else {
		moment = t.End.Add - reached
		out = append(out, t.Start.AtMost(int(moment)))
	}
	out = append(out, t.Present)
	return c.coverAt(e, out, i, moment, c.capacity-t.Amount, at)
}

// coverAt adds the literals of tasks, other than skip, that cover a moment
// before event at, enough of them for their amounts to exceed the limit.
// Those that came to cover it last are left out first.
func (c *cumulative) coverAt(e *Engine, out []Lit, skip int, moment int32, limit int, at int32) []Lit {
	c.cover = c.cover[:0]
	sum := 0
	for i := range c.tasks {
		if i == skip {
			continue
		}
		t := &c.tasks[i]
		if when, ok := e.lastCause(at, t.Start.AtMost(int(moment)), t.End.AtLeast(int(moment)+1), t.Present); ok {
			c.cover = append(c.cover, coverTask{int32(i), when})
			sum += t.Amount
		}
	}
	if sum <= limit {
		panic("lcg: a time-table deduction without a cover")
	}
	slices.SortFunc(c.cover, func(a, b coverTask) int {
		return cmp.Or(cmp.Compare(b.when, a.when), cmp.Compare(a.task, b.task))
	})
	for _, k := range c.cover {
		t := &c.tasks[k.task]
		if sum-t.Amount > limit {
			sum -= t.Amount
			continue
		}
		out = append(out, t.Start.AtMost(int(moment)), t.End.AtLeast(int(moment)+1), t.Present)
	}
	return out
}

// lastCause says whether all three literals held before the event at index
// at, and which event came last of those behind them.
func (e *Engine) lastCause(at int32, a, b, c Lit) (int32, bool) {
	if e.bound[a.Side] < a.Min || e.bound[b.Side] < b.Min || e.bound[c.Side] < c.Min {
		return 0, false
	}
	last := int32(-1)
	for _, l := range [...]Lit{a, b, c} {
		k := e.cause(l)
		if k >= at {
			return 0, false
		}
		last = max(last, k)
	}
	return last, true
}

// excludeBecause rules a task out at a moment, with its reason stored.
func (c *cumulative) excludeBecause(e *Engine, i int, moment int32) bool {
	t := &c.tasks[i]
	e.buffer = append(e.buffer[:0], t.Start.AtMost(int(moment)), t.End.AtLeast(int(moment)+1))
	e.buffer = c.coverAt(e, e.buffer, i, moment, c.capacity-t.Amount, int32(len(e.trail)))
	return e.setStored(t.Present.Not(), e.buffer)
}
