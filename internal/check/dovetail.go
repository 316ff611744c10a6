package check

import (
	"fmt"
	"slices"

	"plait.example/internal/act"
)

// Dovetailing: are the dishes woven together?
var dovetailTests = map[string]test{
	"not-dovetailed":    notDovetailed,
	"hands-idle":        handsIdle,
	"cheap-reordering":  cheapReordering,
	"washing-up-at-end": washingUpAtEnd,
	"no-contingency":    noContingency,
}

// notDovetailed tells a plan that does one dish after the other.
func notDovetailed(v *view, f *asker) {
	var seen []string
	switches, rows := 0, 0
	before := ""
	for _, r := range v.inTime {
		letter := r.only()
		if letter == "" || r.backwards || r.has(act.Serve, act.Plate, act.SetUp) || v.clocked && r.begin < v.start || !r.handles() {
			continue
		}
		rows++
		if before != "" && letter != before {
			switches++
		}
		if !slices.Contains(seen, letter) {
			seen = append(seen, letter)
		}
		before = letter
	}
	if len(seen) < 2 || rows < f.limit("rows") {
		return
	}
	if switches <= len(seen)-1+f.limit("more") && !v.setsMeanwhile(seen) {
		f.tell(saw{say: map[string]string{"switches": fmt.Sprint(switches), "dishes": fmt.Sprint(len(seen))}})
	}
}

// setsMeanwhile says that every dish but the last is left in the cold or to
// prove while the next is made: one after the other, and woven all the same.
func (v *view) setsMeanwhile(dishes []string) bool {
	for _, letter := range dishes[:len(dishes)-1] {
		var last *row
		for _, r := range v.rowsOfDish(letter) {
			if r.has(act.PutIn) {
				return false // while it bakes something else could be done
			}
			if r.handles() && !r.has(act.Serve, act.Plate, act.Decorate) {
				last = r
			}
		}
		if last == nil || !last.has(act.Chill, act.Freeze, act.Prove) {
			return false
		}
	}
	spells, _ := v.idleSpells(15)
	return !slices.ContainsFunc(spells, func(b block) bool {
		return slices.ContainsFunc(b.rows, func(r *row) bool { return slices.Contains(dishes[:len(dishes)-1], r.only()) })
	})
}

// handles says that a row is work on food.
func (r *row) handles() bool {
	return slices.ContainsFunc(r.deeds, func(d *deed) bool {
		switch d.Kind {
		case act.Other, act.SetUp, act.HeatOven, act.TurnOven, act.Ready, act.WashUp, act.WashHands, act.CleanDown, act.FinalClean, act.Timer:
			return false
		}
		return true
	})
}

// idleSpells are blocks whose hands are free for a good while, gaps that are told apart.
func (v *view) idleSpells(least int) (list []block, total int) {
	blocks := v.blocks()
	for _, b := range blocks[:max(0, len(blocks)-1)] {
		if v.clocked && b.begin < v.start {
			continue
		}
		if idle, known := v.idle(b); known && idle >= least {
			list = append(list, b)
			total += idle
		}
	}
	return list, total
}

// handsIdle tells a plan in which the hands are free for a large part of the
// session while things bake and chill.
func handsIdle(v *view, f *asker) {
	spells, total := v.idleSpells(f.limit("spell"))
	begin, end := v.span()
	if v.clocked {
		begin, end = v.start, v.finish
	}
	if end <= begin || total < f.limit("least") || total*100 < (end-begin)*f.limit("share") {
		return
	}
	var rows []*row
	for _, b := range spells {
		rows = append(rows, b.rows[len(b.rows)-1])
	}
	f.tell(saw{rows: rows, minutes: total})
}

// cheapReordering tells the teacher a row that would fit into an idle spell before it.
func cheapReordering(v *view, f *asker) {
	if v.saving != nil {
		if s, known := v.saving(v.Matched); known && s.Minutes >= f.limit("least") && s.Row > 0 && s.Row <= len(v.rows) {
			f.tell(saw{rows: []*row{v.rows[s.Row-1]}, minutes: s.Minutes, say: map[string]string{"what": s.What}})
		}
		return
	}
	if move, into, n := v.movable(f.limit("spell")); n >= f.limit("least") {
		f.tell(saw{rows: []*row{move, into}, minutes: n, say: map[string]string{"what": fmt.Sprintf("do %s after %s, while the hands are free", v.quote(move), v.quote(into))}})
	}
}

// movable is the first row of another dish that needs nothing of what stands
// between, with the row of the idle spell that it would fill and the minutes it saves.
func (v *view) movable(least int) (move, into *row, minutes int) {
	spells, _ := v.idleSpells(least)
	for _, b := range spells {
		idle, _ := v.idle(b)
		at := b.rows[len(b.rows)-1]
		for _, r := range v.inTime[at.place+1:] {
			if r.begin < b.end || !v.startsDish(r, at) || r.hands.Likely > idle || !r.handsOnly() || slices.ContainsFunc(r.deeds, v.rawWork) {
				continue
			}
			if r.hands.Likely > minutes {
				move, into, minutes = r, at, r.hands.Likely
			}
		}
		if move != nil {
			return move, into, minutes
		}
	}
	return nil, nil, 0
}

// startsDish says that a row begins a part of its dish: cutting, or the first
// row of the dish after the spell, so that nothing it needs stands between.
func (v *view) startsDish(r, at *row) bool {
	if r.only() == "" || r.samely(at) || r.backwards || r.has(act.Serve, act.Plate, act.WashUp, act.FinalClean, act.Decorate, act.FromCold) {
		return false
	}
	for _, o := range v.inTime[:r.place] {
		if o.samely(r) && o.begin >= at.begin {
			return false
		}
	}
	return r.has(act.Cut, act.Mix) && !r.has(act.TakeOut)
}

// washingUpAtEnd tells a plan that washes up only at its end.
func washingUpAtEnd(v *view, f *asker) {
	begin, end := v.span()
	if v.clocked {
		begin = max(begin, v.start)
		end = min(end, v.finish)
	}
	if end-begin < f.limit("session") {
		return
	}
	var washing []*row
	for _, r := range v.inTime {
		if r.washesUp() && r.begin >= begin {
			washing = append(washing, r)
		}
	}
	if len(washing) == 0 || washing[0].begin < end-f.limit("last") {
		return
	}
	f.at(washing[0])
}

// noContingency tells a plan with hardly any time in hand and no word of what gives.
func noContingency(v *view, f *asker) {
	if !v.clocked {
		return
	}
	for _, r := range v.rows {
		if sparesTime(r.all()) {
			return
		}
	}
	for _, other := range v.Plan.Other {
		if sparesTime(wordsOf(other)) {
			return
		}
	}
	last := (*row)(nil)
	for _, r := range v.inTime {
		if r.timed && !r.backwards && !r.endsOnly() {
			last = r
		}
	}
	if last == nil {
		return
	}
	slack := v.finish - (last.begin + min(last.hands.Likely, 8))
	if slack < f.limit("slack") {
		f.tell(saw{rows: []*row{last}, minutes: max(0, slack), say: map[string]string{"finish": v.clock(v.finish)}})
	}
}

// sparesTime says that words tell what gives when time is short, or keep some back.
func sparesTime(words []string) bool {
	return spare.in(words) || slices.Contains(words, "if") && pressed.in(words)
}

var (
	spare   = lex("contingenc*, spare, extra time, catch up, buffer, in hand, late, behind, running, no time, not enough time, not got time, backup, back up plan, rushed, time left, should time, fall behind, behind time, run out of time, out of time, plan b, in case, if needed, if necessary, slip*")
	pressed = lex("behind, late, slow, short, delay*, over, overrun*, time, slip*, wrong, held, needed")
)

// endsOnly says that a row is no work: finish, wait, hand in.
func (r *row) endsOnly() bool {
	return r.hands.Low == 0 && (len(r.deeds) == 0 || finished.in(r.words) || r.has(act.Idle))
}

var finished = lex("finish*, end, stop, leave, hand, evaluat*, photo*, taste, tasting, sheet, done, pack*")
