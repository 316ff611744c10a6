package check

import (
	"fmt"
	"slices"

	"plait.example/internal/act"
	"plait.example/internal/practical"
)

// The oven: hot in time, at the right figure, for what is in it.
var ovenTests = map[string]test{
	"not-pre-heated":       notPreheated,
	"heated-too-early":     heatedTooEarly,
	"no-temperature":       noTemperature,
	"wrong-scale":          wrongScale,
	"pair-disagrees":       pairDisagrees,
	"temperature-differs":  temperatureDiffers,
	"two-heats":            twoHeats,
	"no-time-to-change":    noTimeToChange,
	"not-turned":           notTurned,
	"shelves-over-full":    shelvesOverFull,
	"too-many-rings":       tooManyRings,
	"grill-with-oven":      grillWithOven,
	"shared-kit":           sharedKit,
	"cake-door-opened":     cakeDoorOpened,
	"kit-taken-by-another": kitTaken,
}

// oven is the first oven of the kitchen; the usual one where none is known.
func (v *view) oven() practical.Oven {
	if v.kitchen != nil {
		return v.kitchen.Ovens[0].Usual()
	}
	return practical.Oven{Fuel: practical.Electric}.Usual()
}

func (v *view) ovens() int {
	if v.kitchen != nil {
		return len(v.kitchen.Ovens)
	}
	return 1
}

// heating are words of an oven that is turned on, where no act says it.
var heating = lex("oven on, preheat*, pre heat*, heat oven, heat the oven, light the oven, light oven, oven to heat, turn oven, turn on oven, oven is on")

var lit = lex("open, light, lit, gas, on, number, hot")

// heated is when the oven is first turned on. False: I could not find it.
func (v *view) heated() (*row, bool) {
	for _, r := range v.inTime {
		if r.has(act.HeatOven) || heating.in(r.words) || lit.in(r.words) && slices.Contains(r.words, "oven") && !r.has(act.PutIn, act.TakeOut) {
			return r, true
		}
	}
	for _, r := range v.inTime {
		if r.has(act.TurnOven) {
			return r, true
		}
	}
	return nil, false
}

// firstIn is the first load.
func (v *view) firstIn() *load {
	var first *load
	for _, l := range v.loads {
		if !l.in.row.backwards && (first == nil || l.begun() < first.begun()) {
			first = l
		}
	}
	return first
}

// notPreheated tells that the oven is not hot when the first load goes in.
func notPreheated(v *view, f *asker) {
	l := v.firstIn()
	if l == nil {
		return
	}
	on, found := v.heated()
	if found && on.backwards {
		return
	}
	need := f.limit("least")
	if v.kitchen != nil && l.celsius > 0 {
		need = max(need, v.oven().HeatMinutes(practical.ColdOven, l.celsius)-f.limit("slack"))
	}
	if !found || on.begin > l.in.row.begin {
		f.tell(saw{rows: []*row{l.in.row}, minutes: need, say: map[string]string{"found": "I could not find a row before it that turns the oven on"}})
		return
	}
	if there := l.in.late - on.begin; there < need && v.hasTimes {
		f.tell(saw{rows: []*row{l.in.row, on}, minutes: need - there, say: map[string]string{"found": fmt.Sprintf("the oven is turned on in %s, %d minutes before", v.quote(on), max(0, there))}})
	}
}

func heatedTooEarly(v *view, f *asker) {
	l := v.firstIn()
	on, found := v.heated()
	if l == nil || !found || on.backwards || !on.timed {
		return
	}
	if there := l.in.early - on.begin; there > f.limit("most") {
		f.tell(saw{rows: []*row{on, l.in.row}, minutes: there})
	}
}

// noTemperature tells loads for which no row says how hot.
func noTemperature(v *view, f *asker) {
	var rows []*row
	for _, l := range v.loads {
		said := !l.borrow && l.celsius > 0 || ovenWords(l.heats) || slices.ContainsFunc(l.heats, func(h act.Heat) bool { return h.Gas > 0 })
		if !said && !l.again && !l.in.row.has(act.HeatOven, act.TurnOven) && !slices.Contains(rows, l.in.row) {
			rows = append(rows, l.in.row)
		}
	}
	if len(rows) > 0 {
		f.at(rows...)
	}
}

// ovenWords says that a heat is given in words with a figure behind them, such as "moderate oven".
func ovenWords(heats []act.Heat) bool {
	return slices.ContainsFunc(heats, func(h act.Heat) bool { return h.Scale == act.Words && h.Celsius > 0 })
}

// ofOven says that a heat that is said with such an act is the oven's.
func ofOven(k act.Kind) bool {
	return k == act.PutIn || k == act.HeatOven || k == act.TurnOven || k == act.TakeOut
}

// saidHeats are the heats of the plan with their rows.
func (v *view) saidHeats(visit func(r *row, heats []act.Heat)) {
	for _, r := range v.inTime {
		var heats []act.Heat
		for _, d := range r.deeds {
			if ofOven(d.Kind) {
				heats = append(heats, d.Heats...)
			}
		}
		for _, a := range r.Notes {
			if ofOven(a.Kind) {
				heats = append(heats, a.Heats...)
			}
		}
		if len(heats) > 0 {
			visit(r, heats)
		}
	}
}

// temperatureDiffers tells loads at another heat than the recipe's.
func temperatureDiffers(v *view, f *asker) {
	for _, l := range v.loads {
		if l.step == nil || l.step.Wait.Celsius == 0 || l.celsius == 0 || v.sharedStep(l) {
			continue
		}
		w := l.step.Wait
		near := func(h act.Heat) bool {
			band := max(w.Band, f.limit("band"))
			return h.Celsius > 0 && (abs(h.Celsius-w.Celsius) <= band || !h.Fan && v.oven().Fuel == practical.Fan && abs(practical.CelsiusOfFan(h.Celsius)-w.Celsius) <= band)
		}
		heats := l.heats
		if len(heats) == 0 || l.borrow {
			heats = append(slices.Clone(heats), act.Heat{Celsius: l.celsius})
		}
		if !slices.ContainsFunc(heats, near) {
			f.tell(saw{rows: []*row{l.in.row}, step: l.step.ID, say: map[string]string{"recipe": v.practicalSetting(w.Celsius), "found": fmt.Sprint(l.celsius)}})
		}
	}
}

func (v *view) practicalSetting(celsius int) string {
	if v.kitchen != nil {
		return v.kitchen.Setting(celsius)
	}
	return practical.Kitchen{}.Setting(celsius)
}

// twoHeats tells loads that are in together and want different heats.
func twoHeats(v *view, f *asker) {
	if v.ovens() > 1 {
		return
	}
	for i, a := range v.loads {
		for _, b := range v.loads[i+1:] {
			n := overlap(a, b)
			if n < f.limit("together") || a.celsius == 0 || b.celsius == 0 || abs(a.celsius-b.celsius) <= f.limit("apart") || a.again && a.in.row.samely(b.in.row) {
				continue
			}
			if b.borrow || a.borrow && b.in.row.begin < a.in.row.begin {
				continue
			}
			f.tell(saw{rows: []*row{b.in.row, a.in.row}, minutes: n, say: map[string]string{"one": fmt.Sprint(a.celsius), "two": fmt.Sprint(b.celsius)}})
		}
	}
}

// overlap is the minutes in which two loads are surely in together.
func overlap(a, b *load) int {
	ua, oka := a.until()
	ub, okb := b.until()
	if !oka || !okb || a.in.row.backwards || b.in.row.backwards {
		return 0
	}
	return min(ua, ub) - max(a.from(), b.from())
}

// noTimeToChange tells a load that goes in before the oven can have reached its heat.
func noTimeToChange(v *view, f *asker) {
	if v.ovens() > 1 {
		return
	}
	for i, b := range v.loads {
		a := v.before(i)
		if a == nil || a.celsius == 0 || b.celsius == 0 || b.borrow || a.in.row == b.in.row {
			continue
		}
		need := f.limit("up")
		if b.celsius < a.celsius {
			need = f.limit("down")
			if a.celsius-b.celsius < 2*f.limit("apart") {
				need = f.limit("down-a-little")
			}
		}
		if abs(b.celsius-a.celsius) < f.limit("apart") || overlap(a, b) > 0 {
			continue
		}
		from := v.turned(a, b)
		if there := b.in.late - from; from > 0 && there < need {
			f.tell(saw{rows: []*row{b.in.row, a.pair()[len(a.pair())-1]}, minutes: need - max(0, there), say: map[string]string{"one": fmt.Sprint(a.celsius), "two": fmt.Sprint(b.celsius), "there": fmt.Sprint(max(0, there)), "need": fmt.Sprint(need)}})
		}
	}
}

// before is the last load that went in before load i.
func (v *view) before(i int) *load {
	if i == 0 || v.loads[i].in.row.backwards {
		return nil
	}
	return v.loads[i-1]
}

// turned is when the oven is turned from a's heat to b's: a row that says so,
// else when a is out. 0: not known.
func (v *view) turned(a, b *load) int {
	for _, d := range v.of(act.TurnOven, act.HeatOven) {
		if d.place > a.in.place && d.place < b.in.place && (celsiusOf(d.Heats) == b.celsius || len(d.Heats) == 0) {
			return d.row.begin // it may be the first thing that the row does
		}
	}
	if until, known := a.until(); known {
		return until
	}
	return 0
}

// notTurned tells a hot oven that nothing turns down for a much cooler load.
func notTurned(v *view, f *asker) {
	if v.ovens() > 1 {
		return
	}
	for i, b := range v.loads {
		a := v.before(i)
		if a == nil || a.celsius == 0 || b.celsius == 0 || b.borrow || a.celsius-b.celsius < f.limit("apart") || overlap(a, b) > 0 {
			continue
		}
		turned := slices.ContainsFunc(v.of(act.TurnOven, act.HeatOven, act.OvenOff), func(d *deed) bool {
			return d.place > a.in.place && d.place <= b.in.place
		}) || slices.ContainsFunc(v.inTime[a.in.row.place:b.in.row.place+1], func(r *row) bool {
			return turnedSaid.in(r.words) && dialSaid.in(r.words)
		})
		if !turned && !turnedSaid.in(b.in.row.words) {
			f.tell(saw{rows: []*row{b.in.row, a.in.row}, say: map[string]string{"one": fmt.Sprint(a.celsius), "two": fmt.Sprint(b.celsius)}})
		}
	}
}

var dialSaid = lex("oven, gas, mark, fan, temperature")

var turnedSaid = lex("turn*, lower*, reduc*, adjust*, turned")
