package act

import (
	"slices"
	"strings"

	"plait.example/internal/practical"
)

// span is a verb with its words, of which the kind of act is decided.
type span struct {
	ts   []token
	f    found
	next found
}

// words are the tokens of the act: from the verb on, and before it those that
// belong to it; verbs joined by "and" share what follows: "peel and chop onions".
func (s span) words() []token {
	if shares[s.f.name] && s.next.at > 0 && s.f.form == s.next.form {
		between := s.ts[s.f.at+1 : s.next.at]
		if len(between) > 0 && !slices.ContainsFunc(between, func(t token) bool { return !t.is("and", "&", "+", ",", "then") && !adverbs[t.text] }) {
			return s.ts[s.f.from:s.next.to]
		}
	}
	return s.ts[s.f.from:s.f.to]
}

var shares = exactly("wash rinse dry clean wipe scrub peel chop slice dice cut trim core deseed crack beat whisk grate mince season crush halve")

// after are the tokens after the verb.
func (s span) after() []token { return s.ts[s.f.at+1 : s.f.to] }

// has says whether one of the words, other than the verb, is in the set.
func (s span) has(w set) bool {
	for i, t := range s.words() {
		if t.in(w) && (s.f.from+i != s.f.at || s.f.form == noVerb) {
			return true
		}
	}
	return false
}

func (s span) says(ws ...string) bool {
	return slices.ContainsFunc(s.words(), func(t token) bool { return t.is(ws...) })
}

// deciders are the verbs that need a look at their words, with the function that decides.
var deciders = func() map[string]func(span) []Kind {
	m := map[string]func(span) []Kind{}
	for names, f := range map[string]func(span) []Kind{
		"put place pop move bring return transfer insert bung plonk whack stick chuck throw shove slide store lay putin puton drop go in": span.put,
		"leave let allow keep": span.leave,
		"get take takeout takeoff getout lift collect gather fetch clear": span.take,
		"heat warm light turnon switch preheat":                           span.heat,
		"turn turndown turnup lower raise increase change reduce adjust":  span.turn,
		"turnoff": span.off,
		"wash rinse scrub clean dry washup tidy cleandown wipe sanitise sanitize disinfect sweep mop": span.clean,
		"prepare prep do":                 span.prepare,
		"set":                             span.set,
		"cool":                            span.cool,
		"cook":                            span.cook,
		"check test see look inspect use": span.check,
		"line flour butter oil grease":    span.ready,
		"boil":                            span.boil,
		"measure":                         span.measure,
		"push":                            span.push,
		"open":                            span.open,
		"soak":                            span.soak,
		"ladle":                           span.ladle,
		"fill":                            span.fill,
		"brown toast soften melt crispen crisp steam fry":                                span.hob,
		"pour spoon arrange spread add stir mix assemble build divide share portion tip": span.onto,
		"start begin continue finish ensure remember ask need help stay work":            span.lead,
		"brush":             span.brush,
		"bake roast":        span.bake,
		"break":             span.pause,
		"chill":             span.chill,
		"getready":          span.getready,
		"setaside":          func(span) []Kind { return []Kind{Rest} },
		"make":              span.make,
		"rest stand":        span.rest,
		"grill":             span.grill,
		"carry":             span.lead,
		"chilled":           kindly(Chill),
		"tinned":            kindly(Fill),
		"frozen":            kindly(Freeze),
		"grilled":           kindly(Grill),
		"microwaved":        kindly(Microwave),
		"racked":            span.cool,
		"warm-place":        kindly(Prove),
		"kettle":            kindly(BoilWater),
		"hobbed":            kindly(Hob),
		"done":              kindly(Other),
		"topped":            kindly(Decorate),
		"turnout":           span.turnout,
		"cut split squeeze": span.cut,
		"reheat":            span.reheat,
		"roll":              span.roll,
		"top":               span.top,
	} {
		for _, n := range strings.Fields(names) {
			m[n] = f
		}
	}
	return m
}()

func kindly(k Kind) func(span) []Kind { return func(span) []Kind { return []Kind{k} } }

// acts are the acts of the span.
func (s span) acts() (acts []Act) {
	kinds := []Kind{s.f.kind}
	if decide := deciders[s.f.name]; decide != nil {
		kinds = decide(s)
	}
	place := s.place(kinds)
	objects := s.objects()
	for i, k := range kinds {
		a := Act{Kind: k, Verb: stem(s.f.name), Place: place, Objects: objects, Implied: k == TakeOut && i+1 < len(kinds) && !s.says("out", "takeout", "getout")}
		if s.f.form == noVerb || strings.HasPrefix(s.f.name, "a-") {
			a.Verb = ""
		}
		if i+1 < len(kinds) {
			a.Place = ""
		}
		a.Food, a.HighRisk = s.food(k), s.highRisk(k)
		acts = append(acts, a)
	}
	return acts
}

// place is where the food is: as the words say it, else as the kind says.
func (s span) place(kinds []Kind) practical.Place {
	if len(kinds) == 0 {
		return ""
	}
	k := kinds[len(kinds)-1]
	if p := usualPlace[k]; p != "" {
		return p
	}
	if k == TakeOut || k == FromCold || k == Plate || k == Serve || k == HeatOven {
		return ""
	}
	return placeIn(s.words())
}

var usualPlace = map[Kind]practical.Place{
	PutIn: practical.AtOven, Freeze: practical.AtFreezer, Prove: practical.AtWarm, Hob: practical.AtHob, BoilWater: practical.AtHob,
	Grill: practical.AtGrill, Microwave: practical.AtMicrowave, Serve: practical.Served,
}
