package check

import (
	"fmt"
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
	return rawMeat.in(d.words) && !cookedAlready.in(d.row.words) && !v.cookedBefore(d)
}

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
		if !v.rawWork(d) || d.row.washesHands() {
			continue
		}
		next := v.nextHands(d)
		if next == nil || v.rawAgain(d, next) {
			continue
		}
		f.tell(saw{rows: []*row{d.row, next}})
		return
	}
}

// nextHands is the next row with work of the hands after a deed that is no
// washing; nil if hands are washed before it, or the meat goes straight on to cook.
func (v *view) nextHands(d *deed) *row {
	for _, r := range v.inTime[d.row.place+1:] {
		if r.backwards {
			continue
		}
		if r.washesHands() {
			return nil
		}
		if r.has(act.CleanDown, act.WashUp) && !r.has(act.Cut, act.Mix, act.Shape, act.Fill) {
			continue
		}
		if r.has(act.Cut, act.Mix, act.Shape, act.Fill, act.Decorate, act.Plate, act.Hob) {
			return r
		}
	}
	return nil
}

// rawAgain says that the next work is on the same raw food.
func (v *view) rawAgain(d *deed, next *row) bool {
	return next.samely(d.row) && rawMeat.in(next.words)
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

var cleanWords = lex("clean board*, wash board*, clean the board*, wash the board*, separate board*, different board*, new board*, fresh board*, sanitis*, sanitiz*, disinfect*, spray*, clean down, antibacterial, wipe down, clean knife, clean area, boards washed, board washed, wash equipment, clean equipment, wash knife, wash chopping, wash the chopping, clean chopping, clean the chopping, change board*, change the board*")

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
		handles := slices.ContainsFunc(r.deeds, v.rawWork)
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
		return handsKind(d.Kind) && readyToEat.in(d.words) && !creaming.in(d.words) && !rawMeat.in(d.words) && !v.cookedLater(d) && !v.bakedLater(d)
	})
}

// cleansAfter says that a row with raw food cleans up after it itself.
func cleansAfter(r *row) bool {
	for i := len(r.deeds) - 1; i >= 0; i-- {
		switch r.deeds[i].Kind {
		case act.CleanDown, act.WashUp:
			return true
		}
	}
	return cleanWords.in(r.all()) && !colourOnly.in(r.all()) || slices.ContainsFunc(r.Notes, func(a act.Act) bool { return a.Kind == act.CleanDown || a.Kind == act.WashUp })
}

var colourOnly = lex("red board, blue board")

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

// noCoreCheck tells food that must be cooked through and is never checked.
func noCoreCheck(v *view, f *asker) {
	for _, letter := range v.dishes {
		rows := v.rowsOfDish(letter)
		var cooked *row
		for _, r := range rows {
			for _, d := range r.deeds {
				risky := d.HighRisk || highRisk.in(d.words)
				switch d.Kind {
				case act.Hob, act.PutIn, act.Grill:
					if d.Kind == act.Grill && (len(d.Objects) == 0 || grillOn.in(d.words)) {
						continue // it is heated
					}
					if (risky || v.rawIn(rows, d)) && cooked == nil {
						cooked = r
					}
				}
			}
		}
		if cooked == nil || v.checked(letter, cooked) {
			continue
		}
		f.tell(saw{rows: []*row{cooked}, dish: letter})
	}
}

var grillOn = lex("heat the grill, heat grill, grill on, light the grill, light grill, turn grill on, preheat the grill, preheat grill, turn on grill, turn on the grill, grill to heat")

// rawIn says that raw meat was worked on for the dish before the deed, and the
// deed cooks that and not another part of it.
func (v *view) rawIn(rows []*row, d *deed) bool {
	if d.Kind == act.Hob && len(d.Objects) > 0 {
		return false // it names what it cooks, and that is none
	}
	if d.Kind != act.PutIn && d.Kind != act.Grill && len(d.Objects) > 0 {
		return false
	}
	for _, r := range rows {
		if r.place >= d.row.place {
			return false
		}
		for _, o := range r.deeds {
			if v.rawWork(o) && highRisk.in(o.words) {
				return true
			}
		}
	}
	return false
}

// checked says that from a row on the dish is probed or its doneness is looked for.
func (v *view) checked(letter string, from *row) bool {
	for _, r := range v.inTime {
		if (r.about(letter) || len(r.Letters) == 0) && r.place >= from.place && (r.noted(act.Probe) || probeWords.in(r.all())) {
			return true
		}
	}
	return false
}

// rawLeftOut tells raw meat that stands prepared, out of the cold, before it is cooked.
func rawLeftOut(v *view, f *asker) {
	for _, d := range v.deeds {
		if !v.rawWork(d) && !(d.Kind == act.FromCold && rawMeat.in(d.words) && !d.row.backwards) {
			continue
		}
		next, cold := v.nextRaw(d)
		if next == nil || cold {
			continue
		}
		if there := next.early - min(d.row.end, d.early+d.job.High); there > f.limit("most") {
			f.tell(saw{rows: []*row{d.row, next.row}, minutes: there})
			return
		}
	}
}

// nextRaw is when the meat of a deed is next cooked or worked on, and whether
// it is kept cold until then.
func (v *view) nextRaw(d *deed) (next *deed, cold bool) {
	if coldWords.in(d.row.all()) && d.Kind != act.FromCold {
		return nil, true
	}
	for _, o := range v.deeds[d.place+1:] {
		if o.row.backwards || !o.row.samely(d.row) && (len(d.row.Letters) > 0 || len(o.row.Letters) > 0) {
			continue
		}
		switch o.Kind {
		case act.Chill, act.Freeze:
			if len(o.Objects) == 0 || !v.otherFood(o, d) || rawMeat.in(o.words) || o.row == d.row {
				return nil, true
			}
		case act.Hob, act.PutIn, act.Grill, act.Cut, act.Mix, act.Shape, act.Fill, act.Marinate:
			if coldWords.in(o.row.words) && o.row != d.row && !rawMeat.in(o.row.words) && o.Kind == act.Marinate {
				return nil, true
			}
			if rawMeat.in(o.words) || o.Kind == act.PutIn || o.Kind == act.Grill || o.Kind == act.Hob && len(o.Objects) == 0 {
				if coldWords.in(o.row.all()) && (o.Kind == act.Marinate || o.Kind == act.Cut) {
					return nil, true
				}
				return o, false
			}
		}
	}
	return nil, false
}

var coldWords = lex("fridge, refrigerat*, chill, chilled, chiller, keep cold, below 5c, cold")

// coldDishOut tells food that must be cold and stands out until it is served.
func coldDishOut(v *view, f *asker) {
	for _, d := range v.deeds {
		if d.row.backwards || !perishable(d) || d.row.only() == "" {
			continue
		}
		letter := d.row.only()
		if v.coldAfter(d) || v.cookedLater(d) || v.bakedLater(d) {
			continue
		}
		serve, to := v.served(letter)
		if to == nil && !v.clocked {
			continue
		}
		if there := serve - d.late; there > f.limit("most") {
			f.tell(saw{rows: rowsOf(d.row, to), minutes: there})
		}
	}
}

// perishable says that a deed makes something of cream, custard, mayonnaise and
// the like, which belongs in the cold.
func perishable(d *deed) bool {
	switch d.Kind {
	case act.Fill, act.Decorate, act.Shape, act.Mix:
	default:
		return false
	}
	return (riskyCold.in(d.words) || d.Kind == act.Mix && yogurts.in(d.words)) && !notPerishable.in(d.words) && !creaming.in(d.words)
}

var (
	yogurts       = lex("yogurt, yoghurt, mayo, raita")
	notPerishable = lex("ice cream, cream of, coconut cream, cream crackers, buttercream, butter cream, milk, beat, egg, eggs, marinade, chicken, lamb, dough, into the flour, gelatine, quiche filling, biscuit*")
	creaming      = lex("creaming, cream butter, cream the butter, cream together, cream sugar, cream fat, cream margarine, cream marg*, cream the fat, cream the marg*, cream the sugar, and sugar, cream until")
)

// coldAfter says that the food is put into the cold after the deed, or that the row says so.
func (v *view) coldAfter(d *deed) bool {
	if inCold.in(d.row.all()) {
		return true
	}
	var next *row
	for _, o := range v.deeds[d.place+1:] {
		if (o.row.samely(d.row) || len(o.row.Letters) == 0) && !o.row.backwards {
			if next == nil && o.row != d.row && o.row.samely(d.row) {
				next = o.row
			}
			if o.Kind == act.Chill && (o.row == next || sharesStep(o.row, d.row)) {
				return true
			}
			if (o.Kind == act.Chill || o.Kind == act.Freeze) && (len(o.Objects) == 0 || len(o.row.Letters) == 0 || d.row.names(o.Objects)) {
				return true
			}
		}
	}
	return false
}

// sharesStep says that two rows stand for parts of one step.
func sharesStep(a, b *row) bool {
	return slices.ContainsFunc(a.Steps, func(s match.Step) bool {
		return slices.ContainsFunc(b.Steps, func(o match.Step) bool { return o.ID == s.ID })
	})
}

// names says that a row names one of the foods, by stem.
func (r *row) names(stems []string) bool {
	return slices.ContainsFunc(r.deeds, func(d *deed) bool {
		return slices.ContainsFunc(d.Objects, func(o string) bool { return slices.Contains(stems, o) })
	}) || mentions(r.words, stems)
}

var inCold = lex("fridge, refrigerat*, chill, chilled, chiller, freezer, below 5c")

// leftWarmTooLong tells cooked rice, custard and sauces that stand neither hot nor cold.
func leftWarmTooLong(v *view, f *asker) {
	for _, d := range v.of(act.Hob) {
		if d.row.backwards || !leftWarm.in(d.words) || d.row.only() == "" {
			continue
		}
		next, kept := v.nextOf(d)
		if next == nil || kept {
			continue
		}
		from := max(d.late+max(d.job.Low, d.Most), d.early)
		if there := next.early - from; there > f.limit("most") {
			f.tell(saw{rows: []*row{d.row, next.row}, minutes: there})
		}
	}
}

// nextOf is when what a deed cooks is next used, and whether it is kept hot or cold.
func (v *view) nextOf(d *deed) (next *deed, kept bool) {
	if holdWords.in(d.row.all()) || inCold.in(d.row.all()) || iced.in(d.row.all()) {
		return nil, true
	}
	for _, o := range v.deeds[d.place+1:] {
		if o.row == d.row && (o.Kind == act.Chill || o.Kind == act.Cool && o.Least > 0 || o.Kind == act.KeepHot || o.Kind == act.Fill || o.Kind == act.Serve) {
			return nil, true
		}
		if o.row == d.row || o.row.backwards || !o.row.samely(d.row) {
			continue
		}
		switch o.Kind {
		case act.Chill, act.KeepHot, act.Freeze:
			return nil, true
		case act.Serve, act.Plate, act.Fill, act.PutIn, act.Reheat, act.Hob:
			return o, false
		}
	}
	return nil, false
}

var iced = lex("ice bath, iced water, cold water, rinse*, icebath")

// reheatedTwice tells food that is heated up more than once.
func reheatedTwice(v *view, f *asker) {
	for _, letter := range v.dishes {
		var rows []*row
		for _, r := range v.rowsOfDish(letter) {
			if (r.has(act.Reheat) || reheats.in(r.words)) && !r.has(act.Plate) && !platesOnly.in(r.words) {
				rows = append(rows, r)
			}
		}
		if len(rows) > 1 {
			f.tell(saw{rows: []*row{rows[1], rows[0]}, dish: letter})
		}
	}
}

var (
	reheats    = lex("reheat*, re heat*, warm through, heat through")
	platesOnly = lex("plate*, flatbread*, naan*, bread, bowls, tortilla*, pitta*, buns, rolls")
)

// marinadeReused tells a marinade of raw food that comes on to the table.
func marinadeReused(v *view, f *asker) {
	var raw *row
	for _, r := range v.inTime {
		if r.has(act.Marinate) && raw == nil {
			raw = r
			continue
		}
		if raw == nil || r.backwards || !marinade.in(r.words) || !r.shares(raw) {
			continue
		}
		if pourOver.in(r.words) && !marinadeOK.in(r.words) && !r.has(act.Hob) && v.cookedBy(r) {
			f.tell(saw{rows: []*row{r, raw}})
			return
		}
	}
}

// cookedBy says that something of the row's dish has been cooked before it.
func (v *view) cookedBy(r *row) bool {
	return slices.ContainsFunc(v.inTime[:r.place], func(o *row) bool { return o.shares(r) && o.has(act.Hob, act.PutIn, act.Grill) })
}

// allergensUnmarked tells a menu with allergens that the plan never names.
func allergensUnmarked(v *view, f *asker) {
	if !v.recipes {
		return
	}
	var names []string
	for _, d := range v.Practical.Dishes {
		for _, a := range d.Allergens {
			if !slices.Contains(names, a) {
				names = append(names, a)
			}
		}
	}
	if len(names) == 0 {
		return
	}
	texts := slices.Clone(v.Plan.Other)
	for _, r := range v.rows {
		texts = append(texts, r.Text, r.Points)
	}
	for _, t := range texts {
		if allergySaid.in(wordsOf(t)) {
			return
		}
	}
	f.tell(saw{say: map[string]string{"what": list(names), "number": fmt.Sprint(len(names))}})
}

var allergySaid = lex("allerg*, label them, menu has, dish has, dishes have, milk and egg, egg and milk, wheat and milk, milk and wheat, intoleran*, coeliac, contains, gluten, nut free, dairy free, dietary, vegan")

// hotFatNoNote tells hot fat or sugar with nothing said of how to be safe with it.
func hotFatNoNote(v *view, f *asker) {
	for _, r := range v.rows {
		if !hotFat.in(r.words) && !fryingOil(r) || !r.has(act.Hob) && !hotFat.in(r.words) {
			continue
		}
		if hotFatNotes.in(r.all()) || r.has(act.Serve, act.Plate, act.Decorate) && !r.has(act.Hob) {
			continue
		}
		f.at(r)
	}
}

// fryingOil says that something is fried in oil that is named.
func fryingOil(r *row) bool {
	return fries.in(r.words) && (slices.Contains(r.words, "oil") || bothSides.in(r.words))
}

var fries = lex("fry, fried, frying, shallow")

// walksAway tells hands that are wanted elsewhere while something must be watched.
func walksAway(v *view, f *asker) {
	if v.cooks() > 1 {
		return
	}
	for _, d := range v.deeds {
		if !d.job.watch || d.row.backwards || d.Kind == act.Mix && !d.row.has(act.Hob) {
			continue
		}
		from, until := d.early, d.early+max(d.job.Low, 1)
		for _, o := range v.inTime[d.row.place+1:] {
			if o.backwards || !o.timed || o.begin >= until-f.limit("slack") {
				break
			}
			if o.hands.Low >= f.limit("work") && !o.has(act.Serve) && o.begin+o.hands.Low > from && !goesOn(d, o) {
				f.tell(saw{rows: []*row{o, d.row}, minutes: min(until, o.begin+o.hands.Low) - max(from, o.begin)})
				return
			}
		}
	}
}

// goesOn says that a row goes on with what is in the pan.
func goesOn(d *deed, r *row) bool {
	if !r.samely(d.row) || !r.has(act.Hob) && !tipped.in(r.words) {
		return false
	}
	return tipped.in(r.words) || slices.ContainsFunc(r.deeds, func(o *deed) bool {
		return len(o.Objects) == 0 || slices.ContainsFunc(o.Objects, func(w string) bool { return slices.Contains(d.Objects, w) })
	}) && !slices.ContainsFunc(r.deeds, func(o *deed) bool { return o.Kind == act.Hob && len(o.Objects) > 0 })
}

// noWashingUp tells a plan in which nothing is washed up.
func noWashingUp(v *view, f *asker) {
	if !slices.ContainsFunc(v.rows, (*row).washesUp) {
		f.at()
	}
}

// washesUp says that a row clears, by its acts or its words.
func (r *row) washesUp() bool {
	if r.has(act.WashUp, act.FinalClean) && !cleanBowl.in(r.words) || washWords.in(r.all()) {
		return true
	}
	for _, d := range r.deeds {
		if d.Kind == act.CleanDown && !slices.ContainsFunc(r.deeds, func(o *deed) bool { return o.Kind == act.Cut || o.Kind == act.Shape || o.Kind == act.Mix }) && !boardOnly.in(d.words) {
			return true
		}
	}
	return false
}

var (
	washWords = lex("wash up, washing up, wash dishes, wash equipment, clear up, clean as you, tidy*, do dishes, do the dishes, wash the dishes, clear away, clear down")
	cleanBowl = lex("clean bowl, clean dry, clean grease, clean pan, clean tin")
	boardOnly = lex("board*, hand*, knife, knives, table")
)

// noFinalClean tells a plan that ends without clearing.
func noFinalClean(v *view, f *asker) {
	_, end := v.span()
	lastServe := -1
	for _, d := range v.of(act.Serve) {
		lastServe = max(lastServe, d.row.place)
	}
	for _, r := range v.inTime {
		if r.washesUp() && (r.place >= lastServe && lastServe >= 0 || r.end > end-f.limit("last")) {
			return
		}
	}
	f.at()
}

// hotIntoFridge tells food that goes from the heat into the cold with nothing to cool it.
func hotIntoFridge(v *view, f *asker) {
	for _, d := range v.of(act.Chill, act.Freeze) {
		if d.row.backwards || pastry.in(d.words) || coolSaid.in(d.row.all()) || d.row.has(act.Cool) {
			continue
		}
		if straightIn.in(d.row.words) && hotSaid.in(d.row.words) {
			f.at(d.row)
			continue
		}
		if from := v.hotBefore(d, f.limit("least")); from != nil {
			f.tell(saw{rows: rowsOf(d.row, from.row)})
		}
	}
}

var (
	coolSaid   = lex("cool, cooled, cooling, cold, cools, ice bath, iced water, room temperature, once cool*")
	straightIn = lex("them straight, it straight, straight in*, straight to, immediately, while hot, still hot, hot cream, hot mixture, hot custard")
	hotSaid    = lex("hot, boil*, cook*, simmer*, warm*, bake*, heat*")
	coolsSlow  = lex("rice, custard, patissiere, soup, curry, ragu, bolognese, stew, sauce, risotto, potato*, filling")
)

// hotBefore is the deed that leaves hot what is put into the cold; nil: none.
func (v *view) hotBefore(d *deed, least int) *deed {
	for i := d.place - 1; i >= 0; i-- {
		o := v.deeds[i]
		if !o.row.samely(d.row) && len(d.row.Letters) > 0 || o.row.backwards {
			continue
		}
		switch o.Kind {
		case act.Cool, act.Chill, act.Freeze, act.Rest, act.FromCold:
			return nil
		case act.TakeOut, act.PutIn:
			if d.early-o.late < least && (o.Kind == act.TakeOut || o.row == d.row && o.Least > 0) && !v.otherFood(o, d) {
				return o
			}
			return nil
		case act.Hob:
			if straightIn.in(d.row.words) || o.row == d.row && coolsSlow.in(d.row.words) {
				return o
			}
			return nil
		case act.Cut, act.Marinate:
			return nil
		}
	}
	return nil
}

// otherFood says that two deeds name foods, and none in common.
func (v *view) otherFood(a, b *deed) bool {
	return len(a.Objects) > 0 && len(b.Objects) > 0 && !slices.ContainsFunc(a.Objects, func(o string) bool { return slices.Contains(b.Objects, o) })
}
