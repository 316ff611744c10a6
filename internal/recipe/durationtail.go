package recipe

// atLeast reads "or for at least 8 hours" after a night that ends at token next.
func atLeast(ts []token, i, next int) (stretch, int) {
	if !ts[i].is("overnight") {
		return stretch{}, next
	}
	j := next + boolInt(at(ts, next).is(",", "(")) // or "overnight (at least 8 hours)"
	j += boolInt(at(ts, j).is("or"))
	j += boolInt(at(ts, j).is("for"))
	if !at(ts, j).is("at") || !at(ts, j+1).is("least") {
		return stretch{}, next
	}
	s, end := readStretch(ts, j+2)
	if end == j+2 {
		return stretch{}, next
	}
	return s, end
}

// rangeTail reads "to half an hour" after a first time with its own unit.
func rangeTail(ts []token, i int, between bool) (stretch, int) {
	j := i
	if at(ts, j).is(",") && (at(ts, j+1).is("or") && at(ts, j+2).is("overnight", "even") || at(ts, j+1).is("up") && at(ts, j+2).is("to")) {
		j++
	}
	if at(ts, j).is(",") && at(ts, j+1).is("or") && at(ts, j+2).is("up") {
		j++
	}
	if at(ts, j).is("up") && at(ts, j+1).is("to") && at(ts, i).is(",") {
		j++
	}
	if at(ts, j).is(",") && at(ts, j+1).is("perhaps", "maybe", "possibly", "even", "or") && !at(ts, j+2).is("if") {
		if s, next := readStretch(ts, j+2); next > j+2 {
			return s, next // "an hour, perhaps an hour and ten"
		}
	}
	for k := j + boolInt(at(ts, j).is(",", "(", "-")); k > j || at(ts, k).is("better", "preferably", "ideally"); k++ {
		if at(ts, k).is("overnight") && k > j+1 {
			return stretch{480, 720, true}, k + 1 // "1 hour, better overnight"
		}
		if !at(ts, k).is("better", "best", "preferably", "ideally", "even", "still", "if", "you", "can", "but", "and", "or") {
			break
		}
	}
	if at(ts, j).is(",") && (at(ts, j+1).is("and", "but") && at(ts, j+2).is("overnight") || at(ts, j+1).is("preferably", "ideally") && at(ts, j+2).is("overnight")) {
		return stretch{480, 720, true}, j + 3
	}
	if !at(ts, j).is("to", "-", "or", "until", "till") && !(between && at(ts, j).is("and")) {
		return stretch{}, i
	}
	j++
	if at(ts, j).is("up", "even") {
		j += 1 + boolInt(at(ts, j+1).is("to"))
	}
	if at(ts, j).is("two") && at(ts, j-1).is("or") && at(ts, i-1).kind == word && timeUnits[at(ts, i-1).text] > 0 && timeUnits[at(ts, j+1).text] == 0 {
		u := timeUnits[at(ts, i-1).text]
		return stretch{low: 2 * u, high: 2 * u}, j + 1 // "a minute or two"
	}
	if at(ts, j).is("so") {
		return stretch{}, i
	}
	s, next := readStretch(ts, j)
	if next == j {
		return stretch{}, i
	}
	return s, next
}

// elliptical reads minutes that are not called so: "for another 10", "for 10 more", "for the last 5".
func elliptical(ts []token, i int) (stretch, int) {
	s, next := readSpan(ts, i)
	if next == i || s.low < 1 || s.high > 90 || at(ts, i).kind != number && !(at(ts, i-1).is("another", "further") && s.low >= 2) {
		return stretch{}, i
	}
	if at(ts, i-1).is("every", "after", "at") && tendsBefore(ts, i-1) && closesPhrase(ts, next) {
		return stretch{low: s.low, high: s.high}, next // "basting every 10"
	}
	if at(ts, i-1).is("plus", "+") || at(ts, i-1).is("and") && at(ts, next).is("over", "extra") {
		if perWeightNear(ts, i) {
			return stretch{low: s.low, high: s.high}, next + boolInt(at(ts, next).is("over", "extra", "more"))
		}
	}
	j, leads := i-1, false
	for at(ts, j).is("another", "further", "last", "final", "remaining", "additional", "extra", "first", "about", "around", "a", "the", "an") {
		leads = leads || !at(ts, j).is("about", "around", "a", "the", "an", "first")
		j--
	}
	end := next
	if at(ts, end).is("more") {
		leads, end = true, end+1
	}
	if !leads && at(ts, i-1).is("for") && (end == len(ts) || at(ts, end).is(".") && at(ts, end).kind == sign) {
		leads = has(ts[max(0, i-25):i], "fry", "cook", "bake", "simmer", "boil", "knead", "chill", "roast", "grill", "microwave", "steam", "saute", "poach")
	}
	bare := at(ts, end-1).is("more") && (verbs[at(ts, i-1).text].deed == cooks || verbs[at(ts, i-1).text].deed == fries || verbs[at(ts, i-1).text].deed == waits) && verbs[at(ts, i-1).text].name != ""
	if !leads || !at(ts, j).is("for") && !bare && !(at(ts, j).is("wait") && leads) {
		return stretch{}, i
	}
	if n := at(ts, end); n.kind == number || n.is("°", "/", "x", "%", "-") || n.kind == word && !n.is("until", "till", "or", "and", "then", "with", "at", "uncovered", "covered", "on", "in", "if", "so", "before", "while", "off") {
		return stretch{}, i
	}
	return stretch{low: s.low, high: s.high}, end
}

// tendsBefore says that the words before token i in the same phrase see to food that waits: "giving it a shake".
func tendsBefore(ts []token, i int) bool {
	for j := i - 1; j >= max(0, i-8); j-- {
		if tends[ts[j].text] {
			return true
		}
		if ts[j].is(".", ";", "(") {
			return false
		}
	}
	return false
}

// closesPhrase says that a phrase ends before token i.
func closesPhrase(ts []token, i int) bool {
	t := at(ts, i)
	return i >= len(ts) || t.is(",", ".", ";", ")", "!") && !(t.is(".", ",") && at(ts, i+1).kind == number && !at(ts, i+1).gap) || t.is("and", "until", "or", "to", "so", "then")
}
