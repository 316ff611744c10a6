package checktest

import (
	"fmt"
	"slices"
	"strconv"
	"strings"
)

// Mishap is something that goes wrong while the cook follows the plan.
type Mishap struct {
	Kind MishapKind
	Row  int // from 1
	Text string
}

// MishapKind is what kind of mishap it is.
type MishapKind string

// The kinds of mishap.
const (
	Burnt    MishapKind = "burnt"    // in the oven far longer than its most, or never taken out
	Raw      MishapKind = "raw"      // taken out before its least
	Clash    MishapKind = "clash"    // the hands, or the eyes, are needed in two places
	Overrun  MishapKind = "overrun"  // not done when the time is up
	ColdOven MishapKind = "cold"     // put into an oven that is not at its temperature
	Backward MishapKind = "backward" // a row's time is before the time of the row above
	Lost     MishapKind = "lost"     // taken out of an oven it is not in
)

// cook follows a plan.
type cook struct {
	plan     Plan
	mishaps  []Mishap
	late     float64 // minutes behind the plan
	busy     float64 // the hands are free at
	stay     float64 // something must be watched until
	dial     int     // degrees
	turned   float64 // when the dial was turned
	from     int     // degrees before it
	inside   map[string]load
	finishes float64
}

type load struct {
	row         int
	at          float64
	least, most float64
}

// pace is the quickest that the cook works, as a part of the minutes marked;
// what is less than slack minutes behind is caught up.
const (
	pace  = 0.7
	slack = 5
)

// Follow cooks a plan row by row at the quickest pace, and tells what goes
// wrong. finish is the minute of the day at which the time is up.
func Follow(p Plan, finish int) []Mishap {
	c := cook{plan: p, inside: map[string]load{}, finishes: float64(finish), dial: 20, from: 20}
	previous := 0.0
	for i, r := range p.Rows {
		at := float64(r.Clock)
		if at < previous {
			c.tell(Backward, i, "%s is before the row above", r.Clock)
		}
		previous = max(previous, at)
		c.row(i, at)
	}
	for _, dish := range slices.Sorted(mapKeys(c.inside)) {
		c.tell(Burnt, c.inside[dish].row, "dish %s is never taken out", dish)
	}
	if c.busy >= c.finishes+slack {
		c.tell(Overrun, len(p.Rows)-1, "the last job ends %.0f minutes over", c.busy-c.finishes)
	}
	return c.mishaps
}

func mapKeys(m map[string]load) func(func(string) bool) {
	return func(yield func(string) bool) {
		for k := range m {
			if !yield(k) {
				return
			}
		}
	}
}

func (c *cook) tell(kind MishapKind, row int, form string, args ...any) {
	c.mishaps = append(c.mishaps, Mishap{kind, row + 1, fmt.Sprintf(form, args...)})
}

// row does what stands beside a row. The food goes by the plan's clock; the
// hands begin when they are free.
func (c *cook) row(i int, at float64) {
	begin := max(at, c.busy)
	acts := c.plan.Rows[i].Acts
	if slices.ContainsFunc(acts, hands) { // a dial or a tin is turned while the other goes on
		behind := begin - at
		if behind > c.late+slack {
			c.tell(Clash, i, "the hands are %.0f minutes behind", behind)
		}
		c.late = behind
	}
	if at < c.stay-1.5 && slices.ContainsFunc(acts, hands) {
		c.tell(Clash, i, "something on the hob or under the grill is left for it")
	}
	for k := 0; k < len(acts); k++ {
		k += c.act(i, acts[k], acts[k+1:], at, begin)
	}
}

func hands(act string) bool {
	n, err := strconv.Atoi(strings.TrimPrefix(act, "h"))
	return err == nil && n > 2
}

// act does one mark and says how many of those after it belong to it.
func (c *cook) act(i int, verb string, rest []string, at, begin float64) int {
	dish := c.plan.Rows[i].Dish
	number := func(k int) float64 { n, _ := strconv.ParseFloat(rest[k], 64); return n }
	switch verb {
	case "on", "turn":
		c.from, c.dial, c.turned = c.heat(at), int(number(0)), at
		return 1
	case "stay":
		c.stay = at + number(0)
		return 1
	case "out":
		c.takeOut(i, rest[0], at)
		return 1
	case "in":
		c.inside[rest[0]] = load{row: i, at: at, least: number(2), most: number(3)}
		if want := int(number(1)); abs(c.heat(at)-want) > 25 {
			c.tell(ColdOven, i, "dish %s goes into an oven at %d, not %d", dish, c.heat(at), want)
		}
		return 4
	}
	if n, err := strconv.Atoi(strings.TrimPrefix(verb, "h")); err == nil {
		c.busy = begin + pace*float64(n)
	}
	return 0
}

func (c *cook) takeOut(i int, dish string, at float64) {
	l, there := c.inside[dish]
	switch {
	case !there:
		c.tell(Lost, i, "dish %s is not in the oven", dish)
	case at-l.at > l.most+5:
		c.tell(Burnt, i, "dish %s was in for %.0f minutes, %.0f at most", dish, at-l.at, l.most)
	case at-l.at < l.least-3:
		c.tell(Raw, i, "dish %s was in for %.0f minutes, %.0f at least", dish, at-l.at, l.least)
	}
	delete(c.inside, dish)
}

// heat is the oven's temperature: 12 degrees a minute from cold (about 15 minutes to
// 200), 4 degrees a minute up or 2 down between settings: common practice, no source.
func (c *cook) heat(at float64) int {
	rate := 4.0
	switch {
	case c.from <= 20:
		rate = 12
	case c.dial < c.from:
		rate = -2
	}
	reached := float64(c.from) + rate*(at-c.turned)
	if rate > 0 {
		return int(min(reached, float64(c.dial)))
	}
	return int(max(reached, float64(c.dial)))
}

func abs(n int) int { return max(n, -n) }
