package recipe

// sentences gives the ranges of tokens of the sentences of an item. A full
// stop inside brackets ends no sentence while the bracket is short.
func sentences(ts []token) [][2]int {
	var out [][2]int
	from, closes := 0, -1
	for i, t := range ts {
		if t.is("(") {
			closes = max(closes, closing(ts, i))
		}
		if !t.is(".", "!", "?") || i < closes || i+1 < len(ts) && (!ts[i+1].gap || abbreviated(ts, i)) {
			continue
		}
		if i+1 < len(ts) && at(ts, i+1).is(")", "]") {
			continue
		}
		out = append(out, [2]int{from, i + 1})
		from = i + 1
	}
	if from < len(ts) {
		out = append(out, [2]int{from, len(ts)})
	}
	return joinScraps(ts, out)
}

// closing is the index of the bracket that closes the one at i, when it stands near; else -1.
func closing(ts []token, i int) int {
	for j := i + 1; j < min(i+16, len(ts)); j++ {
		if ts[j].is(")") {
			return j
		}
	}
	return -1
}

// joinScraps joins pieces without a word to the sentence before them.
func joinScraps(ts []token, in [][2]int) [][2]int {
	var out [][2]int
	for _, s := range in {
		words := 0
		for _, t := range ts[s[0]:s[1]] {
			words += boolInt(t.kind != sign)
		}
		if words == 0 && len(out) > 0 {
			out[len(out)-1][1] = s[1]
			continue
		}
		out = append(out, s)
	}
	return out
}

// abbreviated says whether the full stop at i belongs to a short form.
func abbreviated(ts []token, i int) bool {
	p, next := at(ts, i-1), at(ts, i+1)
	if p.is("e", "g", "i", "eg", "ie", "approx", "vs", "no", "th", "fig") {
		return true
	}
	if p.is("deg", "degs", "reg") || p.is("c", "f") && next.is("mark", "gas", "fan", "or") {
		return true
	}
	if p.is("min", "mins", "hr", "hrs", "tbsp", "tbs", "tsp", "oz", "lb", "lbs", "sec", "secs", "c", "f", "cm", "in", "ins", "pt", "pts", "fl", "qt", "qts", "pkg", "pkt", "tbl", "temp") {
		return !next.upper && !(timeUnits[p.text] > 0 && (runVerbs[next.text] || next.is("while", "when", "meanwhile", "then", "once", "after", "next", "now")))
	}
	return p.kind == number && next.kind == number
}
