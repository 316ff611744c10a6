package check

import (
	"slices"

	"plait.example/internal/practical"
	"plait.example/internal/written"
)

// timeRows finds when each row begins and ends. A time that runs backwards
// stands where it stands in the document.
func (v *view) timeRows() {
	for _, r := range v.rows {
		r.timed = r.Clock != written.NoClock
		r.begin = int(r.At)
	}
	timed := 0
	for _, r := range v.rows {
		if r.timed {
			timed++
		}
	}
	v.hasTimes = 2*timed >= len(v.rows)
	v.runs = runsOf(v.rows)
	for _, run := range v.runs {
		settle(run)
	}
	v.inTime = slices.Clone(v.rows)
	slices.SortStableFunc(v.inTime, func(a, b *row) int { return a.begin - b.begin })
	for i, r := range v.inTime {
		r.place = i
	}
	v.endRows()
}

// runsOf are the rows whose times should not fall: those of one table, and in a
// table that goes dish by dish, those of one dish.
func runsOf(rows []*row) (runs [][]*row) {
	for i, r := range rows {
		if i == 0 || r.Table != rows[i-1].Table || dishBegins(rows, i) {
			runs = append(runs, nil)
		}
		runs[len(runs)-1] = append(runs[len(runs)-1], r)
	}
	return runs
}

// dishBegins says that with row i a table begins another dish, its times anew:
// the time falls, two rows or more are about the new dish, and none of the
// dishes above comes again.
func dishBegins(rows []*row, i int) bool {
	r, above := rows[i], rows[i-1]
	if !r.timed || r.At >= above.At || len(r.Letters) == 0 || r.samely(above) || i+1 == len(rows) || !rows[i+1].samely(r) {
		return false
	}
	for _, o := range rows[:i] {
		if o.Table == r.Table && o.samely(r) {
			return false
		}
		for _, later := range rows[i:] {
			if o.Table == r.Table && later.Table == r.Table && later.samely(o) {
				return false
			}
		}
	}
	return true
}

// slip is by how many minutes a time may be out of order and still be believed.
const slip = 8

// settle marks the rows of one table that run backwards: those outside its
// longest run of times that never fall. They, and those without a time, get
// that of the row above.
func settle(list []*row) {
	keep := longest(list)
	last, first := -1, -1
	for _, r := range list {
		if keep[r] {
			first = r.begin
			break
		}
	}
	for _, r := range list {
		switch {
		case keep[r]:
			last = r.begin
			continue
		case r.timed:
			r.behind = true
			if last >= 0 && r.begin < last+slip && r.begin > last-slip {
				continue // a slip: its own time stands
			}
			r.backwards = true
		}
		if last < 0 {
			last = max(first, 0)
		}
		r.begin = last
	}
}

// longest is the rows of a longest run of times that never fall, the earlier
// rows kept where there is a choice.
func longest(list []*row) map[*row]bool {
	var timed []*row
	for _, r := range list {
		if r.timed {
			timed = append(timed, r)
		}
	}
	length, from := make([]int, len(timed)), make([]int, len(timed))
	best := -1
	for i := range timed {
		length[i], from[i] = 1, -1
		for j := range i {
			if timed[j].begin <= timed[i].begin && length[j]+1 > length[i] {
				length[i], from[i] = length[j]+1, j
			}
		}
		if best < 0 || length[i] > length[best] {
			best = i
		}
	}
	keep := map[*row]bool{}
	for i := best; i >= 0; i = from[i] {
		keep[timed[i]] = true
	}
	return keep
}

// endRows finds where each row ends: where it says so, else where the next
// later one begins, and for the last, when its work is likely done.
func (v *view) endRows() {
	for i, r := range v.inTime {
		r.end = -1
		switch {
		case r.HasUntil && int(r.Until) >= r.begin:
			r.end = int(r.Until)
		case r.Minutes > 0:
			r.end = r.begin + r.Minutes
		}
		if r.end >= 0 {
			continue
		}
		for _, next := range v.inTime[i+1:] {
			if next.begin > r.begin {
				r.end = next.begin
				break
			}
		}
		if r.end < 0 {
			r.end = r.begin + r.hands.Likely
		}
	}
}

// block is rows that begin together: the hands do them one after another.
type block struct {
	rows  []*row
	begin int
	end   int
	hands practical.Estimate
}

// blocks are the stretches of the plan between one time and the next.
func (v *view) blocks() (list []block) {
	for _, r := range v.inTime {
		if n := len(list); n == 0 || list[n-1].begin != r.begin {
			list = append(list, block{begin: r.begin, end: -1})
		}
		b := &list[len(list)-1]
		b.rows = append(b.rows, r)
		b.hands.Low += r.hands.Low
		b.hands.Likely += r.hands.Likely
		b.hands.High += r.hands.High
	}
	for i := range list {
		if i+1 < len(list) {
			list[i].end = list[i+1].begin
		} else {
			list[i].end = slices.MaxFunc(list[i].rows, func(a, b *row) int { return a.end - b.end }).end
		}
	}
	return list
}

// begins is when the first row of the plan begins, ends when the last ends; of
// an empty plan, noughts.
func (v *view) span() (begin, end int) {
	if len(v.inTime) == 0 {
		return 0, 0
	}
	end = v.inTime[0].end
	for _, r := range v.inTime {
		end = max(end, r.end)
	}
	return v.inTime[0].begin, end
}

// finishing is when the plan ends: the finish if it is known, else its last row.
func (v *view) finishing() int {
	if v.clocked {
		return v.finish
	}
	_, end := v.span()
	return end
}
