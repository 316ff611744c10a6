package check

import (
	"slices"
	"strings"

	"plait.example/internal/act"
	"plait.example/internal/match"
	"plait.example/internal/practical"
)

// load is what goes into an oven together, from its put-in to its take-out.
type load struct {
	in      *deed
	out     *deed // nil: I could not find it
	ranged  bool  // the row's own range or length says when it is out
	celsius int   // of an oven without fan; 0: not said
	heats   []act.Heat
	borrow  bool // its heat stands in a row before it
	least   int  // minutes that are said; 0: none
	most    int
	step    *practical.Step // nil: none matched
	again   bool            // it goes back in
}

// from is when the load is surely in, in minutes after midnight.
func (l *load) from() int { return l.in.late }

// begun is when it likely goes in.
func (l *load) begun() int { return l.in.likely }

// until is when the load is surely still in until. False: not known.
func (l *load) until() (int, bool) {
	switch {
	case l.out != nil:
		return l.out.early, true
	case l.ranged:
		return l.in.row.end, true
	case l.least > 0:
		return l.in.likely + l.least, true
	}
	return 0, false
}

// shelves is how many the load takes.
func (l *load) shelves() int {
	if l.step != nil && l.step.Wait != nil {
		return max(1, l.step.Wait.Shelves)
	}
	return 1
}

// about is the words of the row that puts it in.
func (l *load) words() []string { return l.in.row.words }

// returning are words of a load that goes back into the oven.
var returning = lex("return*, put back, back in, back into, pop back, bake again, again, further, another, second batch, turn down, continue*, carry on, more, uncover*, turn the, turn around, without beans, baste*, beans out")

// readLoads pairs what goes into the oven with what comes out.
func (v *view) readLoads() {
	var open []*load
	for _, d := range v.deeds {
		switch {
		case d.Kind == act.TakeOut && (otherPlace.in(d.words) || putOut.in(d.words)) && !ovenSaid.in(d.words):
		case d.Kind == act.PutIn:
			l := v.loadOf(d)
			if k := sameRowOpen(open, d); k >= 0 { // "place in the oven and bake": one load
				joinLoads(open[k], l)
				continue
			}
			if k := sameBake(open, l); k >= 0 { // "fill the case and bake", then "put in the oven"
				joinLoads(l, open[k])
				*open[k] = *l
				continue
			}
			if l.again {
				open = endFormer(open, d)
			}
			v.loads = append(v.loads, l)
			open = append(open, l)
		case d.Kind == act.TakeOut, d.Kind == act.Cool && impliesOut(d), shortOut(d):
			closed := false
			open, closed = closeLoads(open, d)
			if !closed && d.Kind == act.TakeOut && !d.Implied && !coldThing.in(d.words) && !putOut.in(d.words) && !v.elsewhere(d) && !v.neverBaked(d.row) {
				v.strayOut = append(v.strayOut, d)
			}
		}
	}
	for _, l := range v.loads {
		v.rangedLoad(l)
	}
}

// endFormer ends the loads of a dish that goes back into the oven: it came out before.
func endFormer(open []*load, d *deed) (still []*load) {
	for _, l := range open {
		if l.in.row.samely(d.row) {
			l.out = d
		} else {
			still = append(still, l)
		}
	}
	return still
}

// coldThing are words of what is taken out of somewhere else.
var coldThing = lex("fridge, freezer, refrigerator, mould*, molds, packet*, cupboard, pan, water, marinade, pot, seeds, stones, bones, beans, skin, stalk*, core, excess, rind, bowl, mixer, grill, heat, hob, ring, steamer, fryer, oil, bag, ingredients, equipment, tin, paper, cling*, film, centre, rubbish, jewellery, jewelry, rings, scum, pips, fat, lid, tops, tail*, shell*, wrapping, wok, saucepan, frying")

// otherPlace are places other than the oven that food is taken out of or off.
var otherPlace = lex("fridge, freezer, hob, the heat, water, marinade, steamer, fryer, oil, grill, microwave, saucepan, the pan")

var putOut = lex("lay out, lay them out, take off, taken off, off to cool, put out, served out, set out, laid out, put them out")

// neverBaked says that no recipe of the row's dishes uses the oven: what comes
// out was in the cold or in a pan.
func (v *view) neverBaked(r *row) bool {
	if !v.recipes || len(r.Letters) == 0 || ovenSaid.in(r.words) {
		return false
	}
	baked := false
	v.eachStep(func(s *stepSeen) {
		w := s.step.Wait
		baked = baked || r.about(s.dish.Letter) && w != nil && w.Place == practical.AtOven
	})
	return !baked
}

// elsewhere says that what is taken out was on the hob, in water or in the cold.
func (v *view) elsewhere(d *deed) bool {
	if d.row.has(act.Hob) {
		return true
	}
	return slices.ContainsFunc(v.deeds[:d.place], func(o *deed) bool {
		switch o.Kind {
		case act.Hob, act.Soak, act.Chill, act.Freeze, act.Grill, act.Microwave:
			return o.row.samely(d.row) && slices.ContainsFunc(d.Objects, func(w string) bool { return slices.Contains(o.Objects, w) })
		}
		return false
	})
}

// shortOut says that a row takes something out of the oven though no act says
// so: "swiss roll out, cool", "take lasagne out to stand".
func shortOut(d *deed) bool {
	r := d.row
	i := slices.Index(r.words, "out")
	if r.deeds[0] != d || i <= 0 || r.has(act.TakeOut) {
		return false
	}
	if r.has(act.FromCold) || coldThing.in(r.words[i:min(len(r.words), i+4)]) {
		return false
	}
	return takes.in(r.words[:i]) && i < 7 && !coldThing.in(r.words) || i < 4 && !verbOut.in(r.words[:i]) && !r.has(act.PutIn)
}

var (
	takes   = lex("take, get, lift, pull, bring, taken, taking")
	verbOut = lex("rolling, turn, cut, weigh, get, set, lay, bring, stamp, take, tip, clear, put, spread, fish, measure, roll, serve, squeeze")
)

// impliesOut says that food which is cooled on a rack has left the oven.
func impliesOut(d *deed) bool { return rack.in(d.words) || rack.in(d.row.words) }

var rack = lex("rack, wire rack, cooling rack, cooling tray")

// sameRowOpen is the open load that the same row has just put in.
func sameRowOpen(open []*load, d *deed) int {
	for k, l := range open {
		if l.in.row == d.row {
			return k
		}
	}
	return -1
}

// soon is the minutes within which a put-in that says more is the same as one
// before it that says nothing.
const soon = 15

// sameBake is the open load of the dish that said neither minutes nor heat and
// that this one says again; -1: none.
func sameBake(open []*load, l *load) int {
	for k, o := range open {
		bare := o.least == 0 && (o.borrow || o.celsius == 0)
		if bare && !l.again && o.in.row.samely(l.in.row) && l.in.early-o.in.early <= soon {
			return k
		}
	}
	return -1
}

func joinLoads(l, o *load) {
	l.heats = append(l.heats, o.heats...)
	if l.celsius == 0 {
		l.celsius = o.celsius
	}
	if l.borrow && !o.borrow && o.celsius > 0 {
		l.celsius, l.borrow = o.celsius, false
	}
	if l.least == 0 {
		l.least, l.most = o.least, o.most
	}
	if l.step == nil {
		l.step = o.step
	}
}

// closeLoads takes out of the oven what a deed takes out: the loads of its
// dish; where a row does not say its dish, those whose food it names, else all.
func closeLoads(open []*load, d *deed) (still []*load, closed bool) {
	fits := func(l *load) bool {
		return len(d.row.Letters) > 0 && len(l.in.row.Letters) > 0 && d.row.samely(l.in.row)
	}
	if !slices.ContainsFunc(open, fits) {
		fits = func(l *load) bool { return names(l, d) && d.row.shares(l.in.row) }
	}
	if !slices.ContainsFunc(open, fits) {
		fits = func(l *load) bool { return d.row.shares(l.in.row) }
	}
	// of several loads of one dish, those that the row names
	if n := countLoads(open, fits); n > 1 && slices.ContainsFunc(open, func(l *load) bool { return fits(l) && names(l, d) }) {
		all := fits
		fits = func(l *load) bool { return all(l) && names(l, d) }
	}
	for _, l := range open {
		if fits(l) {
			l.out, closed = d, true
		} else {
			still = append(still, l)
		}
	}
	return still, closed
}

func countLoads(open []*load, fits func(*load) bool) (n int) {
	for _, l := range open {
		if fits(l) {
			n++
		}
	}
	return n
}

// names says that a deed, or its row, names a food of the load.
func names(l *load, d *deed) bool {
	return slices.ContainsFunc(d.Objects, func(o string) bool {
		return slices.Contains(l.in.Objects, o) || len(o) > 3 && slices.ContainsFunc(l.words(), func(w string) bool { return strings.HasPrefix(w, o) })
	}) || slices.ContainsFunc(l.in.Objects, func(o string) bool {
		return len(o) > 3 && !vessel.in([]string{o}) && slices.ContainsFunc(d.row.words, func(w string) bool { return strings.HasPrefix(w, o) })
	})
}

func (v *view) loadOf(d *deed) *load {
	l := &load{in: d, heats: d.Heats, least: d.Least, most: max(d.Least, d.Most), again: returning.in(d.words) || returning.in(d.row.words)}
	l.celsius = celsiusOf(d.Heats)
	if l.celsius == 0 {
		for _, a := range d.row.Notes {
			if c := celsiusOf(a.Heats); c > 0 && l.celsius == 0 {
				l.celsius, l.heats = c, a.Heats
			}
		}
	}
	if l.least == 0 && d.row.Minutes >= 8 && !d.row.HasUntil && d.row.hands.Low*2 <= d.row.Minutes {
		l.least, l.most = d.row.Minutes, d.row.Minutes
	}
	if l.celsius == 0 {
		l.celsius, l.borrow = v.setting(d), true
	}
	l.step = v.waitStep(d.row, practical.AtOven)
	return l
}

// celsiusOf is the first temperature that is a figure, of an oven without fan.
func celsiusOf(heats []act.Heat) int {
	for _, h := range heats {
		if h.Celsius > 0 {
			return h.Celsius
		}
	}
	return 0
}

// setting is what the oven was last set to by a row before the deed.
func (v *view) setting(d *deed) int {
	for i := len(v.deeds) - 1; i >= 0; i-- {
		o := v.deeds[i]
		if o.place >= len(v.deeds) || o == d {
			continue
		}
		if (o.Kind == act.HeatOven || o.Kind == act.TurnOven) && o.place < d.place {
			if c := celsiusOf(o.Heats); c > 0 {
				return c
			}
		}
	}
	return 0
}

// rangedLoad finds whether the row's own range or length is the time in the oven.
func (v *view) rangedLoad(l *load) {
	r := l.in.row
	if l.out != nil || !r.HasUntil && r.Minutes == 0 {
		return
	}
	length := r.end - r.begin
	if length >= 10 && r.hands.Low*2 <= length && len(r.deeds) <= 2 {
		l.ranged = true
		if l.least == 0 {
			l.least, l.most = length, length
		}
	}
}

// waitStep is the step of a row that has its wait in the place.
func (v *view) waitStep(r *row, place practical.Place) *practical.Step {
	for _, s := range r.Steps {
		if s.Sure < sureEnough || s.Part == match.TakeOut {
			continue
		}
		if seen := v.steps[s.ID]; seen != nil && seen.step.Wait != nil && seen.step.Wait.Place == place {
			return seen.step
		}
	}
	return nil
}
