package recipe

import "strings"

// listsInProse takes lists that are written as a sentence, "You will need: 100 g
// flour, 2 eggs and 300 ml milk", out of the method and out of what was not
// understood, and makes lines of a list of them.
func (d *draft) listsInProse(text string) {
	var items []item
	for _, it := range d.items {
		if n := d.proseList(text, it.ts); n > 0 {
			if it.ts = it.ts[n:]; len(it.ts) == 0 {
				continue
			}
			it.start = it.ts[0].start
		}
		items = append(items, it)
	}
	d.items = items
	var unread []string
	for _, u := range d.unread {
		unread = append(unread, d.withoutLists(text, u)...)
	}
	d.unread = append(unread, d.leads...)
}

// withoutLists takes the sentences that are lists out of words that were not
// understood, and gives what is left of them.
func (d *draft) withoutLists(text, u string) []string {
	at := strings.Index(text, u)
	if at < 0 {
		return []string{u}
	}
	ts := readLine(text, at, at+len(u)).ts
	var left []string
	found := false
	for _, s := range sentences(ts) {
		if d.proseList(text, ts[s[0]:s[1]]) > 0 {
			found = true
			continue
		}
		left = append(left, text[ts[s[0]].start:ts[s[1]-1].end])
	}
	if !found {
		return []string{u}
	}
	return left
}

// fewestListed is how many amounts a sentence names at least for it to be a list.
const fewestListed = 2

// proseList takes the list in the first sentence of some tokens and gives the
// number of tokens that it was; 0 when there is none.
func (d *draft) proseList(text string, ts []token) int {
	need := -1
	if s := sentences(ts); len(s) > 0 && takesFirst(ts[:s[0][1]]) && len(d.ingredients) == 0 {
		need = 0
		for i, t := range ts[:min(len(ts), 4)] {
			if t.is("want", "have", "bring", "use", "take", "get", "buy") {
				need = i
				break
			}
		}
	}
	for i, t := range ts[:min(len(ts), 10)] {
		if need < 0 && t.is("need", "needs", "ingredients") {
			need = i
			break
		}
	}
	if need < 0 || need > 0 && startsWithVerb(ts) {
		return 0
	}
	end := len(ts)
	if s := sentences(ts); len(s) > 0 && s[0][1] > need {
		end = s[0][1]
	}
	from := need + 1
	for from < end && ts[from].kind == sign && !ts[from].is("(") {
		from++
	}
	parts := parted(ts[from:end])
	figures := 0
	for _, p := range parts {
		_, next := readNumber(p, 0)
		if next > 0 && timeUnits[at(p, next).text] > 0 {
			return 0 // "needs 20 minutes, 30 when large"
		}
		figures += boolInt(next > 0 || beginsAmount(p, 0))
	}
	if figures < fewestListed || parts[0][0].is("to", "for", "at") {
		return 0
	}
	component, group := "", len(d.ingredients)
	for _, p := range parts {
		if n := forPart(p); n > 0 && n < len(p) && beginsAmount(p, n) {
			component, group = p[n-1].text, len(d.ingredients) // "for the top 600 g soft cheese"
			p = p[n:]
		}
		after := ""
		if n := len(p) - 3; n > 1 && forPart(p[n:]) == 3 {
			after, p = p[n+2].text, p[:n] // "90 g butter for the base"
		}
		l := line{start: p[0].start, end: p[len(p)-1].end, ts: p}
		l.text = text[l.start:l.end]
		d.ingredients = append(d.ingredients, listed{line: l, component: component})
		if after != "" {
			for i := group; i < len(d.ingredients); i++ {
				d.ingredients[i].component = after
			}
			group = len(d.ingredients)
		}
	}
	if lead := ts[:from]; !wholeSectionName(wordsOf(lead)) {
		d.leads = append(d.leads, text[lead[0].start:lead[len(lead)-1].end])
	}
	return end
}

// forPart is the number of tokens of "for the base" at the head of a part of a list; 0: it is not there.
func forPart(ts []token) int {
	if at(ts, 0).is("for") && at(ts, 1).is("the", "your") && at(ts, 2).kind == word {
		return 3
	}
	return 0
}

// parted cuts a list in a sentence at its commas and semicolons outside brackets,
// and at an "and" before a figure.
func parted(ts []token) (parts [][]token) {
	begin, depth := 0, 0
	cut := func(i int) {
		for begin < i && ts[begin].is("and", "&", ",", "then") {
			begin++
		}
		end := i
		for end > begin && ts[end-1].is(".", ",", ";", "!") {
			end--
		}
		if end > begin {
			parts = append(parts, ts[begin:end])
		}
		begin = i
	}
	for i, t := range ts {
		switch {
		case t.is("("):
			depth++
		case t.is(")"):
			depth--
		case depth <= 0 && (t.is(",", ";") || t.is("and", "&", "plus") && beginsAmount(ts, i+1)):
			cut(i)
			begin = i + 1
		}
	}
	cut(len(ts))
	return parts
}

// beginsAmount says that an amount begins at token i: a figure, "two eggs", "a tablespoonful of sugar".
func beginsAmount(ts []token, i int) bool {
	if at(ts, i).is("a", "an") {
		return units[at(ts, i+1).text] || at(ts, i+1).is("quarter", "half", "gill", "little")
	}
	_, next := readNumber(ts, i)
	return next > i
}

// wordsOf is the tokens that are no signs.
func wordsOf(ts []token) (words []token) {
	for _, t := range ts {
		if t.kind != sign {
			words = append(words, t)
		}
	}
	return words
}
