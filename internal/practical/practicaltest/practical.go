// Package practicaltest makes random practicals for property tests: valid ones,
// of the shapes that kitchens meet. Only tests import it.
package practicaltest

import (
	"fmt"

	"pgregory.net/rapid"

	"plait.example/internal/practical"
)

// Practical draws a valid practical that is ready to be planned: 1 to 4 dishes
// of 2 to 8 steps. Whether a plan exists is open: clocks are sometimes short.
func Practical(t *rapid.T) *practical.Practical { return OfDishes(t, 1, 4) }

// OfDishes does the same for so many dishes, least to most.
func OfDishes(t *rapid.T, least, most int) *practical.Practical {
	p := &practical.Practical{Title: words(t, "title"), Cooks: oneIn(t, 4, "pair") + 1}
	if oneIn(t, 2, "dated") == 1 {
		p.Date = "2026-12-04"
	}
	p.Clock = clock(t)
	p.Kitchen = kitchen(t, p)
	p.Rules = rules(t)
	addBreaks(t, p)
	all := &made{p: p}
	for i := range rapid.IntRange(least, most).Draw(t, "dishes") {
		p.Dishes = append(p.Dishes, all.dish(t, string(rune('A'+i))))
	}
	if oneIn(t, 2, "as many as asked") == 1 {
		p.Rules.Dishes = len(p.Dishes)
	}
	if oneIn(t, 10, "pinned") == 1 {
		p.Pins = pins(t, p)
	}
	return p
}

// oneIn draws 1 once in n times, else 0.
func oneIn(t *rapid.T, n int, label string) int {
	if rapid.IntRange(1, n).Draw(t, label) == n {
		return 1
	}
	return 0
}

func yes(t *rapid.T, n int, label string) bool { return oneIn(t, n, label) == 1 }

func clock(t *rapid.T) practical.Clock {
	start := practical.TimeOfDay(5 * rapid.IntRange(8*12, 14*12).Draw(t, "start"))
	if yes(t, 20, "late") {
		start += 9 * 60 // past midnight
	}
	c := practical.Clock{
		SetUp:  start - practical.TimeOfDay(rapid.SampledFrom([]int{0, 15, 30, 45}).Draw(t, "set-up")),
		Start:  start,
		Finish: start + practical.TimeOfDay(rapid.IntRange(75, 240).Draw(t, "length")),
		Hours:  rapid.SampledFrom([]int{12, 24}).Draw(t, "hours"),
		Round:  rapid.SampledFrom([]int{1, 5}).Draw(t, "round"),
	}
	if yes(t, 4, "extra") {
		share := rapid.SampledFrom([]int{10, 25, 50})
		c.Extra = practical.Extra{SetUp: share.Draw(t, "set-up"), Cook: share.Draw(t, "cook"), Serve: share.Draw(t, "serve")}
	}
	return c
}

// addBreaks puts up to two rest breaks inside the clock, apart from each other.
func addBreaks(t *rapid.T, p *practical.Practical) {
	at := p.Clock.Start
	for i := range rapid.SampledFrom([]int{0, 0, 0, 1, 2}).Draw(t, "breaks") {
		at += practical.TimeOfDay(rapid.IntRange(10, 30).Draw(t, "until the break"))
		b := practical.Break{At: at, Minutes: rapid.SampledFrom([]int{5, 10}).Draw(t, fmt.Sprintf("break %d", i))}
		at += practical.TimeOfDay(b.Minutes)
		p.Clock.Breaks = append(p.Clock.Breaks, b)
	}
}

func rules(t *rapid.T) practical.Rules {
	point := rapid.SampledFrom(practical.StartingPoints()).Draw(t, "like")
	r := point.New().Rules
	r.Dishes = 0
	r.OvenInSetUp = yes(t, 2, "oven in set-up")
	r.TastingInside = yes(t, 3, "tasting inside")
	r.CleanInside = yes(t, 2, "clean-down inside")
	r.WashEvery = rapid.SampledFrom([]int{0, 45, 60, 90}).Draw(t, "wash-up every")
	r.Window = rapid.IntRange(5, 40).Draw(t, "window")
	r.Looks = rapid.IntRange(1, 3).Draw(t, "looks")
	r.Pace = rapid.SampledFrom([]practical.Pace{practical.Quick, practical.Likely, practical.Steady}).Draw(t, "pace")
	return r
}

func kitchen(t *rapid.T, p *practical.Practical) practical.Kitchen {
	few := func(label string, least, most int) int { return rapid.IntRange(least, most).Draw(t, label) }
	k := practical.Kitchen{
		Rings: few("rings", 1, 4), Grill: rapid.SampledFrom([]practical.Grill{practical.NoGrill, practical.SeparateGrill, practical.GrillInOven}).Draw(t, "grill"),
		Processors: few("processors", 0, 2), Mixers: few("mixers", 0, 1), Microwaves: few("microwaves", 0, 1),
		FridgeShelves: few("fridge", 1, 3), FreezerShelves: few("freezer", 0, 1),
	}
	for i := range few("ovens", 1, 2) {
		o := practical.Oven{
			Name: fmt.Sprintf("oven %d", i+1), Fuel: rapid.SampledFrom([]practical.Fuel{practical.Electric, practical.Fan, practical.Gas}).Draw(t, "fuel"),
			Shelves: few("shelves", 1, 3),
		}
		if yes(t, 3, "own minutes") {
			o.Preheat, o.Up, o.Down, o.DoorOpen = few("preheat", 5, 25), few("up", 1, 6), few("down", 2, 9), few("door", 1, 8)
		}
		k.Ovens = append(k.Ovens, o)
	}
	if yes(t, 6, "own table") {
		// A gas cooker's own manual, as published: 1 to 9.
		for i, c := range []int{120, 150, 175, 195, 210, 220, 230, 235, 240} {
			k.GasTable = append(k.GasTable, practical.GasMark{Mark: fmt.Sprint(i + 1), Celsius: c, Fan: c - 20, Fahrenheit: 0})
		}
	}
	if yes(t, 8, "taken") {
		k.Taken = []practical.Taken{{Kit: practical.Ring, Number: 1, From: p.Clock.Start, Until: p.Clock.Start + 20}}
	}
	return k
}

func pins(t *rapid.T, p *practical.Practical) []practical.Pin {
	row := rapid.SampledFrom(p.Rows()).Draw(t, "row")
	if other := rapid.SampledFrom(p.Rows()).Draw(t, "after"); other != row && yes(t, 2, "pin after") {
		return []practical.Pin{{Row: row, After: other}}
	}
	at := practical.TimeOfDay(rapid.IntRange(int(p.Clock.Start), int(p.Clock.Finish)).Draw(t, "pin at"))
	return []practical.Pin{{Row: row, At: &at}}
}
