package match

import (
	"math"
	"slices"

	"plait.example/internal/act"
)

// What counts for a piece standing for a step. Set by trial on the plans in testdata.
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
	switch {
	case p.fixed && k.steps[p.step].id == s.id:
		return certain
	case p.kind == act.TurnOven && s.ends == act.PutIn && !s.kinds[act.TurnOven] && figuresFit(p, s) >= forMinutes+forCelsius:
		return forWait // "turn the oven down to 150 for 45 minutes"
	case p.fixed, k.never(p, s):
		return -needed
	}
	score := k.wordsFit(p, s) + k.kindFits(p, s) + figuresFit(p, s) - needed
	if slices.Contains(p.strange, s.dish) {
		score -= forStranger
	}
	if p.made && s.component != "" && k.sayAll(p, s.component) {
		score += forComponent
	}
	if s.words[p.verb] == 1 && !plainVerbs[p.verb] {
		score += forVerb
	}
	if s.alone && p.kind == s.ends {
		score += forOnly
	}
	if s.serve && p.kind == act.Serve {
		return max(score, forServing) // "present on a white plate"
	}
	return score
}

// never says whether a piece cannot stand for a step, whatever its words.
func (k *known) never(p *piece, s *stepWords) bool {
	switch {
	case p.chore && !s.kinds[p.kind]:
		return true
	case s.serve && (p.kind == act.Other && p.verb == "" || p.kind == act.Plate && warmsPlates(p)):
		return true // "curry done", "warm the plates"
	case p.kind == act.Grill && p.things == 0 && p.act.Least == 0 && len(p.act.Objects) == 0:
		return true // the grill is heated
	case p.verb == "turnoff" || p.act.Verb == "turn" && p.kind == act.Other && p.off:
		return true
	case s.setUp && p.kind != act.SetUp && p.kind != act.Ready && p.made:
		return true
	case s.serve && p.kind == act.Cut && preparing[p.act.Verb] && !p.all["serv"] && !p.all["plate"]:
		return true // "grate the parmesan" for the top
	}
	return waits[p.kind] && !k.waitsSo(p, s)
}

// preparing are verbs of cutting that make food ready for later, and serve none.
var preparing = map[string]bool{"grate": true, "peel": true, "chop": true, "tear": true, "dice": true, "shred": true, "zest": true, "crush": true, "core": true, "trim": true}

// wordsFit is the part for the words: how many of the piece's the step has, and
// how many of the step's the piece has.
func (k *known) wordsFit(p *piece, s *stepWords) (score float64) {
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
	if waits[p.kind] && p.speaks[s.dish] > 0 {
		shared = max(shared, p.total*min(wholeDish, wholeDish*p.speaks[s.dish]))
	}
	if p.total > 0 {
		score += forWords * min(1, shared/p.total)
	}
	if p.things == 0 && !(p.kind == act.FromCold && len(p.act.Objects) > 0) && (waits[p.kind] || begins[p.kind] && begins[s.ends]) {
		score = max(score, forWords*bareLoad)
	}
	if s.total > 0 {
		score += forStep * math.Sqrt(min(1, own/s.total))
	}
	if !s.serve && p.things > 0 && s.things > 0 && !(waits[p.kind] && p.speaks[s.dish] > 0) && !sharesThing(k, p, s) {
		score -= forOther
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
		return s.ends == act.PutIn || s.kinds[act.TakeOut] && saysAny(p, s) && (s.oven || p.verb == "lift")
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
func (k *known) sayAll(p *piece, component string) bool {
	for stem := range k.stemsOf(component) {
		if !slices.ContainsFunc(p.words, func(w weighted) bool { return w.stem == stem }) {
			return false
		}
	}
	return true
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
