package recipe

import "strings"

// method adds a line to the method: a new item, or more of the last one. ended
// says that the line before was ended on purpose.
func (s *sorter) method(l line, ended bool) {
	if n := len(s.cur.items); n > 0 && timeNote(l) {
		s.cur.items[n-1].add(l)
		s.open = true
		return
	}
	if n := len(s.cur.items); s.open && n > 0 && l.marker == noMarker && !s.bare && continues(s.cur.items[n-1], l, ended) {
		s.cur.items[n-1].add(l)
		return
	}
	s.cur.items = append(s.cur.items, item{start: l.start, end: l.end, ts: l.ts, component: s.comp, numbered: l.marker == numbered || s.bare, late: s.block != ""})
	s.open, s.bare = true, false
	s.takeUp()
}

// add joins a line to the item.
func (it *item) add(l line) {
	it.end = l.end
	next := l.ts
	if whole, ok := brokenWord(it.ts, next); ok {
		it.ts, next = append(it.ts[:len(it.ts)-2:len(it.ts)-2], whole), next[1:]
	} else {
		next = append([]token(nil), next...)
		next[0].gap = true
	}
	it.ts = append(it.ts, next...)
}

// keepHyphen are the first parts of words that keep their hyphen when a line ends in them.
var keepHyphen = set("self half semi non extra medium one two three four deep stir pan well all low high pre full slow fast cold hot soft hard oven")

// brokenWord joins a word that was parted at the end of a line: "fur-" and "ther".
func brokenWord(before, after []token) (token, bool) {
	n := len(before)
	if n < 2 || len(after) == 0 || !before[n-1].is("-") || before[n-1].gap || before[n-2].kind != word || after[0].kind != word || after[0].upper || keepHyphen[before[n-2].text] {
		return token{}, false
	}
	whole := before[n-2]
	whole.text, whole.end = whole.text+after[0].text, after[0].end
	whole.stem = stem(whole.text)
	return whole, true
}

// timeNote says that a line only tells how long the item before it takes: "Time: 10 minutes."
func timeNote(l line) bool {
	return l.marker == noMarker && len(l.ts) <= 8 && at(l.ts, 0).is("time", "takes") && len(durations(l.ts)) > 0
}

// takeUp notes that the last heading has become a component; one that says more goes to Unread.
func (s *sorter) takeUp() {
	if len(s.heads) == 1 && (s.comp == "" || !strings.Contains(s.heads[0], s.comp) || wordCount(tokenize(strings.Replace(s.heads[0], s.comp, "", 1), 0)) > 2) {
		s.cur.unread = append(s.cur.unread, s.heads...)
	}
	s.heads = nil
}

// continues says whether a line without a marker goes on with the item before it.
func continues(it item, l line, ended bool) bool {
	if it.numbered {
		return true
	}
	if ended {
		return false
	}
	if n := len(it.ts); beginsJob(it.ts[n-1], l.ts) {
		return false
	}
	last := it.ts[len(it.ts)-1]
	return !last.is(".", "!", "?", ":", ")") || len(l.ts) > 0 && !l.ts[0].upper
}

// beginsJob says that a line without a stop before it begins a new job: it
// begins with a verb, and the line before does not end in the middle of a phrase.
func beginsJob(last token, ts []token) bool {
	if len(ts) < 3 || last.kind == sign || last.is("and", "then", "or", "&") || leadsIn(last) && !(ts[0].upper && last.isAdverb()) {
		return false
	}
	v, ok := isVerb(ts, 0)
	if ok && ts[0].upper && ts[1].kind == word && startsWithVerb(ts) && !ts[1].is("and", "or", "of") {
		return true
	}
	return ok && !strings.HasSuffix(last.text, "ed") && ts[1].kind != sign && !ts[1].is("and", "or", "of") && (runVerbs[v.name] || !nounsToo[v.name] && verbalNext[ts[1].text])
}
