package feedback

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"plait.example/internal/act"
	"plait.example/internal/match"
	"plait.example/internal/practical"
	"plait.example/internal/timeplan"
	"plait.example/internal/written"
)

// Plait is the pupil's own plan as a plan that can be drawn: a row for each of
// theirs that has a time, in the order of the clock, each dish's strand where
// the rows say that it is. What the rows leave open is taken from the steps
// that they stand for. Nothing is put right: what clashes, clashes.
func Plait(m match.Matched) *timeplan.Plan {
	w := weaver{matched: m, plan: &timeplan.Plan{Title: "Time plan", Hours: 24, Round: 1, Cooks: 1, Status: timeplan.Feasible}}
	w.dishes()
	w.rows()
	w.clock()
	for _, d := range w.plan.Dishes {
		w.strand(d.Letter)
	}
	return w.plan
}

// weaver makes the plan; of each row of the plan it keeps the row it is of.
type weaver struct {
	matched match.Matched
	plan    *timeplan.Plan
	of      []match.Row
}

// dishes lists the practical's dishes; without one, those that the rows name.
func (w *weaver) dishes() {
	if p := w.matched.Practical; p != nil {
		w.plan.Cooks = max(1, p.Cooks)
		for _, d := range p.Dishes {
			w.plan.Dishes = append(w.plan.Dishes, timeplan.Dish{Letter: d.Letter, Name: d.Name, Heat: d.Serve.Heat, Allergens: d.Allergens})
		}
		return
	}
	for _, r := range w.matched.Rows {
		for i, l := range r.Letters {
			if slices.ContainsFunc(w.plan.Dishes, func(d timeplan.Dish) bool { return d.Letter == l }) {
				continue
			}
			name := "dish " + l
			if len(r.Dishes) == len(r.Letters) {
				name = r.Dishes[i]
			}
			w.plan.Dishes = append(w.plan.Dishes, timeplan.Dish{Letter: l, Name: name})
		}
	}
	slices.SortFunc(w.plan.Dishes, func(a, b timeplan.Dish) int { return cmp.Compare(a.Letter, b.Letter) })
}

// rows makes a row for each of the pupil's, and for a row about several dishes
// one for each of them, of which the first takes the time.
func (w *weaver) rows() {
	var all []match.Row
	for _, r := range w.matched.Rows {
		if r.Clock != written.NoClock {
			all = append(all, r)
		}
	}
	slices.SortStableFunc(all, func(a, b match.Row) int { return cmp.Compare(a.At, b.At) })
	for i, r := range all {
		minutes := handsOf(r, w.matched.Practical, gap(all, i))
		action := actionOf(r)
		letters := w.letters(r)
		if len(letters) == 0 || len(letters) > 1 && len(letters) == len(w.plan.Dishes) && action != timeplan.Serve {
			letters = []string{""}
		}
		for k, l := range letters {
			row := timeplan.Row{
				ID: fmt.Sprintf("row-%d", r.Number), At: r.At, Clock: r.At, Minutes: minutes, Dish: l, Action: action,
				Text: strings.Join(strings.Fields(r.Text), " "),
			}
			if k > 0 {
				row.ID, row.Minutes = row.ID+"/"+l, 0
			}
			w.plan.Rows = append(w.plan.Rows, row)
			w.of = append(w.of, r)
		}
	}
}

// letters are the dishes that a row is about; all of them when it says so.
func (w *weaver) letters(r match.Row) (letters []string) {
	if !slices.Contains(r.Dishes, written.EveryDish) {
		return r.Letters
	}
	for _, d := range w.plan.Dishes {
		letters = append(letters, d.Letter)
	}
	return letters
}

// gap is the minutes until the next written time; 0: there is none.
func gap(all []match.Row, i int) int {
	for _, r := range all[i+1:] {
		if r.At > all[i].At {
			return int(r.At - all[i].At)
		}
	}
	return 0
}

// usualHands is how long a row takes of which nothing else is known.
const usualHands = 5

// handsOf is how long the hands are at a row: as the pupil says, where nothing
// goes on by itself in it; else what its steps need.
func handsOf(r match.Row, p *practical.Practical, gap int) int {
	said := r.Minutes
	if r.HasUntil && r.Until > r.At {
		said = int(r.Until - r.At)
	}
	_, waits := placeAfter(r)
	fried := minutesAttended(r)
	if said > 0 && (!waits || fried > 0) {
		return said
	}
	needed := 0
	for _, s := range r.Steps {
		step := stepOf(p, s.ID)
		switch {
		case step == nil:
		case s.Part == match.Whole:
			needed += max(1, step.Hands.Low) // so that what clashes does so even for the quickest
		default:
			needed++
		}
	}
	switch {
	case needed > 0:
		return needed
	case fried > 0 && gap > 0:
		return min(gap, fried)
	case waits && onlyPlaces(r):
		return 1
	case gap > 0:
		return min(gap, usualHands)
	}
	return usualHands
}

// unattended are verbs of the hob that go on by themselves.
var unattended = words("simmer boil poach stew steam brais leav cook")

// minutesAttended is the minutes that a row says for work on the hob that wants
// the hands all the while, such as frying; 0: there is none.
func minutesAttended(r match.Row) (most int) {
	for _, a := range r.Acts {
		if a.Kind == act.Hob && !unattended[a.Verb] {
			most = max(most, a.Most)
		}
	}
	return most
}

// onlyPlaces says that all a row does is put food where it goes on by itself.
func onlyPlaces(r match.Row) bool {
	return !slices.ContainsFunc(r.Acts, func(a act.Act) bool {
		_, places := placesAfter[a.Kind]
		return !places && a.Kind != act.Timer || a.Kind == act.Hob && !unattended[a.Verb] || a.Kind == act.TakeOut || a.Kind == act.Serve
	})
}

func stepOf(p *practical.Practical, id string) *practical.Step {
	if p == nil {
		return nil
	}
	for i := range p.Dishes {
		for k := range p.Dishes[i].Steps {
			if p.Dishes[i].Steps[k].ID == id {
				return &p.Dishes[i].Steps[k]
			}
		}
	}
	return nil
}

// actionOf is what kind of row it is, by what is done first, or last for food
// that goes somewhere.
func actionOf(r match.Row) timeplan.Action {
	if len(r.Acts) == 0 {
		return timeplan.Do
	}
	if len(r.Acts) == 1 {
		switch r.Acts[0].Kind {
		case act.HeatOven, act.TurnOven:
			return timeplan.TurnTo
		case act.Idle:
			return timeplan.Rest
		case act.PutIn, act.Chill, act.Freeze:
			return timeplan.PutIn
		case act.TakeOut, act.FromCold:
			return timeplan.TakeOut
		}
	}
	for _, a := range r.Acts {
		switch a.Kind {
		case act.Serve:
			return timeplan.Serve
		case act.WashUp, act.CleanDown, act.FinalClean:
			return timeplan.WashUp
		}
	}
	return timeplan.Do
}

// placesAfter is where food is once an act is done.
var placesAfter = map[act.Kind]practical.Place{
	act.PutIn: practical.AtOven, act.Chill: practical.AtFridge, act.Freeze: practical.AtFreezer, act.Prove: practical.AtWarm,
	act.Rest: practical.AtSide, act.Cool: practical.AtSide, act.Marinate: practical.AtSide, act.Soak: practical.AtSide,
	act.Hob: practical.AtHob, act.Grill: practical.AtGrill, act.Microwave: practical.AtMicrowave, act.KeepHot: practical.AtOven,
	act.Reheat: practical.AtHob, act.TakeOut: practical.AtSide, act.Serve: practical.Served,
}

// placeAfter is where the food is after a row, and whether the row says so.
func placeAfter(r match.Row) (place practical.Place, said bool) {
	for _, a := range r.Acts {
		if p, goes := placesAfter[a.Kind]; goes {
			place, said = p, true
			if a.Place != "" && a.Place != practical.AtHands && a.Kind != act.TakeOut && a.Kind != act.Serve {
				place = a.Place
			}
		} else if a.Kind == act.Mix || a.Kind == act.Shape || a.Kind == act.Fill || a.Kind == act.Cut {
			place, said = "", false
		}
	}
	return place, said
}

// clock sets the ends of the plan.
func (w *weaver) clock() {
	p := w.plan
	for i, r := range p.Rows {
		if i == 0 || r.At < p.SetUp {
			p.SetUp = r.At
		}
		p.Finish = max(p.Finish, r.End())
	}
	p.Start, p.Allowed, p.Bound = p.SetUp, p.Finish, p.Finish
	if known := w.matched.Practical; known != nil {
		p.SetUp, p.Start, p.Hours = min(p.SetUp, known.SetUpFrom()), known.Clock.Start, cmp.Or(known.Clock.Hours, 24)
		p.Allowed = known.Allowed()
		p.Over = max(0, int(p.Finish-p.Allowed))
	}
}
