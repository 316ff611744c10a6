package check

import (
	"slices"
	"strings"

	"plait.example/internal/act"
	"plait.example/internal/match"
	"plait.example/internal/practical"
)

// Hygiene and safety. The figures are the UK Food Standards Agency's guidance as
// it is republished; each stands in the rules' file with its source. Local codes,
// the school's risk assessment and the responsible adult decide.
var hygieneTests = map[string]test{
	"no-hand-wash-at-start":  noHandWashAtStart,
	"no-hand-wash-after-raw": noHandWashAfterRaw,
	"raw-then-ready":         rawThenReady,
	"raw-first-by-choice":    rawFirst,
	"no-core-check":          noCoreCheck,
	"raw-left-out":           rawLeftOut,
	"cold-dish-out":          coldDishOut,
	"hot-into-fridge":        hotIntoFridge,
	"left-warm":              leftWarmTooLong,
	"reheated-twice":         reheatedTwice,
	"marinade-reused":        marinadeReused,
	"allergens-unmarked":     allergensUnmarked,
	"hot-fat-no-note":        hotFatNoNote,
	"walks-away":             walksAway,
	"no-washing-up":          noWashingUp,
	"no-final-clean":         noFinalClean,
}

// rawWork says that a deed handles raw meat or fish.
func (v *view) rawWork(d *deed) bool {
	if d.row.backwards {
		return false
	}
	switch d.Kind {
	case act.Cut, act.Mix, act.Shape, act.Fill, act.Marinate:
	default:
		return false
	}
	if (d.row.has(act.Hob) || fries.in(d.words)) && (d.Kind == act.Mix || d.Kind == act.Fill) && tipped.in(d.words) {
		return false // into the pan, not on the board
	}
	if d.Kind == act.Cut && d.Verb == "minc" && d.row.has(act.Hob) {
		return false // mince, the meat
	}
	fetched := d.row.has(act.FromCold) && rawMeat.in(d.row.words) && !readyToEat.in(d.words)
	named := rawMeat.in(d.words) || fetched || d.Kind == act.Cut && (itself.in(d.words) || len(d.words) == 0) && rawMeat.in(d.row.words)
	return named && !cookedAlready.in(d.row.words) && !v.cookedBefore(d)
}

var itself = lex("it, them")

var tipped = lex("add*, stir*, pour*, put, tip*, return*")

var cookedAlready = lex("cooked, cooled, baked, roasted, carve*, smoked salmon, tinned, canned, tuna")

// cookedBefore says that the meat of the dish has been cooked: what is cut now is not raw.
func (v *view) cookedBefore(d *deed) bool {
	for _, o := range v.deeds[:d.place] {
		if !o.row.samely(d.row) || o.row.backwards || !rawMeat.in(o.words) && !rawMeat.in(o.row.words) {
			continue
		}
		switch o.Kind {
		case act.PutIn, act.Grill:
			return true
		case act.Hob:
			if rawMeat.in(o.words) {
				return true
			}
		}
	}
	return false
}

// washesHands says that a row has hands washed, in its words or its points.
func (r *row) washesHands() bool {
	return r.noted(act.WashHands) || handsWashed.in(r.all())
}

var handsWashed = lex("wash hands, hands washed, wash my hands, wash your hands, washed hands, clean hands, hands clean, handwash, hand wash, hygien*, washed my hands, board and hands, hands and board, hands board, and hands, hands and")

func noHandWashAtStart(v *view, f *asker) {
	for i, r := range v.inTime {
		if r.washesHands() || getReady.in(r.all()) && handsSaid.in(r.all()) {
			return
		}
		late := r.begin > v.inTime[0].begin+f.limit("within")
		if v.clocked {
			late = r.begin > max(v.start, v.inTime[0].begin)+f.limit("within")
		}
		if late && i >= f.limit("rows") {
			break
		}
	}
	for _, other := range v.Plan.Other {
		if handsWashed.in(wordsOf(other)) {
			return
		}
	}
	f.at(v.inTime[0])
}

var (
	getReady  = lex("apron*, hair")
	handsSaid = lex("hand*, wash")
)

// noHandWashAfterRaw tells raw meat or fish that is handled and followed by other work
// with no row that has hands washed.
func noHandWashAfterRaw(v *view, f *asker) {
	for _, d := range v.deeds {
		if !v.rawWork(d) && !v.rawByStep(d) && !v.rawToPan(d) || d.row.washesHands() {
			continue
		}
		next := v.nextHands(d)
		if next == nil {
			continue
		}
		f.tell(saw{rows: []*row{d.row, next}})
		return
	}
}

// rawByStep says that a row stands for a step that works on raw meat or fish,
// though its own words do not say the work: "pork thin, soy + honey, fridge".
func (v *view) rawByStep(d *deed) bool {
	if d.row.backwards || d != d.row.deeds[0] || !rawMeat.in(d.row.words) || cookedAlready.in(d.row.words) {
		return false
	}
	return slices.ContainsFunc(d.row.Steps, func(s match.Step) bool {
		seen := v.steps[s.ID]
		return seen != nil && s.Sure >= sureEnough && s.Part != match.TakeOut && (seen.step.Food == practical.Raw || rawMeat.in(wordsOf(seen.step.Text))) && !seen.heats() && !v.cookedBefore(d)
	})
}

// heats says that a step cooks.
func (s *stepSeen) heats() bool {
	return slices.ContainsFunc(s.kinds, func(k act.Kind) bool { return k == act.Hob || k == act.PutIn || k == act.Grill || k == act.Probe })
}

// rawToPan says that meat which no row before works on goes straight into the pan.
func (v *view) rawToPan(d *deed) bool {
	if d.Kind != act.Hob || d.row.backwards || !rawMeat.in(d.words) || cookedAlready.in(d.row.words) || v.cookedBefore(d) || !panned.in(d.words) {
		return false
	}
	return !slices.ContainsFunc(v.deeds[:d.place], func(o *deed) bool {
		return o.row != d.row && o.row.samely(d.row) && (v.rawWork(o) || rawMeat.in(o.row.words))
	})
}

var panned = lex("brown*, sear*, fry, cook*")

// nextHands is the next row with work of the hands on other food after a deed
// with raw meat; nil if hands are washed before it.
func (v *view) nextHands(d *deed) *row {
	for _, r := range v.inTime[d.row.place+1:] {
		if r.backwards {
			continue
		}
		if r.washesHands() {
			return nil
		}
		other := r.has(act.Cut) && !rawMeat.in(r.words) && !r.has(act.Hob, act.Marinate)
		sameMeat := r.samely(d.row) && !v.readyWork(r) && !v.readyMixed(r) && !other
		if r.has(act.Cut, act.Mix, act.Shape, act.Fill, act.Decorate, act.Plate, act.Hob) && !sameMeat && !r.has(act.CleanDown) {
			return r
		}
	}
	return nil
}

// readyWork says that a row works on food that is eaten as it is, on a board or a plate.
func (v *view) readyWork(r *row) bool {
	if r.backwards {
		return false
	}
	for _, d := range r.deeds {
		switch d.Kind {
		case act.Cut, act.Plate, act.Decorate, act.Fill, act.Mix:
			if d.Kind == act.Mix && !dresses.in(d.words) && !leavesFood.in(d.words) {
				continue
			}
			if boardReady.in(d.words) && !v.cookedLater(d) && !rawMeat.in(d.words) {
				return true
			}
		}
	}
	return v.stepReady(r)
}

// stepReady says that the steps of a row touch food that is eaten as it is.
func (v *view) stepReady(r *row) bool {
	return slices.ContainsFunc(r.Steps, func(s match.Step) bool {
		seen := v.steps[s.ID]
		return seen != nil && s.Sure >= 0.7 && s.Part != match.TakeOut && seen.step.Food == practical.ReadyToEat && r.has(act.Cut, act.Plate)
	})
}

// cookedLater says that what is cut is cooked afterwards: the tomato of a sauce.
func (v *view) cookedLater(d *deed) bool {
	for _, o := range v.deeds[d.place+1:] {
		if !o.row.samely(d.row) && len(d.row.Letters) > 0 {
			continue
		}
		switch o.Kind {
		case act.Hob, act.PutIn, act.Grill:
			if o.row == d.row && len(o.Objects) == 0 || slices.ContainsFunc(d.Objects, func(w string) bool {
				return slices.Contains(o.Objects, w) || len(w) > 3 && slices.ContainsFunc(o.row.words, func(x string) bool { return strings.HasPrefix(x, w) })
			}) {
				return true
			}
		case act.Mix, act.Fill:
			if o.row != d.row && slices.ContainsFunc(d.Objects, func(w string) bool { return slices.Contains(o.Objects, w) }) && v.bakedLater(o) {
				return true
			}
		}
	}
	return false
}

// bakedLater says that what a deed makes goes into the oven or on the hob.
func (v *view) bakedLater(d *deed) bool {
	for _, o := range v.deeds[d.place+1:] {
		if o.row.samely(d.row) && (o.Kind == act.PutIn || o.Kind == act.Hob || o.Kind == act.Grill) {
			return true
		}
		if o.row.samely(d.row) && (o.Kind == act.Plate || o.Kind == act.Serve || o.Kind == act.Chill) {
			return false
		}
	}
	return false
}

// cleans says that a row cleans boards and knives, or uses others.
func (r *row) cleans() bool {
	return r.noted(act.CleanDown, act.WashUp) || cleanWords.in(r.all())
}

var cleanWords = lex("hands and board*, hands + board*, board with, and board*, hands board, board knife, clean board*, wash board*, clean the board*, wash the board*, separate board*, different board*, new board*, fresh board*, sanitis*, sanitiz*, disinfect*, spray*, clean down, antibacterial, wipe down, clean knife, clean area, boards washed, board washed, wash equipment, clean equipment, wash knife, wash chopping, wash the chopping, clean chopping, clean the chopping, change board*, change the board*")

// rawThenReady tells food that is eaten as it is, made after raw meat with no
// cleaning between: one finding for each time that raw meat is out, with what
// shares its board first.
func rawThenReady(v *view, f *asker) {
	var raw *row
	var board, other []*row
	tell := func() {
		if rows := append(board, other...); raw != nil && len(rows) > 0 {
			f.tell(saw{rows: slices.Concat(rows[:1], []*row{raw}, rows[1:]), minutes: v.cleanMinutes()})
		}
		raw, board, other = nil, nil, nil
	}
	for _, r := range v.inTime {
		if r.backwards {
			continue
		}
		handles := slices.ContainsFunc(r.deeds, func(d *deed) bool { return v.rawWork(d) || v.rawByStep(d) })
		switch {
		case raw == nil || raw == r || handles || cleanWords.in(r.all()):
		case v.readyWork(r):
			board = append(board, r)
		case v.readyMixed(r):
			other = append(other, r)
		}
		switch {
		case handles && r.cleans() && cleansAfter(r), !handles && r.cleans():
			tell()
		case handles && raw == nil:
			raw = r
		}
	}
	tell()
}

// readyMixed says that a row works with cream, cheese or fruit that is eaten as it is.
func (v *view) readyMixed(r *row) bool {
	return slices.ContainsFunc(r.deeds, func(d *deed) bool {
		if d.Kind == act.Other && rinses.in(d.words) && leavesFood.in(r.words) {
			return true
		}
		return handsKind(d.Kind) && readyToEat.in(d.words) && !creaming.in(d.words) && !rawMeat.in(d.words) && !v.cookedLater(d) && !v.bakedLater(d)
	})
}

var rinses = lex("rinse, wash, pick, lay")

// cleansAfter says that a row with raw food cleans up after it itself.
func cleansAfter(r *row) bool {
	for i := len(r.deeds) - 1; i >= 0; i-- {
		switch r.deeds[i].Kind {
		case act.CleanDown, act.WashUp:
			return true
		}
	}
	return cleanWords.in(r.all()) || slices.ContainsFunc(r.Notes, func(a act.Act) bool { return a.Kind == act.CleanDown || a.Kind == act.WashUp })
}

func (v *view) cleanMinutes() int {
	if v.Practical != nil && v.Practical.Rules.RawClean > 0 {
		return v.Practical.Rules.RawClean
	}
	return 4 // two-stage clean and 20 s at the tap: common practice, no source
}

// rawFirst tells raw meat before food eaten as it is, where the order is free:
// another dish, no need of the one before the other.
func rawFirst(v *view, f *asker) {
	var raw *row
	for _, r := range v.inTime {
		if slices.ContainsFunc(r.deeds, v.rawWork) && raw == nil {
			raw = r
			continue
		}
		if raw == nil || r.backwards || !v.readyWork(r) || r.only() == "" || r.samely(raw) {
			continue
		}
		if r.begin-raw.begin <= f.limit("near") && !r.has(act.Plate, act.Serve, act.Decorate) && !v.cleanedBetween(raw, r) {
			f.tell(saw{rows: []*row{r, raw}, minutes: v.cleanMinutes()})
		}
		return
	}
}

func (v *view) cleanedBetween(a, b *row) bool {
	return slices.ContainsFunc(v.inTime[a.place:b.place+1], (*row).cleans)
}
