package recipe

import (
	"strings"

	"plait.example/internal/practical"
)

// clause is a piece of a sentence with one verb that tells what to do.
type clause struct {
	from, to int // tokens of the item
	at       int // token of the verb; equal to from when it is carried on
	verb     verb
	sentence int  // number of the sentence in the item
	shift    int  // token of the item at which the sentence begins; times and heats count from there
	carried  bool // no verb of its own: "then another 5 minutes"
	whole    bool // its time stands in brackets at the end of the sentence and counts for the work before it too
	other    bool // an alternative: "or bake covered for 30 minutes"

	times []duration
	heats []heat

	wait  bool // food is left in place
	place practical.Place
	look  practical.Attention
	every int
	hands *duration // minutes of hands that are said
	said  *duration // minutes of the wait that are said
}

// clauses cuts a sentence into its clauses. Words before the first verb go with the first clause.
func clauses(ts []token) []clause {
	var starts []clause
	paren := 0
	for i := range ts {
		if ts[i].is("(") {
			paren++
		} else if ts[i].is(")") {
			paren = max(0, paren-1)
		}
		if paren > 0 {
			continue
		}
		v, ok := isVerb(ts, i)
		if inner, found := goesOn(ts, i); found {
			v, ok = inner, true
		}
		if !ok || !verbal(ts, i, len(starts) == 0) {
			if off, set := setStretch(ts, i); set && len(starts) > 0 && !waitsForTime(ts, starts[len(starts)-1], i) {
				c := clause{from: i, at: i, verb: verbs["cook"], carried: true}
				if off {
					c.verb = verbs["rest"]
				} else if v := starts[len(starts)-1].verb; v.deed == waits || v.deed == cooks || v.deed == fries {
					c.verb = v
				}
				for k := len(starts) - 1; k >= 0 && !off; k-- {
					if d := starts[k].verb.deed; d == waits || d == fries {
						c.verb = starts[k].verb
						break
					}
				}
				starts = append(starts, c)
				continue
			}
			if len(starts) > 0 && carriesOn(ts, i) {
				last := starts[len(starts)-1]
				for k := len(starts) - 1; k >= 0; k-- {
					if d := starts[k].verb.deed; d == waits || d == cooks || d == fries {
						last = starts[k]
						break
					}
				}
				starts = append(starts, clause{from: i, at: i, verb: last.verb, carried: true})
			}
			continue
		}
		from := clauseHead(ts, i)
		if len(starts) > 0 && from <= starts[len(starts)-1].at {
			continue
		}
		starts = append(starts, clause{from: from, at: i, verb: v, other: at(ts, from).is("or") && !at(ts, i).is("until")})
	}
	if c, ok := unknownVerb(ts); ok && len(starts) == 0 {
		starts = append(starts, c)
	}
	for i := range starts {
		if i > 0 && starts[i-1].other && at(ts, starts[i].from).is("and") {
			starts[i].other = true // "or put in a dish and simmer in the microwave"
		}
		starts[i].to = len(ts)
		if i > 0 {
			starts[i-1].to = starts[i].from
		}
	}
	if len(starts) > 0 {
		starts[0].from = 0
		starts[0].other = false
	}
	return starts
}

// goesOn gives the inner verb of "start ladling", "continue to cook", "begin adding".
func goesOn(ts []token, i int) (verb, bool) {
	next := at(ts, i+1)
	switch {
	case ts[i].is("start", "begin", "continue", "resume"):
	case ts[i].is("ask"):
		for k := i + 1; k < min(i+6, len(ts)); k++ {
			if ts[k].is("to") {
				next = at(ts, k+1) // "ask a grown-up to switch on the oven"
				break
			}
		}
	case ts[i].is("carry", "go", "keep") && next.is("on"):
		i++
		next = at(ts, i+1)
	default:
		return verb{}, false
	}
	if next.is("to", "by") {
		next = at(ts, i+2)
	}
	if v, ok := verbs[next.text]; ok && next.kind == word {
		return v, true
	}
	if strings.HasSuffix(next.text, "ing") {
		v, ok := verbByStem[next.stem]
		return v, ok
	}
	return verb{}, false
}

// subordinate says that the modal at j belongs to a clause that only explains: "while you prepare", "it might burn".
func subordinate(ts []token, j int) bool {
	for j > 0 && (modals[ts[j-1].text] || ts[j-1].isAdverb()) {
		j--
	}
	if !ts[j].is("you", "we", "i", "please") {
		return at(ts, j-1).kind == word && !at(ts, j-1).is("then", "and", "optionally")
	}
	return at(ts, j-1).is("while", "whilst", "until", "till", "when", "as", "if", "before", "that", "where", "what", "which", "once", "how", "because", "than", "after", "like", "so", "since")
}

// unknownVerb takes the first word of a sentence for a verb that is in no table, when "the" or the like follows it.
func unknownVerb(ts []token) (clause, bool) {
	i := 0
	for i < len(ts) && (ts[i].isAdverb() || ts[i].kind == sign) {
		i++
	}
	t := at(ts, i)
	if t.kind != word || len(t.text) < 3 || opens(t) || modals[t.text] || negations[t.text] || strings.HasSuffix(t.text, "ing") || strings.HasSuffix(t.text, "ed") ||
		t.is("the", "this", "that", "these", "those", "there", "here", "but", "and", "also", "all", "each", "both", "some", "are", "was", "were", "has", "have", "does", "did", "not", "what", "which", "who", "why", "how", "like", "than", "because", "although", "though", "since", "until", "unless", "you'll", "it's", "they", "she", "note", "tip", "see", "store", "keeps", "being", "let's", "such", "from", "about", "between", "under", "out", "off", "love", "thank", "thanks", "mrs", "mr", "miss", "ms", "dr", "yours", "regards", "cheers", "dear", "best") {
		return clause{}, false
	}
	if !at(ts, i+1).is("the", "a", "an", "your", "each", "it", "them", "both", "some", "any", "everything", "all", "this") {
		return clause{}, false
	}
	return clause{at: i, verb: verb{name: t.text, deed: works}}, true
}

// carriesOn says whether a new stretch begins at i without a verb: "then another 5 minutes", "then 20 minutes uncovered".
func carriesOn(ts []token, i int) bool {
	if !ts[i].is("then", "followed") {
		return false
	}
	for j := i + 1; j < min(i+8, len(ts)); j++ {
		if _, next := readDuration(ts, j); next > j {
			return true
		}
		if _, next := readAtom(ts, j); next > j {
			j = next - 1
			continue
		}
		if !ts[j].is("by", "for", "another", "a", "further", "at", "about", "an", "additional", "uncovered", "covered", "without", "with", "lid", "the", "on", "in", "oven", "low", "over", "heat", "high", "medium", "down", "to", "back", "off", "out", "up", "approx", "around", "rest", "final", "last") {
			return false
		}
	}
	return false
}

// clauseHead is the index where the clause of the verb at i begins: its adverbs and the word that joins it.
func clauseHead(ts []token, i int) int {
	for i > 0 && (ts[i-1].isAdverb() || modals[ts[i-1].text]) {
		i--
	}
	for i > 0 && ts[i-1].is("and", "then", "or", "&", "before", "(", "by", "to", "but") {
		i--
	}
	return i
}

// verbal says whether the word at i, which may be a verb, is one that tells what to do.
func verbal(ts []token, i int, first bool) bool {
	j := i - 1
	for j >= 0 && !ts[j].is("then", "now", "next", "finally", "meanwhile") && (ts[j].isAdverb() || ts[j].is("*", "_", "[", "\"", "(") || ts[i].is(fryingVerbs...) && ts[j].is(fryingWords...)) {
		j--
	}
	prev := at(ts, j)
	if prev.is("or", ",") && forbids(ts, i) {
		return false
	}
	if prev.is("the") && at(ts, j-1).is("and") && !nounsToo[ts[i].text] {
		prev = at(ts, j-1) // a slip for "then"
	}
	if negations[prev.text] || at(ts, i-1).is("once") && i == 1 && nounsToo[ts[i].text] && at(ts, i+1).kind != word {
		return false
	}
	t, next := ts[i], at(ts, i+1)
	if t.is("mark") && next.kind == number {
		return false // the gas mark
	}
	if t.is(fryingWords...) && next.is(fryingVerbs...) {
		return false // the verb is the next word
	}
	if t.is("skin", "bone", "shell", "core", "stone", "top", "stalk", "shells", "root") && next.is("on", "off", "side", "in") {
		return false // "skin on"
	}
	if next.is(":") && i > 1 && prev.kind == word && !prev.is("and", "then") {
		return false // "bake until set: 25 minutes"
	}
	if next.is(":") {
		_, verb := isVerb(ts, i+2)
		return i > 1 || !verb // "Glaze: mix ..." is a label, "In a bowl, mix: oats ..." is not
	}
	switch {
	case afterFigure(ts, j) && !describesNoun(ts, i) && !t.is("rest", "set", "stand"):
		return !nounsToo[t.text] || verbContext(ts, i, prev) || !t.is("cool", "warm", "cream", "brown", "dry") && next.kind == word && !next.is("time", "heat", "oven", "temperature")
	case j < 0, prev.is(";") && next.kind == word:
		return !(nounsToo[t.text] && nounFollows(t, next, i == len(ts)-1)) || next.kind == word && verbalNext[next.text]
	case prev.is(",", ";", ":", "-", "and", "then", "or", "&", "/", ")", ".", "but", "!", "now", "next", "finally", "meanwhile", "|", "+", ">"):
		if t.is("set") && at(ts, i+1).is("aside") {
			return true
		}
		if nounsToo[t.text] {
			return verbContext(ts, i, prev) || first && prev.is(",") && opens(ts[0]) && next.kind == word && !next.is("and", "or")
		}
		return !describesNoun(ts, i)
	case modals[prev.text]:
		return !subordinate(ts, j) && !t.is("take", "need", "wait", "start", "use")
	}
	if _, ok := goesOn(ts, i); ok && first && (opens(ts[0]) || j < 0) {
		return true
	}
	if !first && runVerbs[t.text] && runsOn(ts) && !leadsIn(prev) && !describesNoun(ts, i) {
		return true
	}
	if !first || nounsToo[t.text] && !verbalNext[next.text] {
		return false
	}
	return freeVerb(ts, i, prev)
}

// fryingWords may stand before the verbs of fryingVerbs and belong to them.
var (
	fryingWords = []string{"dry", "deep", "shallow", "pan", "stir", "slow", "air", "pressure", "flash", "oven", "par", "part", "blind", "hard", "soft", "batch"}
	fryingVerbs = []string{"fry", "cook", "roast", "bake", "boil", "poach"}
)

// afterFigure says that the token at j ends a time or a temperature: in texts
// without stops a new clause may begin after it ("fry onion 5 mins add stock").
func afterFigure(ts []token, j int) bool {
	t := at(ts, j)
	if t.kind != word {
		return false
	}
	return timeUnits[t.text] > 0 && (at(ts, j-1).kind == number || numberWords[at(ts, j-1).text] > 0 || at(ts, j-1).is("a", "an")) || t.is("c", "f") && at(ts, j-1).kind == number && at(ts, j-1).value > 80 ||
		t.is("more", "longer") && timeUnits[at(ts, j-1).text] > 0
}

// runsOn says that a sentence of some length has no stops inside: a scribble in
// which one job follows the other ("slice peppers put in bowl leave 10 mins").
func runsOn(ts []token) bool {
	stops := 0
	for i, t := range ts {
		stops += boolInt(t.is(",", ";", ":", "(", ".") && i < len(ts)-1)
	}
	return len(ts) >= 9 && stops*20 < len(ts)
}

// runVerbs are the verbs that begin a job in a sentence that runs on, whatever noun stands before them.
var runVerbs = set("add put pour stir fry simmer bake boil leave chill serve drain whisk beat fold chop slice heat cook knead tip place transfer bring remove take sprinkle mash melt preheat divide blend season sieve")

// leadsIn says that a word stands before a verb that does not tell what to do: "to stir", "you add", "the cut", "which melt".
func leadsIn(t token) bool {
	return t.kind == sign || t.isAdverb() || modals[t.text] || negations[t.text] || t.is("the", "a", "an", "of", "to", "your", "with", "is", "are", "until", "till", "this", "that", "these", "those", "some", "no", "each", "it", "they", "them", "for", "be", "who", "which", "in", "on", "at", "as", "its", "if", "when", "while", "more", "from", "was",
		"has", "have", "than", "so", "just", "by", "into", "onto", "over", "under", "about", "before", "after", "once", "because", "let", "help", "make", "makes", "how", "what", "where", "like", "one", "two", "being", "been", "does", "do", "every", "any", "or", "without", "using", "keep", "you'll", "also", "hot", "cold", "quick", "good", "big", "little", "freshly", "up", "dry", "warm", "cool", "cooling", "oven", "second", "final", "first", "work", "safe", "medium", "low", "high", "gentle", "moderate", "steady", "medium-high", "medium-low", "full", "slow", "rolling")
}

// forbids says that the sentence begins with a warning that holds for the verb at i too: "do not bake, chill or freeze".
func forbids(ts []token, i int) bool {
	if !ts[0].is("don't", "never") && !(ts[0].is("do") && at(ts, 1).is("not")) {
		return false
	}
	return !hasAny(ts[:i], "but", "then", ";", "just", "instead") && hasAny(ts, "or", "nor")
}

// nounFollows says that the word before is an adjective or noun: "Brown sugar", "Cream,".
func nounFollows(t, next token, last bool) bool {
	return !last && t.is("brown", "cream", "warm", "cool", "dry", "salt", "butter", "top", "core", "steam") && next.is("sugar", "rice", "bread", "cheese", "sauce", "powder", "chops", "of")
}

// verbContext decides an ambiguous word inside a sentence by what follows it.
func verbContext(ts []token, i int, prev token) bool {
	next := at(ts, i+1)
	last := i == len(ts)-1 || next.is(".", ";", "!")
	switch {
	case next.kind == word && verbalNext[next.text]:
		return !(next.is("butter", "sugar", "cream", "flour") && ts[i].is("brown", "butter", "cream", "ice", "salt")) || ts[i].is("cream")
	case ts[i].is("heat", "cook", "simmer", "chill", "drain", "bake", "boil", "rest", "cool", "fry", "whisk", "blend", "peel", "slice", "dice", "grate", "season", "soak", "mix", "toast", "cut", "turn", "rise", "wash", "cover"):
		if last || next.is(",", "and", "(") || next.kind == number {
			return !prev.is("or", "/") || last
		}
		return next.kind == word && !describesNoun(ts, i)
	case last:
		return ts[i].is("serve", "steam", "glaze", "roll", "stew", "spread", "split")
	case next.kind == number, manner(next):
		return true
	}
	_, after := readDuration(ts, i+1)
	return after > i+1
}

// manner says that a word is an adverb of manner after a verb: "brown nicely".
func manner(next token) bool {
	return next.kind == word && strings.HasSuffix(next.text, "ly") && len(next.text) > 4
}

// describesNoun says that a plain verb form stands as a noun: before "time", "of", "is".
func describesNoun(ts []token, i int) bool {
	return at(ts, i+1).is("of", "is", "are", "was", "time", "should", "has", "mixture", "will")
}

// freeVerb says whether the first verb of a sentence may stand in its middle: after an opening such as "When cold" or "In a bowl".
func freeVerb(ts []token, i int, prev token) bool {
	if prev.kind != word && prev.kind != number {
		return false
	}
	if prev.is("that") && i == 2 && ts[0].is("after") {
		return true
	}
	if prev.is("the", "a", "an", "of", "to", "your", "with", "is", "are", "until", "this", "that", "some", "no", "each", "it", "they", "for", "and", "be", "who", "which", "in", "on", "at", "as", "its", "if", "or", "when", "while", "more", "from", "was", "has", "have", "than", "not") {
		return false
	}
	if !opens(ts[0]) {
		return false
	}
	return !nounsToo[ts[i].text] || verbalNext[at(ts, i+1).text]
}

// opens says that a sentence begins with words that lead up to its verb.
func opens(t token) bool {
	return t.is("when", "once", "if", "after", "as", "in", "on", "with", "using", "with", "at", "meanwhile", "while", "whilst", "before", "for", "to", "over", "into", "during", "just", "into", "until", "optionally", "now", "finally", "then", "also", "next", "optional", "method", "or", "sauce", "start", "i") ||
		t.isAdverb() || t.kind == sign
}

// startsWithVerb says whether the first word, adverbs apart, is a verb in its plain form.
func startsWithVerb(ts []token) bool {
	for i := range ts {
		if ts[i].kind == sign || ts[i].isAdverb() {
			continue
		}
		_, ok := isVerb(ts, i)
		return ok
	}
	return false
}
