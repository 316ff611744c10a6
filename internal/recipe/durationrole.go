package recipe

// qualify widens the stretch by the words around it and says what it means.
func qualify(ts []token, d *duration) {
	first := false
	for back := d.from - 1; back >= 0 && back >= d.from-5; back-- {
		switch t := at(ts, back); {
		case t.is("about", "around", "approx", "approximately", "roughly", "another", "further", "the", "a", "an", "~", "≈", "(", "more", "additional", "next", "just", ".", "some", "only", "for", "extra", "full", "good"):
			continue
		case t.is("first"):
			first = true
			continue
		case t.is("last", "final"):
			if !at(ts, back-1).is("a") {
				d.role = ends // "for the final 10 minutes"; "a final 10 minutes" come on top
			}
			continue
		case t.is("remaining"):
			d.role, d.rest = ends, true
			continue
		case t.is("least", "minimum"):
			d.open = true
		case t.is("within") && has(ts[max(0, back-4):back], "eat", "use", "serve", "best", "consume", "drink"):
			d.role = describes // how long it keeps
		case t.is("to") && at(ts, back-1).is("up"), t.is("maximum", "most", "within", "under"), t.is("of") && at(ts, back-1).is("maximum", "max"),
			t.is("than") && (at(ts, back-1).is("less", "under") || at(ts, back-1).is("more", "longer") && at(ts, back-2).is("no", "not", "never")):
			d.capped = true
		case t.is("than") && at(ts, back-1).is("more", "longer"):
			d.open = true
		case t.is("in") && has(ts[max(0, back-14):back], "cube of", "bread dropped", "piece of bread"):
			d.role = describes // how hot the oil is
		case t.is("keep", "keeps", "store", "stores", "lasts", "per"):
			d.role = describes
		case t.is("after"):
			d.role = refersBack
		case t.is("every", "each"):
			d.role = recurs
		case t.is("halfway", "through") && has(ts[max(0, back-3):back+1], "halfway", "half way", "half-way", "part way"):
			d.role = ends
		case t.is("at") && d.least == d.most && d.from == back+1 && !at(ts, d.to).is("intervals", "interval"):
			d.role = describes // "turn at 15 minutes"
		case t.is("at", "in") && at(ts, d.to).is("intervals", "interval", "bursts"):
			d.role = recurs
		}
		break
	}
	if first && d.role == lasts {
		d.role = ends
	}
	qualifyAfter(ts, d)
	if before := sinceSign(ts, d.from); has(before, "each side", "per side", "either side", "both sides") && d.role == lasts && !sides(ts[d.to:min(d.to+5, len(ts))]) {
		d.times(2)
	}
}

// sinceSign is the tokens before i back to the last sign or joining word.
func sinceSign(ts []token, i int) []token {
	j := i
	for j > max(0, i-9) && ts[j-1].kind != sign && !ts[j-1].is("and", "then") {
		j--
	}
	return ts[j:i]
}

// qualifyAfter does it by the words that follow.
func qualifyAfter(ts []token, d *duration) {
	if at(ts, d.to).is("or") && at(ts, d.to+1).is("so") {
		d.to += 2 // "4 minutes or so on each side"
	}
	if grams, next := perWeight(ts, d.to); grams > 0 {
		d.perGrams, d.rate, d.to = grams, d.exact, next
		return
	}
	t, u := at(ts, d.to), at(ts, d.to+1)
	tail := ts[d.to:min(d.to+5, len(ts))]
	switch {
	case t.is("are", "is", "have", "has") && has(tail, "up", "passed", "over", "gone", "elapsed"):
		d.role = refersBack
	case t.is("from", "off") && has(tail, "the end"),
		t.is("before") && !u.is("you") && hasAny(tail, "end", "ready", "done", "time", "finish", "finishes", "finished", "finishing"):
		d.role = ends
	case t.is("intervals", "interval"), t.is("between") && u.is("each", "every"), t.is("after") && u.is("each", "every"):
		d.role = recurs
	case t.is("or") && u.is("longer", "more", "overnight"), t.is("plus", "+", "minimum"), t.is("at") && u.is("least"):
		d.open = true
		if u.is("overnight") && !d.open {
			d.exact.high = max(d.exact.high, 720)
			d.last(d.exact)
			d.open = false
		}
	case t.is("max", "maximum"), t.is("at") && u.is("most"):
		d.capped = true
	case t.is("per", "a", "each", "on", "either", "/", "for") && sides(tail):
		d.times(2)
	case t.is("per") || t.is("for", "to") && (u.is("every", "each") || has(tail, "the pound", "the lb")):
		d.vague = true
	}
}

// sides says "each side", "per side", "on both sides", "a side".
func sides(ts []token) bool {
	return has(ts, "side") && !has(ts, "one side", "first side", "other side", "second side") && (has(ts, "each", "per", "both", "either") || at(ts, 0).is("a", "/"))
}
