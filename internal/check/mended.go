package check

import (
	"slices"

	"plait.example/internal/act"
	"plait.example/internal/practical"
)

// mended is the acts of a row with what its short words leave unsaid: "fish in
// oven 180 for 20 mins" puts in, "oven 190C" heats, "press in pots, fridge 15
// mins" chills.
func mended(text string, acts []act.Act) []act.Act {
	acts = slices.Clone(acts)
	words := wordsOf(text)
	for i := range acts {
		a := &acts[i]
		switch {
		case (a.Kind == act.Other || a.Kind == act.Timer) && a.Place == practical.AtOven && (len(a.Heats) > 0 || a.Least > 0):
			a.Kind = act.PutIn
		case a.Kind == act.PutIn && !ovenMeant(a, words):
			a.Kind = act.Fill
		}
	}
	if len(acts) == 0 && len(words) <= 6 && ovenNoun.in(words) && celsiusOf(act.Heats(text)) > 0 {
		return []act.Act{{Kind: act.HeatOven, End: len(text), Heats: act.Heats(text)}}
	}
	if n := len(acts); n > 0 && fridgeNoun.in(words) && handsKind(acts[n-1].Kind) && acts[n-1].Least >= 10 {
		last := acts[n-1]
		acts[n-1].Least, acts[n-1].Most = 0, 0
		acts = append(acts, act.Act{Kind: act.Chill, Start: last.End, End: last.End, Place: practical.AtFridge, Least: last.Least, Most: last.Most, Objects: last.Objects})
	}
	return acts
}

var (
	ovenNoun   = lex("oven, oven*")
	fridgeNoun = lex("fridge, refrigerator, chiller")
	bakes      = lex("bak*, roast*, oven, bake")
)

// ovenMeant says that a put-in is into the oven: the row says so, or a heat or minutes stand with it.
func ovenMeant(a *act.Act, words []string) bool {
	if a.Verb == "" && len(words) > 5 && len(a.Heats) == 0 && a.Least == 0 {
		return bakes.in(words)
	}
	return len(a.Heats) > 0 || a.Least > 0 || bakes.in(words) || !slices.Contains([]string{"putin", "put", "pop", "place", "add"}, a.Verb)
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
	parts := 0
	for _, d := range r.deeds {
		if d.Kind == act.Mix {
			parts++
		}
	}
	for _, d := range r.deeds {
		if d.Kind == act.Mix && parts > 1 && making.in(d.words) {
			d.job.Low, d.job.Likely, d.job.High = 1, 3, 8
		}
	}
}

var making = lex("make, making, made, makes")
