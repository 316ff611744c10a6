package written

import (
	"fmt"
	"math"
	"strings"

	"plait.example/internal/practical"
)

// clocks gives every entry its time and makes the rows. All clock times are
// read together: each is the meaning of its words with which the whole plan runs
// best, so that 1.05 after 12.50 is five past one, and 10.20 after 10.45 stays.
func (r *reader) clocks() {
	chosen := r.choose()
	start, known := r.start()
	if end, stated := r.finish(); r.countsDown() {
		if start, known = end, true; !stated {
			start = -24 * 60 // no time can be given
			r.plan.Unread = append(r.plan.Unread, "the times count down to the end, and when that is was not found: they are not given")
		}
	}
	if !known && r.counted() {
		r.plan.Unread = append(r.plan.Unread, "the times count from the start, and when that is was not found: they are given from 00:00")
	}
	rises := r.plusRises()
	for i := range r.entries {
		e := &r.entries[i]
		if e.heading && e.text() == "" {
			r.leftOver(*e)
			continue
		}
		e.beside(struck(e.lines))
		row := Row{
			Table: e.table, Line: e.line, Written: e.written, Minutes: e.minutes, Dishes: e.dishes,
			Ink: e.ink, Shade: e.shade, Text: e.text(), Points: strings.Join(e.points, "\n"), Besides: e.besides,
		}
		if o := chosen[i]; o != nil {
			row.At, row.Clock = practical.TimeOfDay(o.at), Said
			if o.mended {
				row.Clock = Restored
			}
			if e.shared {
				row.Clock = Carried
			}
		} else if !e.earlier {
			r.count(&row, e, start, rises)
		}
		if row.Minutes == 0 {
			row.Minutes = e.stamp.minutes
		}
		r.end(&row, e, r.nextAt(chosen, i))
		if e.stamp.kind == noStamp && strings.ContainsAny(e.written, "0123456789") {
			r.plan.Unread = append(r.plan.Unread, fmt.Sprintf("row %d: the time %q was not understood", len(r.plan.Rows)+1, e.written))
		}
		if row.At < 0 {
			row.At, row.Clock = 0, NoClock
			row.HasUntil, row.Until = false, 0
		}
		r.plan.Rows = append(r.plan.Rows, row)
	}
}

// start is when the clock starts: the practical's, or as the document says.
func (r *reader) start() (int, bool) {
	switch {
	case r.o.Clock != nil:
		return int(r.o.Clock.Start), true
	case r.begins >= 0:
		return r.begins, true
	}
	return 0, false
}

// counted says whether times are counted from the start.
func (r *reader) counted() bool {
	for _, e := range r.entries {
		if e.base == 0 && (e.mode == runMode || e.mode == elapsedMode) || e.stamp.kind == offset {
			return true
		}
	}
	return false
}

// plusRises says whether all "+20" count from the start: they rise, and no clock
// time is among them.
func (r *reader) plusRises() bool {
	var numbers []int
	for _, e := range r.entries {
		if e.stamp.kind == plus {
			numbers = append(numbers, e.stamp.number)
		} else if e.stamp.kind == clock {
			return false
		}
	}
	return len(numbers) < 2 || rises(numbers)
}

// count works out a time from a length, an offset, or the row above.
func (r *reader) count(row *Row, e *entry, start int, rises bool) {
	st := e.stamp
	if e.base > 0 {
		start = e.base - 1
	}
	from := func(minutes int) { row.At, row.Clock = practical.TimeOfDay(start+minutes), Counted }
	switch {
	case st.kind == offset, st.kind == plus && rises, st.kind == digits && e.mode == runMode, st.kind == length && e.mode == runMode:
		from(st.number)
		if st.last >= 0 {
			row.HasUntil, row.Until = true, practical.TimeOfDay(start+st.last)
		}
		return
	case st.kind == clock && e.mode == elapsedMode:
		from(st.times[0].at)
		if len(st.until) > 0 {
			row.HasUntil, row.Until = true, practical.TimeOfDay(start+st.until[0].at)
		}
		return
	case st.kind == atStart:
		if _, known := r.start(); known {
			from(0)
			return
		}
	case st.kind == atSetUp && r.o.Clock != nil && len(r.plan.Rows) == 0:
		row.At, row.Clock = r.o.Clock.SetUp, Counted
		return
	}
	r.carry(row, e, start)
}

// carry gives a row the time that follows from the row above.
func (r *reader) carry(row *Row, e *entry, start int) {
	st := e.stamp
	if st.kind == length || st.kind == digits && e.mode == lengthMode {
		row.Minutes = max(st.number, st.last)
	}
	if len(r.plan.Rows) == 0 {
		if _, known := r.start(); known && row.Minutes > 0 {
			row.At, row.Clock = practical.TimeOfDay(start), Counted
		}
		return
	}
	above := r.plan.Rows[len(r.plan.Rows)-1]
	if above.Clock == NoClock {
		return
	}
	row.At, row.Clock = above.At, Carried
	switch {
	case st.kind == plus || st.kind == later:
		row.At, row.Clock = above.At+practical.TimeOfDay(st.number), Counted
	case e.shared:
		row.HasUntil, row.Until = above.HasUntil, above.Until
	case above.HasUntil && (above.Until > above.At || above.Until == above.At && above.Minutes == 0):
		row.At = above.Until
	default:
		row.At = above.At + practical.TimeOfDay(above.Minutes)
	}
	if row.Clock == Carried && row.Minutes > 0 && (st.kind == length || e.mode != clockMode) {
		row.Clock = Counted
	}
}

// end reads the end that is written.
func (r *reader) end(row *Row, e *entry, next int) {
	ends := e.stamp.until
	if len(e.until.times) > 0 {
		ends = e.until.times
	}
	if row.Clock == NoClock || e.mode != clockMode && len(e.until.times) == 0 || len(ends) == 0 || e.shared && row.HasUntil {
		return
	}
	best, cost := 0, math.Inf(1)
	for _, o := range ends {
		gap := float64(o.at - int(row.At))
		c := o.cost + gap/60
		if gap < 0 {
			c = o.cost + 1 - gap/30
		}
		if o.at == next {
			c -= 1
		}
		if c < cost {
			best, cost = o.at, c
		}
	}
	row.HasUntil, row.Until = true, practical.TimeOfDay(best)
}

// nextAt is the next written time; -1: none.
func (r *reader) nextAt(chosen []*option, i int) int {
	for k := i + 1; k < len(chosen); k++ {
		if chosen[k] != nil {
			return chosen[k].at
		}
	}
	return -1
}

// choose picks for each entry with a clock time the meaning with which the whole
// sequence costs least (shortest path, after Viterbi 1967); nil for the others.
func (r *reader) choose() []*option {
	chosen := make([]*option, len(r.entries))
	var at []int // entries with clock times
	var columns [][]option
	for i, e := range r.entries {
		if !e.earlier && len(e.stamp.times) > 0 && (e.stamp.kind == clock && e.mode != elapsedMode || e.stamp.kind == digits && e.mode == clockMode) {
			at = append(at, i)
			columns = append(columns, r.unusual(e.stamp.times))
		}
	}
	costs, from := paths(columns)
	for k := len(at) - 1; k >= 0; k-- {
		best := 0
		if k == len(at)-1 {
			for j, c := range costs[k] {
				if c < costs[k][best] {
					best = j
				}
			}
		} else {
			best = from[k+1][indexOf(columns[k+1], chosen[at[k+1]])]
		}
		o := columns[k][best]
		chosen[at[k]] = &o
	}
	return chosen
}

func indexOf(list []option, one *option) int {
	for i, o := range list {
		if o == *one {
			return i
		}
	}
	return 0
}

// unusual adds what an hour costs at which nobody cooks.
func (r *reader) unusual(times []option) []option {
	all := make([]option, len(times))
	for i, o := range times {
		if c := r.o.Clock; c != nil {
			early, late := int(c.SetUp)-120, int(c.Finish)+180
			if o.at < early || o.at > late {
				o.cost += 4
			}
		} else if o.at < 7*60 || o.at > 21*60 {
			o.cost += 4
		}
		all[i] = o
	}
	return all
}

// paths finds the cheapest way to each option, and from which option before.
func paths(columns [][]option) (costs [][]float64, from [][]int) {
	for k, column := range columns {
		costs = append(costs, make([]float64, len(column)))
		from = append(from, make([]int, len(column)))
		for j, o := range column {
			best, way := 0.0, 0
			if k > 0 {
				best = math.Inf(1)
				for i, before := range columns[k-1] {
					if c := costs[k-1][i] + step(o.at-before.at); c < best {
						best, way = c, i
					}
				}
			}
			costs[k][j], from[k][j] = best+o.cost, way
		}
	}
	return costs, from
}

// step is what going so many minutes on costs: a jump, and more a step back.
func step(minutes int) float64 {
	hours := float64(minutes) / 60
	if minutes < 0 {
		return 1 - 2*hours
	}
	return hours / 2 * hours
}
