package check

import (
	"slices"

	"plait.example/internal/act"
)

// gelatineOrEnzyme tells gelatine that is boiled, or set with a fruit that
// keeps it from setting. Food science texts: the enzymes of raw pineapple, kiwi
// and papaya cut gelatine; agar is not cut.
func gelatineOrEnzyme(v *view, f *asker) {
	for _, r := range v.rows {
		if gelatine.in(r.words) && boils.in(r.words) && !boilNot.in(r.words) {
			f.tell(saw{rows: []*row{r}, say: map[string]string{"what": "gelatine that boils", "why": "gelatine that has boiled sets weakly"}})
		}
	}
	for _, letter := range v.dishes {
		var gel, fruit *row
		for _, r := range v.rowsOfDish(letter) {
			if gelatine.in(r.words) {
				gel = r
			}
			if rawEnzyme.in(r.words) && !enzymeOK.in(r.words) {
				fruit = r
			}
		}
		if gel != nil && fruit != nil && !topped(fruit) {
			f.tell(saw{rows: []*row{fruit, gel}, dish: letter, say: map[string]string{"what": "that fruit raw in a jelly", "why": "the fruit's enzymes keep gelatine from setting"}})
		}
	}
}

// topped says that the fruit only goes on the plate.
func topped(r *row) bool {
	return r.has(act.Plate, act.Serve, act.Decorate) || garnishing.in(r.words)
}

// tinNotReady tells a mixture that is made before its tin is lined.
func tinNotReady(v *view, f *asker) {
	for _, l := range v.loads {
		if !tinned.in(v.wordsOfDish(l.in.row.only())) || l.in.row.backwards || l.in.row.only() == "" || notTinned.in(v.wordsOfDish(l.in.row.only())) {
			continue
		}
		var ready *deed
		for _, d := range v.of(act.Ready) {
			if !d.row.backwards && d.row.shares(l.in.row) && (ready == nil || d.place < ready.place) {
				ready = d
			}
		}
		if ready == nil || ready.place > l.in.place {
			continue
		}
		var mixed *deed
		for _, d := range v.of(act.Mix) {
			if d.place < ready.place && d.row != ready.row && d.row.samely(l.in.row) && !d.row.backwards && !pastry.in(d.row.words) && wetMix.in(d.row.words) {
				mixed = d
			}
		}
		if mixed != nil && ready.early-mixed.early < f.limit("most") {
			f.tell(saw{rows: []*row{ready.row, mixed.row}, minutes: ready.job.Likely})
			return
		}
	}
	v.noTin(f)
}

// noTin tells a cake for which no row at all makes a tin ready.
func (v *view) noTin(f *asker) {
	for _, l := range v.loads {
		letter := l.in.row.only()
		if letter == "" || !cakeTin.in(l.words()) && !cakeTin.in(wordsOf(v.dish(letter))) || notTinned.in(v.wordsOfDish(l.in.row.only())) {
			continue
		}
		lined := slices.ContainsFunc(v.rows, func(r *row) bool {
			return r.shares(l.in.row) && (r.noted(act.Ready) || tinSaid.in(r.all()))
		})
		if !lined {
			f.at(l.in.row)
			return
		}
	}
}

var (
	wetMix    = lex("cake, sponge, mixture, batter, fold*, cream*, whisk*, flour, eggs, egg, sugar, brownie*, mix")
	notTinned = lex("cheesecake*, fishcake*, biscuit*, cookie*, pastry, case, choux, muffin*, cupcake*, fairy, meringue*, tart, quiche, bun, buns")
	cakeTin   = lex("sponge*, brownie*, gateau, swiss roll, roulade, victoria, traybake*, loaf cake")
	tinSaid   = lex("line*, lined, lining, greas*, tin, tins, parchment, greaseproof, paper cases, cases, baking paper")
)

// waterNotOn tells food for boiling water that nothing has put on in time.
func waterNotOn(v *view, f *asker) {
	for _, d := range v.of(act.Hob) {
		if d.row.backwards || !needsWater.in(d.words) && !(slices.Contains(d.words, "rice") && slices.Contains(d.words, "in")) || !boiling.in(d.words) && !(d.Verb == "" && d.Least > 0) || sauced.in(d.words) || waterOn.in(d.row.words) || v.inLiquid(d) {
			continue
		}
		var on *row
		for _, r := range v.inTime[:d.row.place+1] {
			if d.row.begin-r.begin <= longestBoil && (r.has(act.BoilWater) || r != d.row && waterOn.in(r.all()) || kettle.in(r.all())) {
				on = r
			}
		}
		if on == nil || on == d.row && !kettle.in(d.row.words) && !waterOn.in(d.row.words) {
			f.at(d.row)
			return
		}
		if on != d.row && !kettle.in(on.all()) {
			if there := d.late - on.begin; there < f.limit("least") {
				f.tell(saw{rows: []*row{d.row, on}, minutes: f.limit("least") - there})
				return
			}
		}
	}
}

// longestBoil is the minutes after which a pan of water that was put on is taken
// to have been used for something else.
const longestBoil = 60

// inLiquid says that the dish has a soup, stock or sauce on the hob by then, in
// which the food is cooked.
func (v *view) inLiquid(d *deed) bool {
	if slices.Contains(d.words, "water") || d.Verb == "boil" {
		return false
	}
	return slices.ContainsFunc(v.deeds[:d.place], func(o *deed) bool {
		return o.row.samely(d.row) && o.Kind == act.Hob && d.early-o.early <= 40 && liquids.in(o.row.words)
	})
}

var liquids = lex("stock, broth, soup, sauce, tomatoes, passata, simmer*")

var (
	boiling = lex("in, boil*, cook*, add, simmer*, drop, poach*, blanch*, put, place")
	waterOn = lex("pan of water, water on, boil water, boil the water, boil a pan, water to boil, water to the boil, water on to boil, large pan of, water boiling, saucepan of water, pot of water, bring water, bring a pan, bring a large pan, put water, pan of salted water, salted water on, fill pan, fill a pan, water in a pan")
	kettle  = lex("kettle")
	sauced  = lex("sauce, bake, sheets, toss*, drain*, mix")
)
