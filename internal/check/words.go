package check

import (
	"fmt"
	"slices"
	"strings"

	"plait.example/internal/act"
	"plait.example/internal/written"
)

// The words: can a stranger cook from them?
var wordTests = map[string]test{
	"no-quality-checks":     noQualityChecks,
	"no-special-points":     noSpecialPoints,
	"vague-row":             vagueRow,
	"serving-not-described": servingNotDescribed,
	"recipe-pasted":         recipePasted,
	"every-step-the-same":   everyStepTheSame,
	"no-key-terms":          noKeyTerms,
}

// doneness are words by which a cook knows that food is right.
var doneness = lex("golden, brown, browned, spring* back, springs, springy, al dente, coat* the spoon, coats the back, doubled, double, double in size, firm, wobble*, skewer clean, skewer, clean skewer, juices clear, run clear, 75c, 75, crisp, crispy, stiff peak*, soft peak*, reduced by half, by half, until thick, thick, thickened, tender, soft, smooth, translucent, transparent, pale, risen, set, glossy, light and fluffy, fluffy, breadcrumb*, ribbon, trail, cooked through, hollow, no lumps, hot through, bubbling, opaque, flake*, fudgy, elastic, probe, colour, even, evenly, taste, season, check, checked, window, hissing, sizzle*, crumbs")

func noQualityChecks(v *view, f *asker) {
	for _, r := range v.rows {
		if r.noted(act.Test, act.Probe) || doneness.in(r.all()) {
			return
		}
	}
	f.at()
}

// special are words of hygiene, safety and quality, where a plan has no column for them.
var special = lex("careful*, safe*, hygien*, board, claw, bridge, gloves, probe, 75c, separate, check*, taste, allerg*, sanitis*, spray, risk, quality, raw, contamina*, test*, until golden, golden, springs, al dente, skewer comes, doubled, juices, stiff peaks, soft peaks, reduced by half, coats")

// noSpecialPoints tells an hour in which the plan names nothing special.
func noSpecialPoints(v *view, f *asker) {
	from := v.inTime[0].begin
	if v.clocked {
		from = max(from, v.start)
	}
	_, end := v.span()
	for _, r := range v.inTime {
		if r.begin < from {
			continue
		}
		if r.begin-from > f.limit("longest") {
			f.tell(saw{minutes: r.begin - from, say: map[string]string{"from": v.clock(from), "until": v.clock(r.begin)}})
			return
		}
		if len(r.points) > 0 || special.in(r.words) || safetySaid.in(r.words) {
			from = r.begin
		}
	}
	if end-from > f.limit("longest") {
		f.tell(saw{minutes: end - from, say: map[string]string{"from": v.clock(from), "until": v.clock(end)}})
	}
}

var safetySaid = lex("careful*, safe*, hygien*, probe, 75c, board, contamina*, oven gloves, claw, bridge")

// vagueVerbs say nothing of what the hands do.
var vagueVerbs = lex("assemble, make, do, prepare, cook, finish, sort, carry, continue, complete")

// vagueRow tells rows that a stranger could not follow.
func vagueRow(v *view, f *asker) {
	var rows []*row
	for _, r := range v.rows {
		if r.vague(f.limit("words")) {
			rows = append(rows, r)
		}
	}
	if len(rows) > f.limit("most") {
		f.at(rows...)
		return
	}
	for _, r := range rows {
		f.at(r)
	}
}

// vague says that a row has few words and none that says what the hands do.
func (r *row) vague(few int) bool {
	n := 0
	for _, w := range r.words {
		if !littleWord.in([]string{w}) {
			n++
		}
	}
	if n == 0 || n >= few || outsideCooking.in(r.words) || len(r.words) > few+2 {
		return false
	}
	for _, d := range r.deeds {
		switch d.Kind {
		case act.Other:
			if smallWork.in([]string{d.Verb}) && (len(d.Objects) > 0 || len(r.deeds) > 1) {
				return false // "beans drained"
			}
		case act.Mix, act.Hob, act.Test, act.Fill:
			if !vagueVerbs.in(d.words) && !doneSaid.in(d.words) {
				return false
			}
		default:
			return false
		}
	}
	return true
}

// smallWork are stems of verbs that say what the hands do.
var smallWork = lex("drain, strain, rins*, sieve, cover, prick, pierc*, skim, flip, baste, defrost, thaw")

var (
	littleWord     = lex("the, a, an, and, of, my, for, to")
	outsideCooking = lex("finish, end, stop, start, break, rest, wait, evaluat*, photo*, taste, tasting, hand, lunch, register, hygiene, apron, hair, hands, extra, spare, contingency, catch, time, tidy*, clean*, wash*, check*, oven, timer, grill, kettle, water, equipment, ingredients")
)

// describing are words of how a dish comes to the table.
var describing = lex("plate*, bowl*, garnish*, dish, board, slice*, wedge*, portion*, dust*, drizzle*, sprinkle*, decorat*, stand, glass*, ramekin*, basket, platter, topped, top, side, with, on, in, scatter*, arrange*, jug, napkin, sprig*, pile, stack, fan")

// servingNotDescribed tells dishes of which no row says how they are served.
func servingNotDescribed(v *view, f *asker) {
	var names []string
	var rows []*row
	dish := ""
	for _, letter := range v.dishes {
		list := v.rowsOfDish(letter)
		if len(list) == 0 || !v.recipes && len(list) < 3 && len(v.rows) >= 10 && len(v.dish(letter)) < 2 {
			continue // a few rows under a letter: a part of another dish
		}
		served := slices.ContainsFunc(list, func(r *row) bool {
			return r.noted(act.Serve, act.Plate) && (len(r.Letters) == 1 || describing.in(r.words)) && len(r.words) > 1 || r.has(act.Decorate) && r.place > list[len(list)/2].place && garnishing.in(r.words) ||
				r.place >= list[len(list)*3/4].place && platesSaid.in(r.words) && !r.has(act.Chill, act.Cool, act.Cut)
		}) || v.servedByName(letter)
		if served {
			continue
		}
		names = append(names, v.dish(letter))
		if dish == "" {
			dish = letter
			rows = append(rows, list[len(list)-1])
		} else {
			rows = append(rows, list[len(list)-1])
			dish = ""
		}
	}
	if len(names) == 1 {
		f.tell(saw{rows: rows, dish: dish, say: map[string]string{"what": names[0]}})
	} else if len(names) > 1 {
		f.tell(saw{rows: rows, say: map[string]string{"what": list(names)}})
	}
}

var platesSaid = lex("saucer*, put out cold, plate*, bowl, serve*, serving, platter, glasses, dish up")

// servedByName says that a row for all dishes serves this one by its name.
func (v *view) servedByName(letter string) bool {
	name := wordsOf(v.dish(letter))
	for _, r := range v.rows {
		if !r.has(act.Serve, act.Plate) {
			continue
		}
		other := []string(nil)
		if len(r.Letters) == 1 && !r.about(letter) {
			other = wordsOf(v.dish(r.only()))
		}
		for _, w := range name {
			if len(w) > 3 && slices.Contains(r.words, w) && !slices.Contains(other, w) {
				return true
			}
		}
		if other == nil && mentions(r.words, v.shaped(letter)) {
			return true
		}
	}
	return false
}

// shaped are the foods, by stem, that a dish shapes, bakes and takes out: what
// comes to the table under its own name.
func (v *view) shaped(letter string) (list []string) {
	for _, r := range v.rowsOfDish(letter) {
		for _, d := range r.deeds {
			switch d.Kind {
			case act.Shape, act.PutIn, act.TakeOut, act.Hob:
				for _, o := range d.Objects {
					if w := []string{o}; len(o) > 3 && !vessel.in(w) && !everywhere.in(w) && !rawMeat.in(w) && !plainFood.in(w) {
						list = append(list, o)
					}
				}
			}
		}
	}
	return list
}

// recipePasted tells rows that are a recipe's text and no plan.
func recipePasted(v *view, f *asker) {
	var long, run []*row
	for _, r := range v.rows {
		amounts := amountsIn(r.words)
		if len(r.words) >= f.limit("words") && amounts > 0 || v.copied(r, f.limit("copied")) {
			long = append(long, r)
		}
		switch {
		case len(r.words) >= f.limit("words") && amounts >= f.limit("amounts"):
			run = append(run, r)
		case len(run) < f.limit("rows"):
			run = nil
		}
	}
	switch {
	case len(long) > f.limit("rows"):
		f.at(long...)
	case len(run) >= f.limit("rows"):
		f.at(run...)
	}
}

// amountsIn counts amounts such as 150 g.
func amountsIn(words []string) (n int) {
	for i, w := range words {
		digits := strings.TrimRight(w, "gmlktbsp")
		if digits == "" || strings.Trim(digits, "0123456789") != "" {
			continue
		}
		if digits != w && !strings.HasSuffix(w, "p") || i+1 < len(words) && amountUnit.in(words[i+1:i+2]) {
			n++
		}
	}
	return n
}

var amountUnit = lex("g, kg, ml, l, tbsp, tsp, tablespoon*, teaspoon*, grams, gram, oz, litre*")

// copied says that a row is the text of a step, word for word, and long.
func (v *view) copied(r *row, least int) bool {
	if len(r.words) < least {
		return false
	}
	text := strings.Join(r.words, " ")
	for _, s := range r.Steps {
		if seen := v.steps[s.ID]; seen != nil {
			step := strings.Join(wordsOf(seen.step.Text), " ")
			if len(step) > 0 && (strings.Contains(text, step) || strings.Contains(step, text)) && len(wordsOf(seen.step.Text)) >= least {
				return true
			}
		}
	}
	return false
}

// everyStepTheSame tells a plan whose rows all take the same few minutes.
func everyStepTheSame(v *view, f *asker) {
	counts := map[int]int{}
	n := 0
	for i, r := range v.inTime[:max(0, len(v.inTime)-1)] {
		next := v.inTime[i+1]
		if !r.timed || !next.timed || r.backwards || next.backwards || r.Clock == written.Carried || v.clocked && r.begin < v.start {
			continue
		}
		counts[next.begin-r.begin]++
		n++
	}
	if n < f.limit("rows") {
		return
	}
	for _, minutes := range []int{5, 10, 15} {
		if counts[minutes]*100 >= n*f.limit("share") {
			f.tell(saw{minutes: minutes, say: map[string]string{"number": fmt.Sprint(counts[minutes]), "each": fmt.Sprint(minutes)}})
		}
	}
}

// terms are words of the trade.
var terms = lex("simmer*, fold*, knead*, saut*, rub*, cream*, whisk*, blind, blanch*, prove*, proving, knock*, roux, sweat*, reduc*, marinat*, garnish*, glaz*, dic*, julienne, puree*, season*, fry*, bak*, grat*, roast*, grill*, poach*, steam*, boil*, mix*, chop*, peel*, slic*, roll*, cut*, beat*, melt*, pip*, brais*, sear*, brown*, caramelis*, deglaz*, coat*, pane, laminat*, line*, dust*, bind*, shape*, toss*, drain*, sieve*, sift*, stir*, chill*, rest*, cool*")

// noKeyTerms tells a plan without the words of the trade.
func noKeyTerms(v *view, f *asker) {
	n := 0
	for _, r := range v.rows {
		if terms.in(r.words) {
			n++
		}
	}
	if n < f.limit("rows") && len(v.rows) >= 2*f.limit("rows") {
		f.at()
	}
}
