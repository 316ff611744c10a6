package recipe

import "strings"

// What people write who do not write recipes: amounts behind the food, work
// without a full stop, portions in the title, a message's own head.

// amountBehind says that a line ends in its amount: "mince 500g", "garlic x2",
// "spaghetti 400 g". A time is no amount.
func amountBehind(ts []token) bool {
	n := len(ts)
	if n < 2 || n > 8 || ts[0].kind != word || startsWithVerb(ts) && len(clauses(ts)) > 0 && !units[ts[n-1].text] {
		return false
	}
	switch last, before := ts[n-1], ts[n-2]; {
	case last.kind == number && before.is("x"):
		return n > 2
	case last.kind == word && units[last.text] && before.kind == number:
		return n > 2 && timeUnits[last.text] == 0
	}
	return false
}

// jobWithoutStop says that a short line tells what to do, though no full stop ends
// it: "fry onion+garlic 5 min", "Turn on the grill".
func jobWithoutStop(ts []token) bool {
	return len(ts) >= 3 && startsWithVerb(ts) && len(clauses(ts)) > 0 && (len(durations(ts)) > 0 || verbalNext[ts[1].text])
}

// tipLine says that a line is a tip or a note in a word before a colon: "> Tip: freeze the rest".
func tipLine(ts []token) bool {
	for len(ts) > 0 && ts[0].is(">", "*", "_") {
		ts = ts[1:]
	}
	if at(ts, 0).is("note", "notes", "tip", "nb") && at(ts, 1).is(".", "-") && (at(ts, 2).is("-") || at(ts, 1).is("-")) {
		return true // "NOTE.-The pudding may be baked"
	}
	for i, t := range ts[:min(len(ts), 4)] {
		if t.is(":") && i > 0 {
			return ts[i-1].is("tip", "tips", "note", "notes", "nb", "hint")
		}
	}
	return false
}

// letterMarker is the length of a letter that numbers a line: "a) ", "(b) ".
func letterMarker(s string) int {
	open := 0
	if strings.HasPrefix(s, "(") {
		open = 1
	}
	if len(s) > open+3 && (s[open] >= 'a' && s[open] <= 'z' || s[open] >= 'A' && s[open] <= 'Z') && s[open+1] == ')' && s[open+2] == ' ' {
		return open + 2
	}
	return 0
}

// messageHead says that a line is of the head of a message: "From: Mr Patel", "Hi Year 10,".
func messageHead(ts []token) bool {
	if at(ts, 0).is("hi", "hello", "dear", "hey") {
		return true
	}
	return len(ts) > 1 && ts[0].is("from", "to", "subject", "sent", "cc", "date", "re", "fw", "fwd") && ts[1].is(":")
}

// portionsOfList is the portions that the heading of a list names: "Ingredients (serves 4)",
// "Ingredients for 12 cupcakes"; 0 when it names none.
func portionsOfList(ts []token) int {
	for i := 1; i+1 < len(ts); i++ {
		if !ts[i].is("for", "serves", "makes", "feeds") {
			continue
		}
		v, next := readNumber(ts, i+1)
		if after := at(ts, next); next > i+1 && v >= 1 && v <= 500 && v == float64(int(v)) && !units[after.text] && timeUnits[after.text] == 0 && !after.is("x") {
			return int(v)
		}
	}
	return 0
}

// portionsAtEnd takes "for 4", "for 4 people", "(4 portions)" off the end of a title.
func portionsAtEnd(title string) (string, int) {
	ts := tokenize(title, 0)
	end := len(ts)
	for end > 0 && ts[end-1].is(")", ".") {
		end--
	}
	people := end > 0 && ts[end-1].is("people", "portions", "servings", "persons")
	if people {
		end--
	}
	if end < 2 || ts[end-1].kind != number {
		return title, 0
	}
	v, next := readNumber(ts, end-1)
	from := end - 1
	forSo := ts[end-2].is("for")
	if forSo {
		from--
	}
	if next != end || v < 1 || v > 500 || v != float64(int(v)) || !people && !forSo || from == 0 {
		return title, 0
	}
	rest := trimTitle(title[:ts[from].start])
	if rest == "" {
		return title, 0
	}
	return rest, int(v)
}
