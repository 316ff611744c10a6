package recipe

import (
	"fmt"
	"math"
)

// batches finds what is cooked in turns ("one at a time", "in batches of 3")
// and how many turns there are, where the number of pieces is known: the
// minutes that are said for one turn count for each. Pieces are those that the
// recipe says it makes or that the method divides the food into.
func batches(jobs []job, makes int) {
	pieces := makes
	for i := range jobs {
		j := &jobs[i]
		if n := divided(j.ts); n > 0 {
			pieces = n
		}
		turns, n := turnsOf(j, pieces)
		if all := allInBatches(j); turns < 2 && all > 1 && (goesToHeat(j) || bakesNow(j)) {
			j.turns = all
			continue
		}
		if turns < 2 {
			continue
		}
		for k := i; k < len(jobs) && jobs[k].it == j.it; k++ {
			if k == i || goesOnTurn(&jobs[k]) {
				jobs[k].turns, jobs[k].pieces = turns, n
			}
			if k > i && !goesOnTurn(&jobs[k]) {
				break
			}
		}
	}
}

// goesOnTurn says that a job is more of the same turn: "then flip and cook for 30 seconds on the other side".
func goesOnTurn(j *job) bool { return hasAny(j.ts, "flip", "other", "turn") && goesToHeat(j) }

// divided is the number of pieces that a job makes of the food: "divide into 10 balls"; 0: none.
func divided(ts []token) int {
	for i, t := range ts {
		if t.is("in", "into") && hasAny(ts[max(0, i-5):i], "divide", "cut", "split") {
			if v, next := readNumber(ts, i+1); next > i+1 && v >= 2 && v <= 60 && v == math.Trunc(v) && at(ts, next).is("and", ",", ".", "then") {
				return int(v) // "divide in 6 and roll out"
			}
		}
		if !t.is("into", "out", "make", "form", "shape", "roll") {
			continue
		}
		j := i + 1
		for at(ts, j).is("about", "around", "equal", "up") {
			j++
		}
		v, next := readNumber(ts, j)
		for at(ts, next).is("equal", "equal-sized", "even", "small", "large", "round", "flat", "little", "thin") {
			next++
		}
		if next > j && v >= 2 && v <= 60 && v == math.Trunc(v) && at(ts, next).is("balls", "pieces", "portions", "rounds", "circles", "patties", "rolls", "buns", "cakes", "fishcakes", "burgers", "discs", "ovals", "flatbreads", "pancakes", "koftas", "fritters", "meatballs", "dumplings", "parcels") {
			return int(v)
		}
	}
	return 0
}

// turnsOf is how many turns a timed job on the heat takes, with the pieces a turn; 0: not said or not known.
func turnsOf(j *job, pieces int) (turns, each int) {
	if !goesToHeat(j) && !bakesNow(j) {
		return 0, 0
	}
	if n := namedBatches(j.ts); n > 0 {
		return n, 0
	}
	each = eachTurn(j.ts)
	if each == 0 && ladled(j) {
		each = 1
	}
	if each == 0 || pieces <= each {
		return 0, 0
	}
	return (pieces + each - 1) / each, each
}

func bakesNow(j *job) bool { return j.waiting() != nil && hotPlace(j.waiting().place) }

// namedBatches reads "in two batches", "in 3 lots".
func namedBatches(ts []token) int {
	for i, t := range ts {
		if t.is("batches", "lots") {
			if v, next := readNumber(ts, i-1); next == i && v >= 2 && v <= 12 {
				return int(v)
			}
		}
	}
	return 0
}

// allInBatches reads a sentence of its own about all that is said before it in
// the item, "Do this in 2 batches": the turns; 0: there is none.
func allInBatches(j *job) int {
	for i, t := range j.it.ts {
		if t.is("do", "cook", "work", "fry") && at(j.it.ts, i+1).is("this", "these", "it", "them", "in") && (i == 0 || at(j.it.ts, i-1).kind == sign) && i >= j.from {
			if n := namedBatches(j.it.ts[i:min(i+6, len(j.it.ts))]); n > 0 && (i >= j.to || len(j.clauses) > 0) {
				return n
			}
		}
	}
	return 0
}

// eachTurn reads "one at a time", "2 or 3 at a time" (the fewer), "in batches of 3"; 0: none.
func eachTurn(ts []token) int {
	for i, t := range ts {
		switch {
		case t.is("batches") && at(ts, i+1).is("of"):
			if v, next := readSpan(ts, i+2); next > i+2 {
				return int(v.low)
			}
		case t.is("at") && at(ts, i+1).is("a") && at(ts, i+2).is("time", "go") && !at(ts, i+3).is("if"):
			for back := 4; back >= 1; back-- {
				if v, next := readSpan(ts, i-back); next > i-back && next >= i-1 && next <= i {
					return int(v.low)
				}
			}
		}
	}
	return 0
}

// ladled says that batter for one goes into the pan and the rest follows in turn.
func ladled(j *job) bool {
	return has(j.it.ts, "a ladle", "a ladleful", "a ladle of") && has(j.it.ts, "repeat", "remaining batter", "rest of the batter", "all the batter")
}

// inTurns says why minutes are multiplied.
func (j *job) inTurns() string {
	if j.pieces > 0 {
		return fmt.Sprintf("%d at a time: %d times over", j.pieces, j.turns)
	}
	return fmt.Sprintf("in %d batches: %d times over", j.turns, j.turns)
}
