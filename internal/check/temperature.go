package check

import (
	"slices"

	"plait.example/internal/act"
	"plait.example/internal/match"
)

// noCoreCheck tells food that must be cooked through and is never checked.
func noCoreCheck(v *view, f *asker) {
	for _, letter := range v.dishes {
		rows := v.rowsOfDish(letter)
		var cooked *row
		for _, r := range rows {
			for _, d := range r.deeds {
				risky := highRisk.in(d.words) || d.HighRisk && !fishy.in(d.words) && !byLook(d) || fishy.in(d.words) && !fishDone.in(r.all())
				switch d.Kind {
				case act.Hob, act.PutIn, act.Grill:
					if d.Kind == act.Grill && (len(d.Objects) == 0 || grillOn.in(d.words)) {
						continue // it is heated
					}
					if (risky || v.rawIn(rows, d)) && (cooked == nil || !highRisk.in(cooked.words) && highRisk.in(r.words)) {
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

// fishByEye says that the only raw food of a dish is fish, and that a row tells it by eye.
func (v *view) fishByEye(rows []*row) bool {
	eye, meat := false, false
	for _, r := range rows {
		eye = eye || fishOnly.in(r.words) && fishDone.in(r.all()) || fishDone.in(r.points)
		meat = meat || highRisk.in(r.words)
	}
	return eye && !meat
}

var fishOnly = lex("fish, cod, salmon, haddock, prawn*, mackerel, trout, pollock, hake, plaice, sea bass, seabass")

// noProbe are foods that are heated and that nobody probes by themselves: eggs by
// their look, rice by biting it (it is its cooling that is a risk).
var noProbe = []string{"egg", "rice"}

// byLook says that a deed cooks eggs or rice and names nothing else.
func byLook(d *deed) bool {
	return slices.ContainsFunc(d.Objects, func(o string) bool { return slices.Contains(noProbe, o) }) &&
		!slices.ContainsFunc(d.Objects, func(o string) bool {
			return !slices.Contains(noProbe, o) && !vessel.in([]string{o}) && !around.in([]string{o})
		})
}

// around are stems of what food is cooked in, and of how.
var around = lex("boil*, simmer*, water, salt*, lid, cold, hot, ice, kettl*, shell*, yolk*, timer, yellow, hard, soft, fluffi, fluff*, pan*")

// rawIn says that raw meat was worked on for the dish before the deed, and the
// deed cooks that and not another part of it.
func (v *view) rawIn(rows []*row, d *deed) bool {
	for _, r := range rows {
		if r.place >= d.row.place {
			return false
		}
		if !slices.ContainsFunc(r.deeds, func(o *deed) bool {
			return v.rawWork(o) && (highRisk.in(o.words) || highRisk.in(r.words) || fishOnly.in(r.words) && !v.fishByEye(rows))
		}) {
			continue
		}
		if d.Kind != act.Hob || len(d.Objects) == 0 || r.names(d.Objects) {
			return true
		}
	}
	return false
}

// checked says that from a row on the dish is probed or its doneness is looked for.
func (v *view) checked(letter string, from *row) bool {
	for _, r := range v.inTime {
		if (r.about(letter) || len(r.Letters) == 0) && r.place >= from.place && (r.noted(act.Probe) && !slices.Contains(r.words, "oil") || probeWords.in(r.all())) {
			return true
		}
	}
	return false
}

// rawLeftOut tells raw meat that stands prepared, out of the cold, before it is cooked.
func rawLeftOut(v *view, f *asker) {
	for _, d := range v.deeds {
		laid := rawMeat.in(d.row.words) && laidOut.in(d.row.words) && !d.row.backwards
		if !v.rawWork(d) && !laid && !(d.Kind == act.FromCold && rawMeat.in(d.words) && !d.row.backwards) {
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

var laidOut = lex("out on my, out on the, on the side, on the work*, on worktop, to room temp*, on the table, on my table, out ready")

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
			other := d.row.has(act.FromCold) && len(o.row.words) > 3 && !rawMeat.in(o.row.words) // "4 eggs in pan, boil"
			if rawMeat.in(o.words) || !other && (o.Kind == act.PutIn || o.Kind == act.Grill || o.Kind == act.Hob && len(o.Objects) == 0) {
				if coldWords.in(o.row.all()) && (o.Kind == act.Marinate || o.Kind == act.Cut) && !(d.Kind == act.FromCold && laidOut.in(d.row.words)) {
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
			rows := []*row{d.row, next.row}
			for _, r := range v.inTime[d.row.place+1 : next.row.place] {
				if r.samely(d.row) && slices.Contains(r.words, d.words[leftWarm.find(d.words)]) {
					rows = append(rows, r)
				}
			}
			f.tell(saw{rows: rows, minutes: there})
		}
	}
}

// nextOf is when what a deed cooks is next used, and whether it is kept hot or cold.
func (v *view) nextOf(d *deed) (next *deed, kept bool) {
	if holdWords.in(d.row.all()) || inCold.in(d.row.all()) || iced.in(d.row.all()) {
		return nil, true
	}
	food := leftWarm.find(d.words)
	var first *row // of the dish after the deed's own
	for _, o := range v.deeds[d.place+1:] {
		if o.row == d.row && (o.Kind == act.Chill || o.Kind == act.Cool && o.Least > 0 || o.Kind == act.KeepHot || o.Kind == act.Fill || o.Kind == act.Serve) {
			return nil, true
		}
		if o.row == d.row || o.row.backwards || !o.row.samely(d.row) {
			continue
		}
		if first == nil {
			first = o.row
		}
		if o.row == first && (inCold.in(o.row.words) || iced.in(o.row.words)) {
			return nil, true
		}
		switch o.Kind {
		case act.Chill, act.KeepHot, act.Freeze:
			if food < 0 || slices.Contains(o.row.words, d.words[food]) || !o.row.namesFood() {
				return nil, true
			}
		case act.Serve, act.Plate:
			return o, false
		case act.Fill, act.PutIn, act.Reheat, act.Hob, act.Mix:
			if food < 0 || slices.Contains(o.row.words, d.words[food]) || o.Kind == act.PutIn {
				return o, false
			}
		}
	}
	return nil, false
}

// namesFood says that any act of the row names what it is done to.
func (r *row) namesFood() bool {
	return slices.ContainsFunc(r.deeds, func(d *deed) bool { return len(d.Objects) > 0 })
}

var iced = lex("ice bath, iced water, cold water, rinse*, icebath")

// hotIntoFridge tells food that goes from the heat into the cold with nothing to cool it.
func hotIntoFridge(v *view, f *asker) {
	for _, d := range v.of(act.Chill, act.Freeze) {
		if d.row.backwards || pastry.in(d.words) || coolSaid.in(d.row.all()) || d.row.has(act.Cool) {
			continue
		}
		if straightIn.in(d.row.words) && hotSaid.in(d.row.cookingWords()) && !rawMeat.in(d.row.words) {
			f.at(d.row)
			continue
		}
		if from := v.hotBefore(d, f.limit("least")); from != nil {
			f.tell(saw{rows: rowsOf(d.row, from.row)})
		}
	}
}

// cookingWords are the words of a row but for those of washing and cleaning.
func (r *row) cookingWords() (words []string) {
	for _, d := range r.deeds {
		if d.Kind != act.WashHands && d.Kind != act.WashUp && d.Kind != act.CleanDown && d.Kind != act.FinalClean {
			words = append(words, d.words...)
		}
	}
	return words
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
