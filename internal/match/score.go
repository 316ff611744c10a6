package match

import (
	"math"
	"slices"

	"plait.example/internal/act"
)

// What counts for a piece standing for a step. Set by trial on the tuning half
// of the plans in testdata.
const (
	forWords     = 1.7
	forStep      = 0.5 // of the step's own words that the piece says
	forKind      = 0.7
	forAlike     = 0.3
	forOther     = 0.4 // every thing named is another than the step's
	forWait      = 0.4
	forServing   = 0.3
	forOnly      = 0.3 // the only wait of its kind in the dish
	forVerb      = 0.2
	forComponent = 0.3
	forStranger  = 0.6 // a food of another dish is named, which this dish has not
	forMinutes   = 0.25
	forCelsius   = 0.15
	againstKind  = 0.45
	certain      = 3   // what the teacher says
	needed       = 1.0 // below it, no step is a better reading
)

// fits says how well a piece stands for a step: above 0, better than for none.
func (k *known) fits(p *piece, s *stepWords) float64 {
	if p.fixed {
		if k.steps[p.step].id == s.id {
			return certain
		}
		return -needed
	}
	if p.kind == act.TurnOven && s.ends == act.PutIn && !s.kinds[act.TurnOven] && figuresFit(p, s) >= forMinutes+forCelsius {
		return forWait // "turn the oven down to 150 for 45 minutes"
	}
	if p.chore && !s.kinds[p.kind] {
		return -needed
	}
	shared, own := 0.0, 0.0
	for _, w := range p.words {
		if in := s.words[w.stem]; in > 0 {
			shared += w.weight * in
			if in == 1 {
				own += w.weight
			}
		}
	}
	for _, stem := range p.stands {
		if s.words[stem] == 1 {
			shared += ofStanding * k.rare[stem]
			own += ofStanding * k.rare[stem]
		}
	}
	if s.serve && (p.kind == act.Other && p.verb == "" || p.kind == act.Plate && warmsPlates(p)) {
		return -needed // "curry done", "warm the plates"
	}
	if s.setUp && p.kind != act.SetUp && p.kind != act.Ready && p.made || waits[p.kind] && !k.waitsSo(p, s) {
		return -needed
	}
	score := -needed
	if waits[p.kind] && p.speaks[s.dish] > 0 {
		shared = max(shared, p.total*min(wholeDish, wholeDish*p.speaks[s.dish]))
	}
	if waits[p.kind] && p.things == 0 {
		shared = max(shared, p.total*bareLoad)
	}
	if p.total > 0 {
		score += forWords * min(1, shared/p.total)
	}
	if s.total > 0 {
		score += forStep * math.Sqrt(min(1, own/s.total))
	}
	if !s.serve && p.things > 0 && s.things > 0 && !sharesThing(k, p, s) {
		score -= forOther
	}
	for _, d := range p.strange {
		if d != s.dish {
			continue
		}
		score -= forStranger
		break
	}
	if p.made && s.component != "" && sayAll(p, s.component) {
		score += forComponent
	}
	if s.words[p.verb] == 1 && !plainVerbs[p.verb] {
		score += forVerb
	}
	if s.alone && p.kind == s.ends {
		score += forOnly
	}
	score += k.kindFits(p, s) + figuresFit(p, s)
	if s.serve && p.kind == act.Serve {
		return max(score, forServing) // "present on a white plate"
	}
	return score
}

// waits are kinds that a step has or has not: they are never another's.
var waits = map[act.Kind]bool{act.PutIn: true, act.TakeOut: true, act.FromCold: true, act.Freeze: true, act.Chill: true, act.Grill: true}

// How much the name of the dish alone says of its loads: "quiche out".
const (
	wholeDish = 0.5
	bareLoad  = 0.3 // of "take out of the oven", with no food named
)

// saysAny says whether a piece says a word of the step's own.
func saysAny(p *piece, s *stepWords) bool {
	return slices.ContainsFunc(p.words, func(w weighted) bool { return s.words[w.stem] == 1 && !plainVerbs[w.stem] && w.stem != "take" })
}

// namedElsewhere says whether another step of the dish works on what the piece names.
func (k *known) namedElsewhere(p *piece, s *stepWords) bool {
	dw := k.dishes[s.dish]
	for j := dw.from; j < dw.to-1; j++ {
		if t := &k.steps[j]; t.id != s.id && slices.ContainsFunc(p.words, func(w weighted) bool { return t.words[w.stem] == 1 && !k.verbs[w.stem] }) {
			return true
		}
	}
	return false
}

// waitsSo says whether a step has the wait that a piece begins or ends.
func (k *known) waitsSo(p *piece, s *stepWords) bool {
	switch p.kind {
	case act.TakeOut:
		return s.ends == act.PutIn || s.kinds[act.TakeOut] && saysAny(p, s)
	case act.FromCold:
		if p.things > 0 && !saysAny(p, s) && (p.speaks[s.dish] == 0 || k.namedElsewhere(p, s)) {
			return false
		}
		return s.ends == act.Chill || s.ends == act.Freeze || s.kinds[act.FromCold]
	case act.Chill:
		return s.kinds[act.Chill] || s.ends != "" && s.ends != act.PutIn && s.ends != act.Hob && s.ends != act.Grill
	case act.PutIn:
		return s.kinds[act.PutIn] || s.kinds[act.Grill]
	case act.Grill:
		return s.kinds[act.Grill] || s.kinds[act.Hob]
	}
	return s.kinds[p.kind] || s.kinds[act.Chill]
}

// warmsPlates says whether the plates are made ready, which is not yet serving.
func warmsPlates(p *piece) bool {
	return p.verb == "" && len(p.own) <= 1 || p.verb == "heat" || p.verb == "warm" || p.own["warm"] || p.own["oven"] || p.own["hot"] && len(p.own) <= 2
}

// sharesThing says whether a piece names any thing that has to do with the step.
func sharesThing(k *known, p *piece, s *stepWords) bool {
	return slices.ContainsFunc(p.words, func(w weighted) bool { return s.words[w.stem] > 0 && !k.verbs[w.stem] }) ||
		slices.ContainsFunc(p.stands, func(stem string) bool { return s.words[stem] > 0 })
}

// sayAll says whether a piece says every word of a component's name.
func sayAll(p *piece, component string) bool {
	for stem := range stemsOf(component) {
		if !slices.ContainsFunc(p.words, func(w weighted) bool { return w.stem == stem }) {
			return false
		}
	}
	return true
}

// alike are kinds that one writer takes for the other.
var alike = map[act.Kind][]act.Kind{
	act.Mix:      {act.Fill, act.Hob, act.Shape, act.Taste, act.Decorate},
	act.Fill:     {act.Mix, act.Shape, act.Decorate},
	act.Shape:    {act.Fill, act.Cut, act.Mix},
	act.Decorate: {act.Fill, act.Plate, act.Mix, act.Serve},
	act.Hob:      {act.Mix, act.BoilWater, act.Reheat, act.Grill},
	act.Cool:     {act.Rest, act.Chill, act.TakeOut, act.Other},
	act.Rest:     {act.Cool, act.Chill, act.Prove, act.Soak, act.Marinate},
	act.Chill:    {act.Cool, act.Rest, act.Freeze},
	act.Prove:    {act.Rest},
	act.Cut:      {act.Shape},
	act.Plate:    {act.Serve, act.Decorate},
	act.Serve:    {act.Plate, act.Decorate},
	act.Test:     {act.Probe},
	act.Probe:    {act.Test},
	act.Other:    {act.Cool, act.TakeOut},
	act.Taste:    {act.Mix},
	act.Marinate: {act.Mix, act.Rest, act.Chill},
	act.Soak:     {act.Rest, act.Mix},
	act.Reheat:   {act.Hob},
	act.Grill:    {act.Hob, act.PutIn},
	act.Ready:    {act.Shape},
}

func (k *known) kindFits(p *piece, s *stepWords) float64 {
	switch {
	case p.kind == "":
		return forAlike
	case p.verb == "wrap" || p.verb == "cover":
		return wrapFits(s)
	case looks(p.kind):
		if s.serve || s.ends != act.PutIn && s.ends != act.Hob && s.ends != act.Grill && s.ends != act.Microwave && !s.kinds[act.Hob] && !s.kinds[act.Grill] {
			return -needed
		}
		if s.core {
			return forKind
		}
		return forAlike
	case p.kind == act.Other && s.kinds[act.Other] && s.words[p.verb] < 1:
		return 0
	case p.kind == act.Mix && s.kinds[act.Mix] && !p.made && !plainVerbs[p.verb] && s.words[p.verb] < 1:
		return forKind / 2
	case s.kinds[p.kind]:
		return forKind
	case p.kind == act.TakeOut && s.ends == act.PutIn, p.kind == act.FromCold && (s.ends == act.Chill || s.ends == act.Freeze):
		return forKind
	case p.made:
		return forAlike
	}
	if p.kind == act.Cut && !s.kinds[act.Shape] && !s.serve {
		return -2 * againstKind
	}
	for _, a := range alike[p.kind] {
		if s.kinds[a] {
			return forAlike
		}
	}
	return -againstKind
}

// looks says whether a kind looks at what is there and does no step of its own.
func looks(kind act.Kind) bool { return kind == act.Test || kind == act.Probe }

// wrapFits is the kind's part for wrapping and covering, which go with the wait that follows.
func wrapFits(s *stepWords) float64 {
	switch {
	case s.words["wrap"] == 1 || s.words["cover"] == 1:
		return forKind
	case s.ends == act.Chill || s.ends == act.Rest || s.ends == act.Prove || s.ends == act.Freeze || s.ends == act.Marinate:
		return forKind
	}
	return -againstKind
}

// figuresFit looks at minutes and temperature.
func figuresFit(p *piece, s *stepWords) (score float64) {
	if p.act.Least > 0 && s.wait != nil && s.wait.Least > 0 {
		most := max(s.wait.Most, s.wait.Least)
		if p.act.Most >= s.wait.Least && p.act.Least <= most {
			score += forMinutes
		} else {
			score -= forMinutes / 2
		}
	}
	if s.celsius > 0 {
		for _, h := range p.act.Heats {
			if h.Celsius >= s.celsius-5 && h.Celsius <= s.celsius+5 {
				return score + forCelsius
			}
		}
	}
	return score
}
