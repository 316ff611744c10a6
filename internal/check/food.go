package check

import (
	"fmt"
	"slices"
	"strings"

	"plait.example/internal/act"
	"plait.example/internal/practical"
)

// Food: does it get the time it needs, and does it come to the table as it should?
var foodTests = map[string]test{
	"chill-too-short":     chillTooShort,
	"prove-out-of-range":  proveOutOfRange,
	"pastry-not-rested":   pastryNotRested,
	"filled-warm":         filledWarm,
	"not-rested":          notRested,
	"wait-too-short":      waitTooShort,
	"wait-too-long":       waitTooLong,
	"hot-dish-early":      hotDishEarly,
	"finishes-scattered":  finishesScattered,
	"course-order":        courseOrder,
	"fragile-too-early":   fragileTooEarly,
	"gelatine-or-enzyme":  gelatineOrEnzyme,
	"tin-not-ready":       tinNotReady,
	"water-not-on":        waterNotOn,
	"plates-and-garnish":  platesAndGarnish,
	"simmer-time-missing": simmerTimeMissing,
}

// settings are the least minutes in the cold before a food holds. Common
// practice, no source, but for gelatine: published pages say 1 to 8 hours.
var settings = []struct {
	food  *lexicon
	least int
}{
	{lex("gelatine, gelatin, panna, pannacotta, mousse*, jelly, bavarois, cheesecake*"), 60},
	{lex("custard, caramel"), 60},
	{lex("agar"), 15},
	{lex("patties, burger*, fishcake*, falafel*, meatball*"), 15},
	{lex("ganache, truffle*"), 20},
	{lex("tiramisu, trifle"), 45},
}

// chillTooShort tells food that is taken from the cold before it can have set.
func chillTooShort(v *view, f *asker) {
	for _, d := range v.of(act.Chill) {
		if d.row.backwards || pastry.in(d.row.words) || notSet.in(d.words) {
			continue
		}
		least := d.Least
		for _, s := range settings {
			if s.food.in(d.row.words) || s.food.in(wordsOf(v.dish(d.row.only()))) && len(d.row.Letters) == 1 && !madeEarly.in(d.row.words) {
				least = max(least, s.least)
				break
			}
		}
		steps := v.waitStepsOf(d.row, practical.AtFridge)
		if len(steps) == 0 && !madeEarly.in(d.row.words) {
			least = max(least, v.oneChill(d.row.only()))
		}
		for _, s := range steps {
			if v.waitEnds(s) == nil && strings.ContainsAny(s.step.Text, "0123456789") {
				least = max(least, s.step.Wait.Least)
			}
		}
		until, row := v.fromCold(d)
		if least == 0 || until < 0 {
			continue
		}
		if there := until - d.early; there < least-f.limit("slack") && !v.chilledBefore(d, until-least) {
			f.tell(saw{rows: rowsOf(d.row, row), minutes: least - max(0, there), say: map[string]string{"there": fmt.Sprint(max(0, there)), "need": fmt.Sprint(least)}})
		}
	}
	v.tellWaits(f, chilling)
}

// chilledBefore says that the dish was put into the cold before the deed, by a time.
func (v *view) chilledBefore(d *deed, by int) bool {
	return slices.ContainsFunc(v.of(act.Chill), func(o *deed) bool {
		return o.place < d.place && o.row.samely(d.row) && !madeEarly.in(o.row.words) && o.early <= by
	})
}

// madeEarly are words of a part of a dish that is chilled on the way and not to set.
var madeEarly = lex("base, dough, pastry, butter, bowl")

func rowsOf(rows ...*row) (list []*row) {
	for _, r := range rows {
		if r != nil && !slices.Contains(list, r) {
			list = append(list, r)
		}
	}
	return list
}

// fromCold is when what was put into the cold is wanted again. -1: not known.
func (v *view) fromCold(d *deed) (int, *row) {
	for _, o := range v.after(d) {
		if o.row == d.row || o.row.backwards {
			continue
		}
		switch o.Kind {
		case act.FromCold, act.Serve, act.Plate, act.Decorate:
			return o.late, o.row
		case act.TakeOut:
			if putOut.in(o.words) {
				return o.late, o.row
			}
		case act.Cut, act.Shape, act.Hob, act.Grill, act.PutIn:
			if o.row.samely(d.row) && slices.ContainsFunc(o.Objects, func(w string) bool { return slices.Contains(d.Objects, w) }) {
				return o.late, o.row
			}
		}
	}
	if v.clocked {
		return v.finish, nil
	}
	return -1, nil
}

// proveOutOfRange tells dough that proves for too short or too long.
func proveOutOfRange(v *view, f *asker) {
	proves := v.of(act.Prove)
	for i, d := range proves {
		next := v.nextDough(d)
		if d.row.backwards || v.waited(d.row, "") {
			continue
		}
		shortest, longest := 0, 0
		switch {
		case next != nil && next.row != d.row:
			shortest, longest = next.early-d.late, next.late-d.early
		case d.Least > 0:
			shortest, longest = d.Least, d.Most
		default:
			continue
		}
		if d.Least > 0 && d.Least >= shortest && d.Least <= longest {
			shortest, longest = d.Least, d.Most
		}
		least, most := f.limit("second-least"), f.limit("first-most")
		switch {
		case i+1 < len(proves) && proves[i+1].row.samely(d.row) && proves[i+1].row != d.row:
			least = f.limit("first-least")
		case i > 0 && proves[i-1].row.samely(d.row) && proves[i-1].row != d.row:
			most = f.limit("second-most")
		}
		if longest < least || shortest > most {
			row := (*row)(nil)
			if next != nil {
				row = next.row
			}
			f.tell(saw{rows: rowsOf(d.row, row), minutes: max(least-longest, shortest-most), say: map[string]string{"found": between(max(0, shortest), longest), "range": between(least, most)}})
		}
	}
	v.tellWaits(f, proving)
}

// nextDough is the next work of the hands or the oven on the dough.
func (v *view) nextDough(d *deed) *deed {
	for _, o := range v.after(d) {
		if !o.row.samely(d.row) && (len(o.row.Letters) > 0 || len(d.row.Letters) > 0) || o.row.backwards || o.row == d.row {
			continue
		}
		switch o.Kind {
		case act.Mix, act.Shape, act.Fill, act.Decorate, act.PutIn, act.Cut:
			if (doughWords.in(o.row.words) || o.Kind == act.PutIn) && !rawMeat.in(o.row.words) {
				return o
			}
		}
	}
	return nil
}

var doughWords = lex("dough, knock*, shap*, roll, rolls, loaf, loaves, bun, buns, plait*, tin, divid*, bread, pizza, base, dimple*, stretch*, focaccia, naan*, pitta*, ciabatta, brush*, glaze*, egg wash, knead*")

// pastryNotRested tells pastry that is rolled before it has rested.
func pastryNotRested(v *view, f *asker) {
	for _, made := range v.of(act.Mix) {
		if !makesPastry(made) || made.row.backwards {
			continue
		}
		from := min(made.early+made.job.Low, max(made.row.end, made.early))
		for _, o := range v.after(made) {
			if o.row.backwards || !o.row.samely(made.row) && len(made.row.Letters) > 0 {
				continue
			}
			if (o.Kind == act.Chill || o.Kind == act.Rest) && o.row != made.row {
				from = max(from, o.early)
			}
			if makesPastry(o) && o.row != made.row {
				break // made again: that one is judged by itself
			}
			if o.Kind != act.Shape || !rolled.in(o.words) || slices.Contains(made.words, "rub") && !pastry.in(made.row.words) && !pastry.in(o.row.words) {
				continue
			}
			there := o.early - from
			if o.row == made.row {
				there = restSaid(made.row, made, o)
			}
			if there < f.limit("least") {
				f.tell(saw{rows: rowsOf(o.row, made.row), minutes: f.limit("least") - max(0, there), say: map[string]string{"there": fmt.Sprint(max(0, there))}})
			}
			break
		}
	}
	v.tellWaits(f, resting)
}

// makesPastry says that a deed makes pastry, or pasta dough, that is rolled later.
func makesPastry(d *deed) bool {
	if d.Kind != act.Mix || rolled.in(d.words) || notRolled.in(d.row.words) || pastryCream.in(d.row.words) {
		return false
	}
	return pastry.in(d.words) || pastaDough.in(d.words) || rubbed.in(d.words) && !rubbedElse.in(d.row.words)
}

var (
	pastryCream = lex("pastry cream, pastry case*, pastry brush")
	rubbed      = lex("rub, rubbing, rubbed")
	rubbedElse  = lex("crumble, scone*, topping, spice*, dough, yeast, salt")
	pastaDough  = lex("pasta dough")
	rolled      = lex("roll*, line, lining, lined")
)

// restSaid is the minutes of rest that a row names between two of its acts; the
// row's whole length where it names a rest and no minutes.
func restSaid(r *row, from, to *deed) int {
	for _, d := range r.deeds {
		if d.place > from.place && d.place < to.place && (d.Kind == act.Chill || d.Kind == act.Rest) {
			if d.Least > 0 {
				return d.Most
			}
			return r.end - r.begin - from.job.Low - to.job.Low
		}
	}
	return 0
}

// filledWarm tells a bake that is iced or filled before it can be cold.
func filledWarm(v *view, f *asker) {
	for _, l := range v.loads {
		if l.out == nil || l.out.row.backwards || l.again && v.continued(0) {
			continue
		}
		if !bakedSweet.in(l.words()) && !bakedSweet.in(v.wordsOfDish(l.in.row.only())) && !bakedSweet.in(l.out.row.words) {
			continue
		}
		cooled := false
		for _, o := range v.after(l.out) {
			if o.row.backwards || !o.row.samely(l.in.row) && len(l.in.row.Letters) > 0 {
				continue
			}
			cooled = cooled || o.Kind == act.Cool && o.row == l.out.row
			if !fillsCold(o) {
				continue
			}
			there := o.late - l.out.early
			if o.row == l.out.row && cooled {
				there = o.row.end - l.out.early
			}
			least := f.limit("least")
			if coolsFast.in(slices.Concat(l.words(), l.out.row.words, wordsOf(v.dish(l.in.row.only())))) {
				least = min(least, f.limit("thin"))
			}
			if there < least {
				f.tell(saw{rows: rowsOf(o.row, l.out.row), minutes: least - max(0, there), say: map[string]string{"there": fmt.Sprint(max(0, there))}})
			}
			break
		}
	}
	v.tellWaits(f, cooling)
}

// coolsFast are bakes that are thin or hollow.
var coolsFast = lex("swiss roll, roulade, choux, profiterole*, eclair*, biscuit*, cookie*, shortbread, tuile*, meringue*, buns")

// fillsCold says that a deed puts on or in what a warm cake would melt.
func fillsCold(d *deed) bool {
	switch d.Kind {
	case act.Fill, act.Decorate, act.Shape:
	default:
		return false
	}
	return creamFill.in(d.words) && (!warmGlaze.in(d.words) || melting.in(d.words)) && !dusted.in(d.words)
}

var melting = lex("buttercream, whipped cream, butter icing, and cream, cream and, and buttercream")

var dusted = lex("dust*, sift*, sprinkl*, chips")

// notRested tells meat that is carved as soon as it is cooked.
func notRested(v *view, f *asker) {
	for _, d := range v.of(act.Cut, act.Plate, act.Serve) {
		if !carving.in(d.words) || d.row.backwards {
			continue
		}
		for i := d.place - 1; i >= 0; i-- {
			o := v.deeds[i]
			if !o.row.samely(d.row) && len(d.row.Letters) > 0 {
				continue
			}
			if o.Kind == act.Rest || o.Kind == act.Cool || o.row.noted(act.Rest) {
				break
			}
			if o.Kind == act.TakeOut || o.Kind == act.Hob || o.Kind == act.Grill {
				ends := max(o.early, o.likely)
				if o.Kind != act.TakeOut {
					ends += o.job.Low
				}
				there := d.late - min(ends, d.late)
				if o.row == d.row {
					there = 0
				}
				if there < f.limit("least") {
					f.tell(saw{rows: rowsOf(d.row, o.row), minutes: f.limit("least") - max(0, there)})
				}
				break
			}
		}
	}
	v.tellWaits(f, restingMeat)
}

var carving = lex("carve*, carving, slice the chicken, slice the steak, slice steak, slice chicken breast*, slice the beef, slice the lamb, slice the duck, slice duck, slice the pork, slice the meat, slice the joint")
