package check

import (
	"regexp"
	"slices"
	"strconv"

	"plait.example/internal/act"
	"plait.example/internal/practical"
)

// mended is the acts of a row with what its short words leave unsaid: "fish in
// oven 180 for 20 mins" puts in, "oven 190C" heats, "press in pots, fridge 15
// mins" chills, "rice in, 12 mins" is on the hob.
func mended(text string, acts []act.Act) []act.Act {
	acts = slices.Clone(acts)
	words := wordsOf(text)
	for i := range acts {
		mend(&acts[i], words)
	}
	if intoOven.in(words) {
		bakedCrumble(acts)
	}
	if heats := act.Heats(text); celsiusOf(heats) > 0 && !slices.ContainsFunc(acts, func(a act.Act) bool { return len(a.Heats) > 0 || a.Kind == act.PutIn || a.Kind == act.TakeOut }) {
		acts = append(acts, heated(text, words, heats))
	}
	if cuts := cubed.find(words); cuts >= 0 && !slices.ContainsFunc(acts, func(a act.Act) bool { return a.Kind == act.Cut }) {
		acts = append(acts, act.Act{Kind: act.Cut, Start: len(text), End: len(text), Verb: words[cuts]})
	}
	if n := len(acts); n > 0 && fridgeNoun.in(words) && handsKind(acts[n-1].Kind) && acts[n-1].Least >= 10 {
		last := acts[n-1]
		acts[n-1].Least, acts[n-1].Most = 0, 0
		acts = append(acts, act.Act{Kind: act.Chill, Start: last.End, End: last.End, Place: practical.AtFridge, Least: last.Least, Most: last.Most, Objects: last.Objects})
	}
	return acts
}

// mend puts right one act whose kind its few words do not give.
func mend(a *act.Act, words []string) {
	switch {
	case a.Kind == act.Other && len(a.Heats) > 0 && (turnedSaid.in(words) || a.Least == 0 && a.Place != practical.AtOven):
		a.Kind = act.TurnOven
	case (a.Kind == act.Other || a.Kind == act.Hob && (a.Verb == "putin" || a.Verb == "put")) && inBoiling.in(words):
		a.Kind, a.Place, a.Verb = act.Hob, practical.AtHob, "cook"
	case (a.Kind == act.Other || a.Kind == act.Timer) && (a.Place == practical.AtOven || len(a.Heats) > 0) && (len(a.Heats) > 0 || a.Least > 0):
		a.Kind = act.PutIn
	case a.Kind == act.PutIn && len(a.Heats) == 0 && a.Least == 0 && roasted.in(words) && !roasts.in(words):
		a.Kind = act.Other // the roasted carrots
	case a.Kind == act.PutIn && len(a.Heats) == 0 && a.Least == 0 && theBake.in(words):
		a.Kind = act.Other
	case a.Kind == act.PutIn && !ovenMeant(a, words):
		a.Kind = act.Fill
		if a.Least > 0 {
			a.Kind, a.Place, a.Verb = act.Hob, practical.AtHob, "cook"
		}
	}
}

// bakedCrumble gives the oven what a food that is also a verb has taken from it:
// "put crumble in oven gas 6 for 30 mins".
func bakedCrumble(acts []act.Act) {
	in := slices.IndexFunc(acts, func(a act.Act) bool { return a.Kind == act.PutIn })
	for i := range acts {
		a := &acts[i]
		if !handsKind(a.Kind) || a.Least < 8 && len(a.Heats) == 0 {
			continue
		}
		if in < 0 {
			a.Kind, in = act.PutIn, i
			continue
		}
		to := &acts[in]
		if to.Least == 0 {
			to.Least, to.Most = a.Least, a.Most
		}
		to.Heats = append(slices.Clone(to.Heats), a.Heats...)
		a.Kind, a.Least, a.Most, a.Heats = act.Other, 0, 0, nil
	}
}

// heated is the act of a row that gives a heat and no verb for it: "dough balls
// in, gas 6, 15 min", "oven 190C".
func heated(text string, words []string, heats []act.Heat) act.Act {
	a := act.Act{Kind: act.HeatOven, Start: 0, End: len(text), Heats: heats, Place: practical.AtOven}
	if slices.Contains(words, "in") {
		a.Kind, a.Objects = act.PutIn, words[:slices.Index(words, "in")]
		if m := minutesSaid.FindStringSubmatch(text); m != nil {
			a.Least, _ = strconv.Atoi(m[1])
			a.Most = a.Least
		}
	} else if turnedSaid.in(words) {
		a.Kind = act.TurnOven
	}
	return a
}

var (
	theBake     = lex("while the bake, the bake is, the roast is, while it bakes, while they bake, while the")
	intoOven    = lex("in oven, in the oven, into oven, into the oven, in hot oven, in to the oven")
	inBoiling   = lex("in boiling water, into boiling water, in the boiling water, to boiling water, into the boiling water, to the boiling water, in boiling salted water")
	minutesSaid = regexp.MustCompile(`(\d{1,3}) ?-?[mM]in`)
	cubed       = lex("cube it, cube them, dice it, slice it, chop it, cut it, cut them, slice them, chop them, dice them, slice up")
	fridgeNoun  = lex("fridge, refrigerator, chiller")
	ovenish     = lex("bake, bakes, baking, roast, roasting, oven, tray, shelf, into the oven")
	roasted     = lex("roasted, baked")
	roasts      = lex("roast, bake, put, into")
	bakeable    = lex("cake*, bread, loaf, loaves, rolls, pie, pies, tart*, quiche, flan, biscuit*, cookie*, scone*, muffin*, cupcake*, lasagne, buns, choux, eclairs, profiteroles, focaccia, samosas, crumble, pizza*, meringue*, pastries, roulade, sponge*, brownies, casserole, parcels, wellington, souffle*, dough balls, potato wedges, wedges")
)

// ovenMeant says that a put-in is into the oven: the row says so, a heat stands
// with it, or it is something that bakes.
func ovenMeant(a *act.Act, words []string) bool {
	if len(a.Heats) > 0 || ovenish.in(words) || bakeable.in(words) {
		return true
	}
	return a.Verb != "" && !slices.Contains([]string{"putin", "put", "pop", "place", "add", "go", "goe"}, a.Verb)
}

func handsKind(k act.Kind) bool {
	switch k {
	case act.Mix, act.Shape, act.Fill, act.Cut, act.Decorate:
		return true
	}
	return false
}

// detailed takes the minutes of a whole from a "make the pastry" whose row goes
// on to say its parts.
func (r *row) detailed() {
	r.clearedOnce()
	r.portioned()
	parts := 0
	for _, d := range r.deeds {
		if d.Kind == act.Mix && len(d.Objects) > 0 {
			parts++
		}
	}
	for _, d := range r.deeds {
		if d.Kind == act.Mix && parts > 1 && making.in(d.words) && !d.job.watch {
			d.job.Low, d.job.Likely, d.job.High = 1, 3, 8
		}
	}
}

// portioned counts as little the cutting of what is served in the same row.
func (r *row) portioned() {
	for i, d := range r.deeds {
		if d.Kind == act.Cut && i+1 < len(r.deeds) && r.deeds[i+1].Kind == act.Serve && !rawMeat.in(r.words) {
			d.job.Low, d.job.Likely, d.job.High = 1, 3, 6
		}
	}
}

// clearedOnce counts the clearing of a row once, whatever it lists: "wash up,
// sink, hob, floor".
func (r *row) clearedOnce() {
	cleared := false
	for _, d := range r.deeds {
		switch d.Kind {
		case act.WashUp, act.CleanDown, act.FinalClean:
			if cleared {
				d.job.Low, d.job.Likely, d.job.High = 0, 2, 5
			}
			cleared = true
		}
	}
}

var making = lex("make, making, made, makes")
