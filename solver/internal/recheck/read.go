package recheck

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"plait.example/solver/problem"
)

func (c *checker) number(word string) (int, bool) {
	n, err := strconv.Atoi(word)
	if err != nil || n > farthest/4 || n < -farthest/4 {
		c.fault("%q is not a number that can be", word)
		return 0, false
	}
	return n, true
}

func (c *checker) numbers(words []string) ([]int, bool) {
	var list []int
	for _, w := range words {
		n, ok := c.number(w)
		if !ok {
			return nil, false
		}
		list = append(list, n)
	}
	return list, true
}

// goal reads the index of an objective and a number.
func (c *checker) goal(words []string) (k, v int, ok bool) {
	list, ok := c.numbers(words)
	if !ok {
		return 0, 0, false
	}
	if len(list) != 2 || list[0] < 0 || list[0] >= len(c.values) {
		c.fault("there must be an objective, 0 to %d, and a number", len(c.values)-1)
		return 0, 0, false
	}
	return list[0], list[1], true
}

func (c *checker) clause(words []string) ([]lit, bool) {
	var out []lit
	for _, w := range words {
		l, ok := c.literal(w)
		if !ok {
			return nil, false
		}
		out = append(out, l)
	}
	return out, true
}

// literal reads name>=k, name<=k, name or !name.
func (c *checker) literal(word string) (lit, bool) {
	name, k, upper := word, 1, false
	if head, tail, found := strings.Cut(word, ">="); found {
		n, ok := c.number(tail)
		if !ok {
			return lit{}, false
		}
		name, k = head, n
	} else if head, tail, found := strings.Cut(word, "<="); found {
		n, ok := c.number(tail)
		if !ok {
			return lit{}, false
		}
		name, k, upper = head, n, true
	} else if tail, found := strings.CutPrefix(word, "!"); found {
		name, k, upper = tail, 0, true
	}
	w, known := c.names[name]
	if !known {
		c.fault("%q names nothing", name)
		return lit{}, false
	}
	if k > farthest/4/w.scale || k < -farthest/4/w.scale {
		c.fault("%q is out of range", word)
		return lit{}, false
	}
	switch {
	case upper:
		return lit{w.v, atMost, w.base + w.scale*k}, true
	case w.scale == 1:
		return lit{w.v, atLeast, w.base + k}, true
	}
	return lit{w.v, atLeast, w.base + w.scale*(k-1) + 1}, true
}

// term reads name, name+k, name-k or k.
func (c *checker) term(word string) (term, bool) {
	at := strings.LastIndexAny(word, "+-")
	name, add := word, 0
	if at > 0 {
		n, ok := c.number(word[at:])
		if !ok {
			return term{}, false
		}
		name, add = word[:at], n
	}
	if w, known := c.names[name]; known && w.scale == 1 {
		return term{w.v, w.base + add}, true
	}
	n, ok := c.number(name)
	return term{c.zero, n}, ok
}

// let reads a definition: a name, a kind, and what the kind asks for.
func (c *checker) let(words []string) {
	if len(words) < 2 {
		c.fault("a definition has a name and a meaning")
		return
	}
	name, kind, rest := words[0], words[1], words[2:]
	if _, known := c.names[name]; known || strings.ContainsAny(name, "!<>=+-") {
		c.fault("%q cannot be defined here", name)
		return
	}
	w, ok := c.meaning(kind, rest)
	if !ok {
		c.fault("%q with %q is no meaning", kind, strings.Join(rest, " "))
		return
	}
	c.names[name] = w
}

// make adds a variable to the problem as it is at the beginning and now.
func (c *checker) make(lo, hi int) view {
	c.begin.add(lo, hi)
	return view{c.root.add(lo, hi), 0, 1}
}

func (c *checker) meaning(kind string, words []string) (view, bool) {
	switch kind {
	case "lag":
		if len(words) != 3 {
			return view{}, false
		}
		from, okFrom := c.term(words[0])
		to, okTo := c.term(words[1])
		least, okLeast := c.number(words[2])
		if !okFrom || !okTo || !okLeast {
			return view{}, false
		}
		w := c.make(0, 1)
		c.truth(w.v, apart{from, to, least})
		return w, true
	case "span":
		return c.spanOf(words)
	case "all":
		lits, ok := c.clause(words)
		w := c.make(0, 1)
		c.alls = append(c.alls, all{w.v, lits})
		return w, ok
	}
	k, ok := c.numbers(words)
	if !ok {
		return view{}, false
	}
	activity := len(k) > 0 && k[0] >= 0 && k[0] < c.n
	switch {
	case kind == "makespan" && len(k) == 0:
		return view{c.last, 0, 1}, true
	case kind == "start" && len(k) == 1 && activity:
		return view{c.startOf(k[0]), 0, 1}, true
	case kind == "end" && len(k) == 1 && activity:
		return view{c.endOf(k[0]), 0, 1}, true
	case kind == "mode" && len(k) == 2 && activity && k[1] >= 0 && k[1] < len(c.modes[k[0]]):
		return view{c.modes[k[0]][k[1]], 0, 1}, true
	case kind == "switches" && len(k) == 1 && k[0] >= 0 && k[0] < len(c.counts):
		return view{c.counts[k[0]], 0, 1}, true
	case kind == "goal" && len(k) == 3 && k[0] >= 0 && k[0] < len(c.values) && k[2] >= 1:
		return view{c.values[k[0]], k[1], k[2]}, true
	}
	return c.ofState(kind, k)
}

// column reads starts, ends or modes of the schedule.
func (c *checker) column(which string, words []string) {
	list, ok := c.numbers(words)
	if !ok {
		return
	}
	switch which {
	case "starts":
		c.schedule.Start = list
	case "ends":
		c.schedule.End = list
	default:
		c.schedule.Mode = list
	}
}

// change reads a change of the schedule.
func (c *checker) change(words []string) {
	k, ok := c.numbers(words)
	if !ok {
		return
	}
	if len(k) != 3 || k[0] < 0 || k[0] >= len(c.p.States) || k[1] < 0 || k[1] >= len(c.p.States[k[0]].Levels) {
		c.fault("a change must be a state, a level of it, and a time: %s", fmt.Sprint(words))
		return
	}
	c.schedule.Changes = append(c.schedule.Changes, problem.StateChange{State: k[0], Level: k[1], At: k[2]})
	slices.SortStableFunc(c.schedule.Changes, func(a, b problem.StateChange) int { return a.At - b.At })
}
