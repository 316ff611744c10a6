package match

import "plait.example/internal/act"

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
		return wrapFits(p, s)
	case looks(p.kind):
		if s.serve || s.ends != act.PutIn && s.ends != act.Hob && s.ends != act.Grill && s.ends != act.Microwave && !s.kinds[act.Hob] && !s.kinds[act.Grill] {
			return -needed
		}
		if s.core {
			return forKind
		}
		return forAlike
	case p.kind == act.Reheat && s.wait != nil && s.wait.Least >= 10:
		return -againstKind
	case p.kind == act.Other && s.kinds[act.Other] && s.words[p.verb] < 1:
		return 0
	case p.kind == act.Mix && s.kinds[act.Mix] && !p.made && !plainVerbs[p.verb] && s.words[p.verb] < 1:
		return forKind / 2
	case s.kinds[p.kind]:
		return forKind
	case p.kind == act.TakeOut && s.ends == act.PutIn, p.kind == act.FromCold && (s.ends == act.Chill || s.ends == act.Freeze):
		return forKind
	case p.kind == act.Cut && p.verb != "" && makers[p.act.Verb], p.kind == act.Hob && p.act.Verb == "cook" && s.kinds[act.Cut]:
		return -againstKind // "prepare the potatoes" cuts, "cook the potatoes" does not
	case p.made, p.act.Verb == "slice" && s.serve && s.words[p.verb] == 1:
		return forAlike
	}
	if p.kind == act.Other && handling[p.act.Verb] && s.words[p.verb] < 1 {
		return -2 * againstKind
	}
	if p.kind == act.Cut && (!s.kinds[act.Shape] || preparing[p.act.Verb]) && !s.serve {
		return -2 * againstKind
	}
	if p.kind == act.Hob && p.act.Least > 0 && s.ends == "" && !s.kinds[act.Hob] {
		return 0 // minutes over the heat are no mixing
	}
	for _, a := range alike[p.kind] {
		if s.kinds[a] {
			return forAlike
		}
	}
	return -againstKind
}

// handling are verbs of small work on food that a step must say itself.
var handling = map[string]bool{"rins": true, "wash": true, "dri": true, "drain": true, "defrost": true, "thaw": true, "open": true}

// looks says whether a kind looks at what is there and does no step of its own.
func looks(kind act.Kind) bool { return kind == act.Test || kind == act.Probe }

// wrapFits is the kind's part for wrapping and covering, which go with the wait that follows.
func wrapFits(p *piece, s *stepWords) float64 {
	switch {
	case s.ends == act.Hob && (p.own["cloth"] || p.own["towel"] || p.own["film"] || p.own["clingfilm"] || p.own["cling"] || p.own["damp"]):
		return -needed // not over the heat
	case s.words["wrap"] == 1 || s.words["cover"] == 1:
		return forKind
	case s.ends == act.Chill || s.ends == act.Rest || s.ends == act.Prove || s.ends == act.Freeze || s.ends == act.Marinate:
		return forKind
	}
	return -againstKind
}
