package check

import (
	"fmt"
	"slices"

	"plait.example/internal/act"
	"plait.example/internal/practical"
)

// Pairs: what goes in comes out, after the time that the method asks for.
var pairTests = map[string]test{
	"in-never-out":          inNeverOut,
	"out-never-in":          outNeverIn,
	"cook-time-missing":     cookTimeMissing,
	"cook-time-implausible": cookTimeImplausible,
	"oven-time-differs":     ovenTimeDiffers,
	"timer-not-set":         timerNotSet,
}

// inNeverOut tells loads for which no row takes them out.
func inNeverOut(v *view, f *asker) {
	for i, l := range v.loads {
		if l.out != nil || l.ranged || v.continued(i) || l.stepOut(v) {
			continue
		}
		f.at(l.in.row)
	}
}

// continued says that the same dish goes back into the oven later: a part of
// one bake, as when the beans come out of a case.
func (v *view) continued(i int) bool {
	for _, l := range v.loads[i+1:] {
		if l.again && l.in.row.samely(v.loads[i].in.row) {
			return true
		}
	}
	return false
}

// stepOut says that a row stands for the take-out of the load's step.
func (l *load) stepOut(v *view) bool {
	return l.step != nil && len(v.steps[l.step.ID].outs) > 0
}

func outNeverIn(v *view, f *asker) {
	for _, d := range v.strayOut {
		if d.row.backwards || !ovenSaid.in(d.row.words) && len(v.loads) == 0 {
			continue
		}
		f.at(d.row)
	}
}

var ovenSaid = lex("oven, bake*, roast*")

// cookTimeMissing tells loads for which nothing says how long they are in.
func cookTimeMissing(v *view, f *asker) {
	for i, l := range v.loads {
		_, known := l.until()
		if known || v.continued(i) || l.stepOut(v) || doneness.in(l.in.row.all()) {
			continue
		}
		f.at(l.in.row)
	}
}

// bakeTimes are the minutes in an oven between which each kind of food is done.
// Common practice, no source; widely drawn.
var bakeTimes = []struct {
	food        *lexicon
	least, most int
}{
	{lex("blind, case, pastry case, flan case"), 8, 35},
	{lex("tuile*, brandy snap*"), 4, 15},
	{lex("biscuit*, cookie*, shortbread"), 7, 40},
	{lex("scone*, flatbread*, naan*"), 7, 25},
	{lex("roulade, swiss roll"), 6, 25},
	{lex("choux, eclair*, profiterole*"), 15, 50},
	{lex("cupcake*, muffin*, fairy cake*, bun, buns"), 10, 40},
	{lex("pizza*, calzone"), 6, 30},
	{lex("sponge*, brownie*, traybake*"), 12, 60},
	{lex("souffle*, yorkshire*"), 8, 40},
	{lex("bread, loaf, rolls, dough, focaccia"), 8, 60},
	{lex("quiche*, flan*, tart*"), 15, 75},
	{lex("lasagne, moussaka, pie, pies, crumble*, cottage pie"), 15, 90},
	{lex("fish, salmon, cod, haddock"), 8, 45},
	{lex("meringue*, pavlova"), 30, 180},
	{lex("chicken, thigh*, drumstick*"), 12, 120},
}

// cookTimeImplausible tells times in the oven that no food of the kind takes.
func cookTimeImplausible(v *view, f *asker) {
	for _, l := range v.loads {
		if l.step != nil {
			continue // oven-time-differs knows better
		}
		least, most := f.limit("least"), f.limit("most")
		for _, b := range bakeTimes {
			if b.food.in(l.words()) {
				least, most = b.least, b.most
				break
			}
		}
		shortest, longest, known := l.minutes()
		if l.again {
			least = 0
		}
		if known && (longest < least || shortest > most) {
			f.tell(saw{rows: l.pair(), minutes: max(least-longest, shortest-most), say: map[string]string{"least": fmt.Sprint(least), "most": fmt.Sprint(most), "found": between(shortest, longest)}})
		}
	}
}

// minutes is how long the load can be in at the least and at the most.
func (l *load) minutes() (shortest, longest int, known bool) {
	switch {
	case l.least > 0 && l.out != nil && l.out.row != l.in.row:
		// both are written: the clock decides, the figure where they nearly agree
		shortest, longest = max(0, l.out.early-l.in.late), max(0, l.out.late-l.in.early)
		if l.least >= shortest-2 && l.least <= longest+2 {
			return l.least, l.most, true
		}
		return shortest, longest, true
	case l.least > 0:
		return l.least, max(l.least, l.most), true
	case l.out != nil && l.out.row != l.in.row:
		return max(0, l.out.early-l.in.late), max(0, l.out.late-l.in.early), true
	}
	return 0, 0, false
}

// pair is the rows that put a load in and take it out.
func (l *load) pair() []*row {
	if l.out == nil || l.out.row == l.in.row {
		return []*row{l.in.row}
	}
	return []*row{l.in.row, l.out.row}
}

func between(a, b int) string {
	if a >= b {
		return fmt.Sprint(a)
	}
	return fmt.Sprintf("%d to %d", a, b)
}

// ovenTimeDiffers tells loads that are in for longer or shorter than the recipe says.
func ovenTimeDiffers(v *view, f *asker) {
	for _, l := range v.loads {
		if l.step == nil || l.step.Wait == nil || v.sharedStep(l) {
			continue
		}
		w := l.step.Wait
		shortest, longest, known := l.minutes()
		slack := max(f.limit("slack"), w.Least*f.limit("share")/100)
		most := max(w.Most, w.Least)
		if known && l.least > most+max(10, most/2) && w.Least > 0 { // the words say another time than the clock
			shortest, longest = l.least, l.most
		}
		if !known || longest >= w.Least-slack && shortest <= most+slack || w.Least == 0 {
			continue
		}
		f.tell(saw{
			rows: l.pair(), step: l.step.ID, minutes: max(w.Least-longest, shortest-most),
			say: map[string]string{"least": fmt.Sprint(w.Least), "most": fmt.Sprint(most), "found": between(shortest, longest), "method": between(w.Least, most)},
		})
	}
}

// sharedStep says that several loads stand for the load's step, or several
// steps of the oven for its row: the minutes cannot be told apart.
func (v *view) sharedStep(l *load) bool {
	for _, o := range v.loads {
		if o != l && o.step == l.step {
			return true
		}
	}
	n := 0
	for _, s := range l.in.row.Steps {
		if seen := v.steps[s.ID]; seen != nil && s.Sure >= sureEnough && seen.step.Wait != nil && seen.step.Wait.Place == practical.AtOven {
			n++
		}
	}
	return n > 1
}

// timerNotSet tells a plan in which things bake and no timer is ever mentioned.
func timerNotSet(v *view, f *asker) {
	if len(v.loads) < f.limit("loads") {
		return
	}
	for _, r := range v.rows {
		if r.noted(act.Timer) || timerSaid.in(r.all()) {
			return
		}
	}
	for _, other := range v.Plan.Other {
		if timerSaid.in(wordsOf(other)) {
			return
		}
	}
	var rows []*row
	for _, l := range v.loads {
		if !slices.Contains(rows, l.in.row) {
			rows = append(rows, l.in.row)
		}
	}
	f.at(rows...)
}

var timerSaid = lex("timer*, alarm, stopwatch, timing")
