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
		"put place pop move bring return transfer insert stick chuck throw shove slide store lay putin puton drop go in transfer-over": span.put,
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
		"fill":                            span.fill,
		"brown toast soften melt crispen crisp warmthrough steam fry":              span.hob,
		"pour spoon arrange spread add stir mix assemble divide share portion tip": span.onto,
		"start begin continue finish ensure remember ask need help stay work":      span.lead,
		"brush":           span.brush,
		"bake roast":      span.bake,
		"break":           span.pause,
		"chill":           span.chill,
		"getready":        span.getready,
		"setaside":        func(span) []Kind { return []Kind{Rest} },
		"make":            span.make,
		"rest stand":      span.rest,
		"grill":           span.grill,
		"carry":           span.lead,
		"chilled":         kindly(Chill),
		"tinned":          kindly(Fill),
		"frozen":          kindly(Freeze),
		"grilled":         kindly(Grill),
		"microwaved":      kindly(Microwave),
		"racked":          span.cool,
		"warm-place":      kindly(Prove),
		"kettle":          kindly(BoilWater),
		"hobbed":          kindly(Hob),
		"done":            kindly(Other),
		"turnout":         span.turnout,
		"cut":             span.cut,
		"serve present":   span.serve,
		"plate dish":      span.plate,
		"probe":           kindly(Probe),
		"weigh measure":   kindly(SetUp),
		"collect-up":      kindly(SetUp),
		"photograph":      kindly(Other),
		"season salt":     kindly(Taste),
		"dip coat":        kindly(Fill),
		"setup hairup":    kindly(SetUp),
		"wait":            kindly(Idle),
		"laytable":        kindly(SetUp),
		"reheat":          span.reheat,
		"defrost thaw":    kindly(Other),
		"handwash":        kindly(WashHands),
		"prove rise":      kindly(Prove),
		"roll":            span.roll,
		"ice":             kindly(Decorate),
		"rub":             span.rub,
		"top":             span.top,
		"press":           kindly(Shape),
		"score":           kindly(Cut),
		"soak infuse":     kindly(Soak),
		"freeze":          kindly(Freeze),
		"open close":      kindly(Other),
		"marinate":        kindly(Marinate),
		"rehydrate bloom": kindly(Soak),
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

func (s span) put() []Kind {
	ws, oven := s.words(), s.hasOven()
	place := placeIn(ws)
	takes := s.says("out") || takenFrom(ws) != ""
	switch {
	case takes && place == "":
		return s.take()
	case s.f.is("puton", "put", "place") && oven && place != practical.AtOven:
		return []Kind{HeatOven}
	case s.says("timer", "alarm") && place == "":
		return []Kind{Timer}
	case oven && s.says("plates", "bowls") && !s.has(vessels):
		return []Kind{Plate}
	case placeKind[place] != "" && place != practical.AtSide:
		if place == practical.AtHob && s.onlyWater() && !s.says("in", "into", "putin") {
			return []Kind{BoilWater}
		}
		return []Kind{placeKind[place]}
	case s.says("apron", "hair", "gloves", "a-gloves"):
		return []Kind{SetUp}
	case s.says("away"):
		return []Kind{FinalClean}
	case s.says("sink", "dishwasher"):
		return []Kind{WashUp}
	case s.says("rack", "racks"):
		return []Kind{TakeOut, Cool}
	case s.has(waterWords) && (s.f.is("puton") || s.says("on")) && !s.cooksIn():
		return []Kind{BoilWater}
	}
	return s.putElsewhere()
}

var (
	vessels = words("cake pie quiche gratin chicken pasties bread biscuits dough buns scones potatoes casserole lasagne")
	hobPans = exactly("pan saucepan frying wok pot a-grillpan saucepans hob ring heat")
	mixKit  = exactly("bowl mixer processor blender a-processor a-mixer jug")
)

// putElsewhere decides by the vessel.
func (s span) putElsewhere() []Kind {
	if s.says("dishes") && s.says("serving") {
		return []Kind{Plate}
	}
	for i, t := range s.after() {
		switch {
		case t.is("plate", "plates", "platter", "stand", "doily") && !s.f.is("lay"), t.is("serving") && at(s.after(), i+1).is("bowl", "bowls", "dish"):
			return []Kind{Plate}
		case hobPans[t.text] && !s.says("roasting", "cake", "baking"):
			return []Kind{Hob}
		case mixKit[t.text]:
			return []Kind{Mix}
		case t.in(cakeTins), t.is("case", "bag", "top", "over", "pastry"):
			return []Kind{Fill}
		case t.is("marinade"):
			return []Kind{Marinate}
		case t.is("grill") && s.says("on"):
			return []Kind{Grill}
		}
	}
	last := s.lastWord()
	switch {
	case s.f.is("in", "putin") && s.mixing():
		return []Kind{Mix}
	case s.f.is("in", "putin") && s.has(readyToEat) && !s.has(baked):
		return []Kind{Fill}
	case s.f.is("in", "putin"), last.is("in"), s.says("back") && s.says("in"):
		return []Kind{PutIn}
	case s.f.is("puton"), last.is("on"):
		return []Kind{Hob}
	case s.says("on") && s.has(hobFoods):
		return []Kind{Hob}
	}
	return []Kind{Other}
}

var hobFoods = words("pasta rice potatoes noodles sauce soup stock eggs peas")

// mixing: "put in the eggs", a thing put into a mixture.
func (s span) mixing() bool {
	return s.has(words("egg eggs flour sugar butter milk herbs spices sultanas chocolate chilli garlic stock spice puree water cream cornflour"))
}

// lastWord is the last word of the span that is not of a heat or a time.
func (s span) lastWord() token {
	ws := s.after()
	for i := len(ws) - 1; i >= 0; i-- {
		if ws[i].kind == word && !minuteWords[ws[i].text] && !ws[i].is("c", "f", "degrees", "for", "at", "fan", "gas", "mark", "gm", "and", "then") {
			return ws[i]
		}
	}
	return token{kind: sign}
}

func (s span) hasOven() bool {
	return slices.ContainsFunc(s.words(), func(t token) bool { return ovens[t.text] })
}

// onlyWater says whether nothing but water is named: "pan of water on for the pasta".
func (s span) onlyWater() bool {
	if !s.has(waterWords) {
		return false
	}
	for i, t := range s.words() {
		if t.is("for") {
			break
		}
		if t.kind == word && s.f.from+i != s.f.at && !t.in(notObjects) && !waterThings[t.text] && lexicon[t.text].name == "" {
			return false
		}
	}
	return true
}

var waterThings = exactly("water kettle a-water pan saucepan pot hob ring lid salted boiling salt wok full jug deep")

// cooksIn says whether a food is named that is cooked in the water.
func (s span) cooksIn() bool {
	return s.has(words("potatoes pasta rice eggs egg noodles spaghetti vegetables carrots broccoli peas gnocchi lentils pudding beans tagliatelle ravioli macaroni penne stock")) || s.says("butter", "sugar")
}

func (s span) leave() []Kind {
	ws := s.words()
	place := placeIn(ws)
	switch {
	case s.f.is("keep") && s.says("warm", "hot"):
		return []Kind{KeepHot}
	case s.f.is("keep") && place == "":
		return nil
	case place == practical.AtOven:
		if s.says("low", "a-cooloven", "a-warmoven") {
			return []Kind{KeepHot}
		}
		return []Kind{Other}
	case place == practical.AtSide && s.says("rack", "racks"):
		return []Kind{TakeOut, Cool}
	case placeKind[place] != "" && place != practical.AtSide:
		return []Kind{placeKind[place]}
	case s.says("cool", "cold", "cooled", "cooling"):
		return []Kind{Cool}
	case s.says("set", "firm", "chilled"):
		return []Kind{Chill}
	case s.says("doubled", "double", "risen", "rise", "prove", "proved"):
		return []Kind{Prove}
	case s.says("marinade"):
		return []Kind{Marinate}
	case s.says("water", "a-water", "soak"):
		return []Kind{Soak}
	}
	return []Kind{Rest}
}

func (s span) take() []Kind {
	ws := s.words()
	from := takenFrom(ws)
	out := s.says("out") || s.f.is("takeout", "getout", "takeoff")
	switch {
	case from == practical.AtFridge || from == practical.AtFreezer:
		if s.has(setupThings) && !s.has(meat) && !s.has(fish) {
			return []Kind{SetUp}
		}
		return []Kind{FromCold}
	case out && s.says("rack", "racks"):
		return []Kind{TakeOut, Cool}
	case from == practical.AtOven:
		return []Kind{TakeOut}
	case from == practical.AtHob || from == practical.AtGrill || from == practical.AtMicrowave:
		return []Kind{Other}
	case s.has(setupThings), s.says("scales", "chopping", "knives"), s.f.is("gather", "collect", "fetch"), s.f.is("getout") && s.has(smallKit):
		return []Kind{SetUp}
	case s.f.is("clear"):
		return s.clean()
	case out && s.has(trimmings), out && s.outOfTin():
		return []Kind{Other}
	case out:
		return []Kind{TakeOut}
	case s.f.is("get") && len(s.objects()) > 0:
		return []Kind{SetUp}
	case s.f.is("lift"), s.f.is("take"):
		return []Kind{Other}
	}
	return nil
}

// outOfTin: "take out of the tins", which is not out of the oven.
func (s span) outOfTin() bool {
	ws := s.words()
	for i, t := range ws {
		if t.is("tin", "tins", "mould", "moulds", "pan", "cases", "ramekins") && before(ws, i, "of", "from") && !s.hasOven() {
			return true
		}
	}
	return false
}

var (
	smallKit  = words("bowl bowls pan pans board boards knife tray trays tin tins whisk scales sieve plates equipment jug")
	trimmings = words("skin skins stalk stalks seed seeds bone bones core cores film clingfilm foil beans paper a-paper lid cling fat stones stone shell shells pips excess air bag head tail heat string leaf membrane vein rind stems")
)

var warmed = words("flatbreads bread rolls naan naans sauce soup tortillas wraps pittas pitta")

func (s span) heat() []Kind {
	ws := s.words()
	place := placeIn(ws)
	switch {
	case s.says("fryer", "oil", "wok"), s.says("pan", "saucepan") && !s.hasOven():
		return []Kind{Hob}
	case s.says("plates", "bowls", "plate") && s.f.is("warm", "heat") && !s.has(warmed):
		return []Kind{Plate}
	case place == practical.AtMicrowave, s.f.is("heat", "warm") && s.says("microwave"):
		return []Kind{Microwave}
	case s.f.is("warm", "heat") && place == practical.AtOven:
		return []Kind{PutIn}
	case s.hasOven() && s.says("off"):
		return []Kind{OvenOff}
	case s.hasOven():
		return []Kind{HeatOven}
	case s.says("grill", "a-grillpan"):
		return []Kind{Grill}
	case s.says("kettle", "a-water") || s.says("water") && !s.cooksIn():
		return []Kind{BoilWater}
	case s.f.is("preheat"):
		return []Kind{HeatOven}
	case s.f.is("turnon", "switch", "light"):
		if s.says("hob", "ring", "gas", "heat") {
			return []Kind{Hob}
		}
		return []Kind{Other}
	case s.f.is("warm") && !s.says("milk", "cream", "butter", "a-cream"):
		return []Kind{Reheat}
	}
	return []Kind{Hob}
}

func (s span) turn() []Kind {
	switch {
	case s.hasOven() && s.says("off"):
		return []Kind{OvenOff}
	case s.hasOven() && s.says("on") && !s.says("down", "up"):
		return []Kind{HeatOven}
	case s.hasOven() && placeIn(s.words()) != practical.AtOven:
		return []Kind{TurnOven}
	case s.says("grill") && s.says("on"):
		return []Kind{Grill}
	case s.says("heat", "hob", "simmer", "ring") && s.f.is("turn", "turndown", "turnup", "lower", "reduce", "raise", "increase"):
		return []Kind{Hob}
	case s.f.is("turndown", "turnup", "lower", "raise", "increase", "reduce") && len(heatsOf(s.text())) > 0:
		return []Kind{TurnOven}
	case s.f.is("turndown", "turnup", "reduce"):
		return []Kind{Hob}
	case s.says("off"):
		return s.off()
	}
	return []Kind{Other}
}

// text is the span's words as mended, for the reader of heats.
func (s span) text() string {
	var b strings.Builder
	for _, t := range s.words() {
		b.WriteString(t.text + " ")
	}
	return "oven " + b.String()
}

func (s span) off() []Kind {
	if s.hasOven() || s.says("everything") {
		return []Kind{OvenOff}
	}
	return []Kind{Other}
}

func (s span) set() []Kind {
	place := placeIn(s.words())
	switch {
	case s.says("timer", "alarm"):
		return []Kind{Timer}
	case s.hasOven() && place != practical.AtOven:
		return []Kind{HeatOven}
	case place == practical.AtOven:
		return []Kind{PutIn}
	case s.says("table"), s.says("out", "work", "workstation", "area", "station", "place") && !s.f.purpose:
		return []Kind{SetUp}
	case place == practical.AtFreezer:
		return []Kind{Freeze}
	}
	return []Kind{Chill}
}

func (s span) cool() []Kind {
	switch place := placeIn(s.words()); {
	case place == practical.AtFridge:
		return []Kind{Chill}
	case place == practical.AtFreezer:
		return []Kind{Freeze}
	case s.hasOven() && place != practical.AtOven && takenFrom(s.words()) == "":
		return []Kind{TurnOven}
	case s.says("rack", "racks"), s.hasOven() && takenFrom(s.words()) != "":
		return []Kind{TakeOut, Cool}
	}
	return []Kind{Cool}
}

var baked = words(`cake cakes pie pies quiche quiches bread rolls biscuits biscuit cookies scones pizza lasagne tart tarts brownies crumble pasties muffins sponge meringue meringues flan cheesecake buns eclairs profiteroles gratin
	casserole pastry pastries puddings wellington focaccia loaf traybake shortbread flapjack cupcakes tartlets roulade souffle`)

func (s span) cook() []Kind {
	place := placeIn(s.words())
	switch {
	case placeKind[place] != "" && place != practical.AtSide:
		return []Kind{placeKind[place]}
	case len(heatsOf(s.text())) > 0, s.has(baked) && !s.says("cream", "sauce"):
		return []Kind{PutIn}
	case s.f.form == noVerb:
		return []Kind{Other}
	}
	return []Kind{Hob}
}

func (s span) check() []Kind {
	switch {
	case s.says("probe", "core", "thermometer") || s.says("temperature", "75") && !s.hasOven() && !s.has(setupThings):
		return []Kind{Probe}
	case s.f.is("use"):
		return nil
	}
	return []Kind{Test}
}
