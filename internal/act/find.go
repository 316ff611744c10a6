package act

import (
	"slices"
	"strings"
)

// found is a verb that says an act, with the tokens that belong to it.
type found struct {
	verb
	at       int // index of the verb
	from, to int // tokens of the act, the verb among them
	form     form
	purpose  bool // stands after "to": "leave to cool"
}

type form int

const (
	plain form = iota
	ing
	past
	third // "bakes"
	noVerb
)

// reader walks over a row and finds the verbs that say what is done: not those
// of "while the cake bakes", "do not open", "before serving".
type reader struct {
	ts     []token
	all    []found
	piece  int  // where the piece of the sentence begins
	start  bool // nothing but joining words since
	strong bool // the piece was begun by a stop or by "then"
	negate bool
	spare  bool // the sentence says what is done if the cook is late
	quiet  bool // the sentence lists what is looked for: "QC: golden, risen"
	idle   int  // where pieces that said nothing begin, joined to this one; -1: none
	aside  aside
}

// aside is a part of a sentence that tells when, why or whether: its verbs are no acts of the row.
type aside struct {
	on, seen bool // seen: it has its verb, or a word in the place of one
	hard     bool // goes on to the next stop
	at       int
}

var (
	asides     = exactly("while whilst when once until if because unless where so that which who before after as without ready than how whether whenever by sure")
	negations  = exactly("not don't dont never avoid cannot can't won't isn't aren't doesn't without no nothing")
	joiners    = exactly("and then & plus also next afterwards finally now + meanwhile lastly first firstly secondly thirdly again or")
	adverbs    = exactly("carefully gently slowly quickly lightly finely roughly thinly evenly well just thoroughly immediately gradually briefly generously always please i we you will should must can need have to continually constantly still start begin continue keep help going go gentle quick slow")
	articles   = exactly("the a an my your some each all every of with in on into onto from for at under over through their his her its our this these those more any other both another using between around inside off per remaining no raw fresh extra")
	verbalNext = exactly(`the a an it them each all your my both some any half on in until for with over at well together gently lightly off out up down thoroughly aside into evenly under through this that these again once slightly
		onto to immediately separately around finely roughly thinly between remaining sides side top tops inside back by as edges edge case base`)
	states   = exactly("springy golden cool cooled cold hot warm done ready set firm soft softened risen doubled cooked brown browned baked crisp tender thick melted smooth dry")
	pronouns = exactly("you they i we it he she")
	beings   = exactly("is are be been being was were has have having isn't aren't gets get looks")
)

// verbsOf finds the acts' verbs in the order of the text.
func verbsOf(ts []token) []found {
	r := &reader{ts: ts, start: true, strong: true, idle: -1}
	for i := 0; i < len(ts); i++ {
		r.step(i)
	}
	r.endPiece(len(ts))
	return r.all
}

func (r *reader) step(i int) {
	t := r.ts[i]
	if r.spare = r.spare && !t.is(".", ";", "\n", ")") || r.speaksOfLate(i); r.spare {
		if !t.is("?") {
			r.piece, r.start = i+1, false
		}
		return
	}
	switch {
	case t.kind == sign && !t.is("&", "+"):
		if t.is("?") {
			r.asks(i)
		}
		if t.is("?", ".", ";", "\n", ",", ":", "/", "(", ")", "-", "!", ">", "→", "•", "*", "|") {
			r.stop(i, t.is(",", "/", "("))
		}
		return
	case t.kind == number:
		r.start = r.start && i == r.piece
		return
	case joiners[t.text]:
		r.join(i)
		return
	}
	if t.is("qc", "quality") && at(r.ts, i+1).is(":", "-") {
		r.quiet = true
	}
	if t.is("do") && at(r.ts, i+1).is("not") {
		return
	}
	if negations[t.text] {
		switch {
		case r.aside.on:
			r.aside.seen = true
		case !t.is("no", "nothing") || r.start:
			r.sayBefore(i)
			r.negate = true
		}
		return
	}
	if r.beginsAside(i) {
		r.aside = aside{on: true, at: i}
		return
	}
	if r.aside.on && i > r.aside.at+1 && t.is("the", "it", "they", "my") && states[r.ts[r.aside.at+1].text] {
		r.aside = aside{}
	}
	f, is := r.verbAt(i)
	told := r.aside.on
	switch {
	case is && r.counts(i, f):
		if f.form == plain && i > r.piece && !r.afterVerb(i) && !told && (!at(r.ts, i-1).is("to") || at(r.ts, i-2).is("out") && f.is("cool")) {
			r.sayWithout(r.piece, i)
		}
		r.found(f)
	case r.aside.on && (t.is("done", "ready", "golden") || is || i > r.aside.at && !articles[t.text] && strings.HasSuffix(t.text, "ed")):
		r.aside.seen = true
	}
	if !adverbs[t.text] {
		r.start = false
	}
}

// stop ends a piece at a sign. A comma ends no negation of more than one verb: "do not stir, open or move".
func (r *reader) stop(i int, soft bool) {
	r.endPiece(i)
	r.piece, r.start, r.strong = i+1, true, true
	if r.ts[i].is(".", ";", "\n") {
		r.quiet = false
	}
	if !r.ts[i].is(",", "/") {
		r.idle = -1
	}
	r.aside = aside{}
	if !soft || !joiners[at(r.ts, i+2).text] {
		r.negate = false
	}
}

// join begins a piece at "and" or "then".
func (r *reader) join(i int) {
	if r.ts[i].is("or") {
		return
	}
	if r.aside.on && !r.ts[i].is("then") {
		return
	}
	r.endPiece(i)
	r.piece, r.start = i+1, true
	r.strong = !r.ts[i].is("and", "&", "+", "plus")
	r.negate, r.aside = false, aside{}
}

func (r *reader) beginsAside(i int) bool {
	t, next := r.ts[i], at(r.ts, i+1)
	switch {
	case !asides[t.text], r.aside.on && t.is("that"):
		return false
	case t.is("after", "before"):
		return next.kind == word && !next.is("that", "this", "a", "about")
	case t.is("by"):
		return !next.is("now", "the")
	case t.is("sure"):
		return !next.is("to")
	case t.is("so") && (next.is("i", "we") || next.kind == word && lexicon[next.text].name == next.text && lexicon[next.text].noun == never):
		return false
	case t.is("so", "as"):
		return !next.is("that") || t.is("so")
	case t.is("once"):
		return next.kind == word
	}
	return true
}

// verbAt looks at token i as a verb, whatever stands around it.
func (r *reader) verbAt(i int) (found, bool) {
	t := r.ts[i]
	if t.kind != word {
		return found{}, false
	}
	v, ok := lexicon[t.text]
	f := plain
	if !ok || v.name != t.text {
		if v, ok = lexicon[t.stem]; !ok || strings.HasPrefix(t.text, "a-") {
			return found{}, false
		}
		switch {
		case strings.HasSuffix(t.text, "ing"):
			f = ing
		case strings.HasSuffix(t.text, "ed") || pastForms[t.text]:
			f = past
		case strings.HasSuffix(t.text, "s"):
			f = third
		case t.text != v.name:
			return found{}, false
		}
	}
	if pastForms[t.text] {
		f = past
	}
	return found{verb: v, at: i, from: i, to: i + 1, form: f}, true
}

var pastForms = exactly("made took taken put-in kept left beaten risen rose ground laid frozen got broke broken done gone went brought shook proven lit")

// counts says whether the verb is something that the row says is done.
func (r *reader) counts(i int, f found) bool {
	if !r.reads(i, f) {
		return false
	}
	if r.negate || r.quiet && f.kind != Test && f.kind != Probe && f.kind != Taste {
		return false
	}
	if !r.aside.on || r.mustWait(i, f) {
		return true
	}
	return r.leavesAside(i, f)
}

// leavesAside says whether a verb is the main one again: "once cool fill with cream".
func (r *reader) leavesAside(i int, f found) bool {
	prev := at(r.ts, i-1)
	if prev.is("i", "we") && r.aside.seen && i > r.aside.at+2 {
		r.aside = aside{}
		return true // "while it rests I wash up"
	}
	switch {
	case r.aside.hard, f.form != plain, i == r.aside.at+1, prev.is("to", "you", "they", "we", "i"), beings[prev.text]:
		r.aside.seen = true
		return false
	case !r.aside.seen && (strings.HasSuffix(prev.text, "s") || pronouns[prev.text]) && !f.is("serve", "wash") && i <= r.aside.at+4:
		r.aside.seen = true
		return false
	case r.ts[r.aside.at].is("ready", "by", "without", "than", "how", "which", "who"):
		return false
	}
	r.aside = aside{}
	return true
}

func (f found) is(names ...string) bool {
	for _, n := range names {
		if f.name == n {
			return true
		}
	}
	return false
}

// found keeps a verb; nouns before a past form belong to it: "onions chopped".
func (r *reader) found(f found) {
	f.purpose = at(r.ts, f.at-1).is("to") || r.ts[f.at].purpose
	if !r.afterVerb(f.at) {
		f.from = r.piece
	}
	if n := len(r.all); n > 0 {
		r.all[n-1].to = min(f.from, f.at)
		if f.from < r.all[n-1].at+1 {
			f.from = f.at
		}
		r.all[n-1].to = f.from
	}
	f.to = len(r.ts)
	r.all, r.idle = append(r.all, f), -1
}

// endPiece looks at a piece without a verb: "quiche in oven", "cake out", "oven on".
func (r *reader) endPiece(end int) {
	if r.afterVerb(end) || end <= r.piece || r.negate || r.aside.on && r.aside.at == r.piece {
		return
	}
	if r.aside.on && r.aside.at > r.piece && !(r.ts[r.aside.at].is("ready") && r.aside.at == end-1) {
		end = min(end, r.aside.at)
	}
	from := r.piece
	for from < end && joiners[r.ts[from].text] {
		from++
	}
	n := len(r.all)
	r.sayWithout(from, end)
	if len(r.all) == n && r.idle < 0 && !r.quiet {
		r.idle = from
	}
}

// asks reads a question as a look: "cakes cool?", "custard thick?".
func (r *reader) asks(i int) {
	if prev := at(r.ts, i-1); i > r.piece+1 && !r.afterVerb(i) && !r.negate && !r.aside.on && states[prev.text] {
		r.found(found{verb: lexicon["check"], at: i - 1, form: noVerb})
	}
}

// sayBefore keeps what stands before a negation: "oven 190C, not fan".
func (r *reader) sayBefore(i int) {
	if !r.negate && i > r.piece+1 && !r.afterVerb(i) {
		r.sayWithout(r.piece, i)
	}
}

// sayWithout keeps what tokens without a verb say.
func (r *reader) sayWithout(from, end int) {
	name, where := saidWithout(r.ts[from:end])
	name = r.after(name, from, end)
	if name == "" || r.quiet && name != "done" && name != "probe" || name == "preheat" && end == from+1 && len(r.all) > 0 {
		return
	}
	if n := len(r.all); n > 0 && (r.follows(name, r.ts[from+where]) || (where > 0 || name != "chilled") && r.all[n-1].attaches(r.ts, name)) {
		return
	}
	if name == "setup" && r.ts[from+where].is("need", "equip", "kit", "equipment") && at(r.ts, end).is(":", "-") {
		r.quiet = true // a list of kit: "whisk, sieve"
	}
	idle := r.idle
	r.found(found{verb: verb{name: name, kind: lexicon[name].kind}, at: from + where, form: noVerb})
	if last := &r.all[len(r.all)-1]; idle >= 0 && where > 0 && at(r.ts, from-1).is("and", "&", "+", "→") && (len(r.all) == 1 || !putters[r.all[len(r.all)-2].name] && idle > r.all[len(r.all)-2].at) && shared[name] {
		last.from = idle // "goujons and chips out"
		if len(r.all) > 1 {
			r.all[len(r.all)-2].to = idle
		}
	}
}

// follows says whether what a piece says belongs to the verb before, in whose
// list it stands: "wash up, sink", "mix juice, water in a pan".
func (r *reader) follows(name string, t token) bool {
	last := r.all[len(r.all)-1].at
	switch name {
	case "top":
		return !r.sentenceSince(last)
	case "sweep":
		return true
	case "hobbed":
		return t.is("pan", "saucepan", "wok", "side", "sides", "lid") && r.all[len(r.all)-1].kind == Hob && !r.sentenceSince(last) || t.is("pan", "saucepan", "wok") && !r.sentenceSince(last) || t.is("on") && at(r.ts, slices.IndexFunc(r.ts, func(o token) bool { return o.start == t.start })-1).is("milk", "custard")
	}
	return false
}

// shared are what is said once of several things.
var shared = exactly("takeout in tinned hobbed chilled frozen grilled microwaved racked coat")

// after settles what a piece says by what stands before it: "batter in tin ->
// oven", "marinade of soy and honey, chicken in".
func (r *reader) after(name string, from, end int) string {
	some := r.idle >= 0 || len(r.all) > 0
	switch {
	case name == "preheat" && at(r.ts, from-1).is("→", ">") && r.ts[from].is("oven") && (some || from > 1) && !at(r.ts, from+1).is("on"):
		return "in"
	case name == "kettle" && r.idle >= 0 && slices.ContainsFunc(r.ts[from:end], func(t token) bool { return t.is("hob", "ring") }):
		return "hobbed" // "juice, cornflour, water on the hob"
	case name == "in" && len(r.all) > 0 && r.all[len(r.all)-1].kind == Marinate && !slices.ContainsFunc(r.ts[from:end], func(t token) bool { return t.kind == number || ovens[t.text] }):
		return "marinate"
	}
	return name
}

var putters = exactly("put place pop move transfer return putin store leave keep lay slide")

// attaches says whether a place after a comma still belongs to the verb: "put the dough, covered, in the fridge".
func (f found) attaches(ts []token, name string) bool {
	if name == "takeout" {
		return f.is("put", "place") && f.at+1 < f.to && !slices.ContainsFunc(ts[f.at:f.to-1], func(t token) bool { return t.is(",", ".", ";") })
	}
	waits := f.kind == Chill || f.kind == Freeze || f.kind == PutIn || f.kind == Prove || f.kind == Rest || f.kind == Cool
	if !putters[f.name] && !waits {
		return false
	}
	if name != "in" && name != "chilled" && name != "warm-place" && name != "racked" && name != "frozen" {
		return false
	}
	return placeIn(ts[f.at:f.to]) == ""
}
