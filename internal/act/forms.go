package act

import "strings"

// reads says whether the word is a verb where it stands.
func (r *reader) reads(i int, f found) bool {
	prev, next := at(r.ts, i-1), at(r.ts, i+1)
	if f.is("eat", "enjoy") && (f.form != plain || prev.is("people", "who", "they", "to") && !r.start) {
		return false // "tell people eating"
	}
	switch f.form {
	case ing:
		return r.readsIng(i, f, prev, next)
	case past:
		return r.readsPast(i, prev, next)
	case third:
		return thirds[r.ts[i].text] && !r.start && prev.kind == word && !articles[prev.text] && !prev.is("to") && prev.kind == word
	}
	if f.is("washup") && f.form == plain {
		return true
	}
	if articles[prev.text] && !(prev.is("off", "all", "on", "through", "each", "both", "this", "no") && f.noun == never) {
		return false
	}
	if beings[prev.text] && f.is("clean", "open", "dry", "warm", "cool", "set", "heat", "empty", "level", "separate", "close", "clear", "tidy") || r.rightAfterVerb(i) {
		return false
	}
	if f.is("look", "see", "help", "work", "drop") && prev.is("to") && f.is("see") {
		return false
	}
	if f.noun != never && next.is("done", "made", "ready") && r.start {
		return false // "dip done"
	}
	if kitAfter[f.name+" "+next.text] {
		return false
	}
	switch f.noun {
	case never:
		return !r.adjectival(i) && !(f.is("ladle") && prev.kind == number) && !(f.is("clean") && prev.is("("))
	case often:
		if tools[f.name] && r.listing() && (next.kind == sign || joiners[next.text] || r.all[len(r.all)-1].is("serve")) {
			return false
		}
		if f.is("warm", "heat", "dry", "crisp") && (r.adding() || r.idle >= 0 && prev.is(",") && next.is("water", "milk")) {
			return false
		}
		if f.is("steam") && prev.kind == sign && at(r.ts, i-2).is("careful", "hot", "beware", "mind") {
			return false
		}
		if r.start || prev.is("to") || adverbs[prev.text] {
			return true
		}
		if f.is("rest", "chill", "fry") && !r.afterVerb(i) && (next.kind == number || next.kind == sign) {
			return true // "dough rest 30"
		}
		return verbalNext[next.text] && !r.afterVerb(i) || r.lastIs(i, "and") && next.kind != word
	}
	return r.readsNounish(i, f, next)
}

// rightAfterVerb says whether a verb stands next to the last, which does not
// lead to it: "crack open", but "let cool".
func (r *reader) rightAfterVerb(i int) bool {
	n := len(r.all)
	return n > 0 && r.all[n-1].at == i-1 && !movers[r.all[n-1].name] && r.all[n-1].form != noVerb && !r.ts[i].purpose
}

// kitAfter are pairs of words that name a thing: "roast potatoes", "chill time".
var kitAfter = phraseSet(`core temperature|core temp|serve time|bake time|cook time|rest break|whisk attachment|grill tray|grill rack|roast dinner|mix bowl|set custard|break time|fry pan|
	dry stuff|dry ingredients|dry ingredient|dry pan|dry skillet|dry bits|dry mix|dry mixture|dry things|dry goods|dry side|dry spices|wet mix|
	probe thermometer|toast rack|cool rack|serve spoon|roll pin|stew pot|roast tin|bake tray`)

// tools are verbs that are also things to fetch and to wash.
var tools = exactly("whisk spoon skewer brush press grill mould plate dish mix set cut timer probe dip layer stack coat")

// listing says whether the last verb is followed by a list of things.
func (r *reader) listing() bool {
	n := len(r.all)
	return n > 0 && r.all[n-1].is("setup", "washup", "wash", "clean", "gather", "collect", "get", "getout", "take", "use", "fetch", "weigh", "rinse", "serve", "lay", "coat", "dip")
}

// adding says whether the last verb takes a list of foods: "add yeast and warm milk".
func (r *reader) adding() bool {
	n := len(r.all)
	return n > 0 && r.all[n-1].is("add", "mix", "pour", "stir", "combine", "rub", "make", "use") && !r.sentenceSince(r.all[n-1].at)
}

// sentenceSince says whether a sentence has ended since token i.
func (r *reader) sentenceSince(i int) bool {
	for _, t := range r.ts[i:max(i, r.piece)] {
		if t.is(".", ";", "\n", "then") {
			return true
		}
	}
	return false
}

func phraseSet(list string) set {
	s := set{}
	for _, p := range strings.Split(list, "|") {
		s[strings.TrimSpace(p)] = true
	}
	return s
}

// adjectival says whether a verb's plain form is part of a name: "puree apple".
func (r *reader) adjectival(i int) bool { return r.ts[i].is("puree") && !r.start }

// readsNounish reads a word that is mostly a noun: "butter the tin", but "add butter".
func (r *reader) readsNounish(i int, f found, next token) bool {
	prev := at(r.ts, i-1)
	if next.kind == number && f.is("line", "pipe", "ice") && r.start {
		return true
	}
	if next.kind == number && f.is("zest", "juice", "core", "quarter", "stone", "shell") && r.start && at(r.ts, i+2).kind == word && !at(r.ts, i+2).in(foodUnits) {
		return true // "zest 2 oranges"
	}
	alone := next.kind == sign || joiners[next.text]
	if r.listing() && f.is("flour", "butter", "oil", "cream", "juice", "salt", "batter", "ice") && !next.is("the", "a", "my", "tin", "tins", "tray", "dish", "it") && !r.sentenceSince(r.all[len(r.all)-1].at) {
		return false // "weigh out: flour, butter"
	}
	if f.is("oil", "butter") && next.is("hot", "heating", "heated", "melted", "melting") {
		return false
	}
	switch {
	case f.is("pinch") && (next.is("of") || prev.kind == number), f.is("mince") && next.is("in", "out", "on"):
		return false
	case ovens[prev.text] && next.is("the", "my") && r.aside.on:
		return true // "while the cake is in the oven ice the buns"
	case prev.is("to") && (next.kind == word || f.is("pipe", "plate", "ice", "season", "dust")):
		return true
	case !r.start && !adverbs[prev.text]:
		return false
	case r.strong && alone:
		return f.is("pipe", "plate", "season", "ice", "dust", "a-eggwash") && (i == r.piece || adverbs[prev.text])
	case alone:
		return f.is("pipe", "season", "plate", "ice")
	case f.is("cream", "butter", "flour", "oil", "salt") && next.is("out", "in", "on", "off", "into"):
		return false
	case f.is("juice", "zest") && (next.is("in", "into", "on", "to", "over") || !verbalNext[next.text] && !nounFollows(next)):
		return false
	case verbalNext[next.text]:
		return true
	case r.strong:
		return next.kind == word && !beings[next.text] && lexicon[next.text].name == "" || f.is("line", "cream", "season")
	}
	return f.is("season", "line", "pipe", "ice") || f.is("zest") && next.kind == word
}

// readsIng reads "chopping onions", not "mixing bowl", "before serving", "add the filling".
func (r *reader) readsIng(i int, f found, prev, next token) bool {
	if next.in(kitNouns) && !(r.start && !f.is("bake", "roast", "fry", "mix", "serve", "cool", "grill", "roll", "chop", "pour", "measure") && next.is("tins", "tin", "apples", "water", "pan", "sheet", "fat", "oil", "plates", "dishes", "bowls", "pans", "trays")) || articles[prev.text] && !prev.is("all") || beings[prev.text] {
		return false
	}
	if f.is("bake", "roast") && i > r.piece && !r.afterVerb(i) && !r.timed(i) || prev.is("adult", "teacher", "miss", "sir") {
		return false // "scones baking" is how things are
	}
	if nounsIng[r.ts[i].text] {
		return (r.start || r.strong && i == r.piece) && next.kind == word && !joiners[next.text] && !beings[next.text] && !next.is("in", "on", "off", "out", "mixture", "ingredients", "into", "to")
	}
	return r.start || adverbs[prev.text] || prev.is("start", "begin", "continue", "finish", "carry", "on", "keep", "time") || !r.afterVerb(i) || r.lastForm() == ing
}

var nounsIng = exactly("icing filling dressing topping stuffing seasoning coating frosting glazing lining marinading")

// timed says whether minutes or degrees follow before the next stop.
func (r *reader) timed(i int) bool {
	for k := i + 1; k < len(r.ts) && !(r.ts[k].kind == sign && r.ts[k].is(".", ";", "\n", ",", ":", "-", "(")); k++ {
		if r.ts[k].kind == number {
			return true
		}
	}
	return false
}

// readsPast reads "onions chopped" and "chopped the onions", not "add chopped onions".
func (r *reader) readsPast(i int, prev, next token) bool {
	if beings[prev.text] {
		return !r.afterVerb(i) && !r.aside.on && lexicon[r.ts[i].stem].kind != Hob
	}
	if articles[prev.text] && !prev.is("all", "remaining") {
		return false
	}
	if i == r.piece && nounFollows(next) && r.onTop(i) || next.is("butter", "chocolate") && r.start && r.lastForm() == plain && r.ts[i].is("melted") {
		return false
	}
	if r.start && r.lastForm() == plain && nounFollows(next) && (!r.strong || r.listing() || r.adding()) {
		return false
	}
	if r.start || adverbs[prev.text] {
		return i == r.piece || next.kind == word || len(r.all) == 0 || r.lastForm() == past || r.all[len(r.all)-1].at < r.piece
	}
	return !r.afterVerb(i) && !nounFollows(next) || r.lastForm() == past && r.lastIs(i, "and")
}

// onTop says whether the piece from token i ends in "on top": "grated cheese on top".
func (r *reader) onTop(i int) bool {
	for k := i; k < min(len(r.ts), i+6) && r.ts[k].kind == word; k++ {
		if r.ts[k].is("top") && r.ts[k-1].is("on") && at(r.ts, k+1).kind == sign {
			return true
		}
	}
	return false
}

func nounFollows(t token) bool {
	return t.kind == word && !t.is("x", "thin", "thick", "small", "fine", "flat", "tiny", "big", "chunky", "neat", "neatly", "large", "long", "short") && !verbalNext[t.text] && !joiners[t.text] && !asides[t.text] && !adverbs[t.text]
}

// afterVerb says whether the piece has a verb already.
func (r *reader) afterVerb(int) bool {
	return len(r.all) > 0 && r.all[len(r.all)-1].at >= r.piece
}

func (r *reader) lastIs(i int, w string) bool { return at(r.ts, i-1).is(w, "&") }

func (r *reader) lastForm() form {
	if len(r.all) == 0 {
		return noVerb
	}
	return r.all[len(r.all)-1].form
}

var thirds = exactly("bakes cooks simmers chills cools rests proves boils freezes marinates rises sets roasts")
