package feedback

import (
	"regexp"
	"slices"
	"strings"

	"plait.example/internal/act"
	"plait.example/internal/match"
	"plait.example/internal/practical"
	"plait.example/internal/timeplan"
)

// A dish's strand goes from row to row. Where a row leaves food somewhere, a
// thread goes by way of that place to the row that takes it up again, which need
// not be the dish's next: meanwhile the hands may be at another part of the dish.

// soon is a gap between rows of a dish in which it stays in the hands.
const soon = 2

// strand joins the rows of a dish, from place to place.
func (w *weaver) strand(letter string) {
	var rows []int
	for i, r := range w.plan.Rows {
		if r.Dish == letter && (!elsewhere(w.of[i]) || r.Action == timeplan.Serve) {
			rows = append(rows, i)
		}
	}
	ends := make([]int, len(rows)) // of what a row leaves somewhere: where in rows it is taken up; 0: nothing is left
	for n := range rows {
		if _, said := w.leaves(rows[n]); said && n+1 < len(rows) {
			ends[n] = w.takenUp(rows, n)
		}
	}
	hands := -1 // where in rows what is worked on was last
	for n, i := range rows {
		for from, to := range ends[:n] {
			if to == n {
				w.away(rows, from, n)
			}
		}
		switch looked := w.lookedAt(rows, ends, n); {
		case looked: // its food stays where it is
		case ends[n] > 0:
			w.hand(rows, hands, n)
			hands = -1
		default:
			w.hand(rows, hands, n)
			hands = n
		}
		if n+1 == len(rows) && w.plan.Rows[i].Action == timeplan.Serve {
			w.plan.Threads = append(w.plan.Threads, timeplan.Thread{Dish: letter, From: i, To: -1, Place: practical.Served, Wait: -1})
		}
	}
}

// leaves is where a row leaves food that goes on by itself, and whether it does:
// by the step whose wait it begins, else by what it says.
func (w *weaver) leaves(i int) (practical.Place, bool) {
	for _, s := range w.of[i].Steps {
		if step := stepOf(w.matched.Practical, s.ID); s.Part == match.PutIn && step != nil && step.Wait != nil && step.Wait.Place != "" {
			return step.Wait.Place, true
		}
	}
	place, said := placeAfter(w.of[i])
	if back.MatchString(w.of[i].Text) && has(w.of[i], act.TakeOut) {
		place, said = practical.AtOven, true
	}
	if most := minutesSaid(w.of[i], place); cooksBriefly[place] && most > 0 && w.plan.Rows[i].Minutes >= most && !keeps.MatchString(w.of[i].Text) {
		return place, false // the hands are at it all the while
	}
	return place, said && place != practical.Served && place != practical.AtHands
}

// cooksBriefly are the places where food is cooked for the minutes that a row
// says, with no row that takes it off.
var cooksBriefly = map[practical.Place]bool{practical.AtHob: true, practical.AtGrill: true, practical.AtMicrowave: true}

// hand draws what is in the hands, or stands ready on the side, from a row to another.
func (w *weaver) hand(rows []int, from, to int) {
	if from < 0 {
		return
	}
	a, b := w.plan.Rows[rows[from]], w.plan.Rows[rows[to]]
	place := practical.AtSide
	if b.At-a.End() <= soon {
		place = practical.AtHands
	}
	w.plan.Threads = append(w.plan.Threads, timeplan.Thread{Dish: a.Dish, From: rows[from], To: rows[to], Place: place, Wait: -1})
}

// away draws what waits somewhere until a row takes it up, by way of the rows
// that only look at it.
func (w *weaver) away(rows []int, from, to int) {
	a, b := w.plan.Rows[rows[from]], w.plan.Rows[rows[to]]
	place, _ := w.leaves(rows[from])
	wait := -1
	if b.At > a.End() {
		wait = len(w.plan.Waits)
		w.plan.Waits = append(w.plan.Waits, timeplan.Wait{Dish: a.Dish, Place: place, From: a.End(), Until: w.until(rows[from], rows[to], place), Step: a.ID, Celsius: w.celsius(rows[from], place)})
	}
	last := rows[from]
	for n := from + 1; n < to; n++ {
		if w.looks(rows[from], rows[n]) {
			w.plan.Threads = append(w.plan.Threads, timeplan.Thread{Dish: a.Dish, From: last, To: rows[n], Place: place, Wait: wait})
			last = rows[n]
		}
	}
	w.plan.Threads = append(w.plan.Threads, timeplan.Thread{Dish: a.Dish, From: last, To: rows[to], Place: place, Wait: wait})
}

// celsius is what the oven is at, as a row says; 0: it does not.
func (w *weaver) celsius(i int, place practical.Place) int {
	for _, a := range w.of[i].Acts {
		for _, h := range a.Heats {
			if place == practical.AtOven && h.Celsius > 0 {
				return h.Celsius
			}
		}
	}
	return 0
}

// until is when food leaves a place: when it is taken up, but from where it is
// cooked on the hob at the end of the minutes that the row says, since no row
// takes a pan off that is left to simmer for 20 minutes.
func (w *weaver) until(from, to int, place practical.Place) practical.TimeOfDay {
	row, until := w.plan.Rows[from], w.plan.Rows[to].At
	most := minutesSaid(w.of[from], place)
	if !cooksBriefly[place] || most == 0 || keeps.MatchString(row.Text) {
		return until
	}
	begins := row.At
	if a := w.of[from].Acts; placesAfter[a[0].Kind] != place {
		begins = row.End() // something is done first
	}
	return max(row.End(), min(until, begins+practical.TimeOfDay(most)))
}

// keeps are words of food that is left where it is beyond its minutes, or whose
// minutes begin only when it boils.
var keeps = regexp.MustCompile(`(?i)\b(?:keep|leave|left)\b.{0,20}\b(?:low|warm|hot|heat)\b|\bto (?:the |a )?boil\b`)

// minutesSaid is the minutes that a row says for its wait in a place; 0: none.
func minutesSaid(r match.Row, place practical.Place) (most int) {
	for _, a := range r.Acts {
		if placesAfter[a.Kind] == place || a.Place == place {
			most = max(most, a.Most)
		}
	}
	switch {
	case most > 0:
		return most
	case r.HasUntil && r.Until > r.At:
		return int(r.Until - r.At)
	}
	return r.Minutes
}

// takenUp is where in rows what the n-th leaves somewhere is taken up.
func (w *weaver) takenUp(rows []int, n int) int {
	from := w.of[rows[n]]
	place, _ := w.leaves(rows[n])
	if m := w.takenOut(rows, n, place); m > 0 {
		return m
	}
	rank := func(m int) int { // of what a row has to do with what waits; 0: nothing
		to := w.of[rows[m]]
		switch {
		case w.looks(rows[n], rows[m]):
			return 0
		case worksOn(to, objects(from), true):
			return 4
		case w.follows(from, to):
			return 3
		case worksOn(to, objects(from), false):
			return 2
		case w.plan.Rows[rows[m]].Action == timeplan.Serve:
			return 1
		}
		return 0
	}
	best, most := 0, 0
	for m := n + 1; m < len(rows); m++ {
		if of := rank(m); of > most {
			best, most = m, of
		}
	}
	if best > 0 {
		return best
	}
	// nothing says so: the first row after the minutes that it was to wait
	ready := w.plan.Rows[rows[n]].At + practical.TimeOfDay(minutesSaid(from, place))
	for m := n + 1; m < len(rows); m++ {
		if w.plan.Rows[rows[m]].At >= ready && !w.looks(rows[n], rows[m]) {
			return m
		}
	}
	return len(rows) - 1
}

// back are words of food that goes into the oven again.
var back = regexp.MustCompile(`(?i)\b(?:put|pop|place|slide|goes?|straight|it|them|tin|tray|case) back\b|\bback in(?:to)?\b|\breturn(?:ed|ing)?\b.{0,30}\boven\b`)

func has(r match.Row, kind act.Kind) bool {
	return slices.ContainsFunc(r.Acts, func(a act.Act) bool { return a.Kind == kind })
}

// outOf is the act by which food is taken out of a place.
var outOf = map[practical.Place]act.Kind{practical.AtOven: act.TakeOut, practical.AtFridge: act.FromCold, practical.AtFreezer: act.FromCold}

// takenOut is where in rows what the n-th puts into a place is said to be taken
// out: by the step that both stand for, by its name, or out of the oven by any
// name, since nothing there can be worked on. 0: no row says so.
func (w *weaver) takenOut(rows []int, n int, place practical.Place) (any int) {
	from := w.of[rows[n]]
	for m := n + 1; m < len(rows); m++ {
		to := w.of[rows[m]]
		for _, s := range to.Steps {
			if s.Part == match.TakeOut && slices.ContainsFunc(from.Steps, func(f match.Step) bool { return f.ID == s.ID }) {
				return m
			}
		}
		for _, a := range to.Acts {
			switch {
			case a.Kind == outOf[place] && (len(a.Objects) == 0 || shares(objects(from), a.Objects)):
				return m
			case a.Kind == outOf[place] && any == 0 && place == practical.AtOven:
				any = m
			case a.Kind == act.PutIn && place == practical.AtOven && (shares(objects(from), a.Objects) || back.MatchString(to.Text)):
				return m // it cannot go in again before it is out
			}
		}
	}
	return any
}

// worksOn says that a row does something to a food, other than to stir or turn it
// where it is. Surely: the food is none that goes into many parts of a dish.
func worksOn(r match.Row, foods []string, surely bool) bool {
	return !elsewhere(r) && slices.ContainsFunc(r.Acts, func(a act.Act) bool {
		return a.Kind != act.Ready && !slices.Contains(stirring, a.Verb) && slices.ContainsFunc(foods, func(f string) bool {
			return slices.Contains(a.Objects, f) && !vessels[f] && !(surely && inMany[f])
		})
	})
}

// vessels are objects that are no food, and inMany foods that go into many parts
// of a dish, as stems (common practice, no source).
var (
	vessels = words("fridge freezer oven hob pan saucepan bowl plate tin tray dish rack mould mold glass pot timer shelf board knife towel lid wrap cling film")
	inMany  = words("egg yolk white flour butter milk oil sugar salt pepper water cream herb mixtur rest")
)

func words(list string) map[string]bool {
	all := map[string]bool{}
	for _, w := range strings.Fields(list) {
		all[w] = true
	}
	return all
}

// follows says that a row stands for a step that comes after one that another
// stands for, by the recipe.
func (w *weaver) follows(from, to match.Row) bool {
	for _, s := range to.Steps {
		step := stepOf(w.matched.Practical, s.ID)
		if step == nil || s.Part == match.TakeOut {
			continue
		}
		for _, after := range step.After {
			if slices.ContainsFunc(from.Steps, func(f match.Step) bool { return f.ID == after.Step }) {
				return true
			}
		}
	}
	return false
}

// lookedAt says whether a row does nothing but look at what an earlier one left somewhere.
func (w *weaver) lookedAt(rows, ends []int, n int) bool {
	for from, to := range ends[:n] {
		if to > n && w.looks(rows[from], rows[n]) {
			return true
		}
	}
	return false
}

// stirring are verbs of work on food that stays where it is.
var stirring = []string{"stir", "baste", "skim", "season", "taste", "check", "look", "shake", "turn", "rotat", "test", "prick", "top"}

// looks says that all a row does is look at, stir or baste what another left in a place.
func (w *weaver) looks(from, at int) bool {
	place, _ := w.leaves(from)
	for _, a := range w.of[at].Acts {
		switch a.Kind {
		case act.Test, act.Probe, act.Taste, act.Timer, act.Idle:
			continue
		case act.Mix, act.Hob, act.Other, act.TurnOven, act.Decorate:
			if (place == practical.AtHob || place == practical.AtOven || place == practical.AtGrill) && slices.Contains(stirring, a.Verb) {
				continue
			}
		}
		return false
	}
	return len(w.of[at].Acts) > 0
}

// elsewhere says that a row's work cannot be on food that waits: it only turns an
// oven, washes or gathers.
func elsewhere(r match.Row) bool {
	return len(r.Acts) > 0 && !slices.ContainsFunc(r.Acts, func(a act.Act) bool {
		return !slices.Contains([]act.Kind{act.HeatOven, act.TurnOven, act.OvenOff, act.WashHands, act.WashUp, act.CleanDown, act.FinalClean, act.SetUp, act.Ready, act.Timer, act.BoilWater}, a.Kind)
	})
}

// objects are the foods and things that a row's acts are done to.
func objects(r match.Row) (all []string) {
	for _, a := range r.Acts {
		if a.Kind != act.Ready && a.Kind != act.HeatOven && a.Kind != act.TurnOven {
			all = append(all, a.Objects...)
		}
	}
	return all
}

func shares(a, b []string) bool {
	return slices.ContainsFunc(a, func(s string) bool { return slices.Contains(b, s) })
}
