package check

import (
	"fmt"
	"slices"

	"plait.example/internal/act"
	"plait.example/internal/practical"
	"plait.example/internal/written"
)

// The clock: does it run, and is there time for what is written?
var clockTests = map[string]test{
	"clock-backwards": backwards,
	"gap":             gap,
	"overrun":         overrun,
	"set-up-work":     setUpWork,
	"oven-in-set-up":  ovenInSetUp,
	"overfull-block":  overfull,
	"two-hands-on":    twoHandsOn,
	"too-little-time": tooLittleTime,
	"extra-time":      extraTime,
	"rest-break":      restBreak,
}

// backwards tells each time that is before the one above it, in a table or in
// the rows of a dish that stand apart.
func backwards(v *view, f *asker) {
	for _, run := range v.runs {
		var above *row
		for _, r := range run {
			if !r.timed || r.Clock == written.Carried {
				continue
			}
			if above != nil && r.At < above.At && (r.behind || above.behind) {
				f.tell(saw{rows: []*row{r, above}, minutes: int(above.At - r.At)})
			}
			above = r
		}
	}
}

// gap tells stretches in which nothing is in the hands and nothing says why.
func gap(v *view, f *asker) {
	blocks := v.blocks()
	for i, b := range blocks[:max(0, len(blocks)-1)] {
		idle, known := v.idle(b)
		longest := f.limit("longest")
		if b.waits() {
			longest = f.limit("while-waiting")
		}
		if !known || idle <= longest || v.clocked && b.begin < v.start {
			continue
		}
		last := b.rows[len(b.rows)-1]
		f.tell(saw{rows: []*row{last, blocks[i+1].rows[0]}, minutes: idle, say: map[string]string{"from": v.clock(b.end - idle), "until": v.clock(b.end)}})
	}
}

// idle is the minutes of a block that its work does not fill. False: its words
// do not tell, or they say that the cook waits.
func (v *view) idle(b block) (int, bool) {
	busy := 0
	for _, r := range b.rows {
		if r.has(act.Idle) || v.restsIn(b) {
			return 0, false
		}
		if r.HasUntil && !r.passive() {
			busy = max(busy, r.end-b.begin)
			continue
		}
		for _, d := range r.deeds {
			small := d.Kind == act.Other && d.job.High <= 3
			if d.Kind == act.Other && !small && len(r.words) > 3 {
				return 0, false
			}
			if d.Kind != act.Other || small {
				busy += max(d.job.High, 2*d.job.Likely)
			}
		}
		if len(r.deeds) == 0 && len(r.words) > 3 {
			return 0, false
		}
		busy = max(busy, r.recipe.High)
	}
	return b.end - b.begin - busy, true
}

// waits says that a row of the block leaves something to itself: the wait
// explains why the hands are free, if not what for.
func (b block) waits() bool {
	return slices.ContainsFunc(b.rows, func(r *row) bool {
		return r.has(act.PutIn, act.Prove, act.Chill, act.Freeze, act.Cool, act.Rest, act.Marinate, act.Soak) || slices.ContainsFunc(r.deeds, func(d *deed) bool { return unattended(d.Act) })
	})
}

// passive says that nothing in the row keeps the hands for long.
func (r *row) passive() bool {
	return r.hands.Low <= 2 && r.hands.Likely <= 4 && len(r.deeds) > 0
}

// restsIn says that a rest break lies in the block.
func (v *view) restsIn(b block) bool {
	return v.Practical != nil && slices.ContainsFunc(v.Practical.Clock.Breaks, func(k practical.Break) bool {
		return int(k.At) < b.end && int(k.At)+k.Minutes > b.begin
	})
}

// overrun tells that the plan ends after the clock.
func overrun(v *view, f *asker) {
	if !v.clocked {
		return
	}
	last, end := (*row)(nil), 0
	for _, r := range v.inTime {
		at := r.begin
		switch {
		case r.HasUntil || r.Minutes > 0:
			at = r.end
		case r.begin < v.finish && r.begin+min(r.hands.Likely, 10)-v.finish >= f.limit("work"):
			at = r.begin + min(r.hands.Likely, 10)
		}
		if r.timed && !r.backwards && at > end {
			last, end = r, at
		}
	}
	for _, l := range v.loads {
		if until, known := l.until(); known && until > end {
			last, end = l.in.row, until
		}
	}
	if end > v.finish {
		f.tell(saw{rows: []*row{last}, minutes: end - v.finish, say: map[string]string{"finish": v.clock(v.finish)}})
	}
}

// least is the fewest minutes of hands that a row takes, by its words; not more
// than what the recipe gives as likely.
func (r *row) least() int {
	if r.recipe.Likely > 0 {
		return min(r.hands.Low, r.recipe.Likely)
	}
	return r.hands.Low
}

// overfull tells blocks with more work than minutes.
func overfull(v *view, f *asker) {
	cooks := v.cooks()
	blocks := v.blocks()
	for i, b := range blocks {
		end := b.end
		if i == len(blocks)-1 {
			if end = v.finish; !v.clocked || end <= b.begin {
				continue
			}
		}
		if v.clocked && b.begin < v.start && end > v.start {
			end = max(end, v.start)
		}
		low, rows := 0, []*row(nil)
		for _, r := range b.rows {
			if !r.backwards {
				low += r.least()
				rows = append(rows, r)
			}
		}
		room := (end - b.begin) * cooks
		if over := low - room; len(rows) > 0 && over >= f.limit("over") && over*100 >= low*f.limit("share") {
			slices.SortStableFunc(rows, func(a, b *row) int { return b.least() - a.least() })
			f.tell(saw{rows: rows, minutes: over, say: map[string]string{"room": fmt.Sprint(end - b.begin), "needed": fmt.Sprint(low)}})
		}
	}
}

func (v *view) cooks() int {
	if v.Practical != nil {
		return max(1, v.Practical.Cooks)
	}
	return 1
}

// handsOnly says that a row is work of the hands and no wait.
func (r *row) handsOnly() bool {
	for _, d := range r.deeds {
		switch d.Kind {
		case act.PutIn, act.Chill, act.Freeze, act.Prove, act.Rest, act.Cool, act.Marinate, act.Soak, act.Idle, act.BoilWater, act.KeepHot, act.HeatOven:
			return false
		case act.Hob:
			if unattended(d.Act) {
				return false
			}
		}
	}
	return r.hands.Low > 0
}

// twoHandsOn tells rows that want the hands at the same time.
func twoHandsOn(v *view, f *asker) {
	if v.cooks() > 1 {
		return
	}
	for i, a := range v.inTime {
		for _, b := range v.inTime[i+1:] {
			if b.begin >= max(a.end, a.begin+a.saidHands()) || a.backwards || b.backwards || !a.timed || !b.timed {
				break
			}
			if n := clash(a, b, f.limit("work")); n > 0 {
				f.tell(saw{rows: []*row{b, a}, minutes: n})
				break
			}
		}
	}
}

// saidHands is the minutes that a row says of one job of the hands.
func (r *row) saidHands() int {
	if len(r.deeds) == 0 || r.deeds[0].Least == 0 {
		return 0
	}
	switch d := r.deeds[0]; d.Kind {
	case act.Mix, act.Hob, act.Grill:
		if !unattended(d.Act) {
			return d.job.Low
		}
	}
	return 0
}

// clash is the minutes in which two rows both want the hands; 0: none.
func clash(a, b *row, work int) int {
	own := a.HasUntil || a.Minutes > 0
	switch {
	case a.begin == b.begin && !own:
		// two rows at one written time, of two dishes, each with work
		if a.has(act.Serve, act.Plate) || b.has(act.Serve, act.Plate) || a.Clock != written.Said || b.Clock != written.Said || a.samely(b) || len(a.Letters) == 0 || len(b.Letters) == 0 {
			return 0
		}
		if a.handsOnly() && b.handsOnly() && a.hands.Low >= work && b.hands.Low >= work {
			return min(a.hands.Low, b.hands.Low)
		}
		return 0
	case b.hands.Low < 1 || !b.handsOnly() || b.has(act.Serve) || a.has(act.Serve):
		return 0
	case !own:
		if n := a.begin + a.saidHands() - b.begin; n > work && a.saidHands() > 0 && !a.samely(b) && b.begin > a.begin {
			return n
		}
		return 0
	}
	overlap := min(a.end, b.begin+max(b.hands.Low, 1)) - b.begin
	if b.HasUntil || b.Minutes > 0 {
		overlap = min(a.end, b.end) - b.begin
	}
	free := 0
	if !a.handsOnly() {
		free = max(0, a.end-a.begin-a.hands.Low)
	}
	if n := overlap - free; n >= work {
		return n
	}
	return 0
}

// tooLittleTime follows the plan at the learner's pace and tells the row by
// which it is far behind.
func tooLittleTime(v *view, f *asker) {
	if !v.recipes || v.cooks() > 1 {
		return
	}
	late, most := 0, 0
	var worst *row
	blocks := v.blocks()
	for _, b := range blocks[:max(0, len(blocks)-1)] {
		if v.clocked && b.begin < v.start {
			continue
		}
		need := 0
		for _, r := range b.rows {
			if !r.backwards {
				need += v.paced(r)
			}
		}
		late = max(0, late+need-(b.end-b.begin))
		if late > most {
			most, worst = late, b.rows[0]
		}
	}
	if worst != nil && most >= f.limit("late") {
		f.tell(saw{rows: []*row{worst}, minutes: most})
	}
}

// paced is the minutes that a row takes at the practical's pace: by its steps,
// but no longer than its words could take.
func (v *view) paced(r *row) int {
	pick := func(e practical.Estimate) int {
		switch v.Practical.Rules.Pace {
		case practical.Quick:
			return e.Low
		case practical.Steady:
			return e.High
		}
		return e.Likely
	}
	if r.recipe.High == 0 {
		return r.hands.Low
	}
	return min(pick(r.recipe), max(r.hands.Likely, r.recipe.Low))
}
