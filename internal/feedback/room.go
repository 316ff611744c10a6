package feedback

import (
	"cmp"
	"fmt"
	"regexp"
	"slices"
	"strconv"
	"strings"

	"plait.example/internal/act"
	"plait.example/internal/match"
	"plait.example/internal/practical"
	"plait.example/internal/written"
)

// Shared is a kind of kit that a class shares, as a teacher counts it.
type Shared string

// The kinds. An oven is in use from when it is turned on to the last load's end.
const (
	Ovens      Shared = "ovens"
	Grills     Shared = "grills"
	Processors Shared = "food processors"
	Mixers     Shared = "mixers"
	Microwaves Shared = "microwaves"
)

// AllShared are the kinds in the order in which they are told.
var AllShared = []Shared{Ovens, Grills, Processors, Mixers, Microwaves}

// Room is how much of each kind a room has; a kind that is not there, or is 0,
// is not known.
type Room map[Shared]int

// Busy is a stretch of the clock in which a class's plans together want more of a
// kind than the room has; where that is not known, the busiest stretch.
type Busy struct {
	Kit         Shared
	Have        int // 0: not known
	From, Until practical.TimeOfDay
	Most        int   // wanted at once, at the worst of it
	Who         []Use // that have a part in it, in the order of the clock
}

// Use is when a pupil has a thing, as their plan was read.
type Use struct {
	Who         string
	From, Until practical.TimeOfDay
}

// Words says how many are wanted and how many are there.
func (b Busy) Words() string {
	if b.Have == 0 {
		return fmt.Sprintf("%d %s wanted; how many are there is not known", b.Most, b.Kit)
	}
	return fmt.Sprintf("%d %s wanted, %d there", b.Most, b.Kit, b.Have)
}

// Names are who has a part in it, each with their times.
func (b Busy) Names() (list []string) {
	for _, u := range b.Who {
		list = append(list, fmt.Sprintf("%s (%s-%s)", u.Who, u.From, u.Until))
	}
	return list
}

// busy is what a class's plans want of a room together.
func busy(plans []Plan, room Room) (all []Busy) {
	uses := map[Shared][]Use{}
	for _, p := range plans {
		for kit, own := range usesOf(p) {
			uses[kit] = append(uses[kit], own...)
		}
	}
	for _, kit := range AllShared {
		list := uses[kit]
		slices.SortStableFunc(list, func(a, b Use) int {
			return cmp.Or(cmp.Compare(a.From, b.From), cmp.Compare(a.Until, b.Until), strings.Compare(a.Who, b.Who))
		})
		all = append(all, overUse(kit, list, room[kit])...)
	}
	return all
}

// overUse is the stretches in which more are in use than there are, or the
// busiest stretch when it is not known how many there are.
func overUse(kit Shared, list []Use, have int) (all []Busy) {
	type level struct {
		at practical.TimeOfDay
		n  int
	}
	var times []practical.TimeOfDay
	for _, u := range list {
		times = append(times, u.From, u.Until)
	}
	slices.Sort(times)
	var levels []level
	most := 0
	for _, t := range slices.Compact(times) {
		n := 0
		for _, u := range list {
			if u.From <= t && t < u.Until {
				n++
			}
		}
		levels = append(levels, level{t, n})
		most = max(most, n)
	}
	bar := have
	if have == 0 {
		bar = max(most-1, 1) // one pupil alone is no crowd
	}
	for i := 0; i < len(levels); i++ {
		if levels[i].n <= bar {
			continue
		}
		b := Busy{Kit: kit, Have: have, From: levels[i].at}
		for ; i < len(levels) && levels[i].n > bar; i++ {
			b.Most = max(b.Most, levels[i].n)
		}
		b.Until = levels[i].at // the last level is 0
		for _, u := range list {
			if u.From < b.Until && b.From < u.Until {
				b.Who = append(b.Who, u)
			}
		}
		all = append(all, b)
		if have == 0 {
			break
		}
	}
	return all
}

// usesOf is when a pupil has what of the room.
func usesOf(p Plan) map[Shared][]Use {
	all := map[Shared][]Use{}
	if from, until, has := hotOven(p.Matched); has {
		all[Ovens] = []Use{{p.Who(), from, until}}
	}
	plan := Plait(p.Matched)
	for _, r := range plan.Rows {
		row, known := p.row(numberOf(r.ID))
		if !known || strings.Contains(r.ID, "/") {
			continue
		}
		for _, kit := range machinesOf(row) {
			until := r.At + practical.TimeOfDay(max(1, r.Minutes))
			for _, w := range plan.Waits {
				if w.Step == r.ID && (kit == Grills && w.Place == practical.AtGrill || kit == Microwaves && w.Place == practical.AtMicrowave) {
					until = max(until, w.Until)
				}
			}
			all[kit] = append(all[kit], Use{p.Who(), r.At, until})
		}
	}
	return all
}

// numberOf is the number of the pupil's row that a row of their plait is of.
func numberOf(id string) int {
	n, err := strconv.Atoi(strings.TrimPrefix(id, "row-"))
	if err != nil {
		return 0
	}
	return n
}

// hotOven is from when a pupil's oven is on until its last load is out, or it is
// turned off; false: nothing is baked.
func hotOven(m match.Matched) (from, until practical.TimeOfDay, baked bool) {
	load := func(in, out practical.TimeOfDay) {
		if !baked || in < from {
			from = in
		}
		baked, until = true, max(until, out)
	}
	waits := map[string]bool{}
	for _, w := range Plait(m).Waits {
		if waits[w.Step] = true; w.Place == practical.AtOven {
			load(w.From, w.Until)
		}
	}
	for _, r := range m.Rows { // what nobody takes out is in for the minutes that are said
		if place, _ := placeAfter(r); place == practical.AtOven && r.Clock != written.NoClock && !waits["row-"+strconv.Itoa(r.Number)] {
			load(r.At, r.At+practical.TimeOfDay(minutesSaid(r, place)))
		}
	}
	if !baked {
		return 0, 0, false
	}
	for _, r := range m.Rows {
		switch {
		case r.Clock == written.NoClock:
		case has(r, act.HeatOven):
			from = min(from, r.At)
		case has(r, act.OvenOff) && r.At > from:
			until = max(until, r.At)
		}
	}
	return from, until, until > from
}

// machineWords are what a row calls a machine (common practice, no source).
var machineWords = []struct {
	kit   Shared
	words *regexp.Regexp
}{
	{Processors, regexp.MustCompile(`(?i)\b(?:food processor|processor|blender|liquidi[sz]\w*|blitz\w*|magimix)\b`)},
	{Mixers, regexp.MustCompile(`(?i)\b(?:(?:stand|electric|hand|food) ?mixer|mixer|electric (?:hand )?whisk|hand whisk)\b`)},
}

// machinesOf are the machines that a row wants.
func machinesOf(r match.Row) (list []Shared) {
	for _, m := range machineWords {
		if m.words.MatchString(r.Text) {
			list = append(list, m.kit)
		}
	}
	if has(r, act.Grill) {
		list = append(list, Grills)
	}
	if has(r, act.Microwave) {
		list = append(list, Microwaves)
	}
	return list
}
