package act

import (
	"slices"

	"plait.example/internal/practical"
)

// Read finds the acts that a row's words say, in the order of the text. Acts
// that are only spoken of ("while it bakes", "do not open the oven") are left
// out. A text that says none gives none; nothing fails.
func Read(text string) (acts []Act) { return Known(nil).Read(text) }

// Read is Read for a text in which some words are known to be right.
func (k Known) Read(text string) (acts []Act) {
	ts := tokenize(text, k)
	heats, minutes := heatsOf(text), minutesOf(ts)
	all := dropMovers(ts, verbsOf(ts))
	for k, f := range all {
		s := span{ts: ts, f: f, next: found{}}
		if k+1 < len(all) {
			s.next = all[k+1]
		}
		from, to := ts[f.from].start, len(text)
		if f.to < len(ts) {
			to = ts[f.to].start
		}
		if k == 0 {
			from = 0
		}
		for _, a := range s.acts() {
			a.Start, a.End, a.At = ts[f.from].start, ts[max(f.to-1, f.at)].end, ts[f.at].start
			a.Heats = heatsIn(heats, from, to)
			a.Least, a.Most = minutesIn(minutes, from, to)
			if a.Kind == Hob && inTurn[a.Verb] {
				a.Least, a.Most = sumOf(minutes, from, to)
			}
			if a.Implied {
				a.Heats, a.Least, a.Most = nil, 0, 0
			}
			if a.Implied && slices.ContainsFunc(acts, func(b Act) bool { return b.Kind == TakeOut }) {
				continue
			}
			carry(acts, &a, s)
			acts = merge(acts, a, f.purpose)
		}
	}
	return acts
}

// inTurn are verbs of the hob whose foods go in one after another, each with
// its minutes: "fry onion 5 min, garlic 1 min, chicken 6 min".
var inTurn = exactly("fri saut brown sear stirfri stirfry")

// dropMovers joins "put", "leave", "let", "start" with the verb they lead to: "leave to cool".
func dropMovers(ts []token, all []found) (kept []found) {
	for k := 0; k < len(all); k++ {
		f := all[k]
		if k+1 < len(all) && f.is("getready") && all[k+1].purpose && all[k+1].is("serve", "plate", "present", "plateup") {
			all[k+1] = found{verb: verb{name: "plateup", kind: Plate}, at: all[k+1].at, from: f.from, to: all[k+1].to}
			continue
		}
		if k+1 < len(all) && leads(ts, f, all[k+1]) {
			all[k+1].from = f.from
			continue
		}
		kept = append(kept, f)
	}
	return kept
}

var (
	movers = exactly("put place pop move get bring leave let allow keep start begin continue carry do go use ensure remember ask need return transfer set help finish-off stand putin puton store finish take work stay wait getready")
	softly = exactly("leave let allow start begin continue do use ensure remember ask bring keep get go carry help finish work stay wait")
)

// leads says whether verb f only leads to the verb after it.
func leads(ts []token, f, next found) bool {
	if !movers[f.name] {
		return false
	}
	between := ts[f.at+1 : next.at]
	if f.is("take", "get", "lift", "bring") && slices.ContainsFunc(between, func(t token) bool { return t.is("out") }) {
		return false
	}
	for _, t := range between {
		if joiners[t.text] || t.is(".", ";", "\n") || t.is(",") && !softly[f.name] {
			return false
		}
	}
	if f.is("keep") && !next.purpose && next.form != ing {
		return false
	}
	if next.is("washup") && softly[f.name] || next.is("serve") && f.is("get") {
		return true
	}
	if next.purpose && (softly[f.name] || placeIn(between) == "" || next.kind == placeKind[placeIn(between)]) {
		return true
	}
	return softly[f.name] && (next.form == ing || next.kind == Hob && f.is("bring") || f.is("let", "do", "have", "get", "leave", "allow") && next.at <= f.at+4)
}

var placeKind = map[practical.Place]Kind{
	practical.AtOven: PutIn, practical.AtFridge: Chill, practical.AtFreezer: Freeze, practical.AtWarm: Prove, practical.AtHob: Hob,
	practical.AtGrill: Grill, practical.AtMicrowave: Microwave, practical.AtSide: Cool,
}

// waitKinds are those that are said twice in one breath: "put in the oven and bake", "in the fridge to chill".
var waitKinds = map[Kind]bool{PutIn: true, Chill: true, Freeze: true, Prove: true, Cool: true, WashUp: true, Test: true, HeatOven: true, Serve: true, TakeOut: true, Probe: true, Marinate: true, OvenOff: true, Rest: true, BoilWater: true}

// carry settles what an act touches by the act before it in its row: "dice the
// chicken, mix with yogurt" is raw still, "slice the chicken and serve" is not.
func carry(acts []Act, a *Act, s span) {
	n := len(acts)
	if n == 0 {
		return
	}
	before := &acts[n-1]
	switch {
	case before.Food == practical.Raw && worked[a.Kind] && !s.direct():
		a.Food = practical.Raw
	case before.Kind == Hob && (a.Verb == "" || a.Verb == "put" || a.Verb == "putin" || a.Verb == "pop" || a.Verb == "chuck") && a.Least > 0 && len(a.Heats) == 0 && (a.Kind == Mix || a.Kind == Fill || a.Kind == PutIn):
		a.Kind, a.Place, a.HighRisk = Hob, practical.AtHob, s.highRisk(Hob) // "fry onion 5 min, then mince in 6 min"
	case before.Kind == Cut && before.Food == practical.Raw && (a.Kind == Serve || a.Kind == Plate):
		before.Food = practical.ReadyToEat
	}
}

var worked = map[Kind]bool{Mix: true, Fill: true, Shape: true, Cut: true, Marinate: true, Decorate: true}

// merge adds an act, or joins it to the one before when they are one act said
// twice, as when the second says what the first is for: "in the freezer to set".
func merge(acts []Act, a Act, purpose bool) []Act {
	if n := len(acts); n > 0 && acts[n-1].Kind == BoilWater && a.Kind == Hob && a.Verb == "boil" && len(a.Objects) == 0 {
		a.Kind = BoilWater
	}
	if n := len(acts); n > 0 && purpose && (a.Kind == Chill || a.Kind == Cool || a.Kind == Hob || a.Kind == PutIn) {
		if before := acts[n-1].Kind; before == Freeze || before == Chill || before == PutIn {
			a.Kind, a.Objects = before, nil
		}
	}
	if n := len(acts); n > 0 && acts[n-1].Kind == a.Kind && waitKinds[a.Kind] && (len(a.Objects) == 0 || len(acts[n-1].Objects) == 0 && a.Kind != TakeOut || slices.Equal(a.Objects, acts[n-1].Objects)) {
		b := &acts[n-1]
		b.End = a.End
		b.Heats = append(b.Heats, a.Heats...)
		if b.Least == 0 {
			b.Least, b.Most = a.Least, a.Most
		}
		if b.Place == "" {
			b.Place = a.Place
		}
		b.Implied = b.Implied && a.Implied
		b.HighRisk = b.HighRisk || a.HighRisk
		b.Objects = append(b.Objects, a.Objects...)
		return acts
	}
	return append(acts, a)
}
