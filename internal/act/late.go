package act

// speaksOfLate says whether a sentence begins at token i that says what is
// done if something goes wrong: "if late leave the garnish", "behind? skip the icing".
func (r *reader) speaksOfLate(i int) bool {
	t, next := r.ts[i], at(r.ts, i+1)
	if t.kind != word || i > 0 && at(r.ts, i-1).kind != sign || i > 0 && at(r.ts, i-1).is(",", "/", "+", "&", "-") && !t.is("if") {
		return false
	}
	switch {
	case t.is("late", "behind", "contingency", "backup"):
		return i > 0 || next.kind == sign || next.is("then")
	case t.is("plan") && next.is("b"), t.is("running") && next.is("late", "behind", "out", "short"):
		return true
	case !t.is("if", "should"):
		return false
	}
	for k := i + 1; k < min(i+9, len(r.ts)) && (r.ts[k].kind != sign || r.ts[k].is("'")); k++ {
		if r.ts[k].is("late", "behind", "slow", "wrong", "rushed", "run", "running", "short") {
			return true
		}
	}
	return false
}

// mustWait says whether an aside tells for how long something waits: "because
// it has to marinate for 30 minutes", "so it can rest 20 mins".
func (r *reader) mustWait(i int, f found) bool {
	if !r.ts[r.aside.at].is("because", "as", "so", "since", "which") || !waitKinds[f.kind] || !at(r.ts, i-1).is("to", "can", "must") {
		return false
	}
	for k := i + 1; k < len(r.ts) && !r.ts[k].is(".", ";", "\n"); k++ {
		if r.ts[k].kind == number && (minuteWords[at(r.ts, k+1).text] || hourWords[at(r.ts, k+1).text]) {
			return true
		}
	}
	return false
}
