package recipe

import (
	"fmt"
	"strings"

	"plait.example/internal/practical"
)

// laidOver says that food goes over something: not "over a medium heat".
func laidOver(ts []token) bool {
	for i, t := range ts {
		if t.is("over") && !at(ts, i+1).is("medium", "low", "high", "a", "gentle", "moderate", "very", "medium-high", "medium-low") && !has(ts[i:min(i+4, len(ts))], "heat", "flame") {
			return true
		}
	}
	return false
}

// leans says that a job's words need the step before: "it", "add", "the mixture".
func leans(j *job) bool {
	if hasAny(j.ts, "it", "them", "mixture") || laidOver(j.ts) || has(j.ts, "add to", "add it to", "add them to", "the water", "simmering water", "the boiling water", "the preheated pan", "the hot pan", "the pan", "the pot", "the saucepan", "the skillet", "the wok", "paella pan", "the dish", "the casserole", "oven dish") {
		return true
	}
	if objectless(j) || worksIn(j) {
		return true
	}
	for i, c := range j.clauses {
		if c.sentence == j.clauses[0].sentence && (c.verbIs("add", "uncover", "cover", "return", "increase", "lower", "reduce") || i == 0 && (c.verb.deed == minor || c.verbIs("stir", "pour", "top", "fold", "brush", "glaze", "sprinkle", "dust", "pierce", "prick", "score", "turn", "flip", "remove", "drain", "serve", "spread", "take"))) {
			return true
		}
	}
	return false
}

// objectless says that a job begins with work on what is there without naming it: "cut up into chunks".
func objectless(j *job) bool {
	if len(j.clauses) == 0 || j.clauses[0].verb.deed != works || j.clauses[0].carried {
		return false
	}
	k := j.clauses[0].at + 1
	for at(j.it.ts, k).is("up", "roughly", "finely", "thinly") {
		k++
	}
	return k < j.to && at(j.it.ts, k).is("into", "and") && j.clauses[0].verbIs("cut", "chop", "slice", "break", "tear", "mash", "shred", "flake", "dice", "divide", "form", "shape")
}

// worksIn says that a job begins by working something into what is there: "beat
// in the eggs", "whisk the yogurt in bit by bit"; not "whisk the eggs in a bowl".
func worksIn(j *job) bool {
	if len(j.clauses) == 0 || !j.clauses[0].verbIs("beat", "whisk", "mix", "blend", "rub", "work", "knead", "sift", "sieve", "tip", "crumble", "grate", "squeeze", "scrape", "drop", "swirl", "slide", "cut", "whip", "incorporate", "pour", "stir", "fold") {
		return false
	}
	ts := upToSign(j.it.ts[min(j.clauses[0].at+1, j.to):j.to])
	for i, t := range ts {
		if !t.is("in") {
			continue
		}
		next := at(ts, i+1)
		return i == 0 && !next.is("a", "an", "batches", "cold", "hot", "warm", "two", "three", "half") || i > 0 && (i+1 == len(ts) || next.is("one", "bit", "little", "gradually", "slowly", "until", "and", "with") || has(ts[i+1:min(i+3, len(ts))], "a little"))
	}
	return false
}

// startsBeside says whether a job can be done beside the thread before it.
func (l *linker) startsBeside(i int, cur *thread, refs []int, names map[string]bool) (bool, string) {
	j := &l.jobs[i]
	prev := &l.jobs[cur.last]
	switch w := meanwhile(j.ts); {
	case w != "" && (opensBeside(j.ts) || speaksAfterWhile(j.ts, cur.holds)):
		return true, "'" + w + "': beside what waits"
	case j.first && j.it.component != "" && prev.it.component != j.it.component && !refersTo(refs, l.cur):
		return true, fmt.Sprintf("a part of its own: %s", strings.ToLower(j.it.component))
	case j.first && !refersTo(refs, l.cur) && l.labelled(j):
		return true, fmt.Sprintf("a part of its own: %s", j.ts[0].text)
	case j.first && l.mixesPart(j):
		return true, "makes a part of its own that nothing has made yet"
	case j.first && prepOnly(j) && freshOnly(l, j, names) && !leans(j) && len(refs) == 0:
		return true, "makes new ingredients ready: needs nothing before it"
	case i == l.serving || j.waiting() != nil && len(j.clauses) == 1:
		return false, ""
	case freshBowl(j.ts) && !joinsLater(j) && !movesOn(j):
		return !refersTo(refs, l.cur) || cur.waiting, "a bowl or pan of its own"
	case makes(j) && (cur.waiting && !leans(j) || j.first && len(refs) == 0 && !hasAny(j.ts, "it", "them", "mixture") && !has(j.ts, "the pan", "the tin", "the pot", "juices", "the roasting tin", "same pan")):
		return true, "begins something new while the step before waits"
	case cur.waiting && j.first && j.kind == handsJob && has(j.ts, "set aside") && !leans(j) && j.clauses[0].verbIs("combine", "mix", "whisk", "blend", "chop", "peel", "slice"):
		return true, "made and set aside, while the step before waits"
	case cur.waiting && longWait(*prev) && timedWait(prev) && j.first && freshOnly(l, j, names) && !leans(j):
		return true, "only new ingredients, while the step before waits"
	}
	return false, ""
}

// timedWait says that a wait is one that fills time: its minutes are said, or it is in a place of its own.
func timedWait(j *job) bool {
	w := j.waiting()
	return w.said != nil || j.borrowed != nil || w.place != practical.AtSide && w.place != practical.AtFreezer
}

func refersTo(refs []int, k int) bool { return inList(refs, k) }

// meanwhile is the word that says a job runs beside another.
func meanwhile(ts []token) string {
	for i, t := range ts {
		switch {
		case has(ts[max(0, i-7):i], "not", "don't", "never", "without", "(") && !t.is("meanwhile"):
		case t.is("meanwhile"), t.is("meantime"):
			return t.text
		case t.is("time") && at(ts, i-1).is("same", "this") && (at(ts, i-3).is("at", "during") || at(ts, i-2).is("at", "during")) && i <= 4:
			return "at the same time"
		case t.is("before") && i <= 6 && endsSoon(ts, i):
			return t.text
		case t.is("while", "whilst") && i <= 1 && !has(ts[i:min(i+5, len(ts))], "still", "stirring", "whisking", "beating") && !at(ts, i+1).is("you"):
			return t.text
		case t.is("while", "whilst") && hasAny(upToSign(ts[i:min(i+8, len(ts))]), "cooking", "baking", "simmering", "chilling", "proving", "rising", "resting", "cooling", "cooks", "bakes", "simmers", "chills", "cools", "rests", "rises", "frying", "boiling", "boils", "wait", "waiting", "soaking"):
			return t.text
		}
	}
	return ""
}

// endsSoon says that "before" at i stands in a time before what waits is ready: "five minutes before the cake is done".
func endsSoon(ts []token, i int) bool {
	return timeUnits[at(ts, i-1).text] > 0 && hasAny(ts[i:min(i+12, len(ts))], "make", "prepare", "start") && hasAny(ts[i:min(i+6, len(ts))], "done", "ready", "end", "finishes", "finished", "up")
}

// opensBeside says that a job says at its head that it runs beside another.
func opensBeside(ts []token) bool {
	for _, t := range ts[:min(len(ts), 4)] {
		if t.is("while", "whilst", "meanwhile", "meantime") {
			return true
		}
	}
	switch meanwhile(ts) {
	case "at the same time", "before":
		return true
	}
	return hasAny(ts, "meanwhile", "meantime")
}

// speaksAfterWhile says that the words after "while" name something of a thread:
// "chop the herbs while the sauce simmers" is beside the sauce, "leave the
// batter while the sausages brown" is not beside the batter.
func speaksAfterWhile(ts []token, holds map[string]bool) bool {
	for i, t := range ts {
		if !t.is("while", "whilst") {
			continue
		}
		named := false
		for _, w := range upToSign(ts[i+1:]) {
			if holds[w.food()] || w.is("it", "they", "that", "this") {
				return true
			}
			named = named || w.is("the")
		}
		return !named
	}
	return true
}

// beforeWhile is the tokens before a "while" inside a sentence: what follows it goes on elsewhere.
func beforeWhile(ts []token) []token {
	for i, t := range ts {
		if i > 3 && t.is("while", "whilst") && at(ts, i+1).is("the", "your") {
			return ts[:i]
		}
	}
	return ts
}

func hasAny(ts []token, words ...string) bool {
	for _, t := range ts {
		if t.is(words...) {
			return true
		}
	}
	return false
}

// prepOnly says that a job only peels, chops and the like.
func prepOnly(j *job) bool {
	for _, c := range j.clauses {
		if !c.verbIs("peel", "chop", "slice", "dice", "grate", "crush", "mince", "shred", "deseed", "core", "trim", "zest", "quarter", "halve", "hull", "wash", "scrub", "rinse", "cut", "weigh", "measure", "juice", "squeeze") || c.hands != nil {
			return false
		}
	}
	return j.kind == handsJob && len(j.clauses) > 0
}

// beingMade says that a job makes the product that it names: "make the batter".
func beingMade(ts []token, product string) bool {
	for i, t := range ts {
		j := i
		if !at(ts, i-1).is("the", "a", "your") && at(ts, i-1).kind == word {
			j-- // "make the white sauce"
		}
		if t.stem == product && at(ts, j-1).is("the", "a", "your") && at(ts, j-2).is("make", "prepare", "start", "begin", "making", "preparing") {
			return true
		}
	}
	return false
}

// freshBowl says "in another bowl", "in a separate pan".
func freshBowl(ts []token) bool {
	return otherVessel(ts[:min(len(ts), 14)]) || has(ts[:min(len(ts), 14)], "another bowl", "separate bowl", "second bowl", "another pan", "separate pan", "second pan", "another saucepan", "different bowl", "a clean bowl", "separate saucepan", "another pot", "separate shallow dish", "in a small bowl", "in a medium bowl", "separate large bowl", "another large bowl")
}

// joinsLater says that what is begun in a bowl of its own goes into something else in the same job.
func joinsLater(j *job) bool {
	for _, c := range j.clauses[1:] {
		if has(j.it.ts[c.from:c.to], "into the", "to the flour", "into it", "to the mixture", "to the dry", "to the first", "to the other", "the hot", "the warm") {
			return true
		}
	}
	return false
}

// makes says that a job begins with making something: "make the sauce", "for the topping".
func makes(j *job) bool {
	ts := j.ts
	for len(ts) > 0 && (ts[0].isAdverb() || ts[0].is("to", ",")) {
		ts = ts[1:]
	}
	return len(ts) > 2 && (ts[0].is("make", "prepare") || ts[0].is("for") && (ts[1].is("the") || at(ts, 2).is(",", ":")))
}

// freshOnly says that a job names ingredients, and none that is already in use.
func freshOnly(l *linker, j *job, names map[string]bool) bool {
	fresh := 0
	for _, t := range j.ts {
		if t.kind == word && l.title[t.stem] && (!l.foods[t.stem] || t.stem == l.dish && !l.several()) {
			return false // the dish itself
		}
	}
	for n := range names {
		held := false
		for _, t := range l.threads {
			held = held || t.holds[n]
		}
		if held && !common[n] && !l.shared[n] {
			return false
		}
		if l.foods[n] && !held {
			fresh++
		}
	}
	return fresh > 0
}

// upToSign is the tokens before the first comma, bracket or other sign.
func upToSign(ts []token) []token {
	for i, t := range ts {
		if t.kind == sign {
			return ts[:i]
		}
	}
	return ts
}

// movesOn says that a job begins by putting what is there somewhere, without naming it: "place in a clean pan".
func movesOn(j *job) bool {
	c := j.clauses[0]
	return c.verb.deed == moves && ontoWords[at(j.it.ts, c.at+1).text]
}

// vessels are what food is cooked or mixed in.
var vessels = set("bowl pan saucepan pot wok skillet casserole kadai kadhai karahi jug frypan dish tawa stockpot saute-pan")

// otherVessel says that food goes into a vessel of its own: "in another bowl", "in your big pot".
func otherVessel(ts []token) bool {
	for i, t := range ts {
		own := t.is("another", "separate", "second", "different", "clean", "fresh")
		if !own && !(t.is("your", "a") && at(ts, i-1).is("in", "into") && at(ts, i+1).is("big", "large", "small", "heavy", "deep", "shallow", "wide", "medium", "dry", "nonstick", "non-stick", "little", "frying", "thick-bottomed", "heavy-based") && (t.is("your") || i <= 2)) {
			continue
		}
		for k := i + 1; k < min(i+5, len(ts)) && ts[k].kind == word; k++ {
			if vessels[ts[k].text] {
				return true
			}
		}
	}
	return false
}

// labelled says that a job begins with the name of a part that nothing has made
// yet, and a colon: "Dip: stir the sugar into the water".
func (l *linker) labelled(j *job) bool {
	name := at(j.ts, 0)
	if !at(j.ts, 1).is(":") || name.kind != word || l.heldBy(name.stem) > 0 || verbs[name.text].name != "" && !nounsToo[name.text] {
		return false
	}
	fresh := false
	for _, t := range j.ts[2:] {
		if t.is(".", ";") {
			break
		}
		fresh = fresh || t.kind == word && l.foods[t.food()] && l.heldBy(t.food()) == 0
	}
	return fresh && (componentWords[name.text] || isProduct(name.stem) || l.foods[name.food()] || l.isComponent(name.stem) || l.titlePart[name.stem] > 0 || l.title[name.stem])
}

// mixesPart says that a job makes a part by its name alone: "stir together the filling", "beat the filling ingredients together".
func (l *linker) mixesPart(j *job) bool {
	if len(j.clauses) == 0 || !j.clauses[0].verbIs("stir", "mix", "beat", "whisk", "blend", "combine", "make", "prepare") {
		return false
	}
	k := j.clauses[0].at - j.from + 1
	for at(j.ts, k).is("together", "up", "all") {
		k++
	}
	if !at(j.ts, k).is("the", "all", "your") {
		return false
	}
	n := at(j.ts, k+1)
	end := at(j.ts, k+2)
	return componentWords[n.text] && !n.is("mixture", "ingredients", "method", "base", "rub", "coating", "dough", "syrup") && l.heldBy(n.stem) == 0 && (end.kind != word || end.is("ingredients", "together", "until", "in", "well", "with"))
}
